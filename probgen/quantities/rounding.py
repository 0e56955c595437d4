"""Rounding to significant figures or to a step, in decimal, by the course's rule."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, ROUND_HALF_UP, Context, Decimal
from functools import lru_cache
from math import isfinite
from typing import Final, Literal

RoundingRule = Literal["half up", "half even", "down", "up"]
"""What happens to an exact half; "down" and "up" leave nothing of the value on the other side, but
for less than a twentieth of the last place: nobody rounds 819.998 down to 819.
"""

_RULES: Final = {
    "half up": ROUND_HALF_UP,
    "half even": ROUND_HALF_EVEN,
    "down": ROUND_FLOOR,
    "up": ROUND_CEILING,
}
_SIDES: Final = ("down", "up")
_HAIR: Final = Decimal("0.05")  # of the last place
_NOISE_FREE: Final = Context(prec=12)


def exact(value: float) -> Decimal:
    """The decimal a computed float stands for, to twelve figures: 2.4999999999999996 is 2.5.

    Whole numbers are written in full, 90 and not 9E+1, for no figure of theirs is unknown.
    Raises ArithmeticError for what is none, as of a limit that is never reached.
    """
    if not isfinite(value):
        raise ArithmeticError("a value of its working is beyond all bounds")
    return in_full(_NOISE_FREE.create_decimal_from_float(float(value)).normalize())


def in_full(value: Decimal) -> Decimal:
    """The same number down to its units place (3.5E+2 is 350), if it has twelve figures at most."""
    large = int(value.as_tuple().exponent) > 0 and value.adjusted() < _NOISE_FREE.prec
    return value.quantize(Decimal(1)) if large else value


def round_figures(value: float | Decimal, figures: int, rule: RoundingRule = "half up") -> Decimal:
    """The value to so many significant figures; trailing zeros are kept, zero is Decimal(0)."""
    number = value if isinstance(value, Decimal) else exact(value)
    if number.is_zero():
        return Decimal(0)
    rounded = _to_place(number, number.adjusted() - figures + 1, rule)
    if rounded.adjusted() > number.adjusted():  # 9.996 became 10.00: one digit too many
        rounded = _to_place(number, rounded.adjusted() - figures + 1, rule)
    return rounded


def round_places(value: float | Decimal, places: int, rule: RoundingRule = "half up") -> Decimal:
    """The value to so many decimal places."""
    number = value if isinstance(value, Decimal) else exact(value)
    return _to_place(number, -places, rule)


def last_place(value: Decimal) -> Decimal:
    """One unit of the last digit printed."""
    return _place(int(value.as_tuple().exponent))


def _to_place(value: Decimal, exponent: int, rule: RoundingRule) -> Decimal:
    place = _place(exponent)
    if rule in _SIDES:
        nearest = value.quantize(place, rounding=ROUND_HALF_UP)
        if abs(value - nearest) < place * _HAIR:
            return nearest
    return value.quantize(place, rounding=_RULES[rule])


@lru_cache(maxsize=256)
def _place(exponent: int) -> Decimal:
    return Decimal(1).scaleb(exponent)


def shortened(digits: Decimal, figures: int) -> Decimal:
    """The number without zeros at its end behind the point, down to so many figures."""
    while (
        len(shown := digits.as_tuple().digits) > figures
        and shown[-1] == 0
        and int(digits.as_tuple().exponent) < 0
    ):
        digits = digits.quantize(last_place(digits).scaleb(1))
    return digits
