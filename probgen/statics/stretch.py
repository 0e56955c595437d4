"""Shear force and bending moment along a straight body as expressions, stretch by stretch.

A section at a distance x from the body's first point leaves all that acts before it, or all that
acts beyond it; V and M are written with the forces of one of these sides, each times its distance
from the section, as one writes them by hand.  Signs as in `statics.internal_forces`.

Of a load a + (b - a) s/l per length, s from its start, what lies on the first t of it is
a t + (b - a) t^2/(2 l), with a torque a t^2/2 + (b - a) t^3/(6 l) about the end of t; of a load by
a formula w(s) it is the integral of w, with that integrated once more as its torque.  Seen from its
end, it is all of it less what lies before t.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import Enum
from itertools import pairwise
from typing import Final

from probgen.quantities.expression import (
    ZERO,
    Expression,
    Power,
    evaluate,
    is_number,
    number,
    over,
    substituted,
    times,
    total,
)
from probgen.quantities.like_terms import collected, collected_sum
from probgen.statics.geometry import Angle, angle_of, sine, way
from probgen.statics.intensity import curve_of
from probgen.statics.system import Force, Intensity, System

_NEAR: Final = 1e-9
"""Of the body's length: no distance."""


class Side(Enum):
    """Which part of a body is kept at a section."""

    BEFORE = 1
    BEYOND = -1


@dataclass(frozen=True, slots=True)
class Stretch:
    """From one place with a load at a point, a support or the end of a spread load to the next.

    start, end: distances from the body's first point, metres; low, high: their values.
    shear, moment: newtons and newton metres, of the distance x.
    """

    start: Expression
    end: Expression
    low: float
    high: float
    shear: Expression
    moment: Expression


@dataclass(frozen=True, slots=True)
class _Load:
    """A force square to the axis and a couple, at a place."""

    x: Expression
    value: float
    square: Expression
    couple: Expression


@dataclass(frozen=True, slots=True)
class _Spread:
    """A load that runs along the axis, and what stands for all of it.

    sign: 1 where it acts on the left of the axis.
    formula: by which it runs, else None; begins: the side its start is on.
    """

    whole: _Load
    start: Expression
    end: Expression
    low: float
    high: float
    first: Expression
    last: Expression
    sign: int
    formula: Intensity | None
    begins: Side


def stretches(
    system: System, values: Mapping[str, float], body: str, x: Expression, side: Side
) -> tuple[Stretch, ...]:
    """The stretches of a straight body in the order of x; none where one cannot be written.

    values: of everything in the system, coherent, one draw: they tell the order along the body.
    """
    try:
        axis = _Axis.of(system, values, body)
        loads, spread = tuple(axis.loads()), tuple(axis.spread())
    except _BesideError:
        return ()
    length = axis.value(axis.length)
    ends, near = [(ZERO, 0.0), (axis.length, length)], _NEAR * length
    marks = [*ends, *((load.x, load.value) for load in loads)]
    marks += [mark for each in spread for mark in ((each.start, each.low), (each.end, each.high))]
    places: list[tuple[Expression, float]] = []
    for mark in sorted(marks, key=lambda mark: mark[1]):
        if not -near <= mark[1] <= length + near:  # off the body, or its length is below nothing
            return ()
        if not places or mark[1] - places[-1][1] > near:
            places.append(mark)
    return tuple(
        Stretch(start, end, low, high, *_written(loads, spread, x, (low, high), side))
        for (start, low), (end, high) in pairwise(places)
    )


def _written(
    loads: tuple[_Load, ...],
    spread: tuple[_Spread, ...],
    x: Expression,
    between: tuple[float, float],
    side: Side,
) -> tuple[Expression, Expression]:
    """Shear force and bending moment on one stretch."""
    middle, turned = sum(between) / 2.0, side.value
    kept = [load for load in loads if (middle - load.value) * turned > 0.0]
    divided: list[_Spread] = []
    for each in spread:
        if each.low < middle < each.high:
            divided.append(each)
            if each.formula and each.begins is not side:
                kept.append(each.whole)
        elif (middle - each.low) * turned > 0.0:
            kept.append(each.whole)
    shear = [(turned, load.square) for load in kept]
    moment: list[tuple[int, Expression]] = []
    for load in kept:
        arm = collected_sum((turned, x), (-turned, load.x))
        moment += [(1, times(load.square, arm)), (-turned, load.couple)]
    for each in divided:
        if each.formula:
            covered, turning = _integrated(each, each.formula, x)
            shear.append((each.begins.value * each.sign, covered))
            moment.append((each.sign, turning))
            continue
        shear += [(turned * each.sign, part) for part in _covered(each, x, side)]
        moment += [(each.sign, part) for part in _turning(each, x, side)]
    return collected(total(*shear)), collected(total(*moment))


