"""What acts inside beams whose shear forces and bending moments stand in every table of beams."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from probgen.bank.reading import read_template
from probgen.statics.internal_forces import (
    Inside,
    InternalForces,
    Load,
    Place,
    internal_forces,
    unbalanced,
)
from tests.statics.conftest import HEAD

BEAM = """
[given]
L = { name = "length", choices = [6.0], unit = "m" }
[points]
A = [0, 0]
C = ["2 m", 0]
B = ["L", 0]
[body.beam]
along = ["A", "B"]
"""
ON_TWO = """
[[hinge]]
at = "A"
symbol = "R"
[[roller]]
at = "B"
symbol = "N"
[[find]]
quantity = "N"
"""
BUILT_IN = """
[[fixed]]
at = "A"
symbol = "R"
couple = "M_A"
[[find]]
quantity = "M_A"
"""
POINT_LOAD = """
[[force]]
at = "C"
magnitude = "900 N"
symbol = "F"
direction = 270
"""
EVEN = """
[[distributed]]
from = "A"
to = "B"
load = "100 N/m"
symbol = "Q"
"""
GROWING = """
[[distributed]]
from = "A"
to = "B"
start = 0
end = "120 N/m"
symbol = "Q"
"""
BACKWARD = GROWING.replace('from = "A"\nto = "B"\nstart = 0\nend = "120 N/m"',
                           'from = "B"\nto = "A"\nstart = "120 N/m"\nend = 0')  # fmt: skip
COUPLE = """
[[couple]]
at = "C"
moment = "600 N*m"
symbol = "C_0"
"""
OBLIQUE = POINT_LOAD.replace("270", "180")


def inside(text: str, **found: float) -> InternalForces:
    system = read_template(HEAD + BEAM + text, "trial.toml").system
    known = {"L": 6.0, "F": 900.0, "Q": 360.0 if "120" in text else 600.0, "C_0": 600.0}
    return internal_forces(system, {"R.x": 0.0, **known, **found}, "beam")


CASES = [
    # what holds and loads it, the forces found, the largest shear and moment with their places
    (ON_TWO + POINT_LOAD, {"R.y": 600.0, "N": 300.0}, Place(0.0, 600.0), Place(2.0, 1200.0)),
    (ON_TWO + EVEN, {"R.y": 300.0, "N": 300.0}, Place(0.0, 300.0), Place(3.0, 450.0)),
    (  # w L/3 at the higher end; w L^2/(9 sqrt 3) at L/sqrt 3
        ON_TWO + GROWING, {"R.y": 120.0, "N": 240.0},
        Place(6.0, -240.0), Place(6.0 / 3.0**0.5, 120.0 * 36.0 / (9.0 * 3.0**0.5)),
    ),
    (
        ON_TWO + BACKWARD, {"R.y": 120.0, "N": 240.0},
        Place(6.0, -240.0), Place(6.0 / 3.0**0.5, 120.0 * 36.0 / (9.0 * 3.0**0.5)),
    ),
    (  # a couple alone: C/L all along, and a jump from -C a/L to C b/L of the other sign
        ON_TWO + COUPLE, {"R.y": 100.0, "N": -100.0}, Place(0.0, 100.0), Place(2.0, -400.0),
    ),
    (BUILT_IN + POINT_LOAD, {"R.y": 900.0, "M_A": 1800.0}, Place(0.0, 900.0), Place(0.0, -1800.0)),
    (BUILT_IN + EVEN, {"R.y": 600.0, "M_A": 1800.0}, Place(0.0, 600.0), Place(0.0, -1800.0)),
]  # fmt: skip


@pytest.mark.parametrize(("text", "found", "shear", "moment"), CASES)
def test_the_largest_and_where(
    text: str, found: dict[str, float], shear: Place, moment: Place
) -> None:
    ours = inside(text, **found)
    for of, expected in ((Inside.SHEAR, shear), (Inside.MOMENT, moment)):
        most = ours.largest(of)
        assert (most.x, most.value) == pytest.approx((expected.x, expected.value))
    assert ours.residual < 1e-12
    assert max(unbalanced(ours, x) for x in (0.5, 1.9, 3.1, 5.9)) < 1e-12


def test_both_sides_of_a_jump() -> None:
    ours = inside(ON_TWO + POINT_LOAD, **{"R.y": 600.0, "N": 300.0})
    assert ours.at(2.0, Inside.SHEAR, before=True) == 600.0
    assert ours.at(2.0, Inside.SHEAR) == -300.0
    found = [(place.x, place.value) for place in ours.turning_points(Inside.SHEAR)]
    assert found == [(0.0, 600.0), (2.0, 600.0), (2.0, -300.0), (6.0, -300.0)]


def test_between_two_hinges_what_is_along_the_beam_is_open_and_the_rest_is_not() -> None:
    text = ON_TWO.replace("roller", "hinge").replace('quantity = "N"', 'quantity = "N.y"')
    system = read_template(HEAD + BEAM + text + EVEN, "trial.toml").system
    known = {"L": 6.0, "Q": 600.0, "R.y": 300.0, "N.y": 300.0}
    ours = internal_forces(system, known, "beam")
    most = ours.largest(Inside.MOMENT)
    assert (most.x, most.value) == pytest.approx((3.0, 450.0))
    assert math.isnan(ours.at(3.0, Inside.AXIAL))
    assert ours.residual < 1e-12
    assert unbalanced(ours, 2.0) < 1e-12


def test_a_push_along_the_axis_compresses_what_is_before_it() -> None:
    ours = inside(ON_TWO + OBLIQUE, **{"R.x": 900.0, "R.y": 0.0, "N": 0.0})
    assert ours.at(1.0, Inside.AXIAL) == pytest.approx(-900.0)
    assert ours.at(4.0, Inside.AXIAL) == pytest.approx(0.0)


def test_a_push_beside_the_axis_turns_the_body_there() -> None:
    placed = (BEAM + ON_TWO + OBLIQUE).replace('["2 m", 0]', '["L", "1 m"]')
    system = read_template(HEAD + placed, "trial.toml").system
    values = {"L": 6.0, "F": 900.0, "R.x": 900.0, "R.y": 150.0, "N": -150.0}
    ours = internal_forces(system, values, "beam")
    assert ours.residual < 1e-12
    assert ours.at(6.0, Inside.MOMENT) == pytest.approx(900.0)


def test_where_a_support_takes_all_at_once_rounding_is_nothing() -> None:
    """A load right over the hinge: nothing acts inside, and what is left over is of the load."""
    over = POINT_LOAD.replace('at = "C"', 'at = "A"')
    ours = inside(ON_TWO + over, **{"R.y": 900.0 + 2e-13, "N": 0.0})
    assert 0.0 < ours.size(Inside.SHEAR) < 1e-12
    assert ours.residual < 1e-12


@pytest.mark.parametrize("wrong", ["R.y", "N"])
def test_a_support_force_that_is_wrong_is_left_over(wrong: str) -> None:
    right = {"R.y": 600.0, "N": 300.0}
    ours = inside(ON_TWO + POINT_LOAD, **(right | {wrong: 310.0}))
    assert ours.residual > 1e-3
    assert unbalanced(ours, 3.0) > 1e-3


def test_a_curve_that_is_wrong_does_not_balance_the_part_beyond() -> None:
    ours = inside(ON_TWO + EVEN, **{"R.y": 300.0, "N": 300.0})
    (piece,) = ours.pieces
    steep = replace(ours, pieces=(replace(piece, moment=(0.0, 300.0, -49.0)),))
    assert unbalanced(ours, 2.0) < 1e-12
    assert unbalanced(steep, 2.0) > 1e-4


BENT = """
[given]
L = { name = "length", choices = [6.0], unit = "m" }
[points]
A = [0, 0]
C = ["2 m", "1 m"]
B = ["L", 0]
[body.beam]
along = ["A", "C", "B"]
"""
ASIDE = EVEN.replace('to = "B"', 'to = "D"')


def test_only_a_straight_body_is_cut_along() -> None:
    system = read_template(HEAD + BENT + ON_TWO + POINT_LOAD, "trial.toml").system
    with pytest.raises(ValueError, match="beam is not straight"):
        internal_forces(system, {"L": 6.0, "R.x": 0.0, "R.y": 1.0, "N": 1.0, "F": 900.0}, "beam")


def test_a_load_across_the_axis_is_refused() -> None:
    placed = BEAM.replace('B = ["L", 0]', 'B = ["L", 0]\nD = [0, "1 m"]')
    system = read_template(HEAD + placed + ON_TWO + ASIDE, "trial.toml").system
    with pytest.raises(ValueError, match="Q is not spread along beam"):
        internal_forces(system, {"L": 6.0, "R.x": 0.0, "R.y": 1.0, "N": 1.0, "Q": 100.0}, "beam")


@pytest.mark.parametrize(
    ("square", "even"),
    [((-5.0,), True), ((-5.0, 0.0), True), ((-5.0, 1.0), False), ((-5.0, 1.0, -1.0), False)],
)
def test_a_load_is_even_where_it_is_as_large_all_along(
    square: tuple[float, ...], even: bool
) -> None:
    """Also one that is as large at both ends, and larger between them, is not."""
    assert Load(0.0, 1.0, (0.0,), square).even is even


@pytest.mark.parametrize(("end", "slope", "even"), [(1e-9, 1.0, True), (1e6, 1e-6, False)])
def test_a_slope_counts_by_what_it_comes_to(end: float, slope: float, even: bool) -> None:
    assert Load(0.0, end, (0.0,), (100.0, slope)).even is even
