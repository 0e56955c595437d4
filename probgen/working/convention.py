"""The course's method as data: every choice changes how a key reads, none changes the physics."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from probgen.quantities.expression import Number
from probgen.quantities.unit import ACCELERATION, SI, UnitSystem

Rotation = Literal["counter-clockwise", "clockwise"]
Turning = Literal["torque", "moment"]
"""The course's word for what turns."""


@dataclass(frozen=True, slots=True)
class Convention:
    """How one course works a problem.

    torque: "angle" writes F r sin(angle between), "arm" force times lever arm, "components" the
    part of the force square to the arm.
    positive: the rotation counted positive.
    axes: "simplest" may sum forces along a tilted surface, "level" keeps to x and y.
    order, pivot: which balances come first and where torques are taken about, as in `Method`.
    trusses: by joints, by sections, or the shorter way, where a template leaves it open.
    gravity: g as its printed digits, in the units' own (m/s^2 or ft/s^2); the usual one if empty.
    figures: significant figures of a final answer; rounding: what happens to an exact half.
    direction: "horizontal" words the angle from the horizontal ("12.3° above the horizontal, to
    the right"), "vertical" from the vertical, "axis" degrees counter-clockwise from +x.
    turning: the course's word, "torque" or "moment".
    tolerance: relative half-width of the interval that earns full marks.
    """

    torque: Literal["angle", "arm", "components"] = "angle"
    positive: Rotation = "counter-clockwise"
    axes: Literal["simplest", "level"] = "simplest"
    gravity: str = ""
    figures: int = 3
    rounding: Literal["half up", "half even"] = "half up"
    direction: Literal["horizontal", "vertical", "axis"] = "horizontal"
    turning: Turning = "torque"
    units: UnitSystem = SI
    tolerance: float = 0.02
    order: Literal["shortest", "forces first", "torques throughout"] = "shortest"
    pivot: Literal["simplest", "support"] = "simplest"
    trusses: Literal["shortest", "joints", "sections"] = "shortest"

    def __post_init__(self) -> None:
        if not self.gravity:
            object.__setattr__(self, "gravity", self.units.gravity)

    @property
    def g(self) -> Number:
        """The acceleration of free fall as printed."""
        return Number(Decimal(self.gravity), self.units.unit_of(ACCELERATION))
