"""The forces on a body, told one by one, and the weights worked out."""

from __future__ import annotations

from cmath import rect
from collections.abc import Iterator, Sequence
from math import radians
from typing import Final

from probgen.bank.direction import component_sum
from probgen.bank.labels import Carried
from probgen.quantities.expression import (
    Expression,
    Name,
    Number,
    Sum,
    evaluate,
    is_number,
    names_in,
)
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.like_terms import collected
from probgen.statics.definition import names_behind
from probgen.statics.geometry import way as way_between
from probgen.statics.numeric_equations import coordinates
from probgen.statics.plan import Plan
from probgen.statics.shape import Outline
from probgen.statics.system import Body, Couple, Definition, Element, Force, Kind, Spread, System
from probgen.statics.taken_as_one import Whole, acting_on, made_of, told_before, turned
from probgen.statics.truss import without_idle
from probgen.wording.block import Display, Picture, Row
from probgen.wording.equations import lone_number, says
from probgen.wording.facts.forces import (
    CoupleNamed,
    ForceNamed,
    ForcesCounted,
    ForcesHeading,
    HoleCounted,
    JointForce,
    JointReaction,
    PartCentred,
    PartPlaced,
    PartsHeading,
    SameTension,
    Spreading,
    SpreadLoad,
    StrutAlong,
    TakenAsOne,
)
from probgen.wording.load import integrated
from probgen.wording.passage import Items, Part, Passage, sentences
from probgen.wording.signs import sign_unknown, signs_part
from probgen.wording.truss import section_laid
from probgen.working.bodies_used import bodies_used, is_piece
from probgen.working.convention import Rotation
from probgen.working.digits import Digits
from probgen.working.direction import Way, way_of
from probgen.working.fact import Fact
from probgen.working.line import line_of

_SQUARE: Final = 1e-6  # the largest cosine of what is at right angles


def forces_passage(digits: Digits, body: Body, before: Sequence[Body] | None = None) -> Passage:
    """Every force on the body, what is known of it, and its free-body diagram.

    before: the bodies whose forces were told earlier; None for all that come before it.
    """
    plan = digits.case.plan
    system = plan.system
    named: tuple[Fact, ...] = tuple(_named(digits, body))
    couples = [couple for couple in system.couples if couple.body == body.id]
    opening = ForcesCounted(made_of(body), len(named), len(couples))
    items = (*named, *(_couple(digits, couple) for couple in couples))
    laid = section_laid(system, body, plan.steps)
    parts: list[Part] = [sentences(*laid, *_taken_as_one(digits, body), opening), Items(items)]
    explained = tuple(_explained(digits, body))
    if explained:
        parts.append(sentences(*explained))
    rows = [
        definition_row(digits, definition) for definition in _definitions_told(plan, body, before)
    ]
    if rows:
        parts.append(Display(tuple(rows)))
    parts += signs_part(digits, body)
    parts.append(Picture("free-body", body.id))
    return Passage(ForcesHeading(made_of(body)), tuple(parts))


def _taken_as_one(digits: Digits, body: Body) -> Iterator[Fact]:
    """Why several bodies are taken as one: the forces between them cancel."""
    system = digits.case.system
    if isinstance(body, Whole):
        _, inner = acting_on(system, body.made_of)
        points = {force.id: _place(system, force) for force in inner}
        told = (
            (
                _whole_letter(digits, system.element(force.element))
                if force.part.is_component
                else force.magnitude,
                points[force.id] if points[force.id] == points[force.pair] else "",
            )
            for force in inner
        )
        yield TakenAsOne(body.made_of, tuple(dict.fromkeys(told)))


