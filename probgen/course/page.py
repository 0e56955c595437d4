"""A student's worked problems as a sheet and as a key: what stands on their pages."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from string import ascii_lowercase
from typing import Final

from probgen.bank.template import Template
from probgen.course.problem import Problem, Worked, tell_steps
from probgen.course.roster import Student
from probgen.course.setfile import ProblemSet
from probgen.figures.freebody import free_body
from probgen.figures.pict import latex_picture
from probgen.figures.situation import situation
from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Relation
from probgen.quantities.unit import ANGLE, LENGTH, METRE_PER_SECOND_SQUARED, UNITS
from probgen.sheets import document
from probgen.statics.system import Role
from probgen.wording.answer import Answer
from probgen.wording.block import Inline, Math, Picture, Section, Text
from probgen.wording.convention import Convention
from probgen.wording.scheme import half_width, intervals, scheme
from probgen.wording.sentence import say
from probgen.wording.slip import Slip, likely, slips_section
from probgen.wording.statement import tell_find, tell_statement

Inlines = tuple[Inline, ...]

_CAUTIONS: Final = {
    "body": "Limbs are idealised as rigid rods with one muscle: not for clinical use.",
    "ladder": "The ladder is idealised: not for setting up a ladder; follow local codes and its "
    "maker's rules.",
    "lifting": "Loads and supports are idealised: not for planning a lift; local codes and "
    "licensed practice decide.",
    "rigging": "Cables and fixings are idealised: not for design or rigging; local codes and "
    "licensed practice decide.",
}


@dataclass(frozen=True, slots=True)
class Face:
    """What the sheet and the key have in common of one problem.

    figure: the situation as the sheet shows it, as LaTeX.
    """

    number: int
    points: int
    problem: Problem
    own: Worked
    statement: Inlines
    figure: str
    slips: tuple[Slip, ...]


@dataclass(frozen=True)
class Copy:
    """One student's copy of a set: problems and worked in the order of the set.

    slips: for each problem what goes wrong with this student's numbers, for the key.
    """

    problem_set: ProblemSet
    student: Student
    code: str
    problems: tuple[Problem, ...]
    worked: tuple[Worked, ...]
    slips: tuple[tuple[Slip, ...], ...] = ()

    @property
    def header(self) -> document.Header:
        return document.Header(
            course=self.problem_set.course,
            title=self.problem_set.title,
            student_name=self.student.name,
            student_id=self.student.id,
            code=self.code,
            section=self.student.section,
            due=self.problem_set.due,
        )

    @cached_property
    def faces(self) -> tuple[Face, ...]:
        """The problems one after the other, told and drawn once for both sheet and key."""
        slips = self.slips or ((),) * len(self.problems)
        rows = zip(self.problem_set.problems, self.problems, self.worked, slips, strict=True)
        return tuple(
            Face(
                number,
                assigned.points,
                problem,
                own,
                tell_statement(problem.template, own.draw),
                situation_picture(problem.template, own, solved=False),
                slips,
            )
            for number, (assigned, problem, own, slips) in enumerate(rows, start=1)
        )


def sheet_of(copy: Copy) -> document.Sheet:
    """What the student gets."""
    problems = tuple(
        document.Problem(
            number=face.number,
            title=face.problem.template.title,
            statement=face.statement,
            parts=tuple(_parts(face.own)),
            figure=face.figure,
            points=face.points,
            space=copy.problem_set.working * 10.0,
            room=copy.problem_set.room,
        )
        for face in copy.faces
    )
    cautions = _cautions(copy.problems) if copy.problem_set.caution else ()
    preface = gravity(copy.problem_set.convention)
    return document.Sheet(copy.header, preface, cautions, problems, copy.problem_set.formulas)


def key_of(copy: Copy) -> document.Key:
    """What the one who marks it gets."""
    solutions = tuple(solution_of(face) for face in copy.faces)
    return document.Key(copy.header, solutions, gravity(copy.problem_set.convention))


def solution_of(face: Face) -> document.Solution:
    """One problem worked, with its figures."""
    problem, own = face.problem, face.own
    sections = tell_steps(problem, own)
    figure = face.figure
    if _asks_for_sizes(problem.template):
        figure = situation_picture(problem.template, own, solved=True)
    return document.Solution(
        number=face.number,
        title=problem.template.title,
        statement=face.statement,
        figure=figure,
        sections=sections,
        answers=tuple(_answers(problem, own)),
        points=face.points,
        pictures=dict(_pictures(sections, problem, own, figure)),
        scheme=tuple(
            document.Mark(mark.words, mark.points)
            for mark in scheme(own.case, problem.convention, face.points)
        ),
        slips=slips_section(likely(face.slips)).blocks if face.slips else (),
    )


def _answers(problem: Problem, own: Worked) -> Iterator[document.Answer]:
    """Each answer with the interval that earns full marks."""
    told = {each.answer: each for each in intervals(own.case, problem.convention)}
    for answer in own.answers:
        full: Inlines = ()
        if answer.angle_from_x is not None:
            degrees = half_width(own.case, problem.convention, answer.id)
            full = (Text(f"± {degrees:.2g}°"),)
        elif answer.id in told:
            full = say("{low} to {high}", low=told[answer.id].low, high=told[answer.id].high)
        yield document.Answer(_label(answer), (Text(answer.printed),), full)


def gravity(convention: Convention) -> Inlines:
    """The value of g, said once for a sheet."""
    g = Number(Decimal(convention.gravity), METRE_PER_SECOND_SQUARED)
    return (Text("Take "), Math((Name("g", "g"), Relation("="), g)), Text(" throughout."))


def situation_picture(template: Template, own: Worked, solved: bool) -> str:
    """The figure of a problem's situation as LaTeX, drawn to scale.

    solved: with the lengths and angles that were to be found in their true size; a sheet's figure
    is drawn from the data alone, so that none of them can be measured on it.
    """
    case = own.case
    known = {id: case.values[id] for id in (*own.draw.values, "g")}
    values = own.complete if solved else known
    named = points_told(template, own)
    scene = situation(case.system, values, template.depicts, own.draw.values, named=named)
    return latex_picture(scene)


def points_told(template: Template, own: Worked) -> tuple[str, ...]:
    """The points the statement calls by their letters, which the figure has to show."""
    told = {
        piece.id
        for inline in tell_statement(template, own.draw)
        if isinstance(inline, Math)
        for piece in inline.formula
        if isinstance(piece, Name)
    }
    return tuple(name for name in template.system.points if name in told)


def _asks_for_sizes(template: Template) -> bool:
    """Whether a length or an angle is sought, which the sheet's figure must not show."""
    return any(
        variable.role is Role.UNKNOWN and variable.dimension in (LENGTH, ANGLE)
        for variable in template.system.variables.values()
    )


