"""One equation solved for one quantity: the expression that is that quantity.

Linear equations are solved by taking the quantity out; an equation A sin x + B cos x + C = 0 with
one of its parts missing by an inverse function.
"""

from __future__ import annotations

from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Name,
    Power,
    Quotient,
    Sum,
    linear_parts,
    names_in,
    negative,
    over,
    positive_first,
    rebuilt,
    substituted,
    times,
    total,
)

_SINE, _COSINE, _TANGENT, _SQUARE = (Name(f"?{n}", n) for n in ("sin", "cos", "tan", "square"))
_PARTS = {"sin": _SINE, "cos": _COSINE, "tan": _TANGENT}


def solved_for(expression: Expression, unknown: str) -> Expression | None:
    """The value of `unknown` that makes the expression zero; None when no form here fits."""
    parts = linear_parts(expression, unknown)
    if parts is not None:
        return isolated(*parts) if parts[0] != ZERO else None
    return _from_angle(expression, unknown) or _from_square(expression, unknown)


def isolated(slope: Expression, rest: Expression) -> Expression:
    """-rest/slope, with the signs the way one writes it by hand."""
    quotient = over(negative(_cancelled(rest)), _cancelled(slope))
    if isinstance(quotient, Quotient):
        return Quotient(positive_first(quotient.top), positive_first(quotient.bottom))
    return positive_first(quotient)


def _cancelled(expression: Expression) -> Expression:
    """Sums without terms that take each other away, at every depth."""
    inner = rebuilt(expression, _cancelled)
    if not isinstance(inner, Sum):
        return inner
    kept: list[tuple[int, Expression]] = []
    for sign, term in inner.terms:
        if (-sign, term) in kept:
            kept.remove((-sign, term))
        else:
            kept.append((sign, term))
    return total(*kept)


def both_solved(
    first: Expression, second: Expression, unknowns: tuple[str, str]
) -> tuple[Expression, Expression] | None:
    """Two equations, linear in two unknowns, solved: the second unknown free of the first, and
    the first in terms of the second.  None when they are not linear.
    """
    u, v = unknowns
    one, two = linear_parts(first, u), linear_parts(second, u)
    if one is None or two is None or one[0] == ZERO:
        return None
    crossed = total((1, times(two[1], one[0])), (-1, times(two[0], one[1])))
    last = linear_parts(crossed, v)
    if last is None or last[0] == ZERO:
        return None
    return isolated(*last), isolated(*one)


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