def _named(digits: Digits, body: Body) -> Iterator[Fact]:
    """The forces one by one; those of a hinge as one."""
    system = without_idle(digits.case.system, digits.case.plan.steps)
    on = {force.id: force for force in system.forces if force.body == body.id}
    sizes = [force.magnitude for force in on.values()]
    before = _elements_told(digits.case.system, body)
    for element in system.elements:
        if element.body != body.id or not element.forces:
            continue
        forces = [on[id] for id in element.forces]
        if all(force.part.is_component for force in forces):
            yield _joint(digits, element, forces)
            continue
        for force in forces:
            at, way, size = _place(system, force), _way(digits, force), force.magnitude
            whose = system.force(force.id).body if isinstance(body, Whole) else ""
            alike = not at and sizes.count(size) > 1
            on_which = whose if alike else ""
            held, again = _carried(digits, element), element.id in before
            middle = element.own and _in_the_middle(system, force)
            across = _touched_across(digits, force)
            yield ForceNamed(
                element.id, force.kind, force.part, size, at, way, on_which, held, again, middle,
                across, _reacts_to(digits, body, force),
            )  # fmt: skip


def _reacts_to(digits: Digits, body: Body, force: Force) -> str:
    """The body told earlier that a body pushes back on where the two touch; "" for none."""
    plan = digits.case.plan
    touching = force.kind in (Kind.CONTACT, Kind.ROLLER, Kind.ROUGH)
    if not force.pair or not touching or isinstance(body, Whole):
        return ""
    other = plan.system.force(force.pair).body
    told = [each.id for each in bodies_used(plan)]
    earlier = told[: told.index(body.id)] if body.id in told else []
    return other if other in earlier else ""


def _in_the_middle(system: System, force: Force) -> bool:
    """Whether a force acts halfway between the ends of its body, in every draw."""
    body = system.body(system.force(force.id).body)
    if body.particle or len(body.outline) < 2:
        return False
    start, *_, end = body.outline
    here = way_between(system.points, start, force.point)
    return len(here) == 1 and here == way_between(system.points, force.point, end)


def _touched_across(digits: Digits, force: Force) -> str:
    """The straight body that a smooth contact touches between its ends and pushes square to.

    "" for none: an end stands on a surface, and the push is square to that.
    """
    system, values = digits.case.system, digits.case.values
    body = system.body(system.force(force.id).body)
    if force.kind is not Kind.CONTACT or len(body.outline) != 2 or force.point in body.outline:
        return ""
    places = coordinates(system, values)
    first, last = (complex(*map(float, places[end])) for end in body.outline)
    turn = radians(float(evaluate(force.direction, values)))
    along = (last - first) * rect(1.0, -turn)
    return body.id if abs(along.real) < _SQUARE * abs(along) else ""


def _carried(digits: Digits, element: Element) -> Carried | None:
    """What a body does that another carries; None for a weight of its own and all other forces."""
    heavy = element.kind is Kind.WEIGHT and not element.own
    return digits.case.labels.carried.get(element.id) if heavy else None


def _whole_letter(digits: Digits, element: Element) -> Name:
    """The letter of a joint's force, the same on both bodies."""
    return digits.case.labels.whole(element.of or element.id)


def _elements_told(system: System, body: Body) -> set[str]:
    """What exerts forces on bodies told before, of which this one is a part or that are of it."""
    earlier = {each.id for each in told_before(system, body)}
    return {force.element for force in system.forces if force.body in earlier}


def _explained(digits: Digits, body: Body) -> Iterator[Fact]:
    """Why a strut pushes along itself, a rope pulls as elsewhere, and what a spread load is."""
    system = digits.case.system
    before = _elements_told(system, body)
    for element in system.elements:
        if element.body != body.id or not element.forces or element.id in before:
            continue
        letter = system.force(element.forces[0]).magnitude
        if element.kind is Kind.ROPE and _pulls_elsewhere(system, element):
            yield SameTension(element.id, system.force(element.of).magnitude)
        if element.kind is Kind.STRUT:
            yield StrutAlong(element.id, letter)
        if element.spread is not None and element.spread.intensity is None:
            yield _spread(system, element, element.spread, letter)
        yield from _centred(system, element, element.at)
        if element.kind is Kind.HOLE:
            yield HoleCounted(letter)


