"""What can act on a body: one function for each kind of entry a template may hold.

Directions are degrees counter-clockwise from +x, of the force on the body.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from decimal import Decimal
from typing import Final

from probgen.bank.scope import Scope
from probgen.bank.situation import Situation, with_article
from probgen.bank.table import Table
from probgen.quantities.expression import Expression, Name, Number, Product, Sum, number
from probgen.quantities.unit import ANGLE, MASS, NEWTON, NEWTON_METRE, ONE, PLAIN
from probgen.statics.system import Condition, Couple, Element, Force, Kind, Role

RIGHT, UP, DOWN = number(0), number(90), number(270)


def hinge(row: Table, situation: Situation) -> None:
    """A pin: a force of any direction, given by its components along x and y."""
    body, at, symbol = situation.body(row), situation.at(row), situation.symbol(row)
    name = with_article(row.text("name", "hinge"))
    taken = {word for v in situation.scope.variables.values() for word in (v.id, v.symbol)}
    if symbol in taken:
        row.fault("symbol", symbol, "a symbol that nothing else has")
    forces = []
    for axis, direction in (("x", RIGHT), ("y", UP)):
        id = f"{symbol}.{axis}" if symbol else ""
        printed = f"{symbol}{axis}" if "_" in symbol else f"{symbol}_{axis}"
        words = f"{axis}-component of the force from {name}"
        size = situation.unknown(row, id, NEWTON, words, symbol=printed)
        forces.append(Force(id, body, at, size, direction, Kind.HINGE, name, symbol, axis))
    ids = tuple(force.id for force in forces)
    situation.place(row, Element(symbol, Kind.HINGE, body, at, symbol, name, ids), *forces)


def roller(row: Table, situation: Situation) -> None:
    """A roller: it pushes along `direction`, straight up unless said otherwise."""
    _push(row, situation, Kind.ROLLER, "roller", situation.direction(row, UP))


def contact(row: Table, situation: Situation) -> None:
    """A smooth surface: it pushes along `direction`, its outward normal."""
    _push(row, situation, Kind.CONTACT, "surface", situation.direction(row))


def fulcrum(row: Table, situation: Situation) -> None:
    """A support under a lever, pushing straight up."""
    _push(row, situation, Kind.CONTACT, "fulcrum", UP)


def _push(
    row: Table, situation: Situation, kind: Kind, noun: str, direction: Expression
) -> None:
    body, at, symbol = situation.body(row), situation.at(row), situation.symbol(row)
    name = with_article(row.text("name", noun))
    size = situation.unknown(row, symbol, NEWTON, f"force from {name}", nonnegative=True)
    element = Element(symbol, kind, body, at, symbol, name, (symbol,), surface=direction)
    force = Force(symbol, body, at, size, direction, kind, name, symbol, "normal")
    situation.place(row, element, force)


def rough(row: Table, situation: Situation) -> None:
    """A rough surface: a push along its normal, and friction along it.

    With a coefficient, friction has its largest value, f = mu N: a coefficient that is a given puts
    the body on the verge of slipping, one that is not is found, as the least that will do.
    """
    body, at = situation.body(row), situation.at(row)
    normal, friction = situation.symbol(row, "normal"), situation.symbol(row, "friction")
    name = with_article(row.text("name", "surface"))
    outward = situation.direction(row, UP)
    along = _turned(outward, -90)
    if row.has("friction_direction"):
        along = situation.scope.expression(row, "friction_direction", ANGLE)
    push = situation.unknown(
        row, normal, NEWTON, f"normal force from {name}", key="normal", nonnegative=True
    )
    grip = situation.unknown(row, friction, NEWTON, f"friction from {name}", key="friction")
    _limit(row, situation, friction, push, grip)
    kind = Kind.ROUGH
    situation.place(
        row,
        Element(normal, kind, body, at, normal, name, (normal, friction), surface=outward),
        Force(normal, body, at, push, outward, kind, name, normal, "normal"),
        Force(friction, body, at, grip, along, kind, name, normal, "friction"),
    )


def _limit(
    row: Table, situation: Situation, id: str, push: Expression, grip: Expression
) -> None:
    """The condition f = mu N, when a coefficient is named."""
    if not row.has("coefficient"):
        return
    text = row.content["coefficient"]
    held = situation.scope.variables.get(text) if isinstance(text, str) else None
    if held is not None and held.role is not Role.UNKNOWN:
        coefficient = situation.scope.expression(row, "coefficient", PLAIN)
        reason = "on the verge of slipping friction has its largest value"
    else:
        symbol = situation.symbol(row, "coefficient")
        words = "least coefficient of static friction"
        coefficient = situation.unknown(
            row, symbol, ONE, words, key="coefficient", nonnegative=True
        )
        reason = "with the least coefficient this friction is the largest there can be"
    largest = Product((coefficient, push))
    situation.conditions.append(Condition(f"{id}.limit", grip, largest, reason))


def cable(row: Table, situation: Situation) -> None:
    """A cable or rope: it pulls along `direction`, or toward a point."""
    _pull(row, situation, Kind.CABLE, "cable", "tension in")


def muscle(row: Table, situation: Situation) -> None:
    """A muscle or tendon: it pulls along `direction`, or toward a point."""
    _pull(row, situation, Kind.MUSCLE, "muscle", "pull of")


def _pull(row: Table, situation: Situation, kind: Kind, noun: str, words: str) -> None:
    body, at = situation.body(row), situation.at(row)
    direction, toward = situation.pull_direction(row, at)
    name = with_article(row.text("name", noun))
    size, symbol = _size(row, situation, f"{words} {name}", nonnegative=True)
    element = Element(symbol, kind, body, at, symbol, name, (symbol,), toward)
    situation.place(row, element, Force(symbol, body, at, size, direction, kind, name, symbol))


def force(row: Table, situation: Situation) -> None:
    """A force in a stated direction; without a magnitude it is to be found."""
    body, at, direction = situation.body(row), situation.at(row), situation.direction(row)
    name = with_article(row.text("name", "force"))
    size, symbol = _size(row, situation, name if name == "the force" else f"force from {name}")
    element = Element(symbol, Kind.FORCE, body, at, symbol, name, (symbol,))
    kind = Kind.FORCE
    situation.place(row, element, Force(symbol, body, at, size, direction, kind, name, symbol))


def _size(
    row: Table, situation: Situation, words: str, *, nonnegative: bool = False
) -> tuple[Expression, str]:
    """The magnitude of a force and its id: as stated, or an unknown with the symbol written."""
    if row.has("magnitude"):
        symbol = situation.symbol(row) if row.has("symbol") else ""
        size = situation.known(row, "magnitude", symbol, NEWTON, words)
    else:
        size = situation.unknown(
            row, situation.symbol(row), NEWTON, words, nonnegative=nonnegative
        )
    return size, size.id if isinstance(size, Name) else ""


def weight(row: Table, situation: Situation) -> None:
    """A weight, from a mass (W = m g) or as a force; `of` is the noun of what weighs."""
    body, at = situation.body(row), situation.at(row)
    if row.has("mass") == row.has("force"):
        row.fault("mass", row.content.get("mass"), "either a mass or a force", 'mass = "m"')
        situation.scope.whole = False
        row.expect("of", "symbol", "force")
        return
    key = "mass" if row.has("mass") else "force"
    noun = row.text("of", "") or _what_weighs(row.content.get(key), situation, body)
    name, words = with_article(noun), f"weight of {with_article(noun)}"
    symbol = situation.symbol(row) if row.has("symbol") else ""
    if key == "force":
        size = situation.known(row, key, symbol, NEWTON, words)
    else:
        mass = situation.scope.expression(row, "mass", MASS)
        factors = mass.factors if isinstance(mass, Product) else (mass,)
        product = Product((*factors, situation.scope.variables["g"].as_name))
        symbol = symbol or _weight_symbol(noun, situation.scope)
        size = situation.defined(row, symbol, product, NEWTON, words)
    id = size.id if isinstance(size, Name) else ""
    printed = size.symbol if isinstance(size, Name) else ""
    element = Element(id, Kind.WEIGHT, body, at, printed, name, (id,))
    situation.place(row, element, Force(id, body, at, size, DOWN, Kind.WEIGHT, name, id))


def _what_weighs(text: object, situation: Situation, body: str) -> str:
    """The noun of a mass called "tree mass" or "mass of the tree"; else the body's own."""
    variable = situation.scope.variables.get(text) if isinstance(text, str) else None
    found = re.fullmatch(r"mass of (.+)|(.+) mass", variable.name) if variable else None
    if found:
        return str(found[1] or found[2])
    return next((each.name for each in situation.bodies if each.id == body), "load")


