"""Loads: each is drawn where it sits."""

from __future__ import annotations

from dataclasses import replace
from math import inf

import pytest

from probgen.bank.depiction import Load, Manner, Thing
from probgen.bank.vocabulary import LOADS
from probgen.figures.paper.scene import Curve, bounds, dot, heading
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.paper.type_metrics import Extent
from probgen.figures.parts import arm, goods, mechanical, person, profile, works
from probgen.figures.parts.load import CHILD, PERSON, ROPE, Seat, draw_load, hangs, largest_scale
from tests.figures.seen import tag

_TAG = UNTAGGED
ROOM = Extent(25.0, 6.0, 2.0)
LEVEL = Seat(10 + 20j, 1 + 0j, 3.0, 40.0, 1)


def load(word: str) -> Load:
    return LOADS.words[word]


def test_what_stands_hangs_from_a_steep_body() -> None:
    steep = replace(LEVEL, along=heading(60.0))
    assert [hangs(load("crate"), seat) for seat in (LEVEL, steep)] == [False, True]
    assert not hangs(load("climber"), steep)
    assert hangs(load("crate hung"), LEVEL)


@pytest.mark.parametrize("word", ["crate", "person", "rider", "plant", "ball", "block"])
def test_what_stands_lies_above_its_body(word: str) -> None:
    shapes, _ = draw_load(load(word), LEVEL, ROOM, tag("load:W"))
    assert bounds(shapes).bottom >= 20.0 + LEVEL.half - 1.5


# What each word draws, where a level body 6 pt thick has its axis at 10 + 20i; a label of 25 by 8
# pt has 9 and 8 pt to spare on a face, and a crate 6 and 2 pt more.
SPOT, FOOT = 10 + 20j, 10 + 23j
DRAWN = {
    "block": mechanical.block(FOOT, 34.0, 16.0, _TAG),
    "crate": mechanical.crate(FOOT, 40.0, 18.0, _TAG),
    "plant": mechanical.plant(FOOT, _TAG),
    "tree": mechanical.tree(FOOT, 44.0, _TAG),
    "heap": goods.heap(FOOT, 56.0, 20.0, _TAG),
    "pail standing": mechanical.standing_pail(FOOT, _TAG),
    "ball": mechanical.ball(FOOT + 7j, 7.0, _TAG),
    "cuff": mechanical.cuff(SPOT, 1 + 0j, 3.0, _TAG),
    "person": person.standing(FOOT, PERSON * 40.0, _TAG),
    "rider": person.seated(FOOT, PERSON * 40.0, 1, _TAG),
    "child": person.seated(FOOT, CHILD * 40.0, 1, _TAG),
    "rider hung": person.hanging(SPOT, 56.8, _TAG),
    "block hung": mechanical.hung_block(SPOT, ROPE, 34.0, 16.0, _TAG),
    "crate hung": (
        *mechanical.hung_block(SPOT, ROPE, 34.0, 16.0, _TAG),
        mechanical.crate(SPOT - (ROPE + 18.8) * 1j, 34.0, 16.0, _TAG, 1.8)[1],
    ),
    "lamp": mechanical.lamp(SPOT, ROPE, _TAG),
    "feeder": goods.feeder(SPOT, ROPE, _TAG),
    "bucket": mechanical.bucket(SPOT, ROPE, 1.0, _TAG),
    "bag": goods.sack(FOOT + 1j * goods.SACK * 40.0 * 0.6 / goods.SACK, _TAG, 24.0 / goods.SACK),
    "bag hung": (
        *mechanical.cable(SPOT, SPOT - (ROPE - 3.5) * 1j, _TAG),
        *goods.sack(SPOT - (ROPE - 4.5) * 1j, _TAG, 24.0 / goods.SACK),
    ),
    "bale": goods.bale(FOOT, 34.0, 16.0, _TAG),
    "bale hung": (
        *mechanical.cable(SPOT, SPOT - ROPE * 1j, _TAG),
        *goods.bale(SPOT - (ROPE + 16.0) * 1j, 34.0, 16.0, _TAG),
    ),
    "engine": works.engine(FOOT, _TAG),
    "toolbox": (
        *mechanical.cable(SPOT, SPOT - ROPE * 1j, _TAG),
        *goods.toolbox(SPOT - ROPE * 1j, 34.0, 16.0, _TAG)[0],
    ),
    "tool bag": (
        *mechanical.cable(SPOT, SPOT - (ROPE - goods.HANDLE) * 1j, _TAG),
        *goods.holdall(SPOT - (ROPE - goods.HANDLE) * 1j, 34.0, 16.0, _TAG),
    ),
    "sign": mechanical.hung_sign(SPOT, 38.0, 18.0, _TAG, 13.0),
}


