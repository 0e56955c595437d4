"""A class list's file as rows of cells: CSV as spreadsheets encode it, or a workbook.

Commas, semicolons and tabs separate.  UTF-8 and UTF-16 are known by themselves; what is neither is
read as Windows-1252, and a remark says so.  Empty rows do not count.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final, NoReturn

from probgen.input.csv import MOST_ROWS, fits, read_rows
from probgen.input.fault import Fault, Faults, InputError
from probgen.input.file import read_bytes
from probgen.input.workbook import Cell, Range, Sheet, is_workbook, read_sheets


@dataclass(frozen=True, slots=True)
class Row:
    """One row: `place` tells where it stands ("line 14"); its cells have single spaces.

    numbers: the columns whose cells are numbers of a workbook, which keeps no zeros before them.
    merged: cells of the row that are one with others ("A2:C2").
    """

    place: str
    cells: tuple[str, ...]
    numbers: frozenset[int] = frozenset()
    merged: str = ""


Judge = Callable[[Sequence[str]], int]
"""How many headings of a class list a row has."""


def read_class_file(
    path: Path, headings: Judge, remarks: list[str], kind: str = "class list"
) -> tuple[Row, ...]:
    """The rows of a class list, or another table of students; adds remarks on how it was read.

    headings: tells which of several separators, or sheets, is the right one.
    Raises InputError with every fault of the file.
    """
    content, where = read_bytes(path, kind), str(path)
    if is_workbook(content):
        return _read_workbook(content, where, headings, remarks)
    return split_rows(_decode(content, where, remarks), where, headings)


def split_rows(text: str, where: str, headings: Judge) -> tuple[Row, ...]:
    """The rows of a CSV text.  Raises InputError with every fault of it."""
    faults = Faults(where)
    text = re.sub(r"\r\n?", "\n", text)
    marked = re.match(r"sep=(.)\n", text)
    separator = marked[1] if marked else _find_separator(text, headings)
    rows = [
        Row(f"line {number}", _tidy(row))
        for number, row in read_rows(text, separator, faults)
        if any(map(str.strip, row)) and not (marked and number == 1)
    ]
    faults.settle()
    return tuple(rows)


def _tidy(cells: Sequence[str]) -> tuple[str, ...]:
    """Cells with single spaces, without the signs that told a spreadsheet they are text."""
    return tuple(_tidy_cell(cell) for cell in cells)


def _tidy_cell(cell: str) -> str:
    tidy = " ".join(cell.split())
    return _MARKED_TEXT.sub(r"\1", tidy) if tidy.startswith(("=", "'")) else tidy


_MARKED_TEXT: Final = re.compile(r"""^="([^"]*)"$|^'(?=[=+\-@\d])""")


def _find_separator(text: str, headings: Judge) -> str:
    """The separator by which one of the first lines shows the most headings we know."""
    lines = [line for line in text.split("\n") if line.strip(" ,;\t")][:20]

    def known(mark: str) -> tuple[int, int]:
        rows = (_cells(line, mark) for line in lines)
        return max(map(headings, rows), default=0), sum(line.count(mark) for line in lines)

    return max(",;\t", key=known)


def _cells(line: str, mark: str) -> list[str]:
    """The cells of one line; none where one is too long, which the reading then tells."""
    try:
        return next(csv.reader([line], delimiter=mark), [])
    except csv.Error:
        return []


_NULS: Final = {0: "utf-16-be", 1: "utf-16-le"}
"""UTF-16 without its mark: on which of two bytes the zeros of Latin letters lie."""


