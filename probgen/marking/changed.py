"""What an earlier marking left: points changed by hand, and how each answer stood."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Final, NamedTuple

from probgen.course.class_file import Row as ClassRow
from probgen.course.class_file import read_class_file
from probgen.input.fault import Faults
from probgen.marking.again import Stood
from probgen.marking.marks import HEADINGS, Changed, Given, Key, Marked, Row, points_shown

_KEY: Final = ("id", "problem", "answer")


class Earlier(NamedTuple):
    """changed: points given by hand; stood: verdicts and points, those among them.

    rows: of all answers, as they stood; look_at: those that were left to a person.
    """

    changed: Changed
    stood: Mapping[Key, Stood]
    rows: Mapping[Key, Row]
    look_at: Mapping[Key, Row]

    @property
    def given(self) -> dict[Key, Given]:
        """All points by hand, each with what was typed where they were given."""
        return dict(self._given())

    def _given(self) -> Iterator[tuple[Key, Given]]:
        for key, points in self.changed.items():
            yield key, Given(points_shown(points), self.rows[key].typed)
        for key, row in self.rows.items():
            if key not in self.changed and row.given:
                yield key, Given(row.given, row.given_for)

    def kept(self, ids: Collection[str]) -> tuple[tuple[Row, ...], tuple[Row, ...]]:
        """The rows of papers that are not marked now, and those of them left to a person yet.

        ids: of the students whose papers are.  Points given by hand since count.
        """
        own = [self._by_hand(row) for row in self.rows.values() if row.id not in ids]
        waiting = [row for row in own if row.key in self.look_at or not row.counts]
        return tuple(own), tuple(row for row in waiting if not row.changed)

    def _by_hand(self, row: Row) -> Row:
        if row.key not in self.changed:
            was = row.changed or _cleared(row) is not None
            return row._replace(changed="", counts=_by_rule(row)) if was else row
        points = points_shown(self.changed[row.key])
        return row._replace(changed=points, counts=points)


def by_hand(
    given: Mapping[Key, Given], found: Iterable[Marked]
) -> tuple[Changed, Mapping[Key, Given]]:
    """The points that count, and those given where something else was typed by then."""
    now = {
        (each.paper.id, str(at.place), own.asked.id): own.stated.text
        for each in found
        for at in each.problems
        for own in at.answers
    }
    counting, outdated = dict[Key, Decimal](), dict[Key, Given]()
    for key, own in given.items():
        if key in now and not same_text(own.typed, now[key]):
            outdated[key] = own
        else:
            counting[key] = Decimal(own.points)
    return counting, outdated


def same_text(before: str, now: str) -> bool:
    """Whether a cell holds what it held, also where a spreadsheet has kept it as a number."""
    return before == now or not _meanings(before).isdisjoint(_meanings(now))


def _meanings(text: str) -> set[str | Decimal]:
    tidy = " ".join(text.split())
    numbers = {_points(tidy), _points(tidy.replace(",", ""))} - {None}
    return {tidy, *(each for each in numbers if each is not None)}


def read_changed(paths: Sequence[Path]) -> Changed:
    """What stands in the columns "changed" of tables that are there.

    Raises InputError for what is no number of points, and where two tables say different things.
    """
    told = _Told()
    for path in paths:
        _read(path, told, {})
    return told.counting


def read_earlier(answers: Path, look_at: Path, ids: Collection[str] = ()) -> Earlier:
    """The same, and how the answers stood by then.  Raises as `read_changed`.

    answers, look_at: tables without the ending: each may be CSV, a workbook, or both.
    ids: of the class; one whose zeros a spreadsheet has dropped gets them back.
    """
    told, whole = _Told(), _whole_ids(ids)
    stood, left = (_read_both(each, told, whole) for each in (answers, look_at))
    found = told.counting
    rows = {**stood, **left, **stood}  # in the order of all answers
    before = {key: Stood(row.verdict, row.counts) for key, row in rows.items()}
    by_hand = {
        key: before[key]._replace(counts=points_shown(points)) for key, points in found.items()
    }
    return Earlier(found, {**before, **by_hand}, rows, left)


ENDINGS: Final = (".csv", ".xlsx")


@dataclass(slots=True)
class _Told:
    """What the columns "changed" say.

    points: given by hand, and where that is told; cleared: that counted, where none stand now.
    """

    points: dict[Key, tuple[Decimal, str]] = field(default_factory=dict)
    cleared: set[tuple[Key, Decimal]] = field(default_factory=set)

    @property
    def counting(self) -> dict[Key, Decimal]:
        """Points that are cleared in one table count no more, though another keeps them."""
        told = self.points.items()
        return {key: each for key, (each, _) in told if (key, each) not in self.cleared}


def _whole_ids(ids: Collection[str]) -> dict[str, str]:
    """The id of the class for what is left of it without the zeros before it, if of no other."""
    short = {id: id.lstrip("0") for id in ids}
    count = Counter(short.values())
    return {cut: id for id, cut in short.items() if cut and count[cut] == 1}


def _read_both(table: Path, told: _Told, whole: Mapping[str, str]) -> dict[Key, Row]:
    """The rows of a table, as its CSV has them where there are both."""
    texts, book = (_read(table.with_name(table.name + each), told, whole) for each in ENDINGS)
    return {**book, **texts}


def _read(path: Path, told: _Told, whole: Mapping[str, str]) -> dict[Key, Row]:
    """The rows of a table that is there; notes the points changed in it."""
    rows: dict[Key, Row] = {}
    if path.is_file():
        faults = Faults(str(path))
        for place, cells in _rows(path, faults):
            row = _row(cells)
            row = row._replace(id=whole.get(row.id, row.id))
            if not row.problem.isdecimal():
                faults.add(f"{place}, problem", row.problem, "the number of a problem")
            rows.setdefault(row.key, row)
            if row.changed:
                _note(told, row, f"{path.name}, {place}", faults)
            elif (points := _cleared(row)) is not None:
                told.cleared.add((row.key, points))
        faults.settle()
    return rows


def _row(cells: Mapping[str, str]) -> Row:
    """A row as it was written, whatever a spreadsheet made of its points."""
    row = Row(*(cells.get(head, "") for head in HEADINGS))
    given = points_shown(_points(row.given))
    most = int(_points(row.of) or 0)
    return row._replace(counts=points_shown(_points(row.counts)), of=str(most), given=given)


def _cleared(row: Row) -> Decimal | None:
    """The points by hand that were there at the last marking, and were taken out since.

    They have counted in the place of those by rule; None where all is as it was written.
    """
    counted = _points(row.counts)
    return None if row.given or row.changed or counted == _points(row.points) else counted


def _by_rule(row: Row) -> str:
    return points_shown(_points(row.points))


def _note(told: _Told, row: Row, place: str, faults: Faults) -> None:
    typed, most = row.changed, int(row.of)
    points, field = _points(typed), f"{place.rpartition(', ')[2]}, changed"
    if points is None or not 0 <= points <= most:
        faults.add(field, typed, f"points from 0 to {most}")
        return
    before, where = told.points.setdefault(row.key, (points, place))
    if before != points:
        mend = "leave one of the two empty"
        faults.add(field, typed, f"{before}, as told before in {where}", mend)


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
    if own := _own_columns(heads, rows[1:]):
        mend = "move what you have written into a file of your own: this table is written anew"
        faults.add("", ", ".join(own), "the columns of the table and no others", mend)
    for row in rows[1:]:
        yield row.place, _padded(row.cells, heads)


def _own_columns(heads: Mapping[str, int], rows: Sequence[ClassRow]) -> list[str]:
    """Columns that somebody has added and written into."""
    added = {head: at for head, at in heads.items() if head not in HEADINGS}
    return [
        head or "one without a heading"
        for head, at in added.items()
        if any(any(r.cells[at : at + 1]) for r in rows)
    ]


def _padded(cells: Sequence[str], heads: Mapping[str, int]) -> dict[str, str]:
    return {head: cells[at] if at < len(cells) else "" for head, at in heads.items()}


def _points(text: str) -> Decimal | None:
    try:
        points = Decimal(text.replace(",", "."))
    except InvalidOperation:
        return None
    return points if points.is_finite() else None
