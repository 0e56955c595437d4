"""The proof of a solution: what fails here is never printed.

Checked for every draw: the residual of every equation of every body, torques taken about a point
no step used; the difference from a second solver that shares no code with the plan; cables
and muscles pull, surfaces push, lengths and coefficients are not negative; every value is finite;
a bending moment asked as the largest is that.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Root, Value, evaluate, names_in, root_above
from probgen.quantities.unit import ANGLE, FORCE
from probgen.statics.cross_check import solve_all, with_definitions
from probgen.statics.flaw import Flaw, FlawKind
from probgen.statics.internal_forces import bodies_cut
from probgen.statics.largest_moment import larger_elsewhere
from probgen.statics.line import Line, worked
from probgen.statics.numeric_equations import assemble, coordinates, size_of_sides
from probgen.statics.plan import Branch, Plan
from probgen.statics.rerun import first_limit_id
from probgen.statics.span import may_be, span_at
from probgen.statics.state import limits_to, utmost_finds
from probgen.statics.system import Find, Form, Role, System, Variable

Array = NDArray[np.float64]
TOLERANCE = 1e-9
"""Largest relative residual or difference that counts as none."""
_SMALL = 1e-3
"""Of the largest quantity of its kind: so small may a quantity be and still be compared with it."""


@dataclass(frozen=True, slots=True)
class Proof:
    """One entry a draw; residuals and differences are relative to the largest term.

    faults: what is wrong with each draw, nothing where it is proved.
    values: everything, also the unknowns the plan did not need, which the second solver gives.
    """

    max_residual: Array
    second_solver_difference: Array
    faults: tuple[tuple[Flaw, ...], ...]
    values: Mapping[str, Value]

    @property
    def holds(self) -> NDArray[np.bool_]:
        return np.array([not fault for fault in self.faults], dtype=bool)


class _Faults:
    """What is wrong with each draw; nothing is kept for the many with which nothing is."""

    def __init__(self, draws: int) -> None:
        self._draws = draws
        self._found: dict[int, list[Flaw]] = {}

    def __len__(self) -> int:
        return self._draws

    def __getitem__(self, place: int) -> list[Flaw]:
        return self._found.setdefault(place, [])

    def each(self) -> tuple[tuple[Flaw, ...], ...]:
        """For each draw its faults, in order."""
        each: list[tuple[Flaw, ...]] = [()] * self._draws
        for place, faults in self._found.items():
            each[place] = tuple(faults)
        return tuple(each)


def prove(plan: Plan, solved: Mapping[str, Value]) -> Proof:
    """Prove a solution as returned by `solve` (floats or arrays with one entry a draw)."""
    draws = max(np.size(value) for value in solved.values())
    batch = {name: np.broadcast_to(np.asarray(v, float), draws) for name, v in solved.items()}
    if plan.branches:
        return _prove_branches(plan, batch, draws)
    return _prove(plan, batch, draws)


def _prove_branches(plan: Plan, batch: Mapping[str, Array], draws: int) -> Proof:
    """Each draw proved in the state at the limit reached first, all limits of that state kept."""
    residual, difference = np.zeros(draws), np.zeros(draws)
    faults: list[tuple[Flaw, ...]] = [()] * draws
    values = {name: np.array(value) for name, value in batch.items()}
    told = {first_limit_id(find) for find in utmost_finds(plan.system)}
    for find, place, branch in _placed(plan):
        chosen = np.flatnonzero(batch[first_limit_id(find)] == place)
        if not len(chosen):
            continue
        part = {name: value[chosen] for name, value in batch.items() if name not in told}
        limits = limits_to(plan.system, find)
        kept = replace(branch.plan, system=replace(branch.plan.system, limits=limits))
        proof = _prove(kept, part, len(chosen))
        residual[chosen] = np.maximum(residual[chosen], proof.max_residual)
        difference[chosen] = np.maximum(difference[chosen], proof.second_solver_difference)
        for here, fault in zip(chosen, proof.faults, strict=True):
            faults[int(here)] += _already(branch, fault)
        for name, value in proof.values.items():
            values.setdefault(name, np.full(draws, np.nan))[chosen] = value
    return Proof(residual, difference, tuple(faults), values)


def _placed(plan: Plan) -> Iterator[tuple[Find, int, Branch]]:
    """Each branch with its place among those to the limits of its state."""
    for find in utmost_finds(plan.system):
        yield from ((find, place, each) for place, each in enumerate(plan.branches_to(find)))


def _already(branch: Branch, fault: tuple[Flaw, ...]) -> tuple[Flaw, ...]:
    """What a negative largest value means: the limit is passed before anything is added."""
    sought = branch.utmost.quantity
    if any(flaw.kind is FlawKind.NEGATIVE and flaw.quantity == sought for flaw in fault):
        return (Flaw(FlawKind.PASSED_AT_ZERO, sought, branch.limit.id),)
    return fault


def _prove(plan: Plan, batch: Mapping[str, Array], draws: int) -> Proof:
    system = plan.system
    if not system.unknowns:
        return _prove_data(plan, batch, draws)
    with np.errstate(all="ignore"):
        second = solve_all(system, batch, _start(plan, _with_partners(plan, batch), draws))
        complete = with_definitions(system, _completed(plan, batch, second))
        assembled = assemble(system, complete, _elsewhere(plan, complete))
        residual = assembled.relative
        difference = np.maximum(_difference(plan, batch, second), _off_outcomes(plan, batch))
        size = assembled.scale.max(axis=1)
    settled = _settled(plan, complete)
    faults = _Faults(draws)
    _blame(faults, ~(residual <= TOLERANCE), Flaw(FlawKind.UNBALANCED))
    _blame(faults, ~(difference <= TOLERANCE), Flaw(FlawKind.DISPUTED))
    _blame_lengths(system, complete, faults)
    _blame_largest(system, complete, faults)
    _blame_senses(plan, settled, size, faults)
    _blame_other_roots(plan, batch, faults)
    _blame_directions(system, batch, faults)
    if not any(find.form is Form.HOLDS for find in system.finds):
        _blame_limits(system, settled, faults)
    return Proof(residual, difference, faults.each(), settled)


def _prove_data(plan: Plan, batch: Mapping[str, Array], draws: int) -> Proof:
    """Quantities that follow from the data, with no equilibrium asked: they must have values."""
    faults = _Faults(draws)
    _blame_senses(plan, batch, np.ones(draws), faults)
    _blame_directions(plan.system, batch, faults)
    nothing = np.zeros(draws)
    return Proof(nothing, nothing, faults.each(), dict(batch))


def _blame_directions(system: System, batch: Mapping[str, Array], faults: _Faults) -> None:
    """A force that is zero, for all that floats can tell, points nowhere."""
    for find in system.finds:
        if find.form is Form.MAGNITUDE_AND_DIRECTION:
            size = batch[find.numbers[0].magnitude]
            none = size <= TOLERANCE * _largest_force(system, batch, len(faults))
            _blame(faults, none, Flaw(FlawKind.NO_DIRECTION, find.quantity))


def _blame(faults: _Faults, bad: NDArray[np.bool_], flaw: Flaw) -> None:
    for place in np.flatnonzero(bad):
        faults[int(place)].append(flaw)


def _with_partners(plan: Plan, batch: Mapping[str, Array]) -> dict[str, Array]:
    """The batch with quantities that were taken out on the way but that nobody asked for."""
    partners = [partner for step in plan.steps for partner in step.partners]
    known = worked((Line(p.unknown, p.expression) for p in partners), batch, stated=batch)
    draws = len(next(iter(batch.values())))
    return {name: np.broadcast_to(np.asarray(v, float), draws) for name, v in known.items()}


def _start(plan: Plan, batch: Mapping[str, Array], draws: int) -> Array:
    """A start for the second solver near the plan's values, but not at them.

    A force that the plan does not need starts as large as the largest that is known: from far
    below, Newton's method may go on to another solution.
    """
    usual = _largest_force(plan.system, batch, draws)
    forces = {force.id for force in plan.system.forces}
    columns = []
    for place, name in enumerate(plan.system.unknowns):
        value = batch.get(name, usual if name in forces else np.full(draws, 1.0))
        columns.append(np.where(np.isfinite(value), value, 1.0) * (1.02 + 0.01 * place) + 1e-3)
    return np.stack(columns, axis=1)


def _largest_force(system: System, batch: Mapping[str, Array], draws: int) -> Array:
    """The largest force that is known, newtons; 1 N where none is."""
    known = [f.magnitude for f in system.forces if names_in(f.magnitude) <= batch.keys()]
    sizes = [np.abs(np.broadcast_to(evaluate(each, batch), draws)) for each in known]
    largest = np.max([np.zeros(draws), *sizes], axis=0)
    return np.asarray(np.where(np.isfinite(largest) & (largest > 0.0), largest, 1.0))


def _completed(plan: Plan, batch: Mapping[str, Array], second: Array) -> dict[str, Value]:
    """The plan's values; unknowns it did not need are taken from the second solver."""
    complete: dict[str, Value] = dict(batch)
    for place, name in enumerate(plan.system.unknowns):
        complete.setdefault(name, second[:, place])
    return complete


