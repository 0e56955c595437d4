"""Angles as a drafter sets them: an arc between two lines, the number beyond the arc.

The radius of the arc and the place of the number are chosen together, by what is seen best.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from typing import Final

from probgen.figures.paper.arc import NARROW, RADII, SMALL, Corner, between, gap, trouble
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import GAP, about, around, beyond, set_in
from probgen.figures.paper.scene import (
    FINE,
    REFERENCE,
    Arc,
    Box,
    Path,
    Shape,
    Spot,
    Text,
    dot,
    heading,
    line,
    segments,
)
from probgen.figures.paper.segment import meets
from probgen.figures.paper.tag import Tag, What
from probgen.figures.paper.type_metrics import extent

_FIRST: Final = 17.0  # about what radius an arc will have, pt
_INNER: Final = (0.2, 0.35, 0.5, 0.65, 0.8)  # where along its arc a number may be nearest to it
_ON_LINE: Final = 1.2  # so near the end of its arc a number is past the line the arc ends at, pt
_NEAREST: Final = 3.0  # how far from its arc a number stands at least, pt
_ASIDE: Final = 17.0  # how far from the end of its arc one stands that has no room within, pt
_OFF: Final = 12.5  # so far from its arc a number has a line to it, pt
_LED_TO: Final = (0.5, 0.65, 0.35, 0.8, 0.2)  # where along its arc that may end
_ACROSS: Final = 0.4  # the least cosine between it and the way from the vertex
_LEAST_LED: Final = 2.0  # a line from a number to its arc, pt
_SAME: Final = 0.1  # spots so near each other are one, pt
_CLEAR: Final = 2.2  # between the number and its own lines, pt

# What a place costs, in the measure of `arc.trouble`: by the share of the arc it is at,
_SHARES: Final = {0.5: 0.0, 0.4: 1.0, 0.6: 1.0, 0.3: 3.0, 0.7: 3.0, 0.2: 5.0, 0.8: 5.0}
_BEYOND: Final = {3.0: 0.0, 5.0: 1.5, 8.0: 4.0, 12.0: 8.0}  # and by how far beyond it, pt
_WITHIN: Final = tuple(
    sorted((_SHARES[i] + _BEYOND[off], i, off) for i, off in product(_SHARES, _BEYOND))
)
_NEAR_END: Final = tuple((2.0 * i, share, 3.0) for i, share in enumerate((0.9, 0.8, 0.7, 0.6, 0.5)))
_BEFORE: Final = 4.0  # between the arc and its vertex
_OVERLAPS: Final = 10.0  # with a corner past one of the lines
_OUTSIDE: Final = 36.0  # not between the lines
_AWAY: Final = 0.8  # each pt from the middle of its arc, outside
_PARTED: Final = 60.0  # each stroke between the number and its arc
_LED_OVER: Final = 9.0  # each stroke that a line to it from outside crosses
_ASTRAY: Final = 18.0  # nearer to the arc of another angle
_TURNED: Final = 3.0  # on the other side of the vertex


@dataclass(frozen=True, slots=True)
class _Mark:
    """An angle's arc and the box of its number."""

    corner: Corner
    radius: float
    box: Box


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
    both_sides: bool = False,
    others: Sequence[tuple[Spot, Spot]] = (),
) -> None:
    """Add an angle's arc from a reference direction, and its number, within its two lines if it
    has room there.

    The reference line is drawn dashed unless a member already runs there.
    reflex: the angle is more than half a turn, the longer way round.
    both_sides: both lines run on beyond the vertex, where the equal angle will do as well.
    others: straight pieces of the arcs of angles to be set, to none of which the number may be
    nearer if there is another place, as to those in the field.
    """
    sweep = _sweep(reference, direction, reflex)
    if abs(sweep) < 0.05:
        return
    corner = Corner(at, reference, sweep, not reference_drawn)
    corners = (corner, corner.behind) if both_sides else (corner,)
    mark = _best(field, corners, text, (*others, *_drawn_arcs(field)))
    corner, radius, box = mark.corner, mark.radius, mark.box
    bare = corner.bare_arms(field, radius)
    within = corner.holds(box.centre)
    field.add(Arc(at, radius, corner.reference, sweep, FINE, Tag(What.ANGLE, tag)))
    begin, end = dashed_to(field.shapes, at, corner.reference), corner.end(radius, within)
    if corner.dashed and abs(begin - at) < abs(end - at):
        field.add(line(begin, end, REFERENCE, Tag(What.REFERENCE, tag)))
    field.add(*(line(*arm, REFERENCE, Tag(What.ARM, tag)) for arm in bare))
    field.add(set_in(text, box, Tag(What.LABEL, tag)))
    if not within or _away(corner, radius, box) > _OFF:
        _lead(field, mark, tag)


