"""A muscle ends on the bone that a hip joint is the upper end of."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arc, bounds, heading
from probgen.figures.situation.hip import hip_of, muscle_end
from tests.figures.readings import TEMPLATES, customary, prepared, scenes_of, solved
from tests.figures.seen import box_of, tagged, touching
from tests.figures.sketches import LIMB, stage

HIP = LIMB.replace("direction = 85", "direction = 250")
SHOWN = ('limb = "pelvis"', 'J = "hip"', 'scenery = "hip bones"')


def test_a_hip_is_one_where_a_word_asks_for_it_and_the_body_is_a_pelvis() -> None:
    assert hip_of(stage(HIP, *SHOWN[:2]), "limb") is None
    assert hip_of(stage(HIP, 'limb = "forearm"', SHOWN[2]), "limb") is None
    assert muscle_end(stage(HIP, *SHOWN[:2]), "limb") is None


def test_its_joint_crest_and_middle_are_those_of_its_body() -> None:
    set_out = stage(HIP, *SHOWN)
    hip = hip_of(set_out, "limb")
    assert hip is not None
    assert hip.joint == set_out.spot("A")
    crest, middle = set_out.spot("H") - hip.joint, set_out.spot("B") - hip.joint
    assert hip.cm == pytest.approx(set_out.scale / 100.0)
    ends = sorted((crest.real / hip.cm, middle.real / hip.cm))
    assert (hip.crest, hip.middle) == pytest.approx((-ends[0], ends[1]))


def test_its_muscle_runs_along_its_pull_to_the_bone() -> None:
    set_out = stage(HIP, *SHOWN)
    end, start = muscle_end(set_out, "limb"), set_out.spot("H")
    assert end is not None
    assert ((end - start) / heading(250.0)).imag == pytest.approx(0.0)
    assert end.imag < set_out.spot("A").imag
    upward = HIP.replace("direction = 250", "direction = 100")
    assert muscle_end(stage(upward, *SHOWN), "limb") is None


def test_every_draw_shows_the_bones_with_the_muscle_between_them() -> None:
    path = next(path for path in TEMPLATES if path.stem == "hip-one-leg")
    for problem in (prepared(path), customary(path)):
        for own in solved(problem, 3):
            scene = scenes_of(problem, own)[0]
            femur, muscle = box_of(scene, "support:J"), box_of(scene, "muscle:F")
            pelvis = box_of(scene, "body:pelvis")
            assert muscle.left >= femur.left - 1.0
            assert femur.bottom < muscle.bottom < femur.top < pelvis.top
            (head, *_) = (s for s in tagged(scene, "support:J") if isinstance(s, Arc))
            assert pelvis.holds(bounds([head]))
            assert touching(scene) == []
