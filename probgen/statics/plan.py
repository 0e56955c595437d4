"""The plan: which balance, about which pivot, for which unknown, in which order.

Found once for a template by a search over sets of known quantities (Dijkstra's shortest path):
every balance of every body and every condition is a possible step when it holds exactly one
quantity not yet known.  The cheapest path to what is asked wins, so no step is shown that is not
needed.  What an equation depends on is tested on a handful of draws, not read off its symbols,
so that a force whose line passes through the pivot counts as absent however its arm is written.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import count

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import (
    Call,
    Expression,
    Quotient,
    Value,
    evaluate,
    linear_parts,
    names_in,
    negative,
    over,
    positive_first,
)
from probgen.statics.determinacy import require_determinate
from probgen.statics.equation import (
    Equation,
    condition_equation,
    force_balance,
    oriented,
    torque_balance,
)
from probgen.statics.method import Method
from probgen.statics.refusal import Refusal
from probgen.statics.system import (
    Condition,
    Definition,
    Find,
    Form,
    Role,
    System,
)


@dataclass(frozen=True, slots=True)
class Step:
    """One equation solved for one quantity: unknown = expression.

    removed: unknowns of the same body that the choice of pivot or axis keeps out of the equation.
    """

    unknown: str
    equation: Equation
    expression: Expression
    removed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Outcome:
    """An answer made of solved quantities: a magnitude (N) or a direction (deg from +x)."""

    id: str
    expression: Expression


@dataclass(frozen=True, slots=True)
class Plan:
    """The way through a problem; evaluating its steps in order is the solution."""

    system: System
    method: Method
    definitions: tuple[Definition, ...]
    steps: tuple[Step, ...]
    outcomes: tuple[Outcome, ...]

    @property
    def pivots(self) -> tuple[str, ...]:
        """The points the plan takes torques about."""
        return tuple(s.equation.about for s in self.steps if s.equation.kind == "torque")


Probe = Mapping[str, NDArray[np.float64]]


def find_plan(system: System, probe: Probe, method: Method | None = None) -> Plan:
    """The shortest derivation of everything the system asks.

    probe: coherent values of all givens, derived quantities and g for a handful of draws.
    Raises Refusal when the situation is unstable, indeterminate, or no order of steps is found.
    """
    method = method or Method()
    settled, open_definitions = _settle(system)
    known = dict(probe)
    for definition in settled:
        known[definition.variable] = np.asarray(evaluate(definition.expression, known))
    require_determinate(system, known)
    unknowns = (*system.unknowns, *(d.variable for d in open_definitions))
    candidates = tuple(
        oriented(equation, known) for equation in _candidates(system, open_definitions, method)
    )
    holds = _dependence(candidates, unknowns, known)
    wanted = frozenset(wanted_unknowns(system)) & frozenset(unknowns)
    path = _shortest(system, candidates, holds, wanted)
    steps = tuple(_step(system, candidates[i], unknown, holds[i]) for i, unknown in path)
    return Plan(system, method, settled, steps, tuple(_outcomes(system)))


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


def _candidates(
    system: System, open_definitions: tuple[Definition, ...], method: Method
) -> Iterator[Equation]:
    for body in system.bodies:
        if not body.particle:
            for pivot in _pivots(system, body.id):
                yield torque_balance(system, body.id, pivot, method)
        yield force_balance(system, body.id, "x", method)
        yield force_balance(system, body.id, "y", method)
    for condition in system.conditions:
        yield condition_equation(condition, method)
    for definition in open_definitions:
        variable = system.variables[definition.variable]
        yield condition_equation(
            Condition(variable.id, variable.as_name, definition.expression, "definition"), method
        )


def _pivots(system: System, body: str) -> tuple[str, ...]:
    """Points a torque balance may be written about: the author's choice, or where forces act."""
    if system.pivot:
        return (system.pivot,)
    points = [force.point for force in system.forces if force.body == body]
    return tuple(dict.fromkeys(points))


