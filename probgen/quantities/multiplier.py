"""By what an equation was multiplied, and whether by Pythagoras it then is shorter."""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from probgen.quantities.expression import (
    UNITY,
    Call,
    Expression,
    Name,
    evaluate,
    names_in,
    over,
    parts,
    substituted,
    times,
)

_SEQUENCES: Final = ((11.3, 7.9), (8.1, 5.3))
"""First value and step of the values tried for names: angles in degrees stay below 90."""
_NEAR: Final = 1e-9


@dataclass(frozen=True, slots=True)
class Multiplied:
    """factor: 1 for none; angle: whose squared sine and cosine were joined to 1, if any."""

    factor: Expression
    angle: Expression | None


@lru_cache(maxsize=256)
def multiplied(
    before: Expression, after: Expression, factors: tuple[Expression, ...]
) -> Multiplied | None:
    """How one expression that is zero became another one; None where by none of the factors.

    The sign may be the other one.  They are compared by values, once with every sine and cosine a
    quantity of its own: what holds then needs no theorem.
    """
    angles = tuple(dict.fromkeys((*_angles(before), *_angles(after))))
    for factor in (UNITY, *factors):
        crossed = times(factor, before)
        if not _same(crossed, after):
            continue
        if _same(_apart(crossed, angles), _apart(after, angles)):
            return Multiplied(factor, None)
        for angle in angles:
            others = [other for other in angles if other != angle]
            if _same(_apart(crossed, others), _apart(after, others)):
                return Multiplied(factor, angle)
    return None


def _angles(expression: Expression) -> tuple[Expression, ...]:
    own = expression.arguments if isinstance(expression, Call) and _turns(expression) else ()
    return (*own, *(angle for part in parts(expression) for angle in _angles(part)))


def _turns(call: Call) -> bool:
    return call.function in ("sin", "cos", "tan")


def _apart(expression: Expression, angles: Collection[Expression]) -> Expression:
    """With names in the place of the sines and cosines of angles."""
    places = {angle: place for place, angle in enumerate(angles)}

    def named(part: Expression) -> Expression | None:
        if not isinstance(part, Call) or not _turns(part) or part.arguments[0] not in places:
            return None
        sine, cosine = (
            Name(f"{function} of angle {places[part.arguments[0]]}", function)
            for function in ("sin", "cos")
        )
        return {"sin": sine, "cos": cosine, "tan": over(sine, cosine)}[part.function]

    return substituted(expression, named)


def _same(one: Expression, other: Expression) -> bool:
    """Whether two expressions have the same values, but for a sign that is always the other one."""
    names = sorted(names_in(one) | names_in(other))
    pairs = []
    for first, step in _SEQUENCES:
        values = {name: first + step * place for place, name in enumerate(names)}
        pairs.append(tuple(float(evaluate(each, values)) for each in (one, other)))
    return any(
        all(math.isclose(left, sign * right, rel_tol=_NEAR) for left, right in pairs)
        for sign in (1, -1)
    )
