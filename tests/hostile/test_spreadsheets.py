"""No name, id or answer becomes a formula in a file that people open in a spreadsheet."""

import csv
import re
from pathlib import Path

import pytest

import probgen
from probgen.build.joined_pdfs import _write_list
from probgen.course.exam import Exam
from probgen.course.roster import Student
from probgen.course.setfile import Assigned, ProblemSet
from probgen.draws.draw import Draw
from probgen.papers.answers import Row, write_answers
from probgen.papers.covers_and_lists import pile_heads, pile_rows
from tests.records import Column, record_of

ATTACKS = ["=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", "\t=1", "\u00a0=1", "＝1"]


@pytest.mark.parametrize("name", ATTACKS)
def test_answers_hold_no_formula(name: str, tmp_path: Path) -> None:
    path = tmp_path / "answers.csv"
    write_answers(path, [Row("A", name, name, 1, "t", "T", "-4.9", "N", "−4.90 N", "-12.3", "")])
    with path.open(encoding="utf-8", newline="") as file:
        (row,) = csv.DictReader(file)
    assert row["name"] == row["id"] == f"'{name}"
    assert (row["code"], row["value"], row["angle_from_x"]) == ("A", "-4.9", "-12.3")


@pytest.mark.parametrize("name", ATTACKS)
def test_the_list_of_versions_holds_no_formula(name: str, tmp_path: Path) -> None:
    exam = Exam(2)
    whole = ProblemSet("Mechanics", "Week 3", "class.csv", (Assigned("shelf", 8),), exam=exam)
    column = Column("shelf", "", [Draw("shelf", 1, {})] * 2)
    record = record_of(whole, [Student(name, "7", seat=name)], "AB", [column])
    path = tmp_path / "versions.csv"
    _write_list(path, [[head.lower() for head in pile_heads()], *pile_rows(record, exam)])
    assert path.read_bytes().startswith(b"\xef\xbb\xbfpaper,")
    with path.open(encoding="utf-8-sig", newline="") as file:
        (row,) = csv.DictReader(file)
    assert row["name"] == row["seat"] == f"'{name}"


def test_tables_are_written_in_one_place() -> None:
    package = Path(probgen.__file__).parent
    found = [
        path.relative_to(package).as_posix()
        for path in package.rglob("*.py")
        if re.search(r"csv\.(writer|DictWriter)", path.read_text(encoding="utf-8"))
    ]
    assert found == ["input/csv.py"]