def _settled(plan: Plan, complete: Mapping[str, Value]) -> dict[str, Value]:
    """All values but those that equilibrium leaves open, and what follows from them.

    The second solver takes one of many for each of these; it proves nothing about them.
    """
    loose = set(plan.left_open)
    for definition in plan.system.definitions:
        if names_in(definition.expression) & loose:
            loose.add(definition.variable)
    return {name: value for name, value in complete.items() if name not in loose}


def _elsewhere(plan: Plan, values: Mapping[str, Value]) -> tuple[Array, Array]:
    """A point off every line of action the plan used: beyond all points, on neither axis."""
    reach: Array = np.asarray(1.0)
    for x, y in coordinates(plan.system, values).values():
        reach = np.maximum(reach, np.abs(x) + np.abs(y))
    return 0.731 * reach, 0.419 * reach


def _difference(plan: Plan, batch: Mapping[str, Array], second: Array) -> Array:
    """How far the plan's values are from the second solver's, relative to their size."""
    worst = np.zeros(len(second))
    placed = {name: second[:, i] for i, name in enumerate(plan.system.unknowns)}
    for name, value in placed.items():
        if name in batch:
            size = _size_of(plan.system, name, value, {**batch, **placed})
            gap = np.abs(batch[name] - value) / np.where(size > 0.0, size, 1.0)
            worst = np.where(np.isfinite(gap), np.maximum(worst, gap), np.inf)
    return worst


