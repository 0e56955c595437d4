"""Between which bounds an expression lies, whatever is drawn: interval arithmetic, never too tight.

It tells whether a length written as a difference, such as L - d, is surely positive, so that a
direction along it can be named without computing it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Final

from probgen.quantities.expression import (
    UNITY,
    Call,
    Expression,
    Lump,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    evaluate,
    names_in,
    over,
    times,
    total,
)

Interval = tuple[float, float]
ANYTHING: Final[Interval] = (-math.inf, math.inf)


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
        case Call(_, ()):
            size = float(evaluate(expression, {}))
            return size, size
        case Call("sin", (angle,)):
            return _sines(*bounds(angle, known))
        case Call("cos", (angle,)):
            low, high = bounds(angle, known)
            return _sines(low + 90.0, high + 90.0)
        case Call("tan", (angle,)):
            return _tangents(*bounds(angle, known))
        case Call("sqrt", (inner,)):
            low, high = bounds(inner, known)
            return (math.sqrt(low), math.sqrt(high)) if low >= 0.0 else ANYTHING
        case _:
            return ANYTHING


def sign_of(expression: Expression, known: Mapping[str, Interval]) -> int:
    """+1 when it is surely not negative, -1 when surely not positive, 0 in doubt."""
    low, high = bounds(expression, known)
    if low < 0.0 < high and isinstance(expression, Sum):
        for name in sorted(names_in(expression)):
            within = _divided(expression, name)
            if within is not None:
                return sign_of(within, known) * _plain_sign(known.get(name, ANYTHING))
    return _plain_sign((low, high))


def _plain_sign(interval: Interval) -> int:
    low, high = interval
    return 1 if low >= 0.0 else -1 if high <= 0.0 else 0


def _divided(expression: Expression, name: str) -> Expression | None:
    """It without a quantity that is a factor of the whole: 1 - 2 k/h of w - 2 w k/h; else None."""
    match expression:
        case Name(id=id):
            return UNITY if id == name else None
        case Lump(inner):
            return _divided(inner, name)
        case Quotient(top, bottom):
            above = _divided(top, name)
            return None if above is None else over(above, bottom)
        case Product(factors):
            for place, factor in enumerate(factors):
                rest = _divided(factor, name)
                if rest is not None:
                    return times(*factors[:place], rest, *factors[place + 1 :])
        case Sum(terms):
            left = [(sign, _divided(term, name)) for sign, term in terms]
            found = [(sign, term) for sign, term in left if term is not None]
            return total(*found) if len(found) == len(left) else None
    return None


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


def _sines(low: float, high: float) -> Interval:
    """Of all angles between two, in degrees."""
    if not high - low < 360.0:
        return -1.0, 1.0
    ends = [math.sin(math.radians(angle)) for angle in (low, high)]
    crest, trough = (turn + 360.0 * math.ceil((low - turn) / 360.0) for turn in (90.0, 270.0))
    least = -1.0 if trough <= high else min(ends)
    return least, 1.0 if crest <= high else max(ends)


def _tangents(low: float, high: float) -> Interval:
    """Of all angles between two, in degrees, where no quarter turn is between them."""
    if not -90.0 < low <= high < 90.0:
        return ANYTHING
    return math.tan(math.radians(low)), math.tan(math.radians(high))
