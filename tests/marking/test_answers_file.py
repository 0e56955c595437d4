"""Tables of answers that cannot be taken: every fault at once, each with its place and mend."""

from __future__ import annotations

from datetime import datetime
from io import BytesIO
from pathlib import Path
from zipfile import ZipFile

import pytest
from xlsxwriter import Workbook

from probgen.course.exam import Exam
from probgen.input.fault import InputError
from probgen.marking.answers_file import Typed, read_answers
from probgen.marking.form import Column, Place, columns
from tests.marking.lamps import HEADS, record_of
from tests.marking.sections import lamp_problem, record_of_sections
from tests.spreadsheets import ods, ods_of, packed, xlsx
from tests.terms import begun, class_of, lamp, on, problem_of

RECORD = record_of(3)
CODES = {edition.owner: edition.code for edition in RECORD.editions}
ASKED = columns(RECORD, [problem_of(lamp(), RECORD.set.convention)])


def read(folder: Path, content: str | bytes, remarks: list[str] | None = None) -> tuple[Typed, ...]:
    path = folder / "answers"
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return read_answers(path, RECORD, ASKED, [] if remarks is None else remarks)


def test_rows_are_found_by_code_or_id_in_every_kind_of_file(tmp_path: Path) -> None:
    rows = [HEADS.split(","), [CODES["1"].lower(), "", "", "12.3", "N"], ["", "2", "", "9", ""]]
    text = "\n".join(",".join(row) for row in rows)
    for content in (text, text.replace(",", ";"), xlsx({"A": rows}), ods(rows)):
        remarks: list[str] = []
        found = read(tmp_path, content, remarks)
        assert [row.paper.id for row in found] == ["1", "2"]
        assert found[0].cells[1, "T"] == {Place.NUMBER: "12.3", Place.UNIT: "N"}
        assert any("1 of 3 papers have no row" in remark for remark in remarks)


def test_the_headings_are_looked_for_on_every_sheet_and_below_a_title(tmp_path: Path) -> None:
    rows = [HEADS.split(","), ["", "2", "", "9", ""]]
    notes = [["what", "who"], ["typed", "by hand"]]
    for above in (0, 3, 19):
        content = xlsx({"Notes": notes, "Answers": [["Week 1"]] * above + rows})
        (found,) = read(tmp_path, content)
        assert found.cells[1, "T"][Place.NUMBER] == "9"
    with pytest.raises(InputError, match="a line of headings"):
        read(tmp_path, xlsx({"A": [["Week 1"]] * 20 + rows}))


def test_a_full_table_has_no_remarks_and_short_rows_end_empty(tmp_path: Path) -> None:
    remarks: list[str] = []
    found = read(tmp_path, f"{HEADS}\n,1\n,2,,5\n,3,,5,N", remarks)
    assert [row.cells[1, "T"][Place.NUMBER] for row in found] == ["", "5", "5"]
    assert remarks == []


def test_capitals_in_headings_count_only_where_two_differ_in_them(tmp_path: Path) -> None:
    asked = (*ASKED, Column(1, "t", Place.CHOICE, 1))
    path = tmp_path / "answers.csv"
    path.write_text("ID,1 t,1  T,1 T UNIT\n2,yes,9,kN")
    (found,) = read_answers(path, RECORD, asked, [])
    assert found.cells[1, "T"] == {Place.NUMBER: "9", Place.UNIT: "kN"}
    assert found.cells[1, "t"] == {Place.CHOICE: "yes"}
    path.write_text("ID,1 T,1 T,1 T unit\n2,yes,9,kN")
    with pytest.raises(InputError, match="each heading once") as caught:
        read_answers(path, RECORD, asked, [])
    assert 'a column "1 t"' in str(caught.value)


def mistyped(code: str) -> str:
    """The code with its first sign another one."""
    return ("2" if code[0] != "2" else "3") + code[1:]


def merged(place: str) -> bytes:
    """The form with some cells made one."""
    made = BytesIO()
    with Workbook(made, {"in_memory": True}) as book:
        sheet = book.add_worksheet()
        sheet.write_row(0, 0, HEADS.split(","))
        sheet.write_row(1, 0, ["", "1", "", "5", "N"])
        sheet.merge_range(place, "1")
    return made.getvalue()


def open_document(cells: str) -> bytes:
    """The form as .ods: the row of student 1, and these cells for what is asked."""
    heads = "".join(map(_text, HEADS.split(",")))
    rows = (heads, f"{_text('')}{_text('1')}{_text('')}{cells}")
    return ods_of("".join(f"<table:table-row>{row}</table:table-row>" for row in rows))


