"""One problem with one student's numbers, solved: what every telling of it starts from."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from probgen.bank.labels import Labels
from probgen.quantities.expression import Number
from probgen.quantities.unit import ANGLE, FORCE
from probgen.statics.plan import Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import System

DUST: Final = 1e-11
"""Of the largest force, or of a degree: what rounding of floats leaves in place of nothing."""


@dataclass(frozen=True, slots=True)
class Case:
    """A solved problem.

    labels: what its quantities, bodies and supports are called.
    numbers: givens, derived quantities and g as printed in the statement, in their own units.
    values: everything known after the plan, coherent units, angles in degrees.
    """

    plan: Plan
    labels: Labels
    numbers: Mapping[str, Number]
    values: Mapping[str, float]

    @property
    def system(self) -> System:
        return self.plan.system

    @property
    def is_idle(self) -> bool:
        """Whether no force acts at all, as on what has no weight: nobody means that."""
        forces = (force.id for force in self.system.forces)
        sizes = [self.values[id] for id in forces if id in self.values]
        return bool(self.plan.steps and sizes) and not any(sizes)


def case_of(
    plan: Plan, labels: Labels, numbers: Mapping[str, Number], solved: Mapping[str, float]
) -> Case:
    """The case, with forces and angles that only rounding of floats keeps from zero set to zero."""
    forces = {force.id for force in plan.system.forces}
    known = {name: float(value) for name, value in solved.items()}
    largest = max((abs(known[name]) for name in forces if name in known), default=0.0)
    sizes = {FORCE: largest, ANGLE: 1.0}
    for name in known:
        variable = plan.system.variables.get(name)
        if variable and abs(known[name]) < DUST * sizes.get(variable.dimension, 0.0):
            known[name] = 0.0
    for outcome in plan.outcomes:
        if outcome.of.is_direction:
            known[outcome.id] = _direction(known, outcome.of)
    return Case(plan, labels, dict(numbers), known)


def _direction(known: Mapping[str, float], of: Quantity) -> float:
    return math.degrees(math.atan2(known[of.y], known[of.x]))
