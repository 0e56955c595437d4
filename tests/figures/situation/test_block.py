"""Particles drawn as blocks: which, how large, and where when they rest on each other."""

from __future__ import annotations

import math

import pytest

from probgen.bank.depiction import Depictions, Look
from probgen.figures.paper.scene import bounds, heading
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts import goods
from probgen.figures.situation.block import Block, blocks_of, shifts_of, stacked
from tests.figures.seen import box_of, outlines, tagged, touching
from tests.figures.sketches import KNOT, SLOPE, STACK, read, sketch, stage, surveyed
from tests.figures.wedges import WEDGE


def test_what_rests_on_another_is_drawn_on_it_and_only_the_lower_on_the_ground() -> None:
    scene = sketch(STACK)
    (books,), (box,) = tagged(scene, "body:books"), tagged(scene, "body:box")
    upper, lower = (min(s.imag for s in b.lines[0]) for b in (books, box))  # type: ignore
    assert upper == pytest.approx(max(s.imag for s in box.lines[0]))  # type: ignore[union-attr]
    (face,) = tagged(scene, "ground")
    assert face.lines[0][0].imag == pytest.approx(lower)  # type: ignore[union-attr]


def blocks(text: str, *shown: str) -> dict[str, Block]:
    return dict(stage(text, *shown).blocks)


@pytest.mark.parametrize(
    ("word", "look"),
    [("crate", Look.CRATE), ("ball", Look.BALL), ("bucket", Look.CRATE), ("board", Look.CRATE)],
)
def test_a_particle_on_a_slope_is_turned_with_it(word: str, look: Look) -> None:
    block = blocks(SLOPE, f'crate = "{word}"')["crate"]
    assert block.up == pytest.approx(heading(115.0))
    assert block.look is look
    assert not block.level


def test_a_person_stands_upright_on_a_floor_only() -> None:
    assert blocks(STACK, 'box = "person"')["box"].look is Look.PERSON
    assert blocks(SLOPE, 'crate = "person"')["crate"].look is Look.CRATE


def test_a_board_is_broad_enough_for_somebody() -> None:
    plain, board = blocks(STACK)["box"], blocks(STACK, 'box = "board"')["box"]
    assert board.half.real == pytest.approx(46.0)
    assert board.half.real > plain.half.real
    assert board.half.imag < 3.0  # and no thicker than a board is


def test_a_pallet_is_low_whatever_it_is_labelled_with() -> None:
    pallet = blocks(SLOPE, 'crate = "pallet"')["crate"]
    assert pallet.look is Look.PALLET
    assert pallet.half.real > 2.0 * pallet.half.imag
    assert not pallet.level


def test_a_brick_is_long_and_a_trough_is_low_whatever_they_are_labelled_with() -> None:
    for word, look in (("brick", Look.BRICK), ("trough", Look.TROUGH)):
        block = blocks(SLOPE, f'crate = "{word}"')["crate"]
        assert block.look is look
        assert block.half.real > 1.5 * block.half.imag
        assert block.up == pytest.approx(heading(115.0))
        scene = sketch(SLOPE, f'crate = "{word}"')
        label, body = box_of(scene, "label:m"), box_of(scene, "body:crate")
        assert not label.overlaps(body) or label.centre.imag > body.centre.imag  # above it
        assert touching(scene) == []


def test_a_trough_slides_against_its_friction() -> None:
    assert blocks(SLOPE, 'crate = "trough"')["crate"].ahead == pytest.approx(heading(205.0))
    upward = SLOPE.replace('friction_direction = "theta"', 'friction_direction = "180 + theta"')
    assert blocks(upward, 'crate = "trough"')["crate"].ahead == pytest.approx(heading(25.0))
    scene = sketch(SLOPE, 'crate = "trough"')
    dashed, *_ = outlines(scene, "body:crate")
    foot = min(spot.real for spot in outlines(scene, "incline:N")[0].lines[0])
    assert min(spot.real for spot in dashed.lines[0]) > foot  # the slope goes on under it


