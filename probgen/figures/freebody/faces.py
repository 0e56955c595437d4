"""Where forces act on a wedge, or on a block that bears on one: each at its face."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from probgen.figures.measured.survey import pushes
from probgen.figures.measured.vector import Vector
from probgen.figures.measured.wedge import Faced
from probgen.figures.paper.scene import dot, heading
from probgen.statics.system import ForcePart, Kind, System

_OFF: Final = 4.0  # how far in front of its face friction is drawn, pt
_AHEAD: Final = 5.0  # how far from the normal force it begins, pt


def on_faces(system: System, forces: Sequence[Vector], shape: Faced) -> tuple[Vector, ...]:
    """The forces with their places (pt) on an outline: a push ends at its face, friction runs
    along before it, a weight acts at the middle, from above where the body is borne from below,
    a push on a wedge at its head.
    """
    return tuple(_placed(system, force, shape) for force in forces)


def _placed(system: System, force: Vector, shape: Faced) -> Vector:
    way, face = heading(force.direction), shape.faces.get(force.element)
    if face and force.part is ForcePart.FRICTION:
        return replace(force, at=face.at + face.out * _OFF + way * _AHEAD)
    if face:
        return replace(force, at=face.at, presses=True)
    if system.force(force.id).kind is Kind.WEIGHT:
        below = any(each.out.imag < -0.5 for each in shape.faces.values())
        rests = below and not shape.tip and not shape.within
        return replace(force, at=shape.clear, presses=rests)
    if pushes(system.element(force.element)):
        return replace(force, at=shape.grip(-way), presses=True)
    return replace(force, at=shape.grip(way), presses=dot(way, shape.tip) > 0.7)