def _text(text: str, told: str = "") -> str:
    shown = f"<text:p>{text}</text:p>"
    return f'<table:table-cell office:value-type="string"{told}>{shown}</table:table-cell>'


SPANNED = _text("5", ' table:number-columns-spanned="2"') + "<table:covered-table-cell/>"
DAY = '<table:table-cell office:value-type="date" office:date-value="2026-04-09"/>'


def vast() -> bytes:
    """The form with a cell of ten million characters, more than any spreadsheet allows."""
    rows = [HEADS.split(","), ["", "1", "", "many nines"]]
    with ZipFile(BytesIO(xlsx({"A": rows}))) as book:
        members = {name: book.read(name) for name in book.namelist()}
    told = "xl/sharedStrings.xml"
    members[told] = members[told].replace(b"many nines", b"9" * 10_000_000)
    return packed(members)


def dated() -> bytes:
    """The form where a spreadsheet took "4-9" for a day."""
    made = BytesIO()
    with Workbook(made, {"in_memory": True}) as book:
        sheet = book.add_worksheet()
        sheet.write_row(0, 0, HEADS.split(","))
        sheet.write_row(1, 0, ["", "1"])
        day = book.add_format({"num_format": "d-mmm"})
        sheet.write_datetime(1, 3, datetime(2026, 4, 9), day)
    return made.getvalue()


FAULTS = {
    "a wrong check sign": (f"{HEADS}\n{mistyped(CODES['1'])},,,5,N", "mistyped"),
    "a code of another record": (
        f"{HEADS}\n00000-00000,,,5,N\n{CODES['1']},1,,5,N",
        "a code of this record",
    ),
    "another record's form": (f"{HEADS}\n00000-00000,,,5,N\n,,,5,N", "name their record"),
    "an unknown student": (f"{HEADS}\n,77,,5,N", "an id of this class"),
    "another's code": (f"{HEADS}\n{CODES['1']},2,,5,N", "the paper of 2"),
    "double rows": (f"{HEADS}\n,1,,5,N\n,1,,6,N", "one row a paper"),
    "nobody's row": (f"{HEADS}\n,,,5,N", "a code or an id"),
    "a missing column": ("code,id,1 T unit\n,1,N", 'a column "1 T"'),
    "no column of ids": ("name,1 T,1 T unit\nAda,5,N", "a column code or id"),
    "another set": (f"{HEADS},2 R.x\n,1,,5,N,4", "answers of another set"),
    "no table of answers": ("who;birthday\nAda;1815", "a line of headings"),
    "a date": (f"{HEADS}\n,1,,2026-04-09,N", "made it a date"),
    "ten megabytes": (f"{HEADS}\n,1,,{'9' * 10_000_000},N", "cells between separators"),
    "a long cell": (f"{HEADS}\n,1,,{'9' * 5000},N", "at most 1000 characters"),
    "a zip bomb": (packed({"xl/big.xml": b"0" * (65 * 2**20)}), "MB when unpacked"),
    "merged cells": (merged("A2:C2"), "merged cells A2:C2"),
    "ten megabytes in a workbook": (
        xlsx({"A": [[*HEADS.split(",")], ["", "1", "", "9" * 32_000]]}),
        "at most 1000 characters",
    ),
    "ten megabytes in a cell of a workbook": (vast(), "at most 1000 characters"),
    "merged cells of .ods": (open_document(SPANNED), "merged cells D2:E2"),
    "a date in a workbook": (dated(), "made it a date"),
    "a date in .ods": (open_document(DAY), "made it a date"),
    "headings twice": (f"{HEADS}\n,1,,5,N\n{HEADS}\n,2,,5,N", "line 3, id"),
    "a double column": (f"{HEADS},1 T\n,1,,5,N,5", "each heading once"),
}


@pytest.mark.parametrize(("content", "said"), FAULTS.values(), ids=FAULTS)
def test_what_cannot_be_taken_is_told(tmp_path: Path, content: str | bytes, said: str) -> None:
    with pytest.raises(InputError, match=said):
        read(tmp_path, content)


def test_all_faults_are_told_at_once(tmp_path: Path) -> None:
    rows = f"{mistyped(CODES['1'])},,,5,N\n,77,,5,N\n,2,,2026-04-09,N"
    with pytest.raises(InputError) as raised:
        read(tmp_path, f"{HEADS}\n{rows}")
    assert [fault.field for fault in raised.value.faults] == [
        "line 2, code", "line 3, id", "line 4, 1 T",
    ]  # fmt: skip


