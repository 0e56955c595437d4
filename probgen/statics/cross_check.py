"""The second solver: all equations of all bodies at once, from geometry and numbers alone.

It knows nothing of the plan.  Where every unknown is the size of a force or couple, the equations
are a linear system whose columns are unit vectors and their torques; otherwise Newton's method
is used on the residuals of `assembly`, with a Jacobian from differences.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import (
    Expression,
    Value,
    evaluate,
    linear_parts,
    names_in,
    total,
)
from probgen.statics.numeric_equations import Assembled, assemble, coordinates
from probgen.statics.system import System

Array = NDArray[np.float64]


def with_definitions(system: System, values: Mapping[str, Value]) -> dict[str, Value]:
    """The values with every defined quantity computed from the others.

    A ratio of two forces, say, need not have a value at a trial state; that is no concern here.
    """
    complete = dict(values)
    with np.errstate(all="ignore"):
        for definition in system.definitions:
            complete[definition.variable] = evaluate(definition.expression, complete)
    return complete


def solve_all(system: System, values: Mapping[str, Value], start: Array) -> Array:
    """All unknowns of every draw, shape (draws, unknowns).

    start: a guess of that shape, used only where the equations are not linear.
    """
    if is_linear(system):
        found = _solve_linear(system, with_definitions(system, values), len(start))
        if found is not None:
            return found
    return _solve_newton(system, values, start)


def is_linear(system: System) -> bool:
    """Whether every unknown is only the size of forces and couples, or linear in conditions."""
    unknown = set(system.unknowns)
    if any(names_in(d.expression) & unknown for d in system.definitions):
        return False
    geometry = [force.direction for force in system.forces]
    for point in system.points.values():
        geometry += [part for link in point.links for part in (link.length, link.direction)]
    if any(names_in(part) & unknown for part in geometry):
        return False
    sizes = [f.magnitude for f in system.forces] + [c.moment for c in system.couples]
    sizes += [total((1, c.left), (-1, c.right)) for c in system.conditions]
    return all(_linear_in(size, unknown) for size in sizes)


def _linear_in(expression: Expression, unknown: set[str]) -> bool:
    for name in names_in(expression) & unknown:
        parts = linear_parts(expression, name)
        if parts is None or names_in(parts[0]) & unknown:
            return False
    return True


def _solve_linear(system: System, values: Mapping[str, Value], draws: int) -> Array | None:
    """The linear system matrix @ unknowns = loads; None when it is not square."""
    places = {name: place for place, name in enumerate(system.unknowns)}
    rows = {
        (body.id, kind): place
        for place, (body, kind) in enumerate(
            (body, kind)
            for body in system.bodies
            if not body.joints  # else its balances are those of its joints
            for kind in (("x", "y") if body.particle else ("x", "y", "turn"))
        )
    }
    columns: dict[tuple[int, int], Value] = {}
    loads: dict[int, Value] = {}
    rest = _at_rest(values, places)
    for row, size, factor in _entries(system, values, rows):
        for name in names_in(size) & places.keys():
            parts = linear_parts(size, name)
            if parts is not None:
                at = (row, places[name])
                columns[at] = columns.get(at, 0.0) + factor * evaluate(parts[0], values)
        loads[row] = loads.get(row, 0.0) - factor * evaluate(size, rest)
    held = {row for (row, _), column in columns.items() if np.any(column)}
    needed = sorted(held | {row for row, load in loads.items() if np.any(load)})
    if len(needed) != len(places):
        return None
    matrix = np.zeros((draws, len(needed), len(places)))
    right = np.empty((draws, len(needed), 1))
    for line, row in enumerate(needed):
        right[:, line, 0] = loads[row]
        for place in range(len(places)):
            if (row, place) in columns:
                matrix[:, line, place] = columns[row, place]
    try:
        return np.asarray(np.linalg.solve(matrix, right)[:, :, 0], dtype=np.float64)
    except np.linalg.LinAlgError:
        return None


def _at_rest(values: Mapping[str, Value], unknowns: Mapping[str, int]) -> dict[str, Value]:
    return {**values, **dict.fromkeys(unknowns, 0.0)}


def _entries(
    system: System, values: Mapping[str, Value], rows: Mapping[tuple[str, str], int]
) -> Iterator[tuple[int, Expression, Value]]:
    """(equation, size, factor): each force and couple in each equation it enters."""
    points = coordinates(system, values)
    for force in system.forces:
        if (force.body, "x") not in rows:
            continue
        angle = np.radians(evaluate(force.direction, values))
        cosine, sine = np.cos(angle), np.sin(angle)
        x, y = points[force.point]
        yield rows[force.body, "x"], force.magnitude, cosine
        yield rows[force.body, "y"], force.magnitude, sine
        if (force.body, "turn") in rows:
            yield rows[force.body, "turn"], force.magnitude, x * sine - y * cosine
    for couple in system.couples:
        yield rows[couple.body, "turn"], couple.moment, 1.0
    for place, condition in enumerate(system.conditions, start=len(rows)):
        yield place, total((1, condition.left), (-1, condition.right)), 1.0


def assembled_at(system: System, values: Mapping[str, Value], guess: Array) -> Assembled:
    """The equations with the unknowns set to `guess`, shape (draws, unknowns)."""
    trial: dict[str, Value] = dict(values)
    trial.update({name: guess[:, i] for i, name in enumerate(system.unknowns)})
    return assemble(system, with_definitions(system, trial))


def jacobian(system: System, values: Mapping[str, Value], guess: Array) -> Array:
    """Derivatives of the residuals by central differences, shape (draws, equations, unknowns)."""
    columns = []
    for place in range(guess.shape[1]):
        step = np.zeros_like(guess)
        step[:, place] = np.maximum(np.abs(guess[:, place]), 1e-3) * 2.0**-10
        above = assembled_at(system, values, guess + step).residual
        below = assembled_at(system, values, guess - step).residual
        columns.append((above - below) / (2.0 * step[:, place, None]))
    return np.stack(columns, axis=2)


def _solve_newton(
    system: System, values: Mapping[str, Value], start: Array, rounds: int = 30
) -> Array:
    guess = start.copy()
    for _ in range(rounds):
        here = assembled_at(system, values, guess)
        if not np.all(np.isfinite(here.residual)) or float(here.relative.max(initial=0.0)) < 1e-14:
            break
        slopes = jacobian(system, values, guess)
        size = _row_sizes(slopes, here.scale, start)[:, :, None]
        try:
            move = np.linalg.pinv(slopes / size) @ (here.residual[:, :, None] / size)
        except np.linalg.LinAlgError:  # a slope without value: what is found so far is no solution
            break
        guess = guess - move[:, :, 0]
    return guess


def _row_sizes(slopes: Array, scale: Array, start: Array) -> Array:
    """What each equation is divided by, so that all count alike; shape (draws, equations).

    An equation whose terms vanish, N = 0 say, counts by what it comes to at the start, lest it
    drown all others.
    """
    usual = np.abs(slopes * start[:, None, :]).max(axis=2)
    size = np.maximum(scale, 1e-6 * usual)
    return np.where(size > 0.0, size, 1.0)
