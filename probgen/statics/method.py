"""How a course writes a torque, as far as it shapes the equations."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

TorqueForm = Literal["angle", "arm", "components"]
Rotation = Literal["counter-clockwise", "clockwise"]
Axes = Literal["simplest", "level"]


@dataclass(frozen=True, slots=True)
class Method:
    """torque: "angle" F r sin(angle), "arm" F times lever arm, "components" x F_y - y F_x.

    positive: the rotation whose torques are counted positive in the working.
    axes: "simplest" may sum forces along a tilted surface, "level" keeps to x and y.
    """

    torque: TorqueForm = "angle"
    positive: Rotation = "counter-clockwise"
    axes: Axes = "simplest"
