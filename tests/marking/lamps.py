"""A class of lamps with answers typed: T = m g/2, by hand, with g = 9.8 m/s^2."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from probgen.course.record import Record
from probgen.problem.problem import Problem, Worked, work
from tests.terms import begun, class_of, lamp, masses, problem_of

HEADS = "code,id,name,1 T,1 T unit"


def record_of(count: int) -> Record:
    return begun(class_of(count))


def tension(record: Record, id: str) -> float:
    """Half the lamp's weight, newtons."""
    return float(masses(record)[id]) * 9.8 / 2


def one(record: Record) -> tuple[Problem, Worked]:
    problem = problem_of(lamp(), record.set.convention)
    (worked,) = work(problem, [record.editions[0].draws[0]])
    return problem, worked


def table(record: Record, typed: Mapping[str, Sequence[str]]) -> str:
    """The form as CSV, filled in by id."""
    codes = {edition.owner: edition.code for edition in record.editions}
    rows = [f'{codes[id]},{id},,"{number}",{unit}' for id, (number, unit) in typed.items()]
    return "\n".join([HEADS, *rows, ""])
