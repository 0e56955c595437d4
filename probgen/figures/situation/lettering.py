"""Labels of a situation: each nearer to its own thing than to any other, else with a line to it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import chain, islice
from typing import Final

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import GAP, around
from probgen.figures.paper.scene import (
    FINE,
    Arrow,
    Box,
    Label,
    Segment,
    Shape,
    Spot,
    bounds,
    circle,
    line,
)
from probgen.figures.paper.segment import meets
from probgen.figures.paper.tag import Tag, What
from probgen.figures.situation.carried import Note
from probgen.quantities.expression import Name

_NEAR: Final = 8.0  # how far from its thing a label is first tried, pt
BY: Final = 23.0  # how far from it where no extension line is expected, pt
_FAR: Final = 40.0  # how far from it at most as long as nothing else is nearer, pt
_LONG: Final = 110.0  # how far from it at most with a line to it, pt
OFF: Final = 14.0  # from a thing to a label that needs a line to it, pt
_ASTRAY: Final = 12.0  # from a body to the letter of a point that needs one, pt
_STOUT: Final = 9.0  # half the thickness of a body with room for letters within, pt
_POINT: Final = 1.2  # radius of the dot at a point where nothing else is, pt
_CLEAR: Final = GAP + 0.1  # between a label and the line to its thing, pt
_SHORTEST: Final = 2.0  # a line to a thing that is drawn, pt
_OTHERS: Final = ((What.LOAD, 1), (What.BODY, 2), (What.MUSCLE, 1))  # and edges a line may not meet
THIN: Final = (What.REFERENCE, What.ARM, What.DIMENSION, What.CABLE, What.ROPE, What.FORCE)
"""What hides a point from its letter."""

_BESIDE: Final = 6.0  # how far a letter beside its point's support is from that, pt
_BROAD: Final = 60.0  # width of what is no single point's support, pt
_AT: Final = 1.5  # so near a point a stroke is at it and hides nothing, pt
_VIEW: Final = 12.0  # how far from its point a letter is tried where nothing is between, pt
_MARGIN: Final = 2.0  # by how much a label is nearer to its own thing than to any other, pt


def set_notes(
    field: Field, notes: Sequence[Note], things: Sequence[Box], strips: Sequence[Segment]
) -> None:
    """The labels of loads and forces.

    things: the rectangles around all that could be meant; strips: what is left free if it can be.
    """
    for note in notes:
        near = _clear(strips, around(note.text, note.anchors, farthest=_NEAR))
        anywhere = around(note.text, note.anchors)
        if note.thing is None:
            _set_by_arrow(field, note, chain(near, anywhere))
            continue
        others = [thing for thing in things if thing != note.thing]
        by, far, across = (
            around(note.text, note.anchors, farthest=away) for away in (BY, _FAR, _FAR)
        )
        own_first = partial(nearer, field, note.thing, others)
        beside = _past_others(field, note.thing, own_first(chain(_clear(strips, by), far)))
        own = leadable(field, note.thing, chain(own_first(near), beside))
        led, again = (
            _with_line(field, note.thing, around(note.text, note.anchors, farthest=_LONG))
            for _ in range(2)
        )
        clear = _past_others(field, note.thing, led)
        past = leadable(field, note.thing, own_first(across))
        label = field.place(note.text, chain(own, clear, past, again, anywhere), note.tag)
        lead_if_far(field, label, note.thing, others)


def _set_by_arrow(field: Field, note: Note, boxes: Iterable[Box]) -> None:
    """A label in the first free box; if that is nearer to another force's arrow than to the one
    it names, in the first that is not, with a line to it from far off.
    """
    arrows = [s for s in field.shapes if isinstance(s, Arrow) and s.tag.what is What.FORCE]
    own = [bounds([s]) for s in arrows if s.tag.of == note.tag.of]
    others = [bounds([s]) for s in arrows if s.tag.of != note.tag.of]
    first = next(box for box in boxes if field.is_free(box))
    astray = own and any(first.gap(other) <= first.gap(own[0]) for other in others)
    far = around(note.text, note.anchors, farthest=_FAR) if astray else ()
    own_first = nearer(field, own[0], others, far) if astray else ()
    label = field.place(note.text, chain(own_first, (first,)), note.tag)
    if astray and label.box.gap(own[0]) > BY:
        _lead(field, label, own[0])


@dataclass(frozen=True, slots=True)
class Lettered:
    """A point's letter and spot, and half the thickness (pt) of what it is on."""

    letter: str
    spot: Spot
    half: float = 0.0


def set_letters(field: Field, points: Mapping[str, Lettered], bare: Collection[str]) -> None:
    """The letters of points, by their ids.

    bare: those at which nothing is drawn; they have a dot.
    """
    for point, each in points.items():
        if point in bare:
            field.add(circle(each.spot, _POINT, FINE, Tag(What.POINT, point), filled=True))
    centres = _centres(field)
    for point, each in points.items():
        spot, half = each.spot, each.half
        name, own = Name(point, each.letter), _dot(spot)
        above = tuple((spot, direction) for direction in (135.0, 45.0, 90.0))
        below = tuple((spot, direction) for direction in (225.0, 315.0, 270.0))
        dots = [_dot(p.spot) for p in points.values() if abs(p.spot - spot) > 1.0]
        others = [*dots, *(box for box in centres if abs(box.centre - spot) > 1.0)]
        seen = _in_view(field, spot, around(name, (*above, *below), half, farthest=_VIEW))
        near = around(name, above, half, farthest=_NEAR)
        first = _in_view(field, spot, around(name, above, half, farthest=_NEAR))
        further = around(name, (*above, *below), half, farthest=_FAR)
        # Within a stout body there is room beside the point itself.
        within = around(name, (*above, *below), farthest=_NEAR) if half > _STOUT else ()
        astray = _ASTRAY if half > _STOUT else half + _ASTRAY
        close = nearer(field, own, others, chain(within, first, seen, near))
        held = _supports_at(field, spot)
        again = around(name, below, half, farthest=_VIEW)
        by_it = list(islice(_beside(field, held, others, _in_view(field, spot, again)), 1))
        far = nearer(field, own, others, further)
        nearest = leadable(field, own, chain(close, by_it, far), astray)
        led = _with_line(field, own, around(name, (*above, *below), half, farthest=_LONG))
        clear = (box for box in led if not _over_any(line_to(box, own), dots))
        boxes = chain(nearest, clear, around(name, (*above, *below), half))
        label = field.place(name, boxes, Tag(What.LETTER, point))
        away = 0.0 if label.box in by_it else label.box.gap(own)
        if away > astray or (away > _ASTRAY and any(label.box.gap(dot) <= away for dot in dots)):
            _lead(field, label, own)


