"""Limbs: they reach from joint to end, and turn to the side they are told."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Curve, Path, bounds, heading
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts import limb


@pytest.mark.parametrize("length", [60.0, 110.0])
def test_a_forearm_begins_at_its_elbow_and_its_hand_is_about_its_end(length: float) -> None:
    box = bounds(limb.forearm(5j, 5j + length, UNTAGGED))
    assert box.left == pytest.approx(0.0, abs=5.0)
    assert length < box.right < length + 16.0
    assert box.bottom < 5.0 < box.top


def test_a_forearm_that_reaches_behind_its_elbow_is_rounded_about_that_end() -> None:
    outline = limb.forearm(0j, 80 + 0j, UNTAGGED, behind=True)[0]
    assert isinstance(outline, Curve)
    assert outline.pieces[-1][-1] == outline.start
    assert -6.0 < bounds([outline]).left < -2.0


def test_a_hanging_arm_is_alike_on_both_sides_and_thins_to_its_fist() -> None:
    (arm,) = limb.hanging_arm(0j, -40j, UNTAGGED)
    box = bounds([arm])
    assert box.left == pytest.approx(-box.right)
    assert box.top == pytest.approx(0.0, abs=0.5)
    assert -48.0 < box.bottom < -42.0
    assert isinstance(arm, Curve)
    ends = [abs(end.real) for *_, end in arm.pieces]
    shoulder, wrist, fist = abs(arm.start.real), ends[1], ends[2]
    assert wrist < fist < shoulder


@pytest.mark.parametrize("toes", [1, -1])
def test_toes_are_on_the_side_that_is_asked_for(toes: int) -> None:
    (leg,) = limb.lower_leg(0j, -80j, UNTAGGED, toes)
    box = bounds([leg])
    assert (box.right > -box.left) == (toes > 0)  # to the left of the way down is to the right
    assert box.bottom < -80.0


@pytest.mark.parametrize("facing", [1, -1])
def test_a_head_looks_the_way_it_faces(facing: int) -> None:
    profile, eye = limb.head(0j, 20.0, facing, UNTAGGED)
    box, eyes = bounds([profile]), bounds([eye])
    assert eyes.centre.real * facing > 0
    assert box.left < eyes.centre.real < box.right
    assert box.height > 20.0


def test_a_bent_head_has_no_eye_where_its_centre_of_mass_is_marked() -> None:
    assert len(limb.head(0j, 20.0, 1, UNTAGGED, 14.0)) == 1
    upright, bent = (bounds(limb.head(0j, 20.0, 1, UNTAGGED, lean)[:1]) for lean in (0.0, 25.0))
    assert bent.right > upright.right


def test_a_muscle_runs_from_its_insertion_to_its_end() -> None:
    tendons, belly, _, _ = limb.muscle(1 + 2j, 1 + 62j, UNTAGGED)
    assert isinstance(tendons, Path)
    assert tendons.lines[0][0] == 1 + 2j
    assert tendons.lines[1][1] == 1 + 62j
    assert isinstance(belly, Curve)
    box = bounds([belly])
    assert box.bottom > 2.0
    assert box.top < 62.0


def test_a_bone_is_broken_off_beyond_its_end() -> None:
    box = bounds(limb.bone(0j, 50j, UNTAGGED))
    assert box.top == pytest.approx(50.0, abs=4.0)
    assert box.bottom > 0.0
    _, left, right, *_ = limb.bone(0j, 50j, UNTAGGED)
    assert bounds([left]).right == pytest.approx(-bounds([right]).left)  # an edge on each side


def test_a_kneecap_lies_before_the_bones_behind_it() -> None:
    back = heading(200.0)
    cap = bounds(limb.kneecap(0j, back, UNTAGGED)).centre
    thigh, shin = back * heading(40.0), back * heading(-40.0)
    bones = bounds(limb.knee(0j, thigh, shin, UNTAGGED)).centre
    assert (bones / back).real > 20.0 > (cap / back).real


@pytest.mark.parametrize("side", [1, -1])
def test_teeth_bite_above_the_jaw(side: int) -> None:
    outline, teeth = limb.jaw(0j, 80.0 * side + 0j, UNTAGGED)
    jaw, bite = bounds([outline]), bounds([teeth])
    assert bite.top >= jaw.top - 0.5
    assert jaw.bottom < -15.0
