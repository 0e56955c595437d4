"""Between which bounds an expression lies, whatever is drawn: interval arithmetic, never too tight.

It tells whether a length written as a difference, such as L - d, is surely positive, so that a
direction along it can be named without computing it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Final

from probgen.quantities.expression import (
    Call,
    Expression,
    Lump,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
)

Interval = tuple[float, float]
ANYTHING: Final[Interval] = (-math.inf, math.inf)
_TRIGONOMETRIC: Final = frozenset({"sin", "cos"})


def bounds(expression: Expression, known: Mapping[str, Interval]) -> Interval:
    """The lowest and the highest value in coherent units; infinite where nothing is known."""
    match expression:
        case Number(value, unit):
            size = float(value) * (unit.factor if unit else 1.0)
            return size, size
        case Name(id=name):
            return known.get(name, ANYTHING)
        case Lump(inner):
            return bounds(inner, known)
        case Sum(terms):
            total: Interval = (0.0, 0.0)
            for sign, term in terms:
                low, high = bounds(term, known)
                total = _added(total, (low, high) if sign > 0 else (-high, -low))
            return total
        case Product(factors):
            product: Interval = (1.0, 1.0)
            for factor in factors:
                product = _multiplied(product, bounds(factor, known))
            return product
        case Quotient(top, bottom):
            return _multiplied(bounds(top, known), _inverse(bounds(bottom, known)))
        case Power(base, exponent):
            return bounds(Product((base,) * exponent), known) if exponent > 0 else ANYTHING
        case Call(function, _) if function in _TRIGONOMETRIC:
            return -1.0, 1.0
        case _:
            return ANYTHING


def sign_of(expression: Expression, known: Mapping[str, Interval]) -> int:
    """+1 when it is surely not negative, -1 when surely not positive, 0 in doubt."""
    low, high = bounds(expression, known)
    return 1 if low >= 0.0 else -1 if high <= 0.0 else 0


def _added(one: Interval, other: Interval) -> Interval:
    return one[0] + other[0], one[1] + other[1]


def _multiplied(one: Interval, other: Interval) -> Interval:
    products = [a * b if a and b else 0.0 for a in one for b in other]  # 0 times infinity is 0
    return min(products), max(products)


def _inverse(interval: Interval) -> Interval:
    low, high = interval
    if low <= 0.0 <= high:
        return ANYTHING
    return 1.0 / high, 1.0 / low
