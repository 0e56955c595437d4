"""Where the end of one bar lies on the end of another: both are notched to half their thickness."""

from __future__ import annotations

from typing import Final

from probgen.bank.depiction import Look
from probgen.figures.measured.survey import ways_out
from probgen.figures.paper.scene import dot, heading
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element, Kind

_BARS: Final = frozenset({Look.BEAM, Look.GATE, Look.PLANK})
_SQUARE: Final = 0.02  # most cosine between two bars in one line and what one pushes the other with


def laps_of(stage: Stage, element: Element) -> dict[tuple[str, str], int]:
    """By body and point, 1 for the bar that lies on the other, -1 for that; none for bars that do
    not end in line at a contact square to them.
    """
    pair = stage.system.force(element.forces[0]).pair if element.forces else ""
    if element.kind is not Kind.CONTACT or not pair:
        return {}
    out, sides = heading(stage.normal(element)), {}
    ends = (element.body, element.at, 1), (stage.system.force(pair).body, element.at, -1)
    ways = []
    for id, point, side in ends:
        body = stage.system.body(id)
        found = ways_out(stage.measured.outline(body), stage.measured.places[point])
        if len(found) != 1 or len(body.outline) != 2 or stage.look(id) not in _BARS:
            return {}
        ways.append(found[0] / abs(found[0]))
        sides[id, point] = side if out.imag > 0 else -side
    square = all(abs(dot(way, out)) < _SQUARE for way in ways)
    return sides if square and abs(ways[0] + ways[1]) < _SQUARE else {}
