"""What was said of a bank's templates, in the bank's reviews.csv: a row a verdict.

    template,revision,text,person,date,verdict,note
    forearm-load,2,0d1f3a77c2be,A. Reader,2027-05-03,approved,the range is kinder now

A verdict is on a text, known by the first digits of its digest: of a text that was edited since
nothing was said yet.  Rows are added, and none is changed.  Columns stand in any order; further
ones are left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from pathlib import Path
from typing import Final

from probgen.bank.bank_folder import BankFolder
from probgen.bank.bank_lock import held
from probgen.input.csv import csv_lines, read_rows
from probgen.input.fault import Faults, nearest, one_of
from probgen.input.file import read_bytes, read_text, write_beside
from probgen.input.merge import require_merged
from probgen.input.text import is_seen

REVIEWS: Final = "reviews.csv"
COLUMNS: Final = ("template", "revision", "text", "person", "date", "verdict", "note")
_KIND: Final = "list of reviews"
_SEPARATORS: Final = ",;\t"
_REVISION: Final = re.compile(r"r?([1-9]\d{0,5})")
_TEXT: Final = re.compile(r"[0-9a-f]{12,64}")
_NUMBER: Final = re.compile(r"\d+(e\d+)?")
"""Digits of a digest that a spreadsheet would take for a number, and round."""
_SHORTEST: Final = 12
_DIGITS: Final = 64


class Verdict(StrEnum):
    """PROPOSED: to be reviewed, again where it was before; WITHDRAWN: not to be released any
    more, nor any revision before.
    """

    PROPOSED = "proposed"
    APPROVED = "approved"
    CHANGES_WANTED = "changes wanted"
    WITHDRAWN = "withdrawn"


@dataclass(frozen=True, slots=True)
class Review:
    """A verdict on a revision; text: the first digits of its text's digest, 12 at least."""

    template: str
    revision: int
    text: str
    person: str
    date: date
    verdict: Verdict
    note: str = ""


def text_mark(digest: str) -> str:
    """As many of a digest's digits as a row names, and no number for a spreadsheet to round."""
    marks = (digest[:count] for count in range(_SHORTEST, _DIGITS))
    return next((mark for mark in marks if not _NUMBER.fullmatch(mark)), digest)


def read_reviews(bank: BankFolder) -> tuple[Review, ...]:
    """Every verdict, as the file has them; none where there is no file.

    Raises InputError with every fault, each with its line.
    """
    path = bank.path / REVIEWS
    return _parse(read_text(path, _KIND), path, bank) if path.exists() else ()


def add_reviews(bank: BankFolder, reviews: Sequence[Review]) -> Path:
    """Adds rows to the file, of which all else stays as it is, and gives its path.

    Raises InputError, before anything is written, where the file cannot be read.
    """
    path = bank.path / REVIEWS
    with held(bank.path):
        _add(path, reviews, bank)
    return path


def _add(path: Path, reviews: Sequence[Review], bank: BankFolder) -> None:
    read_reviews(bank)
    before = read_bytes(path, _KIND) if path.exists() else b""
    text = before.decode("utf-8-sig")
    end = "\r\n" if "\r\n" in text else "\n"
    added = "" if text.endswith("\n") or not text.strip() else end
    if not text.strip():
        before, text = b"", ",".join(COLUMNS)
        added = text + end
    separator = _separator(text)
    _, heads = next(_rows(text, separator, Faults(str(path))))
    cells = [[_cells(each).get(_heading(head), "") for head in heads] for each in reviews]
    added += "".join(csv_lines(cells, separator)).replace("\n", end)
    _parse(text * bool(before) + added, path, bank)  # what could not be read again is not written
    write_beside(path, before + added.encode())


def _cells(review: Review) -> dict[str, object]:
    return {name: getattr(review, name) for name in COLUMNS}


