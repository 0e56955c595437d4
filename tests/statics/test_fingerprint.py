"""A system's fingerprint: the same under other names and orders, another for other physics."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace
from decimal import Decimal
from enum import Enum
from typing import Any

import pytest

from probgen.bank.bank import default_bank
from probgen.quantities.expression import ZERO, Name, Number, Product, Sum, number, total
from probgen.quantities.unit import DEGREE, METRE, UNITS
from probgen.statics.fingerprint import fingerprint
from probgen.statics.system import (
    Body,
    Condition,
    Find,
    Form,
    Kind,
    Limit,
    Link,
    Member,
    Point,
    System,
)

BANK = default_bank()
TEMPLATES = sorted(BANK.files)
SYSTEMS = {id: BANK.read(id).system for id in TEMPLATES}
NO_ID = {"by", "part", "relation", "function", "symbol"}
"""Fields whose texts are no ids."""


def rebuilt(thing: Any, change: Callable[[Any], Any]) -> Any:
    """The thing with every part changed, from the leaves up."""
    if isinstance(thing, Enum) or type(thing).__name__ in ("Unit", "Dimension"):
        return thing
    if is_dataclass(thing) and not isinstance(thing, type):
        parts = {
            field.name: getattr(thing, field.name)
            if field.name in NO_ID
            else rebuilt(getattr(thing, field.name), change)
            for field in fields(thing)
        }
        return change(type(thing)(**parts))
    if isinstance(thing, tuple):
        return tuple(rebuilt(each, change) for each in thing)
    if isinstance(thing, dict):
        return {rebuilt(k, change): rebuilt(v, change) for k, v in thing.items()}
    return change(thing)


def ids_of(system: System) -> set[str]:
    """Every id of the system."""
    entries = (system.bodies, system.forces, system.couples, system.elements)
    named = {each.id for group in entries for each in group}
    return named | set(system.variables) | set(system.points)


@pytest.mark.parametrize("id", TEMPLATES)
def test_other_ids_are_the_same_physics(id: str) -> None:
    system = SYSTEMS[id]
    names = {old: f"n{place}" for place, old in enumerate(sorted(ids_of(system), reverse=True))}
    renamed = rebuilt(system, lambda part: names.get(part, part) if type(part) is str else part)
    assert not ids_of(renamed) & ids_of(system)
    assert fingerprint(renamed) == fingerprint(system)


def reordered(thing: Any) -> Any:
    match thing:
        case Sum(terms):
            return Sum(terms[::-1])
        case Product(factors):
            return Product(factors[::-1])
        case Point(name, links, meeting):
            return Point(name, links[::-1], meeting)
        case Condition(name, left, right):
            return Condition(name, right, left)
        case _:
            return thing


@pytest.mark.parametrize("id", TEMPLATES)
def test_another_order_is_the_same_physics(id: str) -> None:
    system = rebuilt(SYSTEMS[id], reordered)
    lottery = random.Random(id)
    shuffled: dict[str, Any] = {}
    for field in ("definitions", "bodies", "forces", "couples", "elements", "conditions", "finds"):
        entries = list(getattr(system, field))
        lottery.shuffle(entries)
        shuffled[field] = tuple(entries)
    for field in ("variables", "points"):
        entries = list(getattr(system, field).items())
        lottery.shuffle(entries)
        shuffled[field] = dict(entries)
    assert fingerprint(replace(system, **shuffled)) == fingerprint(SYSTEMS[id])


@pytest.mark.parametrize("id", TEMPLATES)
def test_how_a_number_is_typed_does_not_matter(id: str) -> None:
    def longer(thing: Any) -> Any:
        return (
            replace(thing, value=thing.value + Decimal("0.00"))
            if isinstance(thing, Number)
            else thing
        )

    assert fingerprint(rebuilt(SYSTEMS[id], longer)) == fingerprint(SYSTEMS[id])


@pytest.mark.parametrize("id", TEMPLATES)
def test_the_unit_of_a_number_does_not_matter(id: str) -> None:
    def in_centimetres(thing: Any) -> Any:
        metres = isinstance(thing, Number) and thing.unit == METRE
        return Number(thing.value * 100, UNITS["cm"]) if metres else thing

    assert fingerprint(rebuilt(SYSTEMS[id], in_centimetres)) == fingerprint(SYSTEMS[id])


def test_points_that_only_a_figure_shows_do_not_matter() -> None:
    system = SYSTEMS["beam-stay-cable"]
    aside = Point("Q", (Link(number(3), number(90, DEGREE)),))
    assert fingerprint(replace(system, points={**system.points, "Q": aside})) == fingerprint(system)


def first(entries: tuple[Any, ...], **change: Any) -> tuple[Any, ...]:
    return (replace(entries[0], **change), *entries[1:])


def changes(system: System) -> Iterator[tuple[str, System]]:
    """The system with one thing changed that is physics."""
    force, element, find = system.forces[0], system.elements[0], system.finds[0]
    turned = total((1, force.direction), (1, number(180, DEGREE)))
    yield "a force turned round", replace(system, forces=first(system.forces, direction=turned))
    leaning = total((1, force.direction), (1, number(1, DEGREE)))
    yield "a force leaning", replace(system, forces=first(system.forces, direction=leaning))
    doubled = Product((number(2), force.magnitude))
    yield "a force doubled", replace(system, forces=first(system.forces, magnitude=doubled))
    yield "a force gone", replace(system, forces=system.forces[1:])
    kind = Kind.CABLE if force.kind is not Kind.CABLE else Kind.STRUT
    yield "another support", replace(system, forces=first(system.forces, kind=kind))
    point = system.points[force.point]
    farther = Point(point.id, (*point.links, Link(number("0.01"), ZERO)))
    yield "a point moved", replace(system, points={**system.points, point.id: farther})
    grown = first(system.bodies, particle=not system.bodies[0].particle)
    yield "particle or body", replace(system, bodies=grown)
    yield "one thing less asked", replace(system, finds=system.finds[1:])
    form = Form.LARGEST if find.form is not Form.LARGEST else Form.SMALLEST
    yield "asked otherwise", replace(system, finds=first(system.finds, form=form))
    more = Find(next(v.id for v in system.variables.values()), Form.VALUE)
    yield "one thing more asked", replace(system, finds=(*system.finds, more))
    a, b = list(system.variables.values())[:2]
    equal = Condition("c", Name(a.id, ""), Product((number(2), Name(b.id, ""))))
    yield "a condition more", replace(system, conditions=(*system.conditions, equal))
    limit = Limit("l", Name(a.id, ""), "<=", Name(b.id, ""))
    limited = replace(system, limits=(*system.limits, limit))
    yield "a limit more", limited
    yield (
        "a limit the other way",
        replace(system, limits=(*system.limits, replace(limit, relation=">="))),
    )
    unknown = list(system.variables.values())[-1]
    signed = replace(unknown, nonnegative=not unknown.nonnegative)
    yield "a sign allowed", replace(system, variables={**system.variables, unknown.id: signed})
    bounded = replace(unknown, low=-7.0)
    yield "another bound", replace(system, variables={**system.variables, unknown.id: bounded})
    least, most = (replace(unknown, least=Name(a.id, "")), replace(unknown, most=Name(a.id, "")))
    for own in (least, most):
        varied = replace(system, variables={**system.variables, unknown.id: own})
        yield f"a bound of each draw, {own.most}", varied
    if not system.pivot:
        yield "a pivot chosen", replace(system, pivot=force.point)
    facing = total((1, number(17, DEGREE)))
    yield "a surface", replace(system, elements=first(system.elements, surface=facing))
    carried = first(system.elements, own=not element.own)
    yield "an own weight", replace(system, elements=carried)
    for place, each in enumerate(system.elements):
        if each.spread is not None and (curve := each.spread.intensity) is not None:
            fuller = replace(curve, load=Product((number(2), curve.load)))
            spread = replace(each.spread, intensity=fuller)
            others = list(system.elements)
            others[place] = replace(each, spread=spread)
            yield "another curve", replace(system, elements=tuple(others))
    for definition in system.definitions[:1]:
        more_of_it = Product((number(3), definition.expression))
        changed = first(system.definitions, expression=more_of_it)
        yield "a definition", replace(system, definitions=changed)


@pytest.mark.one_in(4)
@pytest.mark.parametrize("id", TEMPLATES)
def test_other_physics_has_another_fingerprint(id: str) -> None:
    found = {fingerprint(SYSTEMS[id]): "as it is"}
    for name, system in changes(SYSTEMS[id]):
        print_of_it = fingerprint(system)
        assert print_of_it not in found, (name, found[print_of_it])
        found[print_of_it] = name
    assert len(found) >= 18


def test_no_two_templates_are_the_same_problem() -> None:
    assert len({fingerprint(system) for system in SYSTEMS.values()}) == len(TEMPLATES)


def test_it_matters_on_which_body_the_unknown_weight_hangs() -> None:
    """The drill on the box and the sand in the bucket (which is asked) exchanged."""
    system = SYSTEMS["table-pulley-sand"]
    drill, sand = system.force("W_d"), system.force("W_s")
    sizes = {drill.id: sand.magnitude, sand.id: drill.magnitude}
    crossed = tuple(
        replace(force, magnitude=sizes.get(force.id, force.magnitude)) for force in system.forces
    )
    assert fingerprint(replace(system, forces=crossed)) != fingerprint(system)


def test_members_and_how_a_truss_is_worked_are_told_apart() -> None:
    """The same joints with the other diagonal, and worked another way."""
    ends = [("A", "B"), ("B", "C"), ("C", "D"), ("A", "D")]

    def truss(*extra: tuple[str, str], by: str = "") -> System:
        names = [Name(f"F_{one}{other}", f"F_{one}{other}") for one, other in (*ends, *extra)]
        members = tuple(
            Member("truss", *pair, name, number(0))
            for pair, name in zip((*ends, *extra), names, strict=True)
        )
        points = {
            name: Point(name, (Link(number(place), number(0)),))
            for place, name in enumerate("ABCD")
        }
        body = Body("truss", tuple("ABCD"), joints=tuple("ABCD"))
        return System({}, (), points, (body,), (), (), (), (), (), members=members, by=by)

    prints = {
        fingerprint(truss(("A", "C"))),
        fingerprint(truss(("B", "D"))),
        fingerprint(truss(("A", "C"), by="joints")),
    }
    assert len(prints) == 3
