"""A rope's straight part between two pulls: one leads to where the other leads back from."""

from __future__ import annotations

from typing import Final

from probgen.figures.paper.scene import apart, bearing
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element, Kind

_STRAIGHT: Final = 0.5  # degrees
_SHORTEST: Final = 1.0  # pt


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
