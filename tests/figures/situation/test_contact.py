"""What a body touches: floors under all of it, edges, branches, slopes, and sources of forces."""

from __future__ import annotations

import pytest

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    MEDIUM,
    Arc,
    Path,
    bounds,
    circle,
    dot,
    heading,
    runs,
)
from probgen.figures.parts.ground import ROLLER_HEIGHT
from probgen.figures.situation.contact import (
    draw_posts,
    floors_under,
    rolling,
    source,
    stands_for,
)
from probgen.figures.situation.contact import (
    touching as touched,
)
from probgen.figures.situation.fixture import FACE
from tests.figures.seen import box_of, outlines, tag, tagged
from tests.figures.sketches import (
    CABINET,
    CASE,
    HELD,
    LEANING,
    SLOPE,
    sketch,
    stage,
)
from tests.figures.sluice import SLUICE

REEL = """
[points]
O = [0, 0]
K = { from = "O", distance = "L", direction = "270 + theta" }
H = { from = "O", distance = "L", direction = "90 + theta" }
[body.reel]
along = ["K", "O", "H"]
[[rough]]
at = "K"
direction = "90 + theta"
normal = "N"
friction = "f"
friction_direction = "theta"
[[cable]]
at = "H"
direction = "theta"
symbol = "T"
[[weight]]
at = "O"
mass = "m"
[[find]]
quantity = "T"
"""


def test_closed_outline_is_one_solid_on_a_floor_that_reaches_under_all_of_it() -> None:
    scene = sketch(CABINET)
    (body,) = outlines(scene, "body")
    assert body.closed
    assert len(body.lines[0]) == 4
    (floor,) = outlines(scene, "ground")
    box = box_of(scene, "body")
    left, right = sorted(spot.real for spot in floor.lines[0])
    assert left < box.left
    assert right > box.right


def test_branch_is_a_circle_that_touches_what_leans_on_it() -> None:
    scene = sketch(LEANING, 'pole = "rod"', 'N = "branch"')
    rings = (shape for shape in tagged(scene, "support:N") if isinstance(shape, Arc))
    branch = max(rings, key=lambda ring: ring.radius)
    body = outlines(scene, "body")[0]
    away = heading(150.0)
    face = min(dot(spot - branch.centre, away) for spot in body.lines[0])
    assert face == pytest.approx(branch.radius, abs=0.05)


def test_an_edge_has_a_level_top_and_a_face_down_to_the_lowest_point() -> None:
    set_out = stage(LEANING, 'N = "edge"')
    top, face = touched(set_out, set_out.system.element("N")).surfaces
    assert (top.normal, face.normal) == (90.0, 180.0)
    assert face.ends[0].imag == pytest.approx(0.0)  # the foot of the pole
    assert top.at == face.at


def test_a_slanting_bar_pushed_square_to_it_lies_on_an_edge_unless_more_of_a_slope_bears_it() -> (
    None
):
    one = stage(LEANING)
    top, face = touched(one, one.system.element("N")).surfaces
    assert (top.normal, face.normal) == (90.0, 180.0)
    again = '[[contact]]\nat = "B"\ndirection = 150\nsymbol = "N_2"\n[[find]]'
    two = stage(LEANING.replace("[[find]]", again))
    assert [s.normal for s in touched(two, two.system.element("N")).surfaces] == [150.0]
    other = stage(LEANING.replace("direction = 150", "direction = 180"))
    assert [s.normal for s in touched(other, other.system.element("N")).surfaces] == [180.0]


def test_what_presses_a_slanting_bar_down_is_round() -> None:
    set_out = stage(LEANING.replace("direction = 150", "direction = 330"))
    fixture = touched(set_out, set_out.system.element("N"))
    assert not fixture.surfaces
    assert isinstance(fixture.shapes[0], Arc)


def test_a_ramp_reaches_under_all_of_a_round_on_it() -> None:
    set_out = stage(REEL, 'reel = "drum"')
    (ramp,) = touched(set_out, set_out.system.element("N")).surfaces
    radius = 3.0 * 40.0
    assert min(ramp.before, ramp.after) > radius
    assert ramp.height(set_out.spot("O")) == pytest.approx(radius)


def test_a_ramp_under_a_round_has_its_angle_at_its_foot() -> None:
    set_out = stage(REEL, 'reel = "drum"')
    fixture = touched(set_out, set_out.system.element("N"))
    (incline,), (ramp,) = fixture.inclines, fixture.surfaces
    assert incline.bare
    assert incline.foot == min(ramp.ends, key=lambda spot: spot.imag)


