"""Lengths as a drafter sets them: a dimension line between two extension lines."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from functools import cache
from typing import Final, NamedTuple

from probgen.figures.paper.canvas import Field, Ray
from probgen.figures.paper.cover import behind
from probgen.figures.paper.placement import GAP, about, around, past, set_in
from probgen.figures.paper.scene import (
    FINE,
    Arrow,
    Box,
    Segment,
    Spot,
    Text,
    bearing,
    dot,
    line,
)
from probgen.figures.paper.segment import meets
from probgen.figures.paper.tag import Tag, What
from probgen.figures.paper.type_metrics import Extent, extent

_HEAD: Final = 4.0  # length of a dimension's arrow head, pt
_WIDTH: Final = 1.9
_SHAFT: Final = 7.0  # the least line on either side of a number in its break, pt
_TAIL: Final = 11.0  # length of an arrow that points at a short distance from outside, pt
_LED: Final = 7.0  # how far a line with heads within runs on to a number past its end, pt
_BEGINS: Final = 1.0  # of that, which may touch what the head stands at, pt
_STEEP: Final = 0.3  # cosine of the slope from which a number past a line's end is centred on it
_ASIDE: Final = 4.0  # from a line to a number beside it, pt
_SHARES: Final = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)  # where along the line the number may stand
_UNBROKEN: Final = 60.0  # what a number costs that stands outside a line it would go into, pt
_CLEAR: Final = 2.5  # gap between the object and its extension line, pt
_PAST: Final = 2.5  # how far an extension line runs past the dimension line, pt
_STUB: Final = 4.0  # the least piece of an extension line that is drawn, pt
_RESUMED: Final = 9.0  # the same beyond a label, pt
_AT_POINT: Final = 8.0  # how near to where it begins it crosses no stroke, but begins beyond, pt
_OFFSETS: Final = tuple(16.0 + 4.5 * row for row in range(31))  # from object to dimension line, pt
_NARROW: Final = 11.0  # one nearer to the object, where forces' arrows take the usual ones, pt
_NARROWED: Final = 36.0  # what lying there costs besides
_CROSSED: Final = 45.0  # what a dimension line's crossing of a stroke costs, in pt of offset
_BESIDE: Final = 13.0  # the least between two dimension lines side by side, pt
_WITHIN: Final = 45.0  # what it costs to lie within one of a shorter length, or next to it
_UPPER: Final = 25.0  # what lying above the object costs
_CONTINUED: Final = 15.0  # what is saved by going on along a dimension line that is there
_STARTED_LATE: Final = 5.0  # what an extension line costs that cannot begin at its point, in pt
_HIDDEN: Final = 40.0  # what one costs that a label hides in part, in pt
_LOST: Final = 1.0  # what each pt of one costs that is left out
_INSIDE: Final = 0.8  # what each pt of one costs that lies within a body, in pt of offset
_BY_HEAD: Final = 65.0  # what coming near the head of a force's arrow costs, in pt of offset
_ON_HEAD: Final = 20.0  # and what meeting it costs besides
_FROM_HEAD: Final = 3.5  # how near that is, pt
_THROUGH: Final = 45.0  # what one costs that runs aslant through a wall, in pt
_IN_THE_WAY: Final = 15.0  # what a number costs where extension lines are still to be drawn, in pt
_STRIP: Final = 60.0  # how far beside what is measured an extension line is expected to run, pt


class _Setting(NamedTuple):
    """A way to set the number on a dimension line: its box, what it costs, the line's pieces.

    pieces: from tail to head; both: a single one has heads at both of its ends; led: what runs on
    from a head to the number.
    """

    box: Box
    cost: float
    pieces: tuple[tuple[Spot, Spot], ...]
    both: bool = False
    led: tuple[tuple[Spot, Spot], ...] = ()


class _Place(NamedTuple):
    """Where a dimension line may run: its ends, its extension lines, what that costs (pt), how many
    of these a label breaks, and how many run aslant through a wall.
    """

    cost: float
    ends: tuple[Spot, Spot]
    extensions: tuple[tuple[Spot, Spot], ...] = ()
    torn: int = 0
    walled: int = 0


def draw_length(
    field: Field,
    start: Spot,
    end: Spot,
    text: Text,
    tag: str,
    half: float = 0.0,
    due: Sequence[Segment] = (),
) -> bool:
    """Add the dimension of the distance from start to end, parallel to it.

    half: half the thickness of the object measured (pt), which extension lines keep clear of.
    due: along what extension lines are still to be drawn, which the number leaves free if it can.
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
        place = _place(field, (start, end), step, half, cost, rays(step / abs(step)))
        setting = _setting(field, place, room, due) if place else None
        if place and setting and (best is None or place.cost + setting.cost < best[0]):
            best = (place.cost + setting.cost, place, setting)
    _, place, setting = best or _forced(field, start, end, text)
    field.measures.append(place.ends)
    field.torn += place.torn
    field.walled += place.walled
    drawn = Tag(What.DIMENSION, tag)
    field.add(*(line(*ends, FINE, drawn) for ends in (*place.extensions, *setting.led)))
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
    rows = [(offset, offset) for offset in _OFFSETS]
    rows += [(_NARROW, _NARROW + _NARROWED)] if field.arrows else []
    sides = [(side, row) for side in _sides(start, end) for row in rows]
    steps = [side * (half + offset) for side, (offset, _) in sides]
    inside = _inside(field, (start + end) / 2, steps)
    crossed = [0] * len(steps)
    if abs(end - start) > 2.0 * abs(cut):
        crossed = field.crossed(start + cut, end - cut, steps)
    costs = [
        cost
        + _rise(side)
        + _CROSSED * count
        + _INSIDE * abs(end - start) * within
        + _WITHIN * _within(field, start, end, step)
        - (_CONTINUED if _continues(field, start + step, end + step) else 0.0)
        for (side, (_, cost)), step, count, within in zip(
            sides, steps, crossed, inside, strict=True
        )
    ]
    return sorted(zip(costs, steps, strict=True), key=lambda each: each[0])


