"""Slips with halves: the whole of a length where half of it belongs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from typing import Final

from probgen.mistakes.variant import Misstep, in_equations, replaced, rewritten
from probgen.quantities.expression import (
    Expression,
    Name,
    Number,
    Product,
    Quotient,
    is_number,
    substituted,
)
from probgen.quantities.like_terms import collected
from probgen.quantities.unit import LENGTH, UnitSystem
from probgen.statics.equation import Equation, Term
from probgen.statics.plan import Plan
from probgen.statics.system import Role


def _half_forgotten(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """b where b/2 belongs: in the arms of one balance after the other, or in a definition.

    Who forgets it of one length forgets it of another in the same arm or definition.
    """
    variables, given = plan.system.variables.values(), (Role.GIVEN, Role.DERIVED)
    lengths = [v.as_name for v in variables if v.dimension == LENGTH and v.role in given]
    for equation in (equation for step in plan.steps for equation in step.equations):
        for group, held in _in_same_arms(plan, lengths, equation):
            changed = rewritten(plan, in_equations((equation,), partial(_with_whole, plan, group)))
            if changed:
                way = ("arm" if len(held) == 1 else "arms") + ("-both" if group[1:] else "")
                yield Misstep("half_forgotten", changed, way, {"b": group, "W": held})
    for definition in plan.definitions:
        size = definition.expression
        halved = tuple(length for length in lengths if _doubled(size, (length,)) != size)
        if halved:
            changed = replaced(plan, definition.variable, _doubled(size, halved))
            yield Misstep("half_forgotten", changed, "both" if halved[1:] else "", {"b": halved})


def _in_same_arms(
    plan: Plan, lengths: Sequence[Name], equation: Equation
) -> list[tuple[tuple[Name, ...], tuple[Expression, ...]]]:
    """The lengths of which arms hold the half, those of one arm together, and the forces."""
    groups: list[tuple[tuple[Name, ...], tuple[Expression, ...]]] = []
    for length in lengths:
        own: tuple[Name, ...] = (length,)
        held = tuple(t.magnitude for t in equation.terms if _with_whole_arm(plan, own, t) != t)
        if held:
            shared = [group for group in groups if set(group[1]) & set(held)]
            groups = [group for group in groups if group not in shared]
            own = (*(each for group in shared for each in group[0]), length)
            every = (*(each for group in shared for each in group[1]), *held)
            groups.append((own, tuple(dict.fromkeys(every))))
    return groups


def _with_whole(plan: Plan, lengths: Sequence[Name], equation: Equation) -> Equation:
    """The equation with whole lengths in the arms that hold half of them."""
    terms = tuple(_with_whole_arm(plan, lengths, term) for term in equation.terms)
    return replace(equation, terms=terms)


def _with_whole_arm(plan: Plan, lengths: Sequence[Name], term: Term) -> Term:
    known = {
        step.unknown: step.expression
        for step in plan.steps
        if step.equation.kind == "condition" and isinstance(step.expression, Name)
    }

    def told(part: Expression) -> Expression | None:
        return known.get(part.id) if isinstance(part, Name) else None

    arm = term.length and collected(substituted(term.length, told))
    whole = arm and _doubled(arm, lengths)
    return replace(term, length=whole) if whole and whole != arm else term


def _doubled(expression: Expression, lengths: Sequence[Name]) -> Expression:
    """The expression with the whole lengths where half of them stands."""

    def whole(part: Expression) -> Expression | None:
        match part:
            case Quotient(top, bottom) if top in lengths and is_number(bottom, 2):
                return top
            case Quotient(top, Product((first, *rest))) if top in lengths and is_number(first, 2):
                return Quotient(top, rest[0] if len(rest) == 1 else Product(tuple(rest)))
            case Product((Number(value), length)) if length in lengths and 2 * value == 1:
                return length
            case _:
                return None

    return substituted(expression, whole)


RULES: Final = {"half_forgotten": _half_forgotten}
