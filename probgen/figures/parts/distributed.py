"""A distributed load: a row of arrows under its envelope.

Lengths are pt, places complex numbers in pt, directions degrees counter-clockwise from +x.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.figures.paper.scene import FINE, LIGHT, Arrow, Box, Path, Shape, Spot, heading
from probgen.figures.paper.tag import Tag

_HEAD: Final = 4.0  # length of an arrow's head, pt; of a short arrow less,
_SHARE: Final = 0.8  # as much of it as that
_SLENDER: Final = 0.65  # width of a head, of its length
_LEAST: Final = 2.0  # the shortest arrow that can be read as one, pt


def spread(
    start: Spot, end: Spot, direction: float, heights: Sequence[float], tag: Tag,
    gaps: Sequence[Box] = (), before: Sequence[Box] = (), inner: bool = False,
) -> tuple[Shape, ...]:  # fmt: skip
    """A distributed load: a row of arrows onto the line from start to end, under its envelope.

    direction: of the load, degrees; heights: the arrows' lengths at equal steps from start to end,
    pt, two of them where its envelope is straight.
    gaps: what stands among the arrows; they leave room for it.  before: what stands among them too,
    but the envelope runs on behind it.  inner: no arrow is at an end, where it would lie on the
    ground.
    """
    step, way, steps = heading(direction), end - start, len(heights) - 1
    count = max(3, round(abs(way) / 13.0))
    wide, ahead = ([box.grown(2.0) for box in boxes] for boxes in (gaps, before))

    def top(share: float) -> Spot:
        return start + way * share - step * size_between(heights, share)

    def run(first: float, last: float) -> list[Spot]:
        between = (place / steps for place in range(1, steps))
        return [top(share) for share in (first, *(s for s in between if first < s < last), last)]

    arrows: list[Shape] = []
    places = (i + 0.5 for i in range(count)) if inner else range(count + 1)
    for place in places:
        foot, tip = start + way * place / count, top(place / count)
        if any(_passes(foot, tip, box) for box in (*wide, *ahead)):
            continue
        if abs(tip - foot) > _LEAST:
            head = min(_HEAD, _SHARE * abs(tip - foot))
            arrows.append(Arrow(tip, foot, FINE, tag, head, _SLENDER * head))
    begin, edges = 0.0, []
    for first, last in sorted(_shares(start, way, box) for box in wide):
        if first > 0.0 and last < 1.0 and any(_passes(top(first), top(last), b) for b in wide):
            edges.append(run(begin, first))
            begin = last
    edges.append(run(begin, 1.0))
    edges[0].insert(0, start)
    edges[-1].append(end)
    return Path(tuple(tuple(edge) for edge in edges), LIGHT, tag), *arrows


def size_between(sizes: Sequence[float], share: float) -> float:
    """The size at a share of a length, of sizes at equal steps along it."""
    place = min(max(share, 0.0), 1.0) * (len(sizes) - 1)
    first = min(int(place), len(sizes) - 2)
    return sizes[first] + (sizes[first + 1] - sizes[first]) * (place - first)


def _passes(start: Spot, end: Spot, box: Box) -> bool:
    """Whether the upright rectangle about a straight piece shares area with a box."""
    left, right = sorted((start.real, end.real))
    bottom, top = sorted((start.imag, end.imag))
    return (
        box.left < right + 0.1
        and left < box.right
        and (
            box.bottom < top - 3.0 and bottom + 3.0 < box.top
            if top - bottom > 6.0
            else box.bottom < top and bottom < box.top
        )
    )


def _shares(start: Spot, way: complex, box: Box) -> tuple[float, float]:
    """Between which shares of a line a box lies."""
    spots = (box.left + 1j * box.bottom, box.right + 1j * box.bottom)
    first, last = sorted(((spot - start) / way).real for spot in spots)
    return first, last
