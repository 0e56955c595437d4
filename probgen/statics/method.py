"""How a course works, as far as it shapes the equations and their order."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

TorqueForm = Literal["angle", "arm", "components"]
Rotation = Literal["counter-clockwise", "clockwise"]
Axes = Literal["simplest", "level"]
Order = Literal["shortest", "forces first", "torques first"]
Pivot = Literal["simplest", "support", "most unknowns"]


@dataclass(frozen=True, slots=True)
class Method:
    """torque: "angle" F r sin(angle), "arm" F times lever arm, "components" x F_y - y F_x.

    positive: the rotation whose torques are counted positive in the working.
    axes: "simplest" may sum forces along a tilted surface, "level" keeps to x and y.
    order: which balances are taken where several would do: "shortest" has no rule.
    pivot: where torques are taken about: "simplest" gives the shortest balance, "support" is where
    the body is held, "most unknowns" where most unknown forces drop out.
    No order and no pivot is kept to where the working would need another step for it.
    """

    torque: TorqueForm = "angle"
    positive: Rotation = "counter-clockwise"
    axes: Axes = "simplest"
    order: Order = "shortest"
    pivot: Pivot = "simplest"
