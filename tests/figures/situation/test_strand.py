"""The straight parts of a rope over a pulley's rim, and down to what hangs from it."""

from __future__ import annotations

import pytest

from probgen.figures.parts.ground import Surface
from probgen.figures.situation.line import lines_of
from probgen.figures.situation.strand import is_drawn_from, other_end
from probgen.statics.system import Kind
from tests.figures.sketches import TWO, stage

HOIST = """
[points]
C = [0, 0]
P = [0, "L/8"]
Q = ["L/8", 0]
K = ["L/8 + ASIDE", "-L/3"]
[body.wheel]
along = ["C", "P"]
[body.crate]
particle = true
along = ["K"]
[[hinge]]
body = "wheel"
at = "C"
symbol = "R"
[[weight]]
body = "crate"
mass = "m"
[[rope]]
symbol = "T"
pulls = [
  { body = "wheel", at = "P", direction = 180 },
  { body = "wheel", at = "Q", direction = 270 },
  { body = "crate", direction = 90 },
]
[[find]]
quantity = "T"
"""


def test_a_rope_leads_from_the_rim_down_to_what_hangs_from_it_and_no_farther() -> None:
    hoist = stage(HOIST.replace("ASIDE", "0 m"), 'wheel = "pulley"')
    level, down, up = (e for e in hoist.system.elements if e.kind is Kind.ROPE)
    assert other_end(hoist, level) is None
    assert (other_end(hoist, down), other_end(hoist, up)) == (up, down)
    assert is_drawn_from(hoist, down, up)
    assert not is_drawn_from(hoist, up, down)
    walls: list[Surface] = []
    drawn = [line.ends for line in lines_of(hoist, walls) if line.element in (down.id, up.id)]
    assert drawn == [(hoist.spot("Q"), hoist.rest(up))]
    assert {wall.normal for wall in walls} == {0.0}  # what holds the level part, and no ceiling


@pytest.mark.parametrize("aside", ["0.1 m", "-0.05 m"])
def test_what_hangs_elsewhere_is_not_on_that_rope(aside: str) -> None:
    hoist = stage(HOIST.replace("ASIDE", aside), 'wheel = "pulley"')
    assert not any(other_end(hoist, each) for each in hoist.system.elements)


def test_blocks_that_pull_on_each_other_over_a_pulley_do_not_face() -> None:
    two = stage(TWO.replace("SLOPE", "0"))
    assert not any(other_end(two, each) for each in two.system.elements)


OVER_AN_END = """
[points]
A = [0, 0]
C = ["L", 0]
K = ["L", "-L/3"]
[body.beam]
along = ["A", "C"]
[body.crate]
particle = true
along = ["K"]
[[fixed]]
body = "beam"
at = "A"
symbol = "R"
couple = "M_A"
[[weight]]
body = "crate"
mass = "m"
[[rope]]
symbol = "T"
pulls = [
  { body = "beam", at = "C", direction = 150 },
  { body = "beam", at = "C", direction = 270 },
  { body = "crate", direction = 90 },
]
[[find]]
quantity = "T"
"""


def test_over_a_pulley_at_a_beam_s_end_it_hangs_from_the_rim() -> None:
    hoist = stage(OVER_AN_END, 'crate = "crate"')
    _, down, up = (each for each in hoist.system.elements if each.kind is Kind.ROPE)
    drawn = {line.element: line.ends for line in lines_of(hoist, []) if line.ends}
    start, end = drawn[down.id]
    rim = start - hoist.spot("C")
    assert rim.real > 5.0
    assert end == hoist.rest(up)
    assert end.real == pytest.approx((hoist.spot("K") + rim).real)  # the crate with it
    assert up.id not in drawn
