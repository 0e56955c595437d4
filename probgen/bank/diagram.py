"""Bodies whose shear force and bending moment are drawn along them: [[diagram]]."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.bank.direction import legs, straight
from probgen.bank.situation import Situation
from probgen.input.table import Table
from probgen.quantities.expression import ZERO, names_in
from probgen.quantities.like_terms import collected
from probgen.statics.geometry import angle_of
from probgen.statics.system import Body, Element, Point, Role

_PLACES: Final = ("key", "sheet")


def read_diagrams(
    rows: Sequence[Table], situation: Situation, *, to_scale: bool
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The bodies named, each straight and level and with no weight that is not told along it.

    Then those whose diagrams are to be drawn by students, in axes on the sheet: on = "sheet".
    to_scale: whether the figure is, so that there may be axes below it.
    """
    found: list[str] = []
    drawn: list[str] = []
    for row in rows:
        id = situation.body(row)
        body = next((each for each in situation.bodies if each.id == id), None)
        if body is not None and not row.faults.found:
            _check_body(row, body, situation, found)
            found.append(id)
        if row.has("on") and row.word("on", _PLACES) == "sheet":
            _check_sheet(row, body, situation, to_scale=to_scale)
            drawn.append(id)
        row.close()
    return tuple(found), tuple(drawn)


def _check_body(row: Table, body: Body, situation: Situation, found: Sequence[str]) -> None:
    ends = [situation.points[name] for name in body.outline]
    own = [element for element in situation.elements if element.body == body.id]
    axis = straight(ends[0], ends[1]) if len(ends) == 2 else None
    turn = angle_of(axis.direction) if axis else None
    if turn is None or turn.multiples or turn.constant % 360:
        expected = "a straight body along two points, level, from left to right"
        row.fault("body", body.id, expected)
    elif any(element.own for element in own):
        expected = "a body whose weight is told along it"
        row.fault("body", body.id, expected, "write its weight as a distributed load")
    elif any(_aside(element, ends[0], situation) for element in own):
        row.fault("body", body.id, "a body with no load but what is spread along it")
    elif body.id in found:
        row.fault("body", body.id, "a body that has no diagram yet", "leave one out")


def _check_sheet(row: Table, body: Body | None, situation: Situation, *, to_scale: bool) -> None:
    """Axes on a sheet stand below the body as it is drawn, so that has to have its true length."""
    variables = situation.scope.variables
    links = [link for name in body.outline for link in situation.points[name].links] if body else []
    held = frozenset[str]().union(*(names_in(link.length) for link in links))
    open_ = [id for id in sorted(held) if variables[id].role is Role.UNKNOWN]
    if not to_scale:
        mend = "leave [picture] out, or on"
        row.fault("on", "sheet", "a figure in its true proportions", mend)
    elif open_ and not row.faulty("body"):
        expected = "a body whose ends are known before the working"
        row.fault("on", "sheet", expected, f"{open_[0]} is to be found; leave on out")


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
