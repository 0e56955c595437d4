"""Sheets and keys as they are counted and named."""

import pytest

from probgen.sheets.document import (
    AnswerRow,
    AnswerTable,
    Cover,
    Header,
    Key,
    Mark,
    Problem,
    Sheet,
    Solution,
    picture_name,
)
from probgen.wording.block import Picture, Text

HEADER = Header("Course", "Set", "Ada Quill", "007", "K7-1")
NAMES = {"situation": Picture("situation"), "free-body shelf": Picture("free-body", "shelf")}


@pytest.mark.parametrize(("name", "picture"), NAMES.items(), ids=NAMES)
def test_pictures_are_named(name: str, picture: Picture) -> None:
    assert picture_name(picture) == name


@pytest.mark.parametrize("points", [(), (5,), (5, 10, 3)])
def test_points_add_up(points: tuple[int, ...]) -> None:
    problems = tuple(Problem(n, "", (), (), None, p) for n, p in enumerate(points, 1))
    solutions = tuple(Solution(n, "", (), None, (), (), p) for n, p in enumerate(points, 1))
    assert Sheet(HEADER, (), (), problems).points == sum(points)
    assert Key(HEADER, solutions).points == sum(points)
    assert Cover(HEADER, scores=tuple(("", p) for p in points)).points == sum(points)


def test_marks_add_up_to_the_points() -> None:
    marks = (Mark((Text("diagram"),), 2), Mark((Text("torques"),), 3))
    assert Solution(1, "", (), None, (), (), 5, scheme=marks).scheme == marks
    with pytest.raises(ValueError, match="problem 7: 5 marks for 6 points"):
        Solution(7, "", (), None, (), (), 6, scheme=marks)


@pytest.mark.parametrize(
    ("labels", "cells"), [(("Ada",), ((),)), (("Ada", "7"), ((), ())), ((), ((),))]
)
def test_rows_of_answers_fit_their_heads(
    labels: tuple[str, ...], cells: tuple[tuple[Text, ...], ...]
) -> None:
    problems = (("Shelf", ((Text("T"),),)),)
    right = AnswerRow(("Ada", "7"), ((Text("5 N"),),))
    assert AnswerTable(HEADER, ("Name", "Id"), problems, (right,), "Answers").rows == (right,)
    with pytest.raises(ValueError, match="row 1"):
        AnswerTable(HEADER, ("Name", "Id"), problems, (right, AnswerRow(labels, cells)), "")
