"""The arc of an angle: where it runs at a radius, and how well it can be seen there."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.cover import behind
from probgen.figures.paper.scene import Arrow, Box, Spot, bearing, heading
from probgen.figures.paper.segment import crosses

RADII: Final = (14.0, 17.0, 21.0, 25.0, 30.0, 36.0, 44.0, 54.0, 66.0)
"""What an arc's radius is chosen from, pt."""

SMALL: Final = 36.0
"""The largest radius that is no trouble, pt."""

NARROW: Final = 15.0
"""Of less than this there is no room between an angle's lines, degrees."""

_USUAL: Final = 17.0  # the radius of an arc that can be seen well enough there, pt
_LARGER: Final = 0.3  # what each pt costs that it is larger or smaller, and
_WIDE: Final = 0.1  # what it costs more beyond a small one
_LEAST: Final = 6.0  # how long an arc is that is seen at once, pt
_OUT: Final = 0.1  # how much of one is seen at least beside a member, pt
_TICK: Final = 2.0  # less than this of one looks like a stray stroke, pt
_UNSEEN: Final = 20.0  # what that costs
_SHORTER: Final = 4.0  # what each pt costs that it is shorter
_PASSING: Final = 0.5  # what it costs more of one that passes over other lines from its vertex
_STRUCK: Final = 14.0  # what it costs to cross a stroke
_HEAD: Final = 40.0  # to run through the head of an arrow
_HIDDEN: Final = 200.0  # to run through a label
_BARE: Final = 30.0  # to end where no line is drawn, and a piece of one has to be
_ACROSS: Final = 14.0  # to cross the arc of another angle, besides what crossing it costs
_BESIDE: Final = 8.0  # to come close to another arc, or to go on where that ends
_ALONG: Final = 20.0  # to run along an edge
_PAST_EDGE: Final = 7.0  # each stroke between its vertex and its middle
_PAST_ARC: Final = 14.0  # how far a reference line runs on beyond its arc, pt
_PAST_END: Final = 7.0  # the same where no number stands beside it
_SHORT: Final = 7.0  # how far before its arc a piece of a line begins where none is drawn, pt,
_PAST: Final = 5.0  # and how far beyond it ends
_FROM: Final = 2.0  # from what is drawn to where such a piece begins at the earliest, pt
_TIP: Final = 2.5  # how far from an arrow's head it is clear of it, pt
_CHORD: Final = 8.0  # arcs are looked at in straight pieces of about this length, pt
_MEMBER: Final = 4.8  # half the thickness of most of what an angle's lines run in, pt
_MOST_SHORT: Final = 0.2  # of an arc, that may lie within its lines' members at either end
_AS_ONE: Final = 1.0  # strokes so near each other are seen as one line, pt
_NEAR: Final = 4.0  # arcs so near each other are not easily told apart, pt
_RIM: Final = 3.5  # an edge so near an arc looks like it, pt


@dataclass(frozen=True, slots=True)
class Corner:
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

    @property
    def behind(self) -> Corner:
        """The equal angle on the other side of its vertex."""
        return replace(self, reference=self.reference + 180.0)

    def length(self, radius: float) -> float:
        """That of its arc at a radius, pt."""
        return math.radians(abs(self.sweep)) * radius

    def on(self, radius: float, share: float) -> Spot:
        """The spot some share along the arc."""
        return self.at + radius * heading(self.reference + self.sweep * share)

    def holds(self, spot: Spot) -> bool:
        """Whether a spot lies between the two lines."""
        turn = (bearing(spot - self.at) - self.reference) * math.copysign(1.0, self.sweep)
        return turn % 360.0 < abs(self.sweep)

    def holds_all(self, box: Box) -> bool:
        """Whether a box does, with all its corners."""
        left, bottom, right, top = box
        return all(self.holds(complex(x, y)) for x in (left, right) for y in (bottom, top))

    def end(self, radius: float, within: bool = True) -> Spot:
        """Where the reference line ends; within: the number stands between the lines."""
        past = _PAST_ARC if within else _PAST_END
        return self.at + heading(self.reference) * (radius + past)

    def chords(self, radius: float, short: float = 0.0) -> Iterator[tuple[Spot, Spot]]:
        """The arc in straight pieces, short of both ends by a length (pt) if it is long enough."""
        length = self.length(radius)
        margin = min(short / length, _MOST_SHORT)
        count = max(2, round(length / _CHORD))
        shares = [margin + (1.0 - 2.0 * margin) * i / count for i in range(count + 1)]
        return pairwise([self.on(radius, share) for share in shares])

    def pieces(self, radius: float) -> list[tuple[Spot, Spot]]:
        """All that is drawn."""
        dashed = [(self.at, self.end(radius))] if self.dashed else []
        return [*self.chords(radius), *dashed]

    def bare_arms(self, field: Field, radius: float) -> list[tuple[Spot, Spot]]:
        """Each of its lines that is not drawn as far as the arc, from where something is."""
        ways = [self.reference + self.sweep, *(() if self.dashed else (self.reference,))]
        units = [heading(way) for way in ways]
        arms = [(self.at + u * (radius - _SHORT), self.at + u * (radius + _PAST)) for u in units]
        bare = [arm for arm in arms if _is_bare(field, *arm)]
        return [(self._drawn_to(field, start), end) for start, end in bare]

    def _drawn_to(self, field: Field, spot: Spot) -> Spot:
        """Just past what is met last on the way from the vertex to a spot."""
        length = abs(spot - self.at)
        met = field.ray(self.at, spot).last(length)
        return self.at + (spot - self.at) * min(1.0, (met + _FROM) / length)

    def ease(self, radius: float) -> float:
        """How well the arc is seen whatever else is drawn: 0 where it is long, and yet small."""
        length = self.length(radius)
        cost = _SHORTER * max(0.0, _LEAST - length) + _WIDE * max(0.0, radius - SMALL)
        larger = _LARGER + _PASSING * self.reflex
        return cost + larger * abs(radius - _USUAL)


