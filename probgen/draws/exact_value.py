"""Derived quantities valued exactly, so that a printed half is a half on every machine.

Sums, products and quotients are exact fractions.  Functions go through floats and are brought back
to twelve significant figures, where all mathematics libraries agree.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from decimal import ROUND_HALF_UP, Decimal, localcontext
from fractions import Fraction
from typing import Final

from probgen.quantities.expression import (
    FUNCTIONS,
    Call,
    Expression,
    Lump,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)
from probgen.quantities.rounding import exact
from probgen.quantities.unit import Unit

FIGURES: Final = 4
"""Significant figures of a derived quantity whose author states no step."""


def exact_value(expression: Expression, values: Mapping[str, Fraction]) -> Fraction:
    """The value in coherent units.

    Raises ArithmeticError when there is none (a division by zero, the root of a negative number).
    """
    match expression:
        case Number(value, unit):
            return Fraction(value) * (unit.size if unit else 1)
        case Name(id=name):
            return values[name]
        case Lump(inner):
            return exact_value(inner, values)
        case Sum(terms):
            return sum((sign * exact_value(term, values) for sign, term in terms), Fraction(0))
        case Product(factors):
            return math.prod((exact_value(part, values) for part in factors), start=Fraction(1))
        case Quotient(top, bottom):
            return exact_value(top, values) / exact_value(bottom, values)
        case Power(base, exponent):
            return Fraction(exact_value(base, values) ** exponent)
        case Call(function, arguments):
            return _called(function, [exact_value(part, values) for part in arguments])
        case Root():
            raise ArithmeticError("a root found numerically is no data")


def in_unit(value: Fraction, unit: Unit, step: Decimal | None) -> Decimal:
    """A value in its unit, rounded half up to the step (or to `FIGURES`), with its digits."""
    size = value / unit.size
    if step is not None:
        steps = math.floor(abs(size) / Fraction(step) + Fraction(1, 2))
        return (step * steps).copy_sign(Decimal(-1 if size < 0 else 1)) if steps else step * 0
    with localcontext(prec=FIGURES, rounding=ROUND_HALF_UP):
        return Decimal(size.numerator) / Decimal(size.denominator)


def _called(function: str, arguments: list[Fraction]) -> Fraction:
    match function:
        case "abs":
            return abs(arguments[0])
        case "min":
            return min(arguments)
        case "max":
            return max(arguments)
    value = float(FUNCTIONS[function](*(float(argument) for argument in arguments)))
    if not math.isfinite(value):
        raise ArithmeticError(f"{function} has no value here")
    return Fraction(exact(value))
