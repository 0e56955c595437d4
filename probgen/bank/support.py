"""Supports, joints and surfaces: one function for each kind of entry.

Directions are degrees counter-clockwise from +x, of the force on the body.  Where an entry names an
`other` body, that one feels the equal and opposite.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from probgen.bank.depiction import Touch
from probgen.bank.direction import turned
from probgen.bank.labels import (
    BodyNamed,
    ByKind,
    Called,
    Coined,
    Label,
    Reason,
    Slipping,
    Sort,
)
from probgen.bank.situation import Situation
from probgen.input.table import Table
from probgen.quantities.expression import Call, Expression, Name, number, times, total
from probgen.quantities.symbol import italic
from probgen.quantities.unit import NEWTON, NEWTON_METRE, ONE, PLAIN
from probgen.statics.geometry import angle_of, cosine, sine
from probgen.statics.quantity_id import Quantity, QuantityPart
from probgen.statics.system import Couple, Element, Force, ForcePart, Kind, Limit, Role

RIGHT, UP = number(0), number(90)


def hinge(row: Table, situation: Situation) -> None:
    """A pin: a force of any direction, given by its components along x and y."""
    body = situation.body(row)
    at, symbol = situation.at(row, body), situation.symbol(row)
    name, back_name = situation.joined(row, body, ByKind.HINGE)
    whole = Force("", body, at, RIGHT, RIGHT, Kind.HINGE, symbol)
    forces = components(row, situation, whole, name)
    element = Element(symbol, Kind.HINGE, body, at, tuple(f.id for f in forces))
    back = situation.reaction(row, body, at, back_name)
    situation.place(row, element, Label(symbol, name), forces, back=back)


def fixed(row: Table, situation: Situation) -> None:
    """A built-in end: a force of any direction and a couple, counter-clockwise on the body."""
    body = situation.body(row)
    at, symbol = situation.at(row, body), situation.symbol(row)
    name, back_name = situation.joined(row, body, ByKind.SUPPORT)
    whole = Force("", body, at, RIGHT, RIGHT, Kind.FIXED, symbol)
    forces = components(row, situation, whole, name)
    couple = _couple(row, situation, Couple("", body, at, RIGHT, symbol), name)
    element = Element(symbol, Kind.FIXED, body, at, tuple(f.id for f in forces))
    back = situation.reaction(row, body, at, back_name)
    situation.place(row, element, Label(symbol, name), forces, [couple], back)


def components(row: Table, situation: Situation, whole: Force, source: Called) -> list[Force]:
    """Forces along x and y of unknown size, called after the whole force's element."""
    symbol = whole.element
    check_own(row, situation, symbol)
    forces = []
    ways = (("x", RIGHT, Sort.X_COMPONENT), ("y", UP, Sort.Y_COMPONENT))
    for axis, direction, sort in ways:
        id = str(Quantity(symbol, QuantityPart(axis))) if symbol else ""
        named, letter = Coined(sort, source), component_symbol(symbol, axis)
        size = situation.unknown(row, id, NEWTON, named, symbol=letter, component_of=symbol)
        part = ForcePart(axis)
        at = whole.body, whole.point
        forces.append(Force(id, *at, size, direction, whole.kind, symbol, part))
    return forces


def check_own(row: Table, situation: Situation, symbol: str) -> None:
    """A force known by its components has a symbol that no quantity has."""
    taken = situation.scope.symbols | situation.scope.variables.keys()
    if symbol in taken and not row.faulty("symbol"):
        row.fault("symbol", symbol, "a symbol that nothing else has")


def component_symbol(symbol: str, axis: str) -> str:
    """The printed letter of a component: "R_x", and "R_1x" where there is a subscript already."""
    return f"{symbol}{italic(axis)}" if "_" in symbol else f"{symbol}_{axis}"


def _couple(row: Table, situation: Situation, whole: Couple, source: Called) -> Couple:
    """The unknown couple under `couple`."""
    id = situation.symbol(row, "couple")
    named = Coined(Sort.COUPLE, source)
    moment = situation.unknown(row, id, NEWTON_METRE, named, key="couple")
    return Couple(id, whole.body, whole.point, moment, whole.element)


def cut(row: Table, situation: Situation) -> None:
    """A section through a member: what the part cut off exerts on the part that is kept.

    `axis` is the member's direction out of the kept part.  The axial force is a pull along it, the
    shear force is 90 degrees clockwise from it, the couple counter-clockwise, all on the kept part.
    """
    body = situation.body(row)
    at = situation.at(row, body)
    name = situation.named_or(row, ByKind.PART_CUT_OFF)
    axis = situation.direction(row, key="axis")
    letters = {key: situation.symbol(row, key) for key in ("axial", "shear", "couple")}
    element, forces, couple = bared(row, situation, body, at, axis, letters)
    back = situation.reaction(row, body, at, BodyNamed(body))
    situation.place(row, element, Label(letters["axial"], name), forces, [couple], back)


def bared(
    row: Table,
    situation: Situation,
    body: str,
    at: str,
    axis: Expression,
    letters: Mapping[str, str],
    named: Called | None = None,
) -> tuple[Element, list[Force], Couple]:
    """What a section bares, as unknowns of its letters: "axial", "shear" and "couple".

    Where there is no letter for a shear force, it is zero.  named: what the couple is called.
    """
    axial, bending = letters["axial"], letters["couple"]
    sizes = {
        key: situation.unknown(row, letters[key], NEWTON, Coined(sort, at=at), key=key)
        for key, sort in (("axial", Sort.AXIAL_FORCE), ("shear", Sort.SHEAR_FORCE))
        if key in letters
    }
    ways = {"axial": axis, "shear": turned(axis, -90)}
    forces = [
        Force(size.id, body, at, size, ways[part], Kind.FIXED, axial, ForcePart(part))
        for part, size in sizes.items()
    ]
    named = named or Coined(Sort.BENDING_MOMENT, at=at)
    moment = situation.unknown(row, bending, NEWTON_METRE, named, key="couple")
    element = Element(axial, Kind.CUT, body, at, tuple(letters[key] for key in sizes))
    return element, forces, Couple(bending, body, at, moment, axial)


