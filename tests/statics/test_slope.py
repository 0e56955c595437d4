"""Ways that are told by two lengths: how long they are, and at which slope."""

import math

import numpy as np
import pytest

from probgen.quantities.expression import (
    Call,
    Expression,
    Name,
    Power,
    evaluate,
    negative,
    number,
    over,
    times,
    total,
)
from probgen.quantities.printing import plain
from probgen.statics.slope import by_tangent, slant_of, slope_of

L, D, TH = (Name(id, id) for id in ("L", "d", "theta"))
HEIGHT = Call("sqrt", (total((1, Power(L, 2)), (-1, Power(D, 2))),))
SLANTS = [
    (D, HEIGHT, "L"),
    (HEIGHT, D, "L"),
    (negative(D), HEIGHT, "L"),
    (HEIGHT, negative(D), "L"),
    (L, HEIGHT, "hypot"),  # of another whole
    (D, L, "hypot"),
]


@pytest.mark.parametrize(("run", "rise", "written"), SLANTS)
def test_a_slant_is_the_whole_that_its_side_comes_from(
    run: Expression, rise: Expression, written: str
) -> None:
    found = slant_of(run, rise)
    assert plain(found) == "L" if written == "L" else isinstance(found, Call)
    values = {"L": 1.3, "d": 0.5}
    sides = (float(evaluate(each, values)) for each in (run, rise))
    assert float(evaluate(found, values)) == pytest.approx(math.hypot(*sides), rel=1e-15)


@pytest.mark.parametrize(
    ("run", "rise", "written"),
    [(3, 4, "5"), (4, -3, "5"), (12, 5, "13"), (0.8, 0.6, "1"), (3, 2, "")],
)
def test_a_slant_of_numbers_is_one_where_that_has_few_digits(
    run: float, rise: float, written: str
) -> None:
    found = slant_of(number(str(run)), number(str(rise)))
    assert plain(found) == written if written else isinstance(found, Call)


def test_halves_of_two_lengths_have_the_slope_of_the_lengths_and_half_their_slant() -> None:
    """Not arctan(L/2/(d/2)), nor sqrt((d/2)^2 + (L/2)^2); a half and a third are left alone."""
    half = [over(each, number(2)) for each in (D, L)]
    assert slope_of(*half) == Call("atan2", (L, D))
    assert slant_of(*half) == over(Call("hypot", (D, L)), number(2))
    third = over(L, number(3))
    assert slope_of(half[0], third) == Call("atan2", (third, half[0]))
    assert slant_of(half[0], third) == Call("hypot", (half[0], third))


def tangent(slope: Expression) -> Expression:
    return Call("tan", (slope,))


SLOPES = [
    (D, times(D, tangent(TH)), "θ"),
    (number(1), tangent(TH), "θ"),
    (D, times(L, tangent(TH)), ""),  # of another length
    (D, tangent(TH), ""),
    (times(number(2), L), total((1, L), (1, L)), "45"),
]


@pytest.mark.parametrize(("run", "rise", "slope"), SLOPES)
def test_a_slope_is_the_angle_whose_tangent_it_has(
    run: Expression, rise: Expression, slope: str
) -> None:
    found = slope_of(run, rise)
    assert plain(found) == slope if slope else isinstance(found, Call)
    values = {"L": 1.3, "d": 0.5, "theta": 23.7}
    sides = [float(evaluate(each, values)) for each in (run, rise)]
    angle = np.degrees(np.arctan2(sides[1], sides[0]))
    assert float(evaluate(found, values)) == pytest.approx(angle, rel=1e-12)


LEGS = [
    (over(D, tangent(TH)), D, "d/(sin θ)"),
    (D, times(D, tangent(TH)), "d/(cos θ)"),
    (over(D, tangent(TH)), L, ""),
    (D, L, ""),
]


@pytest.mark.parametrize(("run", "rise", "length"), LEGS)
def test_a_leg_that_has_the_tangent_of_the_other_gives_length_and_slope(
    run: Expression, rise: Expression, length: str
) -> None:
    found = by_tangent(run, rise)
    assert (found and (plain(found[0]), found[1])) == ((length, TH) if length else None)
