"""The situation of a template while it is read: what elements are placed on, and what they add."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import chain, count

from probgen.bank.depiction import Depiction
from probgen.bank.direction import direction_between, read_direction
from probgen.bank.labels import BodyNamed, Called, Label, Reason, Slipping
from probgen.bank.points import read_point
from probgen.bank.reaction import Reaction
from probgen.bank.scope import SYMBOL_EXPECTED, Scope, is_symbol
from probgen.bank.template import Requirement
from probgen.input.fault import nearest, one_of
from probgen.input.table import Table
from probgen.quantities.expression import Expression, Name, names_in
from probgen.quantities.unit import ANGLE, Unit
from probgen.statics.quantity_id import back_id, pull_id
from probgen.statics.system import (
    Body,
    Condition,
    Couple,
    Definition,
    Element,
    Find,
    Force,
    Kind,
    LargestMoment,
    Limit,
    Link,
    Member,
    Point,
    Role,
    Variable,
)


@dataclass(slots=True)
class Situation:
    """Points and bodies that are known, and what the elements read so far have added.

    letters: every text of the file that could be a symbol, so that a point made here gets another.
    shown: what the kind of an entry alone says the figure shows, by the element's id.
    named, nouns, events, reasons, wordings: what elements, bodies, limits, conditions and finds
    are called.  varying: what is asked and may be of another regime in some draws.
    largest: bending moments asked that are the largest in their body.
    nowhere: particles that nobody placed, by the points made for them.
    """

    scope: Scope
    points: dict[str, Point]
    letters: frozenset[str] = frozenset()
    bodies: tuple[Body, ...] = ()
    forces: list[Force] = field(default_factory=list)
    couples: list[Couple] = field(default_factory=list)
    elements: list[Element] = field(default_factory=list)
    definitions: list[Definition] = field(default_factory=list)
    conditions: list[Condition] = field(default_factory=list)
    limits: list[Limit] = field(default_factory=list)
    members: list[Member] = field(default_factory=list)
    requirements: list[Requirement] = field(default_factory=list)
    shown: dict[str, Depiction] = field(default_factory=dict)
    named: dict[str, Label] = field(default_factory=dict)
    nouns: dict[str, str] = field(default_factory=dict)
    events: dict[str, str | Slipping] = field(default_factory=dict)
    reasons: dict[str, str | Reason] = field(default_factory=dict)
    wordings: dict[Find, str] = field(default_factory=dict)
    varying: set[str] = field(default_factory=set)
    largest: list[LargestMoment] = field(default_factory=list)
    nowhere: dict[str, str] = field(default_factory=dict)

    @property
    def names_to_tell(self) -> list[str] | None:
        """What a text may name: quantities, two-component forces, points; None in doubt."""
        if not self.scope.whole:
            return None
        variables = self.scope.variables.values()
        quantities = [variable.id for variable in variables if not variable.component_of]
        own = [element.id for element in self.elements if not element.of]
        named = [id for id in own if id not in quantities]
        loads = (each.spread.intensity for each in self.elements if each.spread)
        along = [name.id for load in loads if load for name in (load.along, load.letter)]
        return [*quantities, *named, *along, *self.points]

    def body(self, row: Table) -> str:
        """The body an element acts on; it need not be named when there is only one."""
        ids = [body.id for body in self.bodies if not body.part_of]
        if len(ids) == 1 and not row.has("body"):
            return ids[0]
        return row.word("body", ids)

    def named_or(self, row: Table, usual: Called) -> Called:
        """What the author calls what acts, else what it goes by."""
        return row.text("name", "") or usual

    def touched(self, row: Table, usual: Called) -> Called:
        """What a surface goes by: the other body where there is one, else its kind."""
        other = next((body.id for body in self.bodies if body.id == row.content.get("other")), "")
        return self.named_or(row, BodyNamed(other) if other else usual)

    def joined(self, row: Table, body: str, usual: Called) -> tuple[Called, Called]:
        """What a joint goes by on its body, and on the other one: a body that gives it its name
        cannot act on itself, and is acted on by the first.
        """
        name = self.named_or(row, usual)
        if not row.has("other"):
            return name, name
        other = str(row.content["other"])
        if name in (body, self.nouns.get(body)):
            expected = f"what joins {body} to the other body, or the name of that"
            row.fault("name", name, expected, f'write name = "{other}", or leave name out')
        elif name in (other, self.nouns.get(other)):
            return BodyNamed(other), BodyNamed(body)
        return name, name

    def at(self, row: Table, body: str, key: str = "at") -> str:
        """The point an element acts at, that of a particle unless said; "" after a fault."""
        place = self.place_of(body)
        return place if place and not row.has(key) else read_point(row, key, self.points)

    def place_of(self, body: str) -> str:
        """The point a particle is at; "" for a body with extent."""
        found = next((each for each in self.bodies if each.id == body), None)
        return found.outline[0] if found and found.particle and found.outline else ""

    def add_point(self, stem: str, links: Sequence[Link]) -> str:
        """Makes a point nobody named, and gives it a letter nothing else has."""
        taken = self.scope.symbols | self.letters | self.points.keys() | self.scope.variables.keys()
        names = chain([stem], (f"{stem}_{n}" for n in count(1)))
        name = next(each for each in names if each not in taken)
        self.points[name] = Point(name, tuple(links))
        return name

    def direction(
        self, row: Table, default: Expression | None = None, key: str = "direction"
    ) -> Expression:
        """Degrees counter-clockwise from +x, in any of the forms of a direction."""
        if default is not None and not row.has(key):
            return default
        return read_direction(row, key, self.scope, self.points)

    def line(self, row: Table, at: str, key: str = "toward") -> tuple[Expression, str]:
        """The direction of a pull, and the point it is toward ("" when a direction is given)."""
        if not row.has(key):
            return self.direction(row), ""
        if row.has("direction"):
            row.fault("direction", row.content["direction"], f"either direction or {key}, not both")
        toward = read_point(row, key, self.points)
        if not toward or not at:
            return self.scope.expression(row, key, ANGLE, "0"), toward
        if at in self.nowhere and not row.has("direction"):
            expected = f"a direction, or a particle {self.nowhere[at]} that has a place"
            row.fault(key, toward, expected, f'add along = ["C"] to [body.{self.nowhere[at]}]')
        if toward == at:
            row.fault(key, toward, "another point than the one it is fixed at")
        return direction_between(self.points[at], self.points[toward], self.scope), toward

    def reaction(
        self, row: Table, body: str, at: str, name: Called, toward: str = "", key: str = "at"
    ) -> Reaction | None:
        """Where the element acts back, when `other` names a second body; None without one.

        On a particle it acts at the particle's own point, on a body at `toward`, else at `at`.
        key: the field that says where on the other body.
        """
        if not row.has("other"):
            return None
        other = row.word("other", [each.id for each in self.bodies if each.id != body])
        place = self.place_of(other)
        said = toward or (key == "at" and (row.has("at") or not self.place_of(body)))
        if other and not place and not said and not row.faulty(key):
            expected = f"the point of {other} it acts at"
            row.fault(key, None, expected, f"add {key} = ...")
        return Reaction(other, place or toward or at, name, at if toward else "")

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
        name: Called,
        *,
        symbol: str = "",
        key: str = "symbol",
        nonnegative: bool = False,
        component_of: str = "",
    ) -> Name:
        """Declares an unknown and gives its name in expressions."""
        letter = Name(id, symbol or id)
        variable = Variable(letter, unit.dimension, unit, Role.UNKNOWN, nonnegative, component_of)
        if id:
            self.scope.declare(variable, Label(letter.symbol, name), row, key)
        return letter

    def known(self, row: Table, key: str, symbol: str, unit: Unit, name: Called) -> Expression:
        """A size the author states under `key`: the name of a quantity, or a definition.

        An expression other than a bare name gets a quantity of its own, with the symbol written.
        """
        size = self.scope.expression(row, key, unit.dimension)
        if isinstance(size, Name) and symbol in ("", size.symbol):
            return size
        return self.defined(row, symbol or self.symbol(row), size, unit, name)

    def defined(
        self,
        row: Table,
        id: str,
        size: Expression,
        unit: Unit,
        name: Called,
        *,
        symbol: str = "",
        component_of: str = "",
    ) -> Name:
        """Declares a quantity that the working computes, and gives its name."""
        letter = Name(id, symbol or id)
        if id:
            variable = Variable(
                letter, unit.dimension, unit, Role.DEFINED, component_of=component_of
            )
            self.scope.declare(variable, Label(letter.symbol, name), row)
            self.definitions.append(Definition(id, size))
        return letter

    def next_id(self, id: str, kind: Kind) -> str:
        """The id of an entry by its quantity's: a number after it where one of its kind has that.

        Two equal loads P are one quantity, and two things that act.
        """
        taken = {element.id for element in self.elements}
        if any(each.id == id and each.kind is not kind for each in self.elements):
            return id  # the letter of something else
        further = (pull_id(id, place) for place in count(2))
        return next(each for each in chain([id], further) if each not in taken)

    def place(
        self,
        row: Table,
        element: Element,
        label: Label,
        forces: Sequence[Force] = (),
        couples: Sequence[Couple] = (),
        back: Reaction | None = None,
    ) -> None:
        """Adds an element with what it exerts, and what acts back; its id must be its own.

        label: its letter and what exerts its forces.
        """
        taken = any(other.id == element.id for other in self.elements)
        if element.id and taken and not row.faulty("symbol"):
            expected = "a symbol that no other element has"
            row.fault("symbol", element.id, expected, 'write symbol = "..."')
        self._check_joint(row, element.body, element.at)
        if back is not None:
            self._check_joint(row, back.body, back.at)
        if back is None:
            self._add(element, label, forces, couples)
            return
        reacting = [back.force(force) for force in forces]
        turning = [back.couple(couple) for couple in couples]
        self._add(
            element,
            label,
            [replace(force, pair=back_id(force.id)) for force in forces],
            [replace(couple, pair=back_id(couple.id)) for couple in couples],
        )
        self._add(back.element(element, reacting), back.label(label), reacting, turning)

    def _check_joint(self, row: Table, body: str, at: str) -> None:
        """What holds or loads a truss does so at its joints, else members would be bent."""
        joints = next((each.joints for each in self.bodies if each.id == body), ())
        if joints and at and at not in joints and not row.faulty("at"):
            mend = "hold and load a truss at its joints"
            row.fault("at", at, one_of(joints, "the joints "), nearest(at, joints) or mend)

    def _add(
        self,
        element: Element,
        label: Label,
        forces: Sequence[Force],
        couples: Sequence[Couple],
    ) -> None:
        self.elements.append(element)
        self.named.setdefault(element.id, label)
        self.forces += forces
        self.couples += couples

    @property
    def names_used(self) -> frozenset[str]:
        """Ids of the quantities that points, forces, couples and equations are written with."""
        links = [link for point in self.points.values() for link in point.links]
        written = [part for link in links for part in (link.length, link.direction)]
        written += [part for f in self.forces for part in (f.magnitude, f.direction)]
        written += [couple.moment for couple in self.couples]
        written += [definition.expression for definition in self.definitions]
        written += [side for each in self.conditions for side in (each.left, each.right)]
        return frozenset().union(*map(names_in, written))

    def add_condition(
        self, left: Expression, right: Expression, reason: str | Reason, id: str = ""
    ) -> None:
        """Adds a further equation, numbered unless it has an id."""
        taken = {condition.id for condition in self.conditions}
        id = id or next(str(n) for n in count(1) if str(n) not in taken)
        self.conditions.append(Condition(id, left, right))
        self.reasons[id] = reason

    def add_limit(self, limit: Limit, event: str | Slipping) -> None:
        """Adds something that may give way; event: what happens beyond it."""
        self.limits.append(limit)
        self.events.setdefault(limit.id, event)

    def finish(self, row: Table) -> None:
        """Closes an element's table; without its symbol some names are not known."""
        whole = row.close() and not row.faulty("symbol")
        self.scope.whole = self.scope.whole and whole
