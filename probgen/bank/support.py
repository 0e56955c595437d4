"""Supports, joints and surfaces: one function for each kind of entry.

Directions are degrees counter-clockwise from +x, of the force on the body.  Where an entry names an
`other` body, that one feels the equal and opposite.
"""

from __future__ import annotations

from collections.abc import Sequence

from probgen.bank.depiction import Touch
from probgen.bank.direction import turned
from probgen.bank.labels import Label
from probgen.bank.situation import Situation, with_article
from probgen.input.table import Table
from probgen.quantities.expression import Call, Expression, Name, number, times, total
from probgen.quantities.unit import NEWTON, NEWTON_METRE, ONE, PLAIN
from probgen.statics.geometry import angle_of, cosine, sine
from probgen.statics.quantity_id import Quantity, QuantityPart
from probgen.statics.system import Couple, Element, Force, Kind, Limit, Role

RIGHT, UP = number(0), number(90)


def hinge(row: Table, situation: Situation) -> None:
    """A pin: a force of any direction, given by its components along x and y."""
    body = situation.body(row)
    at, symbol = situation.at(row, body), situation.symbol(row)
    name = with_article(row.text("name", "hinge"))
    whole = Force("", body, at, RIGHT, RIGHT, Kind.HINGE, symbol)
    forces = _components(row, situation, whole, name)
    element = Element(symbol, Kind.HINGE, body, at, tuple(f.id for f in forces))
    back = situation.reaction(row, body, at, name)
    situation.place(row, element, Label(symbol, name), forces, back=back)


def fixed(row: Table, situation: Situation) -> None:
    """A built-in end: a force of any direction and a couple, counter-clockwise on the body."""
    body = situation.body(row)
    at, symbol = situation.at(row, body), situation.symbol(row)
    name = with_article(row.text("name", "support"))
    whole = Force("", body, at, RIGHT, RIGHT, Kind.FIXED, symbol)
    forces = _components(row, situation, whole, name)
    couple = _couple(row, situation, Couple("", body, at, RIGHT, symbol), name)
    element = Element(symbol, Kind.FIXED, body, at, tuple(f.id for f in forces))
    back = situation.reaction(row, body, at, name)
    situation.place(row, element, Label(symbol, name), forces, [couple], back)


def _components(row: Table, situation: Situation, whole: Force, source: str) -> list[Force]:
    """Forces along x and y of unknown size, called after the whole force's element."""
    symbol = whole.element
    check_own(row, situation, symbol)
    forces = []
    for axis, direction in (("x", RIGHT), ("y", UP)):
        id = str(Quantity(symbol, QuantityPart(axis))) if symbol else ""
        words = f"{axis}-component of the force from {source}"
        size = situation.unknown(row, id, NEWTON, words, symbol=component_symbol(symbol, axis))
        part = Force(id, whole.body, whole.point, size, direction, whole.kind, symbol, axis)
        forces.append(part)
    return forces


def check_own(row: Table, situation: Situation, symbol: str) -> None:
    """A force known by its components has a symbol that no quantity has."""
    taken = situation.scope.symbols | situation.scope.variables.keys()
    if symbol in taken and not row.faulty("symbol"):
        row.fault("symbol", symbol, "a symbol that nothing else has")


def component_symbol(symbol: str, axis: str) -> str:
    """The printed letter of a component: "R_x", and "R_1x" where there is a subscript already."""
    return f"{symbol}{axis}" if "_" in symbol else f"{symbol}_{axis}"


def _couple(row: Table, situation: Situation, whole: Couple, source: str) -> Couple:
    """The unknown couple under `couple`."""
    id = situation.symbol(row, "couple")
    words = f"couple from {source}"
    moment = situation.unknown(row, id, NEWTON_METRE, words, key="couple")
    return Couple(id, whole.body, whole.point, moment, whole.element)


def cut(row: Table, situation: Situation) -> None:
    """A section through a member: what the part cut off exerts on the part that is kept.

    `axis` is the member's direction out of the kept part.  The axial force is a pull along it, the
    shear force is 90 degrees clockwise from it, the couple counter-clockwise, all on the kept part.
    """
    body = situation.body(row)
    at = situation.at(row, body)
    name = with_article(row.text("name", "part cut off"))
    axis = situation.direction(row, key="axis")
    axial, shear = situation.symbol(row, "axial"), situation.symbol(row, "shear")
    sizes = {
        key: situation.unknown(row, id, NEWTON, f"{key} force at {at}", key=key)
        for key, id in (("axial", axial), ("shear", shear))
    }
    ways = {"axial": axis, "shear": turned(axis, -90)}
    forces = [
        Force(size.id, body, at, size, ways[part], Kind.FIXED, axial, part)
        for part, size in sizes.items()
    ]
    bending = situation.symbol(row, "couple")
    moment = situation.unknown(row, bending, NEWTON_METRE, f"bending moment at {at}", key="couple")
    couple = Couple(bending, body, at, moment, axial)
    element = Element(axial, "cut", body, at, (axial, shear))
    back = situation.reaction(row, body, at, situation.noun(body))
    situation.place(row, element, Label(axial, name), forces, [couple], back)


def roller(row: Table, situation: Situation) -> None:
    """A roller: it pushes along `direction`, straight up unless said otherwise."""
    _push(row, situation, Kind.ROLLER, "roller", situation.direction(row, UP))


