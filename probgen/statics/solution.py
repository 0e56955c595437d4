"""The solution: the plan's steps evaluated, for one draw or for a batch."""

from __future__ import annotations

from collections.abc import Mapping

from probgen.quantities.expression import Value, evaluate
from probgen.statics.plan import Plan


def solve(plan: Plan, values: Mapping[str, Value]) -> dict[str, Value]:
    """Values of everything the plan reaches, coherent units, angles in degrees.

    values: givens, derived quantities and g; floats for one draw or arrays with one entry a draw.
    """
    solved = dict(values)
    for definition in plan.definitions:
        solved[definition.variable] = evaluate(definition.expression, solved)
    for step in plan.steps:
        solved[step.unknown] = evaluate(step.expression, solved)
    for outcome in plan.outcomes:
        solved[outcome.id] = evaluate(outcome.expression, solved)
    return solved
