"""Each of several free-body diagrams names the body it is of."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Label, Scene
from probgen.problem.problem_figures import free_body_scenes
from tests.figures.readings import TEMPLATES, prepared, solved
from tests.figures.seen import tagged, touching


def diagrams(name: str) -> dict[str, Scene]:
    problem = prepared(next(path for path in TEMPLATES if path.stem == name))
    (own,) = solved(problem, 1)
    return free_body_scenes(problem, own)


def names(name: str) -> list[object]:
    found: list[object] = []
    for body, scene in diagrams(name).items():
        for label in tagged(scene, f"note:{body}"):
            assert isinstance(label, Label)
            assert label.box.left == pytest.approx(scene.box.left)
            assert label.box.top == pytest.approx(scene.box.top)
            assert scene.box.holds(label.box)
            found.append(label.text)
    return found


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("spring-scales-baskets", ["upper basket", "lower basket"]),
        ("shed-three-hinges", ["the whole frame", "left half"]),
        ("folding-table-strap", ["table top", "the whole table", "leg 𝐵𝐶"]),
    ],
)
def test_each_of_several_diagrams_names_its_body(name: str, told: list[str]) -> None:
    assert names(name) == told
    for scene in diagrams(name).values():
        assert touching(scene) == []


def test_a_diagram_alone_needs_no_name() -> None:
    assert names("forearm-load") == []


def test_bodies_that_go_by_letters_have_none() -> None:
    assert len(diagrams("billboard-truss-wind")) > 1
    assert names("billboard-truss-wind") == []
