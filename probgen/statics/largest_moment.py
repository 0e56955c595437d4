"""Whether a bending moment said to be the largest in its body is that, of many draws at once.

M at a place is the torque about it of all that acts before it, taken clockwise: nothing of the
curves of `statics.internal_forces` is used.  It may be largest beside each load, and in between
where the shear force, at most a square there, is zero.  Arrays have one entry a draw.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Value, evaluate
from probgen.statics.numeric_equations import coordinates
from probgen.statics.system import Kind, LargestMoment, System

Array = NDArray[np.float64]
_NEAR: Final = 1e-9
"""Of the body's length: no distance; of its largest moment: none."""
_APART: Final = 1e-6
"""Of the body's length: another place."""


@dataclass(frozen=True, slots=True)
class Larger:
    """Where in each draw the moment is as large as at its section, or larger, and elsewhere.

    wrong: in which draws; place: how far that is from the point the section's place is told from,
    metres.
    """

    wrong: NDArray[np.bool_]
    place: Array


def larger_elsewhere(system: System, values: Mapping[str, Value], asked: LargestMoment) -> Larger:
    """The draws in which a moment is not the one largest in its body.

    values: of everything in the system, coherent.
    """
    with np.errstate(all="ignore"):
        along = _Along.of(system.uncut, values, asked.body)
        points = coordinates(system, values)
        section, origin = (along.seen(points[name]) for name in (asked.at, asked.origin))
        found = np.broadcast_to(np.asarray(values[asked.moment], float), along.draws)
        places, moments = along.candidates()
        sizes = np.abs(moments)
        largest = np.fmax.reduce(sizes, axis=0)  # NaN where there is no length, and no warning
        near = np.abs(places - section) <= _APART * along.length
        elsewhere = np.where(near, -np.inf, sizes)
        least = np.abs(found) * (1.0 - _NEAR)
        most = np.abs(found) >= largest * (1.0 - _NEAR)
        alone = elsewhere.max(axis=0) < least
        there = np.where(near, np.abs(moments - found), np.inf).min(axis=0) <= _NEAR * largest
        other = np.where(most, np.argmax(elsewhere, axis=0), np.argmax(sizes, axis=0))
        place = places[other, np.arange(along.draws)]
        return Larger(~(most & alone & there), np.abs(place - origin))


@dataclass(frozen=True, slots=True)
class _Load:
    """What acts at a place of the axis: a force square to it (N) and a couple (N m)."""

    x: Array
    square: Array
    couple: Array


@dataclass(frozen=True, slots=True)
class _Spread:
    """A load from a place of the axis on, over a length (m): first + rise s square to it (N/m)."""

    x: Array
    length: Array
    first: Array
    rise: Array


