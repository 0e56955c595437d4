"""CSV tables: read within bounds, and written so that a spreadsheet takes no cell for a formula."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from probgen.input.fault import Fault, Faults
from probgen.input.text import unfit

MOST_ROWS: Final = 100_000
"""Of a class list: ten times the largest class a build is made for."""
MOST_COLUMNS: Final = 200
"""Gradebooks export a column for each assignment of a term, not more."""
LONGEST_CELL: Final = 1000
"""Characters; no name or id comes near, and gradebooks' remarks do not either."""

Line = tuple[int, list[str]]

_FORMULA: Final = re.compile(r"[\s\0]*[=+\-@＝＋－＠]|\t")
_INNER: Final = re.compile(r"((?<=[,;|])|(?<=.\t))(?=[\s\"']*[=+\-@＝＋－＠])")
"""Behind what a spreadsheet may split at, where other separators are usual there."""
_TOLD_APART: Final = re.compile("[\r\n\0\t=+\\-@＝＋－＠]")
"""Without any of these a text is a cell as it stands."""
_BREAK: Final = re.compile("[\r\n\0]")
_NUMBER: Final = re.compile(r"[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?")


def read_rows(text: str, separator: str, faults: Faults) -> Iterator[Line]:
    """The cells of each row with the number of its first line; faults are noted and end it."""
    reader = csv.reader(io.StringIO(text), delimiter=separator, skipinitialspace=True, strict=True)
    first, count = 1, 0
    try:
        for row in reader:
            number, first = first, reader.line_num + 1
            count += 1
            if count > MOST_ROWS or not fits(row, f"line {number}", faults):
                break
            yield number, row
    except csv.Error as error:
        mend = "close every quotation mark; write one inside a name twice"
        faults.add(f"line {first}", str(error), "cells between separators", mend)
    if count > MOST_ROWS:
        faults.add("", f"more than {MOST_ROWS} rows", f"at most {MOST_ROWS}")


def csv_lines(rows: Iterable[Iterable[object]], separator: str = ",") -> Iterator[str]:
    """Each row as CSV text, every cell a number or a text and none a formula."""
    written = _Written()
    writer = csv.writer(written, delimiter=separator, lineterminator="\n")
    for row in rows:
        writer.writerow([safe_cell(cell) for cell in row])
        yield written.line


class _Written:
    """What a CSV writer writes into: the last line alone."""

    line = ""

    def write(self, line: str) -> None:
        self.line = line


def safe_cell(value: object) -> str:
    """A cell's text; one that a spreadsheet would take for a formula begins with an apostrophe.

    So does a part of it that would be a formula if the spreadsheet split the cell.
    Numbers stay numbers, -4.9 among them; a cell has one line, or a row would end in it.
    """
    text = str(value)
    if not _TOLD_APART.search(text):
        return text
    text = _INNER.sub("'", _BREAK.sub(" ", text))
    return f"'{text}" if _FORMULA.match(text) and not _NUMBER.fullmatch(text) else text


def fits(row: Sequence[str], place: str, faults: Faults) -> bool:
    """Whether a row is within bounds; notes a fault where it is not."""
    if len(row) > MOST_COLUMNS:
        faults.add(place, f"{len(row)} cells", f"at most {MOST_COLUMNS} cells")
    elif any(len(cell) > LONGEST_CELL for cell in row):
        mend = "close every quotation mark, and see whether it is the right file"
        longest = max(map(len, row))
        expected = f"at most {LONGEST_CELL} characters"
        faults.add(place, f"a cell of {longest} characters", expected, mend)
    elif what := next(filter(None, map(unfit, row)), ""):
        mend = "take it out, or save the list anew as CSV UTF-8"
        faults.found.append(Fault(faults.file, place, what, "text", mend))
    else:
        return True
    return False