def _inside(field: Field, middle: Spot, steps: Sequence[complex]) -> list[bool]:
    """Whether each of several steps from the middle of a length ends within an opaque shape."""
    reach = max(map(abs, steps))
    units = {step / abs(step) for step in steps}
    solid = {unit: tuple(behind(field.opaque, middle, middle + unit * reach)) for unit in units}
    return [any(low < abs(step) < high for low, high in solid[step / abs(step)]) for step in steps]


def _place(
    field: Field,
    measured: tuple[Spot, Spot],
    step: complex,
    half: float,
    cost: float,
    rays: tuple[Ray, Ray],
) -> _Place | None:
    """The dimension line a step aside, with its extension lines; None where a label hides them."""
    side = step / abs(step)
    extensions, torn, walled, reach = [], 0, 0, abs(step) - half - _CLEAR
    inside = all(any(low <= reach <= high for low, high in ray.behind) for ray in rays)
    for spot, ray in zip(measured, rays, strict=True):
        part = _extension(ray, reach, inside=inside)
        if part is None:
            return None
        stretches, late = part
        cost += late
        if field.slants_through_wall(spot + side * (half + _CLEAR), spot + step):
            cost, walled = cost + _THROUGH, walled + 1
        torn += bool(stretches) and ray.hides(0.0, stretches[-1][0])
        bottom = spot + side * (half + _CLEAR)
        extensions += [(bottom + side * first, bottom + side * last) for first, last in stretches]
    ends = measured[0] + step, measured[1] + step
    return _Place(cost, ends, tuple(extensions), torn, walled)


def _extension(
    ray: Ray, reach: float, *, inside: bool = False
) -> tuple[tuple[tuple[float, float], ...], float] | None:
    """From where to where along a ray the pieces of an extension line run (pt), and what they cost.

    It crosses single strokes, but begins beyond one at its point, or where a wall's face or a
    hanging rope ends that serves as its first part; labels and opaque shapes break it.
    None where no piece is left at the dimension line.  reach: as far as that; inside: it lies on
    opaque shapes, which hide none of it.
    """
    last = reach + _PAST
    covered = ray.covered(reach)
    if covered >= last:
        return (), 0.0
    if covered and not ray.ends_an_arrow(covered):
        return None if ray.hides(covered, last) else (((covered, last),), 0.0)
    behind = () if inside else ray.behind
    pieces = _pieces(ray, behind, last)
    hidden = ray.hides(0.0, last)
    if not pieces or pieces[-1][1] < last or (hidden and pieces[-1][0] > last - _RESUMED):
        return None
    if not ray.last(last):
        return pieces, 0.0
    drawn = sum(end - begin for begin, end in pieces)
    along = sum(max(0.0, min(high, last) - max(low, 0.0)) for low, high in ray.along)
    lost = max(0.0, last - drawn - along)
    return pieces, _STARTED_LATE + (_HIDDEN if hidden else 0.0 if covered else _LOST * lost)