def _sizes(spread: _Spread, x: Expression, side: Side) -> tuple[Expression, ...]:
    """The length covered, the size at its outer end, the rise along it, and the load's length."""
    length = collected_sum((1, spread.end), (-1, spread.start))
    rise = collected_sum((1, spread.last), (-1, spread.first))
    if side is Side.BEFORE:
        return collected_sum((1, x), (-1, spread.start)), spread.first, rise, length
    return collected_sum((1, spread.end), (-1, x)), spread.last, rise, length


def _covered(spread: _Spread, x: Expression, side: Side) -> Iterator[Expression]:
    """What of a load acts on the side kept."""
    t, size, rise, length = _sizes(spread, x, side)
    yield times(size, t)
    yield total((side.value, over(times(rise, _power(t, 2)), times(number(2), length))))


def _turning(spread: _Spread, x: Expression, side: Side) -> Iterator[Expression]:
    """Its torque about the section."""
    t, size, rise, length = _sizes(spread, x, side)
    yield over(times(size, _power(t, 2)), number(2))
    yield total((side.value, over(times(rise, _power(t, 3)), times(number(6), length))))


def _integrated(
    spread: _Spread, formula: Intensity, x: Expression
) -> tuple[Expression, Expression]:
    """What of a load by a formula acts from its start to the section, and its torque about that."""
    t = collected_sum((1, x), (-1, spread.start))
    if spread.begins is Side.BEYOND:
        t = collected_sum((1, spread.end), (-1, x))
    covered = curve_of(formula).antiderivative()
    turning = covered.antiderivative()
    first, second = (
        substituted(each.expression, lambda part: t if part == formula.along else None)
        for each in (covered, turning)
    )
    return first, second


def _power(base: Expression, exponent: int) -> Expression:
    return ZERO if is_number(base, 0) else Power(base, exponent)


class _BesideError(Exception):
    """Something acts off the axis, or a load runs across it."""


@dataclass(frozen=True, slots=True)
class _Axis:
    """A straight body: its first point, the direction of its axis, and its length."""

    system: System
    values: Mapping[str, float]
    body: str
    first: str
    turn: Angle
    length: Expression

    @classmethod
    def of(cls, system: System, values: Mapping[str, float], body: str) -> _Axis:
        outline = system.body(body).outline
        links = way(system.points, outline[0], outline[-1])
        if len(links) != 1:
            raise _BesideError
        return cls(system, values, body, outline[0], angle_of(links[0].direction), links[0].length)

    def value(self, expression: Expression) -> float:
        return float(evaluate(expression, self.values))

    def seen(self, point: str) -> Expression:
        """How far along the axis a point is."""
        links = way(self.system.points, self.first, point)
        if not links:
            return ZERO
        if len(links) > 1:
            raise _BesideError
        return total((self.sense(links[0].direction), links[0].length))

    def sense(self, direction: Expression) -> int:
        """1 along the axis, -1 against it."""
        return self._quarter(direction, 0)

    def side(self, direction: Expression) -> int:
        """1 square to it on its left, -1 on its right."""
        return self._quarter(direction, 90)

    def _quarter(self, direction: Expression, degrees: int) -> int:
        turn = angle_of(direction).minus(self.turn)
        if turn.multiples or (turn.constant - degrees) % 180:
            raise _BesideError
        return -1 if (turn.constant - degrees) % 360 else 1

    def loads(self) -> Iterator[_Load]:
        """What acts at a point; nothing of what acts along the axis."""
        for force in self.system.forces:
            if force.body != self.body or self.system.element(force.element).spread is not None:
                continue
            loaded = self._load(force)
            if not is_number(loaded.square, 0):
                yield loaded
        for couple in self.system.couples:
            if couple.body == self.body:
                x = self.seen(couple.point)
                yield _Load(x, self.value(x), ZERO, couple.moment)

    def _load(self, force: Force) -> _Load:
        x = self.seen(force.point)
        square = times(force.magnitude, sine(angle_of(force.direction).minus(self.turn)))
        return _Load(x, self.value(x), square, ZERO)

    def spread(self) -> Iterator[_Spread]:
        """What is spread along it."""
        for element in self.system.elements:
            if element.body != self.body or element.spread is None:
                continue
            (force,) = (force for force in self.system.forces if force.id in element.forces)
            lies, start = element.spread, self.seen(element.spread.start)
            sense, sizes = self.sense(lies.line.direction), (lies.first, lies.last)
            ends = (start, collected_sum((1, start), (sense, lies.line.length)))
            if sense < 0:
                ends, sizes = ends[::-1], sizes[::-1]
            low, high = (self.value(end) for end in ends)
            sign = self.side(force.direction)
            begins = Side.BEFORE if sense > 0 else Side.BEYOND
            whole, formula = self._load(force), lies.intensity
            yield _Spread(whole, *ends, low, high, *sizes, sign, formula, begins)
