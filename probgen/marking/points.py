"""Points for answers: the marks that the key prints, given to the answers they lead to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal

from probgen.marking.asked import Asked
from probgen.marking.finding import Finding
from probgen.problem.problem import Problem
from probgen.working.result import ResultKind
from probgen.working.scheme import Mark, scheme, shared


def _usual() -> dict[Finding, Decimal]:
    whole, half, none = Decimal(1), Decimal("0.5"), Decimal(0)
    return {
        Finding.RIGHT: whole,
        Finding.CARRIED: whole,
        Finding.UNIT: half,
        Finding.SIGN: half,
        Finding.SLIP: half,
        Finding.WRONG: none,
        Finding.EMPTY: none,
    }


@dataclass(frozen=True, slots=True)
class Policy:
    """What part of an answer's points each finding earns: a judgement, no source.

    What nobody could read has no part yet: a person decides.
    """

    parts: Mapping[Finding, Decimal] = field(default_factory=_usual)

    def earned(self, found: Finding, points: int) -> Decimal | None:
        part = self.parts.get(found)
        return None if part is None else part * points


def points_of(problem: Problem, asked: Sequence[Asked], points: int) -> dict[str, int]:
    """The points of each answer, by id; they add up to the problem's.

    What leads to an answer counts with it: its balance, its numbers put in.  Diagrams count with
    all, in proportion.
    """
    ids = [each.id for each in asked]
    found = dict.fromkeys(ids, 0)
    waiting = diagrams = 0
    for mark in scheme(problem.plan, problem.convention, points):
        if set(mark.kinds) == {"diagram"}:
            diagrams += mark.points
            continue
        waiting += mark.points
        if own := _answers(mark, asked):
            _share(found, own, waiting)
            waiting = 0
    _share(found, ids[-1:], waiting)
    weights = [found[id] for id in ids] if any(found.values()) else [1] * len(ids)
    for id, share in zip(ids, shared(diagrams, weights), strict=True):
        found[id] += share
    return found


def _share(found: dict[str, int], ids: Sequence[str], points: int) -> None:
    for id, share in zip(ids, shared(points, [1] * len(ids)), strict=True):
        found[id] += share


def _answers(mark: Mark, asked: Sequence[Asked]) -> list[str]:
    """The answers a mark is given for."""
    words = (ResultKind.LIMIT, ResultKind.VERDICT)
    return [
        each.id
        for each in asked
        if each.id in mark.quantities or ("limit" in mark.kinds and each.kind in words)
    ]
