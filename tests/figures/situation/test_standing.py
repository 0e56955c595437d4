"""The person about a pelvis: on one ground with a stick, the joint where the problem has it."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Scene, bounds
from probgen.figures.parts.standing import SOLE
from probgen.figures.situation.standing import beside_chest, ground_under, standing
from tests.figures.readings import TEMPLATES, prepared, scenes_of, solved
from tests.figures.seen import tagged
from tests.figures.sketches import LIMB, stage

HIP = LIMB.replace("-theta", "0").replace("180 - theta", "180")
SHOWN = ('limb = "pelvis"', 'J = "hip"', 'scenery = "person"')


def drawn() -> list[Scene]:
    (path,) = (path for path in TEMPLATES if path.stem == "hip-walking-stick")
    return [scenes_of(prepared(path), own)[0] for own in solved(prepared(path), 3)]


def test_nobody_stands_where_none_is_told_or_there_is_no_pelvis() -> None:
    for shown in (SHOWN[:2], ('limb = "leg"', SHOWN[2])):
        set_out = stage(HIP, *shown)
        assert standing(set_out) is None
        assert ground_under(set_out, 0j) is None
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


def test_foot_and_stick_stand_on_one_ground_a_leg_below_the_joint() -> None:
    for scene in drawn():
        ground, stick = bounds(tagged(scene, "ground")), bounds(tagged(scene, "support:S"))
        legs, joint = bounds(tagged(scene, "scenery")), bounds(tagged(scene, "support:J")[:1])
        assert stick.bottom == pytest.approx(ground.centre.imag, abs=0.6)
        assert legs.bottom == pytest.approx(ground.centre.imag, abs=0.6)
        assert joint.centre.imag - ground.centre.imag == pytest.approx(SOLE * scene.scale, abs=0.6)
        assert ground.left < legs.left + 15.0
        assert ground.right > stick.right
