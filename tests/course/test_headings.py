"""Headings of class lists, as people and their programs write them."""

from __future__ import annotations

import pytest

from probgen.course.headings import find_columns, is_header, known_headings, other_ids

FOUND = {
    "Name, Student ID": {"name": 0, "id": 1},
    "STUDENT|ID #|SECTION": {"name": 0, "id": 1, "section": 2},
    "Last Name|First name|Login": {"last": 0, "first": 1, "id": 2},
    "Surname|Given names|Matric. no.": {"last": 0, "first": 1, "id": 2},
    "Email address|Login ID|Full name": {"id": 1, "name": 2},
    "Name (Last, First)|Roll No.|Extra time (%)": {"name": 0, "id": 1, "time": 2},
    "name|id|Access arrangements|Large Print": {"name": 0, "id": 1, "needs": 2, "large": 3},
    "name|id|Disability notes": {"name": 0, "id": 1, "needs": 2},
    "name|SIS ID|Quiz 1|Lab section": {"name": 0, "id": 1, "section": 3},
}


@pytest.mark.parametrize(("headings", "columns"), FOUND.items(), ids=FOUND)
def test_columns_are_known_by_common_words(headings: str, columns: dict[str, int]) -> None:
    row = headings.replace(", ", "|").split("|") if "|" not in headings else headings.split("|")
    assert find_columns(row) == columns
    assert known_headings(row) == len(columns)
    assert is_header(row)


@pytest.mark.parametrize("row", ["Ada Quill|0071", "name|week 1", "first name|id", "id|week 1"])
def test_what_is_no_header(row: str) -> None:
    assert not is_header(row.split("|"))


def test_other_columns_of_ids_are_told() -> None:
    row = ["Number", "Name", "Student ID", "Login"]
    assert other_ids(row, find_columns(row)) == ["Number"]
