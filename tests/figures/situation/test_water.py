"""Water stands beside what it presses on, on the side it presses from, up to its surface."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Path, bounds
from probgen.figures.situation.water import beds_under, hangs_from_wall, walls_above
from tests.figures.seen import box_of, dimension_ends, outlines, tagged
from tests.figures.sketches import sketch, stage
from tests.figures.sluice import SLUICE

WET = 'F_w = "water"'
SHALLOW = SLUICE.replace('start = "k*t*v"', "start = 0").replace('"k*(t + L)*v"', '"k*L*v"')


def test_there_is_none_unless_a_load_is_said_to_be_water() -> None:
    assert not tagged(sketch(SLUICE), "scenery")
    assert tagged(sketch(SLUICE, WET), "scenery:F_w")


def test_it_reaches_from_the_face_past_the_arrows_up_to_its_surface() -> None:
    scene = sketch(SLUICE, WET)
    pool, surface, *_ = outlines(scene, "scenery:F_w")
    water, gate, arrows = bounds([pool]), box_of(scene, "body:flap"), box_of(scene, "distributed")
    assert water.left == pytest.approx(gate.right, abs=1.0)  # it presses to the left
    assert water.right > arrows.right + 10.0
    assert water.bottom == pytest.approx(gate.bottom, abs=1.0)
    assert water.top == pytest.approx(4.5 * scene.scale, abs=1.0)
    ((near, far),) = surface.lines
    assert near.imag == far.imag == pytest.approx(4.5 * scene.scale)


def test_it_stands_on_a_bed_as_long_as_it_is() -> None:
    scene = sketch(SLUICE, WET)
    pool = bounds(outlines(scene, "scenery:F_w")[:1])
    (bed,) = beds_under(stage(SLUICE, WET, scale=scene.scale))
    assert bed.normal == 90.0
    assert [end.imag for end in bed.ends] == pytest.approx([pool.bottom] * 2)
    assert [end.real for end in bed.ends] == pytest.approx([pool.left, pool.right], abs=1.0)
    assert not list(beds_under(stage(SLUICE)))


def test_the_depth_is_measured_from_the_surface() -> None:
    scene = sketch(SLUICE, WET)
    high, low = sorted((end.imag for end in dimension_ends(scene, "t")), reverse=True)
    assert (high, low) == pytest.approx((4.5 * scene.scale, 3.0 * scene.scale), abs=0.5)


def test_a_mark_stands_on_the_surface() -> None:
    _, surface, mark, under = outlines(sketch(SLUICE, WET), "scenery:F_w")
    level = surface.lines[0][0].imag
    assert bounds([mark]).bottom == pytest.approx(level, abs=0.5)
    assert bounds([under]).top < level


def test_a_wall_holds_back_the_water_above_a_hinge_which_hangs_from_that_wall() -> None:
    set_out = stage(SLUICE, WET)
    (wall,) = walls_above(set_out)
    top = max(end.imag for end in wall.ends)
    assert wall.normal == 0.0  # its face is where the water is
    assert top > 4.5 * set_out.scale
    assert hangs_from_wall(set_out, set_out.spot("A"))
    assert not hangs_from_wall(set_out, set_out.spot("B"))
    assert len(tagged(sketch(SLUICE, WET), "support:R")) == 1  # a pin alone


def test_water_no_higher_than_the_hinge_needs_no_wall() -> None:
    set_out = stage(SHALLOW, WET)
    assert not list(walls_above(set_out))
    assert len(tagged(sketch(SHALLOW, WET), "support:R")) > 1


def test_a_slanting_face_ends_the_water() -> None:
    text = SHALLOW.replace("direction = 90 }", "direction = 60 }").replace("180", "150")
    pool, *_ = outlines(sketch(text, WET), "scenery:F_w")
    assert isinstance(pool, Path)
    low, high = (pool.lines[0][place] for place in (3, 4))
    assert (high - low) / abs(high - low) == pytest.approx(0.5 + 0.75**0.5 * 1j, abs=1e-6)
