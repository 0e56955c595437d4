"""Error carried forward: what follows, rightly worked, from a student's own earlier answers.

Papers of one problem whose own answers stand in the same places are gone through together.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

import numpy as np

from probgen.quantities.expression import Value, evaluate
from probgen.statics.plan import Plan
from probgen.statics.rerun import rerun
from probgen.statics.state import utmost_finds
from probgen.statics.system import Limit
from probgen.working.digits import Digits
from probgen.working.tolerance import half_width

Own = Mapping[str, float]
"""What one student states, by id, coherent units."""
Columns = Mapping[str, Value]


def order(plan: Plan) -> tuple[str, ...]:
    """The ids of what a working comes to, in its order."""
    first = [plan.branches_to(find)[0].plan for find in utmost_finds(plan.system)]
    lines = [line for each in first or [plan] for line in each.lines]
    return tuple(dict.fromkeys(line.id for line in lines))


def siblings(plan: Plan, id: str, asked: Sequence[str]) -> list[str]:
    """The other answers that are put together at the end from the same components."""
    outcomes = {each.id: each.of.owner for each in plan.outcomes}
    owner = outcomes.get(id)
    return [other for other in asked if other != id and owner and outcomes.get(other) == owner]


def by_pattern(own: Sequence[Own]) -> Iterator[tuple[tuple[int, ...], Columns]]:
    """Papers with answers of their own in the same places, and those answers, a column each."""
    patterns: dict[tuple[str, ...], list[int]] = {}
    for place, stated in enumerate(own):
        patterns.setdefault(tuple(sorted(stated)), []).append(place)
    for ids, places in patterns.items():
        yield tuple(places), {id: np.array([own[place][id] for place in places]) for id in ids}


def some(given: Columns, places: Sequence[int]) -> dict[str, Value]:
    """The data of some papers."""
    return {id: np.asarray(column)[list(places)] for id, column in given.items()}


def followed(plan: Plan, given: Columns, own: Sequence[Own]) -> list[dict[str, float]]:
    """For each paper everything that follows from what its student states; not finite: nothing."""
    found: list[dict[str, float]] = [{} for _ in own]
    for places, stated in by_pattern(own):
        reached = rerun(plan, some(given, places), stated)
        columns = {id: np.broadcast_to(value, len(places)) for id, value in reached.items()}
        for at, place in enumerate(places):
            found[place] = {id: float(column[at]) for id, column in columns.items()}
    return found


def tolerance(digits: Digits, reached: Own, id: str) -> float:
    """How far (coherent units) an answer may be off from what follows from a student's own."""
    case = digits.case
    known = {name: reached.get(name, value) for name, value in case.values.items()}
    return half_width(Digits(replace(case, values=known), digits.convention), id)


def keeps(limit: Limit, reached: Own) -> bool:
    """Whether a limit is kept by what follows from a student's own."""
    left, right = (float(evaluate(side, reached)) for side in (limit.left, limit.right))
    return left <= right if limit.relation == "<=" else left >= right
