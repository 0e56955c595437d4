"""A version's worked problems as a sheet and as a key: what stands on their pages."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from string import ascii_lowercase

from probgen.course.assignment import ProblemSet
from probgen.course.version import Version
from probgen.figures.paper.scene import Scene
from probgen.mistakes.comparison import Slip, likely
from probgen.papers.blanks import blanks_of, label, unit_printed
from probgen.problem.problem import Problem, Worked, tell_steps
from probgen.problem.problem_figures import (
    asks_for_sizes,
    diagram_scene,
    free_body_scene,
    free_body_scenes,
    sheet_scene,
    situation_scene,
)
from probgen.problem.signs_asked import signs_asked
from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Relation
from probgen.quantities.unit import ANGLE
from probgen.sheets import document
from probgen.sheets.formula_page import formula_page
from probgen.statics.system import Form, Role
from probgen.wording.answer import Answer
from probgen.wording.block import Block, Inline, Math, Picture, Section, Text
from probgen.wording.diagram import drawn_of
from probgen.wording.facts.asked import GravityTaken, SignsAsked
from probgen.wording.facts.diagram import DiagramAsked
from probgen.wording.facts.papers import AnswerInTable, Corrected, Released
from probgen.wording.find import tell_find
from probgen.wording.language import Language
from probgen.wording.nouns import NO_NOUNS
from probgen.wording.sentence import lettered, plain_text
from probgen.wording.slip import slips_told
from probgen.wording.statement import tell_statement
from probgen.wording.truss import member_state
from probgen.working.criteria import other_routes
from probgen.working.fact import Fact
from probgen.working.shares import USUAL, Shares
from probgen.working.tolerance import intervals, margins

Inlines = tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Face:
    """What the sheet and the key have in common of one problem.

    title: "" where the page has it already; figure: the situation as the sheet shows it.
    """

    number: int
    title: str
    points: int
    problem: Problem
    own: Worked
    statement: Inlines
    figure: Scene
    slips: tuple[Slip, ...]
    shares: Shares = USUAL


@dataclass(frozen=True)
class Copy:
    """One version of a set: problems and worked in the order of the set.

    slips: for each problem what goes wrong with this version's numbers, for the key.
    alone: whether it is one problem, whose title is the page's; drawn: which draw of it.
    """

    problem_set: ProblemSet
    version: Version
    problems: tuple[Problem, ...]
    worked: tuple[Worked, ...]
    slips: tuple[tuple[Slip, ...], ...] = ()
    alone: bool = False
    drawn: str = ""

    @property
    def language(self) -> Language:
        return self.problems[0].language

    @property
    def preface(self) -> Inlines:
        """What a sheet says once: g where a weight comes from a mass, signs of what is asked."""
        return self.language.paragraph(self._said_once, NO_NOUNS).inlines

    @property
    def key_preface(self) -> Inlines:
        """The same, but for the signs along axes, which each problem of a key tells with them."""
        said = tuple(fact for fact in self._said_once if not isinstance(fact, SignsAsked))
        return self.language.paragraph(said, NO_NOUNS).inlines

    @property
    def _said_once(self) -> tuple[Fact, ...]:
        signs = tuple(signs_asked(problem.template for problem in self.problems))
        if not any(problem.needs_gravity for problem in self.problems):
            return signs
        g = self.problem_set.convention.g
        return (GravityTaken((Name("g", "g"), Relation("="), g)), *signs)

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
            draft=self.version.draft,
            drawn=self.drawn,
            errata=tuple(
                plain_text(self.language.say(Corrected(each.day, each.what), NO_NOUNS))
                for each in self.version.errata
            ),
        )

    @cached_property
    def faces(self) -> tuple[Face, ...]:
        """The problems one after the other, told and drawn once for both sheet and key."""
        slips = self.slips or ((),) * len(self.problems)
        rows = zip(self.problem_set.problems, self.problems, self.worked, slips, strict=True)
        return tuple(
            Face(
                number,
                "" if self.alone else problem.template.title,
                assigned.points,
                problem,
                own,
                tell_statement(problem.template, own.draw, problem.language),
                situation_scene(problem, own, solved=False),
                slips,
                assigned.shares,
            )
            for number, (assigned, problem, own, slips) in enumerate(rows, start=1)
        )


def copy_of(
    problem_set: ProblemSet,
    version: Version,
    problems: Sequence[Problem],
    worked: Sequence[Worked],
    slips: Sequence[tuple[Slip, ...]],
) -> Copy:
    """A version with the problems and the day that its section has, of all in the set."""
    section = version.student.section
    places = problem_set.places_in(section)
    return Copy(
        problem_set.for_section(section),
        version,
        tuple(problems[place] for place in places),
        tuple(worked[place] for place in places),
        tuple(slips[place] for place in places),
    )


def sheet_of(copy: Copy) -> document.Sheet:
    """What the student gets."""
    problems = tuple(
        document.Problem(
            number=face.number,
            title=face.title,
            statement=face.statement,
            parts=tuple(_parts(face)),
            figure=_on_sheet(face),
            points=face.points,
            space=copy.problem_set.working * 10.0,
            room=copy.problem_set.room,
        )
        for face in copy.faces
    )
    cautions = _cautions(copy) if copy.problem_set.caution else ()
    return document.Sheet(
        copy.header,
        copy.preface,
        cautions,
        problems,
        formulas_of(copy),
        cover_of(copy),
        tuple(_origins(copy)) if copy.problem_set.origins else (),
    )


def _on_sheet(face: Face) -> Scene:
    """The figure of the situation, with axes below it where something is to be drawn."""
    return sheet_scene(face.problem, face.own, face.figure) if _drawings(face) else face.figure


def formulas_of(copy: Copy) -> document.Formulas | None:
    """The page of formulas, in the course's words, where the set asks for one."""
    if not copy.problem_set.formulas:
        return None
    convention = copy.problem_set.convention
    return formula_page(convention.turning, convention.positive == "clockwise", copy.language)


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
    return document.Key(copy.header, solutions, copy.key_preface)


