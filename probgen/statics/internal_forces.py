"""Axial force, shear force and bending moment along a straight body, once everything is known.

x runs along the body's axis from its first point, metres.  At a section the part before it is kept:
the axial force N pulls at it along the axis (tension), the shear force V acts on it 90 degrees
clockwise from the axis (down, where x runs to the right), the bending moment M counter-clockwise,
so that a positive one makes a level beam sag.  Newtons and newton metres.

Between two loads each of the three is a polynomial in x.  With a load per length q square to the
axis, counter-clockwise positive, and p along it: N' = -p, V' = q, M' = V.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise, zip_longest
from typing import Final

import numpy as np
from numpy.polynomial import polynomial

from probgen.quantities.expression import Expression, Value, evaluate, names_in
from probgen.statics.intensity import curve_of
from probgen.statics.numeric_equations import coordinates
from probgen.statics.system import Force, Kind, Spread, System

_NEAR: Final = 1e-9
"""Of the body's length: no distance; of a curve's largest value: none."""

Curve = tuple[float, ...]
"""A polynomial in x by its coefficients, the constant first."""


class Inside(StrEnum):
    """What acts inside a body."""

    AXIAL = "axial"
    SHEAR = "shear"
    MOMENT = "moment"


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of the axis with no load at a point between its ends (m)."""

    start: float
    end: float
    axial: Curve
    shear: Curve
    moment: Curve

    def curve(self, of: Inside) -> Curve:
        return {Inside.AXIAL: self.axial, Inside.SHEAR: self.shear, Inside.MOMENT: self.moment}[of]

    def value(self, of: Inside, x: float) -> float:
        """The value (N, N m) at a place of the stretch (m)."""
        return float(polynomial.polyval(x, self.curve(of)))


@dataclass(frozen=True, slots=True)
class Place:
    """A value (N, N m) at a place on the axis (m)."""

    x: float
    value: float


@dataclass(frozen=True, slots=True)
class Load:
    """What acts on the axis from start to end (m), taken apart along it and square to it.

    At a point, where start is end: newtons, and a couple (N m).  Spread: newtons per metre, curves.
    """

    start: float
    end: float
    along: Curve
    square: Curve
    couple: float = 0.0

    @property
    def spread(self) -> bool:
        return self.end > self.start

    @property
    def even(self) -> bool:
        """Whether as much of it acts on every metre of it."""
        start, *slopes = self.square
        changes = sum(abs(each) * self.end**power for power, each in enumerate(slopes, start=1))
        return self.spread and changes <= _NEAR * abs(start)

    def resultant(self, start: float) -> tuple[float, float, float]:
        """Along, square, and the torque about x = 0, of what of it is beyond a place (m)."""
        if not self.spread:
            return self.along[0], self.square[0], self.square[0] * self.start + self.couple
        turning = polynomial.polymul(self.square, (0.0, 1.0))
        along, square, torque = (
            _integral(each, start, self.end) for each in (self.along, self.square, turning)
        )
        return along, square, torque


@dataclass(frozen=True, slots=True)
class InternalForces:
    """What acts inside a body, piece by piece from its first point to its last.

    loads: what acts on it from outside, in no order.
    residual: what is left of the three beyond the last point, of the largest load.
    """

    body: str
    length: float
    pieces: tuple[Piece, ...]
    loads: tuple[Load, ...]
    residual: float = 0.0

    def at(self, x: float, of: Inside, *, before: bool = False) -> float:
        """The value just after a place, or just before it."""
        near = _NEAR * self.length
        if before:
            piece = next(p for p in self.pieces if x <= p.end + near)
        else:
            piece = next((p for p in self.pieces if x < p.end - near), self.pieces[-1])
        return piece.value(of, x)

    @property
    def load(self) -> float:
        """The largest load on the body, a reaction too, along its axis or square to it (N).

        Of those that could be found: what is left open is NaN.
        """
        pulls = (abs(part) for load in self.loads for part in load.resultant(load.start)[:2])
        return max((pull for pull in pulls if not math.isnan(pull)), default=0.0)

    @property
    def turn(self) -> float:
        """The largest torque that its loads may have: of the largest at its length, or a couple."""
        return max([self.load * self.length, *(abs(load.couple) for load in self.loads)])

    def size(self, of: Inside) -> float:
        """The largest value either way."""
        return max(abs(place.value) for place in self.turning_points(of))

    def turning_points(self, of: Inside) -> tuple[Place, ...]:
        """Both sides of every jump, both ends, and wherever it is level, in the order of x."""
        found: list[Place] = []
        for piece in self.pieces:
            level = [x for x in _zeros(_slope(piece.curve(of))) if piece.start < x < piece.end]
            for x in (piece.start, *level, piece.end):
                place = Place(x, piece.value(of, x))
                if not found or found[-1] != place:
                    found.append(place)
        return tuple(found)

    def largest(self, of: Inside) -> Place:
        """The first of the places where it is farthest from zero, up or down."""
        places = self.turning_points(of)
        most = max(abs(place.value) for place in places)
        return next(p for p in places if abs(p.value) >= most * (1.0 - _NEAR))


