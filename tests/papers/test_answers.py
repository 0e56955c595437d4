"""The table of all answers: a row for each version and quantity asked."""

from __future__ import annotations

import pytest

from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.papers.answers import HEADINGS, NUMBERS, answer_rows
from tests.situations import STAYED_SHELF, worked

ADA = Version("CODE", "01-ada-1", Student("Ada", "1"))


def test_a_row_for_each_quantity_asked_in_the_order_of_the_sheet() -> None:
    _, own = worked(STAYED_SHELF)
    rows = list(answer_rows(ADA, [own, own]))
    assert [(row.problem, row.answer) for row in rows] == [
        (number, answer) for number in (1, 2) for answer in ("T", "R.magnitude", "R.direction")
    ]
    assert {(row.code, row.name, row.id, row.template, row.version) for row in rows} == {
        ("CODE", "Ada", "1", "own", "")
    }


def test_values_in_full_beside_what_is_printed() -> None:
    """By hand: 190.576 N, 146.07 N at 1.92° below +x."""
    _, own = worked(STAYED_SHELF)
    tension, size, way = answer_rows(ADA, [own])
    assert float(tension.value) == pytest.approx(190.57616879)
    assert (tension.unit, tension.printed, tension.angle_from_x) == ("N", "191 N", "")
    assert float(size.value) == pytest.approx(146.07, abs=0.01)
    assert float(way.angle_from_x) % 360 == pytest.approx(358.08, abs=0.01)
    assert float(tension.value) == own.answers[0].value  # nothing is lost on the way


def test_an_exam_has_its_letter() -> None:
    _, own = worked(STAYED_SHELF)
    letter = Version("CODE", "B", Student("", ""), letter="B")
    assert {row.version for row in answer_rows(letter, [own])} == {"B"}


def test_columns_of_numbers_hold_numbers() -> None:
    _, own = worked(STAYED_SHELF)
    assert set(NUMBERS) < set(HEADINGS)
    for row in answer_rows(ADA, [own]):
        assert row._fields == HEADINGS
        cells = row._asdict()
        assert all(cells[name] == "" or float(cells[name]) is not None for name in NUMBERS)