def _pulls_elsewhere(system: System, rope: Element) -> bool:
    """Whether a rope pulls on another body too: on one told before, or on one taken together with
    this one.
    """
    if not rope.of:
        return False
    first = system.force(rope.of).body
    beyond = (
        each
        for each in system.elements
        if (each.body, each.of) == (rope.body, rope.of)
        and system.force(each.forces[0]).body != first
    )
    return next(beyond, None) is rope


def parts_passage(digits: Digits, body: Body, wanted: frozenset[str]) -> Iterator[Passage]:
    """The weights that a centre of mass is made of, of a body whose forces are not told.

    wanted: the ids of quantities that the working holds.
    """
    plan = digits.case.plan
    weights = [each for each in plan.system.elements if each.body == body.id and each.id in wanted]
    told = [each for each in plan.definitions if each.variable in {e.id for e in weights}]
    if not told:
        return
    named = tuple(_part(plan.system, each) for each in weights if each.shape)
    explained = [fact for each in weights for fact in _centred(plan.system, each, "")]
    rows = tuple(definition_row(digits, each) for each in told)
    first = (Items(named),) if named else ()
    heavy = all(each.kind in (Kind.WEIGHT, Kind.HOLE) for each in weights)
    middle = (sentences(*explained),) if explained else ()
    yield Passage(PartsHeading(body.id, bool(named), heavy), (*first, *middle, Display(rows)))


def _part(system: System, element: Element) -> Fact:
    links = [(1, link) for link in system.points[element.at].links]
    x, y = (collected(component_sum(links, part)) for part in ("cos", "sin"))
    letter = system.force(element.forces[0]).magnitude
    return PartPlaced(element.id, letter, element.kind is Kind.HOLE, x, y)


def _centred(system: System, element: Element, at: str) -> Iterator[Fact]:
    """Where a part's weight acts, but for those that do so in their plain middle.

    at: the letter of that point, "" where it is not shown.
    """
    outline = element.shape.outline if element.shape else None
    if outline in (Outline.TRIANGLE, Outline.HALF_CIRCLE, Outline.HALF_RING):
        out = system.points[element.at].links[-1].length
        yield PartCentred(element.id, outline, at, out)


def _spread(system: System, element: Element, spread: Spread, letter: Expression) -> Fact:
    """How much of the load its resultant is, and where along the line it acts."""
    if spread.first == spread.last:
        return SpreadLoad(element.id, letter, Spreading.EVEN, largest=spread.first)
    ends = (system.points[spread.start].links, (*system.points[spread.start].links, spread.line))
    if not any(is_number(size, 0) for size in (spread.first, spread.last)):
        return SpreadLoad(element.id, letter, Spreading.UNEVEN)
    first = is_number(spread.last, 0)
    heavy, largest = (ends[0], spread.first) if first else (ends[1], spread.last)
    at = next((point.id for point in system.points.values() if point.links == heavy), "")
    return SpreadLoad(element.id, letter, Spreading.TRIANGLE, at, largest)


def _couple(digits: Digits, couple: Couple) -> Fact:
    """A couple by its letter, without a sign: the sense tells which way it turns.

    One not known yet is taken counter-clockwise, its reaction on another body clockwise.
    """
    letter, sense = couple.moment, 1
    if isinstance(letter, Sum) and len(letter.terms) == 1:
        sense, letter = letter.terms[0]
    taken = sign_unknown(digits.case.system, letter)
    if not taken and float(evaluate(letter, digits.case.values)) < 0.0:
        sense = -sense
    rotation: Rotation = "counter-clockwise" if sense > 0 else "clockwise"
    bared = digits.case.system.element(couple.element).kind is Kind.CUT
    return CoupleNamed(couple.id, letter, rotation, taken, bared)


