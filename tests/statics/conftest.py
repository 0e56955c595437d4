"""Small situations, each a template's text cut down to what statics needs."""

from collections.abc import Callable

import numpy as np
import pytest
from numpy.typing import NDArray

from probgen.bank.reading import read_template
from probgen.statics.system import System

HEAD = """
id = "trial"
revision = 1
title = "Trial"
family = "beams"
level = 1
goals = ["trial"]
statement = "Trial."
"""

BEAM = """
[given]
L = { name = "length", from = 1.2, to = 1.2, step = 0.1, unit = "m" }
d = { name = "cable point", from = 0.96, to = 0.96, step = 0.1, unit = "m" }
m = { name = "mass", from = 4.0, to = 4.0, step = 0.1, unit = "kg" }
M = { name = "load mass", from = 8.0, to = 8.0, step = 0.1, unit = "kg" }
theta = { name = "angle", from = 40, to = 40, step = 1, unit = "deg" }
[points]
A = [0, 0]
C = ["d", 0]
G = ["L/2", 0]
B = ["L", 0]
[body.shelf]
along = ["A", "B"]
"""

WEIGHTS = """
[[weight]]
at = "G"
mass = "m"
symbol = "W_s"
[[weight]]
at = "B"
mass = "M"
symbol = "W_t"
"""

CABLE = """
[[cable]]
at = "C"
direction = "180 - theta"
symbol = "T"
"""
HINGE = """
[[hinge]]
at = "A"
symbol = "R"
"""
FIND_ALL = """
[[find]]
quantity = "T"
[[find]]
quantity = "R"
"""

Values = dict[str, NDArray[np.float64]]


@pytest.fixture
def beam_values() -> Values:
    """Three draws of the shelf on a stay cable; the first is L 1.2, d 0.96, m 4, M 8, 40°."""
    return {
        "L": np.array([1.2, 1.4, 1.1]),
        "d": np.array([0.96, 1.0, 0.7]),
        "m": np.array([4.0, 5.0, 3.5]),
        "M": np.array([8.0, 3.0, 11.0]),
        "theta": np.array([40.0, 25.0, 62.0]),
        "g": np.array([9.8, 9.8, 9.8]),
    }


@pytest.fixture
def shelf() -> Callable[[str], System]:
    """The shelf with other supports and finds: a function from their TOML to a System."""

    def build(rest: str) -> System:
        return read_template(HEAD + BEAM + rest + WEIGHTS, "trial.toml").system

    return build


@pytest.fixture
def stayed(shelf: Callable[[str], System]) -> System:
    """The shelf hinged at A and held by a cable."""
    return shelf(HINGE + CABLE + FIND_ALL)
