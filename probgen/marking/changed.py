"""Points changed by hand, read back from the tables of an earlier run."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Final

from probgen.course.class_file import read_class_file
from probgen.input.fault import Faults
from probgen.marking.marks import HEADINGS, Changed, Key

_KEY: Final = ("id", "problem", "answer")


def read_changed(paths: Sequence[Path]) -> Changed:
    """What stands in the columns "changed" of tables that are there.

    Raises InputError for what is no number of points, and where two tables say different things.
    """
    found: dict[Key, Decimal] = {}
    for path in paths:
        if path.is_file():
            faults = Faults(str(path))
            for place, key, typed, most in _rows(path, faults):
                points = _points(typed)
                if points is None or not 0 <= points <= most:
                    faults.add(f"{place}, changed", typed, f"points from 0 to {most}")
                elif found.setdefault(key, points) != points:
                    mend = "leave one of the two empty"
                    faults.add(f"{place}, changed", typed, f"{found[key]}, as told before", mend)
            faults.settle()
    return found


def _rows(path: Path, faults: Faults) -> Iterator[tuple[str, Key, str, Decimal]]:
    rows = read_class_file(
        path, lambda row: sum(cell in HEADINGS for cell in row), [], "table of marks"
    )
    heads = {cell: place for place, cell in enumerate(rows[0].cells)} if rows else {}
    needed = (*_KEY, "changed", "of")
    missing = [head for head in needed if head not in heads]
    if missing:
        mend = "put it back, or move the file away"
        faults.add("", None, f"the columns {', '.join(missing)}", mend)
        return
    for row in rows[1:]:
        cells = _padded(row.cells, heads)
        if cells["changed"]:
            most = _points(cells["of"])
            id, problem, answer = (cells[head] for head in _KEY)
            yield row.place, (id, problem, answer), cells["changed"], most or Decimal(0)


def _padded(cells: Sequence[str], heads: Mapping[str, int]) -> dict[str, str]:
    return {head: cells[at] if at < len(cells) else "" for head, at in heads.items()}


def _points(text: str) -> Decimal | None:
    try:
        points = Decimal(text.replace(",", "."))
    except InvalidOperation:
        return None
    return points if points.is_finite() else None
