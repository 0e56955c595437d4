"""The solution: the plan's steps evaluated, for one draw or for a batch."""

from __future__ import annotations

from collections.abc import Mapping

from probgen.quantities.expression import Value
from probgen.statics.plan import Plan
from probgen.statics.rerun import rerun


def solve(plan: Plan, values: Mapping[str, Value]) -> dict[str, Value]:
    """Values of everything the plan reaches, as `rerun` gives them when nobody states anything."""
    return rerun(plan, values)
