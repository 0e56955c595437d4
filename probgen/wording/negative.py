"""What the sign of a result means: a force acts the other way, a member pulls or pushes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from probgen.quantities.expression import evaluate, names_in
from probgen.statics.step import Step
from probgen.statics.system import Body, Couple, Force, ForcePart, Link, System
from probgen.statics.taken_as_one import whole_of
from probgen.wording.facts.balance import CoupleNegative, ForceNegative, PlaceNegative
from probgen.wording.passage import Part, sentences
from probgen.wording.signs import expectations
from probgen.wording.truss import member_sense
from probgen.working.bodies_used import as_told
from probgen.working.convention import Rotation
from probgen.working.digits import Digits
from probgen.working.direction import way_of


def negative_part(digits: Digits, step: Step) -> Iterator[Part]:
    """What the sign of a result means: a force acts the other way, a member pulls or pushes."""
    system, value = digits.case.system, digits.case.values[step.unknown]
    told = tuple(member_sense(digits, step))
    if told:
        yield sentences(*told, bound=True)
    if told or value >= 0.0:
        return
    for couple in _couples_found(system, step)[:1]:
        moment = float(evaluate(couple.moment, digits.case.values))
        rotation: Rotation = "counter-clockwise" if moment > 0.0 else "clockwise"
        on = couple.body if couple.id != step.unknown else ""
        turned = CoupleNegative(system.variables[step.unknown].as_name, rotation, on)
        yield sentences(turned, bound=True)
    for force in _forces_found(system, step)[:1]:
        way = way_of(float(evaluate(force.direction, digits.case.values)) + 180.0)
        expected = expectations(*_where_told(digits, step, force)).get(force.id)
        reasoned = expected is not None and expected.sign < 0
        on = force.body if force.id != step.unknown or force.pair else ""  # one of two bodies
        axial = force.part is ForcePart.AXIAL
        component = force.part.is_component
        against = ForceNegative(force.magnitude, component, way, reasoned, on, axial)
        yield sentences(against, bound=True)
    for link in _links_found(system, step)[:1]:
        way = way_of(float(evaluate(link.direction, digits.case.values)) + 180.0)
        beyond = PlaceNegative(system.variables[step.unknown].as_name, way)
        yield sentences(beyond, bound=True)


def _forces_found(system: System, step: Step) -> list[Force]:
    """The forces a step gives the size of, those on its own bodies first: of two bodies that act on
    each other, the one told of.
    """
    size = system.variables[step.unknown].as_name
    forces = [each for each in system.forces if each.id == step.unknown or each.magnitude == size]
    return sorted(forces, key=lambda force: force.body not in step.equation.bodies)


def _couples_found(system: System, step: Step) -> list[Couple]:
    """The couples a step gives, those on its own bodies first."""
    couples = [couple for couple in system.couples if step.unknown in names_in(couple.moment)]
    return sorted(couples, key=lambda couple: couple.body not in step.equation.bodies)


def _where_told(digits: Digits, step: Step, force: Force) -> tuple[Digits, Body]:
    """The body that a force is told on first, which may be several taken as one in a step."""
    told = replace(digits, case=replace(digits.case, plan=as_told(digits.case.plan)))
    bodies = step.equation.bodies if force.body in step.equation.bodies else (force.body,)
    return told, whole_of(told.case.system, bodies)


def _links_found(system: System, step: Step) -> list[Link]:
    """The ways to points whose length, as it stands, a step gives."""
    links = (link for point in system.points.values() for link in point.links)
    return [link for link in links if link.length == system.variables[step.unknown].as_name]
