"""What an earlier marking left: points changed by hand, and how each answer stood."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Final, NamedTuple

from probgen.course.class_file import read_class_file
from probgen.input.fault import Faults
from probgen.marking.again import Stood
from probgen.marking.marks import HEADINGS, Changed, Key, points_shown

_KEY: Final = ("id", "problem", "answer")


class Earlier(NamedTuple):
    """changed: points given by hand; stood: verdicts and points, those among them."""

    changed: Changed
    stood: Mapping[Key, Stood]


def read_changed(paths: Sequence[Path]) -> Changed:
    """What stands in the columns "changed" of tables that are there.

    Raises InputError for what is no number of points, and where two tables say different things.
    """
    return read_earlier(paths).changed


def read_earlier(paths: Sequence[Path]) -> Earlier:
    """The same, and how the answers stood by then.  Raises as `read_changed`."""
    found: dict[Key, Decimal] = {}
    stood: dict[Key, Stood] = {}
    for path in paths:
        if path.is_file():
            faults = Faults(str(path))
            for place, cells in _rows(path, faults):
                key = cells["id"], cells["problem"], cells["answer"]
                stood.setdefault(key, Stood(cells.get("verdict", ""), cells.get("counts", "")))
                if cells["changed"]:
                    _note(found, key, cells, place, faults)
            faults.settle()
    by_hand = {key: Stood(stood[key].verdict, points_shown(found[key])) for key in found}
    return Earlier(found, {**stood, **by_hand})


def _note(
    found: dict[Key, Decimal], key: Key, cells: Mapping[str, str], place: str, faults: Faults
) -> None:
    typed, most = cells["changed"], _points(cells["of"]) or Decimal(0)
    points = _points(typed)
    if points is None or not 0 <= points <= most:
        faults.add(f"{place}, changed", typed, f"points from 0 to {most}")
    elif found.setdefault(key, points) != points:
        mend = "leave one of the two empty"
        faults.add(f"{place}, changed", typed, f"{found[key]}, as told before", mend)


def _rows(path: Path, faults: Faults) -> Iterator[tuple[str, dict[str, str]]]:
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
        yield row.place, _padded(row.cells, heads)


def _padded(cells: Sequence[str], heads: Mapping[str, int]) -> dict[str, str]:
    return {head: cells[at] if at < len(cells) else "" for head, at in heads.items()}


def _points(text: str) -> Decimal | None:
    try:
        points = Decimal(text.replace(",", "."))
    except InvalidOperation:
        return None
    return points if points.is_finite() else None
