"""The resultants of loads by a formula, as a key tells them."""

from __future__ import annotations

import pytest

from probgen.working.convention import Convention
from tests.bank.test_intensity import BEAM, loaded
from tests.situations import HEAD
from tests.wording.own_telling import told

ONE = BEAM.replace("[3.0, 4.0]", "[3.0]").replace("120, 160", "120").replace("40, 50", "40")
SECTION = """
[[section]]
at = "C"
[[find]]
quantity = "V_C"
"""
FREE = ONE.replace('[[find]]\nquantity = "M_A"\n', "")


def passage(lines: list[str], heading: str) -> list[str]:
    """What stands below a heading."""
    start = lines.index(f"# {heading}") + 1
    end = next((at for at in range(start, len(lines)) if lines[at].startswith("# ")), len(lines))
    return lines[start:end]


def test_the_area_under_it_and_where_that_acts() -> None:
    lines = told(HEAD + ONE + loaded("w_0*(x/L)^2"))
    assert passage(lines, "Resultant of the load") == [
        "At a distance x from A the load per length is w = w_0 (x/L)². Its resultant W is the area "
        "under the curve of w, and acts at the distance x̄ from A at which its torque about A is "
        "that of the whole load.",
        "W = ∫(0 to L) w dx",
        "= ∫(0 to L) w_0 (x/L)² dx",
        "= [w_0 x³/(3 L²)](0 to L)",
        "= w_0 L/3",
        "= (120 N/m)(3.0 m)/3",
        "= 120 N",
        "x̄ = 1/W ∫(0 to L) x w dx",
        "= 1/W ∫(0 to L) w_0 x³/L² dx",
        "= 1/W [w_0 x⁴/(4 L²)](0 to L)",
        "= w_0 L²/(4 W)",
        "= 3 L/4",
        "= 3 (3.0 m)/4",
        "= 2.25 m",
    ]
    forces = passage(lines, "Forces on the beam")
    assert not [line for line in forces if line.startswith(("W =", "x̄ =", "W stands for"))]
    assert lines.index("# Resultant of the load") < lines.index("# Forces on the beam")


def test_a_quotient_of_sums_is_worked_out_in_between() -> None:
    lines = told(HEAD + ONE + loaded("w_1 + w_0*(x/d)^2"))
    found = passage(lines, "Resultant of the load")
    place = found.index("x̄ = 1/W ∫(0 to L) x w dx")
    # 40 N/m x 3 m + 120 N/m x 9 m = 1200 N; (180 + 2430) N m/(1200 N) = 2.175 m
    assert found[place:] == [
        "x̄ = 1/W ∫(0 to L) x w dx",
        "= 1/W ∫(0 to L) (w_1 x + w_0 x³/d²) dx",
        "= 1/W [w_1 x²/2 + w_0 x⁴/(4 d²)](0 to L)",
        "= (w_1 L²/2 + w_0 L⁴/(4 d²))/W",
        "= ((40 N/m)(3.0 m)²/2 + (120 N/m)(3.0 m)⁴/(4 (1.0 m)²))/(1200 N)",
        "= 2610 N·m/(1200 N)",
        "= 2.175 m",
    ]


@pytest.mark.parametrize(
    ("load", "part", "stretch", "size"),
    [
        (loaded("w_0*(x/L)^2", "B", "A"), "CB", "from x = 0 to x = L − d", "W_1"),
        (loaded("w_0*(x/L)^2"), "CB", "from x = d to x = L", "W_1"),
    ],
)
def test_a_stretch_on_one_side_of_a_section(load: str, part: str, stretch: str, size: str) -> None:
    lines = told(HEAD + FREE + load + SECTION)
    (heading,) = (line for line in lines if line.startswith("# Resultant"))
    assert heading == f"# Resultant of the load on the part {part}"
    first = passage(lines, heading[2:])[0]
    assert f"the stretch {stretch} lies on the part {part}" in first
    assert f"Its resultant {size} is the area under that stretch" in first


def test_all_of_it_on_the_part_keeps_its_letter() -> None:
    """The part is all that is needed: the beam as a whole is not."""
    lines = told(HEAD + FREE + loaded("w_0*(x/(L - d))^2", "C", "B") + SECTION.replace(
        'at = "C"', 'at = "C"\njust = "before"'))  # fmt: skip
    assert [line for line in lines if line.startswith("# Resultant")] == ["# Resultant of the load"]
    assert "W = ∫(0 to L − d) w dx" in lines


def test_both_are_told_where_the_beam_and_a_part_of_it_are_needed() -> None:
    lines = told(HEAD + ONE + loaded("w_0*(x/L)^2") + SECTION)
    assert [line for line in lines if line.startswith("# Resultant")] == [
        "# Resultant of the load",
        "# Resultant of the load on the part CB",
    ]


def test_one_that_is_asked_is_told_once_and_rounded() -> None:
    asked = '[[find]]\nquantity = "W"\n[[find]]\nquantity = "xbar"\n'
    for beam in (ONE, FREE):
        lines = told(HEAD + beam + loaded("w_0*(x/(2.3*d))^3") + asked)
        assert sum(line.startswith("W =") for line in lines) == 1
        # 120 N/m (3 m)^4/(4 (2.3 m)^3) = 199.72 N
        assert "= 199.7 N ≈ 200 N" in lines
        assert "= 2.40 m" in lines
    assert not [line for line in lines if line.startswith("# Forces")]


def test_a_course_that_takes_moments() -> None:
    lines = told(HEAD + ONE + loaded("w_0*(x/L)^2"), Convention(turning="moment"))
    assert (
        "its moment about A is that of the whole load" in passage(lines, "Resultant of the load")[0]
    )


def test_two_limits() -> None:
    """Each load once, before the forces on its body."""
    text = ONE.replace('[[find]]\nquantity = "M_A"\n', '''
[unknown]
P = { name = "pull", unit = "N", from = 0, to = 5000 }
[[force]]
at = "B"
magnitude = "P"
direction = 270
[[limit]]
id = "bends"
that = "M_A <= 900 N*m"
name = "the beam bends"
[[limit]]
id = "shears"
that = "R.y <= 2000 N"
name = "the bolts shear"
[[find]]
quantity = "P"
as = "largest"
''')  # fmt: skip
    lines = told(HEAD + text + loaded("w_0*(x/L)^2"))
    assert sum(line.startswith("# Resultant of the load") for line in lines) == 1
