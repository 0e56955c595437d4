"""Placing labels: the first place around an anchor where a label touches nothing already drawn.

A `Field` knows every stroke and label on the paper so far.  Candidates are tried in a fixed order,
nearest and most natural first, ever further out until one is free, so a placement depends on the
drawing alone and always succeeds.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from probgen.figures.metrics import SIZE, extent
from probgen.figures.scene import Box, Label, Path, Segment, Shape, Spot, Text, heading, segments

GAP: Final = 2.2
"""The least clear space between a label and any stroke, pt."""

_BESIDE: Final = 6.5  # the least clear space between two labels side by side, pt
_OVER: Final = 3.5  # the same between two labels one over the other

_THICK: Final = 2.0  # a stroke heavier than this is kept clear of by its edges, pt
_SQUARE: Final = 16.0  # side of the squares the paper is divided into, pt

_DISTANCES: Final = (3.0, 5.0, 8.0, 12.0, 17.0, 23.0, 30.0, 40.0, 52.0, 66.0, 85.0, 110.0, 150.0)
_TURNS: Final = (0.0, 30.0, -30.0, 60.0, -60.0, 90.0, -90.0, 125.0, -125.0, 160.0, -160.0)


class Field:
    """The paper: what has been drawn so far, in drawing order."""

    def __init__(self) -> None:
        self.shapes: list[Shape] = []
        self.segments: list[Segment] = []
        self.boxes: list[Box] = []
        self._wide: list[Box] = []  # the same with the clear space about them
        self.measures: list[tuple[Spot, Spot]] = []  # the ends of dimension lines
        # The pieces in each square of the paper, so that only the near ones are looked at.
        self._squares: dict[tuple[int, int], list[Segment]] = {}

    def add(self, *shapes: Shape, solid: bool = True) -> None:
        """Draw shapes; labels keep clear of them unless they are not `solid`."""
        for shape in shapes:
            self.shapes.append(shape)
            if isinstance(shape, Label):
                self.boxes.append(shape.box)
                self._wide.append(shape.box.grown(GAP))
            elif solid:
                self.watch(shape)

    def watch(self, shape: Shape) -> None:
        """Keep labels off a shape, drawn or not."""
        drawn = segments(shape)
        if isinstance(shape, Path) and shape.pen.weight > _THICK:
            drawn += [edge for segment in drawn for edge in _rounded(segment, shape.pen.weight)]
        for segment in drawn:
            self.segments.append(segment)
            for square in _squares_of(segment):
                self._squares.setdefault(square, []).append(segment)

    def is_free(self, box: Box, gap: float = GAP) -> bool:
        """Whether no stroke comes within `gap` of the box, and no label near it."""
        left, right = box.left - _BESIDE, box.right + _BESIDE
        bottom, top = box.bottom - _OVER, box.top + _OVER
        for other in self.boxes:
            if (
                other.left < right
                and left < other.right
                and other.bottom < top
                and bottom < other.top
            ):
                return False
        return not self.touched(box.grown(gap))

    def touched(self, box: Box) -> bool:
        """Whether a piece drawn passes through a box."""
        squares = self._squares
        left, bottom, right, top = box.left, box.bottom, box.right, box.top
        for i in range(int(left // _SQUARE), int(right // _SQUARE) + 1):
            for j in range(int(bottom // _SQUARE), int(top // _SQUARE) + 1):
                for segment in squares.get((i, j), ()):
                    x0, y0, x1, y1 = segment
                    if (
                        (x0 >= left or x1 >= left)
                        and (x0 <= right or x1 <= right)
                        and (y0 >= bottom or y1 >= bottom)
                        and (y0 <= top or y1 <= top)
                        and meets(segment, box)
                    ):
                        return True
        return False

    def _near(self, left: float, bottom: float, right: float, top: float) -> list[Segment]:
        """The pieces drawn in the squares an upright rectangle touches, each once."""
        found: dict[Segment, None] = {}
        for i in range(int(left // _SQUARE), int(right // _SQUARE) + 1):
            for j in range(int(bottom // _SQUARE), int(top // _SQUARE) + 1):
                for segment in self._squares.get((i, j), ()):
                    found[segment] = None
        return list(found)

    def _met_by(self, start: Spot, end: Spot) -> list[Segment]:
        """The pieces drawn that a straight piece meets."""
        piece = (start.real, start.imag, end.real, end.imag)
        squares = _squares_of(piece)
        near = {s: None for square in squares for s in self._squares.get(square, ())}
        return [s for s in near if crosses(piece, s)]

    def crossings(self, start: Spot, end: Spot, trim: float = 0.0) -> int:
        """How many strokes the straight piece meets, its ends shortened by `trim`."""
        length = abs(end - start)
        if length <= 2 * trim:
            return 0
        cut = (end - start) / length * trim
        return len(self._met_by(start + cut, end - cut))

    def hits_label(self, start: Spot, end: Spot) -> bool:
        """Whether the straight piece comes too near a label."""
        piece = (start.real, start.imag, end.real, end.imag)
        return any(meets(piece, wide) for wide in self._wide)

    def clear_from(self, start: Spot, end: Spot) -> float:
        """How far along the straight piece the last stroke or label is met (pt); 0 if none is."""
        piece = (start.real, start.imag, end.real, end.imag)
        met = self._met_by(start, end)
        for wide in self._wide:
            if meets(piece, wide):
                met += [edge for edge in _edges(wide) if crosses(piece, edge)]
        return max((_meeting(piece, other) for other in met), default=0.0) * abs(end - start)

    def lies_along(self, start: Spot, end: Spot) -> bool:
        """Whether a drawn stroke covers most of the straight piece (within a quarter point)."""
        way = end - start
        unit = way / abs(way)
        left, right = sorted((start.real, end.real))
        bottom, top = sorted((start.imag, end.imag))
        for x0, y0, x1, y1 in self._near(left - 0.25, bottom - 0.25, right + 0.25, top + 0.25):
            one, other = complex(x0, y0) - start, complex(x1, y1) - start
            if abs((one / unit).imag) > 0.25 or abs((other / unit).imag) > 0.25:
                continue
            low, high = sorted(((one / unit).real, (other / unit).real))
            if min(high, abs(way)) - max(low, 0.0) > 0.6 * abs(way):
                return True
        return False

    def place(
        self, text: Text, candidates: Iterable[Box], tag: str, size: float = SIZE
    ) -> Label:
        """Set a label in the first candidate box that is free and add it to the paper.

        Raises StopIteration when the candidates run out; those of `around` reach far enough.
        """
        box = next(box for box in candidates if self.is_free(box))
        label = set_in(text, box, tag, size)
        self.add(label)
        return label


def _rounded(segment: Segment, weight: float) -> tuple[Segment, ...]:
    """The outline of a thick stroke with round ends: an octagon drawn out to its length."""
    x0, y0, x1, y1 = segment
    start, end = complex(x0, y0), complex(x1, y1)
    way = end - start
    unit = way / abs(way) if way else 1 + 0j
    half = weight / 2
    turns = (1j, cmath.rect(1.0, 0.75 * cmath.pi), -1 + 0j, cmath.rect(1.0, -0.75 * cmath.pi), -1j)
    spots = [start + unit * half * turn for turn in turns]
    spots += [end - unit * half * turn for turn in turns]
    return tuple(
        (a.real, a.imag, b.real, b.imag) for a, b in zip(spots, spots[1:] + spots[:1], strict=True)
    )


def _squares_of(segment: Segment) -> list[tuple[int, int]]:
    """The squares of the paper a straight piece passes through, column by column."""
    x0, y0, x1, y1 = segment if segment[0] <= segment[2] else (*segment[2:], *segment[:2])
    first, last = int(x0 // _SQUARE), int(x1 // _SQUARE)
    if first == last:
        low, high = (y0, y1) if y0 <= y1 else (y1, y0)
        return [(first, j) for j in range(int(low // _SQUARE), int(high // _SQUARE) + 1)]
    slope = (y1 - y0) / (x1 - x0)
    found = []
    for i in range(first, last + 1):
        one = y0 + slope * (max(x0, i * _SQUARE) - x0)
        other = y0 + slope * (min(x1, (i + 1) * _SQUARE) - x0)
        low, high = (one, other) if one <= other else (other, one)
        rows = range(int((low - 1e-6) // _SQUARE), int((high + 1e-6) // _SQUARE) + 1)
        found += [(i, j) for j in rows]
    return found


def set_in(text: Text, box: Box, tag: str, size: float = SIZE) -> Label:
    """The label that fills a box of its extent."""
    room = extent(text, size)
    return Label(complex(box.left, box.bottom + room.depth), text, size, box, tag)


def beside(
    text: Text, anchor: Spot, direction: float, distance: float, size: float = SIZE
) -> Box:
    """The label's box in a direction from an anchor, `distance` away from that point."""
    room = extent(text, size)
    return _beyond(anchor, heading(direction), distance, room.width, room.height + room.depth)


