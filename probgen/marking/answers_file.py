"""The table of students' answers: whose each row is, and what was typed; all faults at once."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from probgen.course.class_file import Row, read_class_file
from probgen.course.record import Record
from probgen.course.version_code import read_code
from probgen.input.fault import Faults
from probgen.marking.form import OWN_HEADINGS, Column, Paper, Place, papers

Cells = Mapping[tuple[int, str], Mapping[Place, str]]
"""What was typed, by problem and answer, and the place it was typed into."""

Elsewhere = Callable[[], Mapping[str, Path]]
"""Gives the records beside, by the codes in them."""

_SEARCHED: Final = 20
_DATE: Final = re.compile(r"\d{4}-\d\d-\d\d(T[\d:.]+)?|\d{1,2}[-./][A-Za-z]{3,9}([-./]\d{2,4})?")
_ASKED: Final = re.compile(r"\d{1,3} \S+( unit| side)?")


@dataclass(frozen=True, slots=True)
class Typed:
    """One paper's row."""

    paper: Paper
    cells: Cells


@dataclass(slots=True)
class _Reading:
    """A table while it is read; columns: the places of the form's headings, and of others."""

    file: str
    record: Record
    columns: Mapping[str, int]
    asked: Sequence[Column]
    faults: Faults
    remarks: list[str]
    seen: dict[str, str] = field(default_factory=dict)


def read_answers(
    path: Path,
    record: Record,
    asked: Sequence[Column],
    remarks: list[str],
    elsewhere: Elsewhere = dict,
) -> tuple[Typed, ...]:
    """The rows of a table of answers: CSV, .xlsx or .ods, with the headings of the form.

    Rows of earlier editions and of students who left are set aside, with a remark on each.
    elsewhere: where the codes of other sets are, asked for only where a table is of another.
    Raises InputError with every fault: answers of another set, codes that are none, students the
    record never had, double rows, missing columns, dates.
    """
    known = _headings(asked)
    rows = read_class_file(
        path, lambda row: sum(_plain(c, known) in known for c in row), remarks, "table of answers"
    )
    faults = Faults(str(path))
    count = {
        i: sum(_plain(cell, known) in known for cell in row.cells)
        for i, row in enumerate(rows[:_SEARCHED])
    }
    head = max(count, key=lambda i: (count[i], -i), default=-1)
    if head < 0 or not count[head]:
        mend = "take the form that `probgen form` writes for this record"
        faults.add("", None, "a line of headings such as code, id, 1 T, 1 T unit", mend)
        faults.settle()
    columns = _columns(rows[head], known, faults)
    reading = _Reading(str(path), record, columns, asked, faults, remarks)
    _refuse_another_set(reading, rows[head + 1 :], elsewhere)
    _judge_columns(reading, rows[head], known)
    found = tuple(_rows(reading, rows[head + 1 :]))
    faults.settle()
    missing = len(papers(record)) - len(found)
    if missing:
        remarks.append(f"{path}: {missing} of {len(papers(record))} papers have no row")
    return found


def _headings(asked: Sequence[Column]) -> dict[str, str]:
    """The form's headings by what may stand for each: capitals count only where two differ in them.

    One problem may ask for N and for n.
    """
    own = [*OWN_HEADINGS, *(column.heading for column in asked)]
    folded = Counter(head.casefold() for head in own)
    alone = {head.casefold(): head for head in own if folded[head.casefold()] == 1}
    return {**alone, **{head: head for head in own}}


def _plain(cell: str, known: Mapping[str, str]) -> str:
    """The form's heading that is meant, or the text of another one in small letters."""
    text = " ".join(cell.split())
    return known.get(text) or known.get(text.casefold(), text.casefold())


def _columns(row: Row, known: Mapping[str, str], faults: Faults) -> dict[str, int]:
    found: dict[str, int] = {}
    for place, cell in enumerate(row.cells):
        if (head := _plain(cell, known)) in found and cell:
            faults.add(row.place, cell, "each heading once", "remove the double column")
        elif cell:
            found[head] = place
    return found