def bodies_cut(system: System) -> tuple[str, ...]:
    """The bodies that have a diagram, or whose largest moment is asked."""
    return tuple(dict.fromkeys((*system.diagrams, *(each.body for each in system.largest))))


def internal_forces(system: System, values: Mapping[str, Value], body: str) -> InternalForces:
    """Those of a straight body, from its first point to its last.

    values: of everything in the system, coherent, one draw.
    Raises ValueError where the body is bent or a load is spread across its axis.
    """
    axis = _Axis.of(system, values, body)
    loads = (*_at_points(system, values, axis), *_spread(system, values, axis))
    here = _Section()
    pieces: list[Piece] = []
    for start, end in pairwise(_marks(loads, axis)):
        here = here.past([load for load in loads if not load.spread and load.start == start])
        spread = [load for load in loads if load.spread and load.start <= start < load.end]
        pieces.append(here.piece(start, end, spread))
        here = _Section(*(pieces[-1].value(of, end) for of in Inside))
    last = [load for load in loads if not load.spread and load.start == axis.length]
    found = InternalForces(body, axis.length, tuple(pieces), loads)
    return replace(found, residual=_left(found, here.past(last).values))


def unbalanced(found: InternalForces, x: float) -> float:
    """What is left of the balances of the part beyond a section, of the largest load on the body.

    Every load counts with its resultant and its torque: nothing of the pieces' making is used.
    """
    along, square, torque = (-found.at(x, of) for of in Inside)
    square = -square  # on the part beyond acts the opposite of what acts on the part before
    for load in found.loads:
        if load.start > x or load.spread:
            pull = load.resultant(max(load.start, x))
            along, square, torque = along + pull[0], square + pull[1], torque + pull[2]
            torque += pull[1] * -x
    return _left(found, (along, square, torque))


def _left(found: InternalForces, rest: tuple[float, float, float]) -> float:
    """Forces and a torque that are left over, of the largest load there is; none of what is NaN."""
    sizes = (found.load or 1.0, found.load or 1.0, found.turn or 1.0)
    left = [abs(value) / size for value, size in zip(rest, sizes, strict=True)]
    return max((part for part in left if not math.isnan(part)), default=math.nan)


@dataclass(frozen=True, slots=True)
class _Section:
    """The three at one section."""

    axial: float = 0.0
    shear: float = 0.0
    moment: float = 0.0

    @property
    def values(self) -> tuple[float, float, float]:
        return self.axial, self.shear, self.moment

    def past(self, loads: Sequence[Load]) -> _Section:
        """Just beyond loads that act at its place."""
        return _Section(
            self.axial - sum(load.along[0] for load in loads),
            self.shear + sum(load.square[0] for load in loads),
            self.moment - sum(load.couple for load in loads),
        )

    def piece(self, start: float, end: float, spread: Sequence[Load]) -> Piece:
        """From here on, under loads that are spread all along."""
        along = _total(tuple(-part for part in load.along) for load in spread)
        axial = _grown(along, start, self.axial)
        shear = _grown(_total(load.square for load in spread), start, self.shear)
        return Piece(start, end, axial, shear, _grown(shear, start, self.moment))


@dataclass(frozen=True, slots=True)
class _Axis:
    """Where a straight body lies: its first point as x + i y (m), its direction, its length (m)."""

    body: str
    origin: complex
    way: complex
    length: float
    points: Mapping[str, complex]

    @classmethod
    def of(cls, system: System, values: Mapping[str, Value], body: str) -> _Axis:
        places = {
            id: complex(float(np.asarray(x).flat[0]), float(np.asarray(y).flat[0]))
            for id, (x, y) in coordinates(system, values).items()
        }
        outline = [places[id] for id in system.body(body).outline]
        length = abs(outline[-1] - outline[0])
        if not length:
            raise ValueError(f"{body} has no length to be cut along")
        axis = cls(body, outline[0], (outline[-1] - outline[0]) / length, length, places)
        if any(abs(axis.seen(place).imag) > _NEAR * length for place in outline):
            raise ValueError(f"{body} is not straight")
        return axis

    def seen(self, place: complex) -> complex:
        """How far along the axis a place is, and how far on its left (m)."""
        return (place - self.origin) * self.way.conjugate()

    def mark(self, x: float) -> float:
        """A place on the axis, at an end where only rounding keeps it off."""
        near = _NEAR * self.length
        return 0.0 if abs(x) < near else self.length if abs(x - self.length) < near else x

    def pull(self, size: float, degrees: float) -> complex:
        """A force along the axis and square to it."""
        return size * complex(np.exp(1j * np.radians(degrees))) * self.way.conjugate()


