"""A beam in two states, each a body of its own with the points of the other: nothing joins them."""

from __future__ import annotations

from typing import Final

from tests.situations import HEAD

TWO_STATES: Final = (
    HEAD
    + """
[given]
L = { name = "length", choices = [2.0], unit = "m" }
W = { name = "weight", choices = [60], unit = "N" }
[points]
A = [0, 0]
B = ["L", 0]
[body.first]
along = ["A", "B"]
name = "hinged beam"
[body.second]
along = ["A", "B"]
name = "clamped beam"
[[hinge]]
body = "first"
at = "A"
symbol = "R"
[[cable]]
body = "first"
at = "B"
direction = 120
symbol = "T"
[[fixed]]
body = "second"
at = "A"
symbol = "S"
couple = "M_A"
[[weight]]
body = "first"
at = "B"
force = "W"
of = "load"
symbol = "W_1"
[[weight]]
body = "second"
at = "B"
force = "W"
of = "load"
symbol = "W_2"
[[find]]
quantity = "T"
[[find]]
quantity = "M_A"
"""
)