def test_a_wedge_is_drawn_whatever_the_normal() -> None:
    set_out = stage(LEANING, 'N = "fulcrum"')
    fixture = touched(set_out, set_out.system.element("N"))
    assert [surface.normal for surface in fixture.surfaces] == [90.0]
    assert not fixture.cut


def test_bar_s_end_is_cut_to_its_floor_and_not_where_it_lies_along_a_surface() -> None:
    set_out = stage(LEANING)
    foot, side = (touched(set_out, set_out.system.element(id)) for id in ("N_f", "N"))
    assert foot.cut == pytest.approx(1j)
    assert side.cut == 0


def test_a_rolling_wheel_is_the_barrow_s_and_higher_than_a_roller() -> None:
    plain, wheel = stage(HELD), stage(HELD, 'N = "wheel"')
    low, high = (rolling(each, each.system.element("N")).surfaces[0] for each in (plain, wheel))
    assert low.at.imag == pytest.approx(-3.0 - 7.2)  # half the bar, and the roller
    assert high.at.imag == pytest.approx(-13.0)


def test_a_hand_truck_s_wheels_are_on_the_ground_and_its_frame_along_the_longer_side() -> None:
    text = CABINET[: CABINET.index("[[rough]]")].replace(
        "[[force]]", '[[roller]]\nat = "B"\nsymbol = "N"\n[[force]]'
    )
    scene = sketch(
        text + '[[find]]\nquantity = "N"\n', 'cabinet = "refrigerator"', 'N = "hand truck"'
    )
    box = box_of(scene, "body:cabinet")
    plate, frame, *_ = outlines(scene, "support:N")
    assert bounds([frame]).height > 0.7 * box.height
    assert bounds([frame]).left > box.right - 1.0
    assert bounds([plate]).top < box.bottom + 1.0
    assert box.left < bounds([plate]).left
    assert bounds(outlines(scene, "ground")).top == pytest.approx(box.bottom - 8.6, abs=1.0)


@pytest.mark.parametrize(
    ("word", "strokes", "normals"),
    [
        ("floor", 0, [90.0]),
        ("nut", 1, []),
        ("scale", 3, [90.0]),
        ("stick", 5, [90.0]),
        ("ceiling", 1, [270.0]),
    ],
)
def test_a_force_is_what_exerts_it_when_a_word_says_so(
    word: str, strokes: int, normals: list[float]
) -> None:
    set_out = stage(HELD, f'F = "{word}"')
    force = set_out.system.element("F")
    fixture = source(set_out, force)
    assert stands_for(set_out, force)
    assert len(fixture.shapes) == strokes
    assert [surface.normal for surface in fixture.surfaces] == normals


@pytest.mark.parametrize("shown", [(), ('F = "hand"',)])
def test_a_force_is_an_arrow_otherwise_whatever_it_is_called(shown: tuple[str, ...]) -> None:
    text = HELD.replace('symbol = "F"', 'symbol = "F"\nname = "floor"')
    set_out = stage(text, *shown)
    assert not stands_for(set_out, set_out.system.element("F"))


def test_a_solid_that_nothing_holds_stands_on_a_floor() -> None:
    (floor,) = floors_under(stage(CASE, 'case = "cabinet"'))
    assert (floor.at.imag, floor.normal) == pytest.approx((0.0, 90.0))
    assert floors_under(stage(CASE)) == []  # a bar does not
    assert floors_under(stage(CABINET)) == []  # this one is held


def test_such_a_floor_lies_under_its_feet_however_high_they_are() -> None:
    """The case raised by 1.5 m at 40 pt a metre; it is 1 m broad."""
    raised = CASE.replace("O = [0, 0]", 'O = ["L", "L/2"]').replace(
        'T = [0, "L"]', 'T = ["L", "1.5*L"]'
    ).replace('C = ["L/6", 0]', 'C = ["L + L/6", "L/2"]').replace(
        'G = [0, "L/2"]', 'G = ["L", "L"]'
    )  # fmt: skip
    (floor,) = floors_under(stage(raised, 'case = "cabinet"'))
    assert floor.at == pytest.approx(120 + 60j)
    assert floor.normal == 90.0
    assert floor.before == floor.after == pytest.approx(20.0 + FACE)


def test_posts_stand_on_one_ground_below_everything() -> None:
    field = Field()
    field.add(circle(0j, 20.0, MEDIUM, tag("load:W")))
    below = field.box.bottom
    draw_posts(field, [-60 + 10j, 60 + 30j])
    (ground,) = (shape for shape in field.shapes if str(shape.tag) == "ground")
    assert isinstance(ground, Path)
    assert {spot.imag for spot in ground.lines[0]} == {below - 12.0}
    draw_posts(empty := Field(), [])
    assert not empty.shapes