def _refuse_another_set(reading: _Reading, rows: Sequence[Row], elsewhere: Elsewhere) -> None:
    """Stops where no code is of this record, at once: headings and ids would be told one by one."""
    own = {each.code for each in reading.record.editions}
    codes = [code for row in rows if (code := _code_of(_cell(reading, row, "code")))]
    if not codes or not own.isdisjoint(codes):
        return
    places = elsewhere()
    beside = next((places[code] for code in codes if code in places), None)
    mend = f"name the record these codes are of: {beside}" if beside else "name their record"
    found = f"{codes[0]}" + (f" and {len(codes) - 1} other codes" if codes[1:] else "")
    expected = f"codes of {reading.record.set.course}, {reading.record.set.title}"
    reading.faults.add("code", found, expected, mend)
    reading.faults.settle()


def _code_of(text: str) -> str:
    """The code that was typed; "" for what is none."""
    try:
        return read_code(text)
    except ValueError:
        return ""


def _judge_columns(reading: _Reading, row: Row, known: Mapping[str, str]) -> None:
    if not {"code", "id"} & reading.columns.keys():
        reading.faults.add(row.place, ", ".join(row.cells), "a column code or id", "add one")
    needed = [c.heading for c in reading.asked if c.place in (Place.NUMBER, Place.CHOICE)]
    for head in needed:
        if head not in reading.columns:
            reading.faults.add(row.place, None, f'a column "{head}"', "add it, empty if need be")
    for column in reading.asked:
        if column.place in _TAKEN and column.heading not in reading.columns:
            told = f'{reading.file}: no column "{column.heading}"'
            reading.remarks.append(f"{told}: {_TAKEN[column.place]}")
    for cell in row.cells:
        if _ASKED.fullmatch(cell) and _plain(cell, known) not in known:
            mend = "see whether these are the answers of another set"
            reading.faults.add(row.place, cell, "columns of what this set asks", mend)


_TAKEN: Final = {
    Place.UNIT: "a number without a unit beside it counts in the unit printed on the paper",
    Place.SIDE: "the side counts only where it is typed with the number",
}
"""What holds where a column is not there."""


def _rows(reading: _Reading, rows: Sequence[Row]) -> Iterator[Typed]:
    by_id = {paper.id: paper for paper in papers(reading.record)}
    for row in rows:
        if row.merged:
            mend = "split the cells, and type what belongs into each of them"
            found = f"merged cells {row.merged}"
            reading.faults.add(row.place, found, "a cell for each answer", mend)
        paper = _paper(reading, row, by_id)
        if paper is None:
            continue
        if paper.id in reading.seen:
            expected = f"one row a paper; {reading.seen[paper.id]} is of {paper.name} too"
            reading.faults.add(row.place, paper.code, expected, "remove one of them")
        reading.seen.setdefault(paper.id, row.place)
        yield Typed(paper, _cells(reading, row, paper))


def _paper(reading: _Reading, row: Row, by_id: Mapping[str, Paper]) -> Paper | None:
    """Whose a row is; None after a fault."""
    code, id = _cell(reading, row, "code"), _cell(reading, row, "id")
    if not code and not id:
        reading.faults.add(row.place, None, "a code or an id", "fill it in, or remove the row")
        return None
    if id and id not in by_id and _has_left(reading.record, id, code):
        told = "is not in the class any more"
        _set_aside(reading, row, id, told, "add them to the class list and build again")
        return None
    if id and id not in by_id:
        mend = "see whether it is the id of the class list, with all its zeros"
        reading.faults.add(f"{row.place}, id", id, "an id of this class", mend)
        return None
    if not code:
        return by_id[id]
    return _by_code(reading, row, code, id, by_id)