def contact(row: Table, situation: Situation) -> None:
    """A smooth surface: it pushes along `direction`, its outward normal."""
    _push(row, situation, Kind.CONTACT, "surface", situation.direction(row))


def fulcrum(row: Table, situation: Situation) -> None:
    """A support under a lever, pushing straight up."""
    id = _push(row, situation, Kind.CONTACT, "fulcrum", UP)
    situation.shown[id] = Touch.FULCRUM


def _push(row: Table, situation: Situation, kind: Kind, noun: str, direction: Expression) -> str:
    """One push along a normal, and its id."""
    body = situation.body(row)
    at, symbol = situation.at(row, body), situation.symbol(row)
    name = _surface_name(row, situation, noun)
    size = situation.unknown(row, symbol, NEWTON, f"force from {name}", nonnegative=True)
    element = Element(symbol, kind, body, at, (symbol,), surface=direction)
    force = Force(symbol, body, at, size, direction, kind, symbol, "normal")
    back = situation.reaction(row, body, at, situation.noun(body))
    situation.place(row, element, Label(symbol, name), [force], back=back)
    return symbol


def _surface_name(row: Table, situation: Situation, noun: str) -> str:
    """What pushes: as named, else the other body, else the noun of its kind."""
    other = row.content.get("other")
    touched = situation.noun(other) if isinstance(other, str) else ""
    return with_article(row.text("name", touched or noun))


def rough(row: Table, situation: Situation) -> None:
    """A rough surface: a push along its normal, and friction along it.

    With a coefficient, friction has its largest value, f = mu N: a coefficient that is a given puts
    the body on the verge of slipping, one that is not is found, as the least that will do.  With
    `verge = false` friction is what equilibrium asks for, up to mu N, and may point either way.
    With `sliding = true` the body slides steadily, and the coefficient is the kinetic one.
    """
    body = situation.body(row)
    at = situation.at(row, body)
    normal, friction = situation.symbol(row, "normal"), situation.symbol(row, "friction")
    name = _surface_name(row, situation, "surface")
    outward = situation.direction(row, UP)
    along = situation.direction(row, turned(outward, -90), "friction_direction")
    push = situation.unknown(
        row, normal, NEWTON, f"normal force from {name}", key="normal", nonnegative=True
    )
    grip = situation.unknown(row, friction, NEWTON, f"friction from {name}", key="friction")
    _grip_limit(row, situation, push, grip, f"{situation.noun(body)} slips on {name}")
    kind = Kind.ROUGH
    whole = situation.symbol(row) if row.has("symbol") else normal
    forces = [
        Force(normal, body, at, push, outward, kind, whole, "normal"),
        Force(friction, body, at, grip, along, kind, whole, "friction"),
    ]
    if whole != normal:
        check_own(row, situation, whole)
        declare_components(row, situation, whole, forces, name)
    element = Element(whole, kind, body, at, (normal, friction), surface=outward)
    back = situation.reaction(row, body, at, situation.noun(body))
    situation.place(row, element, Label(whole, name), forces, back=back)


def _why_at_limit(sliding: bool, given: bool, declared: bool) -> str:
    """declared: the author says what an unknown coefficient means, who need not mean the least."""
    if sliding:
        return "while it slides, friction is the coefficient times the normal push"
    if given:
        return "on the verge of slipping friction has its largest value"
    if declared:
        return "friction is the coefficient times the normal push"
    return "with the least coefficient that will do, friction is at its limit"


def declare_components(
    row: Table, situation: Situation, symbol: str, forces: Sequence[Force], source: str
) -> None:
    """The components along x and y of forces taken together, worked out from them."""
    for axis, part in (("x", cosine), ("y", sine)):
        terms = ((1, times(f.magnitude, part(angle_of(f.direction)))) for f in forces)
        words = f"{axis}-component of the force from {source}"
        printed = component_symbol(symbol, axis)
        id = str(Quantity(symbol, QuantityPart(axis)))
        situation.defined(row, id, total(*terms), NEWTON, words, symbol=printed)


def _grip_limit(row: Table, situation: Situation, push: Name, grip: Name, slips: str) -> None:
    """The condition f = mu N, or the limit |f| <= mu N, when a coefficient is named."""
    verge = row.flag("verge") if row.has("verge") else None
    if not row.has("coefficient"):
        if verge is not None:
            row.fault("verge", verge, "a coefficient beside it", 'add coefficient = "mu"')
        return
    text = row.content["coefficient"]
    held = situation.scope.variables.get(text) if isinstance(text, str) else None
    given = held is not None and held.role is not Role.UNKNOWN
    if given or held is not None or verge is False:
        coefficient = situation.scope.expression(row, "coefficient", PLAIN)
    else:
        symbol = situation.symbol(row, "coefficient")
        words = "least coefficient of static friction"
        coefficient = situation.unknown(
            row, symbol, ONE, words, key="coefficient", nonnegative=True
        )
    largest = times(coefficient, push)
    if verge is False:
        size = Call("abs", (grip,))
        situation.add_limit(Limit(Quantity(grip.id).limit, size, "<=", largest), slips)
        return
    reason = _why_at_limit(row.has("sliding") and row.flag("sliding"), given, held is not None)
    situation.add_condition(grip, largest, reason, Quantity(grip.id).limit)
