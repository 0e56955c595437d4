"""A sheet and a key, free of any page language.

Texts are plain Unicode as somebody typed them, formulas are expressions, and figures are scenes
(`probgen.figures.paper.scene`); a writer (`probgen.sheets.writer`) makes pages of them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

from probgen.figures.paper.scene import Scene
from probgen.quantities.formula import Formula
from probgen.wording.block import Block, Inline, Picture, Section

Paper = Literal["letter", "a4"]
Room = Literal["free", "lines", "grid", "none"]
"""What the room for working is: empty, ruled, squared, or not there."""


@dataclass(frozen=True, slots=True)
class Header:
    """What stands at the top of a student's first page.

    code: the version code that traces a paper back to its student and values.
    due: as it is to be printed.  Empty texts are left out of the page, but lines to write on
    stand for an empty name and id.
    version: the letter of an exam's version, printed large; "" where each student has an own one.
    errata: lines on what was corrected in this paper.
    draft: whether it is not to be handed out, which is printed large.
    drawn: of a problem on its own, which draw it is; in the foot, in place of a code.
    """

    course: str
    title: str
    student_name: str
    student_id: str
    code: str
    section: str = ""
    due: str = ""
    institution: str = ""
    version: str = ""
    errata: tuple[str, ...] = ()
    draft: bool = False
    drawn: str = ""


@dataclass(frozen=True, slots=True)
class Blank:
    """A place for one answer of several.

    label: before it ("R"); unit: behind it, plain Unicode; choices: words behind that, some of them
    to be circled, in pieces that are not torn apart.  written: whether there is a line to write on.
    """

    label: tuple[Inline, ...]
    unit: str = ""
    choices: tuple[tuple[Inline, ...], ...] = ()
    written: bool = True


@dataclass(frozen=True, slots=True)
class Part:
    """One thing asked of the student, with a line for the answer.

    label: "a", "b", ..., empty when a problem asks for one thing only.
    unit: printed behind the answer line, plain Unicode ("N·m"), empty for none.
    blanks: in place of that line, where one thing has several answers.
    points: of this part, 0 where the problem's are not told apart.
    """

    label: str
    asked: tuple[Inline, ...]
    unit: str = ""
    blanks: tuple[Blank, ...] = ()
    points: int = 0


@dataclass(frozen=True, slots=True)
class Problem:
    """One problem as the student gets it.

    title: "" for a problem that has the page's.
    figure: the situation, None for none.
    space: least height of the room left for working, in mm; what a page has over is shared out.
    room: what that room is; with "none", `space` says nothing.
    """

    number: int
    title: str
    statement: tuple[Inline, ...]
    parts: tuple[Part, ...]
    figure: Scene | None
    points: int
    space: float = 35.0
    room: Room = "free"


@dataclass(frozen=True, slots=True)
class Cover:
    """The first page of a print run or of an exam.

    facts: a label and a text each ("Students", "48").  notes: what to know or to do, one by one.
    scores: a label and points each, for a table to write marks into; none where empty.
    """

    header: Header
    facts: tuple[tuple[str, str], ...] = ()
    notes: tuple[str, ...] = ()
    scores: tuple[tuple[str, int], ...] = ()

    @property
    def points(self) -> int:
        return sum(points for _, points in self.scores)


@dataclass(frozen=True, slots=True)
class FormulaRow:
    """Formulas side by side, and what is said of them."""

    words: tuple[Inline, ...]
    formulas: tuple[Formula, ...]


@dataclass(frozen=True, slots=True)
class FormulaGroup:
    """Formulas about one thing, under its heading."""

    title: tuple[Inline, ...]
    rows: tuple[FormulaRow, ...]


@dataclass(frozen=True, slots=True)
class Formulas:
    """A page of formulas."""

    groups: tuple[FormulaGroup, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """One student's problems.

    preface: said once for all problems, such as the value of g.
    cautions: small print at the end of the sheet.
    formulas: a page of them that follows.
    cover: a page of its own before the problems, in place of their head.
    origins: where each problem comes from, small print as well.
    """

    header: Header
    preface: tuple[Inline, ...]
    cautions: tuple[str, ...]
    problems: tuple[Problem, ...]
    formulas: Formulas | None = None
    cover: Cover | None = None
    origins: tuple[str, ...] = ()

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
class Given:
    """One row of what is given: its letter, what it is ("beam length"), and its value."""

    symbol: tuple[Inline, ...]
    name: tuple[Inline, ...]
    value: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Mark:
    """One row of a marking scheme: what some of a problem's points are given for."""

    words: tuple[Inline, ...]
    points: int