@pytest.mark.parametrize("word", DRAWN)
def test_each_word_draws_its_part(word: str) -> None:
    seat = replace(LEVEL, scale=40.0)
    shapes, face = draw_load(load(word), seat, ROOM, _TAG)
    assert shapes == DRAWN[word]
    first, last = ("block", "crate", "bale"), ("block hung", "sign", "tool bag")
    assert (face is not None) is (word in (*first, *last, "crate hung", "bale hung", "toolbox"))
    if word in (*first, *last):  # the block itself, with what is on it drawn after it
        assert face == bounds(shapes[:1] if word in first else shapes[-1:])
    elif face:
        assert (face.width, face.height) == pytest.approx((34.0, 16.0), abs=1.0)
        assert bounds(shapes).holds(face)


def test_a_toolbox_in_a_hand_is_held_by_its_handle() -> None:
    shapes, face = draw_load(load("toolbox"), replace(LEVEL, arm=True), ROOM, _TAG)
    hand = SPOT - 40j
    box, below = goods.toolbox(hand, 34.0, 16.0, _TAG)
    assert shapes == (*box, *arm.hanging_arm(SPOT, hand, _TAG))  # the fist is about the handle
    assert face == below


@pytest.mark.parametrize(("scale", "height"), [(10.0, 15.4), (40.0, 24.0), (500.0, 28.0)])
def test_a_bag_is_to_scale_within_bounds(scale: float, height: float) -> None:
    for word in ("bag", "bag hung"):
        shapes, _ = draw_load(load(word), replace(LEVEL, scale=scale), ROOM, _TAG)
        assert bounds(shapes[-3:]).height == pytest.approx(height, abs=1.0)


@pytest.mark.parametrize(
    ("scale", "height"), [(10.0, 34.0), (30.0, 52.5), (56.0, 98.0), (80.0, 105.0)]
)
def test_people_are_to_scale_within_bounds(scale: float, height: float) -> None:
    """1.75 m, but never below 34 pt or above 105 pt."""
    shapes, _ = draw_load(load("person"), replace(LEVEL, scale=scale), ROOM, _TAG)
    assert shapes == person.standing(FOOT, height, _TAG)


@pytest.mark.parametrize(
    ("words", "scale"),
    [((), inf), (("block",), inf), (("person lying",), inf), (("person",), 60.0),
     (("child",), 87.5), (("block", "child", "person"), 60.0)],
)  # fmt: skip
def test_people_are_at_true_size_up_to_a_scale(words: tuple[str, ...], scale: float) -> None:
    """105 pt for 1.75 m, and for 1.20 m."""
    assert largest_scale(map(load, words)) == pytest.approx(scale)


def test_who_stands_on_a_steep_body_climbs_it_and_who_lies_does_so() -> None:
    along = heading(65.0)
    steep = replace(LEVEL, along=along)
    top = 10 + 20j + 3.0 * heading(155.0)
    assert steep.outward == pytest.approx(heading(155.0))
    climbing = person.climbing(top, along, heading(155.0), 70.0, inf, _TAG)
    assert draw_load(load("climber"), steep, ROOM, _TAG)[0] == climbing
    down = replace(LEVEL, along=-along)  # the same body told from its other end
    assert down.outward == pytest.approx(heading(155.0))
    assert draw_load(load("climber"), down, ROOM, _TAG)[0] == climbing
    board = replace(LEVEL, lying=(1 + 2j, 60 + 0j))
    assert draw_load(load("person lying"), board, ROOM, _TAG)[0] == person.lying(
        1 + 2j, 60 + 0j, _TAG
    )


@pytest.mark.parametrize(("degrees", "steep"), [(0, False), (36, False), (38, True), (143, True)])
def test_from_some_37_degrees_on_nothing_stands(degrees: float, steep: bool) -> None:
    assert replace(LEVEL, along=heading(degrees)).steep is steep


def test_on_a_slope_a_load_stands_on_the_edge_above_its_point() -> None:
    """Half a thickness of 3 pt over cos 30 above the axis."""
    sloping = replace(LEVEL, along=heading(30.0))
    shapes, _ = draw_load(load("block"), sloping, ROOM, _TAG)
    assert bounds(shapes).bottom == pytest.approx(20.0 + 3.0 / 0.8660254 - 0.4)


