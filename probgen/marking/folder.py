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
from probgen.marking.asked import asked_of
from probgen.marking.changed import read_changed
from probgen.marking.form import columns
from probgen.marking.judged import judged
from probgen.marking.marks import HEADINGS, NUMBERS, Marked, Row, rows, summary, to_look_at
from probgen.marking.points import Policy
from probgen.marking.stated import Stated, stated
from probgen.problem.problem import Problem, Worked, work

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
    typed = read_answers(answers, record, columns(problems), remarks)
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
    columns = []
    for number, (assigned, problem) in enumerate(
        zip(record.set.problems, problems, strict=True), start=1
    ):
        draws = [record.held[row.paper.owner, False].draws[number - 1] for row in typed]
        worked = work(problem, draws)
        told = [_told(problem, own, row, number) for own, row in zip(worked, typed, strict=True)]
        found = judged(problem, worked, told, assigned.points, policy)
        columns.append([(problem, own, each) for own, each in zip(worked, found, strict=True)])
    return tuple(
        Marked(row.paper, own) for row, own in zip(typed, zip(*columns, strict=True), strict=True)
    )


def _told(problem: Problem, own: Worked, row: Typed, number: int) -> Mapping[str, Stated]:
    return {
        each.id: stated(each.blank, row.cells.get((number, each.id), {}))
        for each in asked_of(problem, own)
    }


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
