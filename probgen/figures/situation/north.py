"""The arrow to the north of what is seen from above."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around
from probgen.figures.paper.scene import LIGHT, Arrow, Box, Spot
from probgen.figures.paper.tag import Tag, What
from probgen.working.fact import Tell
from probgen.working.figure import NorthMarked

_LENGTH: Final = 20.0
_ROOM: Final = 14.0 + 34.0j  # what the arrow and its letter take, pt
_GAP: Final = 8.0  # beside the drawing, where it has no corner free


def draw_north(field: Field, tell: Tell) -> None:
    """The arrow in a corner with room, else beside the drawing."""
    box = field.box
    middle = complex(box.right + _GAP + _ROOM.real / 2, (box.bottom + box.top) / 2)
    free = (spot for spot in _corners(box) if field.is_free(_room(spot), 3.0))
    start = next(free, middle - 0.5j * _ROOM.imag)
    tip = start + 1j * _LENGTH
    field.add(Arrow(start, tip, LIGHT, Tag(What.AXES, "north"), 4.5, 3.2))
    word, tag = tell(NorthMarked()), Tag(What.NOTE, "north")
    field.place(word, around(word, ((tip, 90.0), (tip, 0.0), (tip, 180.0))), tag)


def _corners(box: Box) -> Iterator[Spot]:
    """The foot of an arrow in each corner of a box that is large enough, upper ones first."""
    half = _ROOM.real / 2
    if box.width < 4 * half or box.height < _ROOM.imag:
        return
    for bottom in (box.top - _ROOM.imag, box.bottom):
        for across in (box.right - half, box.left + half):
            yield complex(across, bottom)


def _room(foot: Spot) -> Box:
    half = _ROOM.real / 2
    return Box(foot.real - half, foot.imag, foot.real + half, foot.imag + _ROOM.imag)
