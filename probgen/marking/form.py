"""The answer form of a record: a row a paper, columns for everything that is asked of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final, NamedTuple

from probgen.course.record import Record
from probgen.course.section import sections_of
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

    problem: its place in the set, from 1; answer: the id of what is asked.
    number: of the problem on papers; section: whose papers those are, "" for everybody's.
    """

    problem: int
    answer: str
    place: Place
    number: int
    section: str = ""

    @property
    def heading(self) -> str:
        """What stands above it: "2 R.direction side", of one section's papers "B 2 T"."""
        before = f"{self.section} " if self.section else ""
        behind = "" if self.place in (Place.NUMBER, Place.CHOICE) else f" {self.place}"
        return f"{before}{self.number} {self.answer}{behind}"


class Paper(NamedTuple):
    """A row of the form: one paper of one student.

    owner: of the edition: the student's id, or an exam's letter.
    section: whose problems are on it.
    """

    code: str
    id: str
    name: str
    owner: str
    section: str = ""


def columns(record: Record, problems: Sequence[Problem]) -> tuple[Column, ...]:
    """A column for each number, unit and side that the problems of a set ask for."""
    return tuple(
        Column(at, target.id, place, number, section)
        for at, problem in enumerate(problems, start=1)
        for section, number in _numbers(record, at)
        for target in targets(problem.plan, problem.template.labels)
        if target.asked
        for place in _places(problem, target)
    )


def _numbers(record: Record, at: int) -> list[tuple[str, int]]:
    """What a problem's number is on papers: on all of them, or on those of each section."""
    sections = sections_of(record)
    found = [
        (section, record.set.places_in(section).index(at - 1) + 1)
        for section in sections
        if at - 1 in record.set.places_in(section)
    ]
    alike = len(found) == len(sections) and len({number for _, number in found}) == 1
    return [("", found[0][1])] if alike else found


def _places(problem: Problem, target: Target) -> Iterator[Place]:
    match target.kind:
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
        section = student.section if record.is_exam else edition.section
        rows.append(Paper(edition.code, student.id, student.name, owner, section))
    return tuple(rows)


def form_rows(record: Record, asked: Sequence[Column]) -> Iterator[tuple[str, ...]]:
    """The rows of the empty form."""
    for paper in papers(record):
        yield (paper.code, paper.id, paper.name, *("" for _ in asked))
