"""Tables for people and their spreadsheets: CSV with the mark of UTF-8, or a workbook."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from datetime import datetime
from io import BytesIO
from pathlib import Path
from tempfile import gettempdir
from typing import Final

from xlsxwriter import Workbook

from probgen.input.csv import csv_lines
from probgen.input.file import naming

_NO_CLOCK: Final = datetime(1980, 1, 1)


def write_csv(path: Path, heads: Sequence[str], rows: Iterable[Sequence[object]]) -> None:
    """A table as CSV; no cell of it is a formula."""
    with naming(path), path.open("w", encoding="utf-8-sig", newline="") as file:
        file.writelines(csv_lines([heads]))
        file.writelines(csv_lines(rows))


def write_workbook(
    path: Path,
    heads: Sequence[str],
    rows: Iterable[Sequence[object]],
    numbers: Collection[str] = (),
) -> None:
    """The same as a workbook (.xlsx), heads kept in sight; the same rows give the same bytes.

    numbers: heads of the columns that hold numbers; all else is text, whatever it looks like.
    """
    with naming(path):
        path.write_bytes(workbook_content(heads, rows, numbers))


def csv_content(heads: Sequence[str], rows: Iterable[Sequence[object]]) -> bytes:
    """What `write_csv` writes."""
    return "".join((*csv_lines([heads]), *csv_lines(rows))).encode("utf-8-sig")


def workbook_content(
    heads: Sequence[str], rows: Iterable[Sequence[object]], numbers: Collection[str] = ()
) -> bytes:
    """What `write_workbook` writes."""
    counted = [place for place, head in enumerate(heads) if head in numbers]
    content = BytesIO()
    with naming(Path(gettempdir())), Workbook(content, {"constant_memory": True}) as book:
        book.set_properties({"created": _NO_CLOCK})
        sheet = book.add_worksheet()
        sheet.freeze_panes(1, 0)
        bold = book.add_format({"bold": True})
        for place, head in enumerate(heads):  # one may look like a formula too
            sheet.write_string(0, place, head, bold)
        for number, row in enumerate(rows, start=1):
            for place, cell in enumerate(row):
                if place in counted and cell != "":
                    sheet.write_number(number, place, float(str(cell)))
                else:
                    sheet.write_string(number, place, str(cell))
    return content.getvalue()
