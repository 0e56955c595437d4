"""Sheets and keys as they are counted and named."""

import pytest

from probgen.sheets.document import Header, Key, Problem, Sheet, Solution, picture_name
from probgen.wording.block import Picture

HEADER = Header("Course", "Set", "Ada Quill", "007", "K7-1")
NAMES = {"situation": Picture("situation"), "free-body shelf": Picture("free-body", "shelf")}


@pytest.mark.parametrize(("name", "picture"), NAMES.items(), ids=NAMES)
def test_pictures_are_named(name: str, picture: Picture) -> None:
    assert picture_name(picture) == name


@pytest.mark.parametrize("points", [(), (5,), (5, 10, 3)])
def test_points_add_up(points: tuple[int, ...]) -> None:
    problems = tuple(Problem(n, "", (), (), "", p) for n, p in enumerate(points, 1))
    solutions = tuple(Solution(n, "", (), "", (), (), p) for n, p in enumerate(points, 1))
    assert Sheet(HEADER, (), (), problems).points == sum(points)
    assert Key(HEADER, solutions).points == sum(points)
