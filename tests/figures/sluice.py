"""A flap under water, as a template tells it."""

from __future__ import annotations

SLUICE = """
t = { name = "depth of the hinge", choices = [1.5], unit = "m" }
v = { name = "width", choices = [1.5], unit = "m" }
k = { name = "weight of water", choices = [9.8], unit = "kN/m^3" }
[points]
B = [0, 0]
A = { from = "B", distance = "L", direction = 90 }
[body.flap]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[contact]]
at = "B"
direction = 0
symbol = "N"
[[distributed]]
from = "A"
to = "B"
start = "k*t*v"
end = "k*(t + L)*v"
direction = 180
symbol = "F_w"
[[find]]
quantity = "N"
"""
"""A flap under water that stands to its right, t above the hinge; it is v wide."""
