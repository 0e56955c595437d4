"""Where one bar's end lies on another's: each is notched to half its thickness there."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import runs
from probgen.figures.parts.solid import LAP
from probgen.figures.situation.lap import laps_of
from tests.figures.seen import tagged
from tests.figures.sketches import sketch, stage

BRIDGE = """
[points]
A = [0, 0]
B = ["2*L/3", 0]
C = ["L", 0]
E = ["2*L", 0]
[body.long]
along = ["A", "C"]
[body.short]
along = SHORT
[[roller]]
body = "long"
at = "A"
symbol = "N_A"
[[roller]]
body = "long"
at = "B"
symbol = "N_B"
[[roller]]
body = "short"
at = "E"
symbol = "N_E"
[[contact]]
body = "short"
other = "long"
at = "C"
direction = 90
symbol = "P"
[[weight]]
body = "short"
mass = "m"
uniform = true
[[find]]
quantity = "P"
"""


@pytest.mark.parametrize("short", ['["C", "E"]', '["E", "C"]'])
def test_the_upper_bar_is_the_one_that_is_held_up(short: str) -> None:
    set_out = stage(BRIDGE.replace("SHORT", short))
    found = laps_of(set_out, set_out.system.element("P"))
    assert found == {("short", "C"): 1, ("long", "C"): -1}
    assert laps_of(set_out, set_out.system.element("N_E")) == {}


@pytest.mark.parametrize("short", ['["C", "E"]', '["E", "C"]'])
def test_the_tongues_reach_beyond_the_contact_one_over_the_other(short: str) -> None:
    drawn = sketch(BRIDGE.replace("SHORT", short))
    lower, upper = (
        [spot for shape in tagged(drawn, f"body:{id}") for run in runs(shape) for spot in run]
        for id in ("long", "short")
    )
    left, right = min(s.real for s in upper), max(s.real for s in lower)
    assert right - left == pytest.approx(2 * LAP)
    low, high = min(s.imag for s in lower), max(s.imag for s in upper)
    under = {round(s.imag, 6) for s in lower if abs(s.real - right) < 0.1}
    over = {round(s.imag, 6) for s in upper if abs(s.real - left) < 0.1}
    assert sorted(under) == pytest.approx([low, (low + high) / 2], abs=1e-5)
    assert sorted(over) == pytest.approx([(low + high) / 2, high], abs=1e-5)


def test_a_bar_that_lies_across_another_one_is_whole() -> None:
    across = BRIDGE.replace("SHORT", '["B", "E"]')
    set_out = stage(across)
    assert laps_of(set_out, set_out.system.element("P")) == {}