def test_a_stop_has_a_short_face_that_no_other_lengthens() -> None:
    set_out = stage(SLUICE, 'N = "stop"')
    (face,) = touched(set_out, set_out.system.element("N")).surfaces
    (wall,) = touched(stage(SLUICE), set_out.system.element("N")).surfaces
    assert face.lone
    assert face.at == wall.at
    assert face.before + face.after < 0.5 * (wall.before + wall.after)


def test_a_force_of_unknown_direction_has_its_ceiling_above_it() -> None:
    text = HELD.replace("direction = 90\nsymbol", 'name = "hook"\nsymbol').replace(
        '[[weight]]\nmass = "m"', '[[contact]]\nat = "A"\ndirection = 0\nsymbol = "N_w"\n'
        '[[weight]]\nmass = "m"',
    )  # fmt: skip
    set_out = stage(text, 'F = "ceiling"')
    (face,) = source(set_out, set_out.system.element("F")).surfaces
    assert face.normal == 270.0
    assert face.at.imag > set_out.spot("B").imag
    assert not source(stage(text, 'F = "floor"'), set_out.system.element("F")).surfaces


@pytest.mark.parametrize("look", ["crate", "ball"])
def test_a_floor_goes_on_beyond_both_ends_of_a_wide_block(look: str) -> None:
    set_out = stage(SLOPE.replace("90 + theta", "90").replace("theta", "0"), f'crate = "{look}"')
    (floor,) = touched(set_out, set_out.system.element("N")).surfaces
    half = set_out.blocks["crate"].half.real
    assert half > FACE  # else any floor would do
    assert min(floor.before, floor.after) > half + 4.0


def test_a_body_lies_on_post_bank_or_ledge_and_rolls_on_rollers_alone() -> None:
    """Wheels are drawn where rollers are told, and the post is as much lower."""
    wheels, lows = {}, {}
    for word in ("post", "pier", "bank", "ledge", "roller on a post", "roller"):
        set_out = stage(HELD, f'N = "{word}"')
        held = rolling(set_out, set_out.system.element("N"))
        wheels[word] = sum(isinstance(shape, Arc) for shape in held.shapes)
        lows[word] = min(surface.ends[0].imag for surface in held.surfaces)
    assert wheels == {"post": 0, "pier": 0, "bank": 0, "ledge": 0, "roller on a post": 2,
                      "roller": 2}  # fmt: skip
    assert lows["post"] - lows["roller on a post"] == pytest.approx(ROLLER_HEIGHT)


def test_a_hand_that_grips_pulls_the_way_of_its_force() -> None:
    set_out = stage(HELD.replace('= 90\nsymbol = "F"', '= 130\nsymbol = "F"'), 'F = "grip"')
    force = set_out.system.element("F")
    assert stands_for(set_out, force)
    ends = [s for shape in source(set_out, force).shapes for run in runs(shape) for s in run]
    far = max(ends, key=lambda spot: abs(spot - set_out.spot("B")))
    assert dot(far - set_out.spot("B"), heading(130.0)) > 30.0


def test_trees_stand_on_the_ground_of_posts_and_reach_beyond_their_cords() -> None:
    tops, boxes = (-60 + 10j, 60 + 30j), {}
    for trees in (False, True):
        field = Field()
        field.add(circle(0j, 5.0, MEDIUM))
        draw_posts(field, tops, trees=trees)
        boxes[trees] = field.box
    assert boxes[True].bottom == pytest.approx(boxes[False].bottom, abs=0.5)
    assert boxes[True].top > boxes[False].top + 10.0


def test_a_tile_is_between_a_block_and_its_floor() -> None:
    pressed = SLOPE.replace('"90 + theta"', "90").replace('"theta"', "0")
    plain, tiled = (stage(pressed, *told) for told in ((), ('N = "tile"',)))
    ((bare,), (floor,)) = (
        touched(each, each.system.element("N")).surfaces for each in (plain, tiled)
    )
    (slab,) = touched(tiled, tiled.system.element("N")).shapes
    box = bounds([slab])
    assert box.top == pytest.approx(bare.at.imag, abs=0.5)
    assert box.bottom == pytest.approx(floor.at.imag, abs=0.5)
    assert floor.at.imag < bare.at.imag
    assert box.width < floor.before + floor.after
