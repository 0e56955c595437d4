"""A situation seen from above, for tests of several rooms."""

from __future__ import annotations

from typing import Final

from tests.situations import HEAD

FROM_ABOVE: Final = (
    'view = "plan"\n'
    + HEAD
    + """
[given]
L = { name = "length", choices = [2.00], unit = "m" }
F = { name = "wind force", choices = [60], unit = "N" }
theta = { name = "slope", symbol = "theta", choices = [60], unit = "deg" }
[points]
A = [0, 0]
B = ["L", 0]
[body.gate]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[force]]
at = "B"
direction = "180 + theta"
magnitude = "F"
name = "wind"
[[cable]]
at = "B"
direction = 30
symbol = "T"
[[find]]
quantity = "T"
[[find]]
quantity = "R"
"""
)
"""A gate on the x axis, seen from above: the wind pushes to the south of west, a rope holds it."""