def solutions_of(copy: Copy, note: str = "") -> document.Key:
    """What students may see of a key: the working, without marks, intervals and slips.

    note: a line in place of the usual one on when it was released.
    """
    key, exam = key_of(copy), copy.problem_set.exam is not None
    told = copy.language.say(Released(copy.problem_set.due, exam), NO_NOUNS)
    solutions = tuple(
        replace(
            each,
            answers=tuple(replace(answer, full_marks=()) for answer in each.answers),
            scheme=(),
            other_routes=(),
            slips=(),
        )
        for each in key.solutions
    )
    return replace(key, solutions=solutions, release=note or plain_text(told))


def solution_of(face: Face) -> document.Solution:
    """One problem worked, with its figures."""
    problem, own = face.problem, face.own
    sections = tell_steps(problem, own)
    figure = face.figure
    if asks_for_sizes(problem.template):
        figure = situation_scene(problem, own, solved=True)
    return document.Solution(
        number=face.number,
        title=face.title,
        statement=face.statement,
        figure=figure,
        sections=sections,
        answers=tuple(_answers(problem, own)),
        points=face.points,
        given=tuple(_given(face)),
        asked=tuple(_asked(face)),
        pictures=dict(_pictures(sections, face, figure)),
        scheme=tuple(_marks(face)),
        other_routes=problem.language.say(other_routes(problem.plan), problem.nouns),
        slips=tuple(_slips(face)),
    )


def _given(face: Face) -> Iterator[document.Given]:
    """Everything drawn or computed for this student before any working, as it was told."""
    case, nouns = face.own.case, face.problem.nouns
    for id, variable in case.system.variables.items():
        if variable.role not in (Role.GIVEN, Role.DERIVED) or id not in case.numbers:
            continue
        measured = nouns.labels.quantities[id].measured if variable.dimension == ANGLE else ""
        name = lettered((Text(f"{nouns.given(id)} {measured}".strip()),))
        symbol, value = Math((variable.as_name,)), Math((case.numbers[id],))
        yield document.Given((symbol,), name, (value,))


