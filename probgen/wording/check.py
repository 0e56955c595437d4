"""The last look: a balance the working did not use, and what the result says of size.

Where every balance left holds a force that nobody asked for, the balances along the axes give that
first.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import product

import numpy as np

from probgen.quantities.expression import (
    ZERO,
    Expression,
    Number,
    Sum,
    evaluate,
    names_in,
    parts,
)
from probgen.quantities.formula import Balance, Formula, Relation
from probgen.quantities.rounding import exact, round_figures, round_places
from probgen.quantities.unit import FORCE, TORQUE
from probgen.statics.equation import Equation, X, Y, force_balance, oriented, torque_balance
from probgen.statics.link import is_link
from probgen.statics.plan import Plan
from probgen.statics.solve_for import solved_for
from probgen.statics.step import Step
from probgen.statics.system import Body, System
from probgen.wording.block import Display, Row
from probgen.wording.facts.ending import (
    BodyCheckHeading,
    CheckHeading,
    RestFound,
    RoundingLeft,
    UnusedAxis,
    UnusedPivot,
)
from probgen.wording.passage import Part, Passage, Sentences, sentences
from probgen.wording.sense import sense_of
from probgen.working.bodies_used import bodies_used, ids_of, is_piece
from probgen.working.digits import Digits, by_lengths
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class UnusedBalance:
    """A balance, its terms as expressions, and the quantities it holds."""

    equation: Equation
    terms: tuple[Expression, ...]
    names: frozenset[str]


Unused = tuple[Mapping[str, tuple[UnusedBalance, ...]], ...]
"""For each of the ways of a plan the balances of each body left to look at; by the body's id."""


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
    return tuple(
        UnusedBalance(
            equation,
            tuple(term.expression(equation.method) for term in equation.terms),
            names_in(equation.expression),
        )
        for equation in candidates
        if equation.terms
    )


def check_passages(
    digits: Digits, unused: Mapping[str, tuple[UnusedBalance, ...]], *, alone: bool
) -> tuple[Passage, ...]:
    """A look back at each body of a working that left it a balance with every number in it.

    Where none did, at each body that forces nobody asked for, once found, let look at.  Last come
    bodies that are drawn together with others alone.
    unused: of one of the ways of a plan; alone: whether the problem has one body only.
    """
    bodies = [(digits.case.system.body(id), balances) for id, balances in unused.items()]
    drawn = bodies_used(digits.case.plan)
    shown = [each for each in bodies if each[0] in drawn]
    others = [each for each in bodies if each[0] not in drawn]
    for some, look in product((shown, others), (_look, _longer_look)):
        looked = [(body, look(digits, body, balances)) for body, balances in some]
        passages = [_passage(digits, body, parts, alone) for body, parts in looked if parts]
        if passages:
            return _rounding_told_once(passages)
    return ()


def _rounding_told_once(passages: Sequence[Passage]) -> tuple[Passage, ...]:
    """What leaves a rest is said where there is one first."""
    left = sentences(RoundingLeft(), bound=True)
    told = next((place for place, each in enumerate(passages) if left in each.parts), 0)
    return tuple(
        each
        if place == told
        else replace(each, parts=tuple(part for part in each.parts if part != left))
        for place, each in enumerate(passages)
    )


def _passage(digits: Digits, body: Body, looked: tuple[Part, ...], alone: bool) -> Passage:
    heading = CheckHeading() if alone else BodyCheckHeading(body.id)
    compared = tuple(sense_of(digits, body))
    return Passage(heading, (*looked, *((Sentences(compared),) if compared else ())))


def _look(digits: Digits, body: Body, unused: tuple[UnusedBalance, ...]) -> tuple[Part, ...]:
    """At a balance that was not used."""
    equation = _chosen(digits, unused, digits.case.values)
    return _balance_parts(digits, equation, digits.case.values) if equation else ()


def _longer_look(digits: Digits, body: Body, unused: tuple[UnusedBalance, ...]) -> tuple[Part, ...]:
    """At torques, after the forces in them that were not found."""
    if is_piece(digits.case.system, body):
        return ()
    values = digits.case.values
    fresh = tuple(b for b in unused if not any(map(by_lengths, b.terms)))
    rest = _rest(fresh, values)
    known = {**values, **{id: float(evaluate(each, values)) for id, (_, each) in rest.items()}}
    torques = tuple(b for b in fresh if b.equation.kind == "torque")
    if rest and (equation := _chosen(digits, torques, known)):
        held = next(b.names for b in torques if b.equation.about == equation.about)
        left = {id: each for id, each in rest.items() if id in held}
        return (
            sentences(RestFound(tuple(dict.fromkeys(axis for axis, _ in left.values())))),
            Display(tuple(row for id in left for row in _rest_rows(digits, id, left[id][1]))),
            *_balance_parts(digits, equation, known),
        )
    return ()