def _by_code(
    reading: _Reading, row: Row, typed: str, id: str, by_id: Mapping[str, Paper]
) -> Paper | None:
    faults, place = reading.faults, f"{row.place}, code"
    try:
        code = read_code(typed)
    except ValueError as error:
        expected = "a code with the check sign that fits it"
        faults.add(place, typed, expected, f"look at the paper: {error}")
        return None
    holders = [paper for paper in by_id.values() if paper.code == code]
    if not holders and (owner := _same_numbers(reading.record, code)):
        holders = [paper for paper in by_id.values() if paper.owner == owner]
        if holders:
            told = f"{row.place}: {code} is an earlier edition with the same numbers as"
            reading.remarks.append(f"{told} {holders[0].code}, and is marked as that one")
    if not holders and any(each.code == code for each in reading.record.editions):
        why, mend = _why_none(reading.record, code)
        _set_aside(reading, row, code, why, mend)
        return None
    if not holders:
        mend = "see whether it is the answer of another set"
        faults.add(place, code, "a code of this record", mend)
        return None
    if id and by_id[id] not in holders:
        mend = "correct the code or the id"
        if reading.record.is_exam:
            mend += (
                f"; if {id} took version {holders[0].owner}, write {holders[0].owner} into the "
                "column Version of the class list, build again, and mark then"
            )
        faults.add(place, code, f"{by_id[id].code}, the paper of {id}", mend)
        return None
    if not id and len(holders) > 1:
        mend = "fill in the ids: several students have this version"
        faults.add(f"{row.place}, id", None, "an id", mend)
        return None
    return by_id[id] if id else holders[0]


def _same_numbers(record: Record, code: str) -> str:
    """Whose an earlier edition is whose numbers are those of the present one; "" for none."""
    own = next((each for each in record.editions if each.code == code), None)
    now = own and record.held.get((own.owner, False))
    if own is None or now is None or [d.values for d in own.draws] != [d.values for d in now.draws]:
        return ""
    return own.owner


def _has_left(record: Record, id: str, typed: str) -> bool:
    """Whether a student who is not in the class had a paper once."""
    if (id, False) in record.held and not record.is_exam:
        return True
    code = _code_of(typed)
    of_others = {paper.owner for paper in papers(record)}
    return any(each.code == code and each.owner not in of_others for each in record.editions)


def _set_aside(reading: _Reading, row: Row, found: str, why: str, mend: str) -> None:
    name = _cell(reading, row, "name") or _cell(reading, row, "id")
    who = f" ({name})" if name and name != found else ""
    told = f"{reading.file}: {row.place}{who} is set aside and not marked: {found} {why}"
    reading.remarks.append(f"{told}; {mend}")


def _why_none(record: Record, code: str) -> tuple[str, str]:
    """Why nobody has a code of the record now, and the mend."""
    own = next(each for each in record.editions if each.code == code)
    now = next((paper.code for paper in papers(record) if paper.owner == own.owner), "")
    if not now:
        told = "is a paper of somebody who is not in the class any more"
        return told, "add them to the class list and build again"
    mend = f"mark it by hand, its numbers are others: `probgen trace {code}` tells its answers"
    return f"is an earlier edition, whose place {now} has taken", mend


def _cells(reading: _Reading, row: Row, paper: Paper) -> Cells:
    found: dict[tuple[int, str], dict[Place, str]] = {}
    for column in reading.asked:
        text = _cell(reading, row, column.heading)
        if column.section not in ("", paper.section):
            if text:
                place, expected = f"{row.place}, {column.heading}", "nothing in this column"
                mend = f"see whether {paper.name} has this problem: the section is {paper.section}"
                reading.faults.add(place, text, expected, mend)
            continue
        if column.place is Place.NUMBER and _DATE.fullmatch(text):
            mend = "format the column as text, and type the number again"
            place = f"{row.place}, {column.heading}"
            reading.faults.add(place, text, "a number; the spreadsheet made it a date", mend)
        found.setdefault((column.problem, column.answer), {})[column.place] = text
    return found


def _cell(reading: _Reading, row: Row, heading: str) -> str:
    place = reading.columns.get(heading, len(row.cells))
    return row.cells[place] if place < len(row.cells) else ""