def _parse(text: str, path: Path, bank: BankFolder) -> tuple[Review, ...]:
    require_merged(text, str(path))
    faults = Faults(str(path))
    rows = list(_rows(text, _separator(text), faults))
    faults.settle()
    if not rows:
        return ()
    (line, heads), *told = rows
    places = {_heading(head): place for place, head in enumerate(heads)}
    for name in COLUMNS:
        if name not in places:
            mend = "put the headings back into the first line: " + ",".join(COLUMNS)
            faults.add(f"line {line}", ", ".join(heads), f'a heading "{name}"', mend)
    faults.settle()
    found = [_review(_Row(number, cells, places, faults)) for number, cells in told]
    _require_known(zip(found, (number for number, _ in told), strict=True), bank, faults)
    faults.settle()
    return tuple(found)


def _rows(text: str, separator: str, faults: Faults) -> Iterator[tuple[int, list[str]]]:
    rows = read_rows(text, separator, faults)
    return ((number, cells) for number, cells in rows if any(map(str.strip, cells)))


def _separator(text: str) -> str:
    first = text.lstrip().partition("\n")[0]
    return max(_SEPARATORS, key=first.count)


def _heading(cell: str) -> str:
    return cell.strip().casefold()


@dataclass(frozen=True, slots=True)
class _Row:
    """A row while it is read; places: of the columns, by their headings."""

    number: int
    cells: Sequence[str]
    places: Mapping[str, int]
    faults: Faults

    def cell(self, column: str) -> str:
        place = self.places[column]
        return self.cells[place].strip() if place < len(self.cells) else ""

    def fault(self, column: str, expected: str, mend: str = "") -> None:
        found = self.cell(column) or None
        self.faults.add(f"line {self.number}, {column}", found, expected, mend)


def _review(row: _Row) -> Review:
    """What a row says; harmless stand-ins after faults, so that all of them are noted."""
    revision = _REVISION.fullmatch(row.cell("revision"))
    if not revision:
        row.fault("revision", "a revision, such as 2")
    if not _TEXT.fullmatch(row.cell("text")):
        mend = "take the row back as it was written, or have the template reviewed again"
        row.fault("text", "12 to 64 digits of the text's digest, from 0 to f", mend)
    if not is_seen(row.cell("person")):
        row.fault("person", "a name")
    day, verdict = _day(row), row.cell("verdict").casefold()
    if verdict not in set(Verdict):
        row.fault("verdict", one_of(Verdict), nearest(verdict, Verdict))
    return Review(
        row.cell("template"),
        int(revision[1]) if revision else 0,
        row.cell("text"),
        " ".join(row.cell("person").split()),
        day,
        Verdict(verdict) if verdict in set(Verdict) else Verdict.PROPOSED,
        row.cell("note"),
    )


def _day(row: _Row) -> date:
    typed = row.cell("date")
    try:
        if re.fullmatch(r"\d{4}-\d\d-\d\d", typed, re.ASCII):
            return date.fromisoformat(typed)
    except ValueError:
        pass
    row.fault("date", "a date such as 2027-08-15", "a spreadsheet may have rewritten it")
    return date.min


def _require_known(found: Iterable[tuple[Review, int]], bank: BankFolder, faults: Faults) -> None:
    """Notes rows of what is not there, unless that was withdrawn before it was taken away."""
    rows = list(found)
    withdrawn = {each.template for each, _ in rows if each.verdict is Verdict.WITHDRAWN}
    for review, number in rows:
        own = bank.revisions.get(review.template)
        if own is None and review.template not in withdrawn:
            expected = "the id of a template in the bank"
            mend = nearest(review.template, bank.revisions) or "put its folder back"
            faults.add(f"line {number}, template", review.template or None, expected, mend)
        elif own is not None and review.revision and review.revision not in own:
            expected = one_of((str(each) for each in own), f"{review.template}'s revisions ")
            mend = f"put r{review.revision}.toml back, or correct the row"
            faults.add(f"line {number}, revision", review.revision, expected, mend)
