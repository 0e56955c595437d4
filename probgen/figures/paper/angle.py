"""Angles as a drafter sets them: an arc between two lines, the number beyond the arc."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, product
from typing import Final

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import GAP, around, beside, set_in
from probgen.figures.paper.scene import (
    FINE,
    REFERENCE,
    Arc,
    Box,
    Path,
    Spot,
    Text,
    bearing,
    heading,
    line,
)
from probgen.figures.paper.segment import meets
from probgen.figures.paper.tag import Tag, What

_RADII: Final = (17.0, 21.0, 25.0, 14.0, 30.0, 36.0)
_WIDE_RADII: Final = (44.0, 54.0, 66.0)  # for where nothing nearer will do
_BEYOND: Final = (3.0, 5.0, 8.0)  # how far beyond its arc a number stands, pt
_NARROW: Final = 15.0  # of less than this there is no room between the lines, degrees
_MIDDLE: Final = (0.5,)
_WITHIN: Final = (0.5, 0.4, 0.6, 0.3, 0.7)  # where between its lines a number may stand
_NEAR_END: Final = (0.9, 0.8, 0.7, 0.6, 0.5)  # where along one of more than half a turn
_ASIDE: Final = 8.0  # how far from the end of its arc a number stands that has no room within, pt
_PAST_ARC: Final = 14.0  # how far a reference line runs on beyond its arc, pt
_CHORD: Final = 12.0  # arcs are looked at in straight pieces of about this length, pt
_MEMBER: Final = 4.8  # half the thickness of most of what an angle's lines run in, pt
_MOST_SHORT: Final = 0.35  # of an arc, that may lie within its lines' members at either end
_LEAST_LED: Final = 2.0  # a line from a number to its arc, pt
_CLEAR: Final = 1.5  # between the number and its own lines, pt


@dataclass(frozen=True, slots=True)
class _Corner:
    """An angle to be set: its vertex, where it starts and how far it opens (degrees).

    dashed: its reference line is to be drawn with it.
    """

    at: Spot
    reference: float
    sweep: float
    dashed: bool

    @property
    def reflex(self) -> bool:
        """Whether it is more than half a turn."""
        return abs(self.sweep) > 180.0

    def on(self, radius: float, share: float) -> Spot:
        """The spot some share along the arc."""
        return self.at + radius * heading(self.reference + self.sweep * share)

    def holds(self, spot: Spot) -> bool:
        """Whether a spot lies between the two lines."""
        turn = (bearing(spot - self.at) - self.reference) * math.copysign(1.0, self.sweep)
        return turn % 360.0 < abs(self.sweep)

    def end(self, radius: float) -> Spot:
        """Where the reference line ends."""
        return self.at + heading(self.reference) * (radius + _PAST_ARC)

    def chords(self, radius: float, short: float = 0.0) -> Iterator[tuple[Spot, Spot]]:
        """The arc in straight pieces, short of both ends by a length (pt) if it is long enough."""
        length = math.radians(abs(self.sweep)) * radius
        margin = min(short / length, _MOST_SHORT)
        count = max(2, round(length / _CHORD))
        shares = [margin + (1.0 - 2.0 * margin) * i / count for i in range(count + 1)]
        return pairwise([self.on(radius, share) for share in shares])

    def pieces(self, radius: float) -> list[tuple[Spot, Spot]]:
        """All that is drawn."""
        dashed = [(self.at, self.end(radius))] if self.dashed else []
        return [*self.chords(radius), *dashed]


def draw_angle(
    field: Field,
    at: Spot,
    reference: float,
    direction: float,
    text: Text,
    tag: str,
    *,
    reference_drawn: bool,
    reflex: bool = False,
    others: Sequence[tuple[Spot, Spot]] = (),
) -> None:
    """Add an angle's arc from a reference direction, and its number, within its two lines if it
    has room there.

    The reference line is drawn dashed unless a member already runs there.
    reflex: the angle is more than half a turn, the longer way round.
    others: straight pieces of the arcs of other angles, to none of which the number may be nearer
    if there is another place.
    """
    sweep = _sweep(reference, direction, reflex)
    if abs(sweep) < 0.05:
        return
    corner = _Corner(at, reference, sweep, not reference_drawn)
    radius, box = _setting(field, corner, text, others)
    lines = (reference, direction) if reference_drawn else (direction,)
    arms = [_arm(at, radius, way, tag) for way in lines]
    bare = [arm for arm in arms if _is_bare(field, *arm.lines[0]) and _off(box, *arm.lines[0])]
    field.add(Arc(at, radius, reference, sweep, FINE, Tag(What.ANGLE, tag)))
    if corner.dashed:
        field.add(line(at, corner.end(radius), REFERENCE, Tag(What.REFERENCE, tag)))
    field.add(*bare)
    field.add(set_in(text, box, Tag(What.LABEL, tag)))
    if not corner.holds(box.centre):
        _lead(field, corner, radius, box, tag)


def _lead(field: Field, corner: _Corner, radius: float, box: Box, tag: str) -> None:
    """A thin line to an arc from its number, which stands outside its two lines."""
    end = corner.on(radius, 0.5)
    start = box.grown(GAP + 0.1).nearest(end)
    if abs(end - start) > _LEAST_LED and not field.hits_label(start, end):
        field.add(line(start, end, FINE, Tag(What.LEADER, Tag(What.LABEL, tag))))


def _sweep(reference: float, direction: float, reflex: bool) -> float:
    """How far an angle opens, degrees, negative clockwise."""
    sweep = (direction - reference + 180.0) % 360.0 - 180.0
    return sweep - math.copysign(360.0, sweep) if reflex else sweep


def arc_pieces(
    at: Spot, reference: float, direction: float, reflex: bool = False
) -> list[tuple[Spot, Spot]]:
    """About where the arc of an angle that is not set yet will be, in straight pieces."""
    sweep = _sweep(reference, direction, reflex)
    return list(_Corner(at, reference, sweep, dashed=False).chords(_RADII[0])) if sweep else []


def _setting(
    field: Field, corner: _Corner, text: Text, others: Sequence[tuple[Spot, Spot]]
) -> tuple[float, Box]:
    """The radius of the arc, and the box of its number: the first that strike and hide nothing."""

    def free(radius: float, box: Box) -> bool:
        return field.is_free(box) and all(_off(box, *ends) for ends in corner.pieces(radius))

    def own(radius: float, box: Box) -> bool:
        away = min(_gap(box, *piece) for piece in corner.chords(radius))
        return free(radius, box) and all(_gap(box, *piece) > away for piece in others)

    found = _first(field, corner, text, own) if others else None
    found = found or _first(field, corner, text, free)
    if found:
        return found
    radius = min((*_RADII, *_WIDE_RADII), key=lambda each: _struck(field, corner, each))
    boxes = around(text, _ends(corner, radius))
    return radius, next(box for box in boxes if free(radius, box))


def _first(
    field: Field, corner: _Corner, text: Text, fits: Callable[[float, Box], bool]
) -> tuple[float, Box] | None:
    """The first radius whose arc strikes nothing with a box near it that fits; None for none.

    A number stands between its two lines if there is room, beside the end of its arc if not.
    """
    narrow = abs(corner.sweep) < _NARROW
    further = () if narrow else [each for each in _WIDE_RADII if _reaches(field, corner, each)]
    steps = (*_RADII, *further), _WIDE_RADII
    shares = _NEAR_END if corner.reflex else _MIDDLE if narrow else _WITHIN
    clear: list[float] = []  # an arc through a wall is worse than one with its number outside
    for radii in (_small(field, corner),) if corner.reflex else steps:
        for radius in radii:
            if _struck(field, corner, radius) and not corner.reflex:
                continue
            clear.append(radius)
            for share, distance in product(shares, _BEYOND):
                way = corner.reference + corner.sweep * share
                box = beside(text, corner.at, way, radius + distance)
                if fits(radius, box):
                    return radius, box
        for radius in clear:
            for box in around(text, _ends(corner, radius), farthest=_ASIDE):
                if fits(radius, box):
                    return radius, box
    return None


def _reaches(field: Field, corner: _Corner, radius: float) -> bool:
    """Whether what an angle opens to is drawn as far from its vertex as an arc."""
    (arm,) = _arm(corner.at, radius, corner.reference + corner.sweep, "").lines
    return not _is_bare(field, *arm)


def _small(field: Field, corner: _Corner) -> list[float]:
    """The radii of an arc of more than half a turn, which passes over other lines from its vertex
    and stays small: those that run through no label.
    """
    small = sorted(_RADII)
    return [r for r in small if not any(field.hits_label(*each) for each in corner.pieces(r))]


def _gap(box: Box, start: Spot, end: Spot) -> float:
    """How far a box is from a straight piece, by the piece's ends and middle."""
    spots = (start, (start + end) / 2, end)
    return min(box.gap(Box(s.real, s.imag, s.real, s.imag)) for s in spots)


