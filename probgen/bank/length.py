"""Lengths nobody wrote but a template implies: parts of others."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from probgen.quantities.expression import (
    Expression,
    Number,
    Product,
    Quotient,
    number,
    times,
)
from probgen.statics.geometry import way
from probgen.statics.system import Link, Point


def part_of(length: Expression, part: Fraction) -> Expression:
    """A part of a length, its numbers taken together: a half of L/4 is L/8."""
    match length:
        case Number(value, unit):
            found = _decimal(Fraction(value) * part)
            return Number(found, unit) if found is not None else _times(part, length)
        case Quotient(top, Number(value, None)):
            return _times(part / Fraction(value), top)
        case Product((Number(value, None), *rest)):
            found = _decimal(Fraction(value) * part)
            if found is not None and found != 1:
                return times(Number(found), *rest)
            return _times(Fraction(value) * part, times(*rest))
        case _:
            return _times(part, length)


def _times(part: Fraction, length: Expression) -> Expression:
    top = times(number(part.numerator), length)
    return top if part.denominator == 1 else Quotient(top, number(part.denominator))


def _decimal(value: Fraction) -> Decimal | None:
    """The value in digits, None where they do not end after a few."""
    digits = (Decimal(value.numerator) / value.denominator).normalize()
    exact = Fraction(digits) == value and -int(digits.as_tuple().exponent) <= 6
    return digits if exact else None


def links_to_middle(start: Point, end: Point) -> tuple[Link, ...]:
    """The links to the point halfway between two."""
    links = way({"0": start, "1": end}, "0", "1")
    return (*start.links, *(Link(part_of(h.length, Fraction(1, 2)), h.direction) for h in links))