def _at_points(system: System, values: Mapping[str, Value], axis: _Axis) -> Iterator[Load]:
    for force in system.forces:
        if force.body == axis.body and force.kind is not Kind.DISTRIBUTED:
            at = axis.seen(axis.points[force.point])
            way, size = axis.pull(1.0, _number(force.direction, values)), _size(force, values)
            along, square = (
                size * part if abs(part) > _NEAR else 0.0 for part in (way.real, way.imag)
            )
            x = axis.mark(at.real)  # a force beside the axis turns it as well
            yield Load(x, x, (along,), (square,), -at.imag * along if at.imag else 0.0)
    for couple in system.couples:
        if couple.body == axis.body:
            x = axis.mark(axis.seen(axis.points[couple.point]).real)
            yield Load(x, x, (0.0,), (0.0,), _number(couple.moment, values))


def _size(force: Force, values: Mapping[str, Value]) -> float:
    """NaN for one that nobody can find: what depends on it then is NaN too, and no more."""
    known = names_in(force.magnitude) <= values.keys()
    return _number(force.magnitude, values) if known else math.nan


def _spread(system: System, values: Mapping[str, Value], axis: _Axis) -> Iterator[Load]:
    for element in system.elements:
        if element.body != axis.body or element.spread is None:
            continue
        lies = element.spread
        length = _number(lies.line.length, values)
        way = complex(np.exp(1j * np.radians(_number(lies.line.direction, values))))
        start = axis.points[lies.start]
        ends = [axis.seen(start), axis.seen(start + length * way)]
        if any(abs(end.imag) > _NEAR * axis.length for end in ends):
            raise ValueError(f"{element.id} is not spread along {axis.body}")
        one, other = (axis.mark(end.real) for end in ends)
        load = _load_along(lies, values, one, other)
        one, other = min(one, other), max(one, other)
        pull = axis.pull(1.0, _number(system.force(element.id).direction, values))
        along, square = (tuple(part * each for each in load) for part in (pull.real, pull.imag))
        yield Load(one, other, along, square)


def _load_along(lies: Spread, values: Mapping[str, Value], start: float, end: float) -> Curve:
    """The size of a spread load as a curve along the axis, from where it starts to its end."""
    if lies.intensity is None:
        first, last = (_number(size, values) for size in (lies.first, lies.last))
        slope = (last - first) / (end - start)
        return first - slope * start, slope
    low, high = (_number(each, values) for each in (lies.intensity.low, lies.intensity.high))
    way = (high - low) / (end - start)  # along the load for 1 m along the axis: 1 or -1
    found: Curve = (0.0,)
    for factor in reversed(curve_of(lies.intensity).coefficients):
        size = _number(factor, values)
        found = _total((_multiplied(found, (low - way * start, way)), (size,)))
    return found


def _marks(loads: Sequence[Load], axis: _Axis) -> list[float]:
    """Where pieces begin and end."""
    return sorted({0.0, axis.length, *(x for load in loads for x in (load.start, load.end))})


# Curves.


def _total(curves: Iterable[Curve]) -> Curve:
    return tuple(map(sum, zip_longest(*curves, fillvalue=0.0))) or (0.0,)


def _multiplied(curve: Curve, by: Curve) -> Curve:
    return tuple(map(float, polynomial.polymul(curve, by)))


def _slope(curve: Curve) -> Curve:
    return tuple(map(float, polynomial.polyder(curve)))


def _grown(slope: Curve, start: float, value: float) -> Curve:
    """The curve of a slope that has a value at its start."""
    rising = polynomial.polyint(slope)
    return tuple(
        map(float, polynomial.polyadd(rising, [value - polynomial.polyval(start, rising)]))
    )


def _integral(curve: Iterable[float], start: float, end: float) -> float:
    if end <= start:
        return 0.0
    rising = polynomial.polyint(tuple(curve))
    return float(polynomial.polyval(end, rising) - polynomial.polyval(start, rising))


def _zeros(curve: Curve) -> list[float]:
    """Where a curve is zero, ascending; none of one that is zero all along."""
    largest = max(map(abs, curve))
    kept = polynomial.polytrim(curve, _NEAR * largest) if largest else np.zeros(1)
    roots = polynomial.polyroots(kept) if len(kept) > 1 else np.zeros(0)
    return sorted(float(root.real) for root in roots if abs(root.imag) < _NEAR)


def _number(size: Expression, values: Mapping[str, Value]) -> float:
    return float(np.asarray(evaluate(size, values)).flat[0])