def _chosen(
    digits: Digits, unused: tuple[UnusedBalance, ...], values: Mapping[str, float]
) -> Equation | None:
    """The unused balance whose quantities are all known: by letters before one by lengths that have
    none, with most terms.
    """
    found = {step.unknown for step in digits.case.plan.steps}
    known = [
        _without_nothing(balance, values) for balance in unused if balance.names <= values.keys()
    ]
    known = [equation for equation in known if len(equation.terms) > 1]
    chosen = max(
        known, key=lambda e: (_lettered(e), _plain(e), len(e.terms), _held(e, found)), default=None
    )
    return oriented(chosen, values) if chosen and chosen.kind == "torque" else chosen


def _rest(
    unused: tuple[UnusedBalance, ...], values: Mapping[str, float]
) -> dict[str, tuple[str, Expression]]:
    """The forces not found yet that the balance along one axis gives: the axis, and what they are.

    By their ids.
    """
    rest: dict[str, tuple[str, Expression]] = {}
    for balance in unused:
        missing = balance.names - values.keys()
        if balance.equation.kind != "force" or len(missing) != 1:
            continue
        (id,) = missing
        expression = solved_for(balance.equation.expression, id)
        if expression is not None and _is_finite(expression, values):
            rest.setdefault(id, (balance.equation.about, expression))
    return rest


def _is_finite(expression: Expression, values: Mapping[str, float]) -> bool:
    """Whether a division by what happens to be nothing leaves a number."""
    with np.errstate(all="ignore"):
        return bool(np.isfinite(evaluate(expression, values)))


def _rest_rows(digits: Digits, id: str, expression: Expression) -> Iterator[Row]:
    """A force not found before, in symbols and its number."""
    value = float(evaluate(expression, digits.case.values))
    unit = digits.units.unit_of(FORCE)
    figures = digits.convention.figures + 1
    shown = Number(round_figures(exact(value / unit.factor), figures), unit)
    left = (digits.case.system.variables[id].as_name,)
    if expression != ZERO:
        yield Row(left, "=", (expression,))
    yield Row(() if expression != ZERO else left, "=", (shown,))


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


def _balance_parts(
    digits: Digits, equation: Equation, values: Mapping[str, float]
) -> tuple[Part, ...]:
    """What is looked at, its terms with their numbers, and what rounding leaves of their sum."""
    numbers = _term_numbers(digits, equation, values)
    total = sum((sign * number.value for sign, number in numbers), Decimal(0))
    opening = sentences(_opening(digits, equation))
    display = Display(_rows(digits, equation, numbers, total))
    return (opening, display, *((sentences(RoundingLeft(), bound=True),) if total else ()))


def _opening(digits: Digits, equation: Equation) -> Fact:
    if equation.kind == "force":
        return UnusedAxis(equation.about)
    return UnusedPivot(equation.about, digits.convention.turning)


def _rows(
    digits: Digits, equation: Equation, numbers: list[tuple[int, Number]], total: Decimal
) -> tuple[Row, ...]:
    """The balance in symbols, then each term's number, then their sum."""
    kind = "force" if equation.kind == "force" else digits.convention.turning
    left = (Balance(kind, equation.about),)
    unit = numbers[0][1].unit
    zero = Number(Decimal(0), unit)
    ending: Formula = (Number(total, unit), Relation("≈"), zero) if total else (zero,)
    return (
        Row(left, "=", (equation.expression,)),
        Row((), "=", (Sum(tuple(numbers)),)),
        Row((), "=", ending),
    )


def _term_numbers(
    digits: Digits, equation: Equation, known: Mapping[str, float]
) -> list[tuple[int, Number]]:
    """Each term's value to one common decimal place, with four figures in the largest."""
    dimension = FORCE if equation.kind == "force" else TORQUE
    unit = digits.units.unit_of(dimension)
    values = [
        term.sign * float(evaluate(term.expression(equation.method), known))
        / unit.factor
        for term in equation.terms
    ]  # fmt: skip
    if not values:
        raise ArithmeticError("no force is left in a balance")
    largest = max(abs(value) for value in values)
    places = max(3 - round_figures(largest, 4).adjusted(), 0)
    chosen = [round_places(exact(value), places) for value in values]
    return [(-1 if value < 0 else 1, Number(abs(value), unit)) for value in chosen]
