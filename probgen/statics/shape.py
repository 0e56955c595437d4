"""A flat part of uniform thickness, or a wire of even weight: how it lies.

Where its centroid is and how large it is follows from that (see `probgen.bank.shape`).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from probgen.quantities.expression import ZERO, Expression


class Outline(StrEnum):
    """What a shape is bounded by, or what a wire follows."""

    RECTANGLE = "rectangle"  # level and upright
    TRIANGLE = "triangle"
    CIRCLE = "circle"
    HALF_CIRCLE = "half_circle"
    WIRE = "wire"  # straight
    HALF_RING = "half_ring"  # a wire bent to half a circle

    @property
    def is_round(self) -> bool:
        """Told by a centre and a radius."""
        return self in (Outline.CIRCLE, Outline.HALF_CIRCLE, Outline.HALF_RING)

    @property
    def is_wire(self) -> bool:
        return self in (Outline.WIRE, Outline.HALF_RING)


@dataclass(frozen=True, slots=True)
class Shape:
    """A flat part, or a wire, by the letters of points.

    points: two opposite corners of a rectangle, the corners of a triangle, the ends of a wire, or
    the centre of a circle.  radius: metres; facing: degrees, from the centre to the middle of half
    a circle's arc.
    """

    outline: Outline
    points: tuple[str, ...]
    radius: Expression = ZERO
    facing: Expression = ZERO
