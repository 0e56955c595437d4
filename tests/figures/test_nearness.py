"""Masses stand nearest to what they name, or a thin line leads from them to it; the numbers of
angles stand by their arcs.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from probgen.figures.measured.survey import mass_name
from probgen.figures.paper.scene import Arc, Box, Label, Scene, bounds, runs
from probgen.statics.system import Kind, System
from tests.figures.seen import tagged

from .readings import TEMPLATES, prepared, scenes_of, solved

FEW, MANY = 2, 100
BESIDE = 5.0  # so near its own load a label can mean nothing else, pt
BY_ARC = 12.8  # the same of an angle's arc, pt
OFF = 14.5  # further off a line leads from a label to its load, pt


def loads(system: System, scene: Scene) -> dict[str, list[Box]]:
    """What has a mass: by the mass's id, the rectangles around all that have as much."""
    found: dict[str, list[Box]] = {}
    for element in system.elements:
        if element.kind != Kind.WEIGHT:
            continue
        mass = mass_name(system, element)
        drawn = tagged(scene, f"load:{element.id}")
        if not drawn and len(system.body(element.body).outline) > 1:
            drawn = tuple(tagged(scene, f"centre:{element.body}"))
        if mass and drawn:
            found.setdefault(mass.id, []).append(bounds(drawn))
    return found


def astray(system: System, scene: Scene) -> Iterator[str]:
    """Labels of masses that are nearer to another load than to their own, and have no line."""
    things = loads(system, scene)
    for label in scene.labels:
        mass = str(label.tag).removeprefix("label:")
        if mass not in things or tagged(scene, f"leader:{label.tag}"):
            continue
        own = min(map(label.box.gap, things[mass]))
        others = [label.box.gap(box) for id, some in things.items() if id != mass for box in some]
        if own > BESIDE and any(other < own for other in others):
            yield str(label.tag)


def adrift(system: System, scene: Scene) -> Iterator[str]:
    """Labels of masses that stand far from their loads, and have no line to them."""
    things = loads(system, scene)
    for label in scene.labels:
        own = things.get(str(label.tag).removeprefix("label:"), [])
        far = own and min(map(label.box.gap, own)) > OFF
        if far and not tagged(scene, f"leader:{label.tag}"):
            yield str(label.tag)


def check(path: Path, count: int) -> None:
    problem = prepared(path)
    system = problem.template.system
    for own in solved(problem, count):
        scene = scenes_of(problem, own)[0]
        assert [*astray(system, scene), *adrift(system, scene)] == []


@pytest.mark.one_in(4)
@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_masses_stand_nearest_to_their_own_loads(path: Path) -> None:
    check(path, FEW)


@pytest.mark.proof
@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_masses_stand_nearest_to_their_own_loads_in_a_hundred_draws(path: Path) -> None:
    check(path, MANY)


def off_arc(scene: Scene) -> Iterator[str]:
    """Numbers of angles that stand off their arcs, and have no line."""
    for arc in tagged(scene, "angle"):
        assert isinstance(arc, Arc)
        spots = [spot for run in runs(arc) for spot in run]
        for label in tagged(scene, f"label:{arc.tag.of}"):
            assert isinstance(label, Label)
            away = min(abs(label.box.nearest(spot) - spot) for spot in spots)
            if away > BY_ARC and not tagged(scene, f"leader:{label.tag}"):
                yield str(label.tag)


@pytest.mark.one_in(2)
@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_numbers_of_angles_stand_by_their_arcs(path: Path) -> None:
    problem = prepared(path)
    for own in solved(problem, FEW):
        assert [word for scene in scenes_of(problem, own) for word in off_arc(scene)] == []


@pytest.mark.proof
@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_numbers_of_angles_stand_by_their_arcs_in_a_hundred_draws(path: Path) -> None:
    problem = prepared(path)
    for own in solved(problem, MANY):
        assert [word for scene in scenes_of(problem, own) for word in off_arc(scene)] == []
