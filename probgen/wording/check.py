"""The last look: torques about a point not used yet, and what the result says of size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from decimal import Decimal

from probgen.quantities.expression import Expression, Number, Sum, evaluate, names_in
from probgen.quantities.formula import Balance
from probgen.quantities.rounding import exact, round_figures, round_places
from probgen.quantities.unit import FORCE, TORQUE
from probgen.statics.equation import Equation, X, Y, force_balance, oriented, torque_balance
from probgen.statics.link import is_link
from probgen.statics.plan import Plan
from probgen.statics.system import Body, System
from probgen.wording.block import Display, Row
from probgen.wording.facts.ending import (
    BodyCheckHeading,
    CheckHeading,
    UnusedAxis,
    UnusedPivot,
)
from probgen.wording.passage import Part, Passage, Sentences, sentences
from probgen.wording.sense import sense_of
from probgen.working.criteria import bodies_used
from probgen.working.digits import Digits
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class UnusedBalance:
    """A balance, its terms as expressions, and the quantities it holds."""

    equation: Equation
    terms: tuple[Expression, ...]
    names: frozenset[str]


Unused = Mapping[str, tuple[UnusedBalance, ...]]
"""The balances of each body that a working did not use; by the body's id."""


def unused_balances(plan: Plan) -> Unused:
    """They follow from the plan alone, and to write them takes longer than to tell a key."""
    bodies = bodies_used(plan) if plan.steps else ()
    return {b.id: _balances(plan, b) for b in bodies if not is_link(plan.system, b)}


def _balances(plan: Plan, body: Body) -> tuple[UnusedBalance, ...]:
    """The balances of a body that the working did not use."""
    used = {
        (equation.kind, equation.about)
        for step in plan.steps
        for equation in step.equations
        if equation.bodies == (body.id,)
    }
    candidates = [
        *(
            torque_balance(plan.system, (body.id,), point, plan.method)
            for point in _points_of(plan.system, body)
            if ("torque", point) not in used
        ),
        *(
            force_balance(plan.system, (body.id,), axis, plan.method)
            for axis in (X, Y)
            if ("force", axis.label) not in used
        ),
    ]
    return tuple(
        UnusedBalance(
            equation,
            tuple(term.expression(equation.method) for term in equation.terms),
            names_in(equation.expression),
        )
        for equation in candidates
        if len(equation.terms) > 1
    )


def check_passage(digits: Digits, body: Body, unused: tuple[UnusedBalance, ...]) -> Passage | None:
    """A balance the working did not use, with every number in it; None when all were used."""
    found = _chosen(digits, unused)
    if found is None:
        return None
    alone = len(digits.case.system.bodies) == 1
    heading = CheckHeading() if alone else BodyCheckHeading(body.id)
    parts: list[Part] = [sentences(_opening(digits, found)), Display(_rows(digits, found))]
    compared = tuple(sense_of(digits, body))
    if compared:
        parts.append(Sentences(compared))
    return Passage(heading, tuple(parts))


def _chosen(digits: Digits, unused: tuple[UnusedBalance, ...]) -> Equation | None:
    """The unused balance with most terms whose quantities are all known."""
    plan, values = digits.case.plan, digits.case.values
    found = {step.unknown for step in plan.steps}
    known = [
        _without_nothing(balance, values) for balance in unused if balance.names <= values.keys()
    ]
    chosen = max(known, key=lambda e: (_plain(e), len(e.terms), _held(e, found)), default=None)
    return oriented(chosen, values) if chosen and chosen.kind == "torque" else chosen


def _held(equation: Equation, found: set[str]) -> int:
    """How many of the quantities found the balance holds."""
    parts = (part for t in equation.terms for part in (t.magnitude, t.ratio, t.length) if part)
    return len(found & {name for part in parts for name in names_in(part)})


def _without_nothing(balance: UnusedBalance, known: Mapping[str, float]) -> Equation:
    """The equation without terms that are zero for these values."""
    values = [abs(float(evaluate(term, known))) for term in balance.terms]
    least = 1e-9 * max(values)
    if min(values) > least:
        return balance.equation
    kept = zip(balance.equation.terms, values, strict=True)
    return replace(balance.equation, terms=tuple(term for term, value in kept if value > least))


def _plain(equation: Equation) -> bool:
    """Whether each force has one arm only."""
    sources = [term.source for term in equation.terms]
    return len(sources) == len(set(sources))


def _points_of(system: System, body: Body) -> tuple[str, ...]:
    """The points of a body torques may be taken about: of its outline, and where forces act."""
    if body.particle:
        return ()
    acting = [force.point for force in system.forces if force.body == body.id]
    return tuple(dict.fromkeys([*body.outline, *acting]))


def _opening(digits: Digits, equation: Equation) -> Fact:
    if equation.kind == "force":
        return UnusedAxis(equation.about)
    return UnusedPivot(equation.about, digits.convention.turning)


def _rows(digits: Digits, equation: Equation) -> tuple[Row, ...]:
    """The balance in symbols, then each term's number, then their sum."""
    kind = "force" if equation.kind == "force" else digits.convention.turning
    numbers = _term_numbers(digits, equation)
    left = (Balance(kind, equation.about),)
    total = sum((sign * number.value for sign, number in numbers), Decimal(0))
    zero = Number(Decimal(0), numbers[0][1].unit)
    return (
        Row(left, "=", (equation.expression,)),
        Row((), "=", (Sum(tuple(numbers)),)),
        Row((), "=" if not total else "≈", (zero,)),
    )


def _term_numbers(digits: Digits, equation: Equation) -> list[tuple[int, Number]]:
    """Each term's value to one common decimal place, with four figures in the largest."""
    dimension = FORCE if equation.kind == "force" else TORQUE
    unit = digits.units.unit_of(dimension)
    values = [
        term.sign * float(evaluate(term.expression(equation.method), digits.case.values))
        / unit.factor
        for term in equation.terms
    ]  # fmt: skip
    if not values:
        raise ArithmeticError("no force is left in a balance")
    largest = max(abs(value) for value in values)
    places = max(3 - round_figures(largest, 4).adjusted(), 0)
    chosen = [round_places(exact(value), places) for value in values]
    return [(-1 if value < 0 else 1, Number(abs(value), unit)) for value in chosen]
