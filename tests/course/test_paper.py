"""Two papers share their text only where they say the same."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal

import pytest

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.paper import papers
from probgen.draws.draw import Draw
from probgen.quantities.expression import Number
from probgen.quantities.unit import UNITS, US_CUSTOMARY
from probgen.working.convention import Convention

SET = ProblemSet("Mechanics", "Week 5", "class.csv", (Assigned("beam", 10),), due="7 March")


@dataclass(frozen=True)
class Problem:
    source: str
    draws: tuple[Draw, ...]


def drawn(digits: str, unit: str = "m") -> Draw:
    return Draw("beam", 1, {"L": Number(Decimal(digits), UNITS[unit])})


def paper(problem_set: ProblemSet = SET, source: str = "text", draw: Draw | None = None) -> str:
    (found,) = papers(problem_set, ["7"], [Problem(source, (draw or drawn("1.20"),))]).values()
    return found


OTHERS = {
    "course": paper(replace(SET, course="Statics")),
    "title": paper(replace(SET, title="Week 6")),
    "due": paper(replace(SET, due="8 March")),
    "points": paper(replace(SET, problems=(Assigned("beam", 12),))),
    "pivot": paper(replace(SET, problems=(Assigned("beam", 10, "A"),))),
    "formulas": paper(replace(SET, formulas=True)),
    "caution": paper(replace(SET, caution=False)),
    "notes": paper(replace(SET, exam=Exam(2, notes=("No books.",)))),
    "torque": paper(replace(SET, convention=Convention(torque="arm"))),
    "units": paper(replace(SET, convention=Convention(units=US_CUSTOMARY))),
    "text": paper(source="text, corrected"),
    "value": paper(draw=drawn("1.30")),
    "digits": paper(draw=drawn("1.2")),
    "unit": paper(draw=drawn("1.20", "cm")),
}


@pytest.mark.parametrize("what", OTHERS)
def test_what_is_printed_otherwise_is_another_paper(what: str) -> None:
    assert OTHERS[what] != paper()


def test_no_two_of_them_are_alike() -> None:
    assert len({paper(), *OTHERS.values()}) == len(OTHERS) + 1


LOOKS = [
    replace(SET, paper="a4"),
    replace(SET, working=2.0, room="grid"),
    replace(SET, roster="other.csv", seed="x", bank="mine.toml", style="house.toml"),
    replace(SET, exam=Exam(2, row=5, spare=3)),
]


@pytest.mark.parametrize("other", LOOKS)
def test_looks_and_places_of_files_are_no_other_paper(other: ProblemSet) -> None:
    assert paper(other) == paper()


def test_each_owner_has_the_paper_of_its_own_draw() -> None:
    both = papers(SET, ["7", "8"], [Problem("text", (drawn("1.20"), drawn("1.30")))])
    assert list(both) == ["7", "8"]
    assert both["7"] == paper()
    assert both["8"] == OTHERS["value"]
