"""No name, id or answer becomes a formula in a file that people open in a spreadsheet."""

import csv
import re
from pathlib import Path
from zipfile import ZipFile

import pytest

import probgen
from probgen.build.tables import write_csv, write_workbook
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.roster import Student
from probgen.draws.draw import Draw
from probgen.input.workbook import read_sheets
from probgen.papers.answers import HEADINGS, NUMBERS, Row
from probgen.papers.covers_and_lists import pile_heads, pile_rows
from tests.records import Column, record_of

ATTACKS = ["=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", "\t=1", "\u00a0=1", "＝1"]


ROW = Row("A", "", "", 1, "t", "T", "-4.9", "N", "−4.90 N", "-12.3", "")


@pytest.mark.parametrize("name", ATTACKS)
def test_answers_hold_no_formula(name: str, tmp_path: Path) -> None:
    path = tmp_path / "answers.csv"
    write_csv(path, HEADINGS, [ROW._replace(name=name, id=name)])
    with path.open(encoding="utf-8-sig", newline="") as file:
        (row,) = csv.DictReader(file)
    assert row["name"] == row["id"] == f"'{name}"
    assert (row["code"], row["value"], row["angle_from_x"]) == ("A", "-4.9", "-12.3")


@pytest.mark.parametrize("name", ATTACKS)
def test_a_workbook_s_texts_are_no_formulas(name: str, tmp_path: Path) -> None:
    path = tmp_path / "answers.xlsx"
    write_workbook(path, HEADINGS, [ROW._replace(name=name, id=name)], NUMBERS)
    (sheet,) = read_sheets(path.read_bytes(), "answers.xlsx")
    assert sheet.rows[1][1:3] == (name, name)
    with ZipFile(path) as packed:
        assert b"<f>" not in packed.read("xl/worksheets/sheet1.xml")


@pytest.mark.parametrize("name", ATTACKS)
def test_the_list_of_versions_holds_no_formula(name: str, tmp_path: Path) -> None:
    exam = Exam(2)
    whole = ProblemSet("Mechanics", "Week 3", "class.csv", (Assigned("shelf", 8),), exam=exam)
    column = Column("shelf", "", [Draw("shelf", 1, {})] * 2)
    record = record_of(whole, [Student(name, "7", seat=name)], "AB", [column])
    path = tmp_path / "versions.csv"
    write_csv(path, pile_heads(), pile_rows(record, exam))
    assert path.read_bytes().startswith(b"\xef\xbb\xbfPaper,")
    with path.open(encoding="utf-8-sig", newline="") as file:
        (row,) = csv.DictReader(file)
    assert row["Name"] == row["Seat"] == f"'{name}"


def test_tables_are_written_in_one_place() -> None:
    package = Path(probgen.__file__).parent
    found = [
        path.relative_to(package).as_posix()
        for path in package.rglob("*.py")
        if re.search(r"csv\.(writer|DictWriter)", path.read_text(encoding="utf-8"))
    ]
    assert found == ["input/csv.py"]
