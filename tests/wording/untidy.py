"""What no teacher leaves standing in a line of letters, found in its expression tree."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from probgen.quantities.expression import (
    UNITY,
    Call,
    Expression,
    Lump,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    is_number,
    parts,
)
from probgen.quantities.like_terms import collected, in_one_order


def faults_in(expression: Expression, *, result: bool) -> Iterator[str]:
    """What is wrong in an expression, part by part; result: it is all that an unknown is."""
    match expression:
        case Sum(terms):
            if any(sign < 0 and _leads_down(term) for sign, term in terms):
                yield "a double minus"
            if any(is_number(term, 0) for _, term in terms):
                yield "a term that is 0"
            joined = collected(in_one_order(expression))
            if result and len(terms) > 1 and len(_terms(joined)) < len(terms):
                yield "like terms"
        case Product(factors) if any(is_number(f, 0) or is_number(f, 1) for f in factors):
            yield "a factor 0 or 1"
        case Product(factors) if sum(isinstance(f, Number) and f.unit is None for f in factors) > 1:
            yield "two numbers"
        case Quotient(top, bottom):
            if is_number(bottom, 1):
                yield "a quotient by 1"
            if result and _shared(top, bottom):
                yield "a common factor above and below"
        case Call("hypot", (one, other)) if one == other or _one_turn(one, other):
            yield "a root of a sum that cancels"
        case Call("sqrt", (inner,)) if collected(inner) in (UNITY, *_single(inner)):
            yield "a root of a sum that cancels"
        case Call("atan2", _):
            yield "an arctangent of two sides"
    for part in parts(expression):
        yield from faults_in(part, result=result)


def _bare(expression: Expression) -> Expression:
    return expression.inner if isinstance(expression, Lump) else expression


def _terms(expression: Expression) -> tuple[tuple[int, Expression], ...]:
    bare = _bare(expression)
    return bare.terms if isinstance(bare, Sum) else ((1, bare),)


def _factors(term: Expression) -> tuple[Expression, ...]:
    bare = _bare(term)
    return bare.factors if isinstance(bare, Product) else (bare,)


def _leads_down(term: Expression) -> bool:
    """Whether it begins with a minus sign."""
    first = _bare(_factors(term)[0])
    if isinstance(first, Quotient):
        return _leads_down(first.top)
    return (isinstance(first, Sum) and first.terms[0][0] < 0) or (
        isinstance(first, Number) and first.value < 0
    )


def _shared(top: Expression, bottom: Expression) -> bool:
    """Whether all terms above and below hold one factor, above their own lines or below."""
    sides = [_above_and_below(term) for each in (top, bottom) for _, term in _terms(each)]
    for side in (0, 1):
        common = sides[0][side]
        for each in sides[1:]:
            common = common & each[side]
        if any(not isinstance(factor, Number) for factor in common):
            return True
    return False


def _above_and_below(term: Expression) -> tuple[Counter[Expression], Counter[Expression]]:
    above, below = Counter[Expression](), Counter[Expression]()
    for factor in map(_bare, _factors(term)):
        match factor:
            case Quotient(top, bottom):
                above.update(map(_bare, _factors(top)))
                below.update(map(_bare, _factors(bottom)))
            case Power(base, exponent):
                above[base] += exponent
            case _:
                above[factor] += 1
    return above, below


def _one_turn(one: Expression, other: Expression) -> bool:
    """Whether two legs are k cos x and k sin x."""
    left, right = Counter(_factors(one)), Counter(_factors(other))
    rest = [*(left - right).elements(), *(right - left).elements()]
    match rest:
        case [Call(first, angle), Call(second, same)]:
            return {first, second} == {"sin", "cos"} and angle == same
        case _:
            return False


def _single(inner: Expression) -> tuple[Expression, ...]:
    """What a sum is collected to, where that is shorter."""
    joined = collected(inner)
    return (joined,) if len(_terms(joined)) < len(_terms(inner)) else ()