def test_a_row_has_the_columns_of_its_own_section(tmp_path: Path) -> None:
    record = record_of_sections()
    asked = columns(record, [lamp_problem(), lamp_problem()])
    heads = ",".join(["id", *(column.heading for column in asked)])
    path = tmp_path / "answers.csv"
    path.write_text(f"{heads}\n1,,,7,N,,\n2,5,N,,,6,N\n", encoding="utf-8")
    ada, bea = read_answers(path, record, asked, [])
    assert {at: cells[Place.NUMBER] for (at, _), cells in ada.cells.items()} == {2: "7"}
    assert {at: cells[Place.NUMBER] for (at, _), cells in bea.cells.items()} == {1: "5", 2: "6"}
    path.write_text(f"{heads}\n1,5,N,7,N,,\n2,5,N,,,6,N\n", encoding="utf-8")
    with pytest.raises(InputError, match="nothing in this column"):
        read_answers(path, record, asked, [])


def test_an_earlier_edition_with_the_same_numbers_is_marked_as_the_present_one(
    tmp_path: Path,
) -> None:
    corrected = on(RECORD, RECORD.students, correct="a word", source=lamp("A lantern of", 2))[0]
    path = tmp_path / "answers.csv"
    path.write_text(f"{HEADS}\n{CODES['1']},1,,5,N\n", encoding="utf-8")
    remarks: list[str] = []
    (row,) = read_answers(path, corrected, ASKED, remarks)
    assert row.paper.code == corrected.held["1", False].code != CODES["1"]
    assert any("an earlier edition with the same numbers" in each for each in remarks)


def test_an_earlier_edition_with_other_numbers_is_left_to_a_person(tmp_path: Path) -> None:
    other = on(RECORD, RECORD.students, correct="the mass", source=lamp(revision=2, low="6.5",
               high="9.0"))[0]  # fmt: skip
    path = tmp_path / "answers.csv"
    path.write_text(f"{HEADS}\n{CODES['1']},1,,5,N\n,2,,5,N\n", encoding="utf-8")
    remarks: list[str] = []
    (row,) = read_answers(path, other, ASKED, remarks)
    assert row.paper.id == "2"
    (told,) = (each for each in remarks if "set aside" in each)
    assert f"line 2 (1) is set aside and not marked: {CODES['1']} is an earlier" in told
    assert "mark it by hand" in told


@pytest.mark.parametrize("row", ["{code},3,Cy,5,N", ",3,Cy,5,N", "{code},,Cy,5,N"])
def test_who_left_the_class_is_set_aside_and_the_others_marked(tmp_path: Path, row: str) -> None:
    fewer = on(RECORD, RECORD.students[:2])[0]
    path = tmp_path / "answers.csv"
    rows = f"{row.format(code=CODES['3'])}\n,1,,5,N\n"
    path.write_text(f"{HEADS}\n{rows}", encoding="utf-8")
    remarks: list[str] = []
    (found,) = read_answers(path, fewer, ASKED, remarks)
    assert found.paper.id == "1"
    assert any("line 2 (" in each and "not in the class any more" in each for each in remarks)


def test_a_form_of_another_set_is_told_in_one_message_with_the_record_it_is_of(
    tmp_path: Path,
) -> None:
    path = tmp_path / "answers.csv"
    path.write_text("code,id,1 R\n00000-00000,1,5\n00000-00001,9,5\n", encoding="utf-8")
    with pytest.raises(InputError) as raised:
        read_answers(path, RECORD, ASKED, [], lambda: {"00000-00000": Path("week-2/record.json")})
    (fault,) = raised.value.faults
    assert fault.found == '"00000-00000"'
    assert "week-2" in fault.mend


def test_a_column_that_is_not_there_is_told_with_what_holds_then(tmp_path: Path) -> None:
    remarks: list[str] = []
    read(tmp_path, "id,1 T\n1,5\n2,5\n3,5\n", remarks)
    (told,) = remarks
    assert 'no column "1 T unit"' in told


def test_another_version_of_an_exam_is_mended_in_the_class_list(tmp_path: Path) -> None:
    exam = begun(class_of(4), exam=Exam(versions=2))
    (other,) = (e.code for e in exam.current if e.owner != exam.letter_of["1"])
    path = tmp_path / "answers.csv"
    path.write_text(f"{HEADS}\n{other},1,,5,N\n", encoding="utf-8")
    with pytest.raises(InputError, match="column Version of the class list, build again"):
        read_answers(path, exam, ASKED, [])
