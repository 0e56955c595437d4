"""The outline of somebody on one leg: about the joint, both legs broken off at one level."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import box_around, runs
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts.standing import CUT, KNEE, Body
from probgen.figures.situation.shape import encloses

CM = 1.7


def body(inner: int = 1) -> Body:
    return Body(10 + 20j, CM, inner, 6.0, 11.0)


def spots_of(own: Body) -> list[complex]:
    (outline,) = own.outline(UNTAGGED)
    return [spot for run in runs(outline) for spot in run]


@pytest.mark.parametrize("inner", [1, -1])
def test_both_legs_are_broken_off_at_one_level_below_the_knee(inner: int) -> None:
    own = body(inner)
    spots = spots_of(own)
    cut = own.joint.imag - 100 * CM * CUT
    legs = {True: [s for s in spots if (s - own.joint).real * inner < own.middle * CM]}
    legs[False] = [s for s in spots if s not in legs[True]]
    assert KNEE < CUT
    for leg in legs.values():
        assert min(s.imag for s in leg) == pytest.approx(cut, abs=2.0 * CM)


@pytest.mark.parametrize("inner", [1, -1])
def test_pelvis_and_joint_are_inside_the_outline_and_the_joint_below_the_pelvis(inner: int) -> None:
    own = body(inner)
    (bone,) = own.pelvis(UNTAGGED)
    shape = [spot for run in runs(bone) for spot in run]
    assert all(encloses(spots_of(own), spot) for spot in [*shape, own.joint])
    assert not encloses(shape, own.joint)
    for across in (-own.crest, own.middle):
        assert encloses(shape, own.at(across, 0.3))


def test_the_arm_ends_at_its_hand() -> None:
    own = body()
    hand = own.at(50.0, 2.0)
    (arm,) = own.arm(hand, UNTAGGED)
    box = box_around([spot for run in runs(arm) for spot in run])
    assert box.bottom == pytest.approx(hand.imag, abs=1.0)
    assert box.left < hand.real < box.right
    assert own.joint.real + own.middle * CM < box.left  # beside the trunk


@pytest.mark.parametrize("inner", [1, -1])
def test_the_arm_begins_at_the_chest_as_high_as_the_outline_goes(inner: int) -> None:
    own = body(inner)
    (arm,) = own.arm(own.at(50.0, 2.0), UNTAGGED)
    box = box_around([spot for run in runs(arm) for spot in run])
    trunk = box_around(spots_of(own))
    assert box.top == pytest.approx(trunk.top, abs=2.0)
    near, edge = (box.left, trunk.right) if inner > 0 else (box.right, trunk.left)
    assert abs(near - edge) < 3.0 * CM
    assert trunk.top - own.joint.imag > 40 * CM
