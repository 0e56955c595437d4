"""What is said of an answer that was marked: facts, for a language to put into words."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator

from probgen.marking.finding import Finding
from probgen.marking.judged import Judged
from probgen.marking.naming import WrongWay
from probgen.marking.parting import step_to
from probgen.mistakes.variant import Misstep
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
        yield SlipsFound(tuple(_apart(own.slips)), problem.convention.turning)
    step = step_to(problem, own.parts) if own.parts else None
    if step is not None:
        yield KeyPartsAt(step.what)
    if own.finding is Finding.CARRIED:
        yield FollowsFromOwn()
    if own.impossible:
        yield NothingFollows()
    if own.finding is Finding.UNREAD:
        yield ReadingsCounted(len(own.stated.readings), own.asked.is_direction)
    if own.few_figures and own.stated.only is not None:
        yield FewFigures(own.stated.only.figures[1], own.asked.figures)


def likeness(own: Judged) -> Hashable:
    """What decides which facts are told of an answer to a problem: of hundreds, a few differ."""
    few = own.stated.only.figures[1] if own.few_figures and own.stated.only else 0
    slips = tuple((way.ids, way.keys) for way in own.slips)
    readings = len(own.stated.readings), own.asked.is_direction
    unread = readings if own.finding is Finding.UNREAD else ()
    return slips, own.parts, own.finding, own.impossible, unread, few


def _apart(ways: Iterable[WrongWay]) -> Iterator[tuple[Misstep, ...]]:
    """The ways named, one of those that are the same slips of one force in more or fewer places."""
    told: set[tuple[tuple[str, str], ...]] = set()
    for way in ways:
        key = tuple((each.slip, repr(each.parts)) for each in way.slips)
        if key not in told:
            told.add(key)
            yield way.slips
