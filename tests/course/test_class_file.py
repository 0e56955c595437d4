"""A class list's file as rows: which encoding, which separator, which sheet."""

from __future__ import annotations

from pathlib import Path

import pytest

from probgen.course.class_file import read_class_file
from probgen.course.headings import known_headings
from probgen.input.csv import MOST_COLUMNS
from probgen.input.fault import InputError
from tests.spreadsheets import ods, xlsx

Rows = list[tuple[str, ...]]
TEXT = "name;id\nZoë Müller-Åström;0071\n"
ROWS = [("name", "id"), ("Zoë Müller-Åström", "0071")]


def read(content: bytes, folder: Path, name: str = "class.csv") -> tuple[Rows, list[str]]:
    path, remarks = folder / name, list[str]()
    path.write_bytes(content)
    rows = read_class_file(path, known_headings, remarks)
    return [row.cells for row in rows], [each.removeprefix(f"{path}: ") for each in remarks]


@pytest.mark.parametrize(
    "encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32"]
)
def test_unicode_is_known_by_itself(encoding: str, tmp_path: Path) -> None:
    assert read(TEXT.encode(encoding), tmp_path) == (ROWS, [])


def test_another_encoding_is_guessed_and_said(tmp_path: Path) -> None:
    rows, (remark,) = read(TEXT.encode("cp1252"), tmp_path)
    assert rows == ROWS
    assert remark.startswith(
        'read as Windows-1252, for it is not UTF-8, as in "Zoë Müller-Åström"; where'
    )


def test_texts_that_spreadsheets_were_kept_from_reading(tmp_path: Path) -> None:
    rows, _ = read(b'name,id\n"\'t Hooft","=""0071"""\n\'=Ada,\'0072\n', tmp_path)
    assert rows[1:] == [("'t Hooft", "0071"), ("=Ada", "0072")]


def test_a_row_counts_while_any_cell_of_it_is_filled(tmp_path: Path) -> None:
    rows, _ = read(b"name,id\nAda Quill,\n , \n,0072\n", tmp_path)
    assert rows == [("name", "id"), ("Ada Quill", ""), ("", "0072")]


@pytest.mark.parametrize(
    ("text", "rows"),
    [
        ("Mechanics, spring\nname;id\nAda;1\n", [("Mechanics, spring",), ("name", "id")]),
        ("sep=;\nname;id\nAda;1\n", [("name", "id"), ("Ada", "1")]),
        ("name\tid\nQuill, Ada\t1\n", [("name", "id"), ("Quill, Ada", "1")]),
    ],
)
def test_the_separator_is_that_of_the_headings(text: str, rows: Rows, tmp_path: Path) -> None:
    assert read(text.encode(), tmp_path)[0][:2] == rows


CLASS: list[list[object]] = [
    ["Name", "Student ID"], ["Ada Quill", 20260001], ["Bea", "0072"], [], ["Cid", 3.5],
]  # fmt: skip


@pytest.mark.parametrize(
    ("content", "name"), [(xlsx({"Class": CLASS}), "class.xlsx"), (ods(CLASS), "class.ods")]
)
def test_workbooks_give_the_same_rows(content: bytes, name: str, tmp_path: Path) -> None:
    rows, remarks = read(content, tmp_path, name)
    assert rows == [
        ("Name", "Student ID"), ("Ada Quill", "20260001"), ("Bea", "0072"), ("Cid", "3.5"),
    ]  # fmt: skip
    assert remarks == []


def test_numbers_and_places_are_told(tmp_path: Path) -> None:
    (tmp_path / "class.xlsx").write_bytes(xlsx({"Class": CLASS}))
    rows = read_class_file(tmp_path / "class.xlsx", known_headings, [])
    assert [(row.place, row.numbers) for row in rows] == [
        ("row 1", frozenset()), ("row 2", {1}), ("row 3", frozenset()), ("row 5", {1}),
    ]  # fmt: skip


def test_the_sheet_with_the_headings_is_taken(tmp_path: Path) -> None:
    content = xlsx({"Notes": [["to do"]], "Old": CLASS[:2], "Class": CLASS}, hidden=["Old"])
    rows, remarks = read(content, tmp_path, "class.xlsx")
    assert len(rows) == 4
    assert remarks == ['the table is read from the sheet "Class", and nothing from "Notes", "Old"']


REFUSED = {
    "a web page": (b"<html><table><tr><td>name", "a web page"),
    "no text": (b"\x00\x01\x02\x03", "not plain text"),
    "a sign nobody sees": (
        b"name,id\r\nAda Quill,s1\r\nBea\x01 Ostrander,s2\r\n",
        r"line 3\n +found +the control character U\+0001\n",
    ),
    "an empty workbook": (xlsx({"A": []}), "an empty workbook"),
    "too wide": (xlsx({"A": [["name", "id", *"x" * MOST_COLUMNS]]}), f"{MOST_COLUMNS + 2} cells"),
}


@pytest.mark.parametrize(("content", "found"), REFUSED.values(), ids=REFUSED)
def test_other_files_are_refused(content: bytes, found: str, tmp_path: Path) -> None:
    with pytest.raises(InputError, match=found):
        read(content, tmp_path)
