"""The balances that a working did not use, and the one of them that is looked at."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from probgen.quantities.expression import Expression, Number, evaluate, names_in, parts
from probgen.statics.equation import Equation, X, Y, force_balance, oriented, torque_balance
from probgen.statics.link import is_link
from probgen.statics.plan import Plan
from probgen.statics.step import Step
from probgen.statics.system import Body, System
from probgen.working.bodies_used import bodies_used, ids_of
from probgen.working.digits import Digits

_ALIKE: Final = 1e-9  # relative


@dataclass(frozen=True, slots=True)
class UnusedBalance:
    """A balance, its terms as expressions, and the quantities it holds."""

    equation: Equation
    terms: tuple[Expression, ...]
    names: frozenset[str]


Unused = tuple[Mapping[str, tuple[UnusedBalance, ...]], ...]
"""For each of the ways of a plan the balances of each body left to look at; by the body's id."""


Looked = tuple[Body, tuple[UnusedBalance, ...]]
"""A body and the balances of it left to look at."""


def unused_balances(plan: Plan) -> Unused:
    """They follow from the plan alone, and to write them takes longer than to tell a key."""
    if not plan.branches:
        return (_unused_along(plan, plan.steps),)
    return tuple(_unused_along(each.plan, plan.steps_before(each)) for each in plan.branches)


def _unused_along(plan: Plan, told: Sequence[Step]) -> Mapping[str, tuple[UnusedBalance, ...]]:
    """told: the steps that a working tells, which are more than the plan's where it goes to several
    limits.
    """
    used = ids_of(bodies_used(plan)) if plan.steps else ()
    bodies = [body for body in plan.system.bodies if body.id in used]
    return {b.id: _balances(plan, b, told) for b in bodies if not is_link(plan.system, b)}


def _balances(plan: Plan, body: Body, told: Sequence[Step]) -> tuple[UnusedBalance, ...]:
    """The balances of a body that the working did not use."""
    used = {
        (equation.kind, equation.about)
        for step in told
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
    return tuple(as_unused(equation) for equation in candidates if equation.terms)


def as_unused(equation: Equation) -> UnusedBalance:
    """A balance with what is in it."""
    terms = tuple(term.expression(equation.method) for term in equation.terms)
    return UnusedBalance(equation, terms, names_in(equation.expression))


def chosen(
    digits: Digits, unused: tuple[UnusedBalance, ...], values: Mapping[str, float]
) -> Equation | None:
    """The unused balance whose quantities are all known and that says what none used says: by
    letters before one by lengths that have none, with most terms.
    """
    found = {step.unknown for step in digits.case.plan.steps}
    known = [
        _without_nothing(balance, values) for balance in unused if balance.names <= values.keys()
    ]
    used = [_torques(e, values) for s in digits.case.plan.steps for e in s.equations
            if e.kind == "torque" and names_in(e.expression) <= values.keys()]  # fmt: skip
    known = [e for e in known if len(e.terms) > 1 and not _is_among(_torques(e, values), used)]
    best = max(
        known, key=lambda e: (_lettered(e), _plain(e), len(e.terms), _held(e, found)), default=None
    )
    return oriented(best, values) if best and best.kind == "torque" else best


def _torques(equation: Equation, values: Mapping[str, float]) -> dict[str, float]:
    """What each force adds to a balance (N m, or N), by its id."""
    added: dict[str, float] = {}
    for term in equation.terms:
        size = term.sign * float(evaluate(term.expression(equation.method), values))
        added[term.source] = added.get(term.source, 0.0) + size
    largest = max(map(abs, added.values()), default=0.0)
    return {id: size for id, size in added.items() if abs(size) > _ALIKE * largest}


def _is_among(added: Mapping[str, float], used: Sequence[Mapping[str, float]]) -> bool:
    """Whether a balance is one of others again, as torques of parallel forces are about points on a
    line along them; it may be counted the other way.
    """
    return any(
        own.keys() == added.keys()
        and any(
            all(abs(own[id] - sign * size) <= _ALIKE * abs(size) for id, size in added.items())
            for sign in (1, -1)
        )
        for own in used
    )


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


def _lettered(equation: Equation) -> bool:
    """Whether no length in it is a number: of a place without a letter, which may be untold."""
    lengths = [term.length for term in equation.terms if term.length is not None]
    return not any(_has_number(length) for length in lengths)


def _has_number(length: Expression) -> bool:
    measured = isinstance(length, Number) and length.unit is not None
    return measured or any(_has_number(part) for part in parts(length))


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
