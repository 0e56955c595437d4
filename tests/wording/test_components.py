"""Forces split along the axes: one that happens to point along an axis is told without an angle."""

from __future__ import annotations

from probgen.working.convention import Convention
from tests.situations import HEAD
from tests.wording.own_telling import told, told_of

BLOCK = """
[given]
W = { name = "weight", choices = [50], unit = "N" }
a = { name = "slope", choices = [SLOPE], unit = "deg", measured = "above the horizontal" }
mu = { name = "coefficient", choices = [0.30], unit = "1" }
[body.block]
particle = true
[[weight]]
force = "W"
[[rough]]
direction = "90 + a"
friction_direction = "180 + a"
normal = "N"
friction = "f"
coefficient = "mu"
[[force]]
direction = 0
symbol = "P"
name = "push"
[[find]]
quantity = "P"
[[find]]
quantity = "N"
"""


def test_a_level_slope_needs_no_angles() -> None:
    lines = told(HEAD + BLOCK.replace("SLOPE", "0"))
    said = "\n".join(lines)
    assert "N points straight up: N cos a along y." in said
    assert "f points to the left: −f cos a along x." in said
    assert "−0°" not in said
    assert "90° above" not in said


def test_of_two_pulls_with_one_letter_each_is_told_by_its_own() -> None:
    """Both parts of the tendon pull the kneecap with T."""
    said = "\n".join(told_of("kneecap-squat"))
    assert "One T points α = " in said
    assert "The other T points β = " in said


def test_many_oblique_forces_are_told_one_below_the_other() -> None:
    """On level axes the pallets have three each, the knot of a lantern two."""
    level = Convention(torque="components", axes="level")
    lines = told_of("ridge-two-pallets", level)
    first = lines.index("The forces on the right pallet balance: along x and along y they add up "
                        "to zero.")  # fmt: skip
    assert [line.split(" points")[0] for line in lines[first + 1 : first + 4]] == [
        "N_2",
        "f_2",
        "T",
    ]
    assert lines[first + 4].startswith("ΣF_x = N_2 sin β")
    assert any(" zero. T_1 points" in line for line in told_of("lantern-two-cords", level))