def _weight_symbol(noun: str, scope: Scope) -> str:
    """W with the first letter of what weighs, or with more of it where that is taken."""
    letters = re.sub(r"[^a-z]", "", re.sub(r"^(the|a|an) ", "", noun.lower())) or "o"
    lengths = range(1, min(len(letters), 6) + 1)
    symbols = [*(f"W_{letters[:n]}" for n in lengths), *(f"W_{n}" for n in range(1, 100))]
    return next(symbol for symbol in symbols if symbol not in scope.variables)


def couple(row: Table, situation: Situation) -> None:
    """A couple, counter-clockwise positive; without a moment it is to be found."""
    body, at = situation.body(row), situation.at(row)
    name = with_article(row.text("name", "couple"))
    words = name if name == "the couple" else f"couple from {name}"
    if row.has("moment"):
        symbol = situation.symbol(row) if row.has("symbol") else ""
        size = situation.known(row, "moment", symbol, NEWTON_METRE, words)
    else:
        size = situation.unknown(row, situation.symbol(row), NEWTON_METRE, words)
    id = size.id if isinstance(size, Name) else ""
    situation.couples.append(Couple(id, body, at, size, name, id))
    situation.place(row, Element(id, "couple", body, at, id, name))


def _turned(direction: Expression, degrees: int) -> Expression:
    if isinstance(direction, Number) and direction.unit is None:
        return Number(direction.value + degrees)
    return Sum(((1, direction), (1 if degrees > 0 else -1, Number(Decimal(abs(degrees))))))


READERS: Final[dict[str, Callable[[Table, Situation], None]]] = {
    "hinge": hinge,
    "roller": roller,
    "contact": contact,
    "fulcrum": fulcrum,
    "rough": rough,
    "cable": cable,
    "muscle": muscle,
    "weight": weight,
    "force": force,
    "couple": couple,
}
"""How each kind of entry, such as [[hinge]], is read; they are read in this order."""
