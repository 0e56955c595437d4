"""The letters of a free-body diagram: of its forces beside their arrows, of points beside them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import chain
from typing import Final

from probgen.figures.freebody.arrows import Placed, distance
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import GAP, around
from probgen.figures.paper.scene import FINE, Arrow, Box, Spot, bearing, line
from probgen.figures.paper.tag import Tag, What
from probgen.quantities.expression import Name

_SMALL: Final = 7.5  # size of the letters of points, pt
_NEAR: Final = 12.0  # how far from its point a letter is first tried, pt
_TOGETHER: Final = 5.0  # points so near each other share the place their letters have, pt
_LED: Final = 40.0  # how far from it with a line to it, pt
_OFF: Final = GAP + 0.1  # between a letter and the line to its point, pt
_HEMMED: Final = 15.0  # so near another arrow leaves no room for a symbol on its side, pt
_BY: Final = 8.0  # how far from an arrow with components before past its head, pt
_BESIDE: Final = 30.0  # how far from its arrow a symbol is first tried, pt


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

        for each in sorted(placed, key=choice):
            # An arrow that ends at its point is labelled beside it, not beyond the body.
            ends = any(abs(each.arrow.head - spot) < radius + 1.0 for spot in spots)
            self._name_arrow(each, ends, [other for other in placed if other is not each])

    def _name_arrow(self, each: Placed, ends: bool, others: Sequence[Placed]) -> None:
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
        boxes = chain(close, parted, own, self._strained(around(name, anchors)))
        self.field.place(name, boxes, Tag(What.LABEL, vector.id))

    def name_points(self, letters: Mapping[str, Spot], clear: Mapping[Spot, float]) -> None:
        """The letter of each point, small, also of several in one place; clear: how far off, pt."""
        for point, spot in letters.items():
            name = Name(point, point)
            anchors = [(spot, d) for d in (225.0, 135.0, 315.0, 45.0, 90.0, 270.0)]
            apart = (other for other in letters.values() if abs(other - spot) > _TOGETHER)
            others = [(other, other) for other in apart]
            near = around(name, anchors, clear[spot], _SMALL, farthest=_NEAR)
            own = self._nearest(near, (spot, spot), others)
            led = self._led(spot, around(name, anchors, clear[spot], _SMALL, farthest=_LED))
            anywhere = self._strained(around(name, anchors, clear[spot], _SMALL))
            label = self.field.place(
                name, chain(own, led, anywhere), Tag(What.LETTER, point), _SMALL
            )
            if abs(label.box.nearest(spot) - spot) > clear[spot] + _NEAR:
                self.field.add(line(*_leader(label.box, spot), FINE, Tag(What.LEADER, label.tag)))

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
