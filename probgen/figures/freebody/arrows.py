"""Where the arrows of a free-body diagram go: at their points, clear of each other."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import combinations, pairwise
from typing import Final

from probgen.figures.measured.vector import ArrowScale, Vector
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    DASHED,
    HEAVY,
    MEDIUM,
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
from probgen.figures.paper.tag import Tag, What
from probgen.figures.paper.type_metrics import extent
from probgen.figures.situation.shape import encloses

_PARTICLE: Final = 3.0  # radius of a particle's ring, pt
_LARGE_PARTICLE: Final = 8.0
_ASIDE: Final = (3.0, 5.5, 8.0, 11.0)  # how far beside a particle an arrow may go, pt
_BESIDE: Final = 50.0  # what that costs it, besides the way; more than two arrows that adjoin
_FURTHER: Final = 70.0  # what it costs to begin beyond another arrow on the same line
_APART: Final = 5.0  # the least between two arrows side by side, pt
_ALONG_BODY: Final = 30.0  # what it costs to run along inside the body
_IN_SOLID: Final = 15.0  # what it costs to lie within a solid
_FROM_ABOVE: Final = 10.0  # what it costs an arrow that points down to end at its point
_PULLED: Final = 35.0  # what it costs the pull of a line to end at its point, as a push does
_PRESSED: Final = 80.0  # what it costs a push on a face to begin there
_OVER_POINT: Final = 70.0  # what it costs to run over a point where another force acts
_CLOSE: Final = 10.0  # two arrows this near leave no room for a symbol between them, pt
_CROWDED: Final = 8.0  # what that costs
_CROSSED: Final = 55.0  # what it costs to cross another arrow
_TOUCHED: Final = 12.0  # what it costs to come within a few pt of one
_ROUNDS: Final = 4  # how often arrows that have no good place are laid out anew
_OFF: Final = 4.0  # from a component to its symbol, pt
_DOTTED: Final = Pen(0.3, 0.9, 1.6)


Force = tuple[Vector, tuple[Vector, ...]]
"""A force to be drawn, with the components that are drawn dashed about it."""


@dataclass(frozen=True, slots=True)
class Placed:
    """An arrow in its place, the force it shows, and whether that is a component of another.

    marked: the id that tells how many strokes mark it as one of a pair; of: the id of the force
    that a component is of.
    """

    arrow: Arrow
    vector: Vector
    component: bool = False
    marked: str = ""
    of: str = ""


@dataclass(frozen=True, slots=True)
class _Layout:
    """Arrows in their places: what that costs, and the first force that has no good one left.

    edges: what completes the rectangles about forces with components.
    """

    cost: float
    hemmed: Force | None
    placed: list[Placed]
    edges: tuple[Path, ...]


class Arrows:
    """The arrows on a body.

    outlines: the spots a body's axis runs through, or the corners of a solid; points: where
    forces act; scale: pt for each metre; lengths: of the arrows; marks: how many strokes mark a
    force as one of a pair, by its id; radius: of a particle's ring (pt), beyond which arrows begin
    that are set beside another; 0 for an extended body, on which every arrow lies on the force's
    line of action.
    """

    def __init__(
        self,
        field: Field,
        outlines: Sequence[Sequence[Spot]],
        points: Sequence[Spot],
        scale: float,
        lengths: ArrowScale,
        marks: Mapping[str, int],
        radius: float = 0.0,
    ) -> None:
        self.field = field
        self.outlines = outlines
        self.points = points
        self.scale = scale
        self.lengths = lengths
        self.marks = marks
        self.radius = radius
        self.ring = radius if all(len(each) < 2 for each in outlines) else 0.0  # that is drawn
        self.placed: list[Placed] = []
        self.hemmed = False  # whether one of them crosses another or lies on it, or on its point

    def add(self, forces: Sequence[Force]) -> None:
        """Draw forces one after the other, each off its point only where it would lie on another
        arrow; pulls first where more of all find a good place then; one that finds none is tried
        again before all others, then ending at its point.
        """
        layouts: dict[tuple[str, ...], _Layout] = {}  # many a round comes to one that was tried

        def laid_out(order: Sequence[Force], turned: Vector | None = None) -> _Layout:
            key = (*(whole.id for whole, _ in order), turned.id if turned else "")
            if key not in layouts:
                layouts[key] = self._laid_out(order, turned)
            return layouts[key]

        pulls_first = sorted(forces, key=lambda force: not force[0].pulls)
        order = min((list(forces), pulls_first), key=lambda each: laid_out(each).cost)
        best = latest = laid_out(order)
        for attempt in range(_ROUNDS):
            if latest.hemmed is None:
                break
            turned = order[0][0] if attempt % 2 else None
            if not turned:
                order.remove(latest.hemmed)
                order.insert(0, latest.hemmed)
            latest = laid_out(order, turned)
            best = min(best, latest, key=lambda layout: layout.cost)
        self.placed = best.placed
        self.hemmed = best.hemmed is not None and not self.radius  # there is room beside a particle
        for each in best.placed:
            self.field.add(each.arrow)
            if not each.component:
                self._mark(each.arrow, each.marked)
        self.field.add(*best.edges)

    def _laid_out(self, order: Sequence[Force], turned: Vector | None = None) -> _Layout:
        """Where the arrows go when they are placed in some order, one of them not from its point
        if it can be turned.
        """
        self.placed = []
        cost, hemmed = 0.0, None
        edges: list[Path] = []
        for force in order:
            whole, legs = force
            arrow, own = self._best(
                self._trials(whole, whole is turned and not whole.leaves),
                partial(self._trouble_with, force),
            )
            cost += own
            if hemmed is None and own >= _CROSSED:
                hemmed = force
            sides = self._sides(arrow, whole, legs) if legs else ()
            self.placed.append(Placed(arrow, whole, marked=legs[0].id if legs else whole.id))
            for side, leg in zip(sides, legs, strict=True):
                named = Arrow(side.tail, side.head, DASHED, Tag(What.COMPONENT, leg.id), 5.0, 3.6)
                self.placed.append(Placed(named, leg, component=True, of=whole.id))
                edges.append(_edge(arrow, side, Tag(What.RECTANGLE, whole.id)))
        return _Layout(cost, hemmed, self.placed, tuple(edges))

    def _trouble_with(self, force: Force, arrow: Arrow) -> float:
        """How badly a force sits with its components."""
        whole, legs = force
        sides = self._sides(arrow, whole, legs) if legs else ()
        return sum(map(self._trouble, (arrow, *sides)))

    @staticmethod
    def _best(
        trials: Iterable[tuple[Arrow, float]], trouble: Callable[[Arrow], float]
    ) -> tuple[Arrow, float]:
        """The least troublesome one, and how much; each comes with what its place costs, in rising
        order.
        """
        best: Arrow | None = None
        least = math.inf
        for arrow, extra in trials:
            if extra >= least:
                break
            cost = trouble(arrow) + extra
            if cost < least:
                best, least = arrow, cost
        assert best is not None  # there are trials, and no trouble is infinite
        return best, least

    def _sides(self, arrow: Arrow, whole: Vector, legs: Sequence[Vector]) -> tuple[Arrow, Arrow]:
        """The components, each on the near or the far side of the rectangle about an arrow: where
        less is in its way, and then in that of its symbol.
        """
        found = []
        share = self.lengths.drawn(whole) / whole.size
        steps = [heading(leg.direction) * leg.size * share for leg in legs]
        for leg, step, other in zip(legs, steps, steps[::-1], strict=True):
            sides = [Arrow(t, t + step, DASHED) for t in (arrow.tail, arrow.tail + other)]
            outward = (-other, other)
            costs = [
                (self._trouble(side), self._walls(side, leg, out))
                for side, out in zip(sides, outward, strict=True)
            ]
            found.append(sides[costs[1] < costs[0]])
        return found[0], found[1]

    def _walls(self, side: Arrow, leg: Vector, out: complex) -> int:
        """How many edges of the body and arrows a component's symbol would meet beside it."""
        room, unit = extent(leg.label), out / abs(out)
        reach = _OFF + abs(unit.real) * room.width + abs(unit.imag) * (room.height + room.depth)
        found = 0
        for share in (0.25, 0.75):
            start = side.tail + share * (side.head - side.tail) + unit
            end = start + unit * reach
            piece = start.real, start.imag, end.real, end.imag
            shafts = [(o.arrow.tail, o.arrow.head) for o in self.placed]
            edges = (edge for outline in self.outlines for edge in pairwise(outline))
            for a, b in (*edges, *shafts):
                found += crosses(piece, (a.real, a.imag, b.real, b.imag))
        return found

    def _mark(self, arrow: Arrow, force: str) -> None:
        """Short strokes across the shaft, as many as its pair on the other body has."""
        count = self.marks.get(force, 0)
        way = (arrow.head - arrow.tail) / abs(arrow.head - arrow.tail)
        middle = arrow.tail + (arrow.head - arrow.tail) * 0.42
        strokes = tuple(
            (middle + way * (3.0 * i + 1.0 + 4.0j), middle + way * (3.0 * i - 1.0 - 4.0j))
            for i in range(count)
        )
        if strokes:
            self.field.add(Path(strokes, MEDIUM, Tag(What.PAIR, force)))

    def _trials(self, vector: Vector, turned: bool = False) -> Iterator[tuple[Arrow, float]]:
        """Where a force's arrow may go with what that costs, best first.

        From its point, or, unless a bar pulls, with its head there, at the ring of a particle; from
        that ring beside its point; last further along its line.  turned: not from its point.
        """
        spot = vector.at * self.scale
        unit = heading(vector.direction)
        step = unit * self.lengths.drawn(vector)
        falls = abs(vector.direction - 270.0) < 0.01  # what weighs hangs from its point
        ends = _FROM_ABOVE if falls else _PULLED if vector.pulls else 0.0
        tails = [] if turned else [(spot, _PRESSED if vector.presses else 0.0)]
        if not vector.leaves:
            tails.append((spot - unit * self.ring - step, ends))
        for shift in _ASIDE if self.radius else ():
            bent = math.sqrt(max(self.ring**2 - shift**2, 0.0))
            beyond = spot + unit * (bent if self.ring else self.radius)
            tails += [(beyond + unit * 1j * side, _BESIDE + 3 * shift) for side in (shift, -shift)]
        for each in self.placed:
            past = dot(each.arrow.head - spot, unit)
            aside = abs(((each.arrow.head - spot) / unit).imag)
            if past > 0 and aside < 6.0:
                tails.append((spot + unit * (past + 5.0), _FURTHER + past))
        tails.sort(key=lambda tail: tail[1])
        for tail, cost in tails:
            yield Arrow(tail, tail + step, HEAVY, Tag(What.FORCE, vector.id)), cost

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
            for outline in self.outlines
            for a, b in pairwise(outline)
        )
        if along:
            return _ALONG_BODY
        closed = [each for each in self.outlines if len(each) > 3 and each[0] == each[-1]]
        falls = arrow.head.imag < arrow.tail.imag and abs((arrow.head - arrow.tail).real) < 0.01
        inside = not falls and any(encloses(each[1:], middle) for each in closed)
        return _IN_SOLID if inside else 0.0


