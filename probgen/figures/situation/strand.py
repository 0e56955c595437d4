"""A straight part of a line, as drawn; of a rope between two pulls, one leads to where the other
leads back from.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from probgen.figures.paper.scene import Shape, Spot, apart, bearing
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element, Kind

_STRAIGHT: Final = 0.5  # degrees
_SHORTEST: Final = 1.0  # pt


@dataclass(frozen=True, slots=True)
class Line:
    """A line as drawn.

    element: its id, "" for what is no line itself, such as a pulley; ends: from where to where it
    runs, None where that tells nothing; posted: whether a post is to stand at its far end.
    """

    shapes: tuple[Shape, ...]
    element: str = ""
    ends: tuple[Spot, Spot] | None = None
    posted: bool = False


def has_far_end(stage: Stage, element: Element) -> bool:
    """Whether the point a line runs toward is named, and another than its own."""
    if not element.toward:
        return False
    return abs(stage.spot(element.toward) - stage.spot(element.at)) > 1.0


def other_end(stage: Stage, element: Element) -> Element | None:
    """The pull of the same rope that faces a rope's pull, the nearest of them."""
    way = stage.measured.direction_of(element)
    if way is None or element.kind is not Kind.ROPE:
        return None
    here, found = stage.spot(element.at), []
    for each in _pulls(stage, element):
        back, step = stage.measured.direction_of(each), stage.spot(each.at) - here
        if back is None or abs(step) < _SHORTEST:
            continue
        if apart(bearing(step), way) < _STRAIGHT and apart(back, way + 180.0) < _STRAIGHT:
            found.append((abs(step), each))
    return min(found, key=lambda pair: pair[0])[1] if found else None


def is_drawn_from(stage: Stage, one: Element, other: Element) -> bool:
    """Whether the part between two pulls that face each other is drawn from the first of them."""
    elements = stage.system.elements
    return other_end(stage, one) is other and elements.index(one) < elements.index(other)


def _pulls(stage: Stage, element: Element) -> list[Element]:
    """What else its rope pulls at."""
    system = stage.system
    pull = system.force(element.forces[0]).magnitude
    return [
        each
        for each in system.elements
        if each.kind is Kind.ROPE and system.force(each.forces[0]).magnitude == pull
    ]
