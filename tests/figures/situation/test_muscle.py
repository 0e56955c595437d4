"""Muscles: from where they are fixed to their far end, or as far as they come over their joint."""

from __future__ import annotations

import pytest

from probgen.figures.situation.muscle import muscle_of
from tests.figures.sketches import LIMB, stage


def test_a_muscle_ends_before_it_comes_over_its_joint() -> None:
    leaning = stage(LIMB.replace("direction = 85", "direction = 20"))
    (line,) = muscle_of(leaning, leaning.system.element("F"))
    assert line.ends is not None
    start, end = line.ends
    assert start.real < end.real <= leaning.spot("A").real - 3.9


def test_another_one_is_as_long_as_half_its_body() -> None:
    set_out = stage(LIMB)
    (line,) = muscle_of(set_out, set_out.system.element("F"))
    assert line.ends is not None
    assert abs(line.ends[1] - line.ends[0]) == pytest.approx(0.55 * set_out.size("limb"))
