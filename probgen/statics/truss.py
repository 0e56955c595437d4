"""Trusses taken apart: joints as particles, and the parts that sections leave.

A truss is read as one body with members.  The same supports and loads act on it, on its joints and
on its parts, so they keep their ids there; a member pulls at a joint, or at a part it is cut from,
toward its other end.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import combinations

from probgen.quantities.expression import ZERO
from probgen.statics.geometry import opposite
from probgen.statics.quantity_id import back_id, joint_id, part_id
from probgen.statics.step import Step
from probgen.statics.system import Body, Element, Force, Kind, Member, System


def with_joints(system: System) -> System:
    """The system with each truss replaced by its joints: all that its equilibrium asks for."""
    trusses = [body for body in system.bodies if body.joints]
    joints = [_joint(body, at) for body in trusses for at in body.joints]
    apart = _with_bodies(system, joints)
    gone = {body.id for body in trusses}
    return replace(
        apart,
        bodies=tuple(body for body in apart.bodies if body.id not in gone),
        forces=tuple(force for force in apart.forces if force.body not in gone),
        elements=tuple(element for element in apart.elements if element.body not in gone),
    )


def taken_apart(system: System, asked: Collection[str], usual: str = "shortest") -> System:
    """The system with the joints of its trusses, and the parts left by sections through members.

    asked: the quantities looked for; sections are laid through those of their members.
    usual: how the course works trusses, where the system does not say it.
    """
    by = system.by or ("" if usual == "shortest" else usual)
    bodies: list[Body] = []
    for truss in (body for body in system.bodies if body.joints):
        own = [member for member in system.members if member.body == truss.id]
        bodies += [_joint(truss, at) for at in truss.joints]
        if by != "joints":
            through = [member for member in own if member.force.id in asked]
            bodies += _parts(truss, own, through)
    return replace(_with_bodies(system, bodies), members=(), by=by)


def trimmed(system: System, steps: Sequence[Step]) -> System:
    """The system without the parts of trusses that no balance is written of.

    A member found idle is left out of every body but the joint where that is seen.
    """
    used = {body for step in steps for each in step.equations for body in each.bodies}
    first = {body.id for body in system.bodies if body.joints and not _is_cut(system, body.id)}
    kept = {b.id for b in system.bodies if not b.joints or b.id in first or b.id in used}
    seen = {step.unknown: step.equation.body for step in steps if step.idle}

    def stays(acting: Force | Element, member: str) -> bool:
        return acting.body in kept and seen.get(member, acting.body) == acting.body

    return replace(
        system,
        bodies=tuple(body for body in system.bodies if body.id in kept),
        forces=tuple(f for f in system.forces if stays(f, _member(f.kind, f.id))),
        elements=tuple(e for e in system.elements if stays(e, _member(e.kind, e.of or e.id))),
    )


def _member(kind: Kind, id: str) -> str:
    """The id of the force in a member, whichever joint it pulls at; "" of any other."""
    return id.removesuffix(back_id("")) if kind is Kind.MEMBER else ""


def _is_cut(system: System, body: str) -> bool:
    """Whether members pull at a body from outside."""
    return any(force.kind is Kind.MEMBER and force.body == body for force in system.forces)


def _joint(truss: Body, at: str) -> Body:
    return Body(joint_id(at), (at,), particle=True)


def _with_bodies(system: System, bodies: Sequence[Body]) -> System:
    forces, elements = list(system.forces), list(system.elements)
    for body in bodies:
        inside = set(body.joints or body.outline)
        truss = next(b.id for b in system.bodies if b.joints and inside <= set(b.joints))
        for element in system.elements:
            if element.body == truss and element.at in inside:
                elements.append(replace(element, body=body.id))
        for force in system.forces:
            if force.body == truss and force.point in inside:
                forces.append(replace(force, body=body.id, pair=""))
        for member in system.members:
            if member.body == truss and len(member.ends & inside) == 1:
                force, element = _pull(member, body.id, member.start in inside)
                forces.append(force)
                elements.append(element)
    return replace(
        system,
        bodies=(*system.bodies, *bodies),
        forces=tuple(forces),
        elements=tuple(elements),
    )


def _pull(member: Member, body: str, at_start: bool) -> tuple[Force, Element]:
    """What a member does to a body at one of its ends."""
    at, toward = (member.start, member.end) if at_start else (member.end, member.start)
    id = member.force.id if at_start else back_id(member.force.id)
    direction = member.direction if at_start else opposite(member.direction)
    force = Force(id, body, at, member.force, direction, Kind.MEMBER, id)
    of = "" if at_start else member.force.id
    return force, Element(id, Kind.MEMBER, body, at, (id,), toward, of=of)


def finds_idle(system: System, step: Step) -> bool:
    """Whether a step finds that a member carries nothing: it is alone to pull along some axis."""
    terms = step.equation.terms
    alone = step.equation.kind == "force" and len(terms) == 1 and step.expression == ZERO
    return alone and system.force(terms[0].source).kind is Kind.MEMBER


def without_idle(system: System, steps: Sequence[Step]) -> System:
    """The system without the members found idle, as it is told and drawn.

    Nor has a piece of a truss the component of a support's force that is found to be zero.
    """
    idle = {step.unknown for step in steps if step.idle}
    zero = {step.unknown for step in steps if step.expression == ZERO}
    pieces = {body.id for body in system.bodies if _is_cut(system, body.id)}

    def left(body: str, forces: Sequence[str]) -> tuple[str, ...]:
        return tuple(id for id in forces if body not in pieces or id not in zero)

    return replace(
        system,
        forces=tuple(
            f for f in system.forces if _member(f.kind, f.id) not in idle and left(f.body, [f.id])
        ),
        elements=tuple(
            replace(e, forces=left(e.body, e.forces))
            for e in system.elements
            if _member(e.kind, e.of or e.id) not in idle
            and (not e.forces or left(e.body, e.forces))
        ),
    )


# Sections.


def _parts(truss: Body, members: Sequence[Member], through: Sequence[Member]) -> Iterator[Body]:
    """Both parts left by each section of two or three members, one of them in `through`.

    A section that cuts a joint off leaves nothing that the joint itself does not tell.
    """
    seen: set[frozenset[str]] = set()
    for cut in _cuts(members, through):
        rest = [member for member in members if member not in cut]
        one = _reached(cut[0].start, rest)
        other = set(truss.joints) - one
        if _reached(cut[0].end, rest) != other or any(len(m.ends & one) != 1 for m in cut):
            continue
        if min(len(one), len(other)) == 1:
            continue
        for side in (frozenset(one), frozenset(other)):
            if side not in seen:
                seen.add(side)
                joints = tuple(sorted(side))
                inner = [member for member in rest if member.ends <= side]
                yield Body(part_id(joints), walk(inner), joints=joints)


def _cuts(members: Sequence[Member], through: Sequence[Member]) -> Iterator[tuple[Member, ...]]:
    for size in (2, 3):
        for cut in combinations(members, size):
            if any(member in through for member in cut):
                yield cut


def _reached(start: str, members: Iterable[Member]) -> set[str]:
    """The joints that members lead to from one of them."""
    found, waiting = {start}, [start]
    beside = neighbours(members)
    while waiting:
        for other in beside.get(waiting.pop(), ()):
            if other not in found:
                found.add(other)
                waiting.append(other)
    return found


def neighbours(members: Iterable[Member]) -> Mapping[str, list[str]]:
    """By joint the joints that members lead to."""
    beside: dict[str, list[str]] = {}
    for member in members:
        beside.setdefault(member.start, []).append(member.end)
        beside.setdefault(member.end, []).append(member.start)
    return beside


def walk(members: Sequence[Member]) -> tuple[str, ...]:
    """A walk along every member, as far as they hang together, that does not end where it began."""
    beside, left = neighbours(members), {member.ends for member in members}
    path = [members[0].start]
    while left:
        here = path[-1]
        fresh = [at for at in beside[here] if frozenset((here, at)) in left]
        step = [fresh[0]] if fresh else _way_to_fresh(here, beside, left)
        if not step:
            break
        for at in step:
            left.discard(frozenset((path[-1], at)))
            path.append(at)
    return (*path, path[1]) if path[0] == path[-1] else tuple(path)


def _way_to_fresh(
    start: str, beside: Mapping[str, list[str]], left: Collection[frozenset[str]]
) -> list[str]:
    """The shortest way along members to a joint that has one not walked yet; none if all are."""
    ways = [[start]]
    seen = {start}
    for way in ways:
        if any(way[-1] in ends for ends in left):
            return way[1:]
        for at in beside[way[-1]]:
            if at not in seen:
                seen.add(at)
                ways.append([*way, at])
    return []
