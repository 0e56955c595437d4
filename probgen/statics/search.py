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
from typing import Final

import numpy as np

from probgen.quantities.expression import UNITY, Expression, Value, evaluate, names_in
from probgen.statics.elimination import eliminated
from probgen.statics.equation import Equation, X, Y
from probgen.statics.preference import lateness
from probgen.statics.refusal import Refusal
from probgen.statics.solve_for import Range, solved_for

MOST_TOGETHER: Final = 6
TOGETHER: Final = 30.0  # dearer than the single steps that may take their place
MOST_STATES: Final = 400
"""Sets of known quantities that a search looks at; the supplied templates need 21 at most.

Each independent body doubles their number: a bound in states, and not in seconds, is the same on
every machine."""
COST: Final = {"force": 0.8, "torque": 1.0, "condition": 0.4}


_TOO_MANY: Final = (
    "there are too many orders of steps to try: split the problem into smaller ones, or join "
    "bodies that need not be told apart"
)


@dataclass(frozen=True, slots=True)
class Move:
    """One step of a path: equations (by index) and the unknowns they give (by index)."""

    equations: tuple[int, ...]
    unknowns: tuple[int, ...]


@dataclass(frozen=True)
class Field:
    """What the search runs over.

    holds: for each equation the set of unknowns (as bits) its value changes with.
    ranges: where each unknown may lie.
    trial: values of everything, the unknowns' invented, to test whether equations are independent.
    removed: for each equation how much its pivot or axis keeps out: two for an unknown force at
    the pivot, one for another that does not enter.
    balanced: values of everything at which all equations hold, where they are known.
    surcharges: for each equation what the course's rules add to its price; empty for none.
    """

    equations: Sequence[Equation]
    unknowns: Sequence[str]
    holds: Sequence[int]
    removed: Sequence[int]
    trial: Mapping[str, Value]
    ranges: Mapping[str, Range]
    surcharges: Sequence[float] = ()
    balanced: Mapping[str, Value] | None = None

    @cached_property
    def solvable(self) -> dict[tuple[int, int], bool]:
        """Whether an equation can be solved for an unknown; filled as asked."""
        return {}

    def can_solve(self, equation: int, unknown: int) -> bool:
        key = (equation, unknown)
        if key not in self.solvable:
            name = self.unknowns[unknown]
            expression = self.equations[equation].expression
            root = solved_for(expression, name, self.ranges[name])
            settled = self._settled(equation, unknown)
            self.solvable[key] = settled and root is not None
        return self.solvable[key]

    def _settled(self, equation: int, unknown: int) -> bool:
        """Whether an equation changes with an unknown where the forces balance, too.

        A balance along an axis that turns with an unknown angle does not, once its forces are
        found by others: it is 0/0 then.
        """
        if self.balanced is None:
            return True
        name, held = self.unknowns[unknown], self.equations[equation]
        parts = [term.expression(held.method) for term in held.terms]
        slopes = [
            term.sign * self._slope_of(part, name)
            for term, part in zip(held.terms, parts, strict=True)
            if name in names_in(part)
        ]
        return abs(sum(slopes)) >= 1e-6 * sum(map(abs, slopes))

    @cached_property
    def _eliminable(self) -> dict[tuple[tuple[int, ...], int], bool]:
        """Whether equations can be solved together for unknowns (bits); filled as asked."""
        return {}

    def can_eliminate(self, chosen: tuple[int, ...], new: int) -> bool:
        """Whether equations that settle the unknowns in `new` can be solved for them by hand."""
        key = (chosen, new)
        if key not in self._eliminable:
            names = [name for place, name in enumerate(self.unknowns) if new >> place & 1]
            expressions = [self.equations[index].expression for index in chosen]
            settled = self.independent(chosen, new)
            self._eliminable[key] = settled and bool(eliminated(expressions, names, self.ranges))
        return self._eliminable[key]

    def independent(self, chosen: Sequence[int], new: int) -> bool:
        """Whether equations settle the unknowns: their slopes have full rank.

        Two torque balances about points on one line of action, say, are the same equation twice.
        So are balances along other axes that turn with an unknown angle, but only where the
        forces balance.
        """
        places = [place for place in range(new.bit_length()) if new >> place & 1]
        slopes = np.array([[self._slope(index, place) for place in places] for index in chosen])
        size = np.max(np.abs(slopes), axis=1, keepdims=True)
        if not np.all(size > 0.0):
            return False
        return bool(np.linalg.matrix_rank(slopes / size, tol=1e-6) == len(places))

    @cached_property
    def _first(self) -> dict[str, float]:
        """The balanced values of the first draw, or the trial values."""
        values = self.balanced or self.trial
        return {name: float(np.asarray(value).flat[0]) for name, value in values.items()}

    @cached_property
    def _slopes(self) -> dict[tuple[int, int], float]:
        """Derivatives of equations by unknowns; filled as asked."""
        return {}

    def _slope(self, index: int, place: int) -> float:
        key = (index, place)
        if key not in self._slopes:
            expression = self.equations[index].expression
            self._slopes[key] = self._slope_of(expression, self.unknowns[place])
        return self._slopes[key]

    def _slope_of(self, expression: Expression, name: str) -> float:
        middle = self._first[name]
        step = 1e-4 * max(abs(middle), 1e-2)
        above, below = (
            float(evaluate(expression, {**self._first, name: middle + way}))
            for way in (step, -step)
        )
        return (above - below) / (2.0 * step)


