"""A class marked into a folder: the shell about the marking, which reads and writes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from probgen.build.tables import write_csv, write_workbook
from probgen.course.frozen import frozen_problems
from probgen.course.record import Record
from probgen.course.record_file import read_record
from probgen.input.file import write_beside
from probgen.marking.answers_file import Typed, read_answers
from probgen.marking.changed import read_changed
from probgen.marking.form import Place, columns
from probgen.marking.judged import judged
from probgen.marking.marks import (
    HEADINGS,
    NUMBERS,
    Answered,
    Marked,
    Row,
    rows,
    summary,
    to_look_at,
)
from probgen.marking.policy import Policy
from probgen.problem.problem import Problem, work

ANSWERS: Final = "answer-marks"
LOOK_AT: Final = "look-at"
MARKS: Final = "marks"


@dataclass(frozen=True, slots=True)
class Done:
    """What a marking has made.

    look_at: answers for a person; changed: marks changed by hand that count; remarks: on the
    reading of the answers.
    """

    folder: Path
    papers: int
    look_at: int
    changed: int
    rows: tuple[Row, ...]
    remarks: tuple[str, ...]


def mark_class(path: Path, answers: Path, out: Path, policy: Policy) -> Done:
    """Marks a table of answers by a record; what was changed by hand in `out` stays.

    Raises InputError with every fault of the answers or of the tables in `out`, before anything is
    written.
    """
    record, remarks = read_record(path), list[str]()
    problems = frozen_problems(record.issue, record.current, str(path))
    typed = read_answers(answers, record, columns(record, problems), remarks)
    changed = read_changed([out / f"{name}.csv" for name in (ANSWERS, LOOK_AT)])
    marked = mark(record, problems, typed, policy)
    found = tuple(rows(marked, changed))
    look_at = tuple(to_look_at(found, marked))
    _write(out, ANSWERS, HEADINGS, found, NUMBERS)
    _write(out, LOOK_AT, HEADINGS, look_at, NUMBERS)
    heads, table = summary(found, [each.points for each in record.set.problems])
    _write(out, MARKS, heads, table, heads[3:])
    by_hand = sum(bool(row.changed) for row in found)
    return Done(out, len(typed), len(look_at), by_hand, found, tuple(remarks))


def mark(
    record: Record, problems: Sequence[Problem], typed: Sequence[Typed], policy: Policy
) -> tuple[Marked, ...]:
    """Every paper judged: a function of record, answers and policy alone."""
    found: dict[tuple[str, int], Answered] = {}
    for place, (assigned, problem) in enumerate(zip(record.set.problems, problems, strict=True)):
        having = [row for row in typed if place in record.set.places_in(row.paper.section)]
        draws = [record.held[row.paper.owner, False].draws[place] for row in having]
        worked = work(problem, draws)
        told = [_told(row, place + 1) for row in having]
        own = judged(problem, worked, told, assigned.points, policy, assigned.shares)
        for row, each, answers in zip(having, worked, own, strict=True):
            found[row.paper.id, place] = Answered(place + 1, problem, each, answers)
    return tuple(
        Marked(row.paper, tuple(
            found[row.paper.id, place] for place in record.set.places_in(row.paper.section)
        ))
        for row in typed
    )  # fmt: skip


def _told(row: Typed, number: int) -> dict[str, Mapping[Place, str]]:
    """What was typed for one problem, by answer."""
    return {answer: cells for (problem, answer), cells in row.cells.items() if problem == number}


def _write(
    out: Path,
    name: str,
    heads: Sequence[str],
    table: Sequence[Sequence[object]],
    numbers: Sequence[str],
) -> None:
    """A table as CSV and as a workbook, each whole or not at all."""
    with TemporaryDirectory(prefix="probgen-") as folder:
        for file in _written(Path(folder) / name, heads, table, numbers):
            write_beside(out / file.name, file.read_bytes())


def _written(
    path: Path, heads: Sequence[str], table: Sequence[Sequence[object]], numbers: Sequence[str]
) -> Iterator[Path]:
    text, book = path.with_suffix(".csv"), path.with_suffix(".xlsx")
    write_csv(text, heads, table)
    write_workbook(book, heads, table, numbers)
    yield from (text, book)
