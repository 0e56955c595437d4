"""States of one thing set apart: bodies whose places meet though nothing joins them.

A boom held by a rope, and the same boom clamped, have the same points.  In a figure each state is
to stand clear of the other, on its own ground.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import box_around
from probgen.figures.paper.segment import crosses
from probgen.quantities.expression import names_in, number
from probgen.quantities.unit import unit_named
from probgen.statics.system import Body, Element, Kind, Link, Point, System

_HELD: Final = (Kind.HINGE, Kind.FIXED)
_BESIDE: Final = 0.75  # between two states side by side, of the larger side of one
_BELOW: Final = 0.6  # the same, one below the other
_ROOM: Final = 1.35  # how much wider than high a figure may be
_METRE: Final = unit_named("m")
_SMALL: Final = 1e-6  # of the larger side, within which places are one


def set_apart(measured: Survey) -> Survey:
    """The survey with every state that meets an earlier one moved clear of all, to the right or
    down.

    Its points are moved with it; those that both have become points of their own, whose letters
    are as before.
    """
    system = measured.system
    if system.diagrams or _taken_apart(system):  # drawn along the body, or a body and its parts
        return measured
    groups = joined_bodies(system)
    moved = [at for at, group in enumerate(groups) if _meets_any(measured, group, groups[:at])]
    if not moved:
        return measured
    places = [place for group in groups for place in _places(measured, group)]
    box = box_around(places)
    size = complex(box.width, box.height)
    gap = max(size.real, size.imag)
    beside = size.real * 2 + _BESIDE * gap, max(size.imag, _BELOW * gap)
    below = max(size.real, _BELOW * gap), size.imag * 2 + _BELOW * gap
    right = _scale(*beside) >= _scale(*below)
    step = complex(size.real + _BESIDE * gap, 0) if right else -1j * (size.imag + _BELOW * gap)
    for count, at in enumerate(moved, start=1):
        measured = _moved(measured, groups[at], step * count)
    return replace(measured, states=tuple(groups))


def _taken_apart(system: System) -> bool:
    """Whether it has trusses, whole or with their joints and parts as bodies, or parts of beams."""
    members = any(force.kind is Kind.MEMBER for force in system.forces)
    return bool(system.members) or members or any(body.part_of for body in system.bodies)


def _scale(width: float, height: float) -> float:
    return min(_ROOM / width, 1.0 / height)


def joined_bodies(system: System) -> list[tuple[str, ...]]:
    """The bodies that forces between them, couples or a rope join, in their order."""
    own = {body.id: body.id for body in system.bodies}
    pairs = [
        (each.body, other.body)
        for kind in (system.forces, system.couples)
        for each in kind
        for other in kind
        if each.pair and each.pair == other.id
    ]
    pulls = [force for force in system.forces if force.kind is Kind.ROPE]
    pairs += [
        (one.body, other.body)
        for one, other in pairwise(sorted(pulls, key=lambda pull: sorted(names_in(pull.magnitude))))
        if names_in(one.magnitude) & names_in(other.magnitude)
    ]
    for one, other in pairs:
        first, second = own[one], own[other]
        own = {body: first if root == second else root for body, root in own.items()}
    roots = dict.fromkeys(own.values())
    return [tuple(body for body, of in own.items() if of == root) for root in roots]


def separate(measured: Survey) -> list[tuple[str, ...]]:
    """The bodies that nothing joins to each other, the first of each with a noun of its own; none
    where all are joined.
    """
    if measured.system.members or any(body.part_of for body in measured.system.bodies):
        return []  # a body and its parts
    groups = joined_bodies(measured.system)
    nouns = {measured.labels.bodies.get(bodies[0]) for bodies in groups}
    return groups if 1 < len(groups) == len(nouns - {None}) else []


def _meets_any(measured: Survey, group: Sequence[str], others: Sequence[Sequence[str]]) -> bool:
    bodies = [measured.system.body(id) for other in others for id in other]
    own = [measured.system.body(id) for id in group]
    return any(_meet(measured, one, other) for one in own for other in bodies)


def _meet(measured: Survey, one: Body, other: Body) -> bool:
    """Whether two bodies with extent lie on or across each other, or turn about one place."""
    if min(len(one.outline), len(other.outline)) < 2:
        return False
    if _holds(measured, one) & _holds(measured, other):
        return True
    return any(
        _overlap(a, b, c, d)
        for a, b in pairwise(measured.outline(one))
        for c, d in pairwise(measured.outline(other))
    )


def _holds(measured: Survey, body: Body) -> set[complex]:
    """The places where a body is held from outside by a hinge or built in."""
    found = set()
    for element in measured.system.elements:
        outer = not any(measured.system.force(id).pair for id in element.forces)
        if element.kind in _HELD and element.body == body.id and outer:
            place = measured.places[element.at]
            found.add(complex(round(place.real, 9), round(place.imag, 9)))
    return found


def _overlap(a: complex, b: complex, c: complex, d: complex) -> bool:
    """Whether two straight pieces cross, or lie on each other for a length; not where ends meet."""
    length = abs(b - a)
    if length == 0 or c == d:
        return False
    near = _SMALL * max(length, abs(d - c))
    one, other = (c - a) / (b - a) * length, (d - a) / (b - a) * length
    if abs(one.imag) < near and abs(other.imag) < near:
        low, high = sorted((one.real, other.real))
        return min(high, length) - max(low, 0.0) > near
    if min(abs(p - q) for p in (a, b) for q in (c, d)) < near:
        return False
    return crosses((a.real, a.imag, b.real, b.imag), (c.real, c.imag, d.real, d.imag))


def _places(measured: Survey, group: Sequence[str]) -> list[complex]:
    return [measured.places[name] for name in _points(measured.system, group)]


def _points(system: System, group: Sequence[str]) -> dict[str, None]:
    """The points that bodies run through, and what acts on them is at."""
    names = [name for id in group for name in system.body(id).outline]
    for element in system.elements:
        if element.body in group:
            names += [element.at, element.toward]
            names += [element.spread.start] if element.spread else []
    names += [force.point for force in system.forces if force.body in group]
    names += [couple.point for couple in system.couples if couple.body in group]
    return dict.fromkeys(filter(None, names))


def _moved(measured: Survey, group: Sequence[str], step: complex) -> Survey:
    """The survey with the bodies of a state moved by a step (m)."""
    system = measured.system
    others = [body.id for body in system.bodies if body.id not in group]
    shared = _points(system, others)
    own = _points(system, group)
    new = {name: f"{group[0]}:{name}" if name in shared else name for name in own}
    points, places = dict(system.points), dict(measured.places)
    for name, id in new.items():
        links = (*_links(step), *system.points[name].links)
        points[id] = Point(id, links, system.points[name].meeting)
        places[id] = measured.places[name] + step
    letters = {**measured.letters, **{id: name for name, id in new.items() if id != name}}
    moved = _renamed(replace(system, points=points), group, new)
    return replace(measured, system=moved, places=places, letters=letters)


def _links(step: complex) -> tuple[Link, Link]:
    across, upward = (number(repr(part), _METRE) for part in (step.real, step.imag))
    return Link(across, number(0)), Link(upward, number(90))


def _renamed(system: System, group: Sequence[str], new: dict[str, str]) -> System:
    """The system with the points of some bodies, and of what acts on them, by their new ids."""

    def at(element: Element) -> Element:
        spread = element.spread
        return replace(
            element,
            at=new.get(element.at, element.at),
            toward=new.get(element.toward, element.toward),
            spread=spread and replace(spread, start=new[spread.start]),
        )

    return replace(
        system,
        bodies=tuple(
            replace(body, outline=tuple(new[name] for name in body.outline))
            if body.id in group
            else body
            for body in system.bodies
        ),
        forces=tuple(
            replace(force, point=new[force.point]) if force.body in group else force
            for force in system.forces
        ),
        couples=tuple(
            replace(couple, point=new[couple.point]) if couple.body in group else couple
            for couple in system.couples
        ),
        elements=tuple(at(each) if each.body in group else each for each in system.elements),
    )
