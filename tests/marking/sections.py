"""A class of two sections whose papers hold other problems: lamps, one of them for B alone."""

from __future__ import annotations

from functools import cache

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.record import Record
from probgen.course.roster import Student
from probgen.problem.problem import Problem, draw_class
from probgen.working.convention import Convention
from tests.records import Column
from tests.records import record_of as made_of
from tests.terms import lamp, problem_of

CODES = ("00000-00000", "00000-00001")


@cache
def lamp_problem() -> Problem:
    return problem_of(lamp(), Convention())


@cache
def record_of_sections() -> Record:
    """Ada of A has the second lamp alone, as her first problem; Bea of B has both."""
    students = [Student("Ada", "1", "A"), Student("Bea", "2", "B")]
    assigned = (Assigned("lamp", 8, sections=("B",)), Assigned("lamp", 6))
    chosen = ProblemSet("Mechanics", "Week 1", "class.csv", assigned)
    draws = draw_class(lamp_problem(), "sections", ["1", "2"]).draws
    columns = [Column("lamp", lamp(), draws), Column("lamp", lamp(), draws[::-1])]
    return made_of(chosen, students, CODES, columns)


def tension_on(record: Record, owner: str, place: int) -> float:
    """Half the lamp's weight of one problem, newtons."""
    return float(record.held[owner, False].draws[place].values["m"].value) * 9.8 / 2
