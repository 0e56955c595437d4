"""Dimensions as a drafter sets them: lengths between extension lines, angles as arcs."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, pairwise
from typing import Final

from probgen.figures.placement import GAP, Field, around, beside, centred, meets, set_in
from probgen.figures.scene import (
    FINE,
    REFERENCE,
    Arc,
    Arrow,
    Box,
    Path,
    Shape,
    Spot,
    Text,
    bearing,
    dot,
    heading,
    line,
    segments,
)

_HEAD: Final = 4.6  # length of a dimension's arrow head, pt
_WIDTH: Final = 2.2
_SHAFT: Final = 7.0  # the least line on either side of a number in its break, pt
_SHARES: Final = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)  # where along the line the number may stand
_CLEAR: Final = 2.5  # gap between the object and its extension line, pt
_PAST: Final = 2.5  # how far an extension line runs past the dimension line, pt
_OFFSETS: Final = (16.0, 25.0, 34.0, 43.0, 52.0, 61.0, 70.0, 80.0, 92.0, 105.0, 125.0, 150.0)
_CROSSED: Final = 45.0  # what a dimension line's crossing of a stroke costs, in pt of offset
_UPPER: Final = 25.0  # what lying above the object costs
_CONTINUED: Final = 15.0  # what is saved by going on along a dimension line that is there
_STARTED_LATE: Final = 5.0  # what an extension line costs that cannot begin at its point, in pt


@dataclass(frozen=True, slots=True)
class _Job:
    """A length to be set: its ends (pt), its number, its tag, half the object's thickness."""

    ends: tuple[Spot, Spot]
    text: Text
    tag: str
    half: float


@dataclass(frozen=True, slots=True)
class _Trial:
    """One way to set a length: what it costs (pt of offset), its strokes, its label's place."""

    cost: float
    strokes: tuple[Shape, ...]
    box: Box
    ends: tuple[Spot, Spot]


def draw_length(
    field: Field, start: Spot, end: Spot, text: Text, tag: str, half: float = 0.0
) -> None:
    """Add the dimension of the distance from start to end, parallel to it.

    half: half the thickness of the object measured (pt), which extension lines keep clear of.
    The offset and side are those that meet the fewest other strokes; the label meets none.
    """
    job = _Job((start, end), text, f"dimension:{tag}", half)
    best: _Trial | None = None
    saved = _CONTINUED if field.measures else 0.0
    sides = _sides(start, end)
    trials = sorted(
        ((offset + _rise(side), offset, i) for i, side in enumerate(sides) for offset in _OFFSETS)
    )
    for least, offset, i in trials:  # the cheapest first, so that most are never looked at
        limit = best.cost if best else math.inf
        if least - saved >= limit:
            break
        best = _length(field, job, sides[i], offset, limit) or best
    if best is None:
        best = _forced(field, start, end, text, f"dimension:{tag}")
    field.measures.append(best.ends)
    field.add(*best.strokes)
    field.add(set_in(text, best.box, f"label:{tag}"))


def _sides(start: Spot, end: Spot) -> tuple[complex, complex]:
    """The two unit normals, the one pointing down (or right) first."""
    normal = (end - start) / abs(end - start) * 1j
    lower = normal.imag < -1e-9 or (abs(normal.imag) <= 1e-9 and normal.real > 0)
    return (normal, -normal) if lower else (-normal, normal)


def _rise(side: complex) -> float:
    """What lying on a side costs (pt): a drafter sets dimensions below."""
    return _UPPER * max(side.imag, 0.0) ** 2


