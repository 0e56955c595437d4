"""The solution: the plan's steps evaluated, for one draw or for a batch."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Value, evaluate
from probgen.statics.plan import Branch, Plan, extreme_find
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


_STEP: Final = 1e-4
"""How far beyond a limit's value, relative, it is looked whether the limit is passed."""


def _at_first_limit(plan: Plan, values: Mapping[str, Value]) -> dict[str, Value]:
    """Everything at the limit reached first when the quantity grows (or, smallest, shrinks).

    Only limits that are passed on going on that way count; where none does there is no value.
    """
    extreme = extreme_find(plan.system)
    assert extreme is not None
    way = 1.0 if extreme.form is Form.LARGEST else -1.0
    reached = [solve(branch.plan, values) for branch in plan.branches]
    rows = np.broadcast_arrays(*(np.asarray(each[extreme.quantity], float) for each in reached))
    sizes = np.stack(rows)
    counts = np.stack([
        np.broadcast_to(_passed(branch, extreme.quantity, size, way, values), sizes.shape[1:])
        for branch, size in zip(plan.branches, rows, strict=True)
    ])  # fmt: skip
    possible = np.isfinite(sizes) & counts
    first = np.argmin(np.where(possible, way * sizes, np.inf), axis=0)
    none = ~possible.any(axis=0)
    solved: dict[str, Value] = {GOVERNING: first[()] * 1.0}
    for name in reached[0]:
        if all(name in each for each in reached):
            choices = np.broadcast_arrays(*(np.asarray(each[name], float) for each in reached))
            solved[name] = np.choose(first, choices)[()]
    solved[extreme.quantity] = np.where(none, np.nan, solved[extreme.quantity])[()]
    return solved


def _passed(
    branch: Branch, quantity: str, size: Value, way: float, values: Mapping[str, Value]
) -> NDArray[np.bool_]:
    """Whether the limit is broken a little further on."""
    further = np.asarray(size) + way * _STEP * np.maximum(np.abs(size), 1e-6)
    state = solve(branch.beyond, {**values, quantity: further})
    left, right = (np.asarray(evaluate(s, state)) for s in (branch.limit.left, branch.limit.right))
    return left > right if branch.limit.relation == "<=" else left < right