def test_a_crate_has_posts_and_a_block_has_none() -> None:
    crate, block = (blocks(SLOPE, f'crate = "{word}"')["crate"] for word in ("crate", "block"))
    assert len(crate.drawn(0j, UNTAGGED)) == 2
    assert len(block.drawn(0j, UNTAGGED)) == len(blocks(SLOPE)["crate"].drawn(0j, UNTAGGED)) == 1
    body, posts = (bounds([shape]) for shape in crate.drawn(0j, UNTAGGED))
    assert body.holds(posts)
    assert crate.half.real > block.half.real  # its label keeps clear of them
    assert touching(sketch(SLOPE, 'crate = "crate"')) == []


def test_a_pipe_is_round_like_a_ball() -> None:
    pipe, ball = (blocks(SLOPE, f'crate = "{word}"')["crate"] for word in ("pipe", "ball"))
    assert pipe.half == ball.half
    assert pipe.reach(heading(33.0)) == pipe.reach(1j) == pipe.half.real
    assert pipe.drawn(1 + 2j, UNTAGGED)[:1] == ball.drawn(1 + 2j, UNTAGGED)
    assert touching(sketch(SLOPE, 'crate = "pipe"')) == []


def test_a_sled_has_its_label_on_the_load_over_its_runners() -> None:
    scene = sketch(STACK, 'box = "sled"')
    sled = blocks(STACK, 'box = "sled"')["box"]
    assert sled.look is Look.SLED
    assert not sled.level
    assert sled.face == pytest.approx(goods.RUNNER / 2 * 1j)
    load = bounds(tagged(scene, "body:box")[-1:])
    assert box_of(scene, "ground").top == pytest.approx(load.bottom - goods.RUNNER, abs=1.5)


def test_what_lines_hold_is_no_block_unless_a_word_says_so() -> None:
    assert blocks(KNOT) == {}
    assert blocks(KNOT, 'knot = "crate"').keys() == {"knot"}
    assert "books" in blocks(STACK)
    assert "books" not in blocks(STACK, 'books = "ring"')


def test_a_body_s_name_makes_no_block() -> None:
    assert blocks(KNOT.replace("[body.knot]", '[body.knot]\nname = "bucket"')) == {}


def test_edges_and_grips_of_a_block() -> None:
    crate = Block(20 + 10j, 1j)
    assert crate.reach(1 + 0j) == 20.0
    assert crate.reach(-1j) == crate.depth(1j) == 10.0
    assert crate.reach(heading(45.0)) == pytest.approx(10.0 * math.sqrt(2))
    assert crate.grip(1j) == 10j
    assert Block(9 + 9j, 1j, Look.BALL).reach(heading(30.0)) == 9.0
    assert Block(11 + 29j, 1j, Look.PERSON, -1).grip(1j).real < 0


def test_what_is_tied_to_another_hangs_below_it() -> None:
    text = (
        KNOT
        + """
[body.bob]
particle = true
[[cable]]
body = "knot"
other = "bob"
direction = 270
symbol = "T_3"
[[weight]]
body = "bob"
mass = "m"
of = "bob"
symbol = "W_b"
"""
    )
    template, values, givens = read(text)
    measured = stacked(surveyed(template, values), {})
    found = blocks_of(measured, Depictions(), givens)
    shifts = shifts_of(measured, found, {}, 40.0)
    bob, knot = (template.system.body(id).outline[0] for id in ("bob", "knot"))
    assert measured.places[bob] == measured.places[knot]
    assert (shifts[bob] - shifts.get(knot, 0j)).real == pytest.approx(0.0)
    assert (shifts[bob] - shifts.get(knot, 0j)).imag < -50.0


