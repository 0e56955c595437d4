"""The class list: a CSV file or a workbook as a spreadsheet or a gradebook exports it.

Columns are found by their headings, in any case and in the usual spellings: a name (or a first and
a last name), an id, and optionally a section, a seat, needs (large print, extra time, or
accommodations in words), and for single students whose numbers they have or which version.
Further columns are left alone, and nothing of them is kept.
What stands above the headings, lines that begin with "# ", and rows of points possible or averages
are no students; a remark tells of each that is left out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from probgen.course.alike import alike
from probgen.course.class_file import Row, read_class_file, split_rows
from probgen.course.headings import (
    Columns,
    find_columns,
    is_header,
    known_headings,
    other_ids,
)
from probgen.course.needs import is_mark, read_needs
from probgen.course.student_id import complaint_of, complaint_of_text, lost_zeros
from probgen.course.student_name import has_lost_letters, turned
from probgen.input.fault import Faults


@dataclass(frozen=True, slots=True)
class Student:
    """One student; a text is empty when the list has no such column.

    seat: as it is called, "B7"; large: whether the student's sheets are printed large.
    numbers_of: the id whose numbers the student has, as after a change of it; version: the letter
    of an exam, or 2, 3 ... for other numbers than those handed out before.
    needs: what else an assistant should know: "extra time 25%".
    """

    name: str
    id: str
    section: str = ""
    seat: str = ""
    large: bool = False
    numbers_of: str = ""
    version: str = ""
    needs: str = ""


@dataclass(frozen=True, slots=True)
class ClassList:
    """The students of a class list in its order, and remarks on how it was read."""

    students: tuple[Student, ...]
    remarks: tuple[str, ...] = ()


_SEARCHED: Final = 20
"""Rows among which the headings are looked for."""
_NAMED: Final = 3
"""Names that a remark tells besides the first; of more it tells how many."""
_SUMMARY: Final = re.compile(
    r"(class |course |section |overall |group )?"
    r"(average|mean|median|mode|std\.?( dev\.?)?|standard deviation|min(imum)?|max(imum)?|totals?"
    r"|count|highest|lowest)( scores?| points| marks?| grades?)?\W*"
    r"|points? possible\W*|possible points\W*|out of\W*|max(imum)? (points|scores?|marks?)\W*",
    re.IGNORECASE,
)
"""Names of rows that tell of the whole class."""


@dataclass(slots=True)
class _Reading:
    """A class list while it is read: the columns found, the faults and remarks so far."""

    columns: Columns
    faults: Faults
    remarks: list[str] = field(default_factory=list)

    def cell(self, row: Row, meaning: str) -> str:
        place = self.columns.get(meaning, len(row.cells))
        return row.cells[place] if place < len(row.cells) else ""

    def name(self, row: Row) -> str:
        if "first" in self.columns and "last" in self.columns:
            return f"{self.cell(row, 'first')} {self.cell(row, 'last')}".strip()
        return self.cell(row, "name")

    def remark(self, text: str) -> None:
        self.remarks.append(f"{self.faults.file}: {text}")


def read_roster(path: Path) -> ClassList:
    """The students of a class list.

    Raises InputError with every fault of the file, each with its place.
    """
    remarks: list[str] = []
    rows = read_class_file(path, known_headings, remarks)
    return _read(rows, str(path), remarks)


def parse_roster(text: str, where: str) -> ClassList:
    """As `read_roster`, from the text of a CSV file; `where` names the file in messages."""
    return _read(split_rows(text, where, known_headings), where, [])


def _read(rows: Sequence[Row], where: str, remarks: list[str]) -> ClassList:
    reading = _Reading({}, Faults(where), remarks)
    header, students = _split_header(rows, reading)
    reading.columns = find_columns(header.cells)
    _judge_header(reading, header)
    reading.faults.settle()
    found = list(_students(reading, students, len(header.cells)))
    if not found:
        mend = "give a line of headings (name, id) and a line for each student"
        reading.faults.add("", None, "at least one student", mend)
    reading.faults.settle()
    return ClassList(tuple(found), tuple(reading.remarks))


def _split_header(rows: Sequence[Row], reading: _Reading) -> tuple[Row, Sequence[Row]]:
    """The headings and the rows below them; what stands above is no student."""
    counted = [row for row in rows if not _is_remark(row)]
    searched = (place for place, row in enumerate(counted[:_SEARCHED]) if is_header(row.cells))
    place = next(searched, 0)
    if not counted:
        return Row("", ("name", "id")), ()
    if place:
        ends = dict.fromkeys((counted[0].place, counted[place - 1].place))
        above = " to ".join(ends)
        reading.remark(f"{above}: above the headings, and no student")
    header = counted[place]
    return header, rows[rows.index(header) + 1 :]


def _is_remark(row: Row) -> bool:
    return row.cells[0].startswith("# ")


def _judge_header(reading: _Reading, header: Row) -> None:
    columns, shown = reading.columns, ", ".join(cell for cell in header.cells if cell)
    if "name" not in columns and not {"first", "last"} <= columns.keys():
        mend = "put a line of headings above the students"
        expected = "a heading Name, or First name and Last name"
        reading.faults.add(header.place, shown, expected, mend)
    if "id" not in columns:
        mend = "add a column that tells students of one name apart"
        reading.faults.add(header.place, shown, "a heading ID or Student ID", mend)
    elif others := other_ids(header.cells, columns):
        taken = header.cells[columns["id"]]
        reading.remark(f'ids are taken from the column "{taken}", not from {", ".join(others)}')


def _students(reading: _Reading, rows: Sequence[Row], width: int) -> Iterator[Student]:
    """The students of the rows; notes faults and remarks."""
    seen: dict[str, str] = {}
    numbers: dict[str, bool] = {}
    commas: list[str] = []
    names: list[str] = []
    for row in rows:
        name, id = reading.name(row), reading.cell(row, "id")
        if reason := _no_student(row, name, id):
            reading.remark(f"{row.place}: {reason}")
            continue
        number = reading.columns["id"] in row.numbers
        _judge_width(reading, row, width)
        _judge_student(reading, row, (name, id, number), seen)
        seen.setdefault(id, row.place)
        numbers[id] = number
        names.append(turned(name))
        if turned(name) != name:
            commas.append(name)
        yield _student(reading, row, turned(name), id)
    if commas:
        reading.remark(f'"{commas[0]}" is printed as {turned(commas[0])}{_and_more(commas)}')
    if lost := lost_zeros(numbers):
        reading.remark(f"ids: {lost}")
    for told in (*alike(numbers, "ids"), *alike(names, "names")):
        reading.remark(told)


def _and_more(names: Sequence[str]) -> str:
    """The others to which the same has happened: the first few by name."""
    others = [f'"{name}"' for name in names[1:]]
    named = ", ".join(others[:_NAMED])
    more = f" and {len(others) - _NAMED} more" if len(others) > _NAMED else ""
    return f", and so {'are' if others[1:] else 'is'} {named}{more}" if others else ""


def _no_student(row: Row, name: str, id: str) -> str:
    """Why a row is left out, "" for a student's."""
    shown = ", ".join(filter(None, row.cells))[:60]
    if _is_remark(row):
        return f'"{shown}" begins with # and is left out'
    if not name and not id:
        return f'"{shown}" has neither name nor id, and is left out'
    if _SUMMARY.fullmatch(name or id) and not re.search(r"\d", id):
        return f'"{name or id}" is no student, and is left out'
    return ""


