"""Which of several angles it is, and why: by hand from the signs of cosine and sine.

A ring is pulled by 60 N to the left and by a rope of 120 N at t: cos t = 1/2, so t = 60° or -60°,
which is 300°; pulled by 60 N down, sin t = 1/2, so t = 30° or 150°.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.situations import HEAD
from tests.wording.own_telling import told

HELD = """
[given]
F = {{ name = "pull", choices = [60], unit = "N" }}
T = {{ name = "tension", choices = [120], unit = "N" }}
[unknown]
t = {{ name = "angle", unit = "deg", from = {low}, to = {high} }}
[body.ring]
particle = true
[[force]]
direction = {pull}
magnitude = "F"
name = "wind"
[[force]]
direction = "t"
magnitude = "T"
name = "hand"
[[cable]]
direction = {rest}
symbol = "R"
[[find]]
quantity = "t"
"""
ALIKE = [
    ((-90, 0), 180, 90, "cos t = F/T",
     "An angle and its opposite have the same cosine; t, which has to lie between −90° and 0°, is "
     "not the one that arccos gives:", "t = −arccos(F/T)"),
    ((180, 360), 180, 90, "cos t = F/T",
     "An angle and its opposite have the same cosine, and a whole turn changes nothing; t, which "
     "has to lie between 180° and 360°, is not the one that arccos gives:",
     "t = 360° − arccos(F/T)"),
    ((90, 180), 270, 0, "sin t = F/T",
     "Two angles that add up to 180° have the same sine; t, which has to lie between 90° and 180°, "
     "is not the one that arcsin gives:", "t = 180° − arcsin(F/T)"),
]  # fmt: skip

FREE = """
[given]
F_1 = {{ name = "pull", choices = [60], unit = "N" }}
F_2 = {{ name = "other pull", choices = [80], unit = "N" }}
[unknown]
t = {{ name = "angle", unit = "deg", from = {low}, to = {high} }}
T = {{ name = "tension", unit = "N", from = 0, to = 900 }}
[body.ring]
particle = true
[[force]]
direction = {across}
magnitude = "F_1"
name = "wind"
[[force]]
direction = {along}
magnitude = "F_2"
name = "hand"
[[force]]
direction = "t"
magnitude = "T"
name = "rope"
[[find]]
quantity = "t"
[[find]]
quantity = "T"
"""
# The rope pulls against both: to which side its parts then point.
QUADRANTS = [
    (0, 90, 180, 270, "T cos t and T sin t are negative, so t lies between 180° and 270°, half a "
     "turn from what the arctangent gives:"),
    (0, 270, 90, 180, "T cos t is negative and T sin t positive, so t lies between 90° and 180°, "
     "half a turn from what the arctangent gives:"),
    (180, 90, 270, 360, "T cos t is positive and T sin t negative, so t lies between 270° and "
     "360°, a whole turn from what the arctangent gives:"),
]  # fmt: skip


@pytest.mark.parametrize(("within", "pull", "rest", "ratio", "why", "found"), ALIKE)
def test_an_angle_that_the_arc_function_does_not_give(
    within: tuple[int, int], pull: int, rest: int, ratio: str, why: str, found: str
) -> None:
    low, high = within
    lines = told(HEAD + HELD.format(low=low, high=high, pull=pull, rest=rest))
    at = lines.index(why)
    assert lines[at - 1] == ratio
    assert lines[at + 1] == found


@pytest.mark.parametrize(("across", "along", "low", "high", "why"), QUADRANTS)
def test_the_quadrant_follows_from_the_signs_of_the_balances(
    across: int, along: int, low: int, high: int, why: str
) -> None:
    lines = told(HEAD + FREE.format(across=across, along=along, low=low, high=high))
    at = lines.index(why)
    assert lines[at - 1].startswith("tan t = ")
    assert lines[at + 1].startswith("t = arctan(")


def test_nothing_is_said_of_an_angle_that_the_arc_function_gives() -> None:
    lines = told(HEAD + HELD.format(low=0, high=90, pull=180, rest=270))
    assert not [line for line in lines if "has to lie" in line or "lies between" in line]


def test_a_value_that_no_formula_gives_is_said_to_be_tried() -> None:
    """A bar held by a level spring: W/2 tan t = k (L sin t - b)."""
    path = Path(__file__).parents[1] / "independent/nonlinear/spring.toml"
    lines = told(path.read_text(encoding="utf-8"))
    at = lines.index(
        "No formula gives t. Trying values between 45° and 89° until the equation holds:"
    )
    assert lines[at - 1].endswith("k L² sin t cos t − k b L cos t = 0")
    assert lines[at + 1].startswith("t = ")


GUYED = (
    HEAD
    + """
[given]
F = { name = "pull of the guy", choices = [60], unit = "N" }
P = { name = "left bag", choices = [60], unit = "N" }
Q = { name = "right bag", choices = [60], unit = "N" }
y = { name = "slope of the guy", choices = [75], unit = "deg" }
[unknown]
t = { name = "left slope", unit = "deg", from = 0, to = 90 }
u = { name = "right slope", unit = "deg", from = 0, to = 90 }
[body.ring]
particle = true
[[cable]]
direction = "-y"
magnitude = "F"
name = "guy"
[[cable]]
direction = "180 - t"
magnitude = "P"
name = "left cord"
[[cable]]
direction = "u"
magnitude = "Q"
name = "right cord"
[[find]]
quantity = "t"
[[find]]
quantity = "u"
"""
)


def test_two_slopes_beside_a_tilted_pull_by_the_cosine_of_their_difference() -> None:
    """Three equal pulls are 120° apart: t = 75° - 60° = 15°, u = 180° - 15° - 120° = 45°."""
    lines = told(GUYED)
    at = lines.index("Q² = F² + P² − 2 F P cos(t − y)")
    assert lines[at + 1 : at + 4] == [
        "An angle and its opposite have the same cosine; t, which has to lie between 0° and 90°, "
        "is not the one that arccos gives:",
        "cos(t − y) = (F² + P² − Q²)/(2 F P)",
        "t = y − arccos((F² + P² − Q²)/(2 F P))",
    ]
    assert "= 15.0°" in lines
    assert "= 45.0°" in lines