def _size_of(system: System, name: str, value: Array, values: Mapping[str, Value]) -> Array:
    """What a difference counts against: the value, and of what is zero for all that solvers can
    tell (a force by balance, an angle or a place by symmetry) other quantities of its kind.

    A force is a difference of other forces and known no better than they are; an angle is known to
    a degree, of other quantities a thousandth of the largest of their kind is taken.
    """
    variables = system.variables
    dimension = variables[name].dimension
    if dimension == ANGLE:
        return np.maximum(np.abs(value), 1.0)
    part = 1.0 if dimension == FORCE else _SMALL
    alike = (id for id, each in variables.items() if each.dimension == dimension and id in values)
    size = np.abs(value)
    for id in alike:
        if dimension != FORCE or variables[id].role is Role.UNKNOWN:
            size = np.fmax(size, part * np.abs(np.asarray(values[id], float)))
    return size


def _off_outcomes(plan: Plan, batch: Mapping[str, Array]) -> Array:
    """How far magnitudes and directions are from the force their components make, relative."""
    worst = np.zeros(len(next(iter(batch.values()))))
    for outcome in plan.outcomes:
        of = outcome.of
        if of.is_magnitude:
            x, y = batch[of.x], batch[of.y]
            size, turn = batch[outcome.id], np.radians(batch[of.direction])
            gap = np.hypot(size * np.cos(turn) - x, size * np.sin(turn) - y)
            worst = np.maximum(worst, gap / np.where(size > 0.0, size, 1.0))
    return worst


def _blame_lengths(system: System, values: Mapping[str, Value], faults: _Faults) -> None:
    """A body that is to be cut along its length, and has none."""
    points, whole = coordinates(system, values), system.uncut
    for body in bodies_cut(system):
        outline = whole.body(body).outline
        (x, y), (far_x, far_y) = points[outline[0]], points[outline[-1]]
        nothing = np.broadcast_to(np.hypot(far_x - x, far_y - y) == 0.0, len(faults))
        _blame(faults, nothing, Flaw(FlawKind.NO_LENGTH, body=body))


def _blame_largest(system: System, values: Mapping[str, Value], faults: _Faults) -> None:
    """A bending moment asked as the largest that is as large, or larger, at another place."""
    for asked in system.largest:
        larger = larger_elsewhere(system, values, asked)
        for draw in np.flatnonzero(larger.wrong):
            far = float(larger.place[draw])
            kind = FlawKind.LARGER_ELSEWHERE
            faults[int(draw)].append(Flaw(kind, asked.moment, value=far, place=asked.origin))


