"""The addition theorems: cos a cos b - sin a sin b is cos(a + b), and back."""

from __future__ import annotations

from itertools import combinations

from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Name,
    Sum,
    names_in,
    negative,
    substituted,
    times,
    total,
)
from probgen.quantities.factors import expanded, factors_of, shared_factors, terms_of
from probgen.quantities.like_terms import collected


def with_angle_sums(expression: Expression) -> Expression:
    """A sum with two terms that are k times those of a theorem as one: k sin(a + b).

    Not as the sine of a difference, whose sign nobody sees.
    """
    terms = expression.terms if isinstance(expression, Sum) else ()
    for one, other in combinations(terms, 2):
        for (sign, first), (second_sign, second) in ((one, other), (other, one)):
            joined = _joined(first, second, sign * second_sign)
            if joined is not None:
                at = terms.index(one)
                rest = [term for term in terms if term not in (one, other)]
                return with_angle_sums(total(*rest[:at], (sign, joined), *rest[at:]))
    return expression


def with_angle_apart(expression: Expression, name: str) -> Expression:
    """Sines and cosines of sums with an angle by its own: cos(x + a) is cos x cos a - sin x sin a.

    The expression itself where it stands in no such sum.
    """

    def apart(part: Expression) -> Expression | None:
        match part:
            case Call("sin" | "cos" as function, (Sum() as angle,)) if name in names_in(angle):
                return _apart(function, angle, name)
            case _:
                return None

    written = substituted(expression, apart)
    return expression if written == expression else collected(expanded(written))


def _apart(function: str, angle: Sum, name: str) -> Expression | None:
    """sin(x + c), or cos(c - x), by sines and cosines of x and c; None of more than one x."""
    own = [(sign, term) for sign, term in angle.terms if name in names_in(term)]
    rest = total(*(term for term in angle.terms if term not in own))
    match own:
        case [(turn, Name() as alone)] if rest != ZERO:
            pass
        case _:
            return None
    back = all(sign < 0 for sign, _ in terms_of(rest))
    other, way = (negative(rest), -1) if back else (rest, 1)
    (sin_x, cos_x), (sin_c, cos_c) = (
        (Call("sin", (each,)), Call("cos", (each,))) for each in (alone, other)
    )
    if function == "cos":
        return total((1, times(cos_x, cos_c)), (-turn * way, times(sin_x, sin_c)))
    return total((turn, times(sin_x, cos_c)), (way, times(cos_x, sin_c)))


def _joined(first: Expression, second: Expression, sign: int) -> Expression | None:
    """first + sign * second as one term, where a theorem begins with the first of them."""
    shared = shared_factors([first, second])
    left, right = (_without(term, shared) for term in (first, second))
    match left, right:
        case [Call("cos", (a,)), Call("cos", (b,))], _ if a != b and _are(
            right, ("sin", a), ("sin", b)
        ):
            a, b = _in_order(a, b)
            angle = total((1, a), (-sign, b))
            return times(*shared, Call("cos", (angle,)))
        case (([Call("sin", (a,)), Call("cos", (b,))] | [Call("cos", (b,)), Call("sin", (a,))]), _):
            if sign > 0 and a != b and _are(right, ("cos", a), ("sin", b)):
                angle = total(*((1, each) for each in _in_order(a, b)))
                return times(*shared, Call("sin", (angle,)))
    return None


def _without(term: Expression, shared: list[Expression]) -> list[Expression]:
    left = list(factors_of(term))
    for factor in shared:
        left.remove(factor)
    return left


def _are(factors: list[Expression], *calls: tuple[str, Expression]) -> bool:
    """Whether factors are these calls, in any order."""
    wanted: list[Expression] = [Call(function, (angle,)) for function, angle in calls]
    return factors in (wanted, wanted[::-1])


def _in_order(a: Expression, b: Expression) -> tuple[Expression, Expression]:
    """Letters in their order: cos(alpha + beta)."""
    match a, b:
        case Name(symbol=one), Name(symbol=other) if other < one:
            return b, a
        case _:
            return a, b
