"""The head of a thigh bone is in the socket of its pelvis, its neck goes out to a muscle's end."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arc, Curve, Tone, bounds
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts.hip import Hip

CREST, MIDDLE = 5.5, 12.0


def hip(inner: int = 1, cm: float = 5.0) -> Hip:
    return Hip(30 + 40j, cm, inner, CREST, MIDDLE)


@pytest.mark.parametrize("inner", [1, -1])
def test_a_pelvis_goes_from_its_crest_to_the_middle_and_has_a_hole_below_its_upper_branch(
    inner: int,
) -> None:
    own = hip(inner)
    bone, hole = (bounds([shape]) for shape in own.pelvis(UNTAGGED))
    ends = own.at(-CREST, 0.0).real, own.at(MIDDLE, 0.0).real
    assert bone.left < min(ends) < max(ends) < bone.right
    assert bone.holds(hole)
    assert own.at(4.0, 0.0).real * inner < min(hole.left * inner, hole.right * inner)
    assert hole.bottom < own.joint.imag < bone.top - 50.0
    whole, inside = own.pelvis(UNTAGGED)
    assert (whole.tone, inside.tone) == (Tone.BODY, Tone.PAPER)  # type: ignore[union-attr]
    assert isinstance(whole, Curve)
    assert whole.start == pytest.approx(whole.pieces[-1][-1])


@pytest.mark.parametrize("inner", [1, -1])
@pytest.mark.parametrize("across", [-7.0, -10.0])
def test_a_thigh_bone_goes_from_the_joint_out_to_where_muscles_end_and_down(
    inner: int, across: float
) -> None:
    own = hip(inner)
    end = own.at(across, -4.2)
    head, *bone = own.femur(end, UNTAGGED)
    assert isinstance(head, Arc)
    assert head.centre == own.joint
    socket = 3.3 * own.cm
    assert 0.6 * socket < head.radius < socket
    drawn = bounds(bone)
    assert drawn.left - 0.5 <= end.real <= drawn.right + 0.5
    assert drawn.bottom < own.joint.imag - 13.0 * own.cm
    assert drawn.top < own.joint.imag
    outer = end.real - (drawn.left if inner > 0 else drawn.right)
    assert abs(outer) < 1.2 * own.cm  # the muscle's end is at its outer side


def test_it_grows_with_its_scale() -> None:
    small, large = (bounds(hip(cm=cm).pelvis(UNTAGGED)[:1]) for cm in (3.0, 6.0))
    assert large.width == pytest.approx(2.0 * small.width, abs=1.0)
