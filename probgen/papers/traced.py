"""A paper that was handed out, told again from its record: values, answers, slips, and its key."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, NamedTuple

from probgen.course.frozen import frozen_problems
from probgen.course.record import CODES
from probgen.course.roster import Student
from probgen.course.trail import Trail
from probgen.course.version import Version, version_of
from probgen.input.csv import read_rows
from probgen.input.fault import Faults, InputError
from probgen.input.file import read_text
from probgen.mistakes.comparison import Slip, likely, slips
from probgen.problem.problem import Problem, Worked, work
from probgen.quantities.expression import Number
from probgen.quantities.printing import plain
from probgen.wording.answer import Answer
from probgen.wording.sentence import plain_text
from probgen.wording.slip import tell_slip
from probgen.working.tolerance import Interval, intervals


@dataclass(frozen=True, slots=True)
class TracedProblem:
    """One problem of a paper, worked with the values on it.

    full: for each answer asked the interval that earns full marks; wrong: what slips lead to.
    """

    points: int
    problem: Problem
    own: Worked
    full: tuple[Interval, ...]
    wrong: tuple[Slip, ...]

    def interval(self, answer: str) -> str:
        """The interval of an answer in words, "" where it has none."""
        return next((self._say(each) for each in self.full if each.answer == answer), "")

    def slips_of(self, answer: str, likely_ones: bool = False) -> Iterator[tuple[Slip, str]]:
        """What goes wrong in an answer, with its number in words: all, or what the key tells."""
        for slip in likely(self.wrong) if likely_ones else self.wrong:
            if slip.answer == answer:
                yield slip, self._say(tell_slip(slip, self.own.digits))

    def _say(self, fact: Any) -> str:
        return plain_text(self.problem.language.say(fact, self.problem.nouns))


class KeyPlace(NamedTuple):
    """Where a key is: its own file, and the pile with the page, from 1; empty where it is not."""

    file: str = ""
    pile: str = ""
    page: int = 0


@dataclass(frozen=True, slots=True)
class Traced:
    """One edition of a paper with all that is known of it."""

    trail: Trail
    problems: tuple[TracedProblem, ...]
    key: KeyPlace


def traced(trail: Trail) -> Traced:
    """What stands on the paper at the end of a trail.

    Raises InputError where its template can no longer be read.
    """
    problems = problems_of(trail)
    own = list(zip(trail.issue.set.problems, problems, trail.edition.draws, strict=True))
    told = []
    for place in trail.issue.set.places_in(trail.edition.section):
        assigned, problem, draw = own[place]
        (worked,) = work(problem, [draw])
        full = intervals(worked.digits, worked.answers)
        wrong = slips(worked.digits, problem.missteps)
        told.append(TracedProblem(assigned.points, problem, worked, full, wrong))
    return Traced(trail, tuple(told), _key_place(trail))


def problems_of(trail: Trail) -> tuple[Problem, ...]:
    """The problems of the issue that a paper was printed under."""
    return frozen_problems(trail.issue, [trail.edition], str(trail.path))


def version_at(trail: Trail) -> Version:
    """The paper at the end of a trail, to be printed."""
    return version_of(trail.edition, trail.record.is_exam)


def _key_place(trail: Trail) -> KeyPlace:
    """As the table of codes beside the record tells it."""
    folder = trail.path.parent
    try:
        rows = list(read_rows(read_text(folder / CODES, "table"), ",", Faults("")))
    except InputError:
        return KeyPlace()
    heads = rows[0][1] if rows else []
    for _, cells in rows[1:]:
        row = dict(zip(heads, cells, strict=False))
        if row.get("code") == trail.edition.code:
            page = row.get("key_page", "")
            return KeyPlace(
                row.get("key", ""), row.get("key_pile", ""), int(page) if page.isdecimal() else 0
            )
    return KeyPlace()


def as_data(found: Traced) -> dict[str, Any]:
    """A traced paper as one JSON object."""
    trail, edition = found.trail, found.trail.edition
    exam = trail.record.is_exam
    students = [_student(each) for each in trail.students]
    return {
        "code": edition.code,
        "record": str(trail.path),
        "edited": trail.edited,
        "draft": trail.issue.draft,
        "course": trail.issue.set.course,
        "assignment": trail.issue.set.title,
        "name": edition.name,
        "id": "" if exam else edition.owner,
        "version": edition.owner if exam else edition.version,
        "students": students,
        "renamed": _student(trail.renamed) if trail.renamed else None,
        "section": edition.section,
        "due": trail.issue.set.for_section(edition.section).due,
        "edition": trail.number,
        "errata": [{"day": each.day, "what": each.what} for each in edition.errata],
        "follows": edition.follows,
        "later": trail.later,
        "key": found.key._asdict(),
        "problems": [_problem(n, each) for n, each in enumerate(found.problems, start=1)],
    }


def _student(each: Student) -> dict[str, Any]:
    return {
        "name": each.name,
        "id": each.id,
        "section": each.section,
        "seat": each.seat,
        "large_print": each.large,
        "needs": each.needs,
    }


def _problem(number: int, each: TracedProblem) -> dict[str, Any]:
    own = each.own
    return {
        "number": number,
        "template": own.draw.template_id,
        "revision": own.draw.revision,
        "title": each.problem.template.title,
        "points": each.points,
        "values": {name: _number(value) for name, value in own.draw.values.items()},
        "answers": [_answer(each, answer) for answer in own.answers if answer.asked],
    }


def _answer(each: TracedProblem, answer: Answer) -> dict[str, Any]:
    data: dict[str, Any] = {
        "id": answer.id,
        "value": answer.value,
        "unit": answer.unit,
        "printed": answer.printed,
    }
    if answer.angle_from_x is not None:
        data["angle_from_x"] = answer.angle_from_x
    for full in each.full:
        if full.answer == answer.id:
            data["full_marks"] = {"low": _number(full.low), "high": _number(full.high)}
    data["slips"] = [{"id": slip.id, "told": told} for slip, told in each.slips_of(answer.id)]
    return data


def _number(number: Number) -> dict[str, Any]:
    unit = number.unit.name if number.unit else "1"
    return {"value": float(number.value), "unit": unit, "printed": plain(number)}
