"""Numbers of what acts inside a body: units, digits, and the points they stand at."""

from __future__ import annotations

import pytest

from probgen.quantities.printing import plain
from probgen.statics.internal_forces import Inside
from probgen.wording.inside import plain_value, point_at, unit_of
from tests.bank.test_section import ON_TWO
from tests.situations import HEAD
from tests.wording.own_telling import told, told_of
from tests.wording.test_diagram import ASKED, DOWN, EVEN, ONE, worked

LADDER = (
    HEAD
    + """
[given]
L = { name = "length", choices = [5.0], unit = "m" }
d = { name = "section", choices = [1.0], unit = "m" }
theta = { name = "slope", choices = [60], unit = "deg" }
P = { name = "load", choices = [300.0], unit = "N" }
[points]
A = [0, 0]
D = { from = "A", distance = "d", direction = "theta" }
M = { from = "A", distance = "L/2", direction = "theta" }
B = { from = "A", distance = "L", direction = "theta" }
[body.ladder]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[contact]]
at = "B"
direction = 180
symbol = "N"
[[weight]]
at = "M"
force = "P"
of = "painter"
symbol = "W"
[[section]]
at = "D"
"""
    + "".join(f'[[find]]\nquantity = "{each}_D"\n' for each in "NVM")
)


@pytest.mark.parametrize(("x", "point"), [(0.0, "A"), (1.5, "C"), (6.0, "B"), (3.0, "")])
def test_the_point_at_a_place(x: float, point: str) -> None:
    _, own = worked(ONE + ON_TWO + DOWN + EVEN + ASKED)
    assert point_at(own.digits, own.inside[0], x) == point


def test_values_have_the_course_s_figures_and_no_unit() -> None:
    _, own = worked(ONE + ON_TWO + DOWN + EVEN + ASKED)
    told = [plain(plain_value(own.digits, of, 1417.5)) for of in Inside]
    assert told == ["1420", "1420", "1420"]
    assert [unit_of(own.digits, of).plain for of in Inside] == ["N", "N", "N·m"]


def test_what_acts_inside_a_tilted_body_is_summed_along_and_square_to_it() -> None:
    """By hand: the part DB of the ladder pushes along it with N cos 60 + W sin 60."""
    lines = told(LADDER)
    assert (
        "x to the right, y up; ∥ along the ladder, up and to the right, ⊥ square to it, up and "
        in (lines[1])
    )
    assert "ΣF_∥ = −N cos θ − W sin θ − N_D = 0" in lines
    assert "ΣF_⊥ = N sin θ − W cos θ + V_D = 0" in lines
    (turned,) = [line for line in lines if "The ladder slopes at θ" in line]
    assert "W cos θ square to the ladder and W sin θ along it" in turned


def test_an_axial_force_that_nothing_works_out_must_be_zero() -> None:
    """The beam bears upright forces alone; the ladder's wall pushes along it too."""
    none = "No other force has a component along x, so N_D must be zero."
    cut = '[[section]]\nat = "D"\n[[find]]\nquantity = "M_D"\n'
    assert any(none in line for line in told(HEAD + ONE + ON_TWO + DOWN + EVEN + cut))
    assert not any("must be zero" in line for line in told(LADDER))


def test_an_axial_force_is_drawn_as_tension_and_negative_as_compression() -> None:
    told_in_all = " ".join(told_of("street-lamp-section"))
    assert "so N must act straight up; we draw it as tension, which counts as pos" in told_in_all
    assert "N is negative, as expected: it acts straight up, which is compression." in told_in_all
