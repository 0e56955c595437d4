"""Two-force members told: sections laid, members that carry nothing, links, what signs mean."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from typing import Final

from probgen.quantities.expression import names_in
from probgen.statics.link import is_link
from probgen.statics.step import Step
from probgen.statics.system import Body, Force, Kind, System
from probgen.wording.block import Display, Picture, Row
from probgen.wording.facts.balance import (
    MemberIdle,
    MemberSense,
    MembersPull,
    MemberState,
    QuantityHeading,
)
from probgen.wording.facts.forces import BodyCut, ForcesHeading, LinkAlong, SectionLaid
from probgen.wording.passage import Passage, sentences
from probgen.working.bodies_used import ids_of
from probgen.working.case import Case
from probgen.working.digits import Digits
from probgen.working.fact import Fact

_TWO_FORCE: Final = (Kind.MEMBER, Kind.LINK)


def taken_in_tension(system: System) -> Iterator[Fact]:
    """How members are taken, where there are any."""
    if any(force.kind is Kind.MEMBER for force in system.forces):
        yield MembersPull()


def members_on(system: System, body: str) -> list[Force]:
    """What members do to a body: those that meet at a joint, or that a section cuts."""
    return [f for f in system.forces if f.kind is Kind.MEMBER and f.body == body]


def links_told(digits: Digits, bodies: Collection[Body]) -> Iterator[Passage]:
    """Why one force is all that acts in each link that pulls at some of the bodies."""
    system, told = digits.case.system, ids_of(bodies)
    for body in system.bodies:
        own = [force for force in system.forces if force.body == body.id]
        if not is_link(system, body) or not told & {body.id, *_pulled_by(system, own)}:
            continue
        said = LinkAlong(body.id, own[0].magnitude, tuple(sorted(force.point for force in own)))
        yield Passage(ForcesHeading((body.id,)), (sentences(said), Picture("free-body", body.id)))


def _pulled_by(system: System, pulls: Collection[Force]) -> set[str]:
    """The bodies on which the opposites of forces act."""
    return {system.force(force.pair).body for force in pulls if force.pair}


def section_laid(system: System, body: Body, steps: Sequence[Step] = ()) -> Iterator[Fact]:
    """The section that leaves a part; nothing for any other body.

    steps: those of the plan, which tell the members that carry nothing: a section crosses them too.
    """
    if body.part_of:
        yield from _cut_through(system, body)
    cut = members_on(system, body.id) if body.joints else []
    if cut:
        idle = tuple(_idle_crossed(system, body, steps))
        found = (force.element for force in cut if force.element not in idle)
        yield SectionLaid(body.id, tuple(found), idle)


def _idle_crossed(system: System, part: Body, steps: Sequence[Step]) -> Iterator[str]:
    """The elements of idle members with one end in a part, as at the joint where they are seen."""
    for step in steps:
        if step.idle:
            member = system.element(system.force(step.equation.terms[0].source).element)
            if (member.at in part.joints) != (member.toward in part.joints):
                yield member.id


def _cut_through(system: System, part: Body) -> Iterator[Fact]:
    """A section through a body, and which way what it bares is counted."""
    bared = next(each for each in system.elements if each.body == part.id and each.kind is Kind.CUT)
    sizes = [force.magnitude for force in system.forces if force.element == bared.id]
    sizes += [couple.moment for couple in system.couples if couple.element == bared.id]
    axial, *shear, moment = (
        system.variables[id].as_name for size in sizes for id in sorted(names_in(size))
    )
    where = (*shear, None)[0]
    yield BodyCut(part.part_of, part.id, bared.at, axial, where, moment)


def idle_passage(digits: Digits, step: Step) -> Passage:
    """A member that is seen to carry nothing."""
    system = digits.case.system
    member = system.force(step.equation.terms[0].source)
    (joint,) = step.equation.bodies
    on = [force for force in system.forces if force.body == joint and force.id != member.id]
    others = [force for force in on if force.kind is Kind.MEMBER]
    name = system.variables[step.unknown].as_name
    across, loaded = tuple(force.element for force in others), len(others) < len(on)
    because = MemberIdle(name, member.element, joint, across, loaded)
    zero = digits.final(step.unknown)
    return Passage(
        QuantityHeading(step.unknown),
        (sentences(because), Display((Row((name,), "=", (zero,)),))),
    )


def member_sense(digits: Digits, step: Step) -> Iterator[Fact]:
    """Tension or compression, once the force in a member is known."""
    system, value = digits.case.system, digits.case.values[step.unknown]
    member = next((f for f in system.forces if f.id == step.unknown), None)
    if member is not None and member.kind in _TWO_FORCE and value:
        name = system.variables[step.unknown].as_name
        yield MemberSense(name, member.element, pulls=value > 0.0)


def member_state(case: Case, quantity: str) -> Fact | None:
    """Tension or compression beside an answer; None where it is no member's, or carries nothing."""
    member = next((f for f in case.system.forces if f.id == quantity), None)
    if member is None or member.kind not in _TWO_FORCE or not case.values[quantity]:
        return None
    return MemberState(case.values[quantity] > 0.0)
