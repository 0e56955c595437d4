"""The forces on a body, told one by one, and the weights worked out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from probgen.quantities.expression import Expression, Number, evaluate, names_in
from probgen.quantities.formula import Formula, Relation
from probgen.statics.plan import Plan
from probgen.statics.system import Body, Couple, Definition, Element, Force, Kind, Role, System
from probgen.wording.block import Block, Display, Picture, Row, Section
from probgen.wording.direction import toward
from probgen.wording.recent import kept_by_plan
from probgen.wording.sentence import Inlines, counted, itemized, letter, listed, paragraph, say
from probgen.working.digits import Digits


def forces_section(digits: Digits, body: Body) -> Section:
    """Every force on the body, what is known of it, and its free-body diagram."""
    plan, values = digits.case.plan, digits.case.values
    ways = {
        id: toward(float(evaluate(plan.system.force(id).direction, values)))
        for element in plan.system.elements
        if element.body == body.id
        for id in element.forces
    }
    rows = tuple(
        definition_row(digits, definition) for definition in _definitions_told(plan, body)
    )
    blocks: list[Block] = [*_listed(plan, body, tuple(ways.items()))]
    if rows:
        blocks.append(Display(rows))
    blocks += _component_note(plan, body)
    blocks.append(Picture("free-body", body.id))
    return Section(f"Forces on the {body.name}", tuple(blocks))


Ways = Mapping[str, str]
"""Which way each force acts, in words, by its id."""


@kept_by_plan
def _listed(plan: Plan, body: Body, ways: tuple[tuple[str, str], ...]) -> tuple[Block, ...]:
    """The forces and couples one by one; ways: the items of `Ways`."""
    told = list(_told(plan.system, body, dict(ways)))
    moments = [couple for couple in plan.system.couples if couple.body == body.id]
    opening = f"{counted(len(told), 'force').capitalize()} act{'s' if len(told) == 1 else ''} on "
    opening += f"the {body.name}"
    if moments:
        opening += f", and {counted(len(moments), 'couple')}"
    items = [*told, *(_couple(couple) for couple in moments)]
    return paragraph(say(opening + ":")), itemized(items)


def _told(system: System, body: Body, ways: Ways) -> Iterator[Inlines]:
    """The forces in words; those of a hinge are told as one."""
    for element in system.elements:
        if element.body != body.id or not element.forces:
            continue
        forces = [system.force(id) for id in element.forces]
        if element.kind in (Kind.HINGE, Kind.FIXED):
            yield _hinge(system, element, forces, ways)
            continue
        for force in forces:
            yield _one(system, element, force, ways[force.id])


def _hinge(system: System, element: Element, forces: list[Force], ways: Ways) -> Inlines:
    """A force told by its components; on the second of two bodies it is the reaction."""
    parts = listed(
        [
            say("{F} ({way})", F=force.magnitude, way=ways[force.id].replace("straight ", ""))
            for force in forces
        ]
    )
    at = _place(system, forces[0])
    known_on = _first_of_pair(system, forces[0])
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


def _place(system: System, force: Force) -> Inlines:
    """ " at B"; nothing for a particle, which has one point only."""
    particle = system.body(force.body).particle
    return () if particle else say(" at {P}", P=letter(force.point))


def _first_of_pair(system: System, force: Force) -> str:
    """The body an equal and opposite force was named on before; "" for the first of a pair."""
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


def _one(system: System, element: Element, force: Force, way: str) -> Inlines:
    pattern = _PUSHES.get(force.kind, _PUSHES[Kind.FORCE])
    if force.part == "friction":
        pattern = "the friction {F} of {by}{at}, taken {way}"
    return say(
        pattern,
        F=force.magnitude,
        by=element.name,
        of=_of(element, force),
        at=_place(system, force),
        way=way,
        part=_CUT_PARTS.get(force.part, "the force"),
        smooth="" if way.startswith("straight") else _SMOOTH,
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


@kept_by_plan
def _component_note(plan: Plan, body: Body) -> tuple[Block, ...]:
    """What a negative result will mean, where the working has components of unknown sign."""
    system = plan.system
    free = [force.magnitude for force in system.forces if force.body == body.id]
    free += [couple.moment for couple in system.couples if couple.body == body.id]
    free = [size for size in dict.fromkeys(free) if _sign_unknown(system, size)]
    if not free:
        return ()
    note = say(
        "{these} {are} taken positive the way named; a negative result means the opposite way.",
        these=listed(free),
        are="is" if len(free) == 1 else "are",
    )
    return (paragraph(note),)


def _sign_unknown(system: System, size: Expression) -> bool:
    held = [system.variables[name] for name in names_in(size)]
    return any(variable.role is Role.UNKNOWN and not variable.nonnegative for variable in held)


@kept_by_plan
def _definitions_told(plan: Plan, body: Body) -> tuple[Definition, ...]:
    """Weights, resultants and angles worked out that the forces on the body are made of."""
    bodies = plan.system.bodies
    earlier = [_needed(plan, each) for each in bodies[: bodies.index(body)]]
    asked = {find.quantity for find in plan.system.finds}
    told = _needed(plan, body) - asked.union(*earlier)
    return tuple(definition for definition in plan.definitions if definition.variable in told)


def _needed(plan: Plan, body: Body) -> frozenset[str]:
    """Every quantity the forces on a body hold, and those these are defined by."""
    held: frozenset[str] = frozenset()
    for force in plan.system.forces:
        if force.body == body.id:
            held |= names_in(force.magnitude) | names_in(force.direction)
            for link in plan.system.points[force.point].links:
                held |= names_in(link.length) | names_in(link.direction)
    for definition in reversed(plan.definitions):
        if definition.variable in held:
            held |= names_in(definition.expression)
    return held


def definition_row(digits: Digits, definition: Definition) -> Row:
    """W = m g = (4.0 kg)(9.80 m/s^2) = 39.2 N."""
    variable = digits.case.system.variables[definition.variable]
    value = digits.case.values[definition.variable]
    line = digits.line(definition.expression, value, variable.dimension)
    if isinstance(definition.expression, Number):
        return Row((variable.as_name,), "=", (line.result,))
    shown = () if isinstance(line.printed, Number) else (line.printed, Relation("="))
    right: Formula = (definition.expression, Relation("="), *shown, line.result)
    return Row((variable.as_name,), "=", right)
