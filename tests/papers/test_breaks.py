"""Where a page ends: a table of what is given is never parted."""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO

import pdfplumber

from probgen.bank.bank import default_bank
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.papers.page import Copy, key_of
from probgen.papers.typesetter import Kind, Typesetter
from probgen.problem.problem import draw_class, prepare, work
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention

IDS = ("head-over-phone", "crate-ramp-strap", "porch-roof-snow", "stepladder-tie")
STUDENTS = [f"S{number}" for number in range(1001, 1007)]


def copies() -> Iterator[Copy]:
    problems = tuple(prepare(default_bank().read(id), Convention()) for id in IDS)
    drawn = [draw_class(each, "breaks", STUDENTS).draws for each in problems]
    worked = [work(problem, draws) for problem, draws in zip(problems, drawn, strict=True)]
    problem_set = ProblemSet("M", "W", "", tuple(Assigned(id, 10) for id in IDS))
    for number, own in enumerate(zip(*worked, strict=True)):
        version = Version("CODE", str(number), Student("Ada", STUDENTS[number]))
        yield Copy(problem_set, version, problems, own)


def tops(pdf: bytes) -> list[str]:
    """The first line of each page."""
    with pdfplumber.open(BytesIO(pdf)) as opened:
        return [(page.extract_text() or "").split("\n")[0] for page in opened.pages]


def test_a_table_of_givens_stands_on_one_page() -> None:
    made = list(copies())
    typesetter = Typesetter("letter")
    printed = typesetter.print([typesetter.document(Kind.KEYS, each) for each in made]).printed
    solutions = [solution for each in made for solution in key_of(each).solutions]
    names = {plain_text(given.name) for solution in solutions for given in solution.given}
    lines = [line for each in printed for line in tops(each.pdf)]
    assert len(lines) > 3 * len(made)
    assert [line for line in lines if "=" in line and line.endswith(tuple(names))] == []