def _asked(face: Face) -> Iterator[Inlines]:
    problem = face.problem
    for find in face.own.case.system.finds:
        yield tell_find(find, problem.nouns, problem.language)
    yield from _drawings(face)


def _drawings(face: Face) -> list[Inlines]:
    """What the student is told to draw in axes on the sheet, for each body with such."""
    problem = face.problem
    return [
        problem.language.say(DiagramAsked(inside.body, drawn_of(inside)), problem.nouns)
        for inside in face.own.inside
        if inside.body in problem.template.system.to_draw
    ]


def _answers(problem: Problem, own: Worked) -> Iterator[document.Answer]:
    """Each answer with the interval that earns full marks."""
    full = {
        each.answer: problem.language.say(each, problem.nouns)
        for of in (intervals, margins)
        for each in of(own.digits, own.answers)
    }
    for answer in own.answers:
        printed = _printed(problem, answer)
        state = member_state(own.case, answer.id)
        told = (*printed, *(problem.language.say(state, problem.nouns) if state else ()))
        yield document.Answer(label(problem, answer), told, full.get(answer.id, ()))


def _printed(problem: Problem, answer: Answer) -> Inlines:
    """An answer as a table shows it."""
    shown = answer.shown
    if isinstance(shown, Number):
        return (Math((shown,)),)
    return problem.language.say(AnswerInTable(shown), problem.nouns)


def _marks(face: Face) -> Iterator[document.Mark]:
    problem = face.problem
    for mark in problem.scheme(face.points, face.shares):
        yield document.Mark(problem.language.say(mark, problem.nouns), mark.points)


def _slips(face: Face) -> Iterator[Block]:
    """What goes wrong here, where anything is known to."""
    if face.slips:
        told = slips_told(likely(face.slips), face.own.digits)
        yield face.problem.language.block(told, face.problem.nouns)


def _pictures(
    sections: Iterable[Section], face: Face, figure: Scene
) -> Iterator[tuple[str, Scene]]:
    """The figures that the sections ask for; figure: the situation's."""
    alone: dict[str, Scene] = {}  # all at once, for their arrows are to one scale
    for section in sections:
        for block in section.blocks:
            if not isinstance(block, Picture):
                continue
            name = document.picture_name(block)
            if block.kind == "situation":
                yield name, figure
            elif block.kind == "diagram":
                yield name, diagram_scene(face.problem, face.own, block.body)
            else:
                alone = alone or free_body_scenes(face.problem, face.own)
                scene = alone.get(block.body)
                yield name, scene or free_body_scene(face.problem, face.own, block.body)


def _parts(face: Face) -> Iterator[document.Part]:
    """What is asked, lettered when there is more than one thing."""
    problem, own = face.problem, face.own
    finds = own.case.system.finds
    drawings = _drawings(face)
    shared = face.shares.parts or (0,) * len(finds)
    for letter, find, points in zip(ascii_lowercase, finds, shared, strict=False):
        lettered = letter if len(finds) + len(drawings) > 1 else ""
        told = tell_find(find, problem.nouns, problem.language)
        if find.form is Form.VALUE:
            answer = next(each for each in own.answers if each.find == find)
            yield document.Part(lettered, told, unit_printed(answer), points=points)
        else:
            blanks = tuple(blanks_of(problem, own, find))
            yield document.Part(lettered, told, blanks=blanks, points=points)
    for letter, told in zip(ascii_lowercase[len(finds) :], drawings, strict=False):
        yield document.Part(letter, told, blanks=(document.Blank((), written=False),))


def _origins(copy: Copy) -> Iterator[str]:
    """Who wrote each problem's template, after what, and under which licence."""
    for face in copy.faces:
        origin = face.problem.template.origin
        told = [text for text in (origin.author, origin.source, origin.licence) if text]
        if told:
            yield f"{face.number}: {', '.join(told)}."


def _cautions(copy: Copy) -> tuple[str, ...]:
    """Each sentence of the cautions that concern one of the problems, once."""
    kinds = {kind for problem in copy.problems for kind in problem.template.cautions}
    told = copy.language.page.cautions
    return tuple(dict.fromkeys(text for kind, text in told if kind in kinds))
