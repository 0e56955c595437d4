"""Lengths as a drafter sets them: a dimension line between two extension lines."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from functools import cache
from typing import Final, NamedTuple

from probgen.figures.paper.canvas import Field, Ray
from probgen.figures.paper.placement import GAP, about, around, past, set_in
from probgen.figures.paper.scene import FINE, Arrow, Box, Spot, Text, bearing, dot, line
from probgen.figures.paper.segment import meets
from probgen.figures.paper.tag import Tag, What
from probgen.figures.paper.type_metrics import Extent, extent

_HEAD: Final = 4.0  # length of a dimension's arrow head, pt
_WIDTH: Final = 1.9
_SHAFT: Final = 7.0  # the least line on either side of a number in its break, pt
_TAIL: Final = 11.0  # length of an arrow that points at a short distance from outside, pt
_ASIDE: Final = 4.0  # from a line to a number beside it, pt
_SHARES: Final = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)  # where along the line the number may stand
_UNBROKEN: Final = 60.0  # what a number costs that stands outside a line it would go into, pt
_CLEAR: Final = 2.5  # gap between the object and its extension line, pt
_PAST: Final = 2.5  # how far an extension line runs past the dimension line, pt
_STUB: Final = 4.0  # the least of an extension line that is left where it begins late, pt
_OFFSETS: Final = (16.0, 25.0, 34.0, 43.0, 52.0, 61.0, 70.0, 80.0, 92.0, 105.0, 125.0, 150.0)
_CROSSED: Final = 45.0  # what a dimension line's crossing of a stroke costs, in pt of offset
_UPPER: Final = 25.0  # what lying above the object costs
_CONTINUED: Final = 15.0  # what is saved by going on along a dimension line that is there
_STARTED_LATE: Final = 5.0  # what an extension line costs that cannot begin at its point, in pt


class _Setting(NamedTuple):
    """A way to set the number on a dimension line: its box, what it costs, the line's pieces.

    pieces: from tail to head; both: a single one has heads at both of its ends.
    """

    box: Box
    cost: float
    pieces: tuple[tuple[Spot, Spot], ...]
    both: bool = False


class _Place(NamedTuple):
    """Where a dimension line may run: its ends, its extension lines, what that costs (pt)."""

    cost: float
    ends: tuple[Spot, Spot]
    extensions: tuple[tuple[Spot, Spot], ...] = ()


def draw_length(
    field: Field, start: Spot, end: Spot, text: Text, tag: str, half: float = 0.0
) -> bool:
    """Add the dimension of the distance from start to end, parallel to it.

    half: half the thickness of the object measured (pt), which extension lines keep clear of.
    The offset and side are those that meet the fewest other strokes; the label meets none.
    Whether there was such a place; the number stands apart from its line where there was none.
    """

    @cache
    def rays(side: complex) -> tuple[Ray, Ray]:
        """Along what the extension lines on one side run."""
        near, far = side * (half + _CLEAR), side * (half + _OFFSETS[-1] + _PAST)
        return field.ray(start + near, start + far), field.ray(end + near, end + far)

    room = extent(text)
    best: tuple[float, _Place, _Setting] | None = None
    for cost, step in _steps(field, start, end, half):
        if best and best[0] <= cost:
            break  # the cheapest come first, and most are never looked at
        place = _place((start, end), step, half, cost, rays(step / abs(step)))
        setting = _setting(field, place, room) if place else None
        if place and setting and (best is None or place.cost + setting.cost < best[0]):
            best = (place.cost + setting.cost, place, setting)
    _, place, setting = best or _forced(field, start, end, text)
    field.measures.append(place.ends)
    drawn = Tag(What.DIMENSION, tag)
    field.add(*(line(*ends, FINE, drawn) for ends in place.extensions))
    for tail, head in setting.pieces:
        field.add(Arrow(tail, head, FINE, drawn, _HEAD, _WIDTH, both=setting.both))
    field.add(set_in(text, setting.box, Tag(What.LABEL, tag)))
    return best is not None


def _sides(start: Spot, end: Spot) -> tuple[complex, complex]:
    """The two unit normals, the one pointing down (or right) first."""
    normal = (end - start) / abs(end - start) * 1j
    lower = normal.imag < -1e-9 or (abs(normal.imag) <= 1e-9 and normal.real > 0)
    return (normal, -normal) if lower else (-normal, normal)


def _rise(side: complex) -> float:
    """What lying on a side costs (pt): a drafter sets dimensions below."""
    return _UPPER * max(side.imag, 0.0) ** 2


def _steps(field: Field, start: Spot, end: Spot, half: float) -> list[tuple[float, complex]]:
    """How far a dimension line may be moved from what it measures, with what that costs (pt)."""
    cut = (end - start) / abs(end - start) * (half + 1.0)
    steps = [side * (half + offset) for side in _sides(start, end) for offset in _OFFSETS]
    crossed = [0] * len(steps)
    if abs(end - start) > 2.0 * abs(cut):
        crossed = field.crossed(start + cut, end - cut, steps)
    costs = [
        abs(step)
        - half
        + _rise(step / abs(step))
        + _CROSSED * count
        - (_CONTINUED if _continues(field, start + step, end + step) else 0.0)
        for step, count in zip(steps, crossed, strict=True)
    ]
    return sorted(zip(costs, steps, strict=True), key=lambda each: each[0])


def _place(
    measured: tuple[Spot, Spot], step: complex, half: float, cost: float, rays: tuple[Ray, Ray]
) -> _Place | None:
    """The dimension line a step aside, with its extension lines; None where a label hides them."""
    side = step / abs(step)
    extensions = []
    for spot, ray in zip(measured, rays, strict=True):
        part = _extension(ray, abs(step) - half - _CLEAR)
        if part is None:
            return None
        first, last, late = part
        cost += late
        if first < last:
            bottom = spot + side * (half + _CLEAR)
            extensions.append((bottom + side * first, bottom + side * last))
    return _Place(cost, (measured[0] + step, measured[1] + step), tuple(extensions))


def _extension(ray: Ray, reach: float) -> tuple[float, float, float] | None:
    """From where to where along a ray an extension line runs (pt), and what that costs.

    It begins beyond what it would cross, or where a wall's face or a hanging rope ends that serves
    as its first part.  None where a label is in its way.  reach: as far as the dimension line.
    """
    last = reach + _PAST
    covered, met = ray.covered(reach), ray.last(last)
    if covered >= last:
        return covered, last, 0.0
    first = covered or (met + _CLEAR if met else 0.0)
    if ray.hides(first, last) or (first > last - _STUB and not covered):
        return None
    return first, last, 0.0 if covered or not met else _STARTED_LATE + 0.5 * met


def _setting(field: Field, place: _Place, room: Extent) -> _Setting | None:
    """The first way to set the number that is free, None when none is."""
    for setting in _settings(*place.ends, room.width, room.height + room.depth):
        if (
            field.is_free(setting.box)
            and _off(setting.box, (*place.extensions, *setting.pieces))
            and not any(field.hits_label(*ends) for ends in setting.pieces)
        ):
            return setting
    return None


def _continues(field: Field, start: Spot, end: Spot) -> bool:
    """Whether a dimension line begins where another one ends, neither lying on the other."""
    for a, b in field.measures:
        for shared, far in ((a, b), (b, a)):
            for mine, other in ((start, end), (end, start)):
                if abs(shared - mine) < 0.5 and dot(far - shared, other - mine) < 0:
                    return True
    return False


def _settings(start: Spot, end: Spot, width: float, height: float) -> Iterator[_Setting]:
    """Ways to set the number on a dimension line: in a break of it, else beside or past it.

    width, height: of the number, pt.
    """
    length = abs(end - start)
    unit = (end - start) / length
    gap = _chord(width + 2 * GAP, height + 2 * GAP, unit)
    breakable = length - gap >= 2 * _SHAFT
    if breakable:
        for share in _SHARES:
            if min(share, 1.0 - share) * length - gap / 2 >= _SHAFT:
                middle, reach = start + (end - start) * share, unit * gap / 2
                broken = ((middle - reach, start), (middle + reach, end))
                yield _Setting(about(middle, width, height), 8.0 * abs(share - 0.5), broken)
    aside = _UNBROKEN if breakable else 0.0
    within = length >= 2 * _HEAD + 4
    tail = unit * (0.0 if within else _TAIL)
    outside = ((start - tail, start), (end + tail, end))
    pieces: tuple[tuple[Spot, Spot], ...] = ((start, end),) if within else outside
    for way in (unit * -1j, unit * 1j):
        box = past((start + end) / 2, way, _ASIDE, width, height)
        yield _Setting(box, 2.0 + aside, pieces, both=within)
    for tip, way in ((end + tail, unit), (start - tail, -unit)):
        box = past(tip, way, _ASIDE, width, height)
        yield _Setting(box, 5.0 + aside, pieces, both=within)


def _chord(width: float, height: float, unit: complex) -> float:
    """The length of a line in a direction through a box's centre."""
    across = width / abs(unit.real) if abs(unit.real) > 1e-9 else math.inf
    upward = height / abs(unit.imag) if abs(unit.imag) > 1e-9 else math.inf
    return min(across, upward)


def _off(box: Box, pieces: Iterable[tuple[Spot, Spot]]) -> bool:
    """Whether a box keeps clear of straight pieces."""
    wide = box.grown(GAP - 0.1)
    return not any(meets((a.real, a.imag, b.real, b.imag), wide) for a, b in pieces)


def _forced(field: Field, start: Spot, end: Spot, text: Text) -> tuple[float, _Place, _Setting]:
    """When no side is free: arrows where they spoil no label, the number wherever there is room."""
    lines = [
        (start + side * offset, end + side * offset)
        for offset in (*_OFFSETS, *range(170, 700, 20))
        for side in _sides(start, end)
    ]
    chosen = next((ends for ends in lines if not field.hits_label(*ends)), lines[0])
    side = (end - start) * 1j
    anchors = [(sum(chosen) / 2, bearing(side * turn)) for turn in (1, -1)]
    free = (box for box in around(text, anchors) if field.is_free(box) and _off(box, (chosen,)))
    return 0.0, _Place(0.0, chosen), _Setting(next(free), 0.0, (chosen,), both=True)
