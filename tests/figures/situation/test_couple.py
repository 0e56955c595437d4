"""No dimension line is between the curved arrow of a motor's couple and its label."""

from __future__ import annotations

from probgen.figures.paper.scene import Arc, bounds
from tests.figures.readings import TEMPLATES, customary, scenes_of, solved
from tests.figures.seen import tagged


def test_no_dimension_line_is_between_the_couple_of_a_motor_and_its_label() -> None:
    path = next(path for path in TEMPLATES if path.stem == "motor-torque-base")
    problem = customary(path)
    for own in solved(problem, 30):
        scene = scenes_of(problem, own)[0]
        (about,) = (s for s in tagged(scene, "couple") if isinstance(s, Arc))
        top = about.centre.imag + about.radius
        for shape in tagged(scene, "dimension"):
            box = bounds([shape])
            assert not (box.left < about.centre.real < box.right and box.top > top - 2.0)
