"""The table of all answers: a row for each student and quantity asked."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Final, NamedTuple

from probgen.course.version import Version
from probgen.input.csv import csv_lines
from probgen.problem.problem import Worked


class Row(NamedTuple):
    """One quantity asked of one version; value has full precision, in `unit`.

    name, id: empty in an exam; version: its letter there, else empty.
    """

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
    version: str


HEADINGS: Final = Row._fields


def answer_rows(version: Version, problems: Sequence[Worked]) -> Iterator[Row]:
    """The rows of one version, in the order of the sheet."""
    for number, worked in enumerate(problems, start=1):
        for answer in worked.answers:
            if answer.asked:
                turned = "" if answer.angle_from_x is None else repr(answer.angle_from_x)
                yield Row(
                    version.code,
                    version.student.name,
                    version.student.id,
                    number,
                    worked.draw.template_id,
                    answer.id,
                    repr(answer.value),
                    answer.unit,
                    answer.printed,
                    turned,
                    version.letter,
                )


def write_answers(path: Path, rows: Iterable[Row]) -> None:
    """The table as CSV; without the mark by which spreadsheets know UTF-8, for programs read it by
    the names of its columns."""
    with path.open("w", encoding="utf-8", newline="") as file:
        file.writelines(csv_lines([HEADINGS]))
        file.writelines(csv_lines(rows))
