"""One equation solved for one quantity: the expression that is that quantity.

Linear equations are solved by taking the quantity out; A sin x + B cos x + C = 0 by an inverse
function; other forms by a computer algebra system where it gives one that can be shown, and else
numerically within the range the quantity has.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TypeGuard

from probgen.quantities.angle_sum import with_angle_apart, with_angle_sums
from probgen.quantities.cancelling import cancelled
from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Call,
    Expression,
    Name,
    Number,
    Power,
    Quotient,
    Root,
    Sum,
    linear_parts,
    names_in,
    negative,
    number,
    over,
    positive_first,
    substituted,
    times,
    total,
)
from probgen.quantities.factors import (
    factored,
    factors_of,
    has_below,
    multiplied_by,
    shared_factors,
    terms_of,
    with_powers,
    without_factors,
)
from probgen.quantities.like_terms import collected, collected_sum, in_one_order
from probgen.quantities.unit import DEGREE
from probgen.statics.algebra import closed_forms

_SINE, _COSINE, _TANGENT, _SQUARE, _POWER = (
    Name(f"?{n}", n) for n in ("sin", "cos", "tan", "square", "power")
)
_PARTS = {"sin": _SINE, "cos": _COSINE, "tan": _TANGENT}


Range = tuple[float, float]
"""Where a quantity may lie, coherent units; infinite where nothing is known."""


def solved_for(
    expression: Expression, unknown: str, within: Range = (-math.inf, math.inf)
) -> Expression | None:
    """The value of `unknown` that makes the expression zero; None when no way here leads to it.

    The principal value is given where there are several; `all_roots` has them all.
    """
    return next(iter(all_roots(expression, unknown, within)), None)


def all_roots(
    expression: Expression, unknown: str, within: Range = (-math.inf, math.inf)
) -> tuple[Expression, ...]:
    """Every value of `unknown` that makes the expression zero, angles up to a turn farther on.

    A numerical `Root` stands for all roots in its range.
    """
    parts = linear_parts(expression, unknown)
    if parts is not None:
        return () if collected(parts[0]) == ZERO else (isolated(*parts),)
    closed = _from_angle(expression, unknown) or _from_square(expression, unknown)
    if closed is not None:
        return (closed, *_other_angles(closed))
    exponent = _from_exponent(expression, unknown)
    if exponent is not None:
        return (exponent,)
    roots = closed_forms(expression, unknown)
    if not roots and all(map(math.isfinite, within)):
        return (Root(expression, unknown, *within),)
    return roots


def _other_angles(value: Expression) -> tuple[Expression, ...]:
    """The angles beside a principal value that solve the same equation, up to a turn farther."""
    half, turn = number(180, DEGREE), number(360, DEGREE)
    match value:
        case Call("asin", _):
            return (total((1, half), (-1, value)), total((1, value), (1, turn)))
        case Call("acos", _):
            return (negative(value), total((1, turn), (-1, value)))
        case Call("atan", _):
            signs = ((1, half), (-1, half), (1, turn))
            return tuple(total((1, value), signed) for signed in signs)
        case Sum(((1, Call("asin", _) as principal), (sign, shift))):
            return (
                total((1, half), (-1, principal), (sign, shift)),
                total((1, value), (1, turn)),
            )
        case Sum(((1, Call("acos", _) as principal), (sign, shift))):
            back = total((sign, shift), (-1, principal))
            return (back, *(total((1, each), (1, turn)) for each in (value, back)))
        case _:
            return ()


def isolated(slope: Expression, rest: Expression) -> Expression:
    """-rest/slope, with the signs the way one writes it by hand."""
    rest, slope = (_over_one_line(_without_ones_above(collected(part))) for part in (rest, slope))
    rest, slope = _cleared(rest, slope)
    match slope:
        case Sum(((-1, Quotient() as turned),)):
            rest, slope = negative(rest), turned
    if shared := shared_factors([term for _, term in (*terms_of(rest), *terms_of(slope))]):
        rest, slope = without_factors(rest, shared), without_factors(slope, shared)
    if isinstance(slope, Quotient):
        bottom = slope.bottom  # a number stands before letters: 4 b
        below = factors_of(bottom)
        numbers = [each for each in below if isinstance(each, Number)]
        letters = [each for each in below if not isinstance(each, Number)]
        rest, slope = _plus_first(numbers, rest, letters), slope.top
    quotient = over(negative(rest), slope)
    match quotient:
        case Quotient():
            quotient = _reduced(quotient)
        case Sum(((-1, Quotient() as inner),)):
            quotient = negative(_reduced(inner))
    if isinstance(quotient, Quotient):
        if isinstance(quotient.top, Sum) and all(sign < 0 for sign, _ in quotient.top.terms):
            return negative(Quotient(negative(quotient.top), positive_first(quotient.bottom)))
        return Quotient(positive_first(quotient.top), positive_first(quotient.bottom))
    match quotient:
        case Sum(((-1, Quotient(top, Sum(terms) as bottom)),)) if any(s < 0 for s, _ in terms):
            return Quotient(top, positive_first(negative(bottom)))  # no minus before a difference
    return positive_first(quotient)


def _plus_first(
    before: Sequence[Expression], rest: Expression, after: Sequence[Expression]
) -> Expression:
    """A product with a sum that goes to the other side: -(b - a) c, which there is (b - a) c."""
    signs = {sign for sign, _ in terms_of(rest)}
    if isinstance(rest, Sum) and len(signs) > 1 and (before or after):
        return negative(times(*before, positive_first(negative(rest)), *after))
    return times(*before, rest, *after)


def _without_ones_above(value: Expression) -> Expression:
    """A sum with v/b in the place of v (1/b)."""
    terms: list[tuple[int, Expression]] = []
    for sign, term in terms_of(value):
        ones = [f for f in factors_of(term) if isinstance(f, Quotient) and f.top == UNITY]
        rest = [factor for factor in factors_of(term) if factor not in ones]
        if ones and rest:
            term = over(times(*rest), times(*(one.bottom for one in ones)))
        terms.append((sign, term))
    return total(*terms)


def _over_one_line(value: Expression) -> Expression:
    """A sum of fractions over one length as one: y/a + (y - h)/a is (2 y - h)/a."""
    fractions = [(sign, term) for sign, term in terms_of(value) if isinstance(term, Quotient)]
    bottoms = {term.bottom for _, term in fractions}
    if not 1 < len(fractions) == len(terms_of(value)) or len(bottoms) > 1:
        return value
    (bottom,) = bottoms
    return over(collected_sum(*((sign, term.top) for sign, term in fractions)), bottom)


def _cleared(rest: Expression, slope: Expression) -> tuple[Expression, Expression]:
    """Both times the length below what the unknown is taken by, where the rest has it below too."""
    if len(terms_of(slope)) == 1:
        for bottom in (f.bottom for f in factors_of(terms_of(slope)[0][1]) if _over_name(f)):
            if any(has_below(term, bottom) for _, term in terms_of(rest)):
                return multiplied_by(rest, bottom), multiplied_by(slope, bottom)
    return rest, slope


def _over_name(factor: Expression) -> TypeGuard[Quotient]:
    return isinstance(factor, Quotient) and isinstance(factor.bottom, Name)


def tidied(value: Expression) -> Expression:
    """A solution whose like terms meet in whatever order their factors stand: -1 for a - 1 - a.

    What all terms of a sum share is written once.  What vanishes above or below stays as it is, for
    it may be 0/0: equations that only seemed independent.
    """
    match value:
        case Quotient():
            pass
        case Call("atan" | "asin" | "acos" as function, (Quotient() as ratio,)):
            return Call(function, (tidied(ratio),))
        case Sum(((-1, Quotient() as turned),)):
            return negative(tidied(turned))
        case _:
            return with_powers(factored(value))
    top, bottom = (
        with_angle_sums(collected(in_one_order(part))) for part in (value.top, value.bottom)
    )
    if ZERO in (top, bottom):
        return value
    if (top, bottom) != (value.top, value.bottom):
        value = positive_first(over(top, bottom))
    match value := cancelled(value):
        case Quotient(top, bottom):
            return with_powers(_one_fraction(factored(top), factored(bottom)))
        case _:
            return with_powers(factored(value))


def _one_fraction(top: Expression, bottom: Expression) -> Expression:
    """top/(a/b) as one fraction, top b/a."""
    match bottom:
        case Quotient(over_line, below_line):
            return over(times(top, below_line), over_line)
        case _:
            return Quotient(top, bottom)


def _reduced(quotient: Quotient) -> Expression:
    """A quotient without the factors that all terms above and below share."""
    above, below = terms_of(quotient.top), terms_of(quotient.bottom)
    shared = shared_factors([term for _, term in (*above, *below)])
    if not shared:
        return quotient
    return over(without_factors(quotient.top, shared), without_factors(quotient.bottom, shared))


def _from_angle(expression: Expression, unknown: str) -> Expression | None:
    """x from A sin x + B cos x + C = 0 where A, B or C is missing, or from A tan x + C = 0."""

    def part(inner: Expression) -> Expression | None:
        if isinstance(inner, Call) and inner.function in _PARTS:
            argument = inner.arguments[0]
            if isinstance(argument, Name) and argument.id == unknown:
                return _PARTS[inner.function]
        return None

    replaced = substituted(expression, part)
    held = names_in(replaced)
    if unknown in held:
        apart = with_angle_apart(expression, unknown)
        return None if apart == expression else _from_angle(apart, unknown)
    sine, cosine = _SINE.id in held, _COSINE.id in held
    if _TANGENT.id in held:
        return None if sine or cosine else _inverse("atan", replaced, _TANGENT)
    if sine and cosine:
        return _from_both(replaced)
    if sine or cosine:
        return _inverse("asin" if sine else "acos", replaced, _SINE if sine else _COSINE)
    return None


def _inverse(function: str, expression: Expression, part: Name) -> Expression | None:
    parts = linear_parts(expression, part.id)
    return parts and Call(function, (isolated(*parts),))


def _from_both(expression: Expression) -> Expression | None:
    """A sin x + B cos x + C = 0: tan x = -B/A without C, else sin(x + d) = -C/sqrt(A^2 + B^2)
    with tan d = B/A, all signs turned where A is taken away.
    """
    sines = linear_parts(expression, _SINE.id)
    cosines = sines and linear_parts(sines[1], _COSINE.id)
    if sines is None or cosines is None or _COSINE.id in names_in(sines[0]):
        return None
    if cosines[1] == ZERO:
        return Call("atan", (isolated(sines[0], cosines[0]),))
    a, b, c = (collected(part) for part in (sines[0], *cosines))
    if all(sign < 0 for sign, _ in terms_of(a)):
        a, b, c = negative(a), negative(b), negative(c)
    turn = -1 if all(sign < 0 for sign, _ in terms_of(b)) else 1
    side = negative(b) if turn < 0 else b
    if (one := _as_one_turn(a, side)) is not None:
        return _of_one_turn(*one, turn, c)
    shifted = Call("asin", (isolated(Call("hypot", (a, side)), c),))
    if not isinstance(a, Name | Number) and any(isinstance(f, Call | Sum) for f in factors_of(a)):
        return total((1, shifted), (-1, Call("atan2", (b, a))))  # its sign is not known
    return total((1, shifted), (-turn, Call("atan", (isolated(a, negative(side)),))))


def _as_one_turn(a: Expression, b: Expression) -> tuple[str, Expression, Expression] | None:
    """("sin", k, y) of k cos y and k sin y, as k sin(x + y) has them; ("cos", k, y) of k sin y and
    k cos y; else None.
    """
    shared = shared_factors([a, b])
    if len(terms_of(a)) > 1 or len(terms_of(b)) > 1:
        return None
    match without_factors(a, shared), without_factors(b, list(shared)):
        case Call("cos", (y,)), Call("sin", (same,)) if y == same:
            return "sin", times(*shared), y
        case Call("sin", (y,)), Call("cos", (same,)) if y == same:
            return "cos", times(*shared), y
        case _:
            return None


def _of_one_turn(
    function: str, size: Expression, shift: Expression, turn: int, rest: Expression
) -> Expression:
    """x from k sin(x + turn y) + C = 0, or from turn k cos(x - turn y) + C = 0."""
    if function == "sin":
        return total((1, Call("asin", (isolated(size, rest),))), (-turn, shift))
    signed = size if turn > 0 else negative(size)
    return total((1, Call("acos", (isolated(signed, rest),))), (turn, shift))


def _from_exponent(expression: Expression, unknown: str) -> Expression | None:
    """x from A exp(b x) + C = 0: b x = ln(-C/A); an angle x stands there as a number, rad(x)."""
    exponents: set[Expression] = set()

    def power(inner: Expression) -> Expression | None:
        match inner:
            case Call("exp", (exponent,)) if unknown in names_in(exponent):
                exponents.add(exponent)
                return _POWER
            case _:
                return None

    parts = linear_parts(substituted(expression, power), _POWER.id)
    if (
        parts is None
        or len(exponents) != 1
        or unknown in names_in(Sum(((1, parts[0]), (1, parts[1]))))
    ):
        return None
    logarithm = Call("ln", (isolated(*parts),))

    def as_number(inner: Expression) -> Expression | None:
        match inner:
            case Call("rad", (Name(id=name),)) if name == unknown:
                return _POWER
            case _:
                return None

    (exponent,) = exponents
    written = substituted(exponent, as_number)
    turned = linear_parts(written, _POWER.id if written != exponent else unknown)
    if turned is None or unknown in names_in(turned[0]) | names_in(turned[1]):
        return None
    value = isolated(turned[0], total((1, turned[1]), (-1, logarithm)))
    return Call("deg", (value,)) if written != exponent else value


def _from_square(expression: Expression, unknown: str) -> Expression | None:
    """The positive root of A x^2 + C = 0."""

    def square(inner: Expression) -> Expression | None:
        match inner:
            case Power(Name(id=name), 2) if name == unknown:
                return _SQUARE
            case _:
                return None

    replaced = substituted(expression, square)
    if unknown in names_in(replaced) or _SQUARE.id not in names_in(replaced):
        return None
    parts = linear_parts(replaced, _SQUARE.id)
    return parts and Call("sqrt", (isolated(*parts),))
