"""The arrow to the north: in a free corner or beside the drawing, where all is seen from above."""

from __future__ import annotations

import pytest

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import HEAVY, Arrow, Label, Scene, Shape, polygon
from probgen.figures.paper.tag import What
from probgen.figures.situation.north import draw_north
from probgen.problem.problem_figures import situation_scene
from probgen.problem.single import work_single
from tests.figures.seen import box_of, touching
from tests.plan_view import FROM_ABOVE
from tests.situations import worked


def of_template(name: str, draw: int) -> Scene:
    single = work_single(name, draw, None)
    return situation_scene(single.problem, single.worked, solved=False)


def arrows(scene: Scene) -> list[Arrow]:
    return [each for each in scene.showing(What.AXES, "north") if isinstance(each, Arrow)]


@pytest.mark.parametrize("draw", range(1, 9))
def test_it_points_up_and_touches_nothing(draw: int) -> None:
    scene = of_template("ring-three-ropes", draw)
    (arrow,) = arrows(scene)
    assert (arrow.head - arrow.tail).real == 0.0
    assert (arrow.head - arrow.tail).imag > 0.0
    (letter,) = scene.showing(What.NOTE, "north")
    assert isinstance(letter, Label)
    assert touching(scene) == []
    for at in (arrow.tail, arrow.head):
        assert scene.box.left <= at.real <= scene.box.right
        assert scene.box.bottom <= at.imag <= scene.box.top


def test_a_flat_drawing_has_it_beside_it() -> None:
    problem, own = worked(FROM_ABOVE)
    scene = situation_scene(problem, own, solved=False)
    (arrow,) = arrows(scene)
    gate = box_of(scene, "body:gate")
    assert arrow.tail.real > gate.right


@pytest.mark.parametrize("size", [110 + 20j, 20 + 90j], ids=["low", "narrow"])
def test_beside_a_drawing_too_low_or_too_narrow_for_it(size: complex) -> None:
    field = Field()
    field.add(polygon([0j, 1 + 0j, 1j], HEAVY), polygon([size, size - 1, size - 1j], HEAVY))
    draw_north(field, lambda fact: "N")
    (arrow,) = (each for each in field.shapes if isinstance(each, Arrow))
    assert arrow.tail.real > size.real


AROUND = [polygon([at, at + 1, at + 1j], HEAVY) for at in (0j, 90 + 118j, 198 + 60j)]
UPPER_LEFT, UPPER_RIGHT = (
    polygon([at, at + 14, at + 14 + 38j], HEAVY) for at in (1 + 81j, 185 + 81j)
)


@pytest.mark.parametrize(
    ("others", "right", "up"),
    [
        ((), True, True),
        ((UPPER_RIGHT,), False, True),
        ((UPPER_RIGHT, UPPER_LEFT), True, False),
    ],
)
def test_it_takes_a_corner_with_room(others: tuple[Shape, ...], right: bool, up: bool) -> None:
    field = Field()
    field.add(*AROUND, *others)
    draw_north(field, lambda fact: "N")
    (arrow,) = (shape for shape in field.shapes if isinstance(shape, Arrow))
    assert (arrow.tail.real > 100.0, arrow.tail.imag > 60.0) == (right, up)


def test_what_is_seen_from_the_side_has_none() -> None:
    assert arrows(of_template("lantern-two-cords", 1)) == []
