"""The solution: the plan's steps evaluated, for one draw or for a batch."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

import numpy as np

from probgen.quantities.expression import Value, evaluate
from probgen.statics.plan import Plan, extreme_find
from probgen.statics.system import Form

GOVERNING: Final = "governing limit"
"""Name under which a solution keeps the place of the limit that is reached first."""


def solve(plan: Plan, values: Mapping[str, Value]) -> dict[str, Value]:
    """Values of everything the plan reaches, coherent units, angles in degrees.

    values: givens, derived quantities and g; floats for one draw or arrays with one entry a draw.
    Where limits are asked, everything is at the limit reached first, whose place is `GOVERNING`.
    """
    if plan.branches:
        return _at_first_limit(plan, values)
    solved = dict(values)
    for definition in plan.definitions:
        solved[definition.variable] = evaluate(definition.expression, solved)
    for step in plan.steps:
        solved[step.unknown] = evaluate(step.expression, solved)
    for outcome in plan.outcomes:
        solved[outcome.id] = evaluate(outcome.expression, solved)
    return solved


def _at_first_limit(plan: Plan, values: Mapping[str, Value]) -> dict[str, Value]:
    extreme = extreme_find(plan.system)
    assert extreme is not None
    reached = [solve(branch.plan, values) for branch in plan.branches]
    rows = np.broadcast_arrays(*(np.asarray(each[extreme.quantity], float) for each in reached))
    sizes = np.stack(rows)
    possible = np.isfinite(sizes) & (sizes >= 0.0)
    if extreme.form is Form.LARGEST:
        first = np.argmin(np.where(possible, sizes, np.inf), axis=0)
    else:
        first = np.argmax(np.where(possible, sizes, -np.inf), axis=0)
    solved: dict[str, Value] = {GOVERNING: first[()] * 1.0}
    for name in reached[0]:
        if all(name in each for each in reached):
            choices = np.broadcast_arrays(*(np.asarray(each[name], float) for each in reached))
            solved[name] = np.choose(first, choices)[()]
    return solved
