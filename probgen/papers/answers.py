"""The table of all answers: a row for each student and quantity asked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

from probgen.course.version import Version
from probgen.problem.problem import Worked


class Row(NamedTuple):
    """One quantity asked of one version; value has full precision, in `unit`.

    name, id: empty in an exam; version: its letter there, else empty; section: as printed.
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
    section: str = ""


HEADINGS: Final = Row._fields
NUMBERS: Final = ("problem", "value", "angle_from_x")
"""The columns that hold numbers."""


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
                    version.student.section,
                )
