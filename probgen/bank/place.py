"""The points of a template: expressions in the ground frame turned into links from the origin."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any, Final

from probgen.bank.fault import nearest, one_of
from probgen.bank.scope import Scope
from probgen.bank.table import Table
from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Number,
    Product,
    Sum,
    is_number,
    number,
)
from probgen.quantities.unit import ANGLE, LENGTH
from probgen.statics.system import Link, Point

_LETTER: Final = re.compile(r"[A-Z](_?[A-Za-z0-9]{1,3})?'?")
MOST_POINTS: Final = 60
_FORMS: Final = '["x", "y"] or { from = "A", distance = "d", direction = "theta" }'


@dataclass(slots=True)
class _Places:
    """Points read on demand, since one may be reached from another written further down."""

    table: Table
    scope: Scope
    done: dict[str, tuple[Link, ...]] = field(default_factory=dict)
    open: list[str] = field(default_factory=list)

    def links(self, name: str) -> tuple[Link, ...]:
        if name not in self.done:
            self.open.append(name)
            self.done[name] = self._read(name, self.table.value(name, _FORMS, True))
            self.open.pop()
        return self.done[name]

    def _read(self, name: str, value: Any) -> tuple[Link, ...]:
        if not _LETTER.fullmatch(name):
            self.table.fault(name, name, "a capital letter, with a digit or two if need be")
        if isinstance(value, dict):
            return self._polar(self.table.table(name))
        if not isinstance(value, list) or len(value) != 2:
            self.table.fault(name, value, _FORMS)
            return ()
        return self._straight(name, value)

    def _straight(self, name: str, pair: Sequence[Any]) -> tuple[Link, ...]:
        links = []
        for place, (value, direction) in enumerate(zip(pair, (0, 90), strict=True)):
            length = self.scope.expression(self.table, f"{name}[{place}]", LENGTH, value)
            links += [_link(length, direction)]
        return tuple(link for link in links if not is_number(link.length, 0))

    def _polar(self, row: Table) -> tuple[Link, ...]:
        start = self._start(row)
        distance = self.scope.expression(row, "distance", LENGTH)
        direction = self.scope.expression(row, "direction", ANGLE)
        row.close()
        return (*start, Link(distance, direction))

    def _start(self, row: Table) -> tuple[Link, ...]:
        name = row.word("from", tuple(self.table.content))
        if name in self.open:
            row.fault("from", name, "a point that is not reached from this one", "break the circle")
            return ()
        return self.links(name) if name else ()


def read_points(table: Table, scope: Scope) -> dict[str, Point]:
    """Every point of [points], by name."""
    if len(table.content) > MOST_POINTS:
        table.faults.add("points", f"{len(table.content)} points", f"at most {MOST_POINTS}")
        table.faults.settle()
    places = _Places(table, scope)
    if not table.content:
        table.faults.add("points", None, "at least one point", 'add [points] and A = ["0", "0"]')
    return {name: Point(name, places.links(name)) for name in table.content}


def read_point(table: Table, key: str, points: Mapping[str, Point]) -> str:
    """The name of a point under `key`; "" after a fault."""
    name = table.text(key, expected=one_of(points, "the points "))
    if name and name not in points:
        table.fault(key, name, one_of(points, "the points "), nearest(name, points))
        return ""
    return name


def direction_between(start: Point, end: Point) -> Expression:
    """The direction from one point toward another, degrees counter-clockwise from +x."""
    shared = 0
    while start.links[shared : shared + 1] == end.links[shared : shared + 1] != ():
        shared += 1
    steps = [(-1, link) for link in start.links[shared:]]
    steps += [(1, link) for link in end.links[shared:]]
    return Call("atan2", (_along(steps, "sin"), _along(steps, "cos")))


def _along(steps: Sequence[tuple[int, Link]], function: str) -> Expression:
    """The sum of the links' components: "cos" for x, "sin" for y."""
    terms = [(sign, _component(link, function)) for sign, link in steps]
    signed = [(sign * turn, part) for sign, (turn, part) in terms if not is_number(part, 0)]
    if not signed:
        return ZERO
    return signed[0][1] if len(signed) == 1 and signed[0][0] > 0 else Sum(tuple(signed))


_QUARTERS: Final[dict[Expression, tuple[int, int]]] = {
    number(0): (1, 0),
    number(90): (0, 1),
    number(180): (-1, 0),
    number(270): (0, -1),
}


def _component(link: Link, function: str) -> tuple[int, Expression]:
    """A sign and a length: one component of a link, exact along the axes."""
    quarter = _QUARTERS.get(link.direction)
    if quarter is None:
        return 1, Product((link.length, Call(function, (link.direction,))))
    turn = quarter[function == "sin"]
    return (turn, link.length) if turn else (1, ZERO)


def _link(length: Expression, direction: int) -> Link:
    """A link along an axis; a length written with a minus sign goes the other way."""
    match length:
        case Number(value, unit) if value < 0:
            return Link(Number(-value, unit), Number(Decimal(direction + 180)))
        case Sum(((-1, inner),)):
            return Link(inner, Number(Decimal(direction + 180)))
        case _:
            return Link(length, Number(Decimal(direction)))
