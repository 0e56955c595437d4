"""The person about a pelvis: with a stick, the joint where the problem has it."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Scene, bounds
from probgen.figures.parts.standing import CUT
from probgen.figures.situation.standing import beside_chest, broken_off, standing
from probgen.figures.situation.support import fixture_of
from tests.figures.readings import TEMPLATES, prepared, scenes_of, solved
from tests.figures.seen import tagged
from tests.figures.sketches import LIMB, stage

HIP = LIMB.replace("-theta", "0").replace("180 - theta", "180")
SHOWN = ('limb = "pelvis"', 'J = "hip"', 'scenery = "person"')
PUSHED = HIP.replace('[[hinge]]\nat = "A"', '[[contact]]\nat = "A"\ndirection = 90')


def drawn() -> list[Scene]:
    (path,) = (path for path in TEMPLATES if path.stem == "hip-walking-stick")
    return [scenes_of(prepared(path), own)[0] for own in solved(prepared(path), 3)]


def test_nobody_stands_where_none_is_told_or_there_is_no_pelvis() -> None:
    for shown in (SHOWN[:2], ('limb = "leg"', SHOWN[2])):
        set_out = stage(HIP, *shown)
        assert standing(set_out) is None
        assert broken_off(set_out, 0j) is None
        assert beside_chest(set_out, "limb") == ()


def test_its_joint_crest_and_middle_are_those_of_the_pelvis() -> None:
    set_out = stage(HIP, *SHOWN)
    body = standing(set_out)
    assert body is not None
    assert body.at(-body.crest, 0.0) == pytest.approx(set_out.spot("H"))
    assert body.at(body.middle, 0.0) == pytest.approx(set_out.spot("B"))
    turned = stage(LIMB.replace("-theta", "180").replace("180 - theta", "0"), *SHOWN)
    other = standing(turned)
    assert other is not None
    assert (body.inner, other.inner) == (1, -1)
    assert [way for _, way in beside_chest(turned, "limb")] == [0.0] * 3


def test_a_joint_that_pushes_one_way_only_is_drawn_as_any_other() -> None:
    plain = stage(PUSHED, SHOWN[0])
    assert not any(map(plain.is_joint, plain.system.elements))
    turning, pushing = stage(HIP, *SHOWN), stage(PUSHED, SHOWN[0], 'J = "hip joint"', SHOWN[2])
    (hinge,) = filter(turning.is_joint, turning.system.elements)
    (contact,) = filter(pushing.is_joint, pushing.system.elements)
    assert standing(pushing) is not None
    assert fixture_of(pushing, contact) == fixture_of(turning, hinge)


def test_legs_and_stick_are_broken_off_at_one_level_so_that_the_hip_is_large() -> None:
    for scene in drawn():
        stick, legs = bounds(tagged(scene, "support:S")), bounds(tagged(scene, "scenery"))
        joint = bounds(tagged(scene, "support:J")[:1])
        assert tagged(scene, "ground") == ()
        assert stick.bottom == pytest.approx(legs.bottom, abs=3.5)
        assert joint.centre.imag - legs.bottom == pytest.approx(CUT * scene.scale, abs=2.5)
        assert scene.scale > 165.0  # pt for each metre
