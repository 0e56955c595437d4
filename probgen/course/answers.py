"""The table of all answers: a row for each student and quantity asked."""

from __future__ import annotations

import csv
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Final, NamedTuple

from probgen.course.problem import Worked
from probgen.course.roster import Student


class Row(NamedTuple):
    """One quantity asked of one student; value has full precision, in `unit`."""

    code: str
    name: str
    id: str
    problem: int
    template: str
    answer: str
    value: str
    unit: str
    printed: str
    angle_from_x: str


HEADINGS: Final = Row._fields


def answer_rows(student: Student, code: str, problems: Sequence[Worked]) -> Iterator[Row]:
    """The rows of one student, in the order of the sheet."""
    for number, worked in enumerate(problems, start=1):
        for answer in worked.answers:
            if answer.asked:
                turned = "" if answer.angle_from_x is None else repr(answer.angle_from_x)
                yield Row(
                    code,
                    student.name,
                    student.id,
                    number,
                    worked.draw.template_id,
                    answer.id,
                    repr(answer.value),
                    answer.unit,
                    answer.printed,
                    turned,
                )


def write_answers(path: Path, rows: Iterable[Row]) -> None:
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(HEADINGS)
        writer.writerows(rows)