def _student(reading: _Reading, row: Row, name: str, id: str) -> Student:
    needs = read_needs(*(reading.cell(row, meaning) for meaning in ("large", "time", "needs")))
    section, seat = reading.cell(row, "section"), reading.cell(row, "seat")
    numbers_of, version = reading.cell(row, "numbers_of"), reading.cell(row, "version")
    return Student(name, id, section, seat, needs.large, numbers_of, version, needs.told)


def _judge_width(reading: _Reading, row: Row, width: int) -> None:
    if any(row.cells[width:]):
        mend = 'put a name that holds a separator between quotes: "Abara, Ngozi"'
        reading.faults.add(row.place, ", ".join(row.cells), f"at most {width} cells", mend)


def _judge_student(
    reading: _Reading, row: Row, told: tuple[str, str, bool], seen: dict[str, str]
) -> None:
    name, id, number = told
    faults, place = reading.faults, row.place
    if not name:
        faults.add(f"{place}, name", None, "a name", "fill in the name")
    elif complaint := complaint_of_text(name, "a name"):
        faults.add(f"{place}, name", name, *complaint)
    elif has_lost_letters(name):
        expected = "a name with all its letters; some were lost when the list was saved"
        faults.add(f"{place}, name", name, expected, "save it again as .xlsx or as CSV UTF-8")
    if not id:
        faults.add(f"{place}, id", None, "an id", "fill in the id")
    elif complaint := complaint_of(id, number):
        faults.add(f"{place}, id", id, *complaint)
    elif id in seen:
        expected = f"an id of its own; {seen[id]} has the same"
        faults.add(f"{place}, id", id, expected, "correct one, or remove the double")
    if not is_mark(mark := reading.cell(row, "large")):
        mend = "write yes for those who need large print, and nothing for the others"
        faults.add(f"{place}, large print", mark, "yes or no", mend)
