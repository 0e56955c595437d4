"""The pulls of a rope: which face each other, and where it turns over a pulley at a point."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import Spot, apart, bearing, dot, heading
from probgen.statics.system import Element, Kind, System

WHEEL: Final = 9.0
"""Radius of a pulley, pt."""

_TURNED: Final = 0.2  # least size of the sum of two ways (unit steps) that turn a rope
_SQUARE: Final = 0.05
_STRAIGHT: Final = 0.5  # degrees


def facing(
    measured: Survey, element: Element, ends: Mapping[str, complex], shortest: float = 0.0
) -> Element | None:
    """The pull of the same rope that faces a rope's pull, the nearest of them.

    ends: where points are, on paper or to scale; shortest: how far apart two pulls are at least.
    """
    way = measured.direction_of(element)
    if way is None or element.kind is not Kind.ROPE:
        return None
    here, found = ends[element.at], []
    for each in pulls_of(measured, element):
        back, step = measured.direction_of(each), ends[each.at] - here
        if back is None or abs(step) <= shortest:
            continue
        if apart(bearing(step), way) < _STRAIGHT and apart(back, way + 180.0) < _STRAIGHT:
            found.append((abs(step), each))
    return min(found, key=lambda pair: pair[0])[1] if found else None


def pulls_of(measured: Survey, element: Element) -> list[Element]:
    """What a rope pulls at, itself among them."""
    system = measured.system
    pull = system.force(element.forces[0]).magnitude
    return [
        each
        for each in system.elements
        if each.kind is Kind.ROPE and system.force(each.forces[0]).magnitude == pull
    ]


def is_jointed(system: System, point: str) -> bool:
    """Whether a point is one of a body with extent: a pin there has its place by that."""
    return any(point in body.outline for body in system.bodies if len(body.outline) > 1)


def turned(measured: Survey) -> dict[str, complex]:
    """By the pulls that a rope leaves a point with two ways, the step from the point to where each
    leaves the pulley there (pt): at its far side.
    """
    groups: dict[tuple[str, str], list[Element]] = {}
    for element in measured.system.elements:
        if element.kind is Kind.ROPE and element.forces:
            groups.setdefault((element.body, element.at), []).append(element)
    found: dict[str, complex] = {}
    for pulls in groups.values():
        ways = [measured.direction_of(pull) for pull in pulls]
        known = [heading(way) for way in ways if way is not None]
        whole = sum(known, 0j)
        if len(known) != 2 or len(pulls) != 2 or abs(whole) < _TURNED:
            continue
        for side, pull, unit in zip((1, -1), pulls, known, strict=True):
            leaves = unit * 1j
            across = dot(leaves, whole)
            if abs(across) < _SQUARE:
                leaves *= side  # both parts run the same way, one on either side
            elif across > 0:
                leaves = -leaves  # the rope lies on the wheel's far side
            found[pull.id] = leaves * WHEEL
    return found


def touching(centre: Spot, beside: complex, end: Spot) -> Spot:
    """Where a rope from the wheel's side leaves it straight to a spot.

    beside: the step from its middle to that side (pt).
    """
    way = end - centre
    if abs(way) <= abs(beside):
        return centre + beside
    lean = abs(beside) / abs(way)
    turns = (complex(lean, sign * (1.0 - lean * lean) ** 0.5) for sign in (1, -1))
    steps = (way / abs(way) * turn * abs(beside) for turn in turns)
    return centre + max(steps, key=lambda step: dot(step, beside))
