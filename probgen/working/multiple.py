"""Answers in multiples of their units: 1.24 kN in place of 1240 N."""

from __future__ import annotations

import math
from collections.abc import Collection
from decimal import Decimal
from typing import Final

from probgen.quantities.expression import Number, evaluate
from probgen.quantities.rounding import exact
from probgen.quantities.unit import Unit, multiple_of

_LEAST: Final = Decimal("0.1")
"""Of a multiple; what is less would have zeros before its figures."""


def figures_shown(number: Number) -> Number:
    """The number in a multiple of its unit where a zero at its end would only fill a place.

    1240 N to three figures is 1.24 kN; where there is no such unit the number stays, and is printed
    with a power of ten.
    """
    while number.unit is not None and int(number.value.as_tuple().exponent) > 0:
        multiple = multiple_of(number.unit)
        if multiple is None:
            break
        number = _in(multiple, number)
    return number


def in_one_of(multiples: Collection[Unit], number: Number) -> Number:
    """The number in a multiple of its unit that is used beside it; as it is where none is.

    748 N beside 1.24 kN is 0.748 kN, and nothing is 0 kN, whose unit gives it away in advance else;
    74.8 N stays, for 0.0748 kN is harder to read.
    """
    multiple = multiple_of(number.unit) if number.unit is not None else None
    if multiple is None or multiple not in multiples:
        return number
    if number.value == 0:
        return Number(number.value, multiple)
    larger = _in(multiple, number)
    return larger if abs(larger.value) >= _LEAST else number


def in_unit_of(due: Number, number: Number) -> Number:
    """The number in the unit that another, of a multiple or a part of its unit, is printed in."""
    if number.unit is None or due.unit is None or due.unit == number.unit:
        return number
    related = multiple_of(number.unit) == due.unit or multiple_of(due.unit) == number.unit
    return _in(due.unit, number) if related else number


def same_amount(one: Number, other: Number) -> bool:
    """Whether two printed numbers stand for the same value, whatever unit each is in."""
    return math.isclose(*(float(evaluate(each, {})) for each in (one, other)), rel_tol=1e-12)


def _in(multiple: Unit, number: Number) -> Number:
    assert number.unit is not None
    places = exact(float(multiple.size / number.unit.size)).adjusted()
    return Number(number.value.scaleb(-places), multiple)
