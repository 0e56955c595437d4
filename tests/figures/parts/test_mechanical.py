"""Parts, people and limbs: drawn to the size asked for, reaching the places given."""

from __future__ import annotations

import ast
import inspect
import re
from collections.abc import Iterator

import pytest

from probgen.figures.paper.scene import Arrow, Path, bounds, heading
from probgen.figures.parts import axes, contact_sheet, ground, limb, mechanical, person, solid
from probgen.figures.parts.contact_sheet import part_scenes
from probgen.figures.writers.latex import latex_picture

LIBRARY = (mechanical, person, limb, solid, axes, ground)
NOT_DRAWN = {"backing"}  # what labels keep clear of behind a wall


def library() -> Iterator[str]:
    """The name of every function that draws a part."""
    for module in LIBRARY:
        for name, function in inspect.getmembers(module, inspect.isfunction):
            own = function.__module__ == module.__name__ and not name.startswith("_")
            drawn = re.search(r"\b(Shape|Arc|Path)\b", str(function.__annotations__.get("return")))
            if own and drawn:
                yield name


def test_every_part_is_on_the_contact_sheet_once() -> None:
    tree = ast.parse(inspect.getsource(contact_sheet))
    named = {node.attr for node in ast.walk(tree) if isinstance(node, ast.Attribute)}
    named |= {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
    assert len([*library()]) > 40
    assert {*library()} - NOT_DRAWN <= named
    names = [name for name, _ in part_scenes()]
    assert len(set(names)) == len(names)
    for _, scene in part_scenes():
        assert 0 < max(scene.box.width, scene.box.height) < 140
        assert r"\strokepath" in latex_picture(scene)


@pytest.mark.parametrize("height", [34.0, 71.0])
def test_standing_person_is_as_tall_as_asked(height: float) -> None:
    box = bounds(person.standing(10 + 5j, height, ""))
    assert box.bottom == pytest.approx(5.0, abs=0.02 * height)
    assert box.height == pytest.approx(height, rel=0.03)


@pytest.mark.parametrize("facing", [1, -1])
def test_seated_person_looks_the_way_they_face(facing: int) -> None:
    box = bounds(person.seated(0j, 60.0, facing, ""))
    assert (box.right > -box.left) == (facing > 0)
    assert box.bottom == pytest.approx(0.0, abs=1.0)


@pytest.mark.parametrize("degrees", [55.0, 65.0, 75.0])
def test_climber_keeps_to_their_side_of_the_ladder(degrees: float) -> None:
    along = heading(degrees)
    out = along * 1j
    legs = person.climbing(0j, along, out, 60.0, "")[1]
    assert isinstance(legs, Path)
    aside = [((spot) / along).imag for line in legs.lines for spot in line]
    assert min(aside) > -0.05 * 60.0


def test_spring_runs_from_end_to_end() -> None:
    (coil, *_) = mechanical.spring(1 + 1j, 41 + 31j, "")
    assert isinstance(coil, Path)
    assert coil.lines[0][0] == 1 + 1j
    assert coil.lines[0][-1] == pytest.approx(41 + 31j)


@pytest.mark.parametrize("heights", [(15.0, 15.0), (0.0, 20.0), (20.0, 8.0)])
def test_arrows_of_a_load_end_on_its_line(heights: tuple[float, float]) -> None:
    arrows = [s for s in mechanical.spread(0j, 70 + 0j, 270.0, heights, "") if isinstance(s, Arrow)]
    assert len(arrows) >= 3
    for arrow in arrows:
        share = arrow.head.real / 70
        assert arrow.head.imag == pytest.approx(0.0)
        assert abs(arrow.head - arrow.tail) == pytest.approx(
            heights[0] + share * (heights[1] - heights[0])
        )
