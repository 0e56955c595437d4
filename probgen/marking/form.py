"""The answer form of a record: a row a paper, columns for everything that is asked of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final, NamedTuple

from probgen.course.record import Record
from probgen.problem.problem import Problem
from probgen.working.result import ResultKind, Target, targets

OWN_HEADINGS: Final = ("code", "id", "name")
"""The columns that say whose a row is; what is asked follows."""


class Place(StrEnum):
    """What of an answer a column is for."""

    NUMBER = "number"
    UNIT = "unit"
    SIDE = "side"
    CHOICE = "choice"


@dataclass(frozen=True, slots=True)
class Column:
    """One column of answers.

    problem: its number on the sheet, from 1; answer: the id of what is asked.
    """

    problem: int
    answer: str
    place: Place

    @property
    def heading(self) -> str:
        """What stands above it: "2 R.direction side"."""
        behind = "" if self.place in (Place.NUMBER, Place.CHOICE) else f" {self.place}"
        return f"{self.problem} {self.answer}{behind}"


class Paper(NamedTuple):
    """A row of the form: one paper of one student.

    owner: of the edition: the student's id, or an exam's letter.
    """

    code: str
    id: str
    name: str
    owner: str


def columns(problems: Sequence[Problem]) -> tuple[Column, ...]:
    """A column for each number, unit and side that the problems of a set ask for."""
    return tuple(
        Column(number, target.id, place)
        for number, problem in enumerate(problems, start=1)
        for target in targets(problem.plan.system, problem.template.labels)
        if target.asked
        for place in _places(problem, target)
    )


def _places(problem: Problem, target: Target) -> Iterator[Place]:
    match target.kind:
        case ResultKind.LIMIT if len(problem.plan.branches) < 2:
            return  # no sheet asks which of one
        case ResultKind.LIMIT | ResultKind.VERDICT:
            yield Place.CHOICE
        case ResultKind.DIRECTION:
            yield Place.NUMBER
            if problem.convention.direction != "axis":
                yield Place.SIDE
        case ResultKind.MAGNITUDE:
            yield from (Place.NUMBER, Place.UNIT)
        case ResultKind.QUANTITY:
            yield Place.NUMBER
            if problem.plan.system.variables[target.id].unit.plain:
                yield Place.UNIT


def papers(record: Record) -> tuple[Paper, ...]:
    """Every student's paper, in the order of the class; of an exam that of their version."""
    letters = record.letter_of
    rows = []
    for student in record.students:
        owner = letters.get(student.id, student.id)
        edition = record.held[owner, False]
        rows.append(Paper(edition.code, student.id, student.name, owner))
    return tuple(rows)


def form_rows(record: Record, asked: Sequence[Column]) -> Iterator[tuple[str, ...]]:
    """The rows of the empty form."""
    for paper in papers(record):
        yield (paper.code, paper.id, paper.name, *("" for _ in asked))
