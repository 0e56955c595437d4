"""What an instructor wants printed now: the set, the class, and the problems ready to be drawn."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from probgen.course.edition import Edition
from probgen.course.exam import Exam
from probgen.course.issue import Issue
from probgen.course.numbers_had import Had
from probgen.course.roster import Student
from probgen.problem.problem import Problem


@dataclass(frozen=True, slots=True)
class Wanted:
    """issue: as the assignment file has it, with its templates; problems: the same, ready to work.

    students: in the order of the print run.  where, class_list: name both files in messages.
    had: what students had in other assignments, to be drawn around.
    drafted: the papers of a draft, by owner: their numbers are kept where they can be.
    """

    issue: Issue
    students: tuple[Student, ...]
    problems: tuple[Problem, ...]
    where: str
    class_list: str
    had: tuple[Had, ...] = ()
    drafted: Mapping[str, Edition] = field(default_factory=dict)

    @property
    def exam(self) -> Exam | None:
        return self.issue.set.exam
