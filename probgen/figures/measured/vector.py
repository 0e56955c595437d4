"""Solved forces as they are drawn: how large, which way, with an arrow how long."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import bearing, heading
from probgen.quantities.expression import Name
from probgen.statics.system import Body, Element, Force, System

_SHORTEST: Final = 18.0  # arrow of a force next to nothing, pt
_LONGEST: Final = 58.0  # arrow of the largest force, pt
_UNSOLVED: Final = 0.3  # what a force without a value is drawn as, of the largest
_UNKNOWN_PART: Final = "unsolved"


@dataclass(frozen=True, slots=True)
class Vector:
    """A solved force as it is to be drawn.

    size: newtons, never negative; direction: true direction, degrees; part: as `Force.part`, or
    "unsolved" when it has no value, so that components make no resultant.
    """

    id: str
    symbol: str
    at: complex
    size: float
    direction: float
    element: str
    part: str = ""


def vectors(measured: Survey, body: Body) -> tuple[Vector, ...]:
    """The forces on a body with their true directions; components stay apart.

    A force the working never needed has no value: it is taken as a middling one that acts the way
    it is assumed to.
    """
    forces = [force for force in measured.system.forces if force.body == body.id]
    sizes = {f.id: measured.number(f.magnitude) for f in forces if measured.has(f.magnitude)}
    largest = max(map(abs, sizes.values()), default=1.0)
    found = []
    for force in forces:
        size = sizes.get(force.id, _UNSOLVED * largest)
        direction = measured.number(force.direction) + (180.0 if size < 0 else 0.0)
        found.append(
            Vector(
                force.id,
                _symbol(measured.system, force),
                measured.places[force.point],
                abs(size),
                direction % 360.0,
                force.element,
                force.part if force.id in sizes else _UNKNOWN_PART,
            )
        )
    return tuple(vector for vector in found if vector.size > 1e-9 * largest)


def _symbol(system: System, force: Force) -> str:
    if isinstance(force.magnitude, Name):
        return force.magnitude.symbol
    element = next((e for e in system.elements if force.id in e.forces), None)
    return element.symbol if element and element.symbol else force.id


def resultant(element: Element, legs: Sequence[Vector]) -> Vector:
    """The whole of a hinge's force from its components."""
    step = sum((leg.size * heading(leg.direction) for leg in legs), 0j)
    return Vector(element.id, element.symbol, legs[0].at, abs(step), bearing(step), element.id)


def arrow_length(size: float, largest: float) -> float:
    """The length (pt) a force of some size is drawn with: it rises with the size's square root."""
    return _SHORTEST + (_LONGEST - _SHORTEST) * math.sqrt(size / largest)


def pair_marks(system: System) -> dict[str, int]:
    """How many strokes mark each force that acts between two bodies, by the force's id.

    Action and reaction have the same number; the components of one force count together.
    """
    marks: dict[str, int] = {}
    counts: dict[tuple[str, str], int] = {}
    for force in system.forces:
        if force.pair and force.id not in marks:
            whole = (force.element, "" if force.part in ("x", "y") else force.id)
            number = counts.setdefault(whole, len(counts) + 1)
            marks[force.id] = marks[force.pair] = number
    return marks
