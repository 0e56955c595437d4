"""One problem of a class judged: every answer's finding, its points, and what explains it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.marking.asked import Asked, asked_of, earning
from probgen.marking.finding import CERTAIN, Finding, finding, rounds
from probgen.marking.follow import by_pattern, followed, keeps, order, siblings, tolerance
from probgen.marking.form import Place
from probgen.marking.naming import (
    Fit,
    Keys,
    Sought,
    Ways,
    WrongWay,
    apart,
    fitting,
    limit_table,
    named,
    table,
    ways_of,
)
from probgen.marking.parting import first_spoilt
from probgen.marking.points import points_of
from probgen.marking.policy import Policy
from probgen.marking.stated import Stated, stated
from probgen.mistakes.comparison import class_slips, gap, likely
from probgen.problem.problem import Problem, Worked, probe_values
from probgen.statics.quantity_id import Quantity
from probgen.working.digits import working_units
from probgen.working.result import ResultKind
from probgen.working.shares import USUAL, Shares

Typed = Mapping[str, Mapping[Place, str]]
"""What was typed on one paper for one problem, by answer and place."""


@dataclass(frozen=True, slots=True)
class Judged:
    """One answer judged.

    points: earned, None where a person is to say; most: what it is worth.
    slips: each way that leads to the number typed; earlier: whether wrong answers stand before it.
    impossible: whether nothing follows from those.
    parts: the first quantity that the likeliest slip spoils, or the answer itself; "" where it is
    right, or follows from what came before.
    """

    asked: Asked
    stated: Stated
    finding: Finding
    points: Decimal | None
    most: int
    slips: tuple[WrongWay, ...] = ()
    parts: str = ""
    earlier: bool = False
    impossible: bool = False

    @property
    def few_figures(self) -> bool:
        """Whether fewer significant figures were typed than the course asks for."""
        return _few_figures(self.asked, self.stated)


def _few_figures(asked: Asked, told: Stated) -> bool:
    return told.only is not None and 0 < told.only.figures[1] < asked.figures


@dataclass(slots=True)
class _Open:
    """A paper while it is judged: its verdicts so far, and the student's own wrong values."""

    asked: dict[str, Asked]
    typed: dict[str, Stated]
    found: dict[str, Finding]
    slips: dict[str, tuple[WrongWay, ...]]
    parts: dict[str, str]
    own: dict[str, float]
    earlier: set[str]
    impossible: set[str]


@dataclass(frozen=True, slots=True)
class _Class:
    """What is the same for all answers of the problem."""

    problem: Problem
    worked: Sequence[Worked]
    papers: Sequence[_Open]
    ways: Ways
    parted: dict[tuple[int, str], str]
    in_key: dict[int, Mapping[str, Sequence[Keys]]]
    """The slips that the keys of papers tell of, by place and answer."""


def judged(
    problem: Problem,
    worked: Sequence[Worked],
    typed: Sequence[Typed],
    most: int,
    policy: Policy,
    shares: Shares = USUAL,
    ways: Ways | None = None,
) -> list[tuple[Judged, ...]]:
    """The answers of every paper judged, in the order asked.

    most: the points of the problem; shares: the course's own, of them.  ways: as `ways_for` finds
    them, where a class has them found already.
    """
    if not worked:
        return []
    papers = [_opened(problem, own, told) for own, told in zip(worked, typed, strict=True)]
    own = _Class(problem, worked, papers, ways_for(problem) if ways is None else ways, {}, {})
    places = {id: place for place, id in enumerate(order(problem.plan))}
    ids = sorted(papers[0].asked, key=lambda id: places.get(id, len(places)))
    for at, id in enumerate(ids):
        doubtful = [i for i, p in enumerate(papers) if p.found[id] not in CERTAIN]
        if not doubtful:
            continue
        if papers[0].asked[id].is_choice:
            _look_at_verdicts(own, doubtful, id)
        else:
            _look_closer(own, doubtful, id, ids[:at])
    points = points_of(problem, tuple(papers[0].asked.values()), most, shares)
    return [tuple(_closed(p, id, points[id], policy) for id in p.asked) for p in papers]


