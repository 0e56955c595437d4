"""Bodies and particles that ropes hold: situations that several rooms work, numbers by hand."""

from __future__ import annotations

from typing import Final

from tests.situations import HEAD

OVER_A_PULLEY: Final = (
    HEAD
    + """
[given]
W = { name = "weight of the crate", choices = [200], unit = "N" }
[points]
A = [0, 0]
B = ["2 m", 0]
P = ["2 m", "0.2 m"]
Q = ["2.2 m", 0]
U = [0, "0.2 m"]
[body.beam]
along = ["A", "B"]
[body.pulley]
along = ["P", "B", "Q"]
[body.crate]
particle = true
[[fixed]]
body = "beam"
at = "A"
symbol = "R"
couple = "C_A"
[[hinge]]
body = "beam"
other = "pulley"
at = "B"
symbol = "F"
[[rope]]
symbol = "T"
pulls = [
  { body = "pulley", at = "P", toward = "U" },
  { body = "pulley", at = "Q", direction = 270 },
  { body = "crate", direction = 90 },
]
[[weight]]
body = "crate"
force = "W"
[[find]]
quantity = "F"
as = "components"
"""
)
"""A rope over a pulley at the end of a built-in beam pulls it left and down by 200 N each."""

STANDING: Final = (
    HEAD
    + """
[given]
L = { name = "length of the plank", choices = [4.0], unit = "m" }
d = { name = "distance of the person", choices = [2.0], unit = "m" }
W = { name = "weight of the plank", choices = [200], unit = "N" }
P = { name = "weight of the person", choices = [700], unit = "N" }
[points]
A = [0, 0]
B = ["L", 0]
C = ["d", 0]
D = ["d", "1 m"]
[body.plank]
along = ["A", "B"]
[body.person]
particle = true
along = ["C"]
[[cable]]
body = "plank"
at = "A"
direction = 90
symbol = "S"
[[rope]]
symbol = "T"
pulls = [
  { body = "plank", at = "B", direction = 90 },
  { body = "person", direction = 90 },
]
[[contact]]
body = "person"
other = "plank"
at = "C"
direction = 90
symbol = "N"
[[weight]]
body = "plank"
force = "W"
uniform = true
symbol = "W"
[[weight]]
body = "person"
force = "P"
[[find]]
quantity = "T"
[[find]]
quantity = "S"
[[find]]
quantity = "N"
"""
)
"""On a plank, holding the rope of its end: T (4 m) + T (2 m) is 200 N (2 m) + 700 N (2 m), so T is
300 N, N 400 N, and S as much as T.
"""
