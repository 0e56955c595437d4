"""The class list: a CSV file as a spreadsheet or a gradebook exports it.

Columns are found by their headings, in any case and in the usual spellings: a name (or a first and
a last name), an id, and optionally a section, a seat, a mark for those who need large print, and
for single students whose numbers they have or which version; further columns are left alone, and
nothing of them is kept.
Commas, semicolons and tabs separate; UTF-8, UTF-16 with its mark, and Windows-1252 are read.  Empty
lines and lines that begin with "# " do not count.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.input.csv import Line, read_rows
from probgen.input.fault import Fault, Faults, InputError
from probgen.input.file import read_bytes


@dataclass(frozen=True, slots=True)
class Student:
    """One student; a text is empty when the list has no such column.

    seat: as it is called, "B7"; large: whether the student's sheets are printed large.
    numbers_of: the id whose numbers the student has, as after a change of it; version: the letter
    of an exam, or 2, 3 ... for other numbers than those handed out before.
    """

    name: str
    id: str
    section: str = ""
    seat: str = ""
    large: bool = False
    numbers_of: str = ""
    version: str = ""


_HEADINGS: Final[dict[str, tuple[str, ...]]] = {
    "name": ("studentname", "fullname", "name", "student", "displayname"),
    "first": ("firstname", "givenname", "forename", "givennames", "first"),
    "last": ("lastname", "surname", "familyname", "last"),
    "id": (
        "studentid",
        "studentnumber",
        "studentno",
        "idnumber",
        "id",
        "matriculationnumber",
        "number",
    ),
    "section": ("section", "group", "class", "tutorial", "recitation", "lab"),
    "seat": ("seat", "seatnumber", "seatno", "place", "desk"),
    "large": ("largeprint", "large", "print"),
    "numbers_of": ("numbersof", "sameas", "oldid", "formerid"),
    "version": ("version",),
}
"""Headings by what they mean, letters and digits only; of several in a file the first here wins."""

_MARKS: Final = {
    **dict.fromkeys(("yes", "y", "x", "true", "1", "large"), True),
    **dict.fromkeys(("", "no", "n", "false", "0", "normal"), False),
}
"""What marks those who need large print, and those who do not."""

Columns = Mapping[str, int]


def read_roster(path: Path) -> tuple[Student, ...]:
    """The students of a class list, in its order.

    Raises InputError with every fault of the file, each with its line number.
    """
    return parse_roster(_decode(read_bytes(path, "class list"), str(path)), str(path))


def parse_roster(text: str, where: str) -> tuple[Student, ...]:
    """As `read_roster`, from text; `where` names the file in messages."""
    faults = Faults(where)
    lines = list(_split(text, faults))
    if len(lines) < 2:
        mend = "give a line of headings (name, id) and a line for each student"
        faults.add("", None, "at least one student", mend)
    faults.settle()
    (header_line, header), *rows = lines
    columns = _find_columns(header)
    _judge_header(columns, header, f"line {header_line}", faults)
    faults.settle()
    students: list[Student] = []
    seen: dict[str, int] = {}
    for number, cells in rows:
        student = _read_student(cells, columns)
        _judge_width(cells, len(header), number, faults)
        _judge_student(student, number, seen, faults)
        _judge_mark(cells, columns, number, faults)
        seen.setdefault(student.id, number)
        students.append(student)
    faults.settle()
    return tuple(students)


def _decode(content: bytes, where: str) -> str:
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        encodings = ["utf-16"]
    else:
        encodings = ["utf-8-sig", "cp1252"]
    for encoding in encodings:
        try:
            text = content.decode(encoding)
        except UnicodeDecodeError:
            continue
        if "\0" not in text:
            return text
    mend = "in the spreadsheet, choose Save as, then CSV"
    raise InputError([Fault(where, "", "not plain text", "a class list as CSV", mend)])


def _split(text: str, faults: Faults) -> Iterator[Line]:
    """The lines that count, as cells, each with its number in the file."""
    text = re.sub(r"\r\n?", "\n", text)
    marked = re.match(r"sep=(.)\n", text)
    separator = marked[1] if marked else _find_separator(text)
    for number, row in read_rows(text, separator, faults):
        cells = [" ".join(cell.split()) for cell in row]
        if any(cells) and not _is_remark(cells[0]) and not (marked and number == 1):
            yield number, cells


def _find_separator(text: str) -> str:
    """The separator by which the first line that counts shows the most headings we know."""
    lines = (line for line in text.split("\n") if line.strip(" ,;\t") and not _is_remark(line))
    header = next(lines, "")
    return max(
        ",;\t",
        key=lambda mark: (
            len(_find_columns(next(csv.reader([header], delimiter=mark), []))),
            header.count(mark),
        ),
    )


def _is_remark(line: str) -> bool:
    return line.lstrip('"').startswith("# ")


def _find_columns(header: Sequence[str]) -> Columns:
    """Where the columns we know stand."""
    plain = [re.sub(r"[\W_]", "", cell.casefold()) for cell in header]
    found: dict[str, int] = {}
    for meaning, headings in _HEADINGS.items():
        place = next((plain.index(heading) for heading in headings if heading in plain), None)
        if place is not None:
            found[meaning] = place
    return found


def _judge_header(columns: Columns, header: Sequence[str], line: str, faults: Faults) -> None:
    shown = ", ".join(cell for cell in header if cell)
    if "name" not in columns and not {"first", "last"} <= columns.keys():
        mend = "put a line of headings above the students"
        faults.add(line, shown, "a heading Name, or First name and Last name", mend)
    if "id" not in columns:
        mend = "add a column that tells students of one name apart"
        faults.add(line, shown, "a heading ID or Student ID", mend)


def _read_student(cells: Sequence[str], columns: Columns) -> Student:
    def cell(meaning: str) -> str:
        place = columns.get(meaning, len(cells))
        return cells[place] if place < len(cells) else ""

    if "first" in columns and "last" in columns:
        name = f"{cell('first')} {cell('last')}".strip()
    else:
        name = cell("name")
    large = _MARKS.get(cell("large").casefold(), False)
    return Student(
        name,
        cell("id"),
        cell("section"),
        cell("seat"),
        large,
        cell("numbers_of"),
        cell("version"),
    )


def _judge_width(cells: Sequence[str], width: int, number: int, faults: Faults) -> None:
    if any(cells[width:]):
        mend = 'put a name that holds a separator between quotes: "Abara, Ngozi"'
        faults.add(f"line {number}", ", ".join(cells), f"at most {width} cells", mend)


def _judge_student(student: Student, number: int, seen: Mapping[str, int], faults: Faults) -> None:
    if not student.name:
        faults.add(f"line {number}, name", None, "a name", "fill in the name")
    if not student.id:
        faults.add(f"line {number}, id", None, "an id", "fill in the id")
    elif student.id in seen:
        expected = f"an id of its own; line {seen[student.id]} has the same"
        faults.add(f"line {number}, id", student.id, expected, "correct one, or remove the double")


def _judge_mark(cells: Sequence[str], columns: Columns, number: int, faults: Faults) -> None:
    place = columns.get("large", len(cells))
    mark = cells[place] if place < len(cells) else ""
    if mark.casefold() not in _MARKS:
        mend = "write yes for those who need large print, and nothing for the others"
        faults.add(f"line {number}, large print", mark, "yes or no", mend)
