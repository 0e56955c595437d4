"""The plan: which balance, about which pivot, for which unknown, in which order.

Found once for a template.  Every balance of every body or group and every condition is a possible
step; `search` finds the cheapest way to what is asked, so no step is shown that is not needed.
What an equation depends on is tested on a handful of draws, not read off its symbols, so that a
force whose line passes through the pivot counts as absent however its arm is written.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Call, Expression, Value, evaluate, names_in, negative
from probgen.quantities.unit import ANGLE
from probgen.statics.candidate import candidates
from probgen.statics.determinacy import require_determinate
from probgen.statics.equation import Equation, oriented, pruned
from probgen.statics.isolation import Range, all_roots, eliminated
from probgen.statics.meeting import with_meeting_points
from probgen.statics.method import Method
from probgen.statics.refusal import Refusal
from probgen.statics.search import Field, Move, dependence, shortest, trial_values
from probgen.statics.system import (
    Condition,
    Definition,
    Find,
    Form,
    Limit,
    Role,
    System,
    Variable,
)


@dataclass(frozen=True, slots=True)
class Step:
    """One equation solved for one quantity: unknown = expression.

    removed: unknowns of the same bodies that the choice of pivot or axis keeps out of the equation.
    others: further roots of the equation, which lie where the quantity may not.
    reduced: the equation with what was taken out of others put in, as an expression that is zero.
    partners: on the first step of equations that had to be solved together, the steps of the
    others; they follow in the plan as far as their quantities are needed.
    """

    unknown: str
    equation: Equation
    expression: Expression
    removed: tuple[str, ...] = ()
    partners: tuple[Step, ...] = ()
    reduced: Expression | None = None
    others: tuple[Expression, ...] = ()

    @property
    def equations(self) -> tuple[Equation, ...]:
        """The equation, and those it had to be solved with."""
        return (self.equation, *(partner.equation for partner in self.partners))


@dataclass(frozen=True, slots=True)
class Outcome:
    """An answer made of solved quantities: a magnitude (N) or a direction (deg from +x)."""

    id: str
    expression: Expression


@dataclass(frozen=True, slots=True)
class Plan:
    """The way through a problem; evaluating its steps in order is the solution.

    branches: where the largest or smallest value before a limit is asked, the plan to each limit;
    definitions, steps and outcomes are then theirs, and empty here.
    """

    system: System
    method: Method
    definitions: tuple[Definition, ...]
    steps: tuple[Step, ...]
    outcomes: tuple[Outcome, ...]
    branches: tuple[Branch, ...] = ()

    @property
    def pivots(self) -> tuple[str, ...]:
        """The points the plan takes torques about."""
        return tuple(s.equation.about for s in self.steps if s.equation.kind == "torque")


@dataclass(frozen=True, slots=True)
class Branch:
    """One limit reached: the plan of the system in which it is.

    beyond: the plan to both sides of the limit with the sought quantity known, to tell on which
    side of its value the limit is passed.
    """

    limit: Limit
    plan: Plan
    beyond: Plan


Probe = Mapping[str, NDArray[np.float64]]


def find_plan(system: System, probe: Probe, method: Method | None = None) -> Plan:
    """The shortest derivation of everything the system asks.

    probe: coherent values of all givens, derived quantities and g for a handful of draws.
    Raises Refusal when the situation is unstable, indeterminate, or no order of steps is found.
    """
    method = method or Method()
    extreme = extreme_find(system)
    if extreme is not None:
        return _to_each_limit(system, extreme, probe, method)
    settled, open_definitions = _settle(system)
    known: dict[str, Value] = dict(probe)
    for definition in settled:
        known[definition.variable] = np.asarray(evaluate(definition.expression, known))
    wanted = wanted_unknowns(system)
    if not set(wanted) <= known.keys():
        require_determinate(system, known)
    found = _searched(system, open_definitions, known, wanted, method)
    if found is None or any(step.partners for step in found):
        off_body = with_meeting_points(system)
        better = _searched(off_body, open_definitions, known, wanted, method)
        if better is not None and not any(step.partners for step in better):
            system, found = _pruned_points(system, off_body, better), better
    if found is None:
        raise Refusal(_no_way(wanted))
    return Plan(system, method, settled, found, tuple(_outcomes(system)))


def _searched(
    system: System,
    open_definitions: tuple[Definition, ...],
    known: Mapping[str, Value],
    wanted: tuple[str, ...],
    method: Method,
) -> tuple[Step, ...] | None:
    """The steps of the cheapest way, None when there is none."""
    unknowns = (*system.unknowns, *(d.variable for d in open_definitions))
    equations = tuple(
        oriented(equation, known) for equation in candidates(system, open_definitions, method)
    )
    holds = dependence(equations, unknowns, known)
    equations = tuple(
        pruned(equation, _absent(unknowns, held))
        for equation, held in zip(equations, holds, strict=True)
    )
    kept_out = [_removed(system, e, h, unknowns) for e, h in zip(equations, holds, strict=True)]
    weights = [_relief(system, e, out) for e, out in zip(equations, kept_out, strict=True)]
    trial, ranges = trial_values(unknowns, known), _ranges(system, unknowns)
    field = Field(equations, unknowns, holds, weights, trial, ranges)
    path = shortest(field, sum(1 << at for at, name in enumerate(unknowns) if name in wanted))
    if path is None:
        return None
    reached = dict(known)
    steps: list[Step] = []
    for move in path:
        for step in _steps(field, move, kept_out[move.equations[0]], reached):
            chosen = _physical(step, field.ranges[step.unknown], reached)
            steps.append(chosen)
            with np.errstate(all="ignore"):
                reached[step.unknown] = np.asarray(evaluate(chosen.expression, reached))
            if not np.any(np.isfinite(reached[step.unknown])):
                return None
    return _needed(steps, wanted)


def _pruned_points(system: System, off_body: System, steps: tuple[Step, ...]) -> System:
    """The system with those points off the body that the steps take torques about."""
    used = {step.equation.about for step in steps if step.equation.kind == "torque"}
    points = {
        name: point
        for name, point in off_body.points.items()
        if name in system.points or name in used
    }
    return replace(system, points=points)


def extreme_find(system: System) -> Find | None:
    """The find that asks how far something may go, None when there is none."""
    forms = (Form.LARGEST, Form.SMALLEST)
    return next((find for find in system.finds if find.form in forms), None)


def _to_each_limit(system: System, extreme: Find, probe: Probe, method: Method) -> Plan:
    if not system.limits:
        raise Refusal(
            f"{extreme.quantity} has no {extreme.form} value: nothing limits it; add a [[limit]]"
        )
    finds = tuple(
        replace(find, form=Form.VALUE) if find is extreme else find for find in system.finds
    )
    branches = []
    for limit in (side for each in system.limits for side in _sides(each)):
        reached = Condition(limit.id, limit.left, limit.right, "")
        at_limit = replace(system, conditions=(*system.conditions, reached), finds=finds, limits=())
        beyond = _beyond(system, extreme, limit, probe, method)
        branches.append(Branch(limit, find_plan(at_limit, probe, method), beyond))
    return Plan(system, method, (), (), (), tuple(branches))


def _sides(limit: Limit) -> tuple[Limit, ...]:
    """|a| <= b as the two limits a <= b and -a <= b; any other limit as it is."""
    match limit.left:
        case Call("abs", (inner,)) if limit.relation == "<=":
            return replace(limit, left=inner), replace(limit, left=negative(inner))
        case _:
            return (limit,)


def _beyond(system: System, extreme: Find, limit: Limit, probe: Probe, method: Method) -> Plan:
    """The plan to both sides of a limit with the sought quantity given: is it passed or not?"""
    names = sorted(names_in(limit.left) | names_in(limit.right))
    variables = dict(system.variables)
    variables[extreme.quantity] = replace(variables[extreme.quantity], role=Role.GIVEN)
    given = replace(
        system,
        variables=variables,
        limits=(),
        finds=tuple(Find(name, Form.VALUE) for name in names if name != extreme.quantity),
    )
    draws = len(next(iter(probe.values())))
    return find_plan(given, {**probe, extreme.quantity: np.full(draws, 0.83)}, method)


def _absent(unknowns: tuple[str, ...], held: int) -> frozenset[str]:
    return frozenset(name for place, name in enumerate(unknowns) if not held >> place & 1)


def _no_way(wanted: tuple[str, ...]) -> str:
    return (
        f"no order of balances leads to {', '.join(wanted)}: every equation holds more quantities "
        "than can be found from it; ask for fewer, or give one of them"
    )


def _settle(system: System) -> tuple[tuple[Definition, ...], tuple[Definition, ...]]:
    """Definitions that givens alone settle, and those that hold an unknown."""
    open_names = set(system.unknowns)
    settled, unsettled = [], []
    for definition in system.definitions:
        if names_in(definition.expression) & open_names:
            open_names.add(definition.variable)
            unsettled.append(definition)
        else:
            settled.append(definition)
    return tuple(settled), tuple(unsettled)


def wanted_unknowns(system: System) -> tuple[str, ...]:
    """The quantities the finds need, each once, in the order asked."""
    wanted: list[str] = []
    for find in system.finds:
        wanted += _limit_names(system, find) if find.form is Form.HOLDS else _parts_of(find)
    return tuple(dict.fromkeys(wanted))


def limits_asked(system: System, find: Find) -> tuple[Limit, ...]:
    """The limits a "holds" find is about: the one it names, or all."""
    return tuple(limit for limit in system.limits if find.quantity in ("", limit.id))


def _limit_names(system: System, find: Find) -> list[str]:
    return [
        name
        for limit in limits_asked(system, find)
        for side in (limit.left, limit.right)
        for name in sorted(names_in(side))
    ]


def _parts_of(find: Find) -> list[str]:
    if find.form is Form.VALUE:
        return [find.quantity]
    return [f"{find.quantity}.x", f"{find.quantity}.y"]


def _outcomes(system: System) -> Iterator[Outcome]:
    for find in system.finds:
        if find.form is Form.MAGNITUDE_AND_DIRECTION:
            x, y = (system.variables[part].as_name for part in _parts_of(find))
            yield Outcome(f"{find.quantity}.magnitude", Call("hypot", (x, y)))
            yield Outcome(f"{find.quantity}.direction", Call("atan2", (y, x)))


def _removed(
    system: System, equation: Equation, held: int, unknowns: tuple[str, ...]
) -> tuple[str, ...]:
    """Unknowns of forces on the bodies that the equation is free of."""
    inside = {name for place, name in enumerate(unknowns) if held >> place & 1}
    free: list[str] = []
    for force in system.forces:
        if force.body in equation.bodies:
            free += sorted(_unknown_in(system, force.magnitude) - inside)
    return tuple(dict.fromkeys(free))


def _relief(system: System, equation: Equation, removed: tuple[str, ...]) -> int:
    """How much a choice of pivot simplifies: unknowns that act at the pivot count double."""
    at_pivot = {
        name
        for force in system.forces
        if force.body in equation.bodies and force.point == equation.about
        for name in names_in(force.magnitude)
    }
    return sum(2 if name in at_pivot else 1 for name in removed)


def _unknown_in(system: System, expression: Expression) -> frozenset[str]:
    unknown = {v.id for v in system.variables.values() if v.role is Role.UNKNOWN}
    return names_in(expression) & frozenset(unknown)


def _steps(
    field: Field, move: Move, removed: tuple[str, ...], known: Mapping[str, Value]
) -> Iterator[Step]:
    """The step of a move; a move of several equations gives as many.

    Lever arms are written the positive way round as far as values are known by then.
    """
    equations = tuple(oriented(field.equations[index], known) for index in move.equations)
    names = tuple(field.unknowns[place] for place in move.unknowns)
    found = eliminated(tuple(e.expression for e in equations), names, field.ranges)
    assert found is not None, "the search admits only equations that can be solved"
    steps = [
        Step(each.unknown, equations[each.place], each.value, removed, reduced=each.balance)
        for each in found
    ]
    yield replace(steps[0], partners=tuple(steps[1:]))
    yield from steps[1:]


def _ranges(system: System, unknowns: tuple[str, ...]) -> dict[str, Range]:
    return {name: span_of(system.variables[name]) for name in unknowns}


def span_of(variable: Variable) -> Range:
    """Where an unknown may lie: as its author says, else an angle from 0 to 90 degrees."""
    least = 0.0 if variable.nonnegative or variable.dimension == ANGLE else -math.inf
    most = 90.0 if variable.dimension == ANGLE else math.inf
    low = least if variable.low is None else variable.low
    return low, most if variable.high is None else variable.high


def _physical(step: Step, within: Range, known: Mapping[str, Value]) -> Step:
    """The step with the root that lies where the quantity may lie; the others are kept beside it.

    Raises Refusal when several do: a draw could not say which is meant.
    """
    values = all_roots(step.reduced or step.equation.expression, step.unknown, within)
    if len(values) <= 1:
        return step
    low, high = within
    with np.errstate(all="ignore"):
        worked = [np.asarray(evaluate(value, known)) for value in values]
    fitting = [
        value
        for value, numbers in zip(values, worked, strict=True)
        if np.mean((numbers >= low - 1e-9) & (numbers <= high + 1e-9)) > 0.5
    ]
    if len(fitting) > 1:
        raise Refusal(
            f"{step.unknown} has more than one possible value between {low:g} and {high:g}: "
            "narrow its range with from and to under [unknown]"
        )
    chosen = fitting[0] if fitting else values[0]
    return replace(step, expression=chosen, others=tuple(v for v in values if v != chosen))


def _needed(steps: list[Step], wanted: tuple[str, ...]) -> tuple[Step, ...]:
    """The steps without those whose quantity nobody asked for and no later step uses."""
    kept: list[Step] = []
    held = set(wanted)
    for step in reversed(steps):
        if step.unknown in held:
            kept.append(step)
            held |= names_in(step.expression)
    return _components_last(kept[::-1])


def _components_last(steps: list[Step]) -> tuple[Step, ...]:
    """Components that only their definition gives come last, beside each other."""
    used = frozenset[str]().union(*(names_in(step.expression) for step in steps))
    last = [
        step
        for step in steps
        if step.equation.kind == "condition"
        and step.unknown.endswith((".x", ".y"))
        and step.unknown not in used
    ]
    return (*(step for step in steps if step not in last), *last)
