"""The situation of a template while it is read: what elements are placed on, and what they add."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from probgen.bank.place import direction_between, read_point
from probgen.bank.scope import SYMBOL_EXPECTED, Scope, is_symbol
from probgen.bank.table import Table
from probgen.quantities.expression import Expression, Name
from probgen.quantities.unit import ANGLE, Unit
from probgen.statics.system import (
    Body,
    Condition,
    Couple,
    Definition,
    Element,
    Force,
    Point,
    Role,
    Variable,
)


@dataclass(slots=True)
class Situation:
    """Points and bodies that are known, and what the elements read so far have added."""

    scope: Scope
    points: Mapping[str, Point]
    bodies: tuple[Body, ...]
    forces: list[Force] = field(default_factory=list)
    couples: list[Couple] = field(default_factory=list)
    elements: list[Element] = field(default_factory=list)
    definitions: list[Definition] = field(default_factory=list)
    conditions: list[Condition] = field(default_factory=list)

    def body(self, row: Table) -> str:
        """The body an element acts on; it need not be named when there is only one."""
        ids = [body.id for body in self.bodies]
        if len(ids) == 1 and not row.has("body"):
            return ids[0]
        return row.word("body", ids)

    def at(self, row: Table, key: str = "at") -> str:
        """The point an element acts at; "" after a fault."""
        return read_point(row, key, self.points)

    def direction(self, row: Table, default: Expression | None = None) -> Expression:
        """Degrees counter-clockwise from +x, under `direction`."""
        if default is not None and not row.has("direction"):
            return default
        return self.scope.expression(row, "direction", ANGLE)

    def pull_direction(self, row: Table, at: str) -> tuple[Expression, str]:
        """The direction of a pull, and the point it is toward ("" when a direction is given)."""
        if not row.has("toward"):
            return self.direction(row), ""
        if row.has("direction"):
            row.fault("direction", row.content["direction"], "either direction or toward, not both")
        toward = self.at(row, "toward")
        if not toward or not at:
            return self.scope.expression(row, "toward", ANGLE, "0"), toward
        if toward == at:
            row.fault("toward", toward, "another point than the one it is fixed at")
        return direction_between(self.points[at], self.points[toward]), toward

    def symbol(self, row: Table, key: str = "symbol") -> str:
        """A symbol that must be written; "" after a fault."""
        symbol = row.text(key, expected=SYMBOL_EXPECTED)
        if symbol and not is_symbol(symbol):
            row.fault(key, symbol, SYMBOL_EXPECTED)
            symbol = ""
        self.scope.whole = self.scope.whole and bool(symbol)
        return symbol

    def unknown(
        self,
        row: Table,
        id: str,
        unit: Unit,
        name: str,
        *,
        symbol: str = "",
        key: str = "symbol",
        nonnegative: bool = False,
    ) -> Expression:
        """Declares an unknown and gives its name in expressions."""
        variable = Variable(
            id,
            symbol or id,
            unit.dimension,
            unit,
            name,
            Role.UNKNOWN,
            nonnegative,
        )
        if id:
            self.scope.declare(variable, row, key)
        return variable.as_name

    def known(self, row: Table, key: str, symbol: str, unit: Unit, name: str) -> Expression:
        """A size the author states under `key`: the name of a quantity, or a definition.

        An expression other than a bare name gets a quantity of its own, with the symbol written.
        """
        size = self.scope.expression(row, key, unit.dimension)
        if isinstance(size, Name) and symbol in ("", size.symbol):
            return size
        return self.defined(row, symbol or self.symbol(row), size, unit, name)

    def defined(self, row: Table, id: str, size: Expression, unit: Unit, name: str) -> Expression:
        """Declares a quantity that the working computes, and gives its name."""
        variable = Variable(id, id, unit.dimension, unit, name, Role.DEFINED)
        if id:
            self.scope.declare(variable, row)
            self.definitions.append(Definition(id, size))
        return variable.as_name

    def place(self, row: Table, element: Element, *forces: Force) -> None:
        """Adds an element with its forces; its id must be its own."""
        taken = any(other.id == element.id for other in self.elements)
        if element.id and taken and not row.faulty("symbol"):
            expected = "a symbol that no other element has"
            row.fault("symbol", element.id, expected, 'write symbol = "..."')
        self.elements.append(element)
        self.forces += forces

    def finish(self, row: Table) -> None:
        """Closes an element's table; without its symbol some names are not known."""
        whole = row.close() and not row.faulty("symbol")
        self.scope.whole = self.scope.whole and whole


def with_article(noun: str) -> str:
    """A noun as sentences use it: "the cable"; left alone when it has an article already."""
    first = noun.split(" ", 1)[0].lower()
    return noun if first in ("the", "a", "an", "your", "one", "") else f"the {noun}"


def choose_point(row: Table, key: str, points: Mapping[str, Point]) -> str:
    """An optional point under `key`, "" when there is none."""
    return read_point(row, key, points) if row.has(key) else ""


