"""Small templates to draw from."""

from collections.abc import Callable

import pytest

from probgen.bank.reading import read_template
from probgen.bank.template import Template

HOOK = """
id = "hook"
revision = 1
title = "A hook"
family = "beams"
level = 1
goals = ["torque"]
statement = "A bar."
[given]
L = {{ name = "length", from = 0.50, to = {longest}, step = 0.05, unit = "m" }}
m = {{ name = "bar mass", from = 1.0, to = 4.0, step = 0.5, unit = "kg" }}
[derived]
d = {{ is = "L/2", round = 0.01, name = "half", unit = "m" }}
q = {{ is = "m/(L - 0.5 m + 1 cm)^2*1 m^2/1 kg", name = "ratio", unit = "1" }}
[points]
A = [0, 0]
B = ["L", 0]
C = ["d", 0]
[body.bar]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[cable]]
at = "B"
direction = 120
symbol = "T"
[[weight]]
at = "C"
mass = "m"
[[find]]
quantity = "T"
[[require]]
that = "L {relation} 0.60 m"
because = "a rule of the test"
[[require]]
that = "T < 20 N"
because = "another one"
"""


@pytest.fixture
def hook() -> Callable[..., Template]:
    """A template of 7 masses and as many lengths as asked for; only lengths that hold are drawn."""

    def made(longest: str = "0.80", relation: str = ">") -> Template:
        return read_template(HOOK.format(longest=longest, relation=relation), "hook.toml")

    return made
