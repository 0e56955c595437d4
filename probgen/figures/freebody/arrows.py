"""Where the arrows of a free-body diagram go: at their points, clear of each other."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from probgen.figures.measured.vector import Vector, arrow_length
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    DASHED,
    HEAVY,
    LIGHT,
    Arrow,
    Path,
    Pen,
    Spot,
    apart,
    bearing,
    dot,
    heading,
)
from probgen.figures.paper.segment import crosses
from probgen.figures.situation.shape import encloses

_SHIFT: Final = 8.0  # how far a component is set beside an arrow it would fall on, pt
_LEAST_LEG: Final = 13.0  # shortest component drawn as a side of the rectangle, pt
_ASIDE: Final = (3.0, 5.5, 8.0, 11.0)  # how far beside its point an arrow may go, pt
_BESIDE: Final = 20.0  # what that costs it, besides the way
_FURTHER: Final = 70.0  # what it costs to begin beyond another arrow on the same line
_APART: Final = 5.0  # the least between two arrows side by side, pt
_ALONG_BODY: Final = 30.0  # what it costs to run along inside the body
_IN_SOLID: Final = 15.0  # what it costs to lie within a solid
_FROM_ABOVE: Final = 10.0  # what it costs an arrow that points down to end at its point
_OVER_POINT: Final = 40.0  # what it costs to run over a point where another force acts
_CLOSE: Final = 10.0  # two arrows this near leave no room for a symbol between them, pt
_CROWDED: Final = 8.0  # what that costs
_DOTTED: Final = Pen(0.3, 0.9, 1.6)


@dataclass(frozen=True, slots=True)
class Placed:
    """An arrow in its place, the force it shows, and whether that is a component of another."""

    arrow: Arrow
    vector: Vector
    component: bool = False


class Arrows:
    """The arrows on a body, added one after the other.

    outline: the spots the body's axis runs through, or the corners of a solid; points: where
    forces act; scale: pt for each metre; largest: the size of the largest force, N; marks: how
    many strokes mark a force as one of a pair, by its id; share: how long all arrows are, of
    their usual length.
    """

    def __init__(
        self,
        field: Field,
        outline: Sequence[Spot],
        points: Sequence[Spot],
        scale: float,
        largest: float,
        marks: Mapping[str, int],
        share: float = 1.0,
    ) -> None:
        self.field = field
        self.outline = outline
        self.points = points
        self.scale = scale
        self.largest = largest
        self.marks = marks
        self.share = share
        self.placed: list[Placed] = []

    def add(self, vector: Vector, leg: str = "") -> None:
        """Draw a force, off its point only where it would lie on another arrow.

        leg: the id of a component, when the force is the whole of some.
        """
        arrow = self._best(self._trials(vector), self._trouble)
        self._place(Placed(arrow, vector))
        self._mark(arrow, leg or vector.id)

    def add_with_legs(self, whole: Vector, legs: Sequence[Vector]) -> None:
        """A hinge's force solid, with its components dashed as sides of the rectangle about it."""
        shares = [leg.size / whole.size for leg in legs]
        length = self._length(whole)
        if len(legs) != 2 or min(shares) * length < _LEAST_LEG:
            self.add(whole, legs[0].id)
            arrow = self.placed[-1].arrow
            for leg in legs if len(legs) == 2 else ():
                self._leg(self._free_leg(arrow, leg), leg)
            return

        def sides(arrow: Arrow) -> tuple[Arrow, Arrow]:
            return self._sides(arrow, legs, [share * length for share in shares])

        def trouble(arrow: Arrow) -> float:
            return sum(map(self._trouble, (arrow, *sides(arrow))))

        arrow = self._best(self._trials(whole), trouble)
        self._place(Placed(arrow, whole))
        self._mark(arrow, legs[0].id)
        for side, leg in zip(sides(arrow), legs, strict=True):
            self._leg(side, leg)
            opposite = arrow.tail if abs(side.tail - arrow.tail) > 0.5 else arrow.head - (
                side.head - side.tail
            )
            edge = ((opposite, opposite + side.head - side.tail),)
            self.field.add(Path(edge, _DOTTED, f"rectangle:{whole.id}"))

    @staticmethod
    def _best(
        trials: Iterable[tuple[Arrow, float]], trouble: Callable[[Arrow], float]
    ) -> Arrow:
        """The least troublesome one; each comes with what its place costs, in rising order."""
        best: Arrow | None = None
        least = math.inf
        for arrow, extra in trials:
            if extra >= least:
                break
            cost = trouble(arrow) + extra
            if cost < least:
                best, least = arrow, cost
        assert best is not None  # there are trials, and no trouble is infinite
        return best

    def _sides(
        self, arrow: Arrow, legs: Sequence[Vector], lengths: Sequence[float]
    ) -> tuple[Arrow, Arrow]:
        """The components, each on the near or the far side of the rectangle about an arrow."""
        found = []
        steps = [
            heading(leg.direction) * length for leg, length in zip(legs, lengths, strict=True)
        ]
        for step, other in (steps, steps[::-1]):
            near, far = (Arrow(t, t + step, DASHED) for t in (arrow.tail, arrow.tail + other))
            found.append(far if self._trouble(far) < self._trouble(near) else near)
        return found[0], found[1]

    def _length(self, vector: Vector) -> float:
        return self.share * arrow_length(vector.size, self.largest)

    def _place(self, each: Placed) -> None:
        self.field.add(each.arrow)
        self.placed.append(each)

    def _mark(self, arrow: Arrow, force: str) -> None:
        """Short strokes across the shaft, as many as its pair on the other body has."""
        count = self.marks.get(force, 0)
        way = (arrow.head - arrow.tail) / abs(arrow.head - arrow.tail)
        middle = arrow.tail + (arrow.head - arrow.tail) * 0.42
        strokes = tuple(
            (middle + way * (2.4 * i + 1.2j + 2.2j), middle + way * (2.4 * i - 1.2j - 2.2j))
            for i in range(count)
        )
        if strokes:
            self.field.add(Path(strokes, LIGHT, f"pair:{force}"))

    def _trials(self, vector: Vector) -> Iterator[tuple[Arrow, float]]:
        """Where a force's arrow may go with what that costs, best first.

        From its point, or with its head there; beside it; last further along its line.
        """
        spot = vector.at * self.scale
        unit = heading(vector.direction)
        step = unit * self._length(vector)
        falls = abs(vector.direction - 270.0) < 0.01  # what weighs hangs from its point
        tails = [(spot, 0.0), (spot - step, _FROM_ABOVE if falls else 0.0)]
        for shift in _ASIDE:
            tails += [(spot + unit * 1j * side, _BESIDE + 3 * shift) for side in (shift, -shift)]
        for each in self.placed:
            past = dot(each.arrow.head - spot, unit)
            aside = abs(((each.arrow.head - spot) / unit).imag)
            if past > 0 and aside < 6.0:
                tails.append((spot + unit * (past + 5.0), _FURTHER + past))
        tails.sort(key=lambda tail: tail[1])
        for tail, cost in tails:
            yield Arrow(tail, tail + step, HEAVY, f"force:{vector.id}"), cost

    def _trouble(self, arrow: Arrow) -> float:
        """How badly an arrow sits among what is drawn."""
        return (
            sum(_clash(arrow, other.arrow) for other in self.placed)
            + self._in_body(arrow)
            + _OVER_POINT * sum(_covers(arrow, point) for point in self.points)
        )

    def _in_body(self, arrow: Arrow) -> float:
        """What it costs to run along a body's outline, or, unless it points down, in a solid."""
        middle = (arrow.tail + arrow.head) / 2
        along = any(
            distance(middle, a, b) < 5.0 and distance(arrow.head, a, b) < 6.0
            for a, b in pairwise(self.outline)
        )
        if along:
            return _ALONG_BODY
        closed = len(self.outline) > 3 and self.outline[0] == self.outline[-1]
        falls = arrow.head.imag < arrow.tail.imag and abs((arrow.head - arrow.tail).real) < 0.01
        return _IN_SOLID if closed and not falls and encloses(self.outline[1:], middle) else 0.0

    def _free_leg(self, whole: Arrow, leg: Vector) -> Arrow:
        """A component that the rectangle cannot show: at the point, or beside the whole."""
        spot = leg.at * self.scale
        step = heading(leg.direction) * self._length(leg)
        unit = heading(leg.direction)
        tails = [spot]
        for tail in (whole.tail, spot - step):
            tails += [tail + unit * 1j * shift for shift in (_SHIFT, -_SHIFT)]
            tails.append(spot - step)
        return min((Arrow(tail, tail + step, DASHED) for tail in tails), key=self._trouble)

    def _leg(self, arrow: Arrow, leg: Vector) -> None:
        named = Arrow(arrow.tail, arrow.head, DASHED, f"component:{leg.id}", 5.0, 3.6)
        self._place(Placed(named, leg, component=True))


