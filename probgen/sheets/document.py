"""A sheet and a key, free of any page language.

Texts are plain Unicode as somebody typed them.  Only figures are LaTeX already: picture strings
ready to be set (see `probgen.figures`).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from probgen.wording.block import Block, Inline, Picture, Section

Paper = Literal["letter", "a4"]


@dataclass(frozen=True, slots=True)
class Header:
    """What stands at the top of a student's first page.

    code: the version code that traces a paper back to its student and values.
    due: as it is to be printed.  Empty texts are left out of the page.
    """

    course: str
    title: str
    student_name: str
    student_id: str
    code: str
    section: str = ""
    due: str = ""
    institution: str = ""


@dataclass(frozen=True, slots=True)
class Part:
    """One thing asked of the student, with a line for the answer.

    label: "a", "b", ..., empty when a problem asks for one thing only.
    unit: printed behind the answer line, plain Unicode ("N·m"), empty for none.
    """

    label: str
    asked: tuple[Inline, ...]
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Problem:
    """One problem as the student gets it.

    figure: a LaTeX picture, empty for none.
    space: least height of the room left for working, in mm; what a page has over is shared out.
    """

    number: int
    title: str
    statement: tuple[Inline, ...]
    parts: tuple[Part, ...]
    figure: str
    points: int
    space: float = 35.0


@dataclass(frozen=True, slots=True)
class Sheet:
    """One student's problems.

    preface: said once for all problems, such as the value of g.
    cautions: small print at the end of the sheet.
    """

    header: Header
    preface: tuple[Inline, ...]
    cautions: tuple[str, ...]
    problems: tuple[Problem, ...]

    @property
    def points(self) -> int:
        return sum(problem.points for problem in self.problems)


@dataclass(frozen=True, slots=True)
class Answer:
    """One row of a solution's answers: what was asked, and the result as printed.

    full_marks: the interval that earns them ("187 N to 194 N"), empty when not said.
    """

    label: tuple[Inline, ...]
    printed: tuple[Inline, ...]
    full_marks: tuple[Inline, ...] = ()


@dataclass(frozen=True, slots=True)
class Mark:
    """One row of a marking scheme: what some of a problem's points are given for."""

    words: tuple[Inline, ...]
    points: int


@dataclass(frozen=True, slots=True)
class Solution:
    """One problem worked.

    figure: a LaTeX picture of the situation, empty for none.
    pictures: LaTeX pictures for the `Picture` blocks of the sections, by `picture_name`.
    scheme: the marks one by one, adding up to the points; slips: what goes wrong here.  Both are
    left out of the page when empty.  Raises ValueError when the scheme does not add up.
    """

    number: int
    title: str
    statement: tuple[Inline, ...]
    figure: str
    sections: tuple[Section, ...]
    answers: tuple[Answer, ...]
    points: int
    pictures: Mapping[str, str] = field(default_factory=dict)
    scheme: tuple[Mark, ...] = ()
    slips: tuple[Block, ...] = ()

    def __post_init__(self) -> None:
        given = sum(mark.points for mark in self.scheme)
        if self.scheme and given != self.points:
            raise ValueError(f"problem {self.number}: {given} marks for {self.points} points")


@dataclass(frozen=True, slots=True)
class Key:
    """The worked solutions of one student's sheet, for the one who marks it."""

    header: Header
    solutions: tuple[Solution, ...]
    preface: tuple[Inline, ...] = ()

    @property
    def points(self) -> int:
        return sum(solution.points for solution in self.solutions)


def picture_name(picture: Picture) -> str:
    """The name of a picture among `Solution.pictures`: "situation", "free-body shelf"."""
    return f"{picture.kind} {picture.body}".strip()
