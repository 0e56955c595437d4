"""The solution: the plan's steps evaluated, for one draw or for a batch."""

from __future__ import annotations

from collections.abc import Mapping

from probgen.quantities.expression import Value, names_in
from probgen.statics.plan import Plan
from probgen.statics.rerun import rerun
from probgen.statics.system import System


def solve(plan: Plan, values: Mapping[str, Value]) -> dict[str, Value]:
    """Values of everything the plan reaches, as `rerun` gives them when nobody states anything."""
    return rerun(plan, values)


def unknown_in_directions(system: System) -> frozenset[str]:
    """The unknowns that forces' directions are written with, which a key tells of every force."""
    held = frozenset[str]().union(*(names_in(force.direction) for force in system.forces))
    return held & frozenset(system.unknowns)
