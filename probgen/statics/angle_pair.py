"""Two equations that hold the cosine and the sine of one angle.

Divided, they leave its tangent; squared and added, they leave what else they hold.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from probgen.quantities.angle_sum import with_angle_sums
from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Name,
    Power,
    Sum,
    linear_parts,
    names_in,
    negative,
    number,
    parts,
    substituted,
    times,
    total,
)
from probgen.quantities.factors import expanded, with_powers
from probgen.quantities.like_terms import collected, in_one_order
from probgen.statics.solve_for import isolated

_PART = Name("?part", "part")


@dataclass(frozen=True, slots=True)
class AnglePair:
    """size * cos(angle) = along and size * sin(angle) = across."""

    size: Expression
    along: Expression
    across: Expression

    @property
    def tangent(self) -> Expression:
        """across/along with what both hold left out."""
        return isolated(self.along, negative(self.across))

    def squared(self, other: str) -> Expression | None:
        """along^2 + across^2 - size^2 where they hold another angle; None if it does not go away.

        (a + r cos x)^2 + (r sin x)^2 is a^2 + r^2 + 2 a r cos x, the cosine rule.
        """
        for function, rest in (("cos", "sin"), ("sin", "cos")):
            one, two = _split(self.along, function, other), _split(self.across, rest, other)
            if one is None or two is None or ZERO == one[1] == two[1]:
                continue
            if _same(one[0], two[0]) or _same(one[0], negative(two[0])):
                letter = _named(self.along, other)
                parts = ((*one, Call(function, (letter,))), (*two, Call(rest, (letter,))))
                return self._without(parts)
        return None

    def _without(self, parts: Sequence[tuple[Expression, Expression, Call]]) -> Expression:
        """(r cos x + a)^2 + (r sin x + b)^2 - size^2 of the parts (r, a, cos x) and (r, b, sin x).

        Where a and b are k cos y and k sin y, that is k^2 + r^2 + 2 k r cos(x - y) - size^2.
        """
        middles = [middle for _, middle, _ in parts if middle != ZERO]
        crossed = [(1, times(number(2), middle, each, turned)) for each, middle, turned in parts]
        joined = with_angle_sums(total(*((s, t) for s, t in crossed if t != ZERO)))
        ends = ((1, _square(parts[0][0])), (-1, _square(self.size)), (1, joined))
        if len(middles) == 1:
            return total((1, _square(middles[0])), *ends)
        products = (expanded(times(middle, middle)) for middle in middles)
        return total((1, with_powers(collected(total(*((1, p) for p in products))))), *ends)

    @property
    def sides(self) -> frozenset[str]:
        """The names in what is along and across."""
        return names_in(self.along) | names_in(self.across)


def angle_pair(cosines: Expression, sines: Expression, angle: str) -> AnglePair | None:
    """The pair that two expressions, each of them zero, are; None where they are none.

    The first may hold the angle in its cosine alone, the second in its sine alone.
    """
    of_cosine, of_sine = _split(cosines, "cos", angle), _split(sines, "sin", angle)
    if of_cosine is None or of_sine is None:
        return None
    (turned, size), (other_turned, other) = _added(of_cosine[0]), _added(of_sine[0])
    if size == ZERO or not _same(size, other):
        return None
    along, across = _moved(of_cosine[1], turned), _moved(of_sine[1], other_turned)
    return None if along == ZERO else AnglePair(size, along, across)


def _split(
    expression: Expression, function: str, angle: str
) -> tuple[Expression, Expression] | None:
    """(a, b) with expression = a * function(angle) + b, neither holding the angle; else None."""

    def part(inner: Expression) -> Expression | None:
        match inner:
            case Call(called, (Name(id=id),)) if called == function and id == angle:
                return _PART
            case _:
                return None

    replaced = substituted(expression, part)
    if angle in names_in(replaced) or _PART.id not in names_in(replaced):
        return None
    found = linear_parts(replaced, _PART.id)
    return found and (collected(found[0]), collected(found[1]))


def _named(expression: Expression, id: str) -> Expression:
    """The name of a quantity that is in the expression, with its symbol."""
    if isinstance(expression, Name):
        return expression
    return next(_named(part, id) for part in parts(expression) if id in names_in(part))


def _square(side: Expression) -> Expression:
    """A square; that of a negative side is its size's."""
    return Power(_added(side)[1], 2)


def _added(expression: Expression) -> tuple[bool, Expression]:
    """Whether a sum has nothing added, and it turned round if so: -F is F taken away."""
    if isinstance(expression, Sum) and all(sign < 0 for sign, _ in expression.terms):
        return True, negative(expression)
    return False, expression


def _same(one: Expression, other: Expression) -> bool:
    return collected(in_one_order(Sum(((1, one), (-1, other))))) == ZERO


def _moved(rest: Expression, turned: bool) -> Expression:
    """What stands on the other side of the equation; turned: its signs are changed there."""
    return rest if turned else negative(rest)
