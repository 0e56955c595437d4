"""The balances that may be written: of which bodies, along which axes, about which points."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from decimal import Decimal
from itertools import combinations

from probgen.quantities.expression import Call, number, total
from probgen.statics.equation import (
    Axis,
    Equation,
    Lie,
    X,
    Y,
    condition_equation,
    force_balance,
    torque_balance,
)
from probgen.statics.geometry import Angle, angle_of, way
from probgen.statics.link import whole_links
from probgen.statics.method import Method
from probgen.statics.system import Body, Condition, Definition, Force, Kind, System
from probgen.statics.taken_as_one import turned

_ALONG, _SQUARE = "∥", "⊥"


def candidates(
    system: System, open_definitions: tuple[Definition, ...], method: Method
) -> Iterator[Equation]:
    """Every balance and condition a plan may use, each once."""
    for bodies in groups(system):
        for pivot in _pivots(system, bodies) if turned(system, bodies) else ():
            yield torque_balance(system, bodies, pivot, method)
        for axis in _axes(system, bodies, method):
            yield force_balance(system, bodies, axis, method)
    for condition in system.conditions:
        yield condition_equation(condition, method)
    for definition in open_definitions:
        variable = system.variables[definition.variable]
        condition = Condition(variable.id, variable.as_name, definition.expression)
        yield condition_equation(condition, method)


def groups(system: System) -> Iterator[tuple[str, ...]]:
    """Each body alone, then every set of bodies held together by forces between them."""
    ids = [body.id for body in system.bodies]
    yield from ((id,) for id in ids)
    owner = {force.id: force.body for force in reversed(system.forces)}
    joined = {
        frozenset((force.body, owner[force.pair])) for force in system.forces if force.pair in owner
    }
    tied = [id for id in ids if any(id in pair for pair in joined)]
    for size in range(2, len(tied) + 1):
        for bodies in combinations(tied, size):
            if _connected(bodies, joined) and whole_links(system, bodies):
                yield bodies


def _connected(bodies: tuple[str, ...], joined: set[frozenset[str]]) -> bool:
    reached, waiting = {bodies[0]}, [bodies[0]]
    while waiting:
        here = waiting.pop()
        for other in bodies:
            if other not in reached and frozenset((here, other)) in joined:
                reached.add(other)
                waiting.append(other)
    return len(reached) == len(bodies)


def _pivots(system: System, bodies: tuple[str, ...]) -> tuple[str, ...]:
    """Points a torque balance may be written about: the author's choice, or where forces act."""
    if system.pivot:
        return (system.pivot,)
    meeting = [point.id for point in system.points.values() if point.meeting]
    points = [force.point for force in system.forces if force.body in bodies]
    cut = [e for e in system.elements if e.kind is Kind.MEMBER and e.body in bodies]
    return tuple(dict.fromkeys([*points, *(member.toward for member in cut), *meeting]))


def _axes(system: System, bodies: tuple[str, ...], method: Method) -> Iterator[Axis]:
    """Horizontal and vertical, and along and square to each tilted surface that touches, or to a
    tilted body that is cut.

    Surfaces square to each other have the same axes: those of the one with friction, or the first.
    """
    yield X
    yield Y
    if method.axes == "level":
        return
    seen: list[Angle] = []
    own = (each for each in system.elements if each.body in bodies)
    touching = [(each, each.surface) for each in own if each.surface is not None]
    for element, normal in sorted(touching, key=lambda each: each[0].kind is not Kind.ROUGH):
        angle = angle_of(normal)
        if not angle.along_axis and not any(angle.minus(other).along_axis for other in seen):
            seen.append(angle)
            mark = "" if len(seen) == 1 else str(len(seen))
            along = total((1, normal), (-1, number(90)))
            which = element.id if len(touching) > 1 else ""
            yield Axis(_ALONG + mark, along, Lie.ALONG_SURFACE, which)
            yield Axis(_SQUARE + mark, normal, Lie.SQUARE_TO_SURFACE, which)
    if len(bodies) > 1:
        return
    body = system.body(bodies[0])
    if body.particle:
        yield from _square_to_members(system, body.id)
    elif body.part_of and not seen:
        yield from _along_body(system, body)


def _along_body(system: System, part: Body) -> Iterator[Axis]:
    """Along and square to a tilted body of which a section leaves a part."""
    links = way(system.points, part.outline[0], part.outline[-1])
    if len(links) == 1 and not angle_of(links[0].direction).along_axis:
        along, whole = links[0].direction, part.part_of
        yield Axis(_ALONG, along, Lie.ALONG_BODY, body=whole)
        square = angle_of(along).turned(Decimal(90)).expression
        yield Axis(_SQUARE, square, Lie.SQUARE_TO_BODY, body=whole)


def _square_to_members(system: System, joint: str) -> Iterator[Axis]:
    """Axes at a joint that leave a member out and may leave another alone.

    Where nothing but members pulls, one that is alone carries nothing.  A loaded joint is worked
    so where two members are in line, by angles that have names.
    """
    pulls = [force for force in system.forces if force.body == joint]
    members = [force for force in pulls if force.kind is Kind.MEMBER]
    idle = len(members) == len(pulls)
    seen: list[Angle] = []
    for force in members:
        angle = angle_of(force.direction)
        if any(_in_line(angle, other) for other in seen):
            continue
        seen.append(angle)
        pairs = sum(_in_line(angle, angle_of(other.direction)) for other in members) > 1
        if angle.along_axis or not (idle or (pairs and _named(pulls))):
            continue
        mark = _SQUARE if len(seen) == 1 else f"{_SQUARE}{len(seen)}"
        upward = Decimal(-90 if angle.constant % 360 >= 180 else 90)
        square = angle.turned(upward).expression
        yield Axis(mark, square, Lie.SQUARE_TO_MEMBER, force.element)


def _in_line(one: Angle, other: Angle) -> bool:
    return one.minus(other) in (Angle(Decimal(n), ()) for n in (-180, 0, 180))


def _named(forces: Iterable[Force]) -> bool:
    """Whether no direction has to be worked out from lengths."""
    parts = (part for force in forces for part, _ in angle_of(force.direction).multiples)
    return not any(isinstance(part, Call) for part in parts)
