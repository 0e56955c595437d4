"""The paper: every stroke and label of a figure so far, and what is still free of them."""

from __future__ import annotations

import cmath
import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from copy import copy
from dataclasses import dataclass
from itertools import chain
from typing import Final

import numpy as np

from probgen.figures.paper.cover import Cover, behind, covers
from probgen.figures.paper.placement import GAP, set_in
from probgen.figures.paper.scene import (
    FINE,
    Arrow,
    Box,
    Label,
    Path,
    Segment,
    Shape,
    Spot,
    Stroke,
    Text,
    bounds,
    runs,
    segments,
)
from probgen.figures.paper.segment import crosses, edges, meeting, meets
from probgen.figures.paper.tag import Tag, What
from probgen.figures.paper.type_metrics import SIZE

_BESIDE: Final = 6.5  # the least clear space between two labels side by side, pt
_OVER: Final = 3.5  # the same between two labels one over the other
_THICK: Final = 2.0  # a stroke heavier than this is kept clear of by its edges, pt
_SQUARE: Final = 32.0  # side of the squares the paper is divided into, pt
_ON_LINE: Final = 0.25  # how far from a line a stroke may lie and count as lying on it, pt
_ROUND: Final = (
    1j, cmath.rect(1.0, 0.75 * cmath.pi), -1 + 0j, cmath.rect(1.0, -0.75 * cmath.pi), -1j
)  # about a stroke's end, from its one side to its other  # fmt: skip
_SLANT: Final = 0.1  # least sine and cosine between two strokes that are aslant
_COVERED: Final = 0.6  # least share of a piece that a stroke lying on it covers


@dataclass(frozen=True, slots=True)
class Ray:
    """What a straight piece meets, as distances (pt) from its start.

    met: strokes; hidden: labels, from where to where; along: strokes that lie on it, likewise;
    ends: heads and tails of forces' arrows that lie on it; behind: opaque shapes, likewise.
    """

    met: tuple[float, ...]
    hidden: tuple[tuple[float, float], ...]
    along: tuple[tuple[float, float], ...]
    ends: tuple[float, ...] = ()
    behind: tuple[tuple[float, float], ...] = ()

    def last(self, reach: float) -> float:
        """Where the last stroke or edge of a label is met within a distance; 0 if none is."""
        edges = (edge for ends in self.hidden for edge in ends)
        return max((each for each in (*self.met, *edges) if each <= reach), default=0.0)

    def first(self, beyond: float = 0.0) -> float:
        """Where the first stroke or edge of a label is met beyond a distance; 0 if none is."""
        edges = (edge for ends in self.hidden for edge in ends)
        return min((each for each in (*self.met, *edges) if each >= beyond), default=0.0)

    def hides(self, first: float, last: float) -> bool:
        """Whether the part between two distances runs through a label."""
        return any(low < last and first < high for low, high in self.hidden)

    def covered(self, reach: float) -> float:
        """How far a stroke that covers most of the part within a distance goes; 0 if none does."""
        covers = (
            high for low, high in self.along if min(high, reach) - max(low, 0.0) > _COVERED * reach
        )
        return max(covers, default=0.0)

    def ends_an_arrow(self, at: float) -> bool:
        """Whether a force's arrow that lies on it has an end at a distance."""
        return any(abs(end - at) < _ON_LINE for end in self.ends)


