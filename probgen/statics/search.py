"""The search for the shortest derivation, over sets of known quantities.

Dijkstra's shortest path: a state is the set of quantities found so far, an edge an equation that
holds exactly one quantity not yet known, or two equations that hold the same two.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations, count

import numpy as np

from probgen.quantities.expression import UNITY, Value, evaluate, names_in
from probgen.statics.equation import Equation, X, Y
from probgen.statics.isolation import both_solved, solved_for

_TOGETHER = 30.0  # dearer than the single steps that may take their place
_COST = {"force": 0.8, "torque": 1.0, "condition": 0.4}


@dataclass(frozen=True, slots=True)
class Move:
    """One step of a path: equations (by index) and the unknowns they give (by index)."""

    equations: tuple[int, ...]
    unknowns: tuple[int, ...]


@dataclass(frozen=True)
class Field:
    """What the search runs over.

    holds: for each equation the set of unknowns (as bits) its value changes with.
    removed: for each equation how much its pivot or axis keeps out: two for an unknown force at
    the pivot, one for another that does not enter.
    """

    equations: Sequence[Equation]
    unknowns: Sequence[str]
    holds: Sequence[int]
    removed: Sequence[int]

    @cached_property
    def solvable(self) -> dict[tuple[int, int], bool]:
        """Whether an equation can be solved for an unknown; filled as asked."""
        return {}

    def can_solve(self, equation: int, unknown: int) -> bool:
        key = (equation, unknown)
        if key not in self.solvable:
            found = solved_for(self.equations[equation].expression, self.unknowns[unknown])
            self.solvable[key] = found is not None
        return self.solvable[key]


def dependence(
    equations: Sequence[Equation], unknowns: Sequence[str], known: Mapping[str, Value]
) -> tuple[int, ...]:
    """For each equation the unknowns (as bits) its value changes with, at the probe's draws."""
    trial: dict[str, Value] = dict(known)
    for place, unknown in enumerate(unknowns):
        trial[unknown] = 0.7318 + 0.2113 * place
    places = {name: place for place, name in enumerate(unknowns)}
    return tuple(_held(equation, places, trial) for equation in equations)


def _held(equation: Equation, places: Mapping[str, int], trial: Mapping[str, Value]) -> int:
    """Only the terms that hold an unknown are valued again with it changed."""
    written = [(term.sign, term.expression(equation.method)) for term in equation.terms]
    values = [sign * np.asarray(evaluate(part, trial)) for sign, part in written]
    size = max((float(np.max(np.abs(value))) for value in values), default=0.0) or 1.0
    held = 0
    for name in {name for _, part in written for name in names_in(part)} & places.keys():
        moved = {**trial, name: np.multiply(trial[name], 1.7)}
        change = sum(
            sign * np.asarray(evaluate(part, moved)) - value
            for (sign, part), value in zip(written, values, strict=True)
            if name in names_in(part)
        )
        if float(np.max(np.abs(change))) > 1e-9 * size:
            held |= 1 << places[name]
    return held


def shortest(field: Field, wanted: int) -> list[Move] | None:
    """The cheapest moves after which all wanted unknowns (bits) are known; None for no way."""
    order = count()
    queue: list[tuple[float, int, int, tuple[Move, ...]]] = [(0.0, next(order), 0, ())]
    seen: set[int] = set()
    while queue:
        cost, _, known, path = heapq.heappop(queue)
        if wanted & ~known == 0:
            return list(path)
        if known in seen:
            continue
        seen.add(known)
        for move, price in _moves(field, known):
            found = known
            for unknown in move.unknowns:
                found |= 1 << unknown
            if found not in seen:
                heapq.heappush(queue, (cost + price, next(order), found, (*path, move)))
    return None


def _moves(field: Field, known: int) -> Iterator[tuple[Move, float]]:
    depth = known.bit_count()
    two: dict[int, list[int]] = {}
    for index, held in enumerate(field.holds):
        new = held & ~known
        if new.bit_count() == 1:
            unknown = new.bit_length() - 1
            if field.can_solve(index, unknown):
                yield Move((index,), (unknown,)), _price(field, index, depth)
        elif new.bit_count() == 2:
            two.setdefault(new, []).append(index)
    for new, indices in two.items():
        yield from _pairs(field, new, indices, depth)


def _pairs(
    field: Field, new: int, indices: Sequence[int], depth: int
) -> Iterator[tuple[Move, float]]:
    """The cheapest two equations that hold the same two unknowns and settle them."""
    second = new.bit_length() - 1
    first = (new & ~(1 << second)).bit_length() - 1
    names = (field.unknowns[first], field.unknowns[second])
    ranked = sorted(indices, key=lambda index: _price(field, index, depth))
    for one, two in combinations(ranked[:6], 2):
        left, right = field.equations[one].expression, field.equations[two].expression
        if both_solved(left, right, names) and _independent(field, one, two):
            price = _price(field, one, depth) + _price(field, two, depth) + _TOGETHER
            yield Move((one, two), (first, second)), price
            return


def _independent(field: Field, one: int, two: int) -> bool:
    """Not the same balance written twice (about two points on one line, say)."""
    left, right = field.equations[one], field.equations[two]
    return (left.kind, left.bodies, left.about) != (right.kind, right.bodies, right.about)


def _price(field: Field, index: int, depth: int) -> float:
    """Fewer steps first; then shorter equations, pivots that remove much, torques early."""
    equation = field.equations[index]
    price = 10.0 + _COST[equation.kind] + 0.01 * len(equation.terms)
    price += 0.2 * max(len(equation.bodies) - 1, 0)
    if equation.kind == "torque":
        price += 0.3 * depth - 0.05 * field.removed[index]
    if equation.axis is not None and equation.axis not in (X, Y):
        price += 0.15
    if equation.kind == "force":
        price += 0.1 * sum(term.ratio != UNITY for term in equation.terms)
    return price