def _ends(corner: _Corner, radius: float) -> tuple[tuple[Spot, float], tuple[Spot, float]]:
    """The ends of the arc, with the directions it would go on in."""
    outward = 90.0 if corner.sweep > 0 else -90.0
    last = corner.reference + corner.sweep
    first_end, last_end = corner.on(radius, 0.0), corner.on(radius, 1.0)
    return (first_end, corner.reference - outward), (last_end, last + outward)


def _struck(field: Field, corner: _Corner, radius: float) -> int:
    """How many strokes an arc crosses between its two lines, and labels its lines would hide."""
    strokes = sum(field.crossings(*ends) for ends in corner.chords(radius, _MEMBER))
    return strokes + sum(field.hits_label(*ends) for ends in corner.pieces(radius))


def _arm(at: Spot, radius: float, way: float, tag: str) -> Path:
    """A piece of one of an angle's lines about the end of its arc, for where none is drawn."""
    unit = heading(way)
    return line(
        at + unit * (radius - 7.0), at + unit * (radius + 5.0), REFERENCE, Tag(What.ARM, tag)
    )


def _is_bare(field: Field, start: Spot, end: Spot) -> bool:
    """Whether nothing is drawn, and no label set, along a piece or close beside it."""
    across = (end - start) / abs(end - start) * 6j
    middle = (start + end) / 2
    beside = field.crossings(middle - across, middle + across)
    return not beside and not field.hits_label(start, end)


def _off(box: Box, start: Spot, end: Spot) -> bool:
    """Whether a box keeps clear of a straight piece."""
    return not meets((start.real, start.imag, end.real, end.imag), box.grown(_CLEAR))