def dashed_to(shapes: Iterable[Shape], at: Spot, direction: float) -> Spot:
    """As far as reference lines run already from a vertex in a direction; the vertex where none
    does.  One drawn on another would fill its gaps.
    """
    runs = [s.lines[0] for s in shapes if isinstance(s, Path) and s.tag.what is What.REFERENCE]
    along = [(end - at) / heading(direction) for start, end in runs if abs(start - at) < _SAME]
    reach = max((each.real for each in along if abs(each.imag) < _SAME), default=0.0)
    return at + max(reach, 0.0) * heading(direction)


def _lead(field: Field, mark: _Mark, tag: str) -> None:
    """A thin line to an arc from its number, which stands outside its two lines or far off."""
    wide = mark.box.grown(GAP + 0.1)
    ends = [mark.corner.on(mark.radius, share) for share in _LED_TO]
    # It meets the arc and does not run along it.
    end = next((e for e in ends if _meets(mark.corner, wide.nearest(e), e)), ends[0])
    start = wide.nearest(end)
    if abs(end - start) > _LEAST_LED and not field.hits_label(start, end):
        field.add(line(start, end, FINE, Tag(What.LEADER, Tag(What.LABEL, tag))))


def _meets(corner: Corner, start: Spot, end: Spot) -> bool:
    """Whether a line to a spot on an arc comes well across it."""
    way, across = end - start, end - corner.at
    return abs(dot(way, across)) > _ACROSS * abs(way) * abs(across)


def _sweep(reference: float, direction: float, reflex: bool) -> float:
    """How far an angle opens, degrees, negative clockwise."""
    sweep = (direction - reference + 180.0) % 360.0 - 180.0
    return sweep - math.copysign(360.0, sweep) if reflex else sweep


def arc_pieces(
    at: Spot, reference: float, direction: float, reflex: bool = False
) -> list[tuple[Spot, Spot]]:
    """About where the arc of an angle that is not set yet will be, in straight pieces."""
    sweep = _sweep(reference, direction, reflex)
    return list(Corner(at, reference, sweep, dashed=False).chords(_FIRST)) if sweep else []


def _drawn_arcs(field: Field) -> list[tuple[Spot, Spot]]:
    """The arcs of the angles that are set, in straight pieces."""
    arcs = [s for s in field.shapes if isinstance(s, Arc) and s.tag.what is What.ANGLE]
    return [(complex(a, b), complex(c, d)) for arc in arcs for a, b, c, d in segments(arc)]


def _best(
    field: Field, corners: Sequence[Corner], text: Text, others: Sequence[tuple[Spot, Spot]]
) -> _Mark:
    """The mark that is seen best, of those whose number touches nothing."""
    best, least = None, math.inf
    sides = tuple(enumerate(corners))
    trials = [(_TURNED * i + c.ease(r), i, r) for (i, c), r in product(sides, RADII)]
    for ease, i, radius in sorted(trials):
        if ease >= least:
            break
        corner = corners[i]
        arc = ease + trouble(field, corner, radius, others)
        if arc >= least:
            continue
        own = _pieces(field, corner, radius)
        for cost, box in _places(corner, radius, text):
            if cost >= _OUTSIDE and arc + _OUTSIDE >= least:
                break
            if arc + cost >= least or not _is_free(field, box, own):
                continue
            whole = arc + _cost(field, corner, radius, box, others, cost)
            if whole < least:
                best, least = _Mark(corner, radius, box), whole
    return best or _anywhere(field, corners[0], text, others)