def _pieces(
    ray: Ray, behind: Sequence[tuple[float, float]], last: float
) -> tuple[tuple[float, float], ...]:
    """What is left of an extension line (pt from its start), but for the shortest pieces."""
    blocks = [(low - _CLEAR, high + _CLEAR, False) for low, high in (*ray.hidden, *behind)]
    blocks += [(low, high + _CLEAR, False) for low, high in ray.along if high > low + _STUB]
    blocks += [(at, at + _CLEAR, True) for at in ray.met]
    pieces, begins = [], 0.0
    for low, high, stroke in sorted(blocks):
        if low >= last or (stroke and low >= begins + _AT_POINT):
            continue
        if not stroke and low >= begins + _STUB:
            pieces.append((begins, low))
        begins = max(begins, high)
    if begins <= last - _STUB:
        pieces.append((begins, last))
    return tuple(pieces)


def _setting(field: Field, place: _Place, room: Extent, due: Sequence[Segment]) -> _Setting | None:
    """The best way to set the number that is free, None when none is."""
    best: _Setting | None = None
    for setting in _settings(*place.ends, room.width, room.height + room.depth):
        if best and best.cost <= setting.cost:
            break  # the cheapest come first
        if (
            field.is_free(setting.box)
            and _off(setting.box, (*place.extensions, *setting.pieces))
            and not any(field.hits_label(*ends) for ends in (*setting.pieces, *setting.led))
            and not any(field.crossings(*ends, _BEGINS) for ends in setting.led)
        ):
            wide = setting.box.grown(GAP)
            hides = any(meets(piece, wide) for piece in due)
            near, met = (_heads_met(field, setting, off) for off in (_FROM_HEAD, 0.0))
            cost = setting.cost + _IN_THE_WAY * hides + _BY_HEAD * near + _ON_HEAD * met
            setting = setting._replace(cost=cost)
            best = setting if best is None or setting.cost < best.cost else best
    return best


def _heads_met(field: Field, setting: _Setting, off: float) -> int:
    """How many heads of forces' arrows its lines come as near as that, pt."""
    lines = (*setting.pieces, *setting.led)
    return sum(any(_near_head(arrow, *ends, off) for ends in lines) for arrow in field.arrows)


def _near_head(arrow: Arrow, start: Spot, end: Spot, off: float) -> bool:
    """Whether a straight piece comes near an arrow's head, both turned so that it lies level."""
    unit = (arrow.head - arrow.tail) / abs(arrow.head - arrow.tail)
    a, b = (start - arrow.head) / unit, (end - arrow.head) / unit
    half = arrow.width / 2
    head = Box(-arrow.length, -half, 0.0, half).grown(off)
    return meets((a.real, a.imag, b.real, b.imag), head)


def strips(start: Spot, end: Spot, half: float, reach: float = _STRIP) -> list[Segment]:
    """About where the extension lines of a length will run, on both of its sides.

    half: as in `draw_length`; reach: how far beside that, pt.
    """
    found = []
    for side in _sides(start, end):
        for spot in (start, end):
            near, far = spot + side * half, spot + side * (half + reach)
            found.append((near.real, near.imag, far.real, far.imag))
    return found


def _within(field: Field, start: Spot, end: Spot, step: complex) -> int:
    """How many dimension lines beside one a step aside lie further out, or no row within it."""
    length, side = abs(end - start), step / abs(step)
    unit = (end - start) / length
    found = 0
    for ends in field.measures:
        (one, off), (other, away) = (
            (dot(spot - start, unit), dot(spot - start, side)) for spot in ends
        )
        shared = min(max(one, other), length) - max(min(one, other), 0.0)
        found += abs(off - away) < 0.5 and shared > 0.5 and off > abs(step) - _BESIDE
    return found


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
    for head, way in ((end, unit), (start, -unit)):
        tip = head + way * (_LED if within else _TAIL)
        led = ((head, tip),) if within else ()
        yield _Setting(_landed(tip, way, width, height), 5.0 + aside, pieces, within, led)


def _landed(tip: Spot, way: complex, width: float, height: float) -> Box:
    """A number's box past a line's tip: on the line, or level with the tip of one that slants."""
    if abs(way.real) < _STEEP:
        return past(tip, way, _ASIDE, width, height)
    return past(tip, complex(math.copysign(1.0, way.real), 0.0), _ASIDE, width, height)


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