def ways_for(problem: Problem) -> Ways:
    """The wrong ways of a problem, found once for a class."""
    units = working_units(problem.template.system, problem.convention)
    return ways_of(problem.missteps, probe_values(problem), units, problem.convention.figures)


def _opened(problem: Problem, own: Worked, typed: Typed) -> _Open:
    asked = {each.id: each for each in asked_of(problem, own)}
    told = {id: stated(each.blank, typed.get(id, {})) for id, each in asked.items()}
    found = {id: finding(each, told[id]) for id, each in asked.items()}
    return _Open(asked, told, found, {}, {}, {}, set(), set())


def _reached(own: _Class, doubtful: Sequence[int]) -> list[dict[str, float]]:
    """What follows from the data and their own answers for some papers."""
    cases = [own.worked[i].case for i in doubtful]
    given = {name: np.array([case.values[name] for case in cases]) for name in cases[0].numbers}
    return followed(own.problem.plan, given, [dict(own.papers[i].own) for i in doubtful])


def _look_at_verdicts(own: _Class, doubtful: Sequence[int], id: str) -> None:
    """Judges whether a wrong yes or no is right with the student's own earlier answers."""
    first = own.papers[doubtful[0]].asked[id]
    if first.kind is not ResultKind.VERDICT:
        return
    limit = next(each for each in own.problem.plan.system.limits if each.id == id)
    for i, reached in zip(doubtful, _reached(own, doubtful), strict=True):
        paper = own.papers[i]
        only = paper.typed[id].only
        if paper.own and only is not None:
            paper.earlier.add(id)
            if keeps(limit, reached) is bool(only.value):
                paper.found[id] = Finding.CARRIED


def _look_closer(own: _Class, doubtful: Sequence[int], id: str, before: Sequence[str]) -> None:
    """Judges one answer of the papers where it may follow from earlier ones, or from a slip.

    before: the answers that the working comes to before.
    """
    papers = own.papers
    reached = _reached(own, doubtful)
    for at, i in enumerate(doubtful):
        if papers[i].own:
            _carry(papers[i], own.worked[i], reached[at], id)
    _name(own, [i for i in doubtful if papers[i].found[id] is Finding.WRONG], id, before)
    for i in doubtful:
        only = papers[i].typed[id].only
        if only is not None and math.isfinite(only.value):
            papers[i].own[id] = only.value


def _carry(paper: _Open, own: Worked, reached: Mapping[str, float], id: str) -> None:
    """Whether an answer is right with the student's own earlier ones."""
    right, asked = reached.get(id, math.nan), paper.asked[id]
    paper.earlier.add(id)
    if not math.isfinite(right):
        paper.impossible.add(id)
        return
    only = paper.typed[id].only
    assert only is not None
    off = gap(own.case.system.asked.get(id, Quantity(id)))
    if asked.earns(right):  # it does not depend on them
        return
    near = off(only.value, right) <= tolerance(own.digits, reached, id) * (1.0 + 1e-9)
    if near or rounds(asked, only, right):
        paper.found[id] = Finding.CARRIED


def _name(own: _Class, left: Sequence[int], id: str, before: Sequence[str]) -> None:
    """Names the slips of the papers whose answer nothing else explains.

    Which slip it was has to fit what stands before: a student whose tension is right has not
    forgotten a weight on the way to it.
    """
    typed = {i: own.papers[i].typed[id].only for i in left}
    told = [i for i, only in typed.items() if only is not None and math.isfinite(only.value)]
    fits = list(_fits(own, told, id, before))
    _note_keys(own, [i for i, fit, _ in fits if fit.asks_key])
    for i, fit, ways in fits:
        paper, case = own.papers[i], own.worked[i].case
        if found := named(fit, ways, own.in_key.get(i, {}).get(id, ())):
            paper.found[id] = Finding.SLIP
            paper.slips[id] = tuple(ways[place] for place in found)
            key = found[0], id  # where it parts is the same for all numbers
            if key not in own.parted:
                own.parted[key] = first_spoilt(ways[found[0]], case, id)
            paper.parts[id] = own.parted[key]


