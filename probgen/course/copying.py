"""Who of a class could copy: kept in a record for each problem, remarked on where it is bad.

An exam's versions are looked at in place of students.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from probgen.course.edition import Edition
from probgen.course.record import Record
from probgen.draws.nearness import MOST_ALIKE, Copying, copying
from probgen.problem.dropped import percent
from probgen.problem.problem import Problem, answers_of

_MEND = "widen a range, take smaller steps, or ask for one thing more"


def copying_in(record: Record, problems: Sequence[Problem]) -> tuple[Copying, ...]:
    """Of each problem of the set, in its order, as the papers of now have it."""
    return tuple(_copying(record, place, problem) for place, problem in enumerate(problems))


def remarks_on_copying(record: Record) -> Iterator[str]:
    """One remark where too many pairs could copy, none else."""
    papers = "versions" if record.is_exam else "students"
    told = [
        f"{template.template_id} ({percent(each.share)} of the pairs, {each.exposed} of "
        f"{each.papers} {papers})"
        for template, each in zip(record.issue.templates, record.copying, strict=False)
        if each.share > MOST_ALIKE
    ]
    if told:
        yield f"answers near enough to be copied: {', '.join(told)}; {_MEND}"


def _copying(record: Record, place: int, problem: Problem) -> Copying:
    draws = [edition.draws[place] for edition in _with_problem(record, place)]
    return copying(answers_of(problem, draws)) if draws else Copying(0, 0.0, 0)


def _with_problem(record: Record, place: int) -> Iterator[Edition]:
    """The papers of now that have a problem, one for each student or version."""
    sections = record.set.problems[place].sections
    for edition in record.current:
        twin = record.is_exam and edition.large
        if not twin and (not sections or edition.section in sections):
            yield edition
