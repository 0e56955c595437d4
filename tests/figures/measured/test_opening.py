"""Named angles: each once in a situation, and in the diagram of every body whose balances use it.

Where the angles of a situation stand is tested with the survey.
"""

from __future__ import annotations

import pytest

from probgen.figures.measured.opening import Opening, openings, openings_shown
from probgen.figures.measured.survey import Survey, survey
from probgen.problem.problem_figures import free_body_scene
from probgen.quantities.expression import names_in
from probgen.quantities.unit import ANGLE
from probgen.working.bodies_used import bodies_used
from tests.figures.readings import TEMPLATES, prepared, solved
from tests.figures.seen import tagged

PATHS = {path.stem: path for path in TEMPLATES}


def surveyed(name: str) -> Survey:
    problem = prepared(PATHS[name])
    (own,) = solved(problem, 1)
    return survey(own.case.system, problem.template.labels, own.complete)


# Of two states, of joints and of parts of trusses, of forces from surfaces: each diagram needs it.
RESOLVED = [
    "trough-ramp-winch",
    "stand-roof-cantilever",
    "billboard-truss-wind",
    "garland-two-lanterns",
    "pipe-in-cradle",
    "plank-raised-slowly",
    "wall-bracket-board",
]


@pytest.mark.parametrize("name", RESOLVED)
def test_an_angle_by_which_a_force_is_resolved_is_in_the_diagram_of_its_body(name: str) -> None:
    problem = prepared(PATHS[name])
    (own,) = solved(problem, 1)
    variables = own.case.system.variables
    used = 0
    for body in bodies_used(problem.plan):
        scene = free_body_scene(problem, own, body.id)
        steps = (step for plan in problem.plan.ways for step in plan.steps)
        balances = (e for step in steps for e in step.equations)
        terms = (term for each in balances if each.body == body.id for term in each.terms)
        for id in {id for term in terms for id in names_in(term.ratio)}:
            if id in variables and variables[id].dimension == ANGLE:
                assert tagged(scene, f"angle:{id}"), (body.id, id)
                used += 1
    assert used


def test_of_one_angle_at_two_bodies_the_one_that_is_shown_is_taken() -> None:
    measured = surveyed("garland-two-lanterns")
    (beta,) = (each for each in openings(measured) if each.id == "beta")

    def elsewhere(opening: Opening) -> bool:
        return opening.at != beta.at

    assert [each.id for each in openings_shown(measured, elsewhere)].count("beta") == 1
    assert openings_shown(measured, lambda _: False) == ()


def test_an_angle_of_a_force_from_a_surface_comes_after_all_others() -> None:
    assert openings(surveyed("pipe-in-cradle")) == ()
    found = openings_shown(surveyed("pipe-in-cradle"), lambda _: True)
    assert sorted(each.id for each in found) == ["left_angle", "right_angle"]
    shown = openings_shown(surveyed("trough-ramp-winch"), lambda _: True)
    assert [each.force for each in shown] == ["T_1"]


def test_behind_its_vertex_an_angle_is_as_large() -> None:
    opening = Opening("theta", 1 + 2j, 180.0, 220.0, "F").behind
    assert (opening.reference % 360, opening.direction % 360, opening.at) == (0.0, 40.0, 1 + 2j)