@dataclass(frozen=True)
class _Along:
    """A straight body with what acts on it, by places along its axis from its first point (m)."""

    start: tuple[Array, Array]
    way: tuple[Array, Array]
    length: Array
    loads: tuple[_Load, ...]
    spread: tuple[_Spread, ...]

    @property
    def draws(self) -> int:
        return len(self.length)

    @classmethod
    def of(cls, system: System, values: Mapping[str, Value], body: str) -> _Along:
        draws = max(np.size(value) for value in values.values())
        points = coordinates(system, values)
        first, last = (points[name] for name in system.body(body).outline)
        across, up = (np.broadcast_to(b - a, draws) for a, b in zip(first, last, strict=True))
        length = np.hypot(across, up)
        bare = cls(first, (across / length, up / length), length, (), ())
        loads = tuple(bare._loads(system, values, body, points))
        return cls(bare.start, bare.way, length, loads, tuple(bare._spread(system, values, body)))

    def seen(self, point: tuple[Array, Array]) -> Array:
        """How far along the axis a point is."""
        (x, y), (a, b), (across, up) = point, self.start, self.way
        return (x - a) * across + (y - b) * up

    def _off(self, point: tuple[Array, Array]) -> Array:
        """How far a point is on the left of the axis."""
        (x, y), (a, b), (across, up) = point, self.start, self.way
        return (y - b) * across - (x - a) * up

    def _parts(self, direction: Value) -> tuple[Array, Array]:
        """Of a force of 1 N in a direction (degrees): along the axis, and square to it."""
        turn, (across, up) = np.radians(direction), self.way
        x, y = np.cos(turn), np.sin(turn)
        return x * across + y * up, y * across - x * up

    def _loads(
        self,
        system: System,
        values: Mapping[str, Value],
        body: str,
        points: Mapping[str, tuple[Array, Array]],
    ) -> Iterator[_Load]:
        nothing = np.zeros(self.draws)
        yield _Load(nothing, nothing, nothing)
        yield _Load(self.length, nothing, nothing)
        for force in system.forces:
            if force.body == body and force.kind is not Kind.DISTRIBUTED:
                size, at = evaluate(force.magnitude, values), points[force.point]
                along, square = self._parts(evaluate(force.direction, values))
                x, beside = self.seen(at) + nothing, -self._off(at) * size * along
                yield _Load(x, size * square + nothing, beside + nothing)
        for couple in system.couples:
            if couple.body == body:
                x = self.seen(points[couple.point]) + nothing
                yield _Load(x, nothing, evaluate(couple.moment, values) + nothing)

    def _spread(self, system: System, values: Mapping[str, Value], body: str) -> Iterator[_Spread]:
        points, nothing = coordinates(system, values), np.zeros(self.draws)
        for element in system.elements:
            if element.body != body or element.spread is None:
                continue
            lies = element.spread
            run, _ = self._parts(evaluate(lies.line.direction, values))
            length = evaluate(lies.line.length, values) + nothing
            _, square = self._parts(evaluate(system.force(element.id).direction, values))
            first, last = (evaluate(size, values) * square for size in (lies.first, lies.last))
            start = self.seen(points[lies.start]) + nothing
            back = run < 0.0
            low, high = np.where(back, last, first), np.where(back, first, last)
            yield _Spread(np.where(back, start - length, start), length, low, (high - low) / length)

    def shear(self, x: Array, side: float) -> Array:
        """The shear force just beyond a place (side 1) or just before it (-1) (N)."""
        edge = x + side * _NEAR * self.length
        total = sum((np.where(load.x <= edge, load.square, 0.0) for load in self.loads), 0.0 * x)
        for each in self.spread:
            covered = np.clip(x - each.x, 0.0, each.length)
            total = total + each.first * covered + each.rise * covered**2 / 2.0
        return total

    def moment(self, x: Array, side: float) -> Array:
        """The bending moment there, on the same side (N m)."""
        edge = x + side * _NEAR * self.length
        total = 0.0 * x
        for load in self.loads:
            total = total + np.where(load.x <= edge, load.square * (x - load.x) - load.couple, 0.0)
        for each in self.spread:
            far, covered = x - each.x, np.clip(x - each.x, 0.0, each.length)
            even = each.first * (far * covered - covered**2 / 2.0)
            total = total + even + each.rise * (far * covered**2 / 2.0 - covered**3 / 3.0)
        return total

    def candidates(self) -> tuple[Array, Array]:
        """Where the moment may be largest, a row each, and its values there."""
        marks = [load.x for load in self.loads]
        marks += [x for each in self.spread for x in (each.x, each.x + each.length)]
        ordered = np.sort(np.clip(np.stack(marks), 0.0, self.length), axis=0)
        found = [(x, self.moment(x, side)) for x in ordered for side in (-1.0, 1.0)]
        for start, end in pairwise(ordered):
            found += [(x, self.moment(x, -1.0)) for x in self._level(start, end)]
        return np.stack([x for x, _ in found]), np.stack([moment for _, moment in found])

    def _level(self, start: Array, end: Array) -> Iterator[Array]:
        """Where between two neighbouring places the shear force is zero; the start where nowhere.

        It is c + b t + a t^2 there, t from 0 to 1, by its values at three places.
        """
        width = end - start
        c, middle = self.shear(start, 1.0), self.shear(start + width / 2.0, 1.0)
        last = self.shear(end, -1.0)
        a = 2.0 * (c + last - 2.0 * middle)
        b = last - c - a
        straight = np.abs(a) <= _NEAR * (np.abs(b) + np.abs(c))
        root = np.sqrt(b**2 - 4.0 * a * c)
        for sign in (1.0, -1.0):
            t = np.where(straight, -c / b, (-b + sign * root) / (2.0 * a))
            yield np.where((t > 0.0) & (t < 1.0), start + t * width, start)
