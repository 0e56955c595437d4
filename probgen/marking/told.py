"""What is said of an answer that was marked: facts, for a language to put into words."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.marking.finding import Finding
from probgen.marking.judged import Judged
from probgen.marking.parting import step_to
from probgen.problem.problem import Problem
from probgen.wording.facts.marked import (
    FewFigures,
    FollowsFromOwn,
    KeyPartsAt,
    NothingFollows,
    ReadingsCounted,
    SlipsFound,
)
from probgen.working.fact import Fact


def facts_of(problem: Problem, own: Judged) -> Iterator[Fact]:
    """The slip, where the key parts from it, and what stands in the way of marking."""
    if own.slips:
        ways = tuple(way.slips for way in own.slips)
        yield SlipsFound(ways, problem.convention.turning)
    step = step_to(problem, own.parts) if own.parts else None
    if step is not None:
        yield KeyPartsAt(step.what)
    if own.finding is Finding.CARRIED:
        yield FollowsFromOwn()
    if own.impossible:
        yield NothingFollows()
    if own.finding is Finding.UNREAD:
        yield ReadingsCounted(len(own.stated.readings))
    if own.few_figures and own.stated.only is not None:
        yield FewFigures(own.stated.only.figures[1], own.asked.figures)