def _blame_senses(plan: Plan, values: Mapping[str, Value], size: Array, faults: _Faults) -> None:
    """Values that do not exist, lie beyond their bounds, or have the wrong sign: one flaw each.

    A value that does not exist says more than the balances that then do not close.
    """
    for variable in plan.system.variables.values():
        if variable.id not in values:
            continue
        value = np.broadcast_to(np.asarray(values[variable.id]), len(faults))
        missing = ~np.isfinite(value)
        for place in np.flatnonzero(missing):
            faults[int(place)][:] = [Flaw(FlawKind.NO_VALUE, variable.id)]
        outside = missing.copy()
        if variable.role is Role.UNKNOWN:
            outside |= _blame_range(variable, value, values, faults)
        if variable.nonnegative:
            negative = ~outside & (value < -TOLERANCE * np.maximum(size, 1.0))
            for place in np.flatnonzero(negative):
                flaw = Flaw(FlawKind.NEGATIVE, variable.id, value=float(value[place]))
                faults[int(place)].append(flaw)


def _blame_range(
    variable: Variable, value: Array, values: Mapping[str, Value], faults: _Faults
) -> NDArray[np.bool_]:
    """An unknown beyond the bounds its author states: a place off the body, say."""
    anywhere = np.zeros(len(faults), dtype=bool)
    low, high = span_at(variable, values)
    for stated, bound, beyond, kind, way in (
        (variable.low, low, np.less, FlawKind.TOO_LOW, -1.0),
        (variable.high, high, np.greater, FlawKind.TOO_HIGH, 1.0),
    ):
        if stated is not None:
            end = np.broadcast_to(np.asarray(bound, float), len(faults))
            slack = way * TOLERANCE * np.maximum(np.abs(end), 1.0)
            outside = np.broadcast_to(beyond(value, end + slack), len(faults))
            for place in np.flatnonzero(outside):
                faults[int(place)].append(Flaw(kind, variable.id, value=float(end[place])))
            anywhere |= outside
    return anywhere


def _blame_other_roots(plan: Plan, values: Mapping[str, Array], faults: _Faults) -> None:
    """A second value of a quantity within its range: the problem would have two answers."""
    for step in plan.steps:
        with np.errstate(all="ignore"):
            others = [evaluate(other, values) for other in step.others]
            if isinstance(step.expression, Root):
                others.append(root_above(step.expression, values))
        for other in others:
            size = np.broadcast_to(np.asarray(other, float), len(faults))
            _blame_other_root(plan.system, step.unknown, size, values, faults)


def _blame_other_root(
    system: System, id: str, other: Array, values: Mapping[str, Array], faults: _Faults
) -> None:
    """Draws in which a quantity may have another value than its step gives.

    Where its own is none that it may have, the step's formula is that of other draws.
    """
    low, high = span_at(system.variables[id], values)
    same = np.isclose(other, values[id], rtol=1e-6, atol=1e-9)
    places = np.flatnonzero((other > low) & (other < high) & ~same)
    if not len(places):
        return
    known = {name: v[places] for name, v in values.items() if name not in system.unknowns}
    found, own = other[places], values[id][places]
    possible = may_be(system, id, found, known)
    right = ((values[id] >= low) & (values[id] <= high))[places] & may_be(system, id, own, known)
    for place, value, fits in zip(places[possible], found[possible], right[possible], strict=True):
        if fits:
            faults[int(place)].append(Flaw(FlawKind.SECOND_VALUE, id, value=float(value)))
        else:
            faults[int(place)][:] = [Flaw(FlawKind.OTHER_FORMULA, id, value=float(value))]


def _blame_limits(system: System, values: Mapping[str, Value], faults: _Faults) -> None:
    """A limit that is passed; reaching it exactly is allowed."""
    for limit in system.limits:
        if not names_in(limit.left) | names_in(limit.right) <= values.keys():
            continue  # it limits what equilibrium leaves open
        left, right = (np.asarray(evaluate(side, values)) for side in (limit.left, limit.right))
        beyond = left - right if limit.relation == "<=" else right - left
        slack = TOLERANCE * size_of_sides(system, limit, values, len(faults))
        passed = np.broadcast_to(beyond > slack, len(faults))
        _blame(faults, passed, Flaw(FlawKind.PASSED, limit=limit.id))
