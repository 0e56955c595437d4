"""Ropes over pulleys between bodies that have their places: a frame, and a plank."""

FRAME = """
[points]
A = [0, 0]
B = ["L", 0]
C = ["L/2", "L"]
G = ["-0.8 m", 0]
M = ["L/2", "0.2*L"]
[body.left]
along = ["A", "C"]
[body.right]
along = ["B", "C"]
[body.pin]
particle = true
along = ["C"]
[body.load]
particle = true
along = ["M"]
[[hinge]]
body = "left"
at = "A"
symbol = "R"
[[hinge]]
body = "right"
at = "B"
symbol = "N"
[[hinge]]
body = "left"
other = "pin"
at = "C"
symbol = "P"
[[hinge]]
body = "right"
other = "pin"
at = "C"
symbol = "Q"
[[rope]]
symbol = "S"
pulls = [
  { body = "load", direction = 90 },
  { body = "pin", direction = 270 },
  { body = "pin", TOWARD },
]
[[weight]]
body = "load"
mass = "m"
[[find]]
quantity = "S"
"""
"""A frame over whose top a rope runs from a load to the ground."""

TOWARD = 'toward = "G"'
BY_LENGTHS = 'direction = { rise = "-L", run = "-(L/2 + 0.8 m)" }'

PLANK = """
[points]
A = [0, 0]
B = ["L", 0]
C = ["L/3", 0]
V = [0, "2*L/3"]
[body.plank]
along = ["A", "B"]
[body.rigger]
particle = true
[[cable]]
body = "plank"
at = "A"
toward = "V"
symbol = "S"
[[rope]]
symbol = "T"
pulls = [
  { body = "plank", at = "B", direction = 90 },
  { body = "rigger", direction = 90 },
]
[[contact]]
body = "rigger"
other = "plank"
at = "C"
direction = 90
symbol = "N"
[[weight]]
body = "rigger"
mass = "m"
[[find]]
quantity = "T"
"""
"""Somebody who stands on a plank and holds the rope that its end hangs on."""