def _beyond(anchor: Spot, unit: complex, distance: float, width: float, height: float) -> Box:
    centre = anchor + unit * distance + complex(unit.real * width / 2, unit.imag * height / 2)
    return _about(centre, width, height)


def centred(text: Text, centre: Spot, size: float = SIZE) -> Box:
    """The label's box about a centre."""
    room = extent(text, size)
    return _about(centre, room.width, room.height + room.depth)


def _about(centre: Spot, width: float, height: float) -> Box:
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
    fans = [
        [(anchor, heading(direction + turn)) for anchor, direction in anchors] for turn in _TURNS
    ]
    for distance in _DISTANCES:
        if distance > farthest:
            return
        away = nearest + distance
        for fan in fans:
            for anchor, unit in fan:
                yield _beyond(anchor, unit, away, width, height)
                if fan is fans[0]:
                    half = abs(unit.real) * width / 2 + abs(unit.imag) * height / 2
                    yield _about(anchor + unit * (away + half), width, height)
    for distance in range(180, 2000, 30):  # a drawing so full that only its margin is free
        for anchor, direction in anchors:
            yield beside(text, anchor, direction, float(distance), size)


def meets(segment: Segment, box: Box) -> bool:
    """Whether a straight piece passes through a box (Liang and Barsky's clipping)."""
    x0, y0, x1, y1 = segment
    if (
        (x0 < box.left and x1 < box.left)
        or (x0 > box.right and x1 > box.right)
        or (y0 < box.bottom and y1 < box.bottom)
        or (y0 > box.top and y1 > box.top)
    ):
        return False
    enter, leave = 0.0, 1.0
    dx, dy = x1 - x0, y1 - y0
    for step, room in (
        (-dx, x0 - box.left),
        (dx, box.right - x0),
        (-dy, y0 - box.bottom),
        (dy, box.top - y0),
    ):
        if step == 0.0:
            if room < 0.0:
                return False
        elif step < 0.0:
            enter = max(enter, room / step)
        else:
            leave = min(leave, room / step)
    return enter <= leave


