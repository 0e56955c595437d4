"""A winch at the far end of a rope: where its drum and its foot are, on the slope the rope runs up
or on a floor of its own.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from probgen.bank.depiction import Anchor
from probgen.figures.paper.scene import Spot, dot, heading
from probgen.figures.parts.solid import WINCH
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element

_RUN: Final = 34.0  # of the rope from its body to the winch, pt
_HEIGHT: Final = 17.0  # of a drum's axle above a floor of its own, pt
_ALONG: Final = 0.05  # most sine between a rope and the surface it runs along


@dataclass(frozen=True, slots=True)
class Winch:
    """Where a rope meets its drum, the drum's axle, and its foot with the outward normal (degrees)
    of what that stands on; own: whether that is a floor of its own.
    """

    end: Spot
    axle: Spot
    foot: Spot
    normal: float
    own: bool


def winch_of(stage: Stage, element: Element) -> Winch | None:
    """The winch a line runs to; None where it runs to something else."""
    way = stage.measured.direction_of(element)
    if stage.depicts.lines.get(element.id) is not Anchor.WINCH or way is None:
        return None
    unit = heading(way)
    end = stage.rest(element) + unit * _RUN
    side = unit * 1j if unit.real >= 0 else unit * -1j
    axle = end - side * WINCH
    for other in stage.system.elements:
        if other.body == element.body and other.surface is not None:
            normal = stage.normal(other)
            out = heading(normal)
            height = dot(axle - stage.face(other, normal), out)
            if abs(dot(unit, out)) < _ALONG and height > WINCH:
                return Winch(end, axle, axle - out * height, normal, False)
    return Winch(end, axle, axle - 1j * _HEIGHT, 90.0, True)
