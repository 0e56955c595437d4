"""What a student gets back: a page with the verdict on each answer, and what explains it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal

from probgen.course.assignment import ProblemSet
from probgen.course.file_name import file_name
from probgen.marking.finding import Finding
from probgen.marking.form import Paper
from probgen.marking.gradebook import Total
from probgen.marking.judged import Judged
from probgen.marking.marks import Answered, Marked, Row, points_shown
from probgen.marking.told import facts_of
from probgen.papers.blanks import label
from probgen.quantities.expression import Number
from probgen.sheets.document import Feedback, Header, MarkedAnswer, MarkedProblem
from probgen.wording.answer import Answer
from probgen.wording.block import Math, Text
from probgen.wording.facts.marked import PointsChanged

Rows = Mapping[tuple[str, str, str], Row]
"""The row of each answer, by its key."""


def feedback_of(each: Marked, total: Total, rows: Rows, problem_set: ProblemSet) -> Feedback:
    """The page of one paper; rows: of all answers, with what was changed by hand."""
    paper, own = each.paper, problem_set.for_section(each.paper.section)
    header = Header(
        course=own.course,
        title=own.title,
        student_name=paper.name,
        student_id=paper.id,
        code=paper.code,
        section=paper.section,
        due=own.due,
        version=paper.owner if problem_set.exam else "",
    )
    problems = tuple(
        _problem(number, at, paper.id, total, rows)
        for number, at in enumerate(each.problems, start=1)
    )
    points = "" if total.still_open else points_shown(total.points)
    return Feedback(header, problems, points, total.most)


def _problem(number: int, at: Answered, id: str, total: Total, rows: Rows) -> MarkedProblem:
    answers = tuple(_answers(at, id, rows))
    points = points_shown(total.problems.get(at.place, Decimal(0)))
    return MarkedProblem(
        number,
        at.problem.template.title,
        answers,
        points if all(each.points for each in answers) else "",
        sum(own.most for own in at.answers),
    )


def _answers(at: Answered, id: str, rows: Rows) -> Iterator[MarkedAnswer]:
    told = {answer.id: answer for answer in at.right}
    for own in at.answers:
        yield _answer(at, own, told[own.asked.id], rows[id, str(at.place), own.asked.id])


def _answer(at: Answered, own: Judged, answer: Answer, row: Row) -> MarkedAnswer:
    problem, shown = at.problem, answer.shown
    decided = bool(row.changed) and own.finding is Finding.UNREAD
    facts = [] if decided else [*facts_of(problem, own)]
    facts += [PointsChanged()] if row.changed else []
    return MarkedAnswer(
        label(problem, answer),
        own.stated.text or "–",
        (Math((shown,)) if isinstance(shown, Number) else Text(answer.printed),),
        problem.language.page.decided if decided else row.verdict,
        row.counts,
        own.most,
        tuple(problem.language.say(fact, problem.nouns) for fact in facts),
    )


def name_of(paper: Paper) -> str:
    """The name of a student's file, without ending."""
    return file_name(paper.name, paper.id, code=paper.code)
