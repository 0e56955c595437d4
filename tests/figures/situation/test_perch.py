"""What stands on a bar or hangs beside a pulley, and the point that stays."""

from __future__ import annotations

import pytest

from tests.figures.rope_sketches import FRAME, PLANK, TOWARD
from tests.figures.seen import box_of
from tests.figures.sketches import TWO, sketch, stage


@pytest.mark.parametrize("shown", ['rigger = "person"', 'rigger = "crate"'])
def test_who_stands_on_a_plank_has_both_feet_on_it_at_the_point(shown: str) -> None:
    scene = sketch(PLANK, shown)
    plank, rigger = box_of(scene, "body:plank"), box_of(scene, "body:rigger")
    assert rigger.bottom == pytest.approx(plank.top, abs=1.5)
    set_out = stage(PLANK, shown)
    assert set_out.spot("C").imag == pytest.approx(0.0)
    assert set_out.blocks["rigger"].lift.real == pytest.approx(0.0)
    assert set_out.blocks["rigger"].lift.imag > set_out.halves["plank"]


def test_what_hangs_from_a_pulley_on_a_pin_hangs_from_its_side() -> None:
    set_out = stage(FRAME.replace("TOWARD", TOWARD), 'load = "crate"')
    assert set_out.blocks["load"].lift == pytest.approx(9.0)
    assert set_out.shifts.get("C", 0j) == 0j
    assert set_out.shifts.get("G", 0j) == 0j


def test_a_slope_under_a_block_is_no_bar() -> None:
    set_out = stage(TWO.replace("SLOPE", "25"))
    assert all(block.lift == 0j for block in set_out.blocks.values())
