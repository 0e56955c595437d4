"""What must not matter: size of the loads, left and right, the pivot, how torque is written.

Every template of the project and every published problem is worked, changed and worked again.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.input.fault import InputError
from probgen.problem.problem import Problem, draw_class, prepare
from probgen.quantities.expression import Expression, Number, number, total
from probgen.quantities.unit import FORCE
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from probgen.statics.system import Element, Force, Kind, Link, Point, System
from probgen.working.convention import Convention

ROOT = Path(__file__).parents[2]
DATA = ("answers.toml", "not-yet.toml")
FILES = [*ROOT.glob("templates/*/*.toml"), *ROOT.glob("tests/published/*.toml")]
TEMPLATES = {path.stem: path for path in sorted(FILES) if path.name not in DATA}
RIGID = [
    name
    for name, path in TEMPLATES.items()
    if "particle = true" not in path.read_text(encoding="utf-8")
]
OWN = [name for name in RIGID if TEMPLATES[name].parent.name != "published"]
QUICK = [
    pytest.param(name, marks=() if name in OWN else pytest.mark.proof, id=name) for name in RIGID
]
"""The project's own problems; the published ones when proving."""
FORMS = [
    Convention(torque=form, positive=positive)
    for form in ("angle", "arm", "components")
    for positive in ("counter-clockwise", "clockwise")
]

few = settings(max_examples=3, deadline=None, derandomize=True, database=None)
DRAWS = 8
places = st.integers(0, DRAWS - 1)


@cache
def template(name: str) -> Template:
    path = TEMPLATES[name]
    return read_template(path.read_text(encoding="utf-8"), path.name)


@cache
def problem(name: str) -> Problem:
    return prepare(template(name), Convention())


@cache
def drawn(name: str) -> list[dict[str, float]]:
    """Coherent values of everything drawn, and g, for a small class."""
    draws = draw_class(problem(name), "invariance", [str(each) for each in range(DRAWS)]).draws
    return [{**draw.coherent(), "g": 9.8} for draw in draws]


def solved(worked: Problem, values: Mapping[str, float]) -> dict[str, float]:
    """Everything the plan finds, proved."""
    found = solve(worked.plan, values)
    assert prove(worked.plan, found).holds.all()
    return {id: float(value) for id, value in found.items()}


def assert_same(system: System, found: Mapping[str, float], expected: Mapping[str, float]) -> None:
    """Equal within 1e-9: forces relative to the largest force, directions over the full turn."""
    forces = {v.id for v in system.variables.values() if v.dimension == FORCE}
    largest = max((abs(expected[id]) for id in forces & expected.keys()), default=1.0)
    for id in found.keys() & expected.keys():
        if id.endswith(".direction"):
            turned = math.radians(found[id] - expected[id])
            assert abs(math.remainder(turned, math.tau)) < 1e-9, id
        else:
            slack = 1e-9 * (largest if id in forces else abs(expected[id]) + 1e-6)
            assert found[id] == pytest.approx(expected[id], rel=1e-9, abs=slack), id


def dimension_power(system: System, id: str) -> int:
    """How often a quantity contains a mass: 1 for a force, a mass, a torque, a stiffness."""
    owner = system.variables.get(id)
    if owner is None:  # an outcome: a magnitude is a force, a direction is not
        return 1 if id.endswith(".magnitude") else 0
    return owner.dimension.mass


@pytest.mark.one_in(3)
@pytest.mark.parametrize("name", TEMPLATES)
@few
@given(place=places, factor=st.floats(0.01, 100.0))
def test_forces_grow_with_the_loads(name: str, place: int, factor: float) -> None:
    own, system = problem(name), template(name).system

    def scaled(values: Mapping[str, float]) -> dict[str, float]:
        return {id: v * factor ** dimension_power(system, id) for id, v in values.items()}

    values = drawn(name)[place]
    assert_same(system, solved(own, scaled(values)), scaled(solved(own, values)))


def mirrored_direction(direction: Expression) -> Expression:
    if isinstance(direction, Number) and direction.unit is None:
        return Number(180 - direction.value)
    return total((1, number(180)), (-1, direction))


