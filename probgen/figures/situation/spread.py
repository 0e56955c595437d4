"""Distributed loads in a situation: rows of arrows on their bodies, and what they are labelled."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from math import isclose
from typing import Final

from probgen.bank.depiction import Fluid
from probgen.figures.measured.distributed import ROW, Row, covers, rows
from probgen.figures.paper.scene import (
    LIGHT,
    Box,
    Shape,
    Spot,
    apart,
    bearing,
    bounds,
    heading,
    line,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import distributed, goods, scenery
from probgen.figures.situation import water
from probgen.figures.situation.carried import Burdens, Note
from probgen.figures.situation.stage import Stage
from probgen.quantities.expression import Name, Number
from probgen.statics.system import Body

_BESIDE: Final = (0.5, 0.625, 0.375, 0.75, 0.25)  # where along a curve its letter stands
_EVEN: Final = (0.5, 0.25, 0.75)  # and where along a level edge
_HIGH_END: Final = 0.25  # where along a slanting edge, from its high end
_OFF: Final = 2.5  # how far off a slanting curve, pt
_LABEL: Final = 16.0  # how high over its high end a label is, pt
_OVER: Final = 48.0  # how far over a slanting load dimension lines keep, pt
_Along = Callable[[Spot, Spot, float, Tag], tuple[Shape, ...]]
_ABOUT: Final[dict[Fluid, tuple[_Along, float]]] = {
    Fluid.TUB: (scenery.bathtub, 0.58),
    Fluid.BALES: (goods.bales, 0.9),
}
"""What stands about a load's arrows, and its height in m; common practice, no source."""

_RIM: Final = 4.0  # how far its rim is at least above the arrows in it, pt
_OPEN: Final = 36.0  # the shortest free part of a load's edge that it is labelled over, pt


def draw_spreads(burdens: Burdens, body: Body) -> Iterator[Note]:
    """Draw the distributed loads on a body; for each its load per length at its ends."""
    stage, field = burdens.stage, burdens.field
    own = [element for element in stage.system.elements if element.body == body.id]
    drawn = rows(stage.measured, own, stage.scale, stage.halves[body.id], ROW)
    standing, people = (on.get(body.id, []) for on in (burdens.loads, burdens.people))
    for row in drawn:
        field.add(*water.beside(stage, row))
        _watch_above(burdens, row)
        told, tag = stage.depicts.fluids.get(row.element.id), Tag(What.DISTRIBUTED, row.element.id)
        wet = told is Fluid.WATER
        if told in _ABOUT:
            field.add(*_about(stage, row, *_ABOUT[told]))
        field.add(
            *distributed.spread(*row.feet, row.direction, row.heights, tag, standing, people, wet)
        )
    for row in drawn:
        yield from _labels(stage, row, [other for other in drawn if covers(other, row)])


def _about(stage: Stage, row: Row, drawn: _Along, high: float) -> tuple[Shape, ...]:
    """What stands on its body along a load, so many metres high; it ends above the arrows."""
    half = 1j * stage.halves[row.element.body]
    start, end = (spot * stage.scale + half for spot in (row.spread.start, row.spread.end))
    height = max(high * stage.scale, row.highest.imag - start.imag + _RIM)
    return drawn(start, end, height, Tag(What.SCENERY))


def _watch_above(burdens: Burdens, row: Row) -> None:
    """Keeps dimension lines off a load whose size falls off: out of the notch over its low end, and
    from above the label over its high end.
    """
    if len(row.heights) != 2 or row.heights[0] == row.heights[1]:
        return
    high, low = row.tops if row.heights[0] > row.heights[1] else row.tops[::-1]
    up = -heading(row.direction)
    drop = abs(row.heights[0] - row.heights[1])
    for share, over in ((0.5, 0.0), (_HIGH_END, _LABEL)):
        spot = high + (low - high) * share
        level = share * drop
        burdens.field.watch(line(spot + up * (level + over), spot + up * (level + _OVER), LIGHT))


