"""Sums of papers, under the usual headings and under a gradebook's."""

from __future__ import annotations

from decimal import Decimal

import pytest

from probgen.marking.gradebook import (
    Total,
    gradebook,
    is_source,
    numbered,
    totals,
    usual_columns,
)
from tests.marking.test_marks import PAPERS, table


def sums() -> tuple[Total, ...]:
    """Four papers of twice 4 + 6 points; of the third one answer was decided by hand."""
    found = table(PAPERS, {("3", "2", "T"): Decimal("1.5")})
    return tuple(totals((each.paper for each in PAPERS), found))


def test_sums_of_each_problem_and_of_all() -> None:
    heads, rows = gradebook(sums(), usual_columns([10, 10]))
    assert heads == ["code", "id", "name", "problem 1 of 10", "problem 2 of 10", "sum of 20",
                     "still open"]  # fmt: skip
    assert rows == [
        ["code-1", "1", "Student 1", "10", "10", "20", "0"],
        ["code-2", "2", "Student 2", "0", "0", "0", "0"],
        ["code-3", "3", "Student 3", "3", "4.5", "7.5", "1"],
        ["code-4", "4", "Student 4", "6", "6", "12", "2"],
    ]
    assert numbered(usual_columns([10, 10])) == heads[3:]
    assert gradebook([], usual_columns([10]))[1] == []


def test_a_gradebooks_own_headings() -> None:
    columns = [("SIS id", "id"), ("Week 1 (20)", "sum"), ("%", "percent"), ("Notes", "")]
    heads, rows = gradebook(sums()[2:3], columns)
    assert heads == ["SIS id", "Week 1 (20)", "%", "Notes"]
    assert rows == [["3", "7.5", "37.5", ""]]
    assert numbered(columns) == ["Week 1 (20)", "%"]


@pytest.mark.parametrize(
    ("text", "known"),
    [("sum", True), ("", True), ("problem 2", True), ("problem 3", False), ("problem 0", False),
     ("total", False), ("problem x", False)],
)  # fmt: skip
def test_what_may_stand_in_a_column(text: str, known: bool) -> None:
    assert is_source(text, 2) is known
