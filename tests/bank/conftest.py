"""Two small sound templates, and how to spoil one."""

from collections.abc import Callable

import pytest

SHELF = """
id = "shelf"
revision = 1
title = "Shelf on a stay cable"
family = "beams"
level = 2
goals = ["torque balance"]
cautions = ["rigging"]
statement = "A shelf of length {{ L }} is hinged at {{ A }}; find {{ T }}."
pivot = "A"
[given]
L = { name = "shelf length", from = 0.80, to = 1.60, step = 0.10, unit = "m" }
m = { name = "shelf mass", choices = [6.0, 2.0, 4.5], unit = "kg" }
tree_mass = { name = "mass of the tree", symbol = "M", from = 3, to = 12, step = 3, unit = "kg" }
theta = { name = "cable angle", from = 25, to = 65, step = 5, unit = "deg", measured = "up" }
[derived]
d = { is = "0.85*L", round = 0.01, name = "distance to the cable", unit = "m" }
[points]
A = [0, 0]
C = ["d", 0]
G = ["L/2", "0"]
B = { from = "C", distance = "L - d", direction = 0 }
W = ["-L", "1.5 m"]
[body.shelf]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[cable]]
at = "C"
direction = "180 - theta"
symbol = "T"
[[weight]]
at = "G"
mass = "m"
[[weight]]
at = "B"
mass = "tree_mass"
[[find]]
quantity = "T"
[[find]]
quantity = "R"
as = "magnitude and direction"
[[require]]
that = "T < 1500 N"
because = "a light cable"
[depicts]
shelf = "beam"
W_t = "tree"
"""

PAIR = """
id = "pair"
revision = 1
title = "Two bodies"
family = "levers"
level = 2
goals = ["action and reaction"]
statement = "Two bodies."
[given]
m = { name = "mass", from = 2, to = 9, step = 1, unit = "kg" }
h = { name = "height", from = 1, to = 2, step = 0.1, unit = "m" }
[points]
J = [0, 0]
K = [0, "h"]
Q = ["h", 0]
[body.post]
along = ["J", "K"]
[body.prop]
along = ["Q", "K"]
[body.ring]
particle = true
[[find]]
quantity = "W_r"
[[weight]]
body = "ring"
mass = "m"
"""


@pytest.fixture
def shelf() -> str:
    return SHELF


@pytest.fixture
def pair() -> str:
    return PAIR


@pytest.fixture
def spoilt() -> Callable[[str, str], str]:
    """The template with one passage replaced, which must be there."""

    def replaced(old: str, new: str) -> str:
        assert old in SHELF
        return SHELF.replace(old, new, 1)

    return replaced