def _anywhere(
    field: Field, corner: Corner, text: Text, others: Sequence[tuple[Spot, Spot]]
) -> _Mark:
    """The mark where the paper is so full that its number has no place near it."""
    small = [radius for radius in RADII if radius <= SMALL]
    radius = min(small, key=lambda r: corner.ease(r) + trouble(field, corner, r, others))
    boxes, own = around(text, _ends(corner, radius)), _pieces(field, corner, radius)
    return _Mark(corner, radius, next(box for box in boxes if _is_free(field, box, own)))


def _places(corner: Corner, radius: float, text: Text) -> Iterator[tuple[float, Box]]:
    """Where a number may stand, outside last, and the least that costs."""
    room = extent(text)
    width, height = room.width, room.height + room.depth
    if corner.reflex or abs(corner.sweep) >= NARROW:
        for cost, share, off in _NEAR_END if corner.reflex else _WITHIN:
            unit = heading(corner.reference + corner.sweep * share)
            yield cost, beyond(corner.at, unit, radius + off, width, height)
    if NARROW <= abs(corner.sweep) < 180.0:
        yield _BEFORE, _before(corner, radius, width, height)
    middle = corner.on(radius, 0.5)
    for box in around(text, _ends(corner, radius), farthest=_ASIDE):
        yield _OUTSIDE + _AWAY * abs(box.nearest(middle) - middle), box


def _before(corner: Corner, radius: float, width: float, height: float) -> Box:
    """Between an arc and its vertex, close to the arc."""
    unit = heading(corner.reference + corner.sweep / 2)
    half = abs(unit.real) * width / 2 + abs(unit.imag) * height / 2
    return about(corner.at + unit * (radius - _NEAREST - half), width, height)


def _cost(
    field: Field,
    corner: Corner,
    radius: float,
    box: Box,
    others: Sequence[tuple[Spot, Spot]],
    cost: float,
) -> float:
    """What a place costs, that costs so much at least."""
    within = corner.holds(box.centre)
    if within and not corner.reflex and not corner.holds_all(box):
        cost += _OVERLAPS
    met = _between(field, corner, radius, box, within)
    # From outside a line to the arc crosses the edge of what is drawn along the angle's line.
    cost += _PARTED * met if within else _LED_OVER * met + _PARTED * max(0, met - 1)
    away = _away(corner, radius, box)
    return cost + _ASTRAY * any(gap(box, *piece) <= away for piece in others)


def _pieces(field: Field, corner: Corner, radius: float) -> list[tuple[Spot, Spot]]:
    """All that is drawn of an angle but its number."""
    return [*corner.pieces(radius), *corner.bare_arms(field, radius)]


def _away(corner: Corner, radius: float, box: Box) -> float:
    """How far a number is from its arc, pt."""
    return min(gap(box, *piece) for piece in corner.chords(radius))


def _between(field: Field, corner: Corner, radius: float, box: Box, within: bool) -> int:
    """How many lines there are between a number and what of its arc it is nearest to, which is one
    of the arc's ends where the number stands outside.
    """
    shares = _INNER if within else (0.0, 1.0)
    spots = [corner.on(radius, share) for share in shares]
    nearest = min(spots, key=lambda spot: abs(box.nearest(spot) - spot))
    way = box.nearest(nearest) - nearest
    short = 0.0 if within or not way else _ON_LINE * way / abs(way)
    return between(field, nearest + way, nearest + short)


def _is_free(field: Field, box: Box, own: Sequence[tuple[Spot, Spot]]) -> bool:
    """Whether a number strikes and hides nothing, and keeps clear of its own lines."""
    if not field.is_free(box):
        return False
    wide = box.grown(_CLEAR)
    return not any(meets((a.real, a.imag, b.real, b.imag), wide) for a, b in own)


def _ends(corner: Corner, radius: float) -> tuple[tuple[Spot, float], tuple[Spot, float]]:
    """The ends of the arc, with the directions it would go on in."""
    outward = 90.0 if corner.sweep > 0 else -90.0
    last = corner.reference + corner.sweep
    first_end, last_end = corner.on(radius, 0.0), corner.on(radius, 1.0)
    return (first_end, corner.reference - outward), (last_end, last + outward)