def _length(
    field: Field, job: _Job, side: complex, offset: float, limit: float
) -> _Trial | None:
    """The length set at an offset to one side; None when it cannot be for less than `limit`."""
    start, end = (spot + side * (job.half + offset) for spot in job.ends)
    cost = offset + _rise(side) - (_CONTINUED if _continues(field, start, end) else 0.0)
    if cost >= limit:
        return None
    cost += _CROSSED * field.crossings(start, end, trim=job.half + 1.0)
    settings = (
        setting
        for setting in _settings(start, end, job.text, job.tag)
        if cost + setting[2] < limit and field.is_free(setting[0])
    )
    first = next(settings, None)
    if first is None:
        return None
    strokes: list[Shape] = []
    for near, far in zip(job.ends, (start, end), strict=True):
        bottom, top = near + side * (job.half + _CLEAR), far + side * _PAST
        if cost >= limit:
            return None
        if field.lies_along(bottom, far):
            continue  # the wall's face or a hanging rope serves as the extension line
        met = field.clear_from(bottom, top)
        if met:  # it begins beyond what it would cross
            bottom += side * (met + _CLEAR)
            cost += _STARTED_LATE + 0.5 * met
            if met + 2.0 * _CLEAR > abs(top - near):
                return None
        strokes.append(line(bottom, top, FINE, job.tag))
    for box, lines, extra in chain((first,), settings):
        drawn = (*strokes, *lines)
        if cost + extra < limit and all(
            _off(box, stroke) and not _spoils(field, stroke) for stroke in drawn
        ):
            return _Trial(cost + extra, drawn, box, (start, end))
    return None


def _continues(field: Field, start: Spot, end: Spot) -> bool:
    """Whether a dimension line begins where another one ends, neither lying on the other."""
    for a, b in field.measures:
        for shared, far in ((a, b), (b, a)):
            for mine, other in ((start, end), (end, start)):
                if abs(shared - mine) < 0.5 and dot(far - shared, other - mine) < 0:
                    return True
    return False


def _spoils(field: Field, stroke: Shape) -> bool:
    """Whether a stroke would run through a label."""
    return any(
        field.hits_label(complex(x0, y0), complex(x1, y1)) for x0, y0, x1, y1 in segments(stroke)
    )


def _settings(
    start: Spot, end: Spot, text: Text, tag: str
) -> Iterator[tuple[Box, tuple[Shape, ...], float]]:
    """Ways to set the number on a dimension line: in a break of it, else beside or past it."""
    length = abs(end - start)
    unit = (end - start) / length
    gap = _chord(centred(text, start).grown(GAP), unit)
    if length - gap >= 2 * _SHAFT:
        for share in _SHARES:
            middle, reach = start + (end - start) * share, unit * gap / 2
            if min(share, 1.0 - share) * length - gap / 2 >= _SHAFT:
                first = Arrow(middle - reach, start, FINE, tag, _HEAD, _WIDTH)
                last = Arrow(middle + reach, end, FINE, tag, _HEAD, _WIDTH)
                yield centred(text, middle), (first, last), 8.0 * abs(share - 0.5)
        return
    if length >= 2 * _HEAD + 4:
        lines: tuple[Shape, ...] = (Arrow(start, end, FINE, tag, _HEAD, _WIDTH, both=True),)
        tails = 0.0
    else:
        lines = (
            Arrow(start - unit * 11, start, FINE, tag, _HEAD, _WIDTH),
            Arrow(end + unit * 11, end, FINE, tag, _HEAD, _WIDTH),
        )
        tails = 11.0
    angle = math.degrees(math.atan2(unit.imag, unit.real))
    for direction in (angle - 90, angle + 90):
        yield beside(text, (start + end) / 2, direction, 4.0), lines, 2.0
    for tip, direction in ((end + unit * tails, angle), (start - unit * tails, angle + 180)):
        yield beside(text, tip, direction, 4.0), lines, 5.0


def _chord(box: Box, unit: complex) -> float:
    """The length of a line in a direction through a box's centre."""
    across = box.width / abs(unit.real) if abs(unit.real) > 1e-9 else math.inf
    upward = box.height / abs(unit.imag) if abs(unit.imag) > 1e-9 else math.inf
    return min(across, upward)


def _forced(field: Field, start: Spot, end: Spot, text: Text, tag: str) -> _Trial:
    """When no side is free: arrows where they spoil no label, the number wherever there is room."""
    lines = [
        Arrow(start + side * offset, end + side * offset, FINE, tag, _HEAD, _WIDTH, both=True)
        for offset in (*_OFFSETS, *range(170, 700, 20))
        for side in _sides(start, end)
    ]
    chosen = next((line for line in lines if not _spoils(field, line)), lines[0])
    side = (end - start) * 1j
    anchors = [((chosen.tail + chosen.head) / 2, bearing(side * turn)) for turn in (1, -1)]
    free = (box for box in around(text, anchors) if field.is_free(box) and _off(box, chosen))
    return _Trial(0.0, (chosen,), next(free), (chosen.tail, chosen.head))


