"""What was set from a department's bank: when, in which course, to how many; never to whom.

CSV files in the bank's folder uses/, one for each course, a row for each template of an
assignment.  What marking found out is kept in the same row.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Final

from probgen.bank.bank_lock import held
from probgen.input.csv import csv_lines, read_rows
from probgen.input.fault import Faults, one_of
from probgen.input.file import read_text, write_beside
from probgen.input.merge import require_merged

USES: Final = "uses"
KINDS: Final = ("homework", "exam")
HEADINGS: Final = (
    "date", "course", "assignment", "kind", "template", "revision", "text", "students",
    "papers marked", "facility", "slips",
)  # fmt: skip
UNDATED: Final = date.min
"""The day of a use whose day is not known yet."""
_A_TERM: Final = 240
"""Days within which the same assignment of a course is the same use of a template."""
_MOST_STUDENTS: Final = 1_000_000
_WHOLE: Final = re.compile(r"\d{1,7}")
_SHARE: Final = re.compile(r"0(\.\d{1,4})?|1(\.0{1,4})?")
_SLIP: Final = re.compile(r"([a-z0-9_+ -]{1,200}): (\d{1,7})")


@dataclass(frozen=True, slots=True)
class Use:
    """A template of an assignment.

    day: when it was built first; text: SHA-256 of the template's file; students: who got it.
    marked: papers; facility: points earned of all that could be, 0 to 1, None before marking.
    slips: on how many papers each was made, the commonest first.
    """

    day: date
    course: str
    assignment: str
    kind: str
    template: str
    revision: int
    text: str
    students: int
    marked: int = 0
    facility: float | None = None
    slips: tuple[tuple[str, int], ...] = ()

    @property
    def of(self) -> tuple[str, ...]:
        """What it is the use of: no other row of the bank says the same."""
        return self.course, self.assignment, self.kind, self.template, str(self.revision)


def read_uses(bank: Path) -> tuple[Use, ...]:
    """All uses of a bank's templates, by day.  Raises InputError with every fault of its files."""
    faults = Faults("")
    found: list[Use] = []
    for path in sorted((bank / USES).glob("*.csv")):
        own = Faults(str(path))
        found += read_use_file(path, own)
        faults.found += own.found
    faults.settle()
    return tuple(sorted(found, key=lambda use: (use.day, use.of)))


def read_use_file(path: Path, faults: Faults, undated: date | None = None) -> Iterator[Use]:
    """The uses in one file; what is wrong with a row is noted.

    undated: the day of rows without one, as marking writes them; None: each must have one.
    """
    text = read_text(path, "table of uses")
    require_merged(text, str(path))
    rows = read_rows(text, ",", faults)
    head = tuple(next(rows, (1, []))[1])
    if head != HEADINGS:
        faults.add("line 1", ", ".join(head), ", ".join(HEADINGS), "put the headings back")
        return
    for line, row in rows:
        cells = [undated.isoformat(), *row[1:]] if undated and row[:1] == [""] else row
        if use := _use(cells, f"line {line}", faults):
            yield use


def note_uses(bank: Path, uses: Iterable[Use]) -> None:
    """Adds uses to a bank's files; where one is there, its numbers are renewed and its day stays.

    Raises InputError where a file that is to be added to has a fault.
    """
    files: dict[Path, list[Use]] = {}
    for use in uses:
        files.setdefault(bank / USES / f"{_plain(use.course)}.csv", []).append(use)
    with held(bank):
        for path, own in files.items():
            _note(path, own)


def _note(path: Path, uses: Iterable[Use]) -> None:
    faults = Faults(str(path))
    known = list(read_use_file(path, faults)) if path.exists() else []
    faults.settle()
    for use in uses:
        same = next((each for each in known if _is_same(each, use)), None)
        known = [each for each in known if each is not same]
        known.append(_renewed(same, use))
    write_uses(path, known)


def write_uses(path: Path, uses: Iterable[Use]) -> None:
    """A file of uses, by day."""
    rows = map(_row, sorted(uses, key=lambda use: (use.day, use.of)))
    path.parent.mkdir(parents=True, exist_ok=True)
    write_beside(path, "".join(csv_lines((HEADINGS, *rows))).encode("utf-8", "surrogatepass"))


def by_template(uses: Iterable[Use]) -> Mapping[str, Sequence[Use]]:
    """The uses of each template, in their order."""
    found: dict[str, list[Use]] = {}
    for use in uses:
        found.setdefault(use.template, []).append(use)
    return found


def facility_of(uses: Iterable[Use]) -> float | None:
    """Of several uses together, by the papers marked; None where none was."""
    marked = [(use.facility, use.marked) for use in uses if use.facility is not None and use.marked]
    papers = sum(count for _, count in marked)
    return sum(share * count for share, count in marked) / papers if papers else None


def _is_same(before: Use, use: Use) -> bool:
    return before.of == use.of and abs(use.day - before.day).days < _A_TERM


def _renewed(before: Use | None, use: Use) -> Use:
    if before is None:
        return use
    if use.facility is None:
        use = replace(use, marked=before.marked, facility=before.facility, slips=before.slips)
    return replace(use, day=before.day)


def _row(use: Use) -> tuple[object, ...]:
    facility = "" if use.facility is None else f"{use.facility:.3f}"
    slips = "; ".join(f"{slip}: {count}" for slip, count in use.slips)
    day = "" if use.day == UNDATED else use.day.isoformat()
    return (
        day, use.course, use.assignment, use.kind, use.template, use.revision,
        use.text, use.students, use.marked or "", facility, slips,
    )  # fmt: skip


def _use(row: Sequence[str], place: str, faults: Faults) -> Use | None:
    if len(row) != len(HEADINGS):
        faults.add(place, f"{len(row)} cells", f"{len(HEADINGS)}, one for each heading")
        return None
    said = {name: cell.strip() for name, cell in zip(HEADINGS, row, strict=True)}
    before = len(faults.found)
    day = _day(said["date"], place, faults)
    if said["kind"] not in KINDS:
        faults.add(f"{place}, kind", said["kind"], one_of(KINDS))
    numbers = {
        name: _whole(said[name], f"{place}, {name}", faults)
        for name in ("revision", "students", "papers marked")
    }
    if said["facility"] and not _SHARE.fullmatch(said["facility"]):
        faults.add(f"{place}, facility", said["facility"], "a share from 0 to 1, or nothing")
    slips = [_SLIP.fullmatch(each) for each in said["slips"].split("; ") if each]
    if not all(slips):
        faults.add(f"{place}, slips", said["slips"], 'slips with their papers: "sign: 12"')
    if len(faults.found) > before:
        return None
    return Use(
        day, said["course"], said["assignment"], said["kind"], said["template"],
        numbers["revision"], said["text"], numbers["students"], numbers["papers marked"],
        float(said["facility"]) if said["facility"] else None,
        tuple((found[1], int(found[2])) for found in slips if found),
    )  # fmt: skip


def _day(said: str, place: str, faults: Faults) -> date:
    try:
        return date.fromisoformat(said)
    except ValueError:
        faults.add(f"{place}, date", said, "a date such as 2027-08-15")
        return date.min


def _whole(said: str, place: str, faults: Faults) -> int:
    if said and not _WHOLE.fullmatch(said):
        faults.add(place, said, f"a whole number up to {_MOST_STUDENTS}")
        return 0
    return int(said or 0)


def _plain(course: str) -> str:
    """A course's name as part of a file's: the same course, the same file."""
    kept = re.sub(r"[^a-z0-9]+", "-", course.casefold()).strip("-")
    return kept[:60] or "course"
