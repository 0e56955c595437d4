"""Where a situation has its origin makes no difference to its figures.

Most of the situations that tests draw begin at the origin, where what is taken from a place and
what is added to it are the same.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from probgen.figures.freebody.diagram import free_body
from probgen.figures.paper.scene import Label, Scene, Stroke
from probgen.figures.situation.drawing import situation
from probgen.figures.situation.shape import look_of
from probgen.quantities.expression import number
from probgen.quantities.unit import METRE
from probgen.statics.system import Link, Point, System
from tests.figures.parts.test_moved import spots

from .readings import PUBLISHED, TEMPLATES, prepared, solved

AWAY = (Link(number("1.7", METRE), number(0)), Link(number("0.9", METRE), number(90)))


def elsewhere(system: System) -> System:
    """The system with its origin 1.7 m to the left and 0.9 m below."""
    points = {
        name: Point(name, (*AWAY, *point.links), point.meeting)
        for name, point in system.points.items()
    }
    return replace(system, points=points)


def drawn(path: Path, moved: bool) -> Iterator[Scene]:
    problem = prepared(path)
    (own,) = solved(problem, 1)
    system, template = own.case.system, problem.template
    system = elsewhere(system) if moved else system
    known = {id: own.case.values[id] for id in (*own.draw.values, "g")}
    tell = problem.tell
    drawn = own.draw.values
    yield situation(system, template.labels, known, template.depicts, drawn, tell=tell)
    for body in system.bodies:
        look = look_of(template.depicts, body.id)
        shown = (system, template.labels, own.complete, body.id, "")
        wedges = template.depicts.wedges
        yield free_body(*shown, tell=tell, look=look, wedges=wedges)


SET_LAST = ("label", "letter", "leader", "axes", "axis", "note", "dimension", "arm", "reference")
"""What finds its place among the rest: of two places as good as each other, it takes either."""


def fixed(scene: Scene) -> list[Stroke]:
    return [
        shape
        for shape in scene.shapes
        if not isinstance(shape, Label) and str(shape.tag).partition(":")[0] not in SET_LAST
    ]


def assert_moved(one: Scene, other: Scene) -> None:
    """The same strokes in the same order, all moved by one step."""
    assert [(type(s), str(s.tag)) for s in fixed(one)] == [
        (type(s), str(s.tag)) for s in fixed(other)
    ]
    assert sorted(str(s.tag) for s in one.labels) == sorted(str(s.tag) for s in other.labels)
    if abs(one.scale / other.scale - 1.0) > 1e-6:  # labels that changed places may need more room
        assert one.scale == pytest.approx(other.scale, rel=0.25 + 1e-9)  # a step, as it is rounded
        return
    pairs = zip(fixed(one), fixed(other), strict=True)
    places = [each for a, b in pairs for each in zip(spots(a), spots(b), strict=True)]
    step = places[0][1] - places[0][0]
    assert max(abs(b - a - step) for a, b in places) < 1e-3


@pytest.mark.one_in(4)
@pytest.mark.parametrize("path", [*PUBLISHED, *TEMPLATES], ids=lambda path: path.stem)
def test_a_situation_elsewhere_is_drawn_alike(path: Path) -> None:
    for one, other in zip(drawn(path, False), drawn(path, True), strict=True):
        assert_moved(one, other)
