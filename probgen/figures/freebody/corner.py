"""What a free-body diagram has in a corner: the axes with the positive rotation."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around
from probgen.figures.paper.scene import Box, Spot, bearing, heading
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import axes
from probgen.figures.situation.shape import encloses
from probgen.quantities.expression import Name
from probgen.statics.equation import Axis, Lie


@dataclass(frozen=True, slots=True)
class Frame:
    """The two axes forces are summed along: their letters, and how far they are turned, degrees.

    others: letters and directions (degrees) of axes square to members, or along one slope alone.
    """

    letters: tuple[str, str] = ("x", "y")
    tilt: float = 0.0
    others: tuple[tuple[str, float], ...] = ()


def frame_of(measured: Survey, axes: Sequence[Axis]) -> Frame:
    """The frame of some balances' axes, which may lie along a slope."""
    square = [axis for axis in axes if axis.lie is Lie.SQUARE_TO_MEMBER]
    if square:
        return Frame(others=tuple((a.label, measured.number(a.direction)) for a in square))
    tilted = [(axis.label, measured.number(axis.direction)) for axis in axes if axis.tilted]
    for first, tilt in tilted:
        for second, direction in tilted:
            if abs(direction - tilt - 90) < 1e-6:
                return Frame((first, second), tilt)
    return Frame(others=tuple(dict.fromkeys(tilted)))


def draw_axes(
    field: Field, sense: int, solids: Sequence[Sequence[Spot]], widest: float, frame: Frame
) -> None:
    """Axes near a corner with room, else beside or below the drawing.

    sense: of the positive rotation, as in `axes.axes`; solids: the corners of bodies they keep
    out of; widest: how wide the drawing may become, pt; frame: which axes.
    """
    turn = heading(frame.tilt)
    ways = [turn * 1j, *(heading(direction) for _, direction in frame.others)]
    left = max(0.0, *(-(axes.LENGTH * way).real for way in ways))  # how far any leans to the left
    down = max(0.0, *(-(axes.LENGTH * way).imag for way in ways))
    width, height = axes.WIDTH + left, axes.HEIGHT + down
    box = field.box
    beside = complex(box.right + 6.0, box.bottom)
    under = complex(box.left, box.bottom - height - 4.0)
    origin = beside if box.width + width + 6.0 <= widest else under
    for spot in _corners_first(box, width, height):
        inside = any(encloses(each, spot + complex(width, height) / 2) for each in solids)
        if not inside and field.is_free(_box(spot, width, height), 3.0):
            origin = spot
            break
    start = origin + 3 + 3j + left + 1j * down
    field.add(*axes.axes(start, sense, frame.tilt))
    field.add(*(axes.axis(start, direction) for _, direction in frame.others))
    letters = (*frame.letters, *(letter for letter, _ in frame.others))
    for symbol, way in zip(letters, (turn, *ways), strict=True):
        name = Name(symbol, symbol)
        anchor = (start + way * axes.LENGTH, bearing(way))
        field.place(name, around(name, (anchor,)), Tag(What.AXIS, symbol))


def _corners_first(box: Box, width: float, height: float) -> list[Spot]:
    """Where the lower left corner of something may lie within a box, nearest a corner first."""
    wide, high = box.width - width, box.height - height
    if wide <= 0 or high <= 0:
        return []
    columns, rows = 6, 5
    spots = [
        complex(box.right - width - wide * i / columns, box.top - height - high * j / rows)
        for i in range(columns + 1)
        for j in range(rows + 1)
    ]
    middle = complex(width, height) / 2
    corners = (box.right + 1j * box.top, box.left + 1j * box.top,
               box.right + 1j * box.bottom, box.left + 1j * box.bottom)  # fmt: skip
    return sorted(spots, key=lambda spot: min([abs(spot + middle - each) for each in corners]))


def _box(corner: Spot, width: float, height: float) -> Box:
    return Box(corner.real, corner.imag, corner.real + width, corner.imag + height)
