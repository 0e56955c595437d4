"""The equilibrium equations as numbers, assembled from geometry alone.

This is the second solver's view and shares nothing with the plan's equations: points become
coordinates, forces become vectors, and each body gives the sums of F_x, F_y and of the torques
x F_y - y F_x about the origin.  Arrays have one entry a draw.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Name, Value, evaluate
from probgen.statics.system import Body, Condition, Force, Limit, Spread, System

Array = NDArray[np.float64]
_LEAST = 1e-6
"""Of the largest force anywhere: below that a body's forces are what rounding left of it, such as
those on a joint that carries nothing."""
_SMALL: Final = 1e-3
"""Of the largest quantity of its kind: a condition's sides count as no smaller."""
_SIMPSON: Final = ((0.0, 1 / 6), (0.5, 4 / 6), (1.0, 1 / 6))
_GAUSS: Final = tuple(
    (float(place + 1.0) / 2.0, float(weight) / 2.0)
    for place, weight in zip(*np.polynomial.legendre.leggauss(6), strict=True)
)
"""Parts of a length, and what a value there counts for; exact to the powers 3 and 11."""


@dataclass(frozen=True, slots=True)
class Assembled:
    """Left sides of all equations, shape (draws, equations), and the size of their largest term."""

    residual: Array
    scale: Array
    labels: tuple[tuple[str, str], ...]
    """For each equation (body or condition id, "x" | "y" | "turn" | "condition")."""

    @property
    def relative(self) -> Array:
        """Largest residual of each draw, relative to its equation's largest term."""
        safe = np.where(self.scale > 0.0, self.scale, 1.0)
        ratios: Array = np.abs(self.residual) / safe
        return ratios.max(axis=1) if ratios.shape[1] else np.zeros(len(ratios))


def coordinates(system: System, values: Mapping[str, Value]) -> dict[str, tuple[Array, Array]]:
    """Coordinates of every point, metres."""
    found = {}
    for point in system.points.values():
        x, y = np.asarray(0.0), np.asarray(0.0)
        for link in point.links:
            length = np.asarray(evaluate(link.length, values))
            angle = np.radians(evaluate(link.direction, values))
            x, y = x + length * np.cos(angle), y + length * np.sin(angle)
        found[point.id] = (x, y)
    return found


def assemble(
    system: System,
    values: Mapping[str, Value],
    origin: tuple[Array | float, Array | float] = (0.0, 0.0),
) -> Assembled:
    """Every equation of every body and every condition, torques about `origin` (metres)."""
    draws = max((np.size(value) for value in values.values()), default=1)
    places = coordinates(system, values)
    columns: list[tuple[Array, Array]] = []
    labels: list[tuple[str, str]] = []
    reach = _reach(places, draws)
    acting = {body.id: _sums(system, body, values, places, origin) for body in system.bodies}
    everywhere = _largest([p for each in acting.values() for p in each["x"] + each["y"]], draws)
    for body in system.bodies:
        sums = acting[body.id]
        for name in ("x", "y") if body.particle else ("x", "y", "turn"):
            terms = [np.broadcast_to(term, draws) for term in sums[name]]
            push = np.maximum(_largest(sums["x"] + sums["y"], draws), _LEAST * everywhere)
            size = _largest(sums["turn"], draws) if name == "turn" else push
            if name == "turn":
                size = np.maximum(size, push * reach)
            columns.append((np.sum(terms, axis=0) if terms else np.zeros(draws), size))
            labels.append((body.id, name))
    for condition in system.conditions:
        columns.append(_condition(system, condition, values, draws))
        labels.append((condition.id, "condition"))
    residual = np.stack([np.broadcast_to(c[0], draws) for c in columns], axis=1)
    scale = np.stack([np.broadcast_to(c[1], draws) for c in columns], axis=1)
    return Assembled(residual, scale, tuple(labels))


def _reach(places: Mapping[str, tuple[Array, Array]], draws: int) -> Array:
    """The size of the situation, metres: its farthest coordinate."""
    return _largest([c for place in places.values() for c in place], draws)


