"""The letters of a free-body diagram: of its forces beside their arrows, of points beside them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import chain, permutations
from typing import Final

from probgen.figures.freebody.arrows import Placed, distance
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import GAP, around
from probgen.figures.paper.scene import FINE, Arrow, Box, Label, Spot, Text, bearing, line
from probgen.figures.paper.segment import crosses
from probgen.figures.paper.tag import Tag, What
from probgen.quantities.expression import Name

_SMALL: Final = 7.5  # size of the letters of points, pt
_NEAR: Final = 12.0  # how far from its point a letter is first tried, pt
_TOGETHER: Final = 5.0  # points so near each other share the place their letters have, pt
_AT: Final = 1.0  # so near a point an arrow is one of a force there, pt
_LED: Final = 40.0  # how far from it with a line to it, pt
_OFF: Final = GAP + 0.1  # between a letter and the line to its point, pt
_HEMMED: Final = 15.0  # so near another arrow leaves no room for a symbol on its side, pt
_BY: Final = 8.0  # how far from an arrow with components before past its head, pt
_RANKS: Final = tuple(permutations(range(3)))  # in what order `_leg` a force and its components are
_ALONG: Final = (0.5, 0.75, 0.25, 0.95, 0.05)  # where beside a component its symbol may begin
_BESIDE: Final = 30.0  # how far from its arrow a symbol is first tried, pt

_Named = tuple[float, int, list[Label]]


def _leader(box: Box, spot: Spot) -> tuple[Spot, Spot]:
    """Where a line from a letter to its point begins and ends."""
    return box.grown(_OFF).nearest(spot), spot


def _long(placed: Placed) -> float:
    return abs(placed.arrow.head - placed.arrow.tail)


def _shafts(placed: Iterable[Placed]) -> list[tuple[Spot, Spot]]:
    return [(each.arrow.tail, each.arrow.head) for each in placed]


def _between(arrow: Arrow, arrows: Sequence[Arrow]) -> bool:
    """Whether others run close by on both sides of it."""
    way = arrow.head - arrow.tail
    middle = arrow.tail + 0.7 * way
    near = (o for o in arrows if o is not arrow and distance(middle, o.tail, o.head) < _HEMMED)
    sides = [((other.head - middle) / way).imag for other in near]
    return min(sides, default=0.0) < 0.0 < max(sides, default=0.0)


def _gap(box: Box, start: Spot, end: Spot) -> float:
    """From a box to a straight piece that does not run through it."""
    left, bottom, right, top = box
    corners = (complex(x, y) for x in (left, right) for y in (bottom, top))
    to_ends = (abs(box.nearest(spot) - spot) for spot in (start, end))
    return min(*(distance(corner, start, end) for corner in corners), *to_ends)


def _cross(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> bool:
    (a, b), (c, d) = one, other
    return crosses((a.real, a.imag, b.real, b.imag), (c.real, c.imag, d.real, d.imag))


def _leg(placed: Placed) -> int:
    """0 for a force, 1 for its component that lies level, 2 for any other one."""
    way = placed.arrow.head - placed.arrow.tail
    return placed.component + (placed.component and abs(way.imag) > 0.1 * abs(way))


def _abreast(box: Box, own: Placed, placed: Iterable[Placed]) -> bool:
    """Whether a box is beside a component, not past its ends, that is called by a letter or begins
    on another force's arrow: there by its head it may be as near to what ends there too.
    """
    start, way = own.arrow.tail, own.arrow.head - own.arrow.tail
    shafts = (each.arrow for each in placed if own.component and own.of not in _ids(each))
    begins = any(
        distance(start, other.tail, other.head) < 1.0 and abs(start - other.tail) > 1.0
        for other in shafts
    )
    short = own.vector == own.vector.in_short and own.vector.brief
    return bool(begins or short) and 0.0 < ((box.centre - start) / way).real < 1.0


def _ids(placed: Placed) -> tuple[str, str]:
    """The ids of the force an arrow shows, and of the one that is a component of."""
    return placed.vector.id, placed.of


def _misplaced(box: Box, own: Placed, placed: Sequence[Placed]) -> float:
    """How far a symbol is off beyond what is usual, pt; more where it stands by another side of the
    rectangle about a force as well as by the component it names.
    """
    away = _gap(box, own.arrow.tail, own.arrow.head)
    sides = _other_sides(own, placed) if own.component else ()
    due = away + (-0.5 if _abreast(box, own, placed) else 0.5)
    unclear = any(_gap(box, *side) < due for side in sides)
    return max(away - _BY, 0.0) + (_BY if unclear else 0.0)


def _other_sides(own: Placed, placed: Sequence[Placed]) -> Iterator[tuple[Spot, Spot]]:
    """The sides but its own of the rectangle a component belongs to."""
    wholes = [each.arrow for each in placed if each.vector.id == own.of]
    for leg in (each for each in placed if wholes and each.of == own.of):
        step = leg.arrow.head - leg.arrow.tail
        for start in (wholes[0].tail, wholes[0].head - step):
            if leg is not own or abs(start - own.arrow.tail) > 0.5:
                yield start, start + step


class Lettering:
    """Sets letters on the paper and counts those that have no place near what they name."""

    def __init__(self, field: Field) -> None:
        self.field = field
        self.strained = 0

    def name_arrows(
        self, placed: Sequence[Placed], spots: Sequence[Spot], radius: float = 0.0
    ) -> None:
        """The symbol of each arrow, nearer to it than to any other; spots: where forces act;
        radius: of a particle's ring about the one there is, pt.
        """
        arrows = [each.arrow for each in placed]

        def choice(own: Placed) -> tuple[bool, bool, float]:
            """A force comes first; one between two others, or a short one, has the least choice."""
            return own.component, not _between(own.arrow, arrows), _long(own)

        usual = sorted(placed, key=choice)
        best = self._best(usual, spots, radius)
        if best[1]:  # a long symbol has no place: components are called by letters
            short = [replace(own, vector=own.vector.in_short) for own in usual]
            if short != usual:
                best = min(best, self._best(short, spots, radius), key=lambda trial: trial[1])
        _, strained, labels = best
        self.strained += strained
        self.field.add(*labels)

    def _best(self, usual: Sequence[Placed], spots: Sequence[Spot], radius: float) -> _Named:
        """The symbols of arrows where they sit best, as `_named`: set in the usual order, or, where
        that is not good and there are components, in any.
        """
        best = self._named(usual, spots, radius)
        for ranks in _RANKS if best[0] and any(own.component for own in usual) else ():
            turned = sorted(usual, key=lambda own: ranks[_leg(own)])
            best = min(best, self._named(turned, spots, radius), key=lambda trial: trial[:2])
        return best

    def _named(self, order: Sequence[Placed], spots: Sequence[Spot], radius: float) -> _Named:
        """The symbols of arrows set one after the other: how badly they sit (pt), how many have no
        place near their arrow, and the labels.
        """
        trial = Lettering(self.field.trial())
        labels, off = [], 0.0
        for each in order:
            # An arrow that ends at its point is labelled beside it, not beyond the body.
            ends = any(abs(each.arrow.head - spot) < radius + 1.0 for spot in spots)
            label = trial._name_arrow(each, ends, [other for other in order if other is not each])
            labels.append(label)
            off += _misplaced(label.box, each, order)
        return off, trial.strained, labels

    def _name_arrow(self, each: Placed, ends: bool, others: Sequence[Placed]) -> Label:
        arrow, vector, leg = each.arrow, each.vector, each.component
        name = vector.label
        along = bearing(arrow.head - arrow.tail)
        near = arrow.tail + (arrow.head - arrow.tail) * (0.5 if leg else 0.7)
        tip = (arrow.tail, along + 180.0) if ends else (arrow.head, along)
        beside = [(near, along - 90.0), (near, along + 90.0)]
        # A component's head may be that of the whole: it is labelled at its side.
        anchors: list[tuple[Spot, float]] = [*beside, tip] if leg else [tip, *beside]
        shaft, whole = (arrow.tail, arrow.head), each.of or vector.id
        rest = [other for other in others if whole not in (other.of, other.vector.id)]
        close, own = (
            self._nearest(around(name, anchors, farthest=away), shaft, _shafts(others))
            for away in (_BY, _BESIDE)
        )
        # Past its head a symbol is as near to a force's other arrows there, and yet its own.
        reach = _BY if leg else _BESIDE
        past = self._nearest(around(name, [tip], farthest=reach), shaft, _shafts(rest))
        parted = past if len(rest) < len(others) else ()
        edged = self._by_edge(name, each, others) if leg else ()
        boxes = chain(close, parted, edged, own, self._strained(around(name, anchors)))
        return self.field.place(name, boxes, Tag(What.LABEL, vector.id))

    @staticmethod
    def _by_edge(name: Text, own: Placed, others: Sequence[Placed]) -> Iterator[Box]:
        """The boxes close by a component whose edge is nearer to it than to all other arrows: those
        of a long symbol, the middle of which is past the end of a short arrow.
        """
        tail, way = own.arrow.tail, own.arrow.head - own.arrow.tail
        along = bearing(way)
        beside = [(tail + share * way, along + turn) for share in _ALONG for turn in (90, -90)]
        ends = (own.arrow.head, along), (tail, along + 180.0)
        for box in around(name, [*beside, *ends], farthest=_BY):
            away = _gap(box, tail, own.arrow.head)
            abreast = _abreast(box, own, others)
            if all(
                _gap(box, other.arrow.tail, other.arrow.head)
                > away + (-0.5 if abreast and other.vector.id == own.of else 0.5)
                for other in others
            ):
                yield box

    def name_points(self, letters: Mapping[str, Spot], clear: Mapping[Spot, float]) -> None:
        """The letter of each point, small, also of several in one place; clear: how far off, pt."""
        for point, spot in letters.items():
            name = Name(point, point)
            anchors = [(spot, d) for d in (225.0, 135.0, 315.0, 45.0, 90.0, 270.0)]
            apart = (other for other in letters.values() if abs(other - spot) > _TOGETHER)
            others = [(other, other) for other in apart]
            seen, near = (
                self._nearest(
                    around(name, anchors, clear[spot], _SMALL, farthest=_NEAR), (spot, spot), others
                )
                for _ in range(2)
            )
            own = chain(self._in_view(spot, seen), near)
            led = self._led(spot, around(name, anchors, clear[spot], _SMALL, farthest=_LED))
            anywhere = self._strained(around(name, anchors, clear[spot], _SMALL))
            label = self.field.place(
                name, chain(own, led, anywhere), Tag(What.LETTER, point), _SMALL
            )
            if abs(label.box.nearest(spot) - spot) > clear[spot] + _NEAR:
                self.field.add(line(*_leader(label.box, spot), FINE, Tag(What.LEADER, label.tag)))

    def _in_view(self, spot: Spot, boxes: Iterable[Box]) -> Iterator[Box]:
        """The boxes with no arrow between them and a point, but those of forces at that point."""
        arrows = [
            (arrow.tail, arrow.head)
            for arrow in self.field.arrows
            if distance(spot, arrow.tail, arrow.head) > _AT
        ]
        for box in boxes:
            if not any(_cross((spot, box.centre), arrow) for arrow in arrows):
                yield box

    def _led(self, spot: Spot, boxes: Iterable[Box]) -> Iterator[Box]:
        """The free boxes from which a line to a point runs through no label."""
        for box in boxes:
            if self.field.is_free(box) and not self.field.hits_label(*_leader(box, spot)):
                yield box

    @staticmethod
    def _nearest(
        boxes: Iterable[Box], own: tuple[Spot, Spot], others: Sequence[tuple[Spot, Spot]]
    ) -> Iterator[Box]:
        """The boxes that lie nearer to a straight piece than to all others."""
        for box in boxes:
            centre = box.centre
            away = distance(centre, *own)
            if all(distance(centre, *other) > away + 1.0 for other in others):
                yield box

    def _strained(self, boxes: Iterator[Box]) -> Iterator[Box]:
        """The boxes for a label that has no place near what it names, which is counted."""
        self.strained += 1
        yield from boxes
