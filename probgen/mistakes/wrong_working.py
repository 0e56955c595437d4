"""Every wrong working of a class's problem, with its values for each student."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from probgen.mistakes.likelihood import rank
from probgen.mistakes.rules import missteps
from probgen.mistakes.variant import Misstep, wrong_values
from probgen.quantities.unit import UnitSystem
from probgen.statics.plan import Branch, Plan, Probe
from probgen.statics.rerun import rerun
from probgen.statics.state import utmost_finds, way_sought
from probgen.statics.system import Find
from probgen.working.case import Case

Column = NDArray[np.float64]


Missteps = tuple[tuple[Misstep, ...], ...]
"""For each branch of a plan, or for one that has none, its missteps, the likeliest first."""


def plan_missteps(plan: Plan, probe: Probe, units: UnitSystem, figures: int) -> Missteps:
    """What may go wrong in a working of the plan, whoever makes it.

    probe: coherent values of givens, derived quantities and g, arrays of one or more draws.
    figures: significant ones of the course's answers.
    """
    every = (missteps(own, probe, units, figures) for own in plan.ways)
    return tuple(tuple(sorted(made, key=rank)) for made in every)


@dataclass(frozen=True, slots=True)
class WrongWorking:
    """A misstep and everything it leads to, in the order it comes to it.

    values: coherent units, one entry a student.
    """

    misstep: Misstep
    values: Mapping[str, Column]


def wrong_workings(cases: Sequence[Case], made: Missteps) -> list[WrongWorking]:
    """Those of cases of one problem, the likeliest first."""
    plan = cases[0].plan
    given = {id: np.array([case.values[id] for case in cases]) for id in cases[0].numbers}
    if plan.branches:
        return sorted(_to_first_limit(plan, made, given, len(cases)), key=lambda w: rank(w.misstep))
    (own,) = made
    return [WrongWorking(each, _values(each, given, len(cases))) for each in own]


def _values(misstep: Misstep, given: Probe, count: int) -> dict[str, Column]:
    found = wrong_values(misstep, given)
    return {id: np.broadcast_to(np.asarray(v, float), count) for id, v in found.items()}


def _to_first_limit(
    plan: Plan, missteps: Missteps, given: Probe, count: int
) -> Iterator[WrongWorking]:
    """A slip is made on the way to every limit where it can be; then the first limit is taken.

    And one limit alone may be looked at.  What belongs to other states is right.
    """
    right = {id: np.broadcast_to(each, count) for id, each in rerun(plan, given).items()}
    for find in utmost_finds(plan.system):
        rows = [row for row in zip(plan.branches, missteps, strict=True) if row[0].utmost == find]
        made = [(branch, {_same(each): each for each in own}) for branch, own in rows]
        for key in dict.fromkeys(key for _, own in made for key in own):
            slipped = [own.get(key, Misstep("", branch.plan)) for branch, own in made]
            told = next(own[key] for _, own in made if key in own)
            columns = [_values(each, given, count) for each in slipped]
            yield WrongWorking(told, right | _first(find, columns))
        for branch, _ in rows:
            misstep, values = _alone(branch, given, count)
            utmost = {find.quantity: values[find.quantity]}  # what a wrong limit spoils first
            yield WrongWorking(misstep, utmost | right | values)


def _same(misstep: Misstep) -> tuple[str, str, str]:
    """What tells one slip from another on the way to any limit."""
    return misstep.slip, misstep.way, repr(misstep.parts)


def _first(find: Find, columns: Sequence[Mapping[str, Column]]) -> dict[str, Column]:
    """Of the ways to each limit the one that ends first."""
    ends = np.stack([each[find.quantity] for each in columns])
    possible = np.isfinite(ends) & (ends > 0.0)
    first = np.argmin(np.where(possible, way_sought(find) * ends, np.inf), axis=0)
    shared = (id for id in columns[0] if all(id in each for each in columns))
    return {id: np.choose(first, [each[id] for each in columns]) for id in shared}


def _alone(branch: Branch, given: Probe, count: int) -> tuple[Misstep, dict[str, Column]]:
    misstep = Misstep("other_limit", branch.plan, parts={"limit": branch.limit})
    return misstep, _values(misstep, given, count)