class Field:
    """What has been drawn, in drawing order.

    boxes: of the labels; opaque: what hides lines behind it; measures: the ends of dimension lines;
    arrows: those that are heavier; torn: how many extension lines are broken by labels; walled:
    how many run aslant through a wall.
    """

    def __init__(self) -> None:
        self.shapes: list[Shape] = []
        self._across: list[float] = []  # how far to the left and right, and
        self._upward: list[float] = []  # how far down and up each stroke and label reaches
        self.segments: list[Segment] = []
        self.boxes: list[Box] = []
        self._wide: list[Box] = []  # the same with the clear space about them
        self.opaque: list[Cover] = []
        self.measures: list[tuple[Spot, Spot]] = []
        self.arrows: list[Arrow] = []
        self.torn = 0
        self.walled = 0
        # The pieces in each square of the paper, so that only the near ones are looked at; so many
        # of them, for a sketch is seldom looked into.
        self._squares: defaultdict[tuple[float, float], list[Segment]] = defaultdict(list)
        self._sorted = 0
        self._strokes: defaultdict[What, list[tuple[Stroke, list[Segment]]]] = defaultdict(list)

    def trial(self) -> Field:
        """The same paper, on which can be drawn what leaves this one as it is."""
        other = copy(self)
        for name, held in vars(self).items():
            if isinstance(held, list):
                setattr(other, name, list(held))
        other._squares = defaultdict(list, {at: [*near] for at, near in self._squares.items()})
        other._strokes = defaultdict(list, {what: [*own] for what, own in self._strokes.items()})
        return other

    @property
    def box(self) -> Box:
        """The rectangle around all that is drawn."""
        return Box(min(self._across), min(self._upward), max(self._across), max(self._upward))

    @property
    def spoilt(self) -> int:
        """How many extension lines labels or walls spoil."""
        return self.torn + self.walled

    def add(self, *shapes: Shape, solid: bool = True) -> None:
        """Draw shapes; labels keep clear of them unless they are not `solid`."""
        for shape in shapes:
            self.shapes.append(shape)
            if isinstance(shape, Label):
                self.boxes.append(shape.box)
                self._wide.append(shape.box.grown(GAP))
                left, bottom, right, top = shape.box
                self._across += left, right
                self._upward += bottom, top
                continue
            self.opaque += covers(shape)
            if isinstance(shape, Arrow) and shape.pen.weight > FINE.weight:
                self.arrows.append(shape)
            half = shape.pen.weight / 2
            pieces: list[Segment] = []
            for run in runs(shape):
                xs, ys = [spot.real for spot in run], [spot.imag for spot in run]
                self._across += min(xs) - half, max(xs) + half
                self._upward += min(ys) - half, max(ys) + half
                pieces += zip(xs, ys, xs[1:], ys[1:], strict=False)
            pieces += _edges(pieces, shape)
            self._strokes[shape.tag.what].append((shape, pieces))
            if solid:
                self.segments += pieces

    def without(self, *shapes: Label | Path) -> Field:
        """The same paper, on which labels and straight lines are not drawn yet."""
        other = self.trial()
        for shape in shapes:
            other._rub_out(shape)
        return other

    def _rub_out(self, shape: Label | Path) -> None:
        self.shapes.remove(shape)
        left, bottom, right, top = bounds([shape])
        for drawn, edges_of in ((self._across, (left, right)), (self._upward, (bottom, top))):
            for edge in edges_of:
                drawn.remove(edge)
        if isinstance(shape, Label):
            self.boxes.remove(shape.box)
            self._wide.remove(shape.box.grown(GAP))
            return
        rest = [each for each in self._strokes[shape.tag.what] if each[0] is not shape]
        self._strokes[shape.tag.what] = rest
        for piece in segments(shape):
            self.segments.remove(piece)
        self._squares.clear()
        self._sorted = 0

    def watch(self, shape: Stroke) -> None:
        """Keep labels off a shape that is not drawn."""
        pieces = segments(shape)
        self.segments += (*pieces, *_edges(pieces, shape))

    def _sort(self) -> None:
        """Puts the pieces drawn since into their squares."""
        for piece in self.segments[self._sorted :]:
            for square in _squares_of(piece):
                self._squares[square].append(piece)
        self._sorted = len(self.segments)

    def is_free(self, box: Box, gap: float = GAP) -> bool:
        """Whether no stroke comes within `gap` of the box, and no label near it."""
        left, bottom, right, top = box
        if self.touched((left - gap, bottom - gap, right + gap, top + gap)):
            return False
        left, right, bottom, top = left - _BESIDE, right + _BESIDE, bottom - _OVER, top + _OVER
        for low_x, low_y, high_x, high_y in self.boxes:
            if low_x < right and left < high_x and low_y < top and bottom < high_y:
                return False
        return True

    def on_opaque(self, box: Box) -> bool:
        """Whether the middle of a label lies on what hides lines."""
        middle = box.centre.imag * 1j
        return any(behind(self.opaque, box.left + middle, box.right + middle))

    def touched(self, box: tuple[float, float, float, float]) -> bool:
        """Whether a piece drawn passes through a box."""
        if self._sorted < len(self.segments):
            self._sort()
        left, bottom, right, top = box
        wide, high = right - left, top - bottom
        rows = range(int(bottom // _SQUARE), int(top // _SQUARE) + 1)
        for i in range(int(left // _SQUARE), int(right // _SQUARE) + 1):
            for j in rows:
                for x0, y0, x1, y1 in self._squares.get((i, j), ()):
                    if (
                        (x0 >= left or x1 >= left)
                        and (x0 <= right or x1 <= right)
                        and (y0 >= bottom or y1 >= bottom)
                        and (y0 <= top or y1 <= top)
                    ):  # as `meets`, written out
                        dx, dy = x1 - x0, y1 - y0
                        aside = dx * (bottom + top - 2 * y0) - dy * (left + right - 2 * x0)
                        if abs(aside) <= abs(dx) * high + abs(dy) * wide:
                            return True
        return False

    def crossings(self, start: Spot, end: Spot, trim: float = 0.0) -> int:
        """How many strokes the straight piece meets, its ends shortened by `trim`."""
        length = abs(end - start)
        if length <= 2 * trim:
            return 0
        cut = (end - start) / length * trim
        piece = _piece(start + cut, end - cut)
        return len({near for near in self._near(piece) if crosses(piece, near)})

    def crossed(self, start: Spot, end: Spot, steps: Sequence[complex]) -> list[int]:
        """How many strokes the straight piece meets when it is moved by each of several steps
        square to it.
        """
        length = abs(end - start)
        unit = (end - start) / length
        drawn = np.fromiter(chain.from_iterable(self.segments), float)
        ends = drawn.view(complex).reshape(-1, 2) - start
        ends *= unit.conjugate()  # along the piece, and across it
        (one, other), off = ends.T, np.array([[(step / unit).imag] for step in steps])
        low, high = np.minimum(one.imag, other.imag), np.maximum(one.imag, other.imag)
        rise = np.where(high - low < 1e-9, math.inf, other.imag - one.imag)
        meeting_at = one.real + (off - one.imag) / rise * (other.real - one.real)
        met = (low <= off) & (off <= high) & (meeting_at >= 0.0) & (meeting_at <= length)
        return [int(count) for count in met.sum(axis=1)]

    def _near(self, piece: Segment) -> list[Segment]:
        """The pieces drawn about a straight piece, some more than once."""
        if self._sorted < len(self.segments):
            self._sort()
        return [near for square in _squares_of(piece) for near in self._squares.get(square, ())]

    def hits_label(self, start: Spot, end: Spot) -> bool:
        """Whether the straight piece comes too near a label."""
        piece = _piece(start, end)
        return any(meets(piece, wide) for wide in self._wide)

    def hits(self, start: Spot, end: Spot, what: What, apart: Box, least: int = 1) -> bool:
        """Whether the straight piece meets a shape of a kind that is not all within a box.

        least: how many of its edges; two of an outline that it runs right through.
        """
        piece = _piece(start, end)
        for shape, pieces in self._strokes.get(what, ()):
            met = sum(crosses(piece, edge) for edge in pieces)
            if met >= least and not apart.holds(bounds([shape])):
                return True
        return False

    def slants_through_wall(self, start: Spot, end: Spot) -> bool:
        """Whether the straight piece crosses the face of a wall that it is neither square to nor
        along.
        """
        piece, unit = _piece(start, end), (end - start) / abs(end - start)
        for _, pieces in self._strokes.get(What.GROUND, ()):
            for near in pieces:
                along = complex(near[2] - near[0], near[3] - near[1])
                if abs(along.imag) > abs(along.real) and crosses(piece, near):
                    turned = along / unit
                    if min(abs(turned.real), abs(turned.imag)) > _SLANT * abs(along):
                        return True
        return False

    def ray(self, start: Spot, end: Spot) -> Ray:
        """What is met on the way from one spot to another."""
        piece, length = _piece(start, end), abs(end - start)
        strokes = self._near(piece)
        met = tuple([meeting(piece, each) * length for each in strokes if crosses(piece, each)])
        hidden = []
        for wide in self._wide:
            if meets(piece, wide):
                sides = [edge for edge in edges(wide) if crosses(piece, edge)]
                reached = [meeting(piece, edge) * length for edge in sides]
                reached += [0.0] if wide.away(start) == 0.0 else []
                reached += [length] if wide.away(end) == 0.0 else []
                hidden.append((min(reached), max(reached)))
        arrows = [_piece(each.tail, each.head) for each in self.arrows]
        ends = tuple(chain.from_iterable(_along(start, end, arrows)))
        covered = tuple(behind(self.opaque, start, end))
        return Ray(met, tuple(hidden), tuple(_along(start, end, strokes)), ends, covered)

    def place(self, text: Text, candidates: Iterable[Box], tag: Tag, size: float = SIZE) -> Label:
        """Set a label in the first candidate box that is free and add it to the paper.

        Raises StopIteration when the candidates run out; those of `around` reach far enough.
        """
        box = next(box for box in candidates if self.is_free(box))
        label = set_in(text, box, tag, size)
        self.add(label)
        return label


def _piece(start: Spot, end: Spot) -> Segment:
    return start.real, start.imag, end.real, end.imag


def _along(start: Spot, end: Spot, strokes: list[Segment]) -> Iterator[tuple[float, float]]:
    """From where to where strokes lie on the straight piece."""
    unit = (end - start) / abs(end - start)
    ux, uy, sx, sy = unit.real, unit.imag, start.real, start.imag
    for x0, y0, x1, y1 in strokes:
        if (
            abs(ux * (y0 - sy) - uy * (x0 - sx)) < _ON_LINE
            and abs(ux * (y1 - sy) - uy * (x1 - sx)) < _ON_LINE
        ):
            one, other = ux * (x0 - sx) + uy * (y0 - sy), ux * (x1 - sx) + uy * (y1 - sy)
            yield min(one, other), max(one, other)


def _edges(pieces: Sequence[Segment], shape: Stroke) -> list[Segment]:
    """The outline of the pieces of a stroke that is thick."""
    if not isinstance(shape, Path) or shape.pen.weight <= _THICK:
        return []
    return [edge for piece in pieces for edge in _rounded(piece, shape.pen.weight)]


def _rounded(segment: Segment, weight: float) -> list[Segment]:
    """The outline of a thick stroke with round ends: an octagon drawn out to its length."""
    x0, y0, x1, y1 = segment
    start, end = complex(x0, y0), complex(x1, y1)
    way = end - start
    reach = (way / abs(way) if way else 1 + 0j) * (weight / 2)
    spots = [start + reach * turn for turn in _ROUND] + [end - reach * turn for turn in _ROUND]
    return [_piece(a, b) for a, b in zip(spots, spots[1:] + spots[:1], strict=True)]


def _squares_of(segment: Segment) -> list[tuple[float, float]]:
    """The squares of the paper a straight piece passes through, column by column."""
    x0, y0, x1, y1 = segment
    first, last, one, other = x0 // _SQUARE, x1 // _SQUARE, y0 // _SQUARE, y1 // _SQUARE
    if first == last:
        if one == other:  # as most are short
            return [(first, one)]
        if one > other:
            one, other = other, one
        return [(first, j) for j in range(int(one), int(other) + 1)]
    if first > last:
        x0, y0, x1, y1, first, last = x1, y1, x0, y0, last, first
    slope = (y1 - y0) / (x1 - x0)
    found: list[tuple[float, float]] = []
    for i in range(int(first), int(last) + 1):
        one_y = y0 + slope * (max(x0, i * _SQUARE) - x0)
        other_y = y0 + slope * (min(x1, (i + 1) * _SQUARE) - x0)
        low, high = (one_y, other_y) if one_y <= other_y else (other_y, one_y)
        rows = range(int((low - 1e-6) // _SQUARE), int((high + 1e-6) // _SQUARE) + 1)
        found += [(i, j) for j in rows]
    return found
