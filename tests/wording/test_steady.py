"""Of what slides, or is slid on, nobody says that it is at rest."""

from __future__ import annotations

import pytest

from tests.situations import HEAD
from tests.wording.own_telling import told, told_of

SLED = (
    HEAD
    + """
[given]
W = { name = "weight", choices = [200], unit = "N" }
mu = { name = "coefficient of kinetic friction", choices = [0.3], unit = "1" }
b = { name = "width", choices = [0.8], unit = "m" }
h = { name = "height of the push", choices = [0.5], unit = "m" }
[unknown]
x = { name = "distance of the normal force", unit = "m", from = 0, to = 0.8 }
[points]
A = [0, 0]
B = ["b", 0]
C = [0, "h"]
P = ["x", 0]
G = ["b/2", "h"]
[body.chest]
along = ["A", "B"]
[[weight]]
at = "G"
force = "W"
of = "chest"
[[rough]]
at = "P"
normal = "N"
friction = "f"
direction = 90
friction_direction = 180
coefficient = "mu"
STEADY
[[force]]
at = "C"
direction = 0
symbol = "F"
name = "hand"
[[find]]
quantity = "F"
[[find]]
quantity = "x"
"""
)


@pytest.mark.parametrize(
    ("sliding", "still"), [("sliding = true", "at rest or in steady motion"), ("", "at rest")]
)
def test_a_body_that_slides_steadily_need_not_be_at_rest(sliding: str, still: str) -> None:
    lines = told(SLED.replace("STEADY", sliding))
    said = [line for line in lines if "The chest is" in line]
    assert said
    assert all(f"The chest is {still}, so the" in line for line in said)


def test_rest_that_is_to_be_found_out_is_only_supposed() -> None:
    lines = told_of("ladder-holds")
    assert any(line.startswith("The ladder is taken to stay at rest, so the t") for line in lines)
    assert not any("is at rest" in line for line in lines)