def _labels(stage: Stage, row: Row, on_it: Sequence[Row]) -> Iterator[Note]:
    """A row's loads per length; on_it: the rows that stand on this one."""
    away, shares = row.direction + 180.0, row.spread.shares
    first, last = row.tops
    thing: Box | None = None
    if len(row.heights) > 2 and not on_it:
        yield from _curve_labels(stage, row, away)
        return
    if len(row.spread.names) == 2 and min(shares) > 0:
        places: list[tuple[tuple[Spot, float], ...]] = [((first, away),), ((last, away),)]
    elif on_it and shares[0] == shares[1] and (over := _free(row, on_it)):
        places, thing = (
            [tuple((spot, away) for spot in over)],
            bounds([line(over[1], over[2], LIGHT)]),
        )
    elif on_it:
        ends = [(f + t) / 2 for f, t in zip(row.feet, row.tops, strict=True)]
        way = bearing(ends[1] - ends[0])
        places = [((ends[1], way), (ends[0], way + 180.0))]
    else:
        largest = first if row.heights[0] > row.heights[1] else last
        even = [(first + (last - first) * share, away) for share in _EVEN]
        inward = away + (-45.0 if largest == first else 45.0)
        at_end = (largest, away), _over_slant(row, largest), (largest, inward)
        places = [tuple(even) if shares[0] == shares[1] else at_end]
    for name, anchors in zip(row.spread.names, places, strict=False):
        id = name.id if isinstance(name, Name) else row.element.id
        yield Note(stage.text(name), anchors, Tag(What.LABEL, id), thing)


def _over_slant(row: Row, largest: Spot) -> tuple[Spot, float]:
    """A spot on a slanting edge near its high end, and the direction (degrees) square to the edge
    and away from the body.
    """
    way = sum(row.tops) - 2 * largest
    square = bearing(way) + 90.0
    away = row.direction + 180.0
    return largest + _HIGH_END * way, square if apart(square, away) < 90.0 else square + 180.0


def _free(row: Row, on_it: Sequence[Row]) -> tuple[Spot, ...]:
    """Spots along the longest part of a row's edge that no other row stands on; none where that is
    short.
    """
    first, way = row.tops[0], row.tops[1] - row.tops[0]
    taken = sorted(
        tuple(sorted(((foot - first) / way).real for foot in other.feet)) for other in on_it
    )
    begin, found = 0.0, (0.0, 0.0)
    for start, end in (*taken, (1.0, 1.0)):
        found = max(found, (begin, start), key=lambda part: part[1] - part[0])
        begin = max(begin, end)
    start, end = found
    if (end - start) * abs(way) < _OPEN:
        return ()
    return tuple(first + way * (start + (end - start) * share) for share in _EVEN)


def _curve_labels(stage: Stage, row: Row, away: float) -> Iterator[Note]:
    """The load's letter beside its curve, and each load per length where the curve has it."""
    sizes = [abs(size) for size in row.spread.sizes]
    places = (0, len(sizes) - 1, sizes.index(max(sizes)))
    named: dict[int, Name | Number] = {}
    for name in row.spread.names:
        size = stage.measured.number(name)
        at = next((place for place in places if isclose(sizes[place], size)), None)
        if at is not None:
            named.setdefault(at, name)
    for place, name in named.items():
        id = name.id if isinstance(name, Name) else row.element.id
        yield Note(stage.text(name), ((row.edge[place], away),), Tag(What.LABEL, id))
    spread = row.element.spread
    if spread is not None and spread.intensity is not None:
        shares = [share for share in _BESIDE if round(share * (len(sizes) - 1)) not in named]
        off = heading(away) * _OFF
        anchors = [(row.edge[round(share * (len(sizes) - 1))] + off, away) for share in shares]
        tag = Tag(What.LABEL, row.element.id)
        yield Note(spread.intensity.letter, tuple(anchors), tag)
