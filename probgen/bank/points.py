"""The points of a template: expressions in the ground frame turned into links from the origin.

A = [0, 0]                                              x and y
B = { from = "A", distance = "L", direction = "theta" } along a direction, in any of its forms
C = { from = "A", distance = "d", toward = "B" }        toward another point
G = { midpoint = ["A", "B"] }
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any, Final

from probgen.bank.direction import direction_between, read_direction, read_pair
from probgen.bank.length import links_to_middle
from probgen.bank.scope import Scope
from probgen.input.fault import nearest, one_of
from probgen.input.table import Table
from probgen.quantities.expression import Expression, Number, Product, Sum, is_number, times
from probgen.quantities.unit import LENGTH
from probgen.statics.system import Link, Point

_LETTER: Final = re.compile(r"[A-Z](_?[A-Za-z0-9]{1,3})?'?")
MOST_POINTS: Final = 60
_FORMS: Final = (
    '["x", "y"], { from = "A", distance = "d", direction = "theta" }, '
    '{ from = "A", distance = "d", toward = "B" } or { midpoint = ["A", "B"] }'
)


@dataclass(slots=True)
class _Places(Mapping[str, Point]):
    """Points read on demand, since one may be reached from another written further down."""

    table: Table
    scope: Scope
    done: dict[str, Point] = field(default_factory=dict)
    open: list[str] = field(default_factory=list)

    def __iter__(self) -> Iterator[str]:
        return iter(self.table.content)

    def __len__(self) -> int:
        return len(self.table.content)

    def __contains__(self, name: object) -> bool:
        return name in self.table.content

    def __getitem__(self, name: str) -> Point:
        if name in self.open:
            expected = "a point that is not reached from this one"
            self.table.fault(self.open[-1], name, expected, "break the circle")
            return Point(name, ())
        if name not in self.done:
            self.open.append(name)
            links = self._read(name, self.table.value(name, _FORMS, True))
            self.done[name] = Point(name, links)
            self.open.pop()
        return self.done[name]

    def _read(self, name: str, value: Any) -> tuple[Link, ...]:
        if not _LETTER.fullmatch(name):
            self.table.fault(name, name, "a capital letter, with a digit or two if need be")
        if isinstance(value, dict):
            return self._reached(self.table.table(name))
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

    def _reached(self, row: Table) -> tuple[Link, ...]:
        links = self._midway(row) if row.has("midpoint") else self._away(row)
        row.close()
        return links

    def _midway(self, row: Table) -> tuple[Link, ...]:
        pair = read_pair(row, "midpoint", self)
        return links_to_middle(*pair) if pair else ()

    def _away(self, row: Table) -> tuple[Link, ...]:
        start = read_point(row, "from", self)
        distance = self.scope.expression(row, "distance", LENGTH)
        if row.has("toward"):
            toward = read_point(row, "toward", self)
            if not (start and toward):
                return ()
            if start == toward:
                row.fault("toward", toward, "another point than the one it starts from")
            direction = direction_between(self[start], self[toward], self.scope)
        else:
            direction = read_direction(row, "direction", self.scope, self)
        return (*self[start].links, Link(distance, direction)) if start else ()


def read_points(table: Table, scope: Scope) -> dict[str, Point]:
    """Every point of [points], by name."""
    if len(table.content) > MOST_POINTS:
        table.faults.add("points", f"{len(table.content)} points", f"at most {MOST_POINTS}")
        table.faults.settle()
    places = _Places(table, scope)
    return {name: places[name] for name in table.content}


def read_point(table: Table, key: str, points: Mapping[str, Point]) -> str:
    """The name of a point under `key`; "" after a fault."""
    name = table.text(key, expected=one_of(points, "the points "))
    if name and name not in points:
        table.fault(key, name, one_of(points, "the points "), nearest(name, points))
        return ""
    return name


def _link(length: Expression, direction: int) -> Link:
    """A link along an axis; a length written with a minus sign goes the other way."""
    match length:
        case Number(value, unit) if value < 0:
            return Link(Number(-value, unit), Number(Decimal(direction + 180)))
        case Sum(((-1, inner),)):
            return Link(inner, Number(Decimal(direction + 180)))
        case Product((Number(value, unit), *others)) if value < 0:
            return Link(times(Number(-value, unit), *others), Number(Decimal(direction + 180)))
        case _:
            return Link(length, Number(Decimal(direction)))