def _place(system: System, force: Force) -> str:
    """Where a force acts; "" for a particle, which has one point only, in a whole as well unless it
    is where the others are touched.
    """
    body = system.body(force.body)
    if isinstance(body, Whole) and turned(system, body.made_of):
        return force.point
    own = system.body(system.force(force.id).body) if isinstance(body, Whole) else body
    return "" if own.particle else force.point


def _way(digits: Digits, force: Force) -> Way:
    return way_of(float(evaluate(force.direction, digits.case.values)))


def _joint(digits: Digits, element: Element, forces: list[Force]) -> Fact:
    """A force told by its components; on the second of two bodies it is the reaction."""
    parts = tuple((force.magnitude, _way(digits, force)) for force in forces)
    at = _place(digits.case.system, forces[0])
    system = digits.case.system
    other = _first_of_pair(system, forces[0])
    if other:
        return JointReaction(element.id, other, parts, at)
    body = system.body(forces[0].body)
    before = _elements_told(system, body)
    ids = [each.id for each in system.forces]
    answered = forces[0].pair and ids.index(forces[0].pair) < ids.index(forces[0].id)
    again = is_piece(system, body) or element.id in before or bool(answered)
    stated = any(_stated(digits.case.plan, force) for force in forces)
    letter = _whole_letter(digits, element)
    return JointForce(element.id, letter, parts, at, again, stated)


def _stated(plan: Plan, force: Force) -> bool:
    """Whether a condition says what a force is by data alone."""
    return any(
        step.unknown == force.id
        and says(step.equation, step.unknown)
        and not names_in(step.expression) & set(plan.system.unknowns)
        for step in plan.steps
    )


def _first_of_pair(system: System, force: Force) -> str:
    """The body an equal and opposite force was named on before; "" for the first of a pair.

    One that is asked has its name from the body that the problem says.
    """
    ids = [each.id for each in system.forces]
    if not force.pair:
        return ""
    other = system.force(force.pair)
    asked = {find.quantity for find in system.finds}
    if force.element in asked:
        return ""
    later = ids.index(force.pair) > ids.index(force.id) and other.element not in asked
    return "" if later else other.body


def _definitions_told(
    plan: Plan, body: Body, before: Sequence[Body] | None
) -> tuple[Definition, ...]:
    """Weights, resultants and angles worked out that the forces on the body are made of."""
    bodies = plan.system.bodies
    told = bodies[: bodies.index(body)] if before is None else before
    earlier = [_needed(plan, each) for each in told]
    asked = {find.quantity for find in plan.system.finds}
    fresh = _needed(plan, body) - asked.union(integrated(plan.system), *earlier)
    return tuple(definition for definition in plan.definitions if definition.variable in fresh)


def _needed(plan: Plan, body: Body) -> frozenset[str]:
    """Every quantity the forces on a body hold, and those these are defined by."""
    held: frozenset[str] = frozenset()
    for force in plan.system.forces:
        if force.body == body.id:
            held |= names_in(force.magnitude) | names_in(force.direction)
            for link in plan.system.points[force.point].links:
                held |= names_in(link.length) | names_in(link.direction)
    for couple in plan.system.couples:
        if couple.body == body.id:
            held |= names_in(couple.moment)
    return names_behind(held, plan.definitions)


def definition_row(digits: Digits, definition: Definition) -> Row:
    """W = m g = (4.0 kg)(9.80 m/s^2) = 39.2 N."""
    variable = digits.case.system.variables[definition.variable]
    value = digits.case.values[definition.variable]
    line = line_of(digits, definition.expression, value, variable.dimension)
    if isinstance(definition.expression, Number):
        return Row((variable.as_name,), "=", (line.result,))
    shown = () if lone_number(line.printed) else (line.printed, Relation("="))
    right: Formula = (definition.expression, Relation("="), *shown, line.result)
    return Row((variable.as_name,), "=", right)
