"""Slopes under blocks: their angle, their foot below all of a block, and the ridge of two."""

from __future__ import annotations

from math import radians, sin

import pytest

from probgen.figures.paper.scene import Path, apart, bearing, bounds, segments
from probgen.figures.paper.segment import meets
from probgen.figures.paper.tag import Tag
from probgen.figures.situation.contact import touching as touched
from tests.figures.seen import box_of, outlines, tagged, touching
from tests.figures.sketches import SLOPE, TWO, sketch, stage


def test_slope_is_drawn_with_its_angle_and_the_block_on_it() -> None:
    scene = sketch(SLOPE)
    (arc,) = tagged(scene, "angle:theta")
    assert abs(arc.sweep) == pytest.approx(25.0)  # type: ignore[union-attr]
    plane = next(iter(tagged(scene, "incline")))
    a, b = plane.lines[0]  # type: ignore[union-attr]
    assert apart(bearing(b - a), 25.0) < 1e-6
    assert touching(scene) == []


def test_a_plank_is_raised_by_a_hand_from_level_ground() -> None:
    scene = sketch(SLOPE, 'N = "plank"')
    (board,) = outlines(scene, "incline:N")
    foot, top = board.lines[0][:2]
    assert apart(bearing(top - foot), 25.0) < 1e-6
    ground = box_of(scene, "ground")
    assert ground.top == pytest.approx(foot.imag, abs=1.0)
    assert ground.left < foot.real < top.real
    assert ground.right == pytest.approx(top.real, abs=1.0)
    assert not tagged(scene, "soil:N")
    fist = bounds(s for s in scene.shapes if isinstance(s.tag.of, Tag) and s.tag.of.of == "N")
    assert fist.left < top.real < fist.right
    assert fist.top > top.imag + 10.0
    (arc,) = tagged(scene, "angle:theta")
    assert abs(arc.sweep) == pytest.approx(25.0)  # type: ignore[union-attr]
    assert touching(scene) == []


@pytest.mark.parametrize("slope", [0, 20, 35])
def test_what_hangs_over_an_edge_is_clear_of_it(slope: int) -> None:
    scene = sketch(TWO.replace("SLOPE", str(slope)), 'pail = "bucket"')
    pail = box_of(scene, "body:pail")
    support = [*tagged(scene, "ground"), *tagged(scene, "incline"), *tagged(scene, "body:box")]
    assert not [s for shape in support for s in segments(shape) if meets(s, pail)]
    assert tagged(scene, "pulley")
    assert touching(scene) == []


GROOVE = """
[body.pipe]
particle = true
[[weight]]
mass = "m"
[[contact]]
direction = "90 - theta"
symbol = "N_1"
[[contact]]
direction = "90 + theta"
symbol = "N_2"
[[find]]
quantity = "N_1"
"""


def test_two_slopes_under_one_thing_meet_below_it() -> None:
    set_out = stage(GROOVE, 'pipe = "ball"')
    left, right = (touched(set_out, set_out.system.element(id)) for id in ("N_1", "N_2"))
    foot, end = (fixture.inclines[0].foot for fixture in (left, right))
    assert foot == pytest.approx(end)
    middle = set_out.spot(set_out.system.element("N_1").at)
    radius = set_out.blocks["pipe"].half.real
    # The groove opens by 180 - 25 - 25 degrees, and its faces touch the pipe.
    assert abs(foot - middle) == pytest.approx(radius / sin(radians(130.0 / 2)))


TRAIN = """
[body.low]
particle = true
[body.high]
particle = true
[[weight]]
body = "low"
mass = "m"
[[weight]]
body = "high"
mass = "m"
symbol = "W_h"
[[rough]]
body = "low"
direction = "90 + theta"
friction_direction = "theta"
normal = "N_1"
friction = "f_1"
[[contact]]
body = "high"
direction = "90 + theta"
symbol = "N_2"
[[cable]]
body = "low"
other = "high"
direction = "theta"
symbol = "T"
[[find]]
quantity = "T"
"""