def _largest(terms: list[Array], draws: int) -> Array:
    largest: Array = np.zeros(draws)
    for term in terms:
        largest = np.maximum(largest, np.abs(term))
    return largest


def _sums(
    system: System,
    body: Body,
    values: Mapping[str, Value],
    places: Mapping[str, tuple[Array, Array]],
    origin: tuple[Array | float, Array | float],
) -> dict[str, list[Array]]:
    sums: dict[str, list[Array]] = {"x": [], "y": [], "turn": []}
    for force in system.forces:
        if force.body != body.id:
            continue
        angle = np.radians(evaluate(force.direction, values))
        for magnitude, (x, y) in _acting(system, force, values, places):
            fx, fy = magnitude * np.cos(angle), magnitude * np.sin(angle)
            sums["x"].append(np.asarray(fx))
            sums["y"].append(np.asarray(fy))
            sums["turn"].append((x - origin[0]) * fy - (y - origin[1]) * fx)
    for couple in system.couples:
        if couple.body == body.id:
            sums["turn"].append(np.asarray(evaluate(couple.moment, values)))
    return sums


def _acting(
    system: System,
    force: Force,
    values: Mapping[str, Value],
    places: Mapping[str, tuple[Array, Array]],
) -> Iterator[tuple[Array, tuple[Array, Array]]]:
    """Sizes and places of a force: one, or for a distributed load its parts.

    A load that runs evenly along a line is summed by Simpson's rule, one by a formula by that of
    Gauss, exact for its force and for its torque, and so knows nothing of the resultant the plan
    works with.
    """
    spread = next((e.spread for e in system.elements if force.id in e.forces), None)
    if spread is None:
        yield np.asarray(evaluate(force.magnitude, values)), places[force.point]
        return
    length = np.asarray(evaluate(spread.line.length, values))
    angle = np.radians(evaluate(spread.line.direction, values))
    x, y = places[spread.start] if spread.start else (np.asarray(0.0), np.asarray(0.0))
    for part, weight in _GAUSS if spread.intensity else _SIMPSON:
        along = part * length
        size = size_at(spread, values, part) * length * weight
        yield size, (x + along * np.cos(angle), y + along * np.sin(angle))


def size_at(spread: Spread, values: Mapping[str, Value], part: float) -> Array:
    """The size of a distributed load (N/m) at a part of its length, 0 at its start."""
    first, last = (np.asarray(evaluate(each, values)) for each in (spread.first, spread.last))
    if (curve := spread.intensity) is None:
        return np.asarray(first + (last - first) * part)
    low, high = (np.asarray(evaluate(each, values)) for each in (curve.low, curve.high))
    there = {**values, curve.along.id: low + (high - low) * part}
    return np.asarray(evaluate(curve.load, there))


def _condition(
    system: System, condition: Condition, values: Mapping[str, Value], draws: int
) -> tuple[Array, Array]:
    """Its difference, and the size of its sides."""
    left, right = (np.asarray(evaluate(side, values)) for side in (condition.left, condition.right))
    size = size_of_sides(system, condition, values, draws)
    return np.broadcast_to(left - right, draws), size


def size_of_sides(
    system: System, compared: Condition | Limit, values: Mapping[str, Value], draws: int
) -> Array:
    """What a difference of two sides counts against: the larger of them.

    Where the left one is a quantity by itself, that is none below a part of the largest of its
    kind: x = 0 is fulfilled by what rounding leaves of x.
    """
    sides = [np.asarray(evaluate(side, values)) for side in (compared.left, compared.right)]
    largest = _largest(sides, draws)
    if not isinstance(compared.left, Name):
        return largest
    kind = system.variables[compared.left.id].dimension
    alike = [v.id for v in system.variables.values() if v.dimension == kind and v.id in values]
    kin = _largest([np.nan_to_num(np.asarray(values[id], float)) for id in alike], draws)
    return np.maximum(largest, _SMALL * kin)
