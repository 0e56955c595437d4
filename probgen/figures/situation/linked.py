"""Which particle stands on which, and which is tied to which."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from probgen.figures.measured.survey import Survey, pushes
from probgen.figures.paper.scene import heading
from probgen.quantities.expression import names_in
from probgen.statics.system import Body, ForcePart, Kind, Point

HOLDS: Final = (Kind.CABLE, Kind.ROPE, Kind.SPRING, Kind.STRUT, Kind.MUSCLE, Kind.HINGE)
"""What ties a body to another, or to where it is fixed."""

SURFACES: Final = (Kind.CONTACT, Kind.ROUGH, Kind.ROLLER)
"""What a body rests on, or is pushed by."""


def links(measured: Survey) -> dict[str, tuple[str, complex]]:
    """Particles tied to another one: by body, the other and the way to it (unit step).

    Not those whose places an author states: they stand there.
    """
    system = measured.system
    found: dict[str, tuple[str, complex]] = {}
    for force in system.forces:
        if not force.pair or force.kind not in HOLDS or not measured.has(force.direction):
            continue
        other = system.force(force.pair).body
        ends = [*system.body(force.body).outline, *system.body(other).outline]
        if len(ends) == 2 and not any(is_stated(system.points[end]) for end in ends):
            away = pushes(system.element(force.element))
            unit = heading(measured.number(force.direction)) * (-1 if away else 1)
            # The one that hangs is placed under the other, the left one of a row beside it.
            if unit.imag > 0.3 or (abs(unit.imag) <= 0.3 and unit.real > 0):
                found.setdefault(force.body, (other, unit))
    return found


def is_stated(point: Point) -> bool:
    """Whether data say where a point is."""
    return any(names_in(side) for link in point.links for side in (link.length, link.direction))


def carriers(measured: Survey) -> dict[str, str]:
    """The body that each body stands on, where it stands on one."""
    system = measured.system
    found = {}
    for force in system.forces:
        upward = force.pair and force.kind in SURFACES and force.part is ForcePart.NORMAL
        if upward and heading(measured.number(force.direction)).imag > 0.3:
            found[force.body] = system.force(force.pair).body
    return found


def upward(measured: Survey) -> list[Body]:
    """The bodies, each after those it stands on: it lies over their ends."""
    below = carriers(measured)
    return sorted(measured.system.bodies, key=lambda body: level(body.id, below))


def free(ropes: Mapping[str, str], below: Mapping[str, str]) -> dict[str, str]:
    """The ropes between bodies of which neither stands on the other."""
    return {
        one: other
        for one, other in ropes.items()
        if below.get(one) != other and below.get(other) != one
    }


def level(body: str, below: Mapping[str, str]) -> int:
    """How many bodies are under one."""
    count = 0
    while body in below and count < 20:
        body, count = below[body], count + 1
    return count