def _supports_at(field: Field, spot: Spot) -> list[Box]:
    """The rectangles around the supports at a point."""
    found = (bounds(drawn) for drawn in _by_tag(field, What.SUPPORT).values())
    return [box for box in found if box.away(spot) < _POINT + _AT and box.width < _BROAD]


def _beside(
    field: Field, held: Sequence[Box], others: Sequence[Box], boxes: Iterable[Box]
) -> Iterator[Box]:
    """The boxes close beside a point's support, and nearer to that than to all other points."""
    for box in boxes:
        away = min((box.gap(each) for each in held), default=_BESIDE)
        if away < _BESIDE and all(box.gap(other) > away + _MARGIN for other in others):
            yield box


def lead_if_far(field: Field, label: Label, thing: Box, others: Sequence[Box]) -> None:
    """A thin line from a label to its thing where it is far from that, or as near to another."""
    away = label.box.gap(thing)
    if away > OFF or any(label.box.gap(other) <= away for other in others):
        _lead(field, label, thing)


def _lead(field: Field, label: Label, thing: Box) -> None:
    """A thin line from a label to its thing, unless it would run through another label."""
    start, end = line_to(label.box, thing)
    if abs(end - start) > _SHORTEST and not field.hits_label(start, end):
        field.add(line(start, end, FINE, Tag(What.LEADER, label.tag)))


def line_to(box: Box, thing: Box) -> tuple[Spot, Spot]:
    """Where a line from a label's box to its thing begins and ends."""
    end = thing.nearest(box.centre)
    return box.grown(_CLEAR).nearest(end), end


def leadable(field: Field, thing: Box, boxes: Iterable[Box], off: float = OFF) -> Iterator[Box]:
    """The boxes beside a thing, and those further off from which a line to it can be drawn."""
    for box in boxes:
        if box.gap(thing) <= off or not field.hits_label(*line_to(box, thing)):
            yield box


def _with_line(field: Field, thing: Box, boxes: Iterable[Box]) -> Iterator[Box]:
    """The free boxes from which a line to the thing runs through no label."""
    for box in boxes:
        if field.is_free(box) and not field.hits_label(*line_to(box, thing)):
            yield box


def _over_any(ends: tuple[Spot, Spot], points: Sequence[Box]) -> bool:
    """Whether a straight piece passes over one of several points."""
    (start, end), wide = ends, [point.grown(_AT) for point in points]
    return any(meets((start.real, start.imag, end.real, end.imag), box) for box in wide)


def _clear(strips: Sequence[Segment], boxes: Iterable[Box]) -> Iterator[Box]:
    """The boxes that leave strips free."""
    return (box for box in boxes if not any(meets(strip, box) for strip in strips))


def _past_others(field: Field, thing: Box, boxes: Iterable[Box]) -> Iterator[Box]:
    """The boxes from which a line to the thing runs through nobody, no other load, no muscle and
    not from one side of a body to the other.
    """
    for box in boxes:
        ends = line_to(box, thing)
        hit = (field.hits(*ends, what, thing, least) for what, least in _OTHERS)
        if not any(hit):
            yield box


def _dot(spot: Spot) -> Box:
    """A spot as a box."""
    return Box(spot.real, spot.imag, spot.real, spot.imag)


def _centres(field: Field) -> list[Box]:
    """The rectangles around the symbols of centres of mass, less the margin others are due."""
    return [bounds(mark).grown(-_MARGIN) for mark in _by_tag(field, What.CENTRE).values()]


def _by_tag(field: Field, what: What) -> dict[Tag, list[Shape]]:
    """The shapes of a kind, those of one thing together."""
    found: dict[Tag, list[Shape]] = {}
    for shape in field.shapes:
        if shape.tag.what is what:
            found.setdefault(shape.tag, []).append(shape)
    return found


def _in_view(field: Field, spot: Spot, boxes: Iterable[Box]) -> Iterator[Box]:
    """The free boxes with no thin line between them and a point, and in no distributed load."""
    rows = [bounds([shape]) for shape in field.shapes if shape.tag.what is What.DISTRIBUTED]
    for box in boxes:
        if not field.is_free(box) or any(map(box.overlaps, rows)):
            continue
        way = box.centre - spot
        start, end = spot + _AT * way / abs(way), box.nearest(spot)
        if not any(field.hits(start, end, what, _dot(spot)) for what in THIN):
            yield box


def nearer(field: Field, thing: Box, others: Sequence[Box], boxes: Iterable[Box]) -> Iterator[Box]:
    """The free boxes that are nearer to a thing than to all others."""
    for box in boxes:
        if field.is_free(box):  # few are
            away = box.gap(thing) + _MARGIN
            if all(box.gap(other) > away for other in others):
                yield box
