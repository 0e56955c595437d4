"""What pulls or pushes along a line: cables, muscles, springs, struts, and ropes over pulleys.

Directions are degrees counter-clockwise from +x, of the force on the body.  Where an entry names an
`other` body, that one feels the equal and opposite, at the point the line runs to.
"""

from __future__ import annotations

from probgen.bank.direction import turned
from probgen.bank.labels import ByKind, Called, Coined, Label, Sort
from probgen.bank.situation import Situation
from probgen.input.table import Table
from probgen.quantities.expression import Expression, Name, Product, number
from probgen.quantities.unit import LENGTH, NEWTON, STIFFNESS
from probgen.statics.quantity_id import pull_id
from probgen.statics.system import Element, Force, Kind


def cable(row: Table, situation: Situation) -> None:
    """A cable, tie or chain: it pulls along `direction`, or toward a point."""
    _pull(row, situation, Kind.CABLE, ByKind.CABLE, Sort.TENSION)


def muscle(row: Table, situation: Situation) -> None:
    """A muscle or tendon: it pulls along `direction`, or toward a point."""
    _pull(row, situation, Kind.MUSCLE, ByKind.MUSCLE, Sort.PULL)


def _pull(row: Table, situation: Situation, kind: Kind, usual: ByKind, sort: Sort) -> None:
    body = situation.body(row)
    at = situation.at(row, body)
    direction, toward = situation.line(row, at)
    name = situation.named_or(row, usual)
    size, symbol = stated_size(row, situation, Coined(sort, name), nonnegative=True)
    id, of = own_id(row, situation, symbol, kind)
    element = Element(id, kind, body, at, (id,), toward, of=of)
    force = Force(id, body, at, size, direction, kind, id)
    back = situation.reaction(row, body, at, name, toward, "toward")
    situation.place(row, element, Label(symbol, name), [force], back=back)


def strut(row: Table, situation: Situation) -> None:
    """A strut: it pushes along `direction`, or away from the point it is propped on."""
    body = situation.body(row)
    at = situation.at(row, body)
    direction, base = situation.line(row, at, "away_from")
    direction = turned(direction, 180) if base else direction
    name = situation.named_or(row, ByKind.STRUT)
    size, symbol = stated_size(row, situation, Coined(Sort.PUSH, name), nonnegative=True)
    id, of = own_id(row, situation, symbol, Kind.STRUT)
    element = Element(id, Kind.STRUT, body, at, (id,), base, of=of)
    force = Force(id, body, at, size, direction, Kind.STRUT, id)
    back = situation.reaction(row, body, at, name, base, "away_from")
    situation.place(row, element, Label(symbol, name), [force], back=back)


def spring(row: Table, situation: Situation) -> None:
    """A spring: it pulls with stiffness times stretch, or pushes when it is compressed.

    `direction` is that of its force on the body; `toward` is where its other end is.
    """
    body = situation.body(row)
    at = situation.at(row, body)
    direction, toward = situation.line(row, at)
    name = situation.named_or(row, ByKind.SPRING)
    change = "compression" if row.has("compression") else "stretch"
    if toward and change == "compression":
        direction = turned(direction, 180)
    called = Coined(Sort.SPRING_FORCE, name)
    if row.has("stiffness") or row.has(change):
        size: Expression = _elastic(row, situation, change, called)
        symbol = str(row.content.get("symbol", ""))
    else:
        size, symbol = stated_size(row, situation, called, nonnegative=True)
    element = Element(
        symbol, Kind.SPRING, body, at, (symbol,), toward, compressed=change == "compression"
    )
    force = Force(symbol, body, at, size, direction, Kind.SPRING, symbol)
    back = situation.reaction(row, body, at, name, toward, "toward")
    situation.place(row, element, Label(symbol, name), [force], back=back)


def _elastic(row: Table, situation: Situation, change: str, name: Called) -> Name:
    """A spring's force as its stiffness (N/m) times its change of length (m)."""
    if change == "compression" and row.has("stretch"):
        row.fault("stretch", row.content["stretch"], "either stretch or compression, not both")
    factors = (
        situation.scope.expression(row, "stiffness", STIFFNESS),
        situation.scope.expression(row, change, LENGTH),
    )
    return situation.defined(row, situation.symbol(row), Product(factors), NEWTON, name)


def rope(row: Table, situation: Situation) -> None:
    """A rope or tendon over pulleys or round a bone: one tension wherever it pulls.

    Each of `pulls` says on which body, at which point and which way, and by how many strands.
    """
    name = situation.named_or(row, ByKind.ROPE)
    tension, symbol = stated_size(row, situation, Coined(Sort.TENSION, name), nonnegative=True)
    pulls = row.tables("pulls")
    if not pulls and not row.faulty("pulls"):
        expected = "the places it pulls at"
        row.fault("pulls", None, expected, 'pulls = [{ at = "A", direction = 90 }]')
    for place, pull in enumerate(pulls):
        body = situation.body(pull)
        at = situation.at(pull, body)
        direction, toward = situation.line(pull, at)
        strands = pull.whole("strands", 1, 20, default=1)
        pull.close()
        size = tension if strands == 1 else Product((number(strands), tension))
        id = pull_id(symbol, place + 1) if place else symbol
        of = symbol if place else ""
        element = Element(id, Kind.ROPE, body, at, (id,), toward, of=of)
        force = Force(id, body, at, size, direction, Kind.ROPE, id)
        situation.place(row, element, Label(symbol, name), [force])


def own_id(row: Table, situation: Situation, symbol: str, kind: Kind) -> tuple[str, str]:
    """The id of a force, and the id of the first with the same known size, "" for that itself."""
    id = situation.next_id(symbol, kind) if row.has("magnitude") and symbol else symbol
    return id, symbol if id != symbol else ""


def stated_size(
    row: Table, situation: Situation, name: Called, *, nonnegative: bool = False
) -> tuple[Expression, str]:
    """The magnitude of a force and its id: as stated, or an unknown with the symbol written."""
    if row.has("magnitude"):
        symbol = situation.symbol(row) if row.has("symbol") else ""
        size = situation.known(row, "magnitude", symbol, NEWTON, name)
    else:
        size = situation.unknown(row, situation.symbol(row), NEWTON, name, nonnegative=nonnegative)
    return size, size.id if isinstance(size, Name) else ""