def _dependence(
    candidates: tuple[Equation, ...], unknowns: tuple[str, ...], known: Mapping[str, Value]
) -> tuple[frozenset[str], ...]:
    """For each equation the unknowns its value changes with, at the probe's draws."""
    trial: dict[str, Value] = dict(known)
    for place, unknown in enumerate(unknowns):
        trial[unknown] = 0.7318 + 0.2113 * place
    held = []
    for equation in candidates:
        expression = equation.expression
        base = np.asarray(evaluate(expression, trial))
        size = max((float(np.max(np.abs(evaluate(t.expression(equation.method), trial))))
                    for t in equation.terms), default=1.0)  # fmt: skip
        moved = set()
        for unknown in names_in(expression) & set(unknowns):
            changed = evaluate(expression, {**trial, unknown: np.multiply(trial[unknown], 1.7)})
            if np.max(np.abs(changed - base)) > 1e-9 * (size or 1.0):
                moved.add(unknown)
        held.append(frozenset(moved))
    return tuple(held)


def wanted_unknowns(system: System) -> tuple[str, ...]:
    """The quantities the finds need, each once, in the order asked."""
    wanted: list[str] = []
    for find in system.finds:
        wanted += _parts_of(system, find)
    return tuple(dict.fromkeys(wanted))


def _parts_of(system: System, find: Find) -> list[str]:
    if find.form is Form.VALUE:
        return [find.quantity]
    return [f"{find.quantity}.x", f"{find.quantity}.y"]


def _outcomes(system: System) -> Iterator[Outcome]:
    for find in system.finds:
        if find.form is Form.MAGNITUDE_AND_DIRECTION:
            x, y = (system.variables[part].as_name for part in _parts_of(system, find))
            yield Outcome(f"{find.quantity}.magnitude", Call("hypot", (x, y)))
            yield Outcome(f"{find.quantity}.direction", Call("atan2", (y, x)))


_COST = {"force": 0.8, "torque": 1.0, "condition": 0.4}


def _cost(equation: Equation, removed: int, depth: int) -> float:
    """Fewer steps first; then shorter equations, pivots that remove much, torques early."""
    cost = 10.0 + _COST[equation.kind] + 0.01 * len(equation.terms)
    if equation.kind == "torque":
        cost += 0.3 * depth - 0.05 * removed
    return cost


def _shortest(
    system: System,
    candidates: tuple[Equation, ...],
    holds: tuple[frozenset[str], ...],
    wanted: frozenset[str],
) -> list[tuple[int, str]]:
    """The cheapest list of (equation, unknown it gives) after which all wanted is known."""
    order = count()
    queue: list[tuple[float, int, frozenset[str], list[tuple[int, str]]]] = [
        (0.0, next(order), frozenset(), [])
    ]
    seen: set[frozenset[str]] = set()
    while queue:
        cost, _, known, path = heapq.heappop(queue)
        if wanted <= known:
            return path
        if known in seen:
            continue
        seen.add(known)
        for index, equation in enumerate(candidates):
            new = holds[index] - known
            if len(new) != 1:
                continue
            (unknown,) = new
            if linear_parts(equation.expression, unknown) is None:
                continue
            removed = len(_removed(system, equation, holds[index]))
            further = cost + _cost(equation, removed, len(path))
            step = (index, unknown)
            heapq.heappush(queue, (further, next(order), known | new, [*path, step]))
    raise Refusal(
        f"no order of single balances leads to {', '.join(sorted(wanted))}: every equation holds "
        "two or more quantities that are not known yet; ask for fewer, or give one of them"
    )


def _removed(system: System, equation: Equation, held: frozenset[str]) -> tuple[str, ...]:
    """Unknowns of forces on the body that the equation is free of."""
    if equation.kind == "condition":
        return ()
    free: list[str] = []
    for force in system.forces:
        if force.body == equation.body:
            free += sorted(_unknown_in(system, force.magnitude) - held)
    return tuple(dict.fromkeys(free))


def _unknown_in(system: System, expression: Expression) -> frozenset[str]:
    unknown = {v.id for v in system.variables.values() if v.role is Role.UNKNOWN}
    return names_in(expression) & frozenset(unknown)


def _step(system: System, equation: Equation, unknown: str, held: frozenset[str]) -> Step:
    found = linear_parts(equation.expression, unknown)
    assert found is not None, "the search admits equations linear in their unknown only"
    slope, rest = found
    return Step(unknown, equation, _isolated(slope, rest), _removed(system, equation, held))


def _isolated(slope: Expression, rest: Expression) -> Expression:
    """-rest/slope, with the signs the way one writes it by hand."""
    quotient = over(negative(rest), slope)
    if isinstance(quotient, Quotient):
        return Quotient(positive_first(quotient.top), positive_first(quotient.bottom))
    return positive_first(quotient)
