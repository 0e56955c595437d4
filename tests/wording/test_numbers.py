"""Angles as a sentence shows them: as given, whole where they are, with a guard digit else.

The shelf's cable makes 40 degrees with it; at three figures a guard digit makes four.
"""

from __future__ import annotations

import pytest

from probgen.quantities.expression import (
    Call,
    Expression,
    Name,
    negative,
    number,
    over,
    times,
    total,
)
from probgen.quantities.printing import plain
from probgen.statics.geometry import angle_of
from probgen.wording.numbers import angle_worked, degrees_shown
from probgen.working.digits import Digits
from tests.situations import STAYED_SHELF, TWO_SLOPES, worked

THETA = Name("theta", "theta")
D, L = Name("d", "d"), Name("L", "L")


def digits(theta: str = "40") -> Digits:
    text = STAYED_SHELF.replace("choices = [40]", f"choices = [{theta}]")
    return worked(text)[1].digits


# A value without a name of its own, to three figures.
DEGREES = [
    (40.0, "40°"),
    (140.0, "140°"),
    (7.0, "7°"),
    (-30.0, "−30°"),
    (37.5, "37.5°"),  # exact as it is
    (36.86989765, "36.87°"),
    (0.25, "0.250°"),
    (1234.0, "1234°"),
]


@pytest.mark.parametrize(("value", "text"), DEGREES)
def test_whole_degrees_have_no_zeros_and_others_a_guard_digit(value: float, text: str) -> None:
    assert plain(degrees_shown(digits(), value, number(90))) == text


@pytest.mark.parametrize("theta", ["40", "40.0", "37.5"])
def test_a_given_angle_keeps_the_digits_it_was_given_with(theta: str) -> None:
    assert plain(degrees_shown(digits(theta), float(theta), THETA)) == f"{theta}°"


def test_what_is_found_is_no_given_though_it_has_a_name() -> None:
    assert plain(degrees_shown(digits(), 52.0, Name("T", "T"))) == "52°"


WORKED: list[tuple[Expression, str]] = [
    (THETA, "θ = 40.0°"),
    (total((1, number(90)), (-1, THETA)), "90° − θ = 90° − 40.0° = 50°"),
    (total((1, number(180)), (-1, over(THETA, number(2)))), "180° − θ/2 = 180° − 40.0°/2 = 160°"),
    (number(30), "30°"),  # no letter to tell of
    (over(THETA, number(3)), "θ/3 = 40.0°/3 = 13.33°"),
    # An angle worked out of lengths is not written out in them again.
    (times(number(1), Call("atan", (over(D, L),))), "38.66°"),
    # An acute angle by its two sides is; one beyond has another tangent than its own.
    (Call("atan2", (D, L)), "arctan(d/L) = arctan(0.96 m/(1.20 m)) = 38.66°"),
    (Call("atan2", (D, negative(L))), "141.3°"),
    (Call("atan2", (negative(D), L)), "−38.66°"),
]


@pytest.mark.parametrize(("expression", "text"), WORKED)
def test_an_angle_in_letters_with_numbers_and_its_value(expression: Expression, text: str) -> None:
    """atan(0.96/1.20) = 38.66 degrees."""
    assert plain(angle_worked(digits("40.0"), angle_of(expression))) == text


def test_printed_angles_add_up_to_what_is_printed() -> None:
    """31.57° + 33.27° is 64.84°, though the unrounded angles add up to 64.849°."""
    own = worked(TWO_SLOPES)[1]
    found = angle_worked(own.digits, angle_of(total((1, THETA), (1, Name("phi", "phi")))))
    assert plain(found) == "θ + φ = 31.57° + 33.27° = 64.84°"
