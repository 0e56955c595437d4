"""Wedges in the template language: under a block, beside a crate, under the end of a bar."""

WEDGE = """
[body.block]
particle = true
[body.wedge]
particle = true
[[weight]]
body = "block"
mass = "m"
[[contact]]
body = "block"
direction = 180
symbol = "G"
name = "guide"
[[rough]]
body = "block"
other = "wedge"
direction = "90 - theta"
friction_direction = "-theta"
normal = "N_1"
friction = "f_1"
[[rough]]
body = "wedge"
name = "floor"
normal = "N_2"
friction = "f_2"
friction_direction = 180
[[force]]
body = "wedge"
direction = 0
symbol = "P"
name = "push"
[[find]]
quantity = "P"
"""
DRIVEN_DOWN = """
[body.wedge]
particle = true
[body.crate]
particle = true
[[weight]]
body = "crate"
mass = "m"
[[weight]]
body = "wedge"
mass = "m/10"
of = "wedge"
symbol = "W_w"
[[contact]]
body = "crate"
direction = 90
symbol = "N_3"
name = "floor"
[[contact]]
body = "crate"
other = "wedge"
direction = "-theta"
symbol = "N_1"
[[contact]]
body = "wedge"
direction = 0
symbol = "N_2"
name = "wall"
[[force]]
body = "wedge"
direction = 270
symbol = "P"
name = "push"
[[find]]
quantity = "P"
"""
RAISED = """
[points]
A = [0, 0]
B = ["L", 0]
[body.beam]
along = ["A", "B"]
[body.wedge]
particle = true
[[hinge]]
body = "beam"
at = "A"
symbol = "R"
[[weight]]
body = "beam"
mass = "m"
uniform = true
[[contact]]
body = "beam"
at = "B"
other = "wedge"
direction = "90 + theta"
symbol = "N_1"
[[contact]]
body = "wedge"
direction = 90
symbol = "N_2"
name = "floor"
[[force]]
body = "wedge"
direction = 180
symbol = "P"
name = "push"
[[find]]
quantity = "P"
"""