_RADII: Final = (17.0, 21.0, 25.0, 14.0, 30.0, 36.0, 44.0, 54.0, 66.0)
_PAST_ARC: Final = 14.0  # how far a reference line runs on beyond its arc, pt


def draw_angle(
    field: Field,
    at: Spot,
    reference: float,
    direction: float,
    text: Text,
    tag: str,
    *,
    reference_drawn: bool,
) -> None:
    """Add an angle's arc from a reference direction, and its label beyond the arc.

    The reference line is drawn dashed unless a member already runs there.
    """
    sweep = (direction - reference + 180.0) % 360.0 - 180.0
    if abs(sweep) < 0.05:
        return
    trials = [
        _angle(at, reference, sweep, radius, tag, reference_drawn=reference_drawn)
        for radius in _RADII
    ]
    struck = [_struck(field, strokes[0]) for strokes in trials]
    # An arc that would cross a wall is worse than one with its label outside.
    trials = [each for each, count in zip(trials, struck, strict=True) if count == min(struck)]
    strokes, box = _labelled(field, trials, at, text)
    lines = (reference, direction) if reference_drawn else (direction,)
    arms = [_arm(at, strokes[0].radius, way, tag) for way in lines]
    bare = [arm for arm in arms if _is_bare(field, *arm.lines[0]) and _off(box, arm)]
    field.add(*strokes, *bare)
    field.add(set_in(text, box, f"label:{tag}"))


def _angle(
    at: Spot, reference: float, sweep: float, radius: float, tag: str, *, reference_drawn: bool
) -> tuple[Arc, *tuple[Shape, ...]]:
    """An arc, and the reference line it starts from where that is needed."""
    arc = Arc(at, radius, reference, sweep, FINE, f"angle:{tag}")
    if reference_drawn:
        return (arc,)
    end = at + heading(reference) * (radius + _PAST_ARC)
    return arc, line(at, end, REFERENCE, f"reference:{tag}")


def _arm(at: Spot, radius: float, way: float, tag: str) -> Path:
    """A piece of one of an angle's lines about the end of its arc, for where none is drawn."""
    unit = heading(way)
    return line(at + unit * (radius - 7.0), at + unit * (radius + 5.0), REFERENCE, f"arm:{tag}")


def _is_bare(field: Field, start: Spot, end: Spot) -> bool:
    """Whether nothing is drawn, and no label set, along a piece or close beside it."""
    across = (end - start) / abs(end - start) * 6j
    middle = (start + end) / 2
    beside = field.crossings(middle - across, middle + across)
    return not beside and not field.hits_label(start, end)


def _struck(field: Field, arc: Arc) -> int:
    """How many strokes an arc crosses between its two lines."""
    ends = [arc.start + arc.sweep * share for share in (0.1, 0.3, 0.5, 0.7, 0.9)]
    spots = [arc.centre + arc.radius * heading(angle) for angle in ends]
    return sum(field.crossings(a, b) for a, b in pairwise(spots))


def _labelled(
    field: Field, trials: Sequence[tuple[Arc, *tuple[Shape, ...]]], at: Spot, text: Text
) -> tuple[tuple[Arc, *tuple[Shape, ...]], Box]:
    """The first arc whose label fits between its two lines, else one with the label beside it."""

    def free(box: Box, strokes: Sequence[Shape]) -> bool:
        return field.is_free(box) and all(_off(box, stroke) for stroke in strokes)

    clear = [strokes for strokes in trials if not any(_spoils(field, s) for s in strokes)]
    trials = clear or trials
    for strokes in trials:
        arc = strokes[0]
        for distance in (3.0, 5.0, 8.0):
            box = beside(text, at, arc.start + arc.sweep / 2, arc.radius + distance)
            if free(box, strokes):
                return strokes, box
    strokes = trials[0]
    arc = strokes[0]
    outward = 90.0 if arc.sweep > 0 else -90.0
    spots = [
        (at + arc.radius * heading(arc.start), arc.start - outward),
        (at + arc.radius * heading(arc.start + arc.sweep), arc.start + arc.sweep + outward),
    ]
    return strokes, next(box for box in around(text, spots) if free(box, strokes))


def _off(box: Box, stroke: Shape) -> bool:
    """Whether a box keeps clear of one stroke."""
    wide = box.grown(1.5)
    return not any(meets(segment, wide) for segment in segments(stroke))
