"""What kind of quantity an expression is: lengths added to lengths, sines of angles.

A plain number stands for degrees where an angle is expected (in a sum with angles, in sin, cos and
tan), and a plain zero for a quantity of any dimension.
"""

from __future__ import annotations

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
    Root,
    Sum,
    is_number,
    names_in,
)
from probgen.quantities.unit import ANGLE, PLAIN, Dimension

_OF_AN_ANGLE: Final = frozenset({"sin", "cos", "tan", "rad"})
_GIVING_AN_ANGLE: Final = frozenset({"asin", "acos", "atan", "atan2", "deg"})
_OF_A_NUMBER: Final = frozenset({"exp", "ln"})

Dimensions = Mapping[str, Dimension]


class DimensionError(ValueError):
    """Quantities of different kinds where one kind is needed."""


def phrase(dimension: Dimension) -> str:
    """The kind of quantity with its article, "an angle"."""
    return f"{'an' if dimension.noun[0] in 'aeiou' else 'a'} {dimension.noun}"


def dimension_of(expression: Expression, dimensions: Dimensions) -> Dimension:
    """The dimension of an expression whose names have these dimensions.

    Raises DimensionError where kinds are mixed; KeyError for a name without a dimension.
    """
    match expression:
        case Number(_, unit):
            return unit.dimension if unit else PLAIN
        case Name(id=name):
            return dimensions[name]
        case Lump(inner):
            return dimension_of(inner, dimensions)
        case Sum(terms):
            return _common(tuple(term for _, term in terms), dimensions, "added to")
        case Product(factors):
            product = PLAIN
            for factor in factors:
                product = product.times(dimension_of(factor, dimensions))
            return product
        case Quotient(top, bottom):
            return dimension_of(top, dimensions).over(dimension_of(bottom, dimensions))
        case Power(base, exponent):
            return dimension_of(base, dimensions).power(exponent)
        case Call(function, arguments):
            return _of_call(function, arguments, dimensions)
        case Root(name=name):
            return dimensions[name]


def require_dimension(expression: Expression, dimensions: Dimensions, wanted: Dimension) -> None:
    """Raises DimensionError unless the expression is, or may stand for, the dimension wanted."""
    found = dimension_of(expression, dimensions)
    if found != wanted and not _stands_for(expression, found, wanted):
        raise DimensionError(f"{phrase(found)}, where {phrase(wanted)} is needed{_hint(found)}")


def common_dimension(left: Expression, right: Expression, dimensions: Dimensions) -> Dimension:
    """The dimension two sides of a comparison share.  Raises DimensionError."""
    return _common((left, right), dimensions, "compared with")


def _of_call(function: str, arguments: tuple[Expression, ...], dimensions: Dimensions) -> Dimension:
    if function in _OF_AN_ANGLE:
        require_dimension(arguments[0], dimensions, ANGLE)
        return PLAIN
    shared = _common(arguments, dimensions, "put beside")
    if function in _GIVING_AN_ANGLE:
        if function != "atan2" and shared != PLAIN:
            raise DimensionError(f"{function} of {phrase(shared)}; it needs a plain number")
        return ANGLE
    if function in _OF_A_NUMBER and shared != PLAIN:
        hint = "; rad(beta) is an angle as a number" if shared == ANGLE else ""
        raise DimensionError(f"{function} of {phrase(shared)}; it needs a plain number{hint}")
    if function != "sqrt":
        return shared
    if any(exponent % 2 for exponent in shared):
        raise DimensionError(f"the square root of {phrase(shared)}")
    return Dimension(*(exponent // 2 for exponent in shared))


def _common(parts: tuple[Expression, ...], dimensions: Dimensions, verb: str) -> Dimension:
    """The one dimension of all parts; plain numbers give way to it where they may."""
    found = [(part, dimension_of(part, dimensions)) for part in parts]
    shared = next((dimension for _, dimension in found if dimension != PLAIN), PLAIN)
    for part, dimension in found:
        if dimension != shared and not _stands_for(part, dimension, shared):
            message = f"{phrase(dimension)} {verb} {phrase(shared)}"
            raise DimensionError(message + _hint(PLAIN if PLAIN in (dimension, shared) else shared))
    return shared


def _stands_for(expression: Expression, found: Dimension, wanted: Dimension) -> bool:
    if found != PLAIN or names_in(expression):
        return False
    return wanted == ANGLE or is_number(expression, 0)


def _hint(found: Dimension) -> str:
    return "; write a unit after a plain number, as in 0.1 m" if found == PLAIN else ""