def _edges(box: Box) -> tuple[Segment, ...]:
    return (
        (box.left, box.bottom, box.right, box.bottom),
        (box.right, box.bottom, box.right, box.top),
        (box.right, box.top, box.left, box.top),
        (box.left, box.top, box.left, box.bottom),
    )


def _meeting(one: Segment, other: Segment) -> float:
    """The share of the first piece after which it has met the second."""
    ax, ay, bx, by = one
    cx, cy, dx, dy = other
    turn = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if abs(turn) < 1e-9:  # along one line
        length = (bx - ax) ** 2 + (by - ay) ** 2
        shares = [((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length for x, y in
                  ((cx, cy), (dx, dy))]
        return min(max(shares), 1.0)
    return ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / turn


def crosses(one: Segment, other: Segment) -> bool:
    """Whether two straight pieces meet; pieces along one line count when they overlap."""
    ax, ay, bx, by = one
    cx, cy, dx, dy = other
    first = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    second = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax)
    if first * second > 0.0:
        return False
    if max(ax, bx) < min(cx, dx) or max(cx, dx) < min(ax, bx):
        return False
    if max(ay, by) < min(cy, dy) or max(cy, dy) < min(ay, by):
        return False
    third = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx)
    fourth = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx)
    return third * fourth <= 0.0