def trouble(
    field: Field, corner: Corner, radius: float, others: Sequence[tuple[Spot, Spot]]
) -> float:
    """How badly an arc sits among what is drawn; one of more than half a turn cannot but pass over
    other lines from its vertex.
    """
    arms, chords = corner.bare_arms(field, radius), list(corner.chords(radius))
    hidden = sum(field.hits_label(a, b) for a, b in (*corner.pieces(radius), *arms))
    if corner.reflex:
        return _HIDDEN * hidden
    struck = sum(field.crossings(*ends) for ends in corner.chords(radius, _MEMBER))
    heads = sum(_through(corner, radius, s) for s in field.shapes if isinstance(s, Arrow))
    spots = [spot for ends in chords for spot in ends]
    near = [spot for ends in others for spot in _looked_at(*ends)]
    beside = any(abs(spot - other) < _NEAR for spot in spots for other in near)
    across = any(_cross(one, other) for one in chords for other in others)
    cost = _HIDDEN * hidden + _STRUCK * struck + _HEAD * heads + _BARE * len(arms)
    cost += _BESIDE * beside + _ACROSS * across
    cost += _PAST_EDGE * between(field, corner.on(_RIM, 0.5), corner.on(radius, 0.5))
    cost += _covered(field, corner, radius)
    return cost + _ALONG * _along(field, corner, radius)


def _covered(field: Field, corner: Corner, radius: float) -> float:
    """What it costs a narrow arc from a dashed line to lie in the member it ends in, so that less
    of it is seen; nothing where all the angle is drawn within a body.
    """
    if abs(corner.sweep) >= NARROW or not corner.dashed:
        return 0.0
    if _seen(field, corner, SMALL) < _OUT:
        return 0.0
    whole, seen = corner.length(radius), _seen(field, corner, radius)
    shorter = max(_LEAST - seen, 0.0) - max(_LEAST - whole, 0.0)
    return _SHORTER * shorter + _UNSEEN * (seen < _TICK)


def _seen(field: Field, corner: Corner, radius: float) -> float:
    """How much of an arc lies within no body, pt."""
    covers = behind(field.opaque, corner.on(radius, 0.0), corner.on(radius, 1.0))
    return corner.length(radius) - sum(high - low for low, high in covers)


def _along(field: Field, corner: Corner, radius: float) -> bool:
    """Whether an edge runs along an arc, as a rim about the same centre."""
    ticks = [(corner.on(radius - _RIM, i), corner.on(radius + _RIM, i)) for i in (0.3, 0.5, 0.7)]
    return sum(field.crossings(*tick) > 0 for tick in ticks) > 1


def _through(corner: Corner, radius: float, arrow: Arrow) -> bool:
    """Whether an arc runs through the head of an arrow, or ends in it."""
    step = (arrow.head - arrow.tail) / abs(arrow.head - arrow.tail) * arrow.length / 2
    middles = (arrow.head - step, *((arrow.tail + step,) if arrow.both else ()))
    for spot in middles:
        way = spot - corner.at
        if abs(abs(way) - radius) < arrow.length / 2 + _TIP:
            slack = math.degrees(arrow.width / radius)
            turn = (bearing(way) - corner.reference) * math.copysign(1.0, corner.sweep)
            if (turn + slack) % 360.0 < abs(corner.sweep) + 2.0 * slack:
                return True
    return False


def _cross(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> bool:
    (a, b), (c, d) = one, other
    return crosses((a.real, a.imag, b.real, b.imag), (c.real, c.imag, d.real, d.imag))


def between(field: Field, start: Spot, end: Spot) -> int:
    """How many lines are met on the way from one spot to another, those on each other as one."""
    if abs(end - start) < _AS_ONE:
        return 0
    met = sorted(field.ray(start, end).met)
    return sum(b - a > _AS_ONE for a, b in pairwise((-math.inf, *met)))


def _is_bare(field: Field, start: Spot, end: Spot) -> bool:
    """Whether nothing is drawn along a piece or close beside it."""
    across = (end - start) / abs(end - start) * 6j
    middle = (start + end) / 2
    return not field.crossings(middle - across, middle + across)


def gap(box: Box, start: Spot, end: Spot) -> float:
    """How far a box is from a straight piece, by the piece's ends and middle."""
    return min(box.away(spot) for spot in _looked_at(start, end))


def _looked_at(start: Spot, end: Spot) -> tuple[Spot, Spot, Spot]:
    """The spots of a straight piece by which it is near something or not."""
    return start, (start + end) / 2, end
