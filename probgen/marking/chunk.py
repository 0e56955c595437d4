"""A chunk of a class marked: what is kept of its papers is light, however many there are."""

from __future__ import annotations

import gc
from collections.abc import Iterator, Mapping, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass, replace
from typing import Final

from probgen.build.workers import Crew, ended_like_interrupts
from probgen.course.assignment import ProblemSet
from probgen.course.record import Record
from probgen.draws.draw import Draw
from probgen.marking.answers_file import Typed
from probgen.marking.changed import by_hand
from probgen.marking.form import Place
from probgen.marking.gradebook import totals
from probgen.marking.judged import judged, ways_for
from probgen.marking.marks import Answered, Given, Key, Marked, Row, rows, to_look_at
from probgen.marking.naming import Ways
from probgen.marking.policy import Policy
from probgen.marking.tally import Tally, tally
from probgen.problem.problem import Problem, work
from probgen.sheets.document import Feedback

PAPERS: Final = 500
"""Of a chunk.  Fewer are not worth a process of their own, which takes as long to begin."""

Draws = tuple[Draw, ...]
"""Of one edition: for each problem of the set."""


@dataclass(frozen=True, slots=True)
class Common:
    """What is the same for all papers; ways: wrong ones, of each problem."""

    set: ProblemSet
    problems: tuple[Problem, ...]
    ways: tuple[Ways, ...]
    policy: Policy
    feedback: bool = False


@dataclass(frozen=True, slots=True)
class Chunk:
    """Papers to be marked, the draws of each, and points that were given them by hand."""

    typed: Sequence[Typed]
    draws: Sequence[Draws]
    given: Mapping[Key, Given]


@dataclass(frozen=True, slots=True)
class MarkedChunk:
    """Papers marked.

    found: the row of each answer; look_at: of those that a person has to look at.
    pages: what each student gets back, in the papers' order, if that is wanted.
    """

    found: tuple[Row, ...]
    look_at: tuple[Row, ...]
    tally: Tally
    pages: tuple[Feedback, ...]


def mark(
    record: Record,
    problems: Sequence[Problem],
    typed: Sequence[Typed],
    policy: Policy,
    given: Mapping[Key, Given],
    feedback: bool = False,
    crew: Crew | None = None,
) -> list[MarkedChunk]:
    """Every paper marked: a function of record, answers, policy and points by hand alone.

    given: those points; feedback: whether pages for students are wanted; crew: who marks, which
    changes nothing.
    """
    tolerant = tuple(_tolerant(each, policy.tolerance) for each in problems)
    ways = tuple(ways_for(each) for each in tolerant)
    common = Common(record.set, tolerant, ways, policy, feedback)
    own = crew or Crew()
    chunks = [
        Chunk(part, [record.held[row.paper.owner, False].draws for row in part], _of(part, given))
        for part in (typed[at : at + PAPERS] for at in range(0, len(typed), PAPERS))
    ]
    shares = own.processes(len(typed) // PAPERS)
    tasks = ((share, common, chunks[share::shares]) for share in range(shares))
    found: dict[int, MarkedChunk] = {}
    with ended_like_interrupts(), closing(own.each(mark_share, tasks, shares)) as results:
        for share, marked in results:
            found.update(zip(range(share, len(chunks), shares), marked, strict=True))
    return [found[place] for place in sorted(found)]


def _of(typed: Sequence[Typed], given: Mapping[Key, Given]) -> dict[Key, Given]:
    ids = {row.paper.id for row in typed}
    return {key: points for key, points in given.items() if key[0] in ids}


def mark_share(
    share: int, common: Common, chunks: Sequence[Chunk]
) -> tuple[int, list[MarkedChunk]]:
    """What falls to one process, which it says again: they get done in any order."""
    with uncollected():
        return share, [mark_chunk(common, each) for each in chunks]


def mark_chunk(common: Common, chunk: Chunk) -> MarkedChunk:
    """A chunk marked."""
    marked = judged_papers(common, chunk.typed, chunk.draws)
    found = tuple(rows(marked, *by_hand(chunk.given, marked)))
    pages = tuple(_pages(common, marked, found)) if common.feedback else ()
    looked = tuple(to_look_at(found, marked))
    return MarkedChunk(found, looked, tally(marked, common.problems), pages)


@contextmanager
def uncollected() -> Iterator[None]:
    """Python looks for no circles of dead objects, of which marking leaves none: it takes a third
    of the time, as there are so many that live.
    """
    usual = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if usual:
            gc.enable()


def judged_papers(
    common: Common, typed: Sequence[Typed], draws: Sequence[Draws]
) -> tuple[Marked, ...]:
    """The papers judged, problem by problem: each is solved for all of them at once."""
    found: list[list[Answered]] = [[] for _ in typed]
    each = zip(common.set.problems, common.problems, common.ways, strict=True)
    for place, (assigned, problem, ways) in enumerate(each):
        having = [at for at, row in enumerate(typed) if place in _places(common, row)]
        worked = work(problem, [draws[at][place] for at in having])
        told = [_told(typed[at], place + 1) for at in having]
        own = judged(problem, worked, told, assigned.points, common.policy, assigned.shares, ways)
        for at, solved, answers in zip(having, worked, own, strict=True):
            own_answers = Answered(place + 1, problem, solved.draw, solved.answers, answers)
            found[at].append(own_answers)
    return tuple(Marked(row.paper, tuple(own)) for row, own in zip(typed, found, strict=True))


def _places(common: Common, row: Typed) -> tuple[int, ...]:
    return common.set.places_in(row.paper.section)


def _tolerant(problem: Problem, tolerance: float | None) -> Problem:
    """The problem with another tolerance, if it is to have one."""
    if tolerance is None:
        return problem
    return replace(problem, convention=replace(problem.convention, tolerance=tolerance))


def _told(row: Typed, number: int) -> dict[str, Mapping[Place, str]]:
    """What was typed for one problem, by answer."""
    return {answer: cells for (at, answer), cells in row.cells.items() if at == number}


def _pages(common: Common, marked: Sequence[Marked], found: Sequence[Row]) -> Iterator[Feedback]:
    from probgen.marking.feedback import feedback_of  # seldom wanted

    by_key = {row.key: row for row in found}
    sums = totals((each.paper for each in marked), found)
    for each, total in zip(marked, sums, strict=True):
        yield feedback_of(each, total, by_key, common.set)
