"""A chain, its links seen in turn from the front and from the edge.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from typing import Final

from probgen.figures.paper.scene import LIGHT, MEDIUM, Curve, Shape, Spot, Tone, line
from probgen.figures.paper.tag import Tag

_LINK: Final = 5.6  # length of a link, pt
_PITCH: Final = 8.4  # from one that is seen from the front to the next
_HALF: Final = 1.7  # half the breadth of one


def chain(start: Spot, end: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A taut chain; what is seen of its links from the edge is one line through all of it."""
    length = abs(end - start)
    unit = (end - start) / length
    count = max(0, int((length - _LINK) / _PITCH)) + 1
    first = (length - (count - 1) * _PITCH) / 2
    middles = (start + unit * (first + _PITCH * i) for i in range(count))
    return line(start, end, MEDIUM, tag), *(_link(middle, unit, tag) for middle in middles)


def _link(middle: Spot, unit: complex, tag: Tag) -> Curve:
    """An oval about a place, along a unit step."""
    half, side = unit * _LINK / 2, unit * 1j * _HALF * 4 / 3
    pieces = (
        (middle - half + side, middle + half + side, middle + half),
        (middle + half - side, middle - half - side, middle - half),
    )
    return Curve(middle - half, pieces, LIGHT, tag, tone=Tone.PAPER)