def particle_radius(forces: Sequence[Vector]) -> float:
    """Large enough for all arrows that go side by side to begin in it, pt."""
    alike = any(apart(a.direction, b.direction) < 12.0 for a, b in combinations(forces, 2))
    return _LARGE_PARTICLE if alike else _PARTICLE


def _edge(arrow: Arrow, side: Arrow, tag: Tag) -> Path:
    """The side of a rectangle about an arrow that is opposite to one of its components."""
    step = side.head - side.tail
    opposite = arrow.tail if abs(side.tail - arrow.tail) > 0.5 else arrow.head - step
    return Path(((opposite, opposite + step),), _DOTTED, tag)


def _clash(one: Arrow, other: Arrow) -> float:
    """What two arrows' nearness costs: lying on each other most, crossing some."""
    a, b, c, d = one.tail, one.head, other.tail, other.head
    if not _adjoin(a.real, b.real, c.real, d.real) or not _adjoin(a.imag, b.imag, c.imag, d.imag):
        return 0.0
    turn = apart(bearing(b - a), bearing(d - c))
    if min(turn, 180.0 - turn) < 12.0:
        if turn > 90.0 and abs(a - c) < 1.0:  # opposed
            return 0.0
        near = _nearness(a, b, c, d)
        if near >= _CLOSE:
            return 0.0
        return _CROWDED if near >= _APART or _in_line(one, other) else 100.0
    if min(abs(a - c), abs(a - d), abs(b - c), abs(b - d)) < 1.0:
        return 0.0
    crossed = crosses((a.real, a.imag, b.real, b.imag), (c.real, c.imag, d.real, d.imag))
    # An upright component may begin on another arrow; beside a level one its symbol meets that.
    upright = one.pen == DASHED and abs((b - a).real) < abs((b - a).imag)
    begins = upright and distance(a, c, d) < 1.0
    return _CROSSED if crossed and not begins else _TOUCHED if _nearness(a, b, c, d) < 4.0 else 0.0


def _nearness(a: Spot, b: Spot, c: Spot, d: Spot) -> float:
    """How near the ends of either of two straight pieces are to the other one."""
    return min(distance(a, c, d), distance(b, c, d), distance(c, a, b), distance(d, a, b))


def _in_line(one: Arrow, other: Arrow) -> bool:
    """Whether one of two arrows that run alike begins where the other ends, or beyond that."""
    way = (one.head - one.tail) / abs(one.head - one.tail)
    ends = [dot(end - one.tail, way) for end in (other.tail, other.head)]
    return max(ends) < 0.5 or min(ends) > abs(one.head - one.tail) - 0.5


def _adjoin(a: float, b: float, c: float, d: float) -> bool:
    """Whether the stretch from a to b comes near the one from c to d."""
    low, high = (a, b) if a < b else (b, a)
    first, last = (c, d) if c < d else (d, c)
    return high + _CLOSE > first and last + _CLOSE > low


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