def trial_values(unknowns: Sequence[str], known: Mapping[str, Value]) -> dict[str, Value]:
    """The probe's values with invented ones for the unknowns."""
    invented = {name: 0.7318 + 0.2113 * place for place, name in enumerate(unknowns)}
    return {**known, **invented}


def dependence(
    equations: Sequence[Equation], unknowns: Sequence[str], known: Mapping[str, Value]
) -> tuple[int, ...]:
    """For each equation the unknowns (as bits) its value changes with, at the probe's draws."""
    trial = trial_values(unknowns, known)
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
    """The cheapest moves after which all wanted unknowns (bits) are known; None for no way.

    Raises Refusal where there are more ways than `MOST_STATES` sets of known quantities.
    More equations at once are tried only where fewer lead nowhere.
    """
    for most in range(1, MOST_TOGETHER + 1):
        found = _shortest(field, wanted, most)
        if found is not None:
            return found
    return None


def _shortest(field: Field, wanted: int, most: int) -> list[Move] | None:
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
        if len(seen) > MOST_STATES:
            raise Refusal(_TOO_MANY)
        for move, price in moves_from(field, known, most):
            found = known
            for unknown in move.unknowns:
                found |= 1 << unknown
            if found not in seen:
                heapq.heappush(queue, (cost + price, next(order), found, (*path, move)))
    return None


def moves_from(field: Field, known: int, most: int) -> Iterator[tuple[Move, float]]:
    """What can be found next and its price, by one equation or by `most` together."""
    depth = known.bit_count()
    together: dict[int, list[int]] = {}
    for index, held in enumerate(field.holds):
        new = held & ~known
        if new.bit_count() == 1:
            unknown = new.bit_length() - 1
            if field.can_solve(index, unknown):
                yield Move((index,), (unknown,)), _price(field, index, depth)
        elif 2 <= new.bit_count() <= most:
            together.setdefault(new, []).append(index)
    for new, size in _unions(together, most):
        inside = [i for held, indices in together.items() if held & ~new == 0 for i in indices]
        yield from _at_once(field, new, inside, size, depth)


def _unions(together: Mapping[int, list[int]], most: int) -> Iterator[tuple[int, int]]:
    """Sets of unknowns that some equations hold together, with their size."""
    sets = set(together)
    for _ in range(most - 2):
        sets |= {one | two for one, two in combinations(sets, 2)}
        sets = {new for new in sets if new.bit_count() <= most}
    for new in sorted(sets):
        if new.bit_count() <= most:
            yield new, new.bit_count()


def _at_once(
    field: Field, new: int, indices: Sequence[int], size: int, depth: int
) -> Iterator[tuple[Move, float]]:
    """The cheapest equations that together settle the unknowns in `new`."""
    places = tuple(place for place in range(new.bit_length()) if new >> place & 1)
    ranked = sorted(indices, key=lambda index: _price(field, index, depth))
    for chosen in combinations(ranked[:8], size):
        held = 0
        for index in chosen:
            held |= field.holds[index]
        if new & ~held == 0 and field.can_eliminate(chosen, new):
            price = sum(_price(field, index, depth) for index in chosen)
            yield Move(chosen, places), price + TOGETHER * (size - 1)
            return


def _price(field: Field, index: int, depth: int) -> float:
    """Fewer steps first; then shorter equations, pivots that remove much, torques early."""
    equation = field.equations[index]
    price = 10.0 + COST[equation.kind] + 0.01 * len(equation.terms)
    price += 0.2 * max(len(equation.bodies) - 1, 0)
    price += lateness(equation) * depth
    if equation.kind == "torque":
        price -= 0.05 * field.removed[index]
    if equation.axis is not None and equation.axis not in (X, Y):
        price += 0.05
    if equation.kind == "force":
        price += 0.15 * sum(term.ratio != UNITY for term in equation.terms)
    return price + (field.surcharges[index] if field.surcharges else 0.0)
