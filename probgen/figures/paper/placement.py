"""Places for labels: boxes of a label's extent about an anchor, the most natural ones first.

Candidates come in a fixed order, nearest first, ever further out until one is free, so a placement
depends on the drawing alone and always succeeds.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Final

from probgen.figures.paper.scene import Box, Label, Spot, Text, heading
from probgen.figures.paper.tag import Tag
from probgen.figures.paper.type_metrics import SIZE, extent

GAP: Final = 2.2
"""The least clear space between a label and any stroke, pt."""

_DISTANCES: Final = (3.0, 5.0, 8.0, 12.0, 17.0, 23.0, 30.0, 40.0, 52.0, 66.0, 85.0, 110.0, 150.0)
_TURNS: Final = tuple(
    heading(turn) for turn in (30.0, -30.0, 60.0, -60.0, 90.0, -90.0, 125.0, -125.0, 160.0, -160.0)
)


def set_in(text: Text, box: Box, tag: Tag, size: float = SIZE) -> Label:
    """The label that fills a box of its extent."""
    room = extent(text, size)
    return Label(complex(box.left, box.bottom + room.depth), text, size, box, tag)


def beside(text: Text, anchor: Spot, direction: float, distance: float, size: float = SIZE) -> Box:
    """The label's box in a direction from an anchor, `distance` away from that point."""
    room = extent(text, size)
    return beyond(anchor, heading(direction), distance, room.width, room.height + room.depth)


def beyond(anchor: Spot, unit: complex, distance: float, width: float, height: float) -> Box:
    """A box in a direction (a unit step) from an anchor, `distance` away from that point."""
    left = anchor.real + unit.real * (distance + width / 2) - width / 2
    bottom = anchor.imag + unit.imag * (distance + height / 2) - height / 2
    return Box(left, bottom, left + width, bottom + height)


def past(anchor: Spot, unit: complex, distance: float, width: float, height: float) -> Box:
    """A box all of which is past the line square to a direction, `distance` from an anchor."""
    half = abs(unit.real) * width / 2 + abs(unit.imag) * height / 2
    return about(anchor + unit * (distance + half), width, height)


def centred(text: Text, centre: Spot, size: float = SIZE) -> Box:
    """The label's box about a centre."""
    room = extent(text, size)
    return about(centre, room.width, room.height + room.depth)


def about(centre: Spot, width: float, height: float) -> Box:
    """A box about its centre."""
    left, bottom = centre.real - width / 2, centre.imag - height / 2
    return Box(left, bottom, left + width, bottom + height)


def around(
    text: Text,
    anchors: Sequence[tuple[Spot, float]],
    nearest: float = 0.0,
    size: float = SIZE,
    farthest: float = math.inf,
) -> Iterator[Box]:
    """Boxes about several anchors, each with its favoured direction, nearest distance first.

    Along its favoured direction a label is also tried clear of the line square to it.
    nearest: added to every distance; farthest: beyond this distance (pt) there are no more.
    """
    room = extent(text, size)
    width, height = room.width, room.height + room.depth
    favoured = [(anchor, heading(direction)) for anchor, direction in anchors]
    for distance in _DISTANCES:
        if distance > farthest:
            return
        away = nearest + distance
        for anchor, unit in favoured:
            yield beyond(anchor, unit, away, width, height)
            yield past(anchor, unit, away, width, height)
        for turn in _TURNS:
            for anchor, unit in favoured:
                yield beyond(anchor, unit * turn, away, width, height)
    for distance in range(180, 2000, 30):  # a drawing so full that only its margin is free
        for anchor, unit in favoured:
            yield beyond(anchor, unit, float(distance), width, height)
