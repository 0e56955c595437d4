"""A hoisting rope beside its bar: over a sheave at its end, along it to a winch beyond its foot."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arc, Scene, bounds, dot, heading, runs
from probgen.figures.parts.solid import WINCH
from probgen.figures.situation.reeving import foot_height, hung_from, reeving_on
from tests.figures.seen import tagged, touching
from tests.figures.sketches import BOOM, sketch, stage

DERRICK = BOOM.replace("[[find]]", '[[cable]]\nat = "B"\ntoward = "A"\nsymbol = "S"\n[[find]]')
SHOWN = ('S = "winch"', 'T = "mast"', 'R = "ground"', 'W_b = "net hung"')


@pytest.mark.parametrize(("way", "hangs"), [("28", 1.0), ("150", -1.0)])
def test_its_rope_is_a_tangent_of_sheave_and_drum_above_the_bar(way: str, hangs: float) -> None:
    set_out = stage(DERRICK.replace("STEEP", way), *SHOWN)
    reeving = reeving_on(set_out, "boom")
    assert reeving is not None
    (start, end), along = reeving.ends, heading(float(way))
    assert start.imag > set_out.spot("B").imag
    assert abs(dot(start - set_out.spot("B"), along)) == pytest.approx(0.0, abs=1e-9)
    assert abs(((end - start) / along).imag) == pytest.approx(0.0, abs=1e-9)
    assert abs(end - reeving.axle) == pytest.approx(WINCH)
    assert dot(set_out.spot("A") - end, along) > 2 * WINCH  # clear of the bar's foot
    assert reeving.hung == set_out.spot("B") + hangs * WINCH


def test_what_hangs_at_the_sheave_hangs_on_its_rope() -> None:
    set_out = stage(DERRICK.replace("STEEP", "28"), *SHOWN)
    weight = set_out.system.element("W_b")
    assert hung_from(set_out, weight) == set_out.spot("B") + WINCH
    standing = stage(DERRICK.replace("STEEP", "28"), *SHOWN[:3], 'W_b = "crate standing"')
    assert hung_from(standing, weight) == standing.spot("B")


def test_bar_winch_and_mast_stand_on_one_ground() -> None:
    set_out = stage(DERRICK.replace("STEEP", "28"), *SHOWN)
    reeving = reeving_on(set_out, "boom")
    assert reeving is not None
    height = foot_height(set_out, set_out.system.element("R"), 11.0)
    assert set_out.spot("A").imag - height == pytest.approx(reeving.foot.imag)
    drawn: Scene = sketch(DERRICK.replace("STEEP", "28"), *SHOWN)
    grounds = tagged(drawn, "ground:")
    assert len(grounds) == 1
    level = bounds(tagged(drawn, "support:T")[:1]).bottom + 0.4  # the mast's foot, half its edge
    assert [spot.imag for run in runs(grounds[0]) for spot in run] == pytest.approx([level] * 2)


def test_a_rope_that_does_not_lie_along_its_bar_has_no_sheave() -> None:
    for text in (BOOM.replace("STEEP", "40"), BOOM.replace("STEEP", "0")):
        assert reeving_on(stage(text, 'T = "winch"'), "boom") is None
    assert reeving_on(stage(DERRICK.replace("STEEP", "28")), "boom") is None


def test_the_rope_goes_round_the_far_side_of_its_sheave() -> None:
    drawn = sketch(DERRICK.replace("STEEP", "28"), *SHOWN)
    (bend,) = (shape for shape in tagged(drawn, "cable:S") if isinstance(shape, Arc))
    assert (bend.start, bend.sweep) == pytest.approx((118.0, -118.0))
    assert touching(drawn) == []
