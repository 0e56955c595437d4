"""One equation solved for one quantity: the expression that is that quantity.

Linear equations are solved by taking the quantity out; A sin x + B cos x + C = 0 by an inverse
function; other forms by a computer algebra system where it gives one that can be shown, and else
numerically within the range the quantity has.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Call,
    Expression,
    Name,
    Number,
    Power,
    Product,
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
from probgen.quantities.like_terms import collected, in_one_order
from probgen.quantities.unit import DEGREE
from probgen.statics.algebra import closed_forms

_SINE, _COSINE, _TANGENT, _SQUARE = (Name(f"?{n}", n) for n in ("sin", "cos", "tan", "square"))
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
    """Every value of `unknown` that makes the expression zero, angles within a full turn.

    A numerical `Root` stands for all roots in its range.
    """
    parts = linear_parts(expression, unknown)
    if parts is not None:
        return () if collected(parts[0]) == ZERO else (isolated(*parts),)
    closed = _from_angle(expression, unknown) or _from_square(expression, unknown)
    if closed is not None:
        return (closed, *_other_angles(closed))
    roots = closed_forms(expression, unknown)
    if not roots and all(map(math.isfinite, within)):
        return (Root(expression, unknown, *within),)
    return roots


def _other_angles(value: Expression) -> tuple[Expression, ...]:
    """The angles beside a principal value that solve the same equation, within a full turn."""
    half = number(180, DEGREE)
    match value:
        case Call("asin", _):
            return (total((1, half), (-1, value)),)
        case Call("acos", _):
            return (negative(value),)
        case Call("atan", _):
            return (total((1, value), (1, half)), total((1, value), (-1, half)))
        case Sum(((1, Call("asin", _) as principal), (sign, shift))):
            return (total((1, half), (-1, principal), (sign, shift)),)
        case _:
            return ()


def isolated(slope: Expression, rest: Expression) -> Expression:
    """-rest/slope, with the signs the way one writes it by hand."""
    rest, slope = collected(rest), collected(slope)
    if isinstance(slope, Quotient):
        bottom = slope.bottom  # a number stands before letters: 4 b
        sides = (bottom, rest) if isinstance(bottom, Number) else (rest, bottom)
        rest, slope = times(*sides), slope.top
    quotient = over(negative(rest), slope)
    if isinstance(quotient, Quotient):
        quotient = _reduced(quotient)
    if isinstance(quotient, Quotient):
        if isinstance(quotient.top, Sum) and all(sign < 0 for sign, _ in quotient.top.terms):
            return negative(Quotient(negative(quotient.top), positive_first(quotient.bottom)))
        return Quotient(positive_first(quotient.top), positive_first(quotient.bottom))
    match quotient:
        case Sum(((-1, Quotient(top, Sum(terms) as bottom)),)) if any(s < 0 for s, _ in terms):
            return Quotient(top, positive_first(negative(bottom)))  # no minus before a difference
    return positive_first(quotient)


def tidied(value: Expression) -> Expression:
    """A solution whose like terms meet in whatever order their factors stand: -1 for a - 1 - a.

    What vanishes above or below stays as it is, for it may be 0/0: equations that only seemed
    independent.
    """
    if not isinstance(value, Quotient):
        return value
    top, bottom = (collected(in_one_order(part)) for part in (value.top, value.bottom))
    if (top, bottom) == (value.top, value.bottom) or ZERO in (top, bottom):
        return value
    return positive_first(over(top, bottom))


@dataclass(frozen=True, slots=True)
class Solved:
    """One of several equations solved: its place among them, the unknown, and its value.

    balance: the expression that was zero, with what had been taken out before put in.
    """

    place: int
    unknown: str
    value: Expression
    balance: Expression


def eliminated(
    expressions: tuple[Expression, ...],
    unknowns: tuple[str, ...],
    ranges: Mapping[str, Range] | None = None,
) -> tuple[Solved, ...] | None:
    """Equations (each an expression that is zero) solved together for as many unknowns.

    One unknown after the other is taken out of an equation and put into the rest.  Given in the
    order they are to be valued: the first holds none of the unknowns, each other only those before
    it.  None when no order of taking out leads on.
    """
    if len(expressions) == 1:
        within = (ranges or {}).get(unknowns[0], (-math.inf, math.inf))
        found = solved_for(expressions[0], unknowns[0], within)
        return None if found is None else (Solved(0, unknowns[0], found, expressions[0]),)
    pairs = [(unknown, place) for unknown in unknowns for place in range(len(expressions))]
    for unknown, place in sorted(pairs, key=lambda pair: not _says(expressions[pair[1]], pair[0])):
        expression = expressions[place]
        taken_out = linear_parts(expression, unknown)
        if taken_out is None or collected(taken_out[0]) == ZERO:
            continue
        value = isolated(*taken_out)
        others = tuple(
            _put_into(other, unknown, taken_out)
            for at, other in enumerate(expressions)
            if at != place
        )
        rest = tuple(name for name in unknowns if name != unknown)
        possible = tuple(other for other in others if other is not None)
        solved = eliminated(possible, rest, ranges) if len(possible) == len(rest) else None
        if solved is not None:
            back = (replace(each, place=each.place + (each.place >= place)) for each in solved)
            return (*back, Solved(place, unknown, value, expression))
    return None


def _says(expression: Expression, unknown: str) -> bool:
    """Whether it reads unknown - (something else), such as f - mu N: that is put in first."""
    match expression:
        case Sum(((1, Name(id=name)), (_, other))):
            return name == unknown and unknown not in names_in(other)
        case _:
            return False


def _put_into(
    expression: Expression, unknown: str, taken_out: tuple[Expression, Expression]
) -> Expression | None:
    """The expression with unknown = -rest/slope put in, multiplied by the slope."""
    parts = linear_parts(expression, unknown)
    if parts is None:
        return None
    slope, rest = taken_out
    if parts[0] == ZERO:
        return expression
    put_in = _with_tangent(parts[0], negative(rest), slope)
    if put_in is not None:
        return collected(total((1, put_in), (1, parts[1])))
    crossed = total((1, times(parts[1], slope)), (-1, times(parts[0], rest)))
    return collected(_without_common(expanded(crossed)))


def _with_tangent(factor: Expression, top: Expression, bottom: Expression) -> Expression | None:
    """factor * top/bottom, where that is a product once sin a/cos a is written tan a; else None."""
    above, below = _terms(times(factor, top)), _terms(bottom)
    if len(above) > 1 or len(below) > 1:
        return None
    (sign, product), (turned, divisor) = above[0], below[0]
    factors = list(_factors(product))
    for cosine in _factors(divisor):
        if not (isinstance(cosine, Call) and cosine.function == "cos"):
            return None
        sine = Call("sin", cosine.arguments)
        if sine not in factors:
            return None
        factors[factors.index(sine)] = Call("tan", cosine.arguments)
    return total((sign * turned, times(*factors)))


def expanded(expression: Expression) -> Expression:
    """Products of sums multiplied out, one level deep, so that equal terms can meet."""
    terms: list[tuple[int, Expression]] = []
    for sign, term in expression.terms if isinstance(expression, Sum) else ((1, expression),):
        terms += [(sign * s, t) for s, t in _multiplied_out(term)]
    return total(*terms)


def _multiplied_out(term: Expression) -> list[tuple[int, Expression]]:
    if not isinstance(term, Product):
        return [(1, term)]
    made: list[tuple[int, Expression]] = [(1, UNITY)]
    for factor in term.factors:
        inner = factor.terms if isinstance(factor, Sum) else ((1, factor),)
        made = [(s * sign, times(t, part)) for s, t in made for sign, part in inner]
    return [
        (sign * inner_sign, inner)
        for sign, made_term in made
        for inner_sign, inner in (
            made_term.terms if isinstance(made_term, Sum) else ((1, made_term),)
        )
    ]


def _factors(term: Expression) -> tuple[Expression, ...]:
    return term.factors if isinstance(term, Product) else (term,)


def _terms(expression: Expression) -> tuple[tuple[int, Expression], ...]:
    return expression.terms if isinstance(expression, Sum) else ((1, expression),)


def _shared(terms: Iterable[Expression]) -> list[Expression]:
    """Factors that stand in every term, once each time they do."""
    lists = [list(_factors(term)) for term in terms]
    shared: list[Expression] = []
    for factor in lists[0]:
        if all(factor in held for held in lists):
            shared.append(factor)
            for held in lists[1:]:
                held.remove(factor)
    return shared


def _divided(expression: Expression, factors: list[Expression]) -> Expression:
    terms = []
    for sign, term in _terms(expression):
        held = list(_factors(term))
        for factor in factors:
            held.remove(factor)
        terms.append((sign, times(*held)))
    return total(*terms)


def _without_common(expression: Expression) -> Expression:
    """An expression that is zero, without the factors all its terms share."""
    terms = [term for _, term in _terms(expression)]
    return expression if len(terms) < 2 else _divided(expression, _shared(terms))


def _reduced(quotient: Quotient) -> Expression:
    """A quotient without the factors that all terms above and below share."""
    above, below = _terms(quotient.top), _terms(quotient.bottom)
    shared = _shared([term for _, term in (*above, *below)])
    if not shared:
        return quotient
    return over(_divided(quotient.top, shared), _divided(quotient.bottom, shared))


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
        return None
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
    """A sin x + B cos x + C = 0: tan x = -B/A without C, else sin(x + phi) = -C/sqrt(A^2 + B^2)
    with tan phi = B/A.
    """
    sines = linear_parts(expression, _SINE.id)
    cosines = sines and linear_parts(sines[1], _COSINE.id)
    if sines is None or cosines is None or _COSINE.id in names_in(sines[0]):
        return None
    if cosines[1] == ZERO:
        return Call("atan", (isolated(sines[0], cosines[0]),))
    size = Call("hypot", (sines[0], cosines[0]))
    shifted = Call("asin", (isolated(size, cosines[1]),))
    return total((1, shifted), (-1, Call("atan2", (cosines[0], sines[0]))))


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