BAR = """
[points]
B = [0, 0]
A = ["L", "L"]
[body.top]
particle = true
along = ["A"]
[body.left]
particle = true
along = ["B"]
[[strut]]
body = "top"
other = "left"
direction = 45
symbol = "S"
[[weight]]
body = "top"
mass = "m"
[[hinge]]
body = "left"
symbol = "R"
[[cable]]
body = "top"
direction = 0
symbol = "T"
[[find]]
quantity = "S"
"""


def test_particles_whose_places_are_stated_stand_there_though_a_bar_ties_them() -> None:
    template, values, _ = read(BAR)
    found = stacked(surveyed(template, values), {})
    length = values["L"]
    assert (found.places["A"], found.places["B"]) == (complex(length, length), 0j)
    own = stage(BAR)
    assert own.spot("A") - own.spot("B") == pytest.approx(40.0 * complex(length, length))


CHAIN = """
[body.low]
particle = true
[body.high]
particle = true
[[cable]]
body = "low"
direction = 150
symbol = "T_1"
[[cable]]
body = "low"
other = "high"
direction = 40
symbol = "T_2"
[[cable]]
body = "high"
direction = 20
symbol = "T_3"
[[weight]]
body = "low"
mass = "m"
symbol = "W_1"
[[weight]]
body = "high"
mass = "m"
symbol = "W_2"
[[find]]
quantity = "T_2"
"""


def test_a_knot_tied_to_a_knot_is_none_and_what_one_line_holds_hangs() -> None:
    template, values, givens = read(CHAIN)
    assert blocks_of(surveyed(template, values), Depictions(), givens) == {}
    first, rest = CHAIN.split('[[cable]]\nbody = "low"\ndirection = 150\nsymbol = "T_1"\n')
    template, values, givens = read(first + rest)
    assert blocks_of(surveyed(template, values), Depictions(), givens).keys() == {"high"}


TONGS = """
[points]
P = [0, 0]
C = ["-L/4", "-L/2"]
D = ["L/4", "-L/2"]
[body.left]
along = ["P", "C"]
[body.right]
along = ["P", "D"]
[body.stone]
particle = true
[[hinge]]
body = "left"
other = "right"
at = "P"
symbol = "R"
[[force]]
body = "left"
at = "P"
direction = 90
symbol = "F"
[[weight]]
body = "stone"
mass = "m"
"""
GRIP = """
[[rough]]
body = "{}"
other = "stone"
at = "{}"
direction = {}
normal = "N_{}"
friction = "f_{}"
friction_direction = 270
"""


def test_what_two_bars_grip_is_between_their_ends() -> None:
    grips = [GRIP.format(*row, row[1], row[1]) for row in (("left", "C", 180), ("right", "D", 0))]
    asked = '[[find]]\nquantity = "F"\n'
    template, values, _ = read("".join((TONGS, *grips, asked)))
    measured = stacked(surveyed(template, values), {})
    (stone,) = measured.outline(template.system.body("stone"))
    assert stone == pytest.approx((measured.places["C"] + measured.places["D"]) / 2)
    stated = TONGS.replace("[body.left]", 'S = ["L", 0]\n[body.left]').replace(
        "[body.stone]\n", '[body.stone]\nalong = ["S"]\n'
    )
    template, values, _ = read("".join((stated, *grips, asked)))
    assert stacked(surveyed(template, values), {}).places["S"] == values["L"]


def test_a_leg_on_a_wedge_is_narrow_with_its_weight_on_the_top_it_bears() -> None:
    plain = stage(WEDGE, 'wedge = "wedge"').blocks["block"]
    leg = stage(WEDGE, 'wedge = "wedge"', 'block = "leg"').blocks["block"]
    assert (plain.look, leg.look) == (Look.CRATE, Look.LEG)
    assert leg.half.real < plain.half.real
    stem, top = (bounds([shape]) for shape in leg.drawn(0j, UNTAGGED))
    assert top.left < stem.left - 30.0
    assert leg.face == pytest.approx(top.centre)
    alone = blocks(SLOPE, 'crate = "leg"')["crate"]
    assert (alone.look, alone.faced) == (Look.CRATE, None)
