"""One problem of a class judged: every answer's finding, its points, and what explains it."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

import numpy as np

from probgen.marking.asked import Asked, asked_of
from probgen.marking.finding import CERTAIN, Finding, finding
from probgen.marking.follow import by_pattern, followed, order, some, tolerance
from probgen.marking.naming import Ways, WrongWay, limit_table, named, table, ways_of
from probgen.marking.points import Policy, points_of
from probgen.marking.stated import Stated
from probgen.mistakes.comparison import gap
from probgen.problem.problem import Problem, Worked, probe_values
from probgen.statics.quantity_id import Quantity
from probgen.working.digits import working_units

Typed = Mapping[str, Stated]
"""What was typed on one paper for one problem, by answer."""


@dataclass(frozen=True, slots=True)
class Judged:
    """One answer judged.

    points: earned, None where a person is to say; most: what it is worth.
    slips: each way that leads to the number typed; earlier: whether wrong answers stand before it.
    impossible: whether nothing follows from those.
    """

    asked: Asked
    stated: Stated
    finding: Finding
    points: Decimal | None
    most: int
    slips: tuple[WrongWay, ...] = ()
    earlier: bool = False
    impossible: bool = False


@dataclass(slots=True)
class _Open:
    """A paper while it is judged: its verdicts so far, and the student's own wrong values."""

    asked: dict[str, Asked]
    typed: Typed
    found: dict[str, Finding]
    slips: dict[str, tuple[WrongWay, ...]]
    own: dict[str, float]
    earlier: set[str]
    impossible: set[str]


def judged(
    problem: Problem, worked: Sequence[Worked], typed: Sequence[Typed], most: int, policy: Policy
) -> list[tuple[Judged, ...]]:
    """The answers of every paper judged, in the order asked.

    most: the points of the problem.
    """
    if not worked:
        return []
    papers = [_opened(problem, own, told) for own, told in zip(worked, typed, strict=True)]
    ways = ways_for(problem)
    places = {id: place for place, id in enumerate(order(problem.plan))}
    for id in sorted(papers[0].asked, key=lambda id: places.get(id, len(places))):
        doubtful = [i for i, p in enumerate(papers) if p.found[id] not in CERTAIN]
        if doubtful and not papers[0].asked[id].is_choice:
            _look_closer(problem, worked, papers, doubtful, id, ways)
    points = points_of(problem, tuple(papers[0].asked.values()), most)
    return [tuple(_closed(p, id, points[id], policy) for id in p.asked) for p in papers]


def ways_for(problem: Problem) -> Ways:
    """The wrong ways of a problem, found once for a class."""
    units = working_units(problem.template.system, problem.convention)
    return ways_of(problem.missteps, probe_values(problem), units)


def _opened(problem: Problem, own: Worked, typed: Typed) -> _Open:
    asked = {each.id: each for each in asked_of(problem, own)}
    told = {id: typed.get(id, Stated("")) for id in asked}
    found = {id: finding(each, told[id]) for id, each in asked.items()}
    return _Open(asked, told, found, {}, {}, set(), set())


def _look_closer(
    problem: Problem,
    worked: Sequence[Worked],
    papers: Sequence[_Open],
    doubtful: Sequence[int],
    id: str,
    ways: Ways,
) -> None:
    """Judges one answer of the papers where it may follow from earlier ones, or from a slip."""
    cases = [worked[i].case for i in doubtful]
    given = {name: np.array([case.values[name] for case in cases]) for name in cases[0].numbers}
    own = [dict(papers[i].own) for i in doubtful]
    reached = followed(problem.plan, given, own)
    for at, i in enumerate(doubtful):
        if own[at]:
            _carry(papers[i], worked[i], reached[at], id)
    left = [at for at, i in enumerate(doubtful) if papers[i].found[id] is Finding.WRONG]
    for group, stated in by_pattern([own[at] for at in left]):
        members = [left[place] for place in group]
        if problem.plan.branches:
            theirs, rows = limit_table([cases[m] for m in members], problem.missteps, [id])
        else:
            theirs = ways
            rows = table(ways, some(given, members), stated, len(members), [id])
        for column, member in enumerate(members):
            paper = papers[doubtful[member]]
            only = paper.typed[id].only
            assert only is not None
            if math.isfinite(only.value):
                values = rows[id][:, column]
                found = named(only, paper.asked[id], values, theirs, cases[member])
                if found:
                    paper.slips[id], paper.found[id] = found, Finding.SLIP
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
    apart = gap(own.case.system.asked.get(id, Quantity(id)))
    if asked.earns(right):  # it does not depend on them
        return
    if apart(only.value, right) <= tolerance(own.digits, reached, id) * (1.0 + 1e-9):
        paper.found[id] = Finding.CARRIED


def _closed(paper: _Open, id: str, most: int, policy: Policy) -> Judged:
    found = paper.found[id]
    return Judged(
        paper.asked[id], paper.typed[id], found, policy.earned(found, most), most,
        paper.slips.get(id, ()), id in paper.earlier, id in paper.impossible,
    )  # fmt: skip