def _decode(content: bytes, where: str, remarks: list[str]) -> str:
    if re.match(rb"\s*<(!doctype|html|table|\?xml)", content, re.IGNORECASE):
        mend = "open it in the spreadsheet, and save it as .xlsx or as CSV"
        raise InputError([Fault(where, "", "a web page", _EXPECTED, mend)])
    for encoding in _encodings(content):
        try:
            text = content.decode(encoding)
        except UnicodeDecodeError:
            continue
        if control := _CONTROL.search(text):
            if encoding == "utf-8" and len(_CONTROL.findall(text)) < len(text) // 20:
                _refuse_control(text, control.start(), where)
            continue
        if encoding == "cp1252":
            odd = re.search(r"[^\n,;\t\"]*[^\x00-\x7f][^\n,;\t\"]*", text)
            shown = f', as in "{odd[0].strip()[:40]}"' if odd else ""
            remarks.append(
                f"{where}: read as Windows-1252, for it is not UTF-8{shown}; where the "
                "letters are others, save it as .xlsx or as CSV UTF-8"
            )
        return text.removeprefix("\ufeff")
    mend = "in the spreadsheet, choose Save as, then .xlsx, or CSV UTF-8"
    raise InputError([Fault(where, "", "not plain text", _EXPECTED, mend)])


def _refuse_control(text: str, at: int, where: str) -> NoReturn:
    """Raises InputError with the line of a sign that nobody sees."""
    line = len(re.findall(r"\r\n?|\n", text[:at])) + 1
    mend = "delete it there, or save the table anew from the spreadsheet"
    found = f"the control character U+{ord(text[at]):04X}"
    raise InputError([Fault(where, f"line {line}", found, "letters and signs", mend)])


_CONTROL: Final = re.compile("[\0-\x08\x0e-\x1f\x7f]")
_EXPECTED: Final = "a table as CSV, .xlsx or .ods"


def _encodings(content: bytes) -> tuple[str, ...]:
    if content.startswith((b"\xff\xfe\0\0", b"\0\0\xfe\xff")):
        return ("utf-32",)
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return ("utf-16",)
    start = content[:400]
    zeros = [start[place::2].count(0) for place in (0, 1)]
    if max(zeros) > len(start) // 8 > 2 * min(zeros):
        return (_NULS[zeros.index(max(zeros))],)
    return ("utf-8", "cp1252")


def _read_workbook(
    content: bytes, where: str, headings: Judge, remarks: list[str]
) -> tuple[Row, ...]:
    sheets = read_sheets(content, where)
    if not sheets:
        raise InputError([Fault(where, "", "an empty workbook", _EXPECTED)])
    tables = [tuple(_sheet_rows(sheet)) for sheet in sheets]
    known = [max((headings(row.cells) for row in rows[:20]), default=0) for rows in tables]
    best = max(range(len(sheets)), key=lambda i: (known[i], not sheets[i].hidden, -i))
    others = [f'"{each.name}"' for place, each in enumerate(sheets) if place != best]
    if others:
        remarks.append(
            f'{where}: the table is read from the sheet "{sheets[best].name}", '
            f"and nothing from {', '.join(others)}"
        )
    faults = Faults(where)
    if len(tables[best]) > MOST_ROWS:
        faults.add("", f"more than {MOST_ROWS} rows", f"at most {MOST_ROWS}")
    all(fits(row.cells, row.place, faults) for row in tables[best])
    faults.settle()
    return tuple(row for row in tables[best] if any(row.cells))


def _sheet_rows(sheet: Sheet) -> Iterator[Row]:
    for number, cells in enumerate(sheet.rows, start=1):
        numbers = {place for place, cell in enumerate(cells) if type(cell) in (int, float)}
        spans = [each for each in sheet.merged if each[0][0] < number <= each[1][0] + 1]
        merged = _told(spans) if spans else ""
        texts = _tidy([_text(cell) for cell in cells])
        yield Row(f"row {number}", texts, frozenset(numbers), merged)


def _told(spans: Sequence[Range]) -> str:
    """Merged cells as a spreadsheet names them: "A2:A3"."""
    from xlsxwriter.utility import xl_range  # every command would wait for it

    return ", ".join(xl_range(*first, *last) for first, last in spans)


def _text(cell: Cell) -> str:
    """A cell as it was most likely typed: whole numbers without a point."""
    match cell:
        case str():
            return cell
        case bool():
            return "yes" if cell else "no"
        case _:
            return f"{cell:.0f}" if cell == int(cell) else repr(cell)
