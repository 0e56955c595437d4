"""Limbs: they reach from joint to end, and turn to the side they are told."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import MEDIUM, Curve, Path, bounds, heading
from probgen.figures.paper.tag import UNTAGGED, What
from probgen.figures.parts import limb


@pytest.mark.parametrize("toes", [1, -1])
def test_toes_are_on_the_side_that_is_asked_for(toes: int) -> None:
    (leg,) = limb.lower_leg(0j, -80j, UNTAGGED, toes)
    box = bounds([leg])
    assert (box.right > -box.left) == (toes > 0)  # to the left of the way down is to the right
    assert box.bottom < -80.0


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


@pytest.mark.parametrize("opening", [65.0, 85.0, 110.0])
def test_a_kneecap_lies_on_the_round_end_of_the_thigh_bone(opening: float) -> None:
    thigh, shin = heading(180.0 - opening / 2), heading(180.0 + opening / 2)
    cap = bounds(limb.kneecap(0j, -1 + 0j, UNTAGGED))
    _, _, bone, _ = limb.knee(0j, thigh, shin, UNTAGGED)
    # Their edges are one line.
    assert bounds([bone]).right == pytest.approx(cap.left + MEDIUM.weight, abs=0.05)


@pytest.mark.parametrize("opening", [65.0, 85.0, 110.0])
def test_the_tendon_below_a_kneecap_ends_on_the_front_of_the_shin(opening: float) -> None:
    thigh, shin = heading(180.0 - opening / 2), heading(180.0 + opening / 2)
    bone, *_ = limb.knee(0j, thigh, shin, UNTAGGED)
    assert isinstance(bone, Curve)
    assert min(abs(end - 80.0 * shin) for *_, end in bone.pieces) < 1e-9
    front = [(end / shin).imag for *_, end in bone.pieces]
    assert max(front) < 1e-9  # all of it behind the tendon


@pytest.mark.parametrize("side", [1, -1])
@pytest.mark.parametrize("length", [60.0, 80.0, 130.0])
def test_a_jaw_is_in_a_head_with_an_eye_that_looks_to_its_teeth(side: int, length: float) -> None:
    head, skull, eye, _ = limb.upper_jaw(0j, length * side + 0j, UNTAGGED)
    jaw, _ = limb.jaw(0j, length * side + 0j, UNTAGGED)
    whole, above, seen = bounds([head]), bounds([skull]), bounds([eye])
    assert head.tag.what is What.SCENERY  # behind the jaw
    assert whole.left < above.left < above.right < whole.right
    assert whole.bottom < bounds([jaw]).bottom
    assert above.top > length
    assert 0.5 * length < seen.centre.real * side < length


@pytest.mark.parametrize("side", [1, -1])
def test_teeth_bite_above_the_jaw(side: int) -> None:
    outline, teeth = limb.jaw(0j, 80.0 * side + 0j, UNTAGGED)
    jaw, bite = bounds([outline]), bounds([teeth])
    assert bite.top >= jaw.top - 0.5
    assert jaw.bottom < -15.0
