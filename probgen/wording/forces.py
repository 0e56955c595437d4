"""The forces on a body, told one by one, and the weights worked out."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.quantities.expression import Expression, Number, evaluate, names_in
from probgen.quantities.formula import Formula, Relation
from probgen.statics.system import Body, Couple, Definition, Element, Force, Kind, Role
from probgen.wording.block import Block, Display, Picture, Row, Section
from probgen.wording.digits import Digits
from probgen.wording.direction import toward
from probgen.wording.sentence import Inlines, counted, itemized, letter, listed, paragraph, say


def forces_section(digits: Digits, body: Body) -> Section:
    """Every force on the body, what is known of it, and its free-body diagram."""
    told = list(_told(digits, body))
    count = sum(number for number, _ in told)
    moments = [c for c in digits.case.system.couples if c.body == body.id]
    opening = f"{counted(count, 'force').capitalize()} act{'s' if count == 1 else ''} on "
    opening += f"the {body.name}"
    if moments:
        opening += f", and {counted(len(moments), 'couple')}"
    items = [item for _, item in told] + [_couple(couple) for couple in moments]
    blocks: list[Block] = [paragraph(say(opening + ":")), itemized(items)]
    rows = tuple(definition_rows(digits, body))
    if rows:
        blocks.append(Display(rows))
    blocks += _component_note(digits, body)
    blocks.append(Picture("free-body", body.id))
    return Section(f"Forces on the {body.name}", tuple(blocks))


def _told(digits: Digits, body: Body) -> Iterator[tuple[int, Inlines]]:
    """For each element: how many forces it is, and the words."""
    for element in digits.case.system.elements:
        if element.body != body.id or not element.forces:
            continue
        forces = [digits.case.system.force(id) for id in element.forces]
        if element.kind in (Kind.HINGE, Kind.FIXED):
            yield 1, _hinge(digits, element, forces)
            continue
        for force in forces:
            yield 1, _one(digits, element, force)


def _hinge(digits: Digits, element: Element, forces: list[Force]) -> Inlines:
    """A force told by its components; on the second of two bodies it is the reaction."""
    ways = [toward(float(evaluate(force.direction, digits.case.values))) for force in forces]
    parts = listed(
        [
            say("{F} ({way})", F=force.magnitude, way=way.replace("straight ", ""))
            for force, way in zip(forces, ways, strict=True)
        ]
    )
    at = _place(digits, forces[0])
    known_on = _first_of_pair(digits, forces[0])
    if known_on:
        return say(
            "the reaction of {by}{at}, equal and opposite to the force on {other}: {parts}",
            by=element.name,
            at=at,
            other=known_on,
            parts=parts,
        )
    return say(
        "the force {R} of {by}{at}, unknown in size and direction, so we write its components "
        "{parts}",
        R=letter(element.symbol),
        by=element.name,
        at=at,
        parts=parts,
    )


def _place(digits: Digits, force: Force) -> Inlines:
    """ " at B"; nothing for a particle, which has one point only."""
    particle = digits.case.system.body(force.body).particle
    return () if particle else say(" at {P}", P=letter(force.point))


def _first_of_pair(digits: Digits, force: Force) -> str:
    """The body an equal and opposite force was named on before; "" for the first of a pair."""
    system = digits.case.system
    ids = [each.id for each in system.forces]
    if not force.pair or ids.index(force.pair) > ids.index(force.id):
        return ""
    return f"the {system.body(system.force(force.pair).body).name}"


_CUT_PARTS = {"axial": "the axial force", "shear": "the shear force"}
_SMOOTH = ", square to its surface because it is smooth"
_PUSHES = {
    Kind.CABLE: "the pull {F} of {by}{at}, {way}",
    Kind.MUSCLE: "the pull {F} of {by}{at}, {way}",
    Kind.WEIGHT: "the weight {F} of {by}, {way}{at}",
    Kind.ROLLER: "the push {F} of {by}{at}, {way}",
    Kind.CONTACT: "the push {F} of {by}{at}, {way}{smooth}",
    Kind.ROUGH: "the normal push {F} of {by}{at}, {way}",
    Kind.FORCE: "{of}{at}, {way}",
    Kind.STRUT: "the push {F} of {by}{at}, {way}",
    Kind.SPRING: "the force {F} of {by}{at}, {way}",
    Kind.ROPE: "the pull {F} of {by}{at}, {way}",
    Kind.DISTRIBUTED: "the resultant {F} of {by}{at}, {way}",
    Kind.FIXED: "{part} {F} at the cut{at}, {way}",
}


def _one(digits: Digits, element: Element, force: Force) -> Inlines:
    degrees = float(evaluate(force.direction, digits.case.values))
    pattern = _PUSHES.get(force.kind, _PUSHES[Kind.FORCE])
    if force.part == "friction":
        pattern = "the friction {F} of {by}{at}, taken {way}"
    return say(
        pattern,
        F=force.magnitude,
        by=element.name,
        of=_of(element, force),
        at=_place(digits, force),
        way=toward(degrees),
        part=_CUT_PARTS.get(force.part, "the force"),
        smooth="" if toward(degrees).startswith("straight") else _SMOOTH,
    )


def _of(element: Element, force: Force) -> Inlines:
    """ "the force F of the wind", but "the push F"."""
    if element.name.rsplit(" ", 1)[-1] in ("force", "push", "pull", "thrust", "load"):
        return say("{by} {F}", by=element.name, F=force.magnitude)
    return say("the force {F} of {by}", F=force.magnitude, by=element.name)


def _couple(couple: Couple) -> Inlines:
    if couple.source.endswith("couple"):
        return say("{by} {M}", M=couple.moment, by=couple.source)
    return say("the couple {M} of {by}", M=couple.moment, by=couple.source)


def _component_note(digits: Digits, body: Body) -> Iterator[Block]:
    """What a negative result will mean, where the working has components of unknown sign."""
    system = digits.case.system
    free = [force.magnitude for force in system.forces if force.body == body.id]
    free += [couple.moment for couple in system.couples if couple.body == body.id]
    free = [size for size in dict.fromkeys(free) if _sign_unknown(digits, size)]
    if free:
        yield paragraph(
            say(
                "{these} {are} taken positive the way named; a negative result means the "
                "opposite way.",
                these=listed(free),
                are="is" if len(free) == 1 else "are",
            )
        )


def _sign_unknown(digits: Digits, size: Expression) -> bool:
    variables = digits.case.system.variables
    return any(
        variables[name].role is Role.UNKNOWN and not variables[name].nonnegative
        for name in names_in(size)
    )


def definition_rows(digits: Digits, body: Body) -> Iterator[Row]:
    """Weights, resultants and angles worked out that the forces on the body are made of."""
    needed = _needed(digits, body)
    told_before = {
        name
        for earlier in digits.case.system.bodies[: digits.case.system.bodies.index(body)]
        for name in _needed(digits, earlier)
    }
    asked = {find.quantity for find in digits.case.system.finds}
    for definition in digits.case.plan.definitions:
        if definition.variable in needed - told_before - asked:
            yield definition_row(digits, definition)


def _needed(digits: Digits, body: Body) -> frozenset[str]:
    """Every quantity the forces on a body hold, and those these are defined by."""
    system = digits.case.system
    held: frozenset[str] = frozenset()
    for force in system.forces:
        if force.body == body.id:
            held |= names_in(force.magnitude) | names_in(force.direction)
            for link in system.points[force.point].links:
                held |= names_in(link.length) | names_in(link.direction)
    for definition in reversed(digits.case.plan.definitions):
        if definition.variable in held:
            held |= names_in(definition.expression)
    return held


def definition_row(digits: Digits, definition: Definition) -> Row:
    """W = m g = (4.0 kg)(9.80 m/s^2) = 39.2 N."""
    variable = digits.case.system.variables[definition.variable]
    value = digits.case.values[definition.variable]
    guard = digits.guard_for(definition.expression, value, variable.dimension)
    printed = digits.put_in(definition.expression, guard)
    if isinstance(definition.expression, Number):
        return Row((variable.as_name,), "=", (digits.result(value, variable.dimension),))
    shown = () if isinstance(printed, Number) else (printed, Relation("="))
    result = digits.result(value, variable.dimension)
    right: Formula = (definition.expression, Relation("="), *shown, result)
    return Row((variable.as_name,), "=", right)