def test_a_rope_is_short_near_the_ground_but_never_nothing() -> None:
    for clear, rope in ((100.0, ROPE), (30.0, 6.0), (20.0, 3.0)):
        shapes, _ = draw_load(load("lamp"), replace(LEVEL, clear=clear), ROOM, _TAG)
        assert shapes == mechanical.lamp(SPOT, rope, _TAG)
    low, _ = draw_load(load("bucket"), replace(LEVEL, clear=23.0), ROOM, _TAG)
    assert low == mechanical.bucket(SPOT, 3.0, 20.0 / 23.0, _TAG)
    lowest, _ = draw_load(load("bucket"), replace(LEVEL, clear=5.0), ROOM, _TAG)
    assert lowest == mechanical.bucket(SPOT, 3.0, 0.5, _TAG)


def test_what_an_arm_holds_hangs_from_its_hand() -> None:
    shapes, face = draw_load(load("block hung"), replace(LEVEL, arm=True), ROOM, _TAG)
    hand = SPOT - 40j
    held = mechanical.hung_block(hand, 11.0, 34.0, 16.0, _TAG)
    assert shapes == (*arm.hanging_arm(SPOT, hand, _TAG), *held)
    assert face == bounds(held[-1:])


@pytest.mark.parametrize(("degrees", "facing"), [(30.0, 1), (150.0, -1)])
def test_a_head_looks_to_the_side_its_trunk_leans_to(degrees: float, facing: int) -> None:
    """A trunk 60 degrees from upright: the head is bent by 25 degrees less."""
    way = heading(degrees)
    shapes, _ = draw_load(load("head"), replace(LEVEL, beyond=way), ROOM, _TAG)
    up = heading(90.0 - 35.0 * facing)
    face = profile.head(SPOT - 8.25 * up, 11.0, facing, _TAG, 35.0)
    assert bounds(shapes[:1]) == pytest.approx(bounds(face))
    assert shapes[1:] == mechanical.centre_mark(SPOT, _TAG)
    elsewhere, _ = draw_load(load("head"), LEVEL, ROOM, _TAG)  # not at an end it is a ball
    assert elsewhere == mechanical.ball(FOOT + 7j, 7.0, _TAG)


@pytest.mark.parametrize("degrees", [20.0, 30.0, 40.0, 140.0, 160.0])
def test_a_head_lies_about_its_centre_of_mass_and_its_neck_on_the_trunk(degrees: float) -> None:
    way = heading(degrees)
    shapes, _ = draw_load(load("head"), replace(LEVEL, beyond=way), ROOM, _TAG)
    (profile,) = (shape for shape in shapes[:1] if isinstance(shape, Curve))
    assert abs(bounds([profile]).centre - SPOT) < 6.0
    ends = (profile.start, profile.pieces[-1][-1])
    assert all(-20.0 < dot(end - SPOT, way) < -6.0 for end in ends)


@pytest.mark.parametrize("word", ["sign", "lamp", "bucket", "block hung"])
def test_what_hangs_lies_below_its_point(word: str) -> None:
    shapes, _ = draw_load(load(word), LEVEL, ROOM, tag("load:W"))
    box = bounds(shapes)
    assert box.top <= 20.0 + 1.5
    assert box.centre.real == pytest.approx(10.0, abs=0.5)


def test_face_has_room_for_the_label() -> None:
    _, face = draw_load(load("crate"), LEVEL, ROOM, tag("load:W"))
    assert face is not None
    assert face.width > ROOM.width
    assert face.height > ROOM.height + ROOM.depth


def test_bucket_near_the_ground_stays_off_it() -> None:
    low = Seat(10 + 20j, 1 + 0j, 3.0, 40.0, 1, clear=16.0)
    shapes, _ = draw_load(load("bucket"), low, ROOM, tag("load:W"))
    assert bounds(shapes).bottom > 4.0


def test_a_toddler_is_small_and_drawn_as_large_as_what_it_stands_on() -> None:
    heights = {}
    for thing in (Thing.TODDLER, Thing.PERSON):
        for scale in (60.0, 105.0):
            seat = Seat(0j, 1 + 0j, 0.0, scale, 1)
            shapes, _ = draw_load(Load(thing, Manner.STANDS), seat, ROOM, UNTAGGED)
            heights[thing, scale] = bounds(shapes).height
    assert heights[Thing.TODDLER, 60.0] == pytest.approx(0.95 * 60.0, abs=2.0)
    assert heights[Thing.TODDLER, 105.0] == pytest.approx(0.95 * 105.0, abs=3.0)
    assert heights[Thing.PERSON, 105.0] == pytest.approx(105.0, abs=2.0)
