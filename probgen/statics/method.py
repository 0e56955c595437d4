"""How a course works, as far as it shapes the equations and their order."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

TorqueForm = Literal["angle", "arm", "components"]
Rotation = Literal["counter-clockwise", "clockwise"]
Axes = Literal["simplest", "level"]
Order = Literal["shortest", "forces first", "torques throughout"]
Pivot = Literal["simplest", "support"]
Trusses = Literal["shortest", "joints", "sections"]


@dataclass(frozen=True, slots=True)
class Method:
    """torque: "angle" F r sin(angle), "arm" F times lever arm, "components" x F_y - y F_x.

    positive: the rotation whose torques are counted positive in the working.
    axes: "simplest" may sum forces along a tilted surface, "level" keeps to x and y.
    order: "shortest" has no rule, "forces first" begins with balances of forces where it can,
    "torques throughout" takes a balance of torques wherever one will do.
    pivot: where torques are taken about: "simplest" gives the shortest balance, "support" is a
    point where the body is held.
    trusses: what they are taken apart into, where their template does not say it.
    Neither is kept to where the working would need another step for it.
    """

    torque: TorqueForm = "angle"
    positive: Rotation = "counter-clockwise"
    axes: Axes = "simplest"
    order: Order = "shortest"
    pivot: Pivot = "simplest"
    trusses: Trusses = "shortest"