def _fits(
    own: _Class, left: Sequence[int], id: str, before: Sequence[str]
) -> Iterator[tuple[int, Fit, Ways]]:
    """For each paper the ways that fit the answer, of all the ways there are.

    left: papers whose answer is a number.
    """
    problem, papers = own.problem, own.papers
    beside = _beside(problem, papers[0].asked, id)
    for group, told in by_pattern([_standing(papers[i], before) for i in left]):
        members = [left[place] for place in group]
        cases, wanted = [own.worked[i].case for i in members], [id, *beside]
        if problem.plan.branches:
            ways, rows = limit_table(cases, problem.missteps, wanted)
        else:
            names = cases[0].numbers
            given = {name: np.array([case.values[name] for case in cases]) for name in names}
            ways, rows = own.ways, table(own.ways, given, told, len(members), wanted)
        values = rows[id].copy()
        for other in beside:
            values[~_agree([papers[i] for i in members], other, rows[other])] = np.nan
        answers = [
            Sought(papers[i].typed[id].readings[0], papers[i].asked[id], case)
            for i, case in zip(members, cases, strict=True)
        ]
        for i, fit in zip(members, fitting(answers, values, ways), strict=True):
            yield i, fit, ways


def _beside(problem: Problem, asked: Mapping[str, Asked], id: str) -> list[str]:
    """The other answers that a way to one has to lead to as well.

    Where limits are compared a way starts from the data alone, so it is one to all answers: the
    load that one part tears at comes of many ways, what else stands on the paper of few of them.
    """
    if problem.plan.branches:
        return [other for other, each in asked.items() if other != id and not each.is_choice]
    return siblings(problem.plan, id, list(asked))


def _note_keys(own: _Class, left: Sequence[int]) -> None:
    """Notes what the keys of some papers tell of, where that is not known yet: it takes long."""
    fresh = [i for i in left if i not in own.in_key]
    made = class_slips([own.worked[i].digits for i in fresh], own.problem.missteps)
    for i, slips in zip(fresh, made, strict=True):
        told: dict[str, list[Keys]] = {}
        for slip in likely(slips):
            told.setdefault(slip.answer, []).append(WrongWay((slip.misstep,)).keys)
        own.in_key[i] = told


def _standing(paper: _Open, before: Sequence[str]) -> dict[str, float]:
    """The values of earlier answers that a student has gone on with: right ones in full."""
    found = {}
    for id in before:
        asked = paper.asked[id]
        if asked.is_choice or paper.found[id] in (Finding.EMPTY, Finding.UNREAD):
            continue
        found[id] = paper.own.get(id, asked.value)
    return found


def _agree(papers: Sequence[_Open], id: str, values: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Whether what wrong ways lead to is what stands as another answer, or nothing stands there.

    values: a row a way, an entry a paper.
    """
    asked = [paper.asked[id] for paper in papers]
    readings = [paper.typed[id].only for paper in papers]
    typed = np.array([math.nan if only is None else only.value for only in readings])
    half = np.array([0.0 if only is None else only.half for only in readings])
    right = np.array([paper.found[id] is Finding.RIGHT for paper in papers])
    with np.errstate(invalid="ignore"):
        near = apart(asked[0], values, typed) <= np.maximum(half, _ROUNDED * np.abs(typed))
        near |= right & earning(asked, values)
    agrees: NDArray[np.bool_] = near | ~np.isfinite(typed)
    return agrees


_ROUNDED: Final = 0.005
"""How far two answers of one pair may be off for one another, relative: each is rounded."""


def _closed(paper: _Open, id: str, most: int, policy: Policy) -> Judged:
    found, asked, told = paper.found[id], paper.asked[id], paper.typed[id]
    points = policy.earned(found, most, _few_figures(asked, told))
    itself = id if found is Finding.WRONG and id not in paper.earlier else ""
    parts = paper.parts.get(id, itself)
    return Judged(
        asked, told, found, points, most,
        paper.slips.get(id, ()), parts, id in paper.earlier, id in paper.impossible,
    )  # fmt: skip
