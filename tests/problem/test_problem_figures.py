"""Free-body diagrams beside what the key says of the same body, for every template."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from probgen.figures.paper.scene import Arrow, Scene, bearing
from probgen.problem.problem import Problem, Worked
from probgen.problem.problem_figures import free_body_scene
from probgen.statics.system import Body
from probgen.wording.facts.forces import ForceNamed, JointForce, JointReaction
from probgen.wording.forces import forces_passage
from probgen.wording.passage import Items
from probgen.working.digits import Digits
from probgen.working.direction import Way, way_of
from tests.figures.readings import TEMPLATES, prepared, solved


def told(problem: Problem, own: Worked, body: Body) -> Iterator[tuple[str, Way]]:
    """The id of every force the key names on a body, and which way it says it acts."""
    digits = Digits(own.case, problem.convention)
    passage = forces_passage(digits, body)
    for part in passage.parts:
        for fact in part.facts if isinstance(part, Items) else ():
            if isinstance(fact, JointForce | JointReaction):
                ids = own.case.system.element(fact.element).forces
                yield from zip(ids, (way for _, way in fact.parts), strict=True)
            elif isinstance(fact, ForceNamed):
                ids = own.case.system.element(fact.element).forces
                force = next(
                    each
                    for each in map(own.case.system.force, ids)
                    if each.part == fact.part and each.magnitude == fact.letter
                )
                yield force.id, fact.way


def arrows_of(scene: Scene) -> dict[str, Arrow]:
    """The arrows of forces and of their components, by the ids of these."""
    shapes = (*scene.tagged("force"), *scene.tagged("component"))
    return {s.tag.partition(":")[2]: s for s in shapes if isinstance(s, Arrow)}


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_every_arrow_points_the_way_the_text_says(path: Path) -> None:
    problem = prepared(path)
    for own in solved(problem, 30):
        for body in own.case.system.bodies:
            arrows = arrows_of(free_body_scene(problem, own, body.id))
            for id, way in told(problem, own, body):
                arrow = arrows[id]
                assert way_of(round(bearing(arrow.head - arrow.tail), 6)) == way, id
