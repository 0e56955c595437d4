"""Where the lines of action of two unknown forces meet: a pivot off the body that removes both."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from probgen.quantities.cancelling import cancelled
from probgen.quantities.expression import (
    ZERO,
    Expression,
    Number,
    Quotient,
    names_in,
    over,
    parts,
    times,
    total,
)
from probgen.quantities.factors import expanded, factored
from probgen.quantities.like_terms import collected
from probgen.statics.geometry import angle_of, sine, way
from probgen.statics.system import Body, Force, Link, Point, System


def with_meeting_points(system: System) -> System:
    """The system with a point added for each two unknown forces of a body whose lines meet.

    Forces at one point, or parallel ones, add none.  The points are named S, S_1, S_2, ...
    """
    points = dict(system.points)
    for body in system.bodies:
        if not body.particle:
            for links in _meetings(system, body):
                name = _free_name(points)
                points[name] = Point(name, links, meeting=True)
    return replace(system, points=points)


def all_lettered(system: System) -> bool:
    """Whether lengths in letters lead to the points added, so that one reads where they are."""
    added = (point for point in system.points.values() if point.meeting)
    return not any(_measured(link.length) for point in added for link in point.links)


def _measured(length: Expression) -> bool:
    own = isinstance(length, Number) and length.unit is not None
    return own or any(map(_measured, parts(length)))


def _meetings(system: System, body: Body) -> Iterator[tuple[Link, ...]]:
    unknown = set(system.unknowns)
    forces = [
        force
        for force in system.forces
        if force.body == body.id and names_in(force.magnitude) & unknown
    ]
    for one, other in combinations(forces, 2):
        found = _meeting(system, one, other)
        if found is not None:
            yield found


def _meeting(system: System, one: Force, other: Force) -> tuple[Link, ...] | None:
    """The way to where two lines of action meet: along the first from its point of application.

    With the way from one point to the other made of links (l, delta), the distance along the
    first line is sum(l sin(phi_2 - delta)) / sin(phi_2 - phi_1).
    """
    between = way(system.points, one.point, other.point)
    if not between:
        return None
    second = angle_of(other.direction)
    crossing = sine(second.minus(angle_of(one.direction)))
    if crossing == ZERO:
        return None
    reach = total(
        *((1, times(link.length, sine(second.minus(angle_of(link.direction))))) for link in between)
    )
    if reach == ZERO:
        return None
    along = Link(_in_short(over(reach, crossing)), one.direction)
    return (*system.points[one.point].links, along)


def _in_short(distance: Expression) -> Expression:
    """A distance without what cancels: p (k - 2 h)/(k - h), of slopes that lengths tell."""
    short = cancelled(distance)
    match short:
        case Quotient(top, bottom) if short != distance:
            return over(factored(collected(expanded(top))), collected(bottom))
        case _:
            return short


def _free_name(points: dict[str, Point]) -> str:
    names = ["S", *(f"S_{number}" for number in range(1, len(points) + 2))]
    return next(name for name in names if name not in points)
