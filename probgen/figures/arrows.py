"""Where the arrows of a free-body diagram go: at their points, clear of each other."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise
from typing import Final

from probgen.figures.placement import Field, crosses
from probgen.figures.scene import (
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
    segments,
)
from probgen.figures.vector import Vector, arrow_length, ids_of

_SHIFT: Final = 8.0  # how far a component is set beside an arrow it would fall on, pt
_LEAST_LEG: Final = 13.0  # shortest component drawn as a side of the rectangle, pt
_OFF_POINT: Final = 60.0  # what it costs an arrow not to begin or end at its point
_IN_BODY: Final = 30.0  # what it costs to run along inside the body
_DOTTED: Final = Pen(0.3, 0.9, 1.6)


class Arrows:
    """The arrows on a body, added one after the other.

    outline: the spots the body's axis runs through; scale: pt for each metre; largest: the size
    of the largest force, N; marks: how many strokes mark a force as one of a pair, by its id.
    share: how long all arrows are, of their usual length.
    """

    def __init__(
        self,
        field: Field,
        outline: Sequence[Spot],
        scale: float,
        largest: float,
        marks: Mapping[str, int],
        share: float = 1.0,
    ) -> None:
        self.field = field
        self.outline = outline
        self.scale = scale
        self.largest = largest
        self.marks = marks
        self.share = share
        self.drawn: list[tuple[Arrow, str]] = []

    def add(self, vector: Vector) -> None:
        """Draw a force, off its point only where it would lie on another arrow."""
        arrow = self._best(self._trials(vector), self._trouble, _OFF_POINT)
        self._keep(arrow, vector.symbol)
        self._mark(arrow, vector)

    def add_with_legs(self, whole: Vector, legs: Sequence[Vector]) -> None:
        """A hinge's force solid, with its components dashed as sides of the rectangle about it."""
        shares = [leg.size / whole.size for leg in legs]
        length = self._length(whole)
        if len(legs) != 2 or min(shares) * length < _LEAST_LEG:
            self.add(whole)
            arrow, _ = self.drawn[-1]
            for leg in legs if len(legs) == 2 else ():
                self._leg(self._free_leg(arrow, leg), leg)
            return

        def sides(arrow: Arrow) -> tuple[Arrow, Arrow]:
            return self._sides(arrow, legs, [share * length for share in shares])

        def trouble(arrow: Arrow) -> float:
            return sum(map(self._trouble, (arrow, *sides(arrow))))

        arrow = self._best(self._trials(whole), trouble, 2 * _OFF_POINT)
        self._keep(arrow, whole.symbol)
        self._mark(arrow, whole)
        for side, leg in zip(sides(arrow), legs, strict=True):
            self._leg(side, leg)
            opposite = arrow.tail if abs(side.tail - arrow.tail) > 0.5 else arrow.head - (
                side.head - side.tail
            )
            edge = ((opposite, opposite + side.head - side.tail),)
            self.field.add(Path(edge, _DOTTED, f"rectangle:{whole.id}"))

    @staticmethod
    def _best(
        trials: Sequence[Arrow], trouble: Callable[[Arrow], float], aside: float
    ) -> Arrow:
        """The least troublesome; all but the first two, which are at the point, cost `aside`."""
        best, least = trials[0], math.inf
        for i, arrow in enumerate(trials):
            extra = aside if i > 1 else 0.0
            if extra >= least:
                break
            cost = trouble(arrow) + extra
            if cost < least:
                best, least = arrow, cost
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

    def _keep(self, arrow: Arrow, symbol: str) -> None:
        self.field.add(arrow)
        self.drawn.append((arrow, symbol))

    def _mark(self, arrow: Arrow, vector: Vector) -> None:
        """Short strokes across the shaft, as many as its pair on the other body has."""
        count = max((self.marks.get(id, 0) for id in ids_of(vector)), default=0)
        way = (arrow.head - arrow.tail) / abs(arrow.head - arrow.tail)
        middle = arrow.tail + (arrow.head - arrow.tail) * 0.42
        strokes = tuple(
            (middle + way * (2.4 * i + 1.2j + 2.2j), middle + way * (2.4 * i - 1.2j - 2.2j))
            for i in range(count)
        )
        if strokes:
            self.field.add(Path(strokes, LIGHT, f"pair:{vector.id}"))

    def _trials(self, vector: Vector) -> list[Arrow]:
        """Where a force's arrow may go, best first.

        From its point, or with its head there; further along its line; last beside it.
        """
        spot = vector.at * self.scale
        unit = heading(vector.direction)
        step = unit * self._length(vector)
        tails = [spot, spot - step]
        for arrow, _ in self.drawn:
            past = dot(arrow.head - spot, unit)
            aside = abs(((arrow.head - spot) / unit).imag)
            if past > 0 and aside < 6.0:
                tails.append(spot + unit * (past + 5.0))
        tails += [spot + unit * 1j * shift for shift in (4.5, -4.5, 8.0, -8.0)]
        return [Arrow(tail, tail + step, HEAVY, f"force:{vector.id}") for tail in tails]

    def _trouble(self, arrow: Arrow) -> float:
        """How badly an arrow sits among what is drawn."""
        return sum(_clash(arrow, other) for other, _ in self.drawn) + (
            _IN_BODY if self._along_body(arrow) else 0.0
        )

    def _along_body(self, arrow: Arrow) -> bool:
        """Whether an arrow runs along inside the body's outline."""
        middle = (arrow.tail + arrow.head) / 2
        return any(
            distance(middle, a, b) < 5.0 and distance(arrow.head, a, b) < 6.0
            for a, b in pairwise(self.outline)
        )

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
        self._keep(named, leg.symbol)


def _clash(one: Arrow, other: Arrow) -> float:
    """What two arrows' nearness costs: lying on each other most, crossing some."""
    turn = apart(bearing(one.head - one.tail), bearing(other.head - other.tail))
    ends = ((one.tail, other), (one.head, other), (other.tail, one), (other.head, one))
    near = min(distance(spot, arrow.tail, arrow.head) for spot, arrow in ends)
    if min(turn, 180.0 - turn) < 12.0:
        opposed = turn > 90.0 and abs(one.tail - other.tail) < 1.0
        return 100.0 if near < 4.0 and not opposed else 0.0
    if min(abs(a - b) for a in (one.tail, one.head) for b in (other.tail, other.head)) < 1.0:
        return 0.0
    return 12.0 if near < 4.0 or crosses(segments(one)[0], segments(other)[0]) else 0.0


def distance(spot: Spot, start: Spot, end: Spot) -> float:
    """From a spot to a straight piece."""
    way = end - start
    share = ((spot - start) / way).real if way else 0.0
    return abs(spot - start - way * min(max(share, 0.0), 1.0))
