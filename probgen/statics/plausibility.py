"""What no balance minds and nobody would believe: a proof passes it, a template's check does not.

Weights below zero, loads that change their sign, forces that act beyond the end of their body,
holes beyond their plate, sections beside the member they cut, and directions so close to an axis
that a marker could not tell which side is meant.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Expression, Value, evaluate
from probgen.statics.flaw import Flaw, FlawKind
from probgen.statics.numeric_equations import size_at
from probgen.statics.plan import Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.shape import Outline, Shape
from probgen.statics.system import Body, Element, Form, Kind, System

NEAR_AXIS: Final = 0.05
"""A component below this part of its force lies within 2.9 degrees of an axis."""
_NEAR: Final = 1e-6  # of a body's size: no distance; of a load's largest value: none
_PLACES: Final = 65  # along a load
_ROUND: Final = 24  # steps along the rim of a round hole
_UPRIGHT: Final = 0.1  # width of an upright axis for its height, at most
_NONE: Final = 1e-9  # of a force: no component, so that its direction is along the axis
_BY_LINE: Final = (Kind.CABLE, Kind.ROPE, Kind.STRUT, Kind.SPRING)
"""What may be told by a lever arm, so that only its line of action has to meet the body."""
_ANYWHERE: Final = (Kind.MUSCLE, Kind.FORCE)
"""What may act beside the axis of its body: an axis is no bone, and a force may have any handle."""

_Mask = NDArray[np.bool_]
_Place = NDArray[np.complex128]


def implausible(plan: Plan, values: Mapping[str, Value]) -> Iterator[tuple[Flaw, _Mask]]:
    """Each thing that is wrong, and with which draws.

    values: of every quantity, coherent, one entry a draw (or a float) each.
    """
    draws = max((np.size(value) for value in values.values()), default=1)
    places = _places(plan.system, values, draws)
    with np.errstate(all="ignore"):
        yield from _light(plan.system, values, draws)
        yield from _turned(plan.system, values, draws)
        yield from _cut_out(plan.system, values, places)
        for body in plan.system.bodies:
            if not body.particle:
                yield from _beside(plan.system, body, values, places)
        yield from _near_axis(plan, values, draws)


def _light(system: System, values: Mapping[str, Value], draws: int) -> Iterator[tuple[Flaw, _Mask]]:
    """Weights that would lift."""
    for force in system.forces:
        if force.kind is Kind.WEIGHT:
            size = _spread(force.magnitude, values, draws)
            yield from _flaw(size < 0.0, FlawKind.LIFTING_WEIGHT, force.element)


def _turned(
    system: System, values: Mapping[str, Value], draws: int
) -> Iterator[tuple[Flaw, _Mask]]:
    """Loads by a formula that are below zero somewhere along their length."""
    for element in system.uncut.elements:
        if element.spread is not None and element.spread.intensity is not None:
            parts = np.linspace(0.0, 1.0, _PLACES)
            sizes = np.stack(
                [np.broadcast_to(size_at(element.spread, values, part), draws) for part in parts]
            )
            below = sizes.min(axis=0) < -_NEAR * np.abs(sizes).max(axis=0)
            yield from _flaw(below, FlawKind.TURNED_LOAD, element.id)


def _cut_out(
    system: System, values: Mapping[str, Value], places: Mapping[str, _Place]
) -> Iterator[tuple[Flaw, _Mask]]:
    """Holes with a part of their rim on none of the flat parts of their body."""
    for element in system.elements:
        if element.kind is not Kind.HOLE or element.shape is None:
            continue
        beyond = [
            ~_on_flat(system, element.body, at, values, places)
            for at in _rim(element.shape, values, places)
        ]
        wrong = np.any(beyond, axis=0)
        yield from _flaw(wrong, FlawKind.HOLE_BEYOND, element.id, body=element.body)


def _on_flat(
    system: System,
    body: str,
    at: _Place,
    values: Mapping[str, Value],
    places: Mapping[str, _Place],
) -> _Mask:
    """Whether a place is on one of the flat parts that a body is made of."""
    found = np.zeros(len(at), dtype=bool)
    for each in system.elements:
        part = each.kind is Kind.WEIGHT and each.body == body and each.shape
        if part and not part.outline.is_wire:
            found |= _holds(part, at, values, places)
    return found


def _rim(
    shape: Shape, values: Mapping[str, Value], places: Mapping[str, _Place]
) -> Iterator[_Place]:
    """Places all around a shape: its corners, or along its arc."""
    points = _corners(shape, places)
    if not shape.outline.is_round:
        yield from points
        return
    centre, draws = points[0], len(points[0])
    radius = _spread(shape.radius, values, draws)
    first = _spread(shape.facing, values, draws) - 90.0
    turn = 360.0 if shape.outline is Outline.CIRCLE else 180.0
    for step in range(_ROUND + 1):
        yield centre + radius * _unit(first + turn * step / _ROUND)


def _holds(
    shape: Shape, at: _Place, values: Mapping[str, Value], places: Mapping[str, _Place]
) -> _Mask:
    """Whether a flat part has a place in it or on its rim."""
    points = _corners(shape, places)
    if not shape.outline.is_round:
        return ~_beyond([*points, points[0]], at)
    radius = _spread(shape.radius, values, len(at))
    step = (at - points[0]) / _unit(_spread(shape.facing, values, len(at)))
    near = np.abs(step) <= radius * (1.0 + _NEAR)
    return near & ((shape.outline is Outline.CIRCLE) | (step.real >= -_NEAR * radius))


def _corners(shape: Shape, places: Mapping[str, _Place]) -> list[_Place]:
    """The corners of a shape in order, or the centre of a round one."""
    points = [places[name] for name in shape.points]
    if shape.outline is not Outline.RECTANGLE:
        return points
    one, other = points
    return [one, one.real + 1j * other.imag, other, other.real + 1j * one.imag]


def _beside(
    system: System, body: Body, values: Mapping[str, Value], places: Mapping[str, _Place]
) -> Iterator[tuple[Flaw, _Mask]]:
    """What acts on a body at a point beyond it, and sections that are not on its axis."""
    outline = [places[name] for name in body.outline]
    for element in system.elements:
        if element.body != body.id or element.kind in _ANYWHERE or element.shape:
            continue
        if element.kind is Kind.CUT:
            away = _distance(outline, places[element.at]) > _NEAR * _size(outline)
            yield from _flaw(away, FlawKind.OFF_SECTION, element.id, element.at, body.id)
            continue
        away = _ends_beyond(outline, element, values, places)
        if element.spread is None:
            away &= ~_on_flat(system, body.id, places[element.at], values, places)
        for force in system.forces:
            if force.element == element.id and force.kind in _BY_LINE:
                direction = _spread(force.direction, values, len(away))
                away = away & ~_crosses(outline, places[element.at], direction)
        yield from _flaw(away, FlawKind.OFF_BODY, element.id, element.at, body.id)


def _ends_beyond(
    outline: Sequence[_Place],
    element: Element,
    values: Mapping[str, Value],
    places: Mapping[str, _Place],
) -> _Mask:
    """Whether what acts on a body reaches beyond it; a weight may stand on an upright one."""
    if element.spread is None:
        at = places[element.at]
        away = _beyond(outline, at)
        return away & ~_on_top(outline, at) if element.kind is Kind.WEIGHT else away
    line, start = element.spread.line, places[element.spread.start]
    length, turn = (_spread(each, values, len(start)) for each in (line.length, line.direction))
    return _beyond(outline, start) | _beyond(outline, start + length * _unit(turn))


def _near_axis(plan: Plan, values: Mapping[str, Value], draws: int) -> Iterator[tuple[Flaw, _Mask]]:
    """Directions that are asked and hardly off an axis; those exactly along it need no angle."""
    for find in plan.system.finds:
        of = Quantity(find.quantity)
        if find.form is not Form.MAGNITUDE_AND_DIRECTION or of.x not in values:
            continue
        x, y = (np.broadcast_to(np.asarray(values[id], float), draws) for id in (of.x, of.y))
        part = np.minimum(np.abs(x), np.abs(y)) / np.hypot(x, y)
        near = (part > _NONE) & (part < NEAR_AXIS)
        for axis, smaller in (("x", np.abs(x) <= np.abs(y)), ("y", np.abs(y) < np.abs(x))):
            yield from _flaw(near & smaller, FlawKind.NEAR_AXIS, find.quantity, place=axis)


def _flaw(
    wrong: _Mask, kind: FlawKind, quantity: str, place: str = "", body: str = ""
) -> Iterator[tuple[Flaw, _Mask]]:
    if wrong.any():
        yield Flaw(kind, quantity, place=place, body=body), wrong


def _places(system: System, values: Mapping[str, Value], draws: int) -> dict[str, _Place]:
    """Where every point is, metres, x + i y, one entry a draw."""
    found = {}
    for point in system.points.values():
        at: _Place = np.zeros(draws, dtype=np.complex128)
        for link in point.links:
            turn = _spread(link.direction, values, draws)
            at = at + _spread(link.length, values, draws) * _unit(turn)
        found[point.id] = at
    return found


def _spread(size: Expression, values: Mapping[str, Value], draws: int) -> NDArray[np.float64]:
    spread: NDArray[np.float64] = np.broadcast_to(np.asarray(evaluate(size, values), float), draws)
    return spread


def _unit(degrees: NDArray[np.float64]) -> _Place:
    return np.asarray(np.exp(1j * np.radians(degrees)), dtype=np.complex128)


def _size(outline: Sequence[_Place]) -> NDArray[np.float64]:
    return np.asarray(np.max([np.abs(corner - outline[0]) for corner in outline], axis=0))


def _distance(outline: Sequence[_Place], at: _Place) -> NDArray[np.float64]:
    """How far a place is from the nearest point of an axis or outline, metres."""
    gaps = [np.abs(at - _foot(a, b, at)[0]) for a, b in pairwise(outline)]
    return np.asarray(np.min(gaps, axis=0))


def _foot(a: _Place, b: _Place, at: _Place) -> tuple[_Place, NDArray[np.float64]]:
    """The point of the straight piece from a to b nearest to a place, and how far along it the
    place lies: below 0 or above 1 where it lies beyond an end.
    """
    way = np.where(b == a, 1.0, b - a)
    along = np.where(b == a, 0.5, ((at - a) / way).real)
    return a + np.clip(along, 0.0, 1.0) * (b - a), along


def _beyond(outline: Sequence[_Place], at: _Place) -> _Mask:
    """Whether a place lies beyond an end of an open axis, or outside a closed outline."""
    if np.all(outline[0] == outline[-1]):
        near = _distance(outline, at) <= _NEAR * _size(outline)
        return ~near & ~_within(outline, at)
    gaps, past = [], []
    last = len(outline) - 2
    for place, (a, b) in enumerate(pairwise(outline)):
        foot, along = _foot(a, b, at)
        gaps.append(np.abs(at - foot))
        before = (along < -_NEAR) if place == 0 else np.zeros(len(at), dtype=bool)
        after = (along > 1.0 + _NEAR) if place == last else np.zeros(len(at), dtype=bool)
        past.append(before | after)
    nearest = np.argmin(gaps, axis=0)
    return np.asarray(np.choose(nearest, past), dtype=np.bool_)


def _on_top(outline: Sequence[_Place], at: _Place) -> _Mask:
    """Whether a place lies above a body that stands upright."""
    across = np.ptp([corner.real for corner in outline], axis=0)
    top = np.max([corner.imag for corner in outline], axis=0)
    return np.asarray((across <= _UPRIGHT * _size(outline)) & (at.imag >= top))


def _within(outline: Sequence[_Place], at: _Place) -> _Mask:
    """Whether a closed outline runs round a place: the angles to its corners add up to a turn."""
    turned = sum(np.angle((b - at) / (a - at)) for a, b in pairwise(outline))
    return np.asarray(np.abs(turned) > np.pi)


def _crosses(outline: Sequence[_Place], at: _Place, degrees: NDArray[np.float64]) -> _Mask:
    """Whether a line of action meets the body, or runs past it within no distance."""
    sides = np.stack([((corner - at) / _unit(degrees)).imag for corner in outline])
    near = _NEAR * _size(outline)
    return np.asarray((sides.min(axis=0) <= near) & (sides.max(axis=0) >= -near))
