"""Arms: they reach from elbow or shoulder to a fist about their end."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Curve, bounds
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts import arm


@pytest.mark.parametrize("length", [60.0, 110.0])
def test_a_forearm_begins_at_its_elbow_and_its_hand_is_about_its_end(length: float) -> None:
    box = bounds(arm.forearm(5j, 5j + length, UNTAGGED))
    assert box.left == pytest.approx(0.0, abs=5.0)
    assert length < box.right < length + 16.0
    assert box.bottom < 5.0 < box.top


def test_a_forearm_that_reaches_behind_its_elbow_is_rounded_about_that_end() -> None:
    outline = arm.forearm(0j, 80 + 0j, UNTAGGED, behind=True)[0]
    assert isinstance(outline, Curve)
    assert outline.pieces[-1][-1] == outline.start
    assert -6.0 < bounds([outline]).left < -2.0


def test_a_hanging_arm_is_alike_on_both_sides_and_thins_to_its_fist() -> None:
    (whole,) = arm.hanging_arm(0j, -40j, UNTAGGED)
    box = bounds([whole])
    assert box.left == pytest.approx(-box.right)
    assert box.top == pytest.approx(0.0, abs=0.5)
    assert -48.0 < box.bottom < -42.0
    assert isinstance(whole, Curve)
    ends = [abs(end.real) for *_, end in whole.pieces]
    shoulder, wrist, fist = abs(whole.start.real), ends[1], ends[2]
    assert wrist < fist < shoulder
