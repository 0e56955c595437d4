"""A straight part of a line, as drawn; of a rope between two pulls, one leads to where the other
leads back from.
"""

from __future__ import annotations

from typing import Final

from probgen.figures.situation.rope import facing
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element

_SHORTEST: Final = 1.0  # pt


def other_end(stage: Stage, element: Element) -> Element | None:
    """The pull of the same rope that faces a rope's pull on paper, the nearest of them."""
    ends = {each.at: stage.spot(each.at) for each in stage.system.elements if each.at}
    return facing(stage.measured, element, ends, _SHORTEST)


def is_drawn_from(stage: Stage, one: Element, other: Element) -> bool:
    """Whether the part between two pulls that face each other is drawn from the first of them."""
    elements = stage.system.elements
    return other_end(stage, one) is other and elements.index(one) < elements.index(other)
