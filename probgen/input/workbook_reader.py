"""The process that opens a workbook: standard input to JSON on standard output, within bounds."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator
from contextlib import suppress
from datetime import date, datetime, time, timedelta
from io import BytesIO
from math import isfinite
from typing import Any, Final

from python_calamine import (
    CalamineError,
    CalamineSheet,
    CalamineWorkbook,
    SheetTypeEnum,
    SheetVisibleEnum,
)

from probgen.input.csv import LONGEST_CELL, MOST_ROWS
from probgen.input.ods_spans import Span, spans

_MEMORY: Final = 2**30  # bytes
_SECONDS: Final = 25


def sheets(content: bytes) -> dict[str, Any]:
    """The sheets of a workbook as data, or why there are none."""
    try:
        workbook = CalamineWorkbook.from_filelike(BytesIO(content))
        made_one = spans(content)
        shown = [each for each in workbook.sheets_metadata if each.typ == SheetTypeEnum.WorkSheet]
        return {
            "sheets": [
                {
                    "name": each.name,
                    "hidden": each.visible != SheetVisibleEnum.Visible,
                    **_content(workbook.get_sheet_by_name(each.name), made_one.get(each.name, [])),
                }
                for each in shown
            ]
        }
    except CalamineError as error:
        return {"failed": " ".join(str(error).split())[:200]}


def _content(sheet: CalamineSheet, spans: list[Span]) -> dict[str, Any]:
    """A sheet's rows, and its merged cells; spans: those of an OpenDocument spreadsheet."""
    merged = (sheet.merged_cell_ranges or spans)[:MOST_ROWS]
    return {"rows": list(_rows(sheet)), "merged": merged}


def _rows(sheet: CalamineSheet) -> Iterator[list[Any]]:
    """The rows, without the empty cells and rows at their ends, and one more than are read."""
    rows = sheet.to_python(skip_empty_area=False, nrows=MOST_ROWS + 1)
    last = max((place for place, row in enumerate(rows) if any(c != "" for c in row)), default=-1)
    for row in rows[: last + 1]:
        width = max((place for place, cell in enumerate(row, start=1) if cell != ""), default=0)
        yield [_plain(cell) for cell in row[:width]]


def _plain(cell: object) -> Any:
    match cell:
        case bool() | int():
            return cell
        case float():
            return cell if isfinite(cell) else str(cell)
        case datetime() | date() | time():
            return cell.isoformat()
        case timedelta():
            return str(cell)
        case _:
            return str(cell)[: LONGEST_CELL + 1]


def _bound() -> None:
    """Takes memory and time from this process beyond what a class list needs."""
    with suppress(ImportError, OSError, ValueError):  # where the system has no such bounds
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (_MEMORY, _MEMORY))
        resource.setrlimit(resource.RLIMIT_CPU, (_SECONDS, _SECONDS))
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


if __name__ == "__main__":
    _bound()
    json.dump(sheets(sys.stdin.buffer.read()), sys.stdout, allow_nan=False)
