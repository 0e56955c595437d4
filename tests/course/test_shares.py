"""Points of a course's own, held against the problem they are for."""

from __future__ import annotations

from typing import Any

import pytest

from probgen.course.assignment import Assigned, parse_assignment
from probgen.course.shares import judge_shares
from probgen.input.fault import Faults, InputError
from probgen.working.shares import Share
from tests.working.test_scheme import problem

HEAD = 'course = "M"\ntitle = "W"\nroster = "c.csv"\n[[problem]]\ntemplate = "a"\npoints = 8\n'


def faults_of(points: int = 8, **changes: Any) -> list[tuple[str, str]]:
    faults = Faults("week.toml")
    judge_shares(problem("seesaw-two-riders"), Assigned("a", points, **changes), "it", faults)
    return [(fault.field, str(fault.found)) for fault in faults.found]


def test_what_fits_is_taken() -> None:
    assert faults_of() == faults_of(parts=(5, 3)) == []
    assert faults_of(marks=(Share("diagrams", 2), Share("forces", 6))) == []


def test_what_does_not_fit_is_told_at_once() -> None:
    marks = (Share("conditions", 2), Share("forces", 3))
    assert faults_of(marks=marks) == [("it.marks", '"2 + 3 = 5"'), ("it.marks", '"conditions"')]
    assert [field for field, _ in faults_of(parts=(2, 3, 3))] == ["it.parts"]


def test_an_assignment_file_shares_points() -> None:
    (read,) = parse_assignment(HEAD + "parts = [5, 3]\n", "w").problems
    assert (read.parts, read.marks) == ((5, 3), ())
    (read,) = parse_assignment(HEAD + "marks = { results = 3, diagrams = 5 }\n", "w").problems
    assert read.marks == (Share("results", 3), Share("diagrams", 5)), "in the file's order"


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("parts = [5, 4]", ["5 + 4 = 9", "a sum of 8"]),
        ("marks = { results = 3, diagrams = 2 }", ["3 + 2 = 5", "a sum of 8"]),
        ("marks = { result = 8 }", ['did you mean "results"?']),
        ("parts = [5, 3]\nmarks = { results = 8 }", ["leave one of them out"]),
        ("parts = [7.5, 0.5]", ["whole points"]),
        ("parts = [8, 0]", ["whole points"]),
    ],
)
def test_points_that_do_not_add_up_are_refused(line: str, told: list[str]) -> None:
    with pytest.raises(InputError) as refused:
        parse_assignment(HEAD + line + "\n", "w")
    assert all(words in str(refused.value) for words in told)
