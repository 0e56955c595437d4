"""Points for answers: the marks that the key prints, given to the answers they lead to."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from string import ascii_lowercase

from probgen.marking.asked import Asked
from probgen.problem.problem import Problem
from probgen.working.criteria import criteria
from probgen.working.criterion import Criterion, FirstLimitNamed, QuantityFound, halves
from probgen.working.result import ResultKind
from probgen.working.scheme import Mark, shared
from probgen.working.shares import USUAL, Shares


def points_of(
    problem: Problem, asked: Sequence[Asked], points: int, shares: Shares = USUAL
) -> dict[str, int]:
    """The points of each answer, by id; they add up to the problem's.

    What leads to an answer counts with it: its balance, its numbers put in.  Diagrams count with
    all, in proportion.  shares: the course's own; points of a part stay with what it asks.
    """
    marks = problem.scheme(points, shares)
    leads = _leads(problem, asked)
    found = dict.fromkeys((each.id for each in asked), 0)
    for letter in dict.fromkeys(mark.part for mark in marks):
        own = [e.id for e in asked if not letter or ascii_lowercase[e.part] == letter]
        found |= _points(own, [mark for mark in marks if mark.part == letter], leads)
    return found


Leads = Mapping[Criterion, tuple[str, ...]]
"""The answers that each step of a working leads to."""


def _leads(problem: Problem, asked: Sequence[Asked]) -> Leads:
    """For each step the first answer that it or a later one gives.

    What leads to several limits leads to the value at the one that is then named, and equations
    solved together lead to all that they give.
    """
    found: dict[Criterion, tuple[str, ...]] = {}
    following: tuple[str, ...] = ()
    together: tuple[str, ...] = ()  # answers whose equations are those of the step before too
    for each in reversed(tuple(criteria(problem.plan, problem.convention))):
        own = _answers(each, asked) or following
        found |= dict.fromkeys((each, *(halves(each) or ())), own)
        following = following if isinstance(each.what, FirstLimitNamed) else (*own, *together)
        gives = isinstance(each.what, QuantityFound) and bool(_answers(each, asked))
        together = following if gives else ()
    return found


def _points(ids: Sequence[str], marks: Iterable[Mark], leads: Leads) -> dict[str, int]:
    found = dict.fromkeys(ids, 0)
    shares: dict[tuple[str, ...], int] = {}  # of all that leads to the same answers
    waiting = diagrams = 0
    for mark in marks:
        if set(mark.kinds) <= {"diagram", "drawing"}:
            diagrams += mark.points
            continue
        waiting += mark.points
        led = dict.fromkeys(
            id for each in mark.criteria for id in leads.get(each, (each.quantity,))
        )  # the number of a balance is a criterion of its own
        if own := tuple(id for id in led if id in found):
            shares[own] = shares.get(own, 0) + waiting
            waiting = 0
    for own, points in (*shares.items(), (tuple(ids[-1:]), waiting)):
        _share(found, own, points)
    weights = [found[id] for id in ids] if any(found.values()) else [1] * len(ids)
    for id, share in zip(ids, shared(diagrams, weights), strict=True):
        found[id] += share
    return found


def _share(found: dict[str, int], ids: Sequence[str], points: int) -> None:
    """Alike; of what is left over a point to those that have least."""
    ids = sorted(ids, key=found.__getitem__)
    for id, share in zip(ids, shared(points, [1] * len(ids)), strict=True):
        found[id] += share


def _answers(criterion: Criterion, asked: Sequence[Asked]) -> tuple[str, ...]:
    """The answers a step gives."""
    words = (ResultKind.LIMIT, ResultKind.VERDICT)
    return tuple(
        each.id
        for each in asked
        if each.id == criterion.quantity or (criterion.kind == "limit" and each.kind in words)
    )