def _pictures(
    sections: Iterable[Section], problem: Problem, own: Worked, figure: str
) -> Iterator[tuple[str, str]]:
    """The figures that the sections ask for, as LaTeX; figure: the situation's."""
    for section in sections:
        for block in section.blocks:
            if not isinstance(block, Picture):
                continue
            name = document.picture_name(block)
            if block.kind == "situation":
                yield name, figure
            else:
                pivot = _pivot(problem, block.body)
                positive = problem.convention.positive
                system, values = own.case.system, own.complete
                scene = free_body(system, values, block.body, pivot, positive)
                yield name, latex_picture(scene)


def _pivot(problem: Problem, body: str) -> str:
    """The point the plan first takes torques on a body about, "" for none."""
    balances = (step.equation for step in problem.plan.steps if step.equation.kind == "torque")
    return next((balance.about for balance in balances if balance.body == body), "")


def _parts(own: Worked) -> Iterator[document.Part]:
    """What is asked, lettered when there is more than one thing."""
    finds = own.case.system.finds
    asked = {answer.id: answer for answer in own.answers}
    for letter, find in zip(ascii_lowercase, finds, strict=False):
        label = letter if len(finds) > 1 else ""
        answer = asked.get(find.quantity)
        unit = UNITS[answer.unit].plain if answer and answer.unit else ""
        yield document.Part(label, tell_find(own.case.system, find), unit)


def _label(answer: Answer) -> Inlines:
    if answer.symbol in ("what happens first", "does it hold"):
        return (Text(answer.symbol),)
    owner = answer.symbol.removeprefix("direction of ")
    letter = Math((Name(answer.id, owner),))
    return (letter,) if owner == answer.symbol else (Text("direction of "), letter)


def _cautions(problems: Iterable[Problem]) -> tuple[str, ...]:
    """Each caution that concerns one of the problems, once."""
    kinds = {kind for problem in problems for kind in problem.template.cautions}
    return tuple(text for kind, text in _CAUTIONS.items() if kind in kinds)
