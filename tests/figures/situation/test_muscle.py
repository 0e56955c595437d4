"""Muscles: from where they are fixed to their far end, or as far as they come over their joint."""

from __future__ import annotations

import pytest

from probgen.bank.depiction import Hinge, Look
from probgen.figures.paper.scene import heading
from probgen.figures.situation.muscle import muscle_of
from probgen.figures.situation.shape import beyond
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


@pytest.mark.parametrize(("direction", "meets"), [("60", True), ("88", False)])
def test_over_an_elbow_it_runs_straight_to_the_bone_or_beside_it_as_far_as_that_is_drawn(
    direction: str, meets: bool
) -> None:
    """The upper arm stands on the joint A; a muscle that pulls has no corner."""
    text = LIMB.replace("direction = 85", f"direction = {direction}")
    set_out = stage(text, 'J = "elbow"\nlimb = "forearm"')
    (line,) = muscle_of(set_out, set_out.system.element("F"))
    assert line.ends is not None
    start, end = line.ends
    joint, top = set_out.spot("A"), beyond(Look.FOREARM, Hinge.ELBOW, set_out.size("limb"))
    if meets:
        assert end.real - joint.real == pytest.approx(-5.0)
    else:
        assert end.imag - joint.imag == pytest.approx(top.imag)
    assert (end - start) / abs(end - start) == pytest.approx(heading(float(direction)))