def mirrored_force(force: Force) -> Force:
    """A hinge keeps its axes, so that its x-component changes sign."""
    if force.kind is Kind.HINGE:
        return force
    return replace(force, direction=mirrored_direction(force.direction))


def mirrored_link(link: Link) -> Link:
    return Link(link.length, mirrored_direction(link.direction))


def mirrored_point(point: Point) -> Point:
    return Point(point.id, tuple(mirrored_link(link) for link in point.links))


def mirrored_element(element: Element) -> Element:
    """A surface faces the other way; a distributed load lies along the mirrored line."""
    if element.surface is not None:
        element = replace(element, surface=mirrored_direction(element.surface))
    if element.spread is None:
        return element
    return replace(element, spread=replace(element.spread, line=mirrored_link(element.spread.line)))


def mirrored(system: System) -> System:
    """The system seen in a mirror that swaps left and right; unknown couples keep their sense."""
    unknown = set(system.unknowns)
    return replace(
        system,
        points={name: mirrored_point(point) for name, point in system.points.items()},
        forces=tuple(mirrored_force(force) for force in system.forces),
        elements=tuple(mirrored_element(element) for element in system.elements),
        members=tuple(
            replace(each, direction=mirrored_direction(each.direction)) for each in system.members
        ),
        definitions=tuple(
            replace(each, expression=total((-1, each.expression)))
            if each.variable.endswith(".x")
            else each
            for each in system.definitions
        ),
        couples=tuple(
            couple if couple.id in unknown else replace(couple, moment=total((-1, couple.moment)))
            for couple in system.couples
        ),
    )


@cache
def mirrored_problem(name: str) -> Problem:
    own = template(name)
    return prepare(replace(own, system=mirrored(own.system)), Convention())


@pytest.mark.one_in(4)
@pytest.mark.parametrize("name", TEMPLATES)
@few
@given(place=places)
def test_a_mirrored_system_has_mirrored_answers(name: str, place: int) -> None:
    system = template(name).system
    values = drawn(name)[place]
    expected = solved(problem(name), values)
    turned = {force.id for force in system.forces if force.kind is Kind.HINGE and force.part == "x"}
    turned |= {couple.id for couple in system.couples} & set(system.unknowns)
    turned |= {each.variable for each in system.definitions if each.variable.endswith(".x")}
    for id in expected:
        if id in turned:
            expected[id] = -expected[id]
        elif id.endswith(".direction"):
            expected[id] = 180.0 - expected[id]
    assert_same(system, solved(mirrored_problem(name), values), expected)


@cache
def pivoted_problems(name: str) -> tuple[Problem, ...]:
    """The problem worked about each point from which single balances lead to the answers."""
    own = template(name)
    found = []
    for point in own.system.points:
        pivoted = replace(own, system=replace(own.system, pivot=point))
        try:
            found.append(prepare(pivoted, Convention()))
        except InputError:  # every balance about this point holds two unknowns
            continue
    return tuple(found)


@pytest.mark.one_in(4)
@pytest.mark.parametrize("name", QUICK)
@few
@given(place=places)
def test_the_pivot_changes_nothing(name: str, place: int) -> None:
    values = drawn(name)[place]
    expected = solved(problem(name), values)
    others = pivoted_problems(name)
    assert others
    for other in others:
        assert set(other.plan.pivots) <= {other.template.system.pivot}
        assert_same(template(name).system, solved(other, values), expected)


def test_most_problems_are_worked_about_several_pivots() -> None:
    several = [name for name in OWN if len(pivoted_problems(name)) > 1]
    assert len(several) > len(OWN) / 2


@cache
def formed_problem(name: str, convention: Convention) -> Problem:
    return prepare(template(name), convention)


@pytest.mark.one_in(3)
@pytest.mark.parametrize("convention", FORMS[1:], ids=lambda c: f"{c.torque}, {c.positive}")
@pytest.mark.parametrize("name", QUICK)
def test_how_torque_is_written_changes_nothing(name: str, convention: Convention) -> None:
    values = drawn(name)[0]
    expected = solved(problem(name), values)
    assert_same(template(name).system, solved(formed_problem(name, convention), values), expected)