def test_blocks_tied_along_a_slope_are_on_one() -> None:
    scene = sketch(TRAIN)
    assert len({shape.tag for shape in tagged(scene, "incline")}) == 1
    slope = box_of(scene, "incline")
    for body in ("low", "high"):
        block = box_of(scene, f"body:{body}")
        assert slope.left < block.centre.real < slope.right
    assert len(tagged(scene, "angle:theta")) == 1
    assert touching(scene) == []


def test_blocks_on_slopes_beside_each_other_have_each_their_own() -> None:
    untied = TRAIN[: TRAIN.index("[[cable]]")] + '[[find]]\nquantity = "N_2"\n'
    inclines = {str(shape.tag) for shape in tagged(sketch(untied), "incline")}
    assert inclines == {"incline:N_1", "incline:N_2"}


@pytest.mark.parametrize("degrees", [15, 35, 50])
def test_a_slope_begins_below_all_of_the_block_that_leans_out_over_it(degrees: int) -> None:
    scene = sketch(SLOPE.replace("theta", str(degrees)))
    assert box_of(scene, "incline").left < box_of(scene, "body").left


@pytest.mark.parametrize("slope", [0, 20])
def test_a_pulley_at_an_edge_is_held_level_where_it_is_no_higher(slope: int) -> None:
    set_out = stage(TWO.replace("SLOPE", str(slope)))
    held = touched(set_out, set_out.system.element("N")).shapes[0]
    assert isinstance(held, Path)
    (spots,) = held.lines
    assert spots[-1] == set_out.course(set_out.hoists[0]).centre
    if not slope:  # a bracket down the face, broader there than at the pulley
        start, under, *_ = spots
        assert held.closed
        assert start.imag <= spots[-1].imag + 1e-9
        assert start.imag - under.imag > 10.0


RIDGE = TWO.replace("SLOPE", "30").replace(
    'body = "pail", direction = 90', 'body = "pail", direction = 140'
).replace(
    "[[find]]",
    '[[contact]]\nbody = "pail"\ndirection = 50\nsymbol = "N_2"\n[[find]]',
)  # fmt: skip


def test_two_slopes_under_a_rope_s_pulley_meet_in_one_ridge() -> None:
    set_out = stage(RIDGE)
    planes = [touched(set_out, set_out.system.element(id)).shapes for id in ("N", "N_2")]
    faces = [shapes[-1] for shapes in planes]
    tops = [max(face.lines[0], key=lambda spot: spot.imag) for face in faces]  # type: ignore[union-attr]
    assert tops[0] == pytest.approx(tops[1])
    assert tops[0].real < set_out.course(set_out.hoists[0]).centre.real + 20.0


@pytest.mark.parametrize("words", [(), ('N = "roof"', 'N_2 = "roof"')])
def test_both_sides_of_a_ridge_are_one_and_end_at_one_level(words: tuple[str, ...]) -> None:
    """However steep either is: nothing parts the hill, or the roof, below its ridge."""
    scene = sketch(RIDGE, *words)
    left, right = (box_of(scene, f"incline:{id}") for id in ("N", "N_2"))
    assert left.bottom == pytest.approx(right.bottom)
    assert left.top == pytest.approx(right.top)
    (gable,) = [each for each in outlines(scene, "soil") if bounds([each]).top > left.bottom + 9.0]
    assert len(gable.lines[0]) == 3
    assert bounds([gable]).width == pytest.approx(right.right - left.left, abs=2.0)
    below = [each for each in outlines(scene, "soil") if bounds([each]).top < left.bottom + 1.0]
    assert bool(below) == bool(words)  # a house has walls under its eaves
    for each in below:
        assert left.left < bounds([each]).left < bounds([each]).right < right.right


def test_a_single_slope_that_is_a_roof_is_a_slope() -> None:
    plain, roof = sketch(SLOPE), sketch(SLOPE, 'N = "roof"')
    assert box_of(plain, "incline") == box_of(roof, "incline")