def roller(row: Table, situation: Situation) -> None:
    """A roller: it pushes along `direction`, straight up unless said otherwise."""
    _push(row, situation, Kind.ROLLER, ByKind.ROLLER, situation.direction(row, UP))


def contact(row: Table, situation: Situation) -> None:
    """A smooth surface: it pushes along `direction`, its outward normal."""
    _push(row, situation, Kind.CONTACT, ByKind.SURFACE, situation.direction(row))


def fulcrum(row: Table, situation: Situation) -> None:
    """A support under a lever, pushing straight up."""
    id = _push(row, situation, Kind.CONTACT, ByKind.FULCRUM, UP)
    situation.shown[id] = Touch.FULCRUM


def _push(
    row: Table, situation: Situation, kind: Kind, usual: ByKind, direction: Expression
) -> str:
    """One push along a normal, and its id."""
    body = situation.body(row)
    at, symbol = situation.at(row, body), situation.symbol(row)
    name = situation.touched(row, usual)
    pressing = Coined(Sort.SUPPORT_FORCE, name)
    size = situation.unknown(row, symbol, NEWTON, pressing, nonnegative=True)
    element = Element(symbol, kind, body, at, (symbol,), surface=direction)
    force = Force(symbol, body, at, size, direction, kind, symbol, ForcePart.NORMAL)
    back = situation.reaction(row, body, at, BodyNamed(body))
    situation.place(row, element, Label(symbol, name), [force], back=back)
    return symbol


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
    name = situation.touched(row, ByKind.SURFACE)
    outward = situation.direction(row, UP)
    along = situation.direction(row, turned(outward, -90), "friction_direction")
    pressing, holding = Coined(Sort.NORMAL_FORCE, name), Coined(Sort.FRICTION, name)
    push = situation.unknown(row, normal, NEWTON, pressing, key="normal", nonnegative=True)
    grip = situation.unknown(row, friction, NEWTON, holding, key="friction")
    slides = row.has("sliding") and row.flag("sliding")
    _grip_limit(row, situation, push, grip, at, Slipping(body, name), slides)
    kind = Kind.ROUGH
    whole = situation.symbol(row) if row.has("symbol") else normal
    forces = [
        Force(normal, body, at, push, outward, kind, whole, ForcePart.NORMAL),
        Force(friction, body, at, grip, along, kind, whole, ForcePart.FRICTION),
    ]
    if whole != normal:
        check_own(row, situation, whole)
        declare_components(row, situation, whole, forces, name)
    element = Element(whole, kind, body, at, (normal, friction), surface=outward, slides=slides)
    back = situation.reaction(row, body, at, BodyNamed(body))
    situation.place(row, element, Label(whole, name), forces, back=back)


def _why_at_limit(sliding: bool, given: bool, declared: bool) -> Reason:
    """declared: the author says what an unknown coefficient means, who need not mean the least."""
    if sliding:
        return Reason.SLIDES_STEADILY
    if given:
        return Reason.VERGE_OF_SLIPPING
    if declared:
        return Reason.FRICTION_AT_LIMIT
    return Reason.LEAST_COEFFICIENT


def _is_least(name: Called) -> bool:
    """Whether a coefficient is looked for as the least that will do, at another surface already."""
    return isinstance(name, Coined) and name.sort is Sort.LEAST_COEFFICIENT


def declare_components(
    row: Table, situation: Situation, symbol: str, forces: Sequence[Force], source: Called
) -> None:
    """The components along x and y of forces taken together, worked out from them."""
    for axis, part, sort in (("x", cosine, Sort.X_COMPONENT), ("y", sine, Sort.Y_COMPONENT)):
        terms = ((1, times(f.magnitude, part(angle_of(f.direction)))) for f in forces)
        printed = component_symbol(symbol, axis)
        id = str(Quantity(symbol, QuantityPart(axis)))
        named = Coined(sort, source)
        situation.defined(
            row, id, total(*terms), NEWTON, named, symbol=printed, component_of=symbol
        )


def _grip_limit(
    row: Table,
    situation: Situation,
    push: Name,
    grip: Name,
    at: str,
    slips: Slipping,
    slides: bool,
) -> None:
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
        symbol = _coefficient_symbol(row, situation)
        named = Coined(Sort.LEAST_COEFFICIENT, at=at)
        coefficient = situation.unknown(
            row, symbol, ONE, named, key="coefficient", nonnegative=True
        )
    largest = times(coefficient, push)
    if verge is False:
        size = Call("abs", (grip,))
        situation.add_limit(Limit(Quantity(grip.id).limit, size, "<=", largest), slips)
        return
    declared = held is not None and not _is_least(situation.scope.labels[held.id].name)
    reason = _why_at_limit(slides, given, declared)
    situation.add_condition(grip, largest, reason, Quantity(grip.id).limit)


def _coefficient_symbol(row: Table, situation: Situation) -> str:
    """The symbol of a coefficient that is looked for; "" after a fault."""
    text = row.content["coefficient"]
    if isinstance(text, str) and re.search(r"[-+*/^()\s]", text.strip()):
        mend = f'declare "{text}" below [derived], and write its name here'
        expected = "one name: of a given or derived quantity, or the symbol of an unknown one"
        row.fault("coefficient", text, expected, mend)
        situation.scope.whole = False
        return ""
    return situation.symbol(row, "coefficient")
