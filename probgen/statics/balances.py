"""The balances that may be written: of which bodies, along which axes, about which points."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from probgen.quantities.expression import Expression, number, total
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
from probgen.statics.geometry import angle_of
from probgen.statics.method import Method
from probgen.statics.system import Condition, Definition, System

_ALONG, _SQUARE = "∥", "⊥"


def candidates(
    system: System, open_definitions: tuple[Definition, ...], method: Method
) -> Iterator[Equation]:
    """Every balance and condition a plan may use, each once."""
    for bodies in groups(system):
        rigid = not any(system.body(body).particle for body in bodies)
        for pivot in _pivots(system, bodies) if rigid else ():
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
    owner = {force.id: force.body for force in system.forces}
    joined = {
        frozenset((force.body, owner[force.pair])) for force in system.forces if force.pair in owner
    }
    for size in range(1, len(ids) + 1):
        for bodies in combinations(ids, size):
            if _connected(bodies, joined):
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
    return tuple(dict.fromkeys([*points, *meeting]))


def _axes(system: System, bodies: tuple[str, ...], method: Method) -> Iterator[Axis]:
    """Horizontal and vertical, and along and square to each tilted surface that touches."""
    yield X
    yield Y
    if method.axes == "level":
        return
    seen: set[Expression] = set()
    for element in system.elements:
        normal = element.surface
        if element.body not in bodies or normal is None or normal in seen:
            continue
        angle = angle_of(normal)
        if angle.multiples or angle.constant % 90:
            seen.add(normal)
            mark = "" if len(seen) == 1 else str(len(seen))
            yield Axis(_ALONG + mark, total((1, normal), (-1, number(90))), Lie.ALONG_SURFACE)
            yield Axis(_SQUARE + mark, normal, Lie.SQUARE_TO_SURFACE)
