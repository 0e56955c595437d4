"""Bodies whose shear force and bending moment are drawn along them: [[diagram]]."""

from __future__ import annotations

from collections.abc import Sequence

from probgen.bank.direction import legs, straight
from probgen.bank.situation import Situation
from probgen.input.table import Table
from probgen.quantities.expression import ZERO
from probgen.quantities.like_terms import collected
from probgen.statics.geometry import angle_of
from probgen.statics.system import Element, Point


def read_diagrams(rows: Sequence[Table], situation: Situation) -> tuple[str, ...]:
    """The bodies named, each straight and level and with no weight that is not told along it."""
    found: list[str] = []
    for row in rows:
        id = situation.body(row)
        body = next((each for each in situation.bodies if each.id == id), None)
        if body is not None and not row.faults.found:
            ends = [situation.points[name] for name in body.outline]
            axis = straight(ends[0], ends[1]) if len(ends) == 2 else None
            turn = angle_of(axis.direction) if axis else None
            if turn is None or turn.multiples or turn.constant % 360:
                row.fault("body", id, "a straight body along two points, level, from left to right")
            elif any(element.own for element in situation.elements if element.body == id):
                expected = "a body whose weight is told along it"
                row.fault("body", id, expected, "write its weight as a distributed load")
            elif any(
                _aside(element, ends[0], situation)
                for element in situation.elements
                if element.body == id
            ):
                row.fault("body", id, "a body with no load but what is spread along it")
            elif id in found:
                row.fault("body", id, "a body that has no diagram yet", "leave one out")
            found.append(id)
        row.close()
    return tuple(found)


def _aside(element: Element, start: Point, situation: Situation) -> bool:
    """Whether a load is spread along another line than a level axis through a point."""
    if element.spread is None or not element.spread.start:
        return False
    begins = situation.points[element.spread.start]
    reach = Point("", (*begins.links, element.spread.line))
    ends = [
        place
        for place in (begins, reach)
        if any(collected(leg) != ZERO for leg in legs(start, place))
    ]
    lines = [straight(start, place) for place in ends]
    turns = [angle_of(line.direction) if line else None for line in lines]
    return any(turn is None or turn.multiples or turn.constant % 180 for turn in turns)
