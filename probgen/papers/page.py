"""A version's worked problems as a sheet and as a key: what stands on their pages."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from string import ascii_lowercase
from typing import Final

from probgen.course.setfile import ProblemSet
from probgen.course.version import Version
from probgen.figures.writers.latex import latex_picture
from probgen.problem.problem import Problem, Worked, tell_steps
from probgen.problem.problem_figures import asks_for_sizes, free_body_scene, situation_scene
from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Relation
from probgen.quantities.unit import METRE_PER_SECOND_SQUARED, UNITS
from probgen.sheets import document
from probgen.wording.answer import Answer
from probgen.wording.block import Inline, Math, Picture, Section, Text
from probgen.wording.marking_scheme import half_width, intervals, scheme
from probgen.wording.sentence import say
from probgen.wording.slip import Slip, likely, slips_section
from probgen.wording.statement import tell_find, tell_statement
from probgen.working.convention import Convention

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

    figure: the situation as the sheet shows it, as LaTeX; colour: whether figures have colours.
    """

    number: int
    points: int
    problem: Problem
    own: Worked
    statement: Inlines
    figure: str
    slips: tuple[Slip, ...]
    colour: bool


@dataclass(frozen=True)
class Copy:
    """One version of a set: problems and worked in the order of the set.

    slips: for each problem what goes wrong with this version's numbers, for the key.
    colour: whether figures have colours.
    """

    problem_set: ProblemSet
    version: Version
    problems: tuple[Problem, ...]
    worked: tuple[Worked, ...]
    slips: tuple[tuple[Slip, ...], ...] = ()
    colour: bool = False

    @property
    def header(self) -> document.Header:
        return document.Header(
            course=self.problem_set.course,
            title=self.problem_set.title,
            student_name=self.version.student.name,
            student_id=self.version.student.id,
            code=self.version.code,
            section=self.version.student.section,
            due=self.problem_set.due,
            version=self.version.letter,
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
                latex_picture(situation_scene(problem.template, own, solved=False), self.colour),
                slips,
                self.colour,
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
    formulas = formulas_of(copy.problem_set)
    return document.Sheet(copy.header, preface, cautions, problems, formulas, cover_of(copy))


def formulas_of(problem_set: ProblemSet) -> document.Formulas | None:
    """The page of formulas, in the course's words, where the set asks for one."""
    if not problem_set.formulas:
        return None
    convention = problem_set.convention
    return document.Formulas(convention.turning, convention.positive == "clockwise")


def cover_of(copy: Copy) -> document.Cover | None:
    """The page before the problems, to write the name and the marks on; None for none.

    An exam may have one; large print always has, since its head and a problem seldom fit one page.
    """
    exam = copy.problem_set.exam
    wanted = copy.version.large or (exam is not None and exam.cover)
    if not wanted:
        return None
    scores = tuple((str(face.number), face.points) for face in copy.faces)
    return document.Cover(copy.header, notes=exam.notes if exam else (), scores=scores)


def key_of(copy: Copy) -> document.Key:
    """What the one who marks it gets."""
    solutions = tuple(solution_of(face) for face in copy.faces)
    return document.Key(copy.header, solutions, gravity(copy.problem_set.convention))


def solution_of(face: Face) -> document.Solution:
    """One problem worked, with its figures."""
    problem, own = face.problem, face.own
    sections = tell_steps(problem, own)
    figure = face.figure
    if asks_for_sizes(problem.template):
        scene = situation_scene(problem.template, own, solved=True)
        figure = latex_picture(scene, face.colour)
    return document.Solution(
        number=face.number,
        title=problem.template.title,
        statement=face.statement,
        figure=figure,
        sections=sections,
        answers=tuple(_answers(problem, own)),
        points=face.points,
        pictures=dict(_pictures(sections, face, figure)),
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
        yield document.Answer(label(answer), (Text(answer.printed),), full)


def gravity(convention: Convention) -> Inlines:
    """The value of g, said once for a sheet."""
    g = Number(Decimal(convention.gravity), METRE_PER_SECOND_SQUARED)
    return (Text("Take "), Math((Name("g", "g"), Relation("="), g)), Text(" throughout."))


def _pictures(
    sections: Iterable[Section], face: Face, figure: str
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
                scene = free_body_scene(face.problem, face.own, block.body)
                yield name, latex_picture(scene, face.colour)


def _parts(own: Worked) -> Iterator[document.Part]:
    """What is asked, lettered when there is more than one thing."""
    finds = own.case.system.finds
    asked = {answer.id: answer for answer in own.answers}
    for letter, find in zip(ascii_lowercase, finds, strict=False):
        label = letter if len(finds) > 1 else ""
        answer = asked.get(find.quantity)
        unit = UNITS[answer.unit].plain if answer and answer.unit else ""
        yield document.Part(label, tell_find(own.case.system, find), unit)


def label(answer: Answer) -> Inlines:
    """What an answer is called beside its value: the letter of a quantity, or words."""
    if answer.symbol in ("what happens first", "does it hold"):
        return (Text(answer.symbol),)
    owner = answer.symbol.removeprefix("direction of ")
    letter = Math((Name(answer.id, owner),))
    return (letter,) if owner == answer.symbol else (Text("direction of "), letter)


def _cautions(problems: Iterable[Problem]) -> tuple[str, ...]:
    """Each caution that concerns one of the problems, once."""
    kinds = {kind for problem in problems for kind in problem.template.cautions}
    return tuple(text for kind, text in _CAUTIONS.items() if kind in kinds)
