"""The slope and the length of a way that is told by two lengths, level and upright."""

from __future__ import annotations

from collections import Counter

from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Call,
    Expression,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    negative,
    number,
    over,
    times,
)
from probgen.quantities.factors import factors_of
from probgen.quantities.like_terms import collected_sum

_EXACT = 6  # the most digits of a root that is written as a number


def slant_of(run: Expression, rise: Expression) -> Expression:
    """The length of a way by two lengths: L, where it runs d and rises sqrt(L^2 - d^2).

    Of a slope of 4 in 3 it is 5.
    """
    match run, rise:
        case Number(wide, None), Number(high, None):
            slant = (wide * wide + high * high).sqrt().normalize()
            if len(slant.as_tuple().digits) <= _EXACT:
                return Number(slant, None)
        case Quotient(longer, Number() as share), Quotient(taller, Number() as other) if (
            share == other
        ):
            return over(slant_of(longer, taller), share)  # half of that of L and h
    for one, far in ((run, rise), (rise, run)):
        match unsigned(far):
            case Call("sqrt", (Sum(((1, Power(whole, 2)), (-1, Power(part, 2)))),)) if (
                part == unsigned(one)
            ):
                return whole
    return Call("hypot", (unsigned(run), unsigned(rise)))


def slope_of(run: Expression, rise: Expression) -> Expression:
    """The direction of a way by two lengths: t, where it runs s and rises s tan t.

    So is that of one that runs L cos t and rises L sin t; of two equal lengths it is 45 degrees.
    """
    for factor in factors_of(rise):
        match factor:
            case Call("sin", (slope,)):
                sides = Counter(factors_of(rise)), Counter(factors_of(run))
                if sides[0] - Counter([factor]) + Counter([Call("cos", (slope,))]) == sides[1]:
                    return slope
    if collected_sum((1, rise), (-1, run)) == ZERO:
        return number(45)
    found = _over_tangent(rise)
    if found is not None and collected_sum((1, found[0]), (-1, run)) == ZERO:
        return found[1]
    match rise, run:
        case Quotient(high, Number() as part), Quotient(wide, Number() as other) if part == other:
            return Call("atan2", (high, wide))  # h and L, where they are h/2 and L/2
    return Call("atan2", (rise, run))


def by_tangent(run: Expression, rise: Expression) -> tuple[Expression, Expression] | None:
    """Length and slope of a way that runs h/tan t and rises h, or runs s and rises s tan t."""
    for leg, other, part in ((rise, run, "cos"), (_turned_over(run), rise, "sin")):
        found = _over_tangent(leg)
        if found is not None and collected_sum((1, found[0]), (-1, other)) == ZERO:
            return over(other, Call(part, (found[1],))), found[1]
    return None


def _turned_over(run: Expression) -> Expression:
    """h tan t for a run of h/tan t; 0 for any other run."""
    match run:
        case Quotient(top, bottom) if (found := _over_tangent(bottom)) is not None:
            return times(over(top, found[0]), Call("tan", (found[1],)))
        case _:
            return ZERO


def _over_tangent(rise: Expression) -> tuple[Expression, Expression] | None:
    """s and t, where a length is s tan t."""
    match rise:
        case Call("tan", (slope,)):
            return UNITY, slope
        case Product(factors):
            for place, factor in enumerate(factors):
                match factor:
                    case Call("tan", (slope,)):
                        return times(*factors[:place], *factors[place + 1 :]), slope
            return None
        case Quotient(top, bottom):
            found = _over_tangent(top)
            return found and (over(found[0], bottom), found[1])
        case _:
            return None


def unsigned(side: Expression) -> Expression:
    """A side without minus signs alone, which its square does not need."""
    return negative(side) if downward(side) else side


def downward(side: Expression) -> bool:
    """Whether a side is written with minus signs alone."""
    return isinstance(side, Sum) and all(sign < 0 for sign, _ in side.terms)
