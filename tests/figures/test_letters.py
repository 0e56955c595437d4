"""Every letter of a point that a key speaks of stands in one of its figures."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, Worked, prepare, tell_steps
from probgen.problem.problem_figures import every_scene, situation_scene
from probgen.quantities.expression import Name
from probgen.wording.block import Inline, Itemize, Math, Paragraph
from probgen.working.convention import Convention
from tests.figures.seen import tagged

from .readings import TEMPLATES, solved

METHODS = (Convention(torque="components"), Convention(torque="arm"), Convention())
FEW, MANY = 2, 100


def spoken(problem: Problem, own: Worked) -> Iterator[Inline]:
    for section in tell_steps(problem, own):
        for block in section.blocks:
            match block:
                case Paragraph(inlines):
                    yield from inlines
                case Itemize(items):
                    yield from (inline for item in items for inline in item)


def points_named(problem: Problem, own: Worked) -> set[str]:
    """The points of extended bodies that sentences call by their letters."""
    system = problem.template.system
    points = {name for name in system.points if re.fullmatch(r"[A-Z]", name)}
    free = {body.outline[0] for body in system.bodies if len(body.outline) == 1}
    named = {
        inline.formula[0].id
        for inline in spoken(problem, own)
        if isinstance(inline, Math)
        and len(inline.formula) == 1
        and isinstance(inline.formula[0], Name)
    }
    return named & points - free


def lettered(problem: Problem, own: Worked) -> set[str]:
    scenes = [scene for _, scene in every_scene(problem, own)]
    scenes.append(situation_scene(problem, own, solved=True))
    return {str(shape.tag).removeprefix("letter:") for s in scenes for shape in tagged(s, "letter")}


def check(path: Path, count: int) -> None:
    template = read_template(path.read_text(encoding="utf-8"), path.name)
    for method in METHODS:
        problem = prepare(template, method)
        for own in solved(problem, count):
            assert points_named(problem, own) - lettered(problem, own) == set()


@pytest.mark.one_in(4)
@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_letters_of_a_key_stand_in_its_figures(path: Path) -> None:
    check(path, FEW)


@pytest.mark.proof
@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_letters_of_a_key_stand_in_its_figures_in_a_hundred_draws(path: Path) -> None:
    check(path, MANY)