def _clash(one: Arrow, other: Arrow) -> float:
    """What two arrows' nearness costs: lying on each other most, crossing some."""
    a, b, c, d = one.tail, one.head, other.tail, other.head
    if not _adjoin(a.real, b.real, c.real, d.real) or not _adjoin(a.imag, b.imag, c.imag, d.imag):
        return 0.0
    near = min(distance(a, c, d), distance(b, c, d), distance(c, a, b), distance(d, a, b))
    turn = apart(bearing(b - a), bearing(d - c))
    if min(turn, 180.0 - turn) < 12.0:
        opposed = turn > 90.0 and abs(a - c) < 1.0
        if opposed or near >= _CLOSE:
            return 0.0
        return 100.0 if near < _APART else _CROWDED
    if min(abs(a - c), abs(a - d), abs(b - c), abs(b - d)) < 1.0:
        return 0.0
    crossed = crosses((a.real, a.imag, b.real, b.imag), (c.real, c.imag, d.real, d.imag))
    return 12.0 if near < 4.0 or crossed else 0.0


def _adjoin(a: float, b: float, c: float, d: float) -> bool:
    """Whether the stretch from a to b comes near the one from c to d."""
    return max(a, b) + _CLOSE > min(c, d) and max(c, d) + _CLOSE > min(a, b)


def _covers(arrow: Arrow, point: Spot) -> bool:
    """Whether a point lies on an arrow's shaft, between its ends."""
    way = arrow.head - arrow.tail
    length = abs(way)
    on = (point - arrow.tail) / way * length
    return 2.0 < on.real < length - 2.0 and abs(on.imag) < 2.5


def distance(spot: Spot, start: Spot, end: Spot) -> float:
    """From a spot to a straight piece."""
    way = end - start
    share = ((spot - start) / way).real if way else 0.0
    return abs(spot - start - way * min(max(share, 0.0), 1.0))
