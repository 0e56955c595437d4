"""A class through its term without TeX: lamps that hang from two cords, in an assignment of one.

A lamp of mass m hangs from two upright cords, each of which carries half: T = m g/2.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Any, Final

from probgen.bank.reading import read_template
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.issue import Erratum, FrozenTemplate, Issue
from probgen.course.record import Record
from probgen.course.roster import Student
from probgen.course.succession import Changes, succeed
from probgen.course.wanted import Wanted
from probgen.problem.problem import Problem, prepare
from probgen.working.convention import Convention
from tests.records import SECRET, SEED

LAMP: Final = """
id = "lamp"
revision = {revision}
title = "Lamp"
family = "levers"
level = 1
goals = ["force balance"]
statement = "{text} {{{{ m }}}} hangs from its middle at {{{{ L }}}}."
[given]
m = {{ name = "lamp mass", from = {low}, to = {high}, step = 0.5, unit = "kg" }}
L = {{ name = "length", from = 0.40, to = 0.80, step = 0.10, unit = "m" }}
[points]
A = [0, 0]
G = ["L/2", 0]
B = ["L", 0]
[body.rail]
along = ["A", "B"]
[[weight]]
at = "G"
mass = "m"
symbol = "W"
[[cable]]
at = "A"
direction = 90
symbol = "T"
[[cable]]
at = "B"
direction = 90
symbol = "S"
[[find]]
quantity = "T"
[[require]]
that = "m > {least} kg"
because = "a lamp"
"""


def lamp(
    text: str = "A lamp of",
    revision: int = 1,
    low: str = "2.0",
    high: str = "6.0",
    least: str = "0.1",
) -> str:
    """The template's text; with the usual ranges it has 45 sets of numbers."""
    return LAMP.format(text=text, revision=revision, low=low, high=high, least=least)


@cache
def problem_of(source: str, convention: Convention) -> Problem:
    return prepare(read_template(source, "lamp.toml"), convention)


def wanted(
    students: Sequence[Student],
    source: str = "",
    exam: Exam | None = None,
    **changes: Any,
) -> Wanted:
    """What an instructor wants of a class; changes: fields of the set."""
    given = {"title": "Week 1", **changes}
    chosen = ProblemSet("Mechanics", given.pop("title"), "class.csv", (Assigned("lamp", 8),),
                        exam=exam, **given)  # fmt: skip
    problem = problem_of(source or lamp(), chosen.convention)
    template = problem.template
    frozen = FrozenTemplate(template.id, template.revision, template.source)
    issue = Issue(chosen, (frozen,))
    return Wanted(issue, tuple(students), (problem,), "week-1.toml", "class.csv")


def new_record(seed: str = SEED, secret: str = SECRET) -> Record:
    """What a class begins with."""
    return Record(seed, secret, (), (), ())


def begun(students: Sequence[Student], **changes: Any) -> Record:
    """A class printed for the first time."""
    return succeed(new_record(), wanted(students, **changes))[0]


def on(
    record: Record, students: Sequence[Student], correct: str = "", **changes: Any
) -> tuple[Record, Changes]:
    """The record after the next build, on 12 March."""
    erratum = Erratum("2027-03-12", correct) if correct else None
    return succeed(record, wanted(students, **changes), erratum)


def class_of(count: int) -> list[Student]:
    return [Student(f"Student {n}", str(n)) for n in range(1, count + 1)]


def masses(record: Record) -> dict[str, str]:
    """The mass on each paper of now, by its owner."""
    return {edition.owner: str(edition.draws[0].values["m"].value) for edition in record.current}
