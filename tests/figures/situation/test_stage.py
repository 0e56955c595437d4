"""The stage: places on paper, how thick bodies are, where they touch and what is beside what."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.bank.depiction import Look
from probgen.bank.labels import Labels
from probgen.figures.measured.opening import openings
from probgen.figures.measured.states import set_apart
from probgen.figures.measured.survey import survey
from probgen.figures.paper.scene import Box, Scene, Stated, bearing, bounds, dot, heading
from probgen.figures.paper.tag import Tag, What
from probgen.quantities.expression import Name
from tests.beam_states import TWO_STATES
from tests.figures.readings import TEMPLATES, prepared, scenes_of, solved
from tests.figures.seen import box_of
from tests.figures.sketches import (
    BEAM,
    CABINET,
    CASE,
    DRUM,
    HELD,
    KNOT,
    LEANING,
    SLOPE,
    TACKLE,
    TRUSS,
    TWO,
    stage,
)
from tests.situations import worked

SHOVED = """
[body.crate]
particle = true
[[weight]]
mass = "m"
[[rough]]
normal = "N"
friction = "f"
friction_direction = 180
[[force]]
direction = "SIDE"
symbol = "P"
[[find]]
quantity = "P"
"""

HOLDING = """
[body.mate]
particle = true
[body.bit]
particle = true
[[weight]]
body = "mate"
mass = "m"
[[rough]]
body = "mate"
normal = "N"
friction = "f"
[[cable]]
body = "mate"
other = "bit"
direction = "WAY"
symbol = "T"
[[hinge]]
body = "bit"
symbol = "R"
[[force]]
body = "bit"
direction = 180
magnitude = "400 N"
symbol = "P"
[[condition]]
that = "P = 4*T"
because = "a rope about to slip"
[[find]]
quantity = "T"
"""


TWO_LAMPS = """
[points]
B = [0, 0]
C = { from = "B", distance = "0.4 m", direction = 330 }
D = { from = "C", distance = "1 m", direction = "SIDE" }
[body.one]
particle = true
along = ["B"]
[body.two]
particle = true
along = ["C"]
[[cable]]
body = "one"
direction = 140
symbol = "T_1"
[[cable]]
body = "one"
other = "two"
at = "B"
toward = "C"
symbol = "T_2"
[[cable]]
body = "two"
toward = "D"
symbol = "T_3"
[[weight]]
body = "one"
mass = "m"
[[weight]]
body = "two"
mass = "m/3"
symbol = "W_2"
[[find]]
quantity = "T_1"
"""


@pytest.mark.parametrize("side", [35.0, 130.0])
def test_the_far_end_of_a_line_is_moved_with_the_knot_it_leads_from(side: float) -> None:
    """Two lamps set so far apart that neither hides the other."""
    lamps = stage(TWO_LAMPS.replace("SIDE", str(side)))
    assert abs(lamps.spot("C") - lamps.spot("B")) > 2.0 * 0.4 * lamps.scale
    assert bearing(lamps.spot("D") - lamps.spot("C")) == pytest.approx(side)


def test_places_grow_with_the_scale_and_particles_beside_each_other_are_moved() -> None:
    set_out = stage(BEAM, scale=40.0)
    assert (set_out.spot("A"), set_out.spot("B")) == (0j, 120 + 0j)
    assert set_out.size("shelf") == pytest.approx(120.0)
    two = stage(TWO.replace("SLOPE", "0"))
    box, pail = (two.spot(two.system.body(id).outline[0]) for id in ("box", "pail"))
    assert pail.real > box.real + 20.0
    assert two.size("pail") == 60.0


@pytest.mark.parametrize(
    ("text", "shown", "half"),
    [
        (BEAM, (), 3.0),
        (BEAM, ('shelf = "plank"',), 2.2),
        (DRUM, ('drum = "drum"',), 0.0),
        (CABINET, (), 0.0),
        (CASE, ('case = "cabinet"',), 20.0),  # half a metre
    ],
)
def test_half_of_a_body_is_that_of_what_it_is(
    text: str, shown: tuple[str, ...], half: float
) -> None:
    set_out = stage(text, *shown)
    assert list(set_out.halves.values()) == pytest.approx([half])


def test_a_body_nothing_is_said_of_is_a_beam() -> None:
    assert stage(BEAM).look("shelf") is Look.BEAM
    assert stage(BEAM, 'shelf = "ladder"').look("shelf") is Look.LADDER


def test_data_are_labelled_with_symbol_and_number_and_unknowns_with_their_symbols() -> None:
    set_out = stage(BEAM)
    length = set_out.text(Name("L", "L"))
    assert isinstance(length, Stated)
    assert (length.symbol, str(length.number.value)) == (Name("L", "L"), "3.0")
    assert set_out.text(Name("R", "R")) == Name("R", "R")


def test_a_line_begins_at_the_edge_of_a_block_and_at_the_middle_of_a_ring() -> None:
    two = stage(TWO.replace("SLOPE", "0"))
    pull = two.system.element("T")
    assert two.rest(pull) - two.spot(pull.at) == pytest.approx(two.blocks["box"].half.real)
    knot = stage(KNOT)
    cord = knot.system.element("T_1")
    assert knot.rest(cord) == knot.spot(cord.at)


@pytest.mark.parametrize(
    ("side", "word", "corner", "ways"),
    [
        ("theta", "arrow", 1, (0.0, 25.0)),  # to the right, up from the level
        ("-theta", "push", -1, (180.0, 155.0)),  # on the left, behind the crate
    ],
)
def test_the_angle_of_a_force_opens_at_the_edge_of_its_block(
    side: str, word: str, corner: int, ways: tuple[float, float]
) -> None:
    set_out = stage(SHOVED.replace("SIDE", side), f'P = "{word}"')
    (opening,) = openings(set_out.measured)
    spot, *found = set_out.set_out(opening)
    assert spot == set_out.rest(set_out.system.element("P"))
    assert corner * spot.real > 10.0
    assert found == pytest.approx(ways)


@pytest.mark.parametrize("slope", [0, 12])
def test_a_bollard_stands_on_the_ground_of_who_holds_its_rope(slope: int) -> None:
    text = HOLDING.replace("WAY", f"180 + {slope}")
    shown = stage(text, 'mate = "person"', 'bit = "bollard"', scale=0.0)
    rope = shown.system.element("T")
    bollard = shown.system.body("bit")
    hands, turns = shown.rest(rope), shown.spot(bollard.outline[0])
    assert bearing(turns - hands) == pytest.approx(180.0 + slope)
    feet = shown.spot(shown.system.body("mate").outline[0]).imag - shown.blocks["mate"].half.imag
    assert shown.foot(bollard) == pytest.approx(complex(turns.real, feet))


def test_a_bollard_by_itself_has_a_foot_below_its_rope() -> None:
    shown = stage(KNOT, 'knot = "bollard"')
    knot = shown.system.body("knot")
    assert shown.spot(knot.outline[0]).imag - shown.foot(knot).imag > 20.0


def test_a_bar_lies_on_its_face_and_its_end_is_cut_to_a_floor() -> None:
    set_out = stage(LEANING)
    side, foot = (set_out.system.element(id) for id in ("N", "N_f"))
    assert set_out.cut(side, 150.0) == 0
    assert set_out.depth(side, 150.0) == pytest.approx(3.0)
    assert set_out.cut(foot, 90.0) == pytest.approx(1j)
    assert set_out.depth(foot, 90.0) == 0.0
    for slope, cut in ((33.0, True), (27.0, False)):  # a leg of a table, a ladder being raised
        low = stage(LEANING.replace("direction = 60", f"direction = {slope}"))
        assert bool(low.cut(low.system.element("N_f"), 90.0)) is cut


def test_a_block_touches_with_its_edge() -> None:
    set_out = stage(SLOPE)
    rough = set_out.system.element("N")
    assert set_out.normal(rough) == pytest.approx(115.0)
    assert set_out.depth(rough, 115.0) == pytest.approx(set_out.blocks["crate"].half.imag)
    assert not set_out.cut(rough, 115.0)
    assert stage(HELD).normal(stage(HELD).system.element("N")) == 90.0


def test_ways_lead_away_from_a_point_along_the_body() -> None:
    set_out = stage(DRUM)
    assert set_out.ways(set_out.system.element("R")) == pytest.approx([-20 + 0j, 40 + 0j])
    assert set_out.ways(set_out.system.element("W")) == pytest.approx([20 + 0j])


def test_the_particles_of_a_tackle_are_pulleys() -> None:
    tackle = stage(TACKLE)
    assert tackle.wheel("lower") == tackle.wheel("upper") > 0
    assert stage(TWO.replace("SLOPE", "0")).wheel("box") == 0.0
    assert tackle.pulls("lower") == pytest.approx([1j])


def test_the_part_of_a_rope_on_the_other_side_passes_in_front_of_who_holds_it() -> None:
    text = TWO.replace("SLOPE", "0").replace('"box", direction = "0"', '"box", direction = 90')
    assert text != TWO.replace("SLOPE", "0")
    set_out = stage(text, 'box = "person"')
    (hoist,) = set_out.hoists
    assert hoist.alike
    run = set_out.course(hoist)
    assert dot(run.end - run.start, heading(0.0)) == pytest.approx(18.0)


def test_what_acts_between_two_bodies_is_inner() -> None:
    assert not any(stage(BEAM).is_inner(element) for element in stage(BEAM).system.elements)


def test_a_load_on_top_of_a_truss_leads_in_among_its_members_and_one_below_away() -> None:
    set_out = stage(TRUSS)
    assert set_out.look("truss") is Look.TRUSS
    above, below = (set_out.system.element(id) for id in ("P", "Q"))
    assert set_out.leads_into_truss(above, -30j)
    assert not set_out.leads_into_truss(below, -30j)
    beam = stage(BEAM)
    assert not beam.leads_into_truss(beam.system.element("R"), -30j)


SQUEEZED = """
[points]
A = ["-L", 0]
B = [0, "0.5 m"]
C = [0, "-0.5 m"]
[body.upper]
along = ["A", "B"]
[body.lower]
along = ["A", "C"]
[[hinge]]
body = "upper"
other = "lower"
at = "A"
symbol = "R"
[[force]]
body = "upper"
at = "B"
direction = 270
magnitude = "30 N"
symbol = "P_1"
[[force]]
body = "lower"
at = "C"
direction = "TURN"
magnitude = "30 N"
symbol = "P_2"
[[find]]
quantity = "R"
"""


@pytest.mark.parametrize(
    ("turn", "apart", "run_into"), [(90, 20.0, True), (90, 200.0, False), (270, 20.0, False)]
)
def test_hands_that_squeeze_push_from_outside(turn: int, apart: float, run_into: bool) -> None:
    """Two arrows of 30 pt that point at each other have no room between points 20 pt apart."""
    set_out = stage(SQUEEZED.replace("TURN", str(turn)), scale=apart)
    for id, way in (("P_1", 270.0), ("P_2", float(turn))):
        step = 30.0 * heading(way)
        assert set_out.squeezes(set_out.system.element(id), step) == run_into


def test_a_spot_belongs_to_the_state_it_is_nearest_to() -> None:
    apart = stage(BEAM)
    assert apart.state_at(500 + 0j) == 0  # one state only
    _, own = worked(TWO_STATES)
    known = {id: own.case.values[id] for id in own.draw.values}
    measured = set_apart(survey(own.case.system, Labels(), {**known, "g": 9.8}))
    two = replace(apart, measured=measured)
    for place, body in enumerate(("first", "second")):
        for name in measured.system.body(body).outline:
            assert two.state_at(two.spot(name) + 2 - 2j) == place


def test_states_with_arrows_between_them_stand_further_apart_each_on_its_own_ground() -> None:
    """A sled pulled to the right, and the same one pushed from its left."""
    (path,) = [each for each in TEMPLATES if each.stem == "sled-push-or-pull"]
    problem = prepared(path)
    scene = scenes_of(problem, solved(problem, 1)[0])[0]
    pulled, pushed = (box_of(scene, f"body:{id}") for id in ("pulled", "pushed"))
    assert pushed.centre.real - pulled.centre.real == pytest.approx(190.0)
    left, right = sorted(box_of_all(scene, What.GROUND), key=lambda box: box.left)
    assert right.left - left.right > 30.0
    for body, box in (("pulled", left), ("pushed", right)):
        (name,) = [label for label in scene.labels if label.tag == Tag(What.NOTE, body)]
        assert 0.0 < box.bottom - name.box.top < 15.0


def box_of_all(scene: Scene, what: What) -> list[Box]:
    return [bounds([shape]) for shape in scene.showing(what)]


@pytest.mark.parametrize(("told", "off"), [('P = "push"', 3.4), ('knot = "ring"', 0.0)])
def test_what_pushes_a_ring_ends_at_its_rim(told: str, off: float) -> None:
    pushed = KNOT + '\n[[force]]\nbody = "knot"\ndirection = 180\nmagnitude = "40 N"\nsymbol = "P"'
    shown = stage(pushed, told)
    element = shown.system.element("P")
    assert shown.rest(element) - shown.spot(element.at) == pytest.approx(off + 0j)