@dataclass(frozen=True, slots=True)
class Solution:
    """One problem worked.

    title: "" for a problem that has the page's.
    figure: the situation, None for none.
    given, asked: what the working starts from and what it is for, each left out when empty.
    pictures: the figures for the `Picture` blocks of the sections, by `picture_name`.
    other_routes: what is said of marks for another way and after a wrong result, below them.
    scheme: the marks one by one, adding up to the points; slips: what goes wrong here.  Both are
    left out of the page when empty.  Raises ValueError when the scheme does not add up.
    """

    number: int
    title: str
    statement: tuple[Inline, ...]
    figure: Scene | None
    sections: tuple[Section, ...]
    answers: tuple[Answer, ...]
    points: int
    pictures: Mapping[str, Scene] = field(default_factory=dict)
    scheme: tuple[Mark, ...] = ()
    other_routes: tuple[Inline, ...] = ()
    slips: tuple[Block, ...] = ()
    given: tuple[Given, ...] = ()
    asked: tuple[tuple[Inline, ...], ...] = ()

    def __post_init__(self) -> None:
        given = sum(mark.points for mark in self.scheme)
        if self.scheme and given != self.points:
            raise ValueError(f"problem {self.number}: {given} marks for {self.points} points")


@dataclass(frozen=True, slots=True)
class Key:
    """The worked solutions of one student's sheet, for the one who marks it.

    release: the line on what students get, who see no marks, intervals and slips; "" for a key.
    """

    header: Header
    solutions: tuple[Solution, ...]
    preface: tuple[Inline, ...] = ()
    release: str = ""

    @property
    def points(self) -> int:
        return sum(solution.points for solution in self.solutions)


@dataclass(frozen=True, slots=True)
class AnswerRow:
    """The answers of one version or student; labels: such as name, id, code."""

    labels: tuple[str, ...]
    cells: tuple[tuple[Inline, ...], ...]


@dataclass(frozen=True, slots=True)
class AnswerTable:
    """All answers at a glance: a row for each version or student, a column for each answer.

    labels: heads of the first columns ("Name", "Version").  problems: for each problem its title
    and the heads of its columns; none for a list of labels alone.  mark: what the table is
    ("Answers").
    Raises ValueError when a row is longer or shorter than the heads.
    """

    header: Header
    labels: tuple[str, ...]
    problems: tuple[tuple[str, tuple[tuple[Inline, ...], ...]], ...]
    rows: tuple[AnswerRow, ...]
    mark: str

    def __post_init__(self) -> None:
        width = sum(len(columns) for _, columns in self.problems)
        for place, row in enumerate(self.rows):
            if (len(row.labels), len(row.cells)) != (len(self.labels), width):
                raise ValueError(f"row {place}: {len(row.labels)} labels, {len(row.cells)} answers")


@dataclass(frozen=True, slots=True)
class MarkedAnswer:
    """One answer as it was marked; typed: by the student; right: as the key prints it.

    points: as they are printed, "" where a person has yet to decide; remarks: below it.
    """

    label: tuple[Inline, ...]
    typed: str
    right: tuple[Inline, ...]
    verdict: str
    points: str
    most: int
    remarks: tuple[tuple[Inline, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class MarkedProblem:
    """The answers to one problem; points: their sum, as it is printed, "" while some are open."""

    number: int
    title: str
    answers: tuple[MarkedAnswer, ...]
    points: str
    most: int


FEEDBACK: Final = "feedback"
"""What pages of marks are called together: their folder, and their pile."""


@dataclass(frozen=True, slots=True)
class Feedback:
    """What one student gets back: verdicts and points.

    points: their sum, as it is printed, "" while a person has yet to decide on some.
    """

    header: Header
    problems: tuple[MarkedProblem, ...]
    points: str
    most: int


def picture_name(picture: Picture) -> str:
    """The name of a picture among `Solution.pictures`: "situation", "free-body shelf"."""
    return f"{picture.kind} {picture.body}".strip()
