"""Hinges, joints and built-in ends: drawn as what they are said to be, whatever they are called."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import Arc, Curve, bounds, heading
from probgen.figures.paper.tag import What
from probgen.figures.parts.mechanical import PIN
from probgen.figures.situation.fixture import Fixture
from probgen.figures.situation.support import draw_supports, fixture_of
from tests.figures.readings import TEMPLATES, prepared, scenes_of, solved
from tests.figures.seen import box_of, tagged
from tests.figures.sketches import BEAM, DRUM, HINGED, LEANING, LIMB, SLOPE, STACK, TRUSS, stage

TIED = """
[points]
A = [0, 0]
B = ["L/2", 0]
C = ["L", 0]
[body.left]
along = ["A", "B"]
[body.right]
along = ["B", "C"]
[[hinge]]
body = "left"
at = "A"
symbol = "R"
[[hinge]]
body = "left"
other = "right"
at = "B"
symbol = "S"
[[roller]]
body = "right"
at = "C"
symbol = "N"
[[weight]]
body = "right"
mass = "m"
uniform = true
[[find]]
quantity = "N"
"""


def fixture(text: str, id: str, *shown: str) -> Fixture:
    set_out = stage(text, *shown)
    return fixture_of(set_out, set_out.system.element(id))


BEAM_HINGED = HINGED.replace("WAY", "120")


@pytest.mark.parametrize(
    ("word", "normal"),
    [("wall", 0.0), ("floor", 90.0), ("ground", 90.0), ("ceiling", 270.0), ("axle", 0.0)],
)
def test_a_hinge_s_bracket_is_on_the_face_that_is_said(word: str, normal: float) -> None:
    found = fixture(BEAM_HINGED, "R", f'R = "{word}"')
    (face,) = found.surfaces
    assert face.normal == normal
    assert face.at == pytest.approx(-11.0 * heading(normal))
    assert found.gap == PIN


@pytest.mark.parametrize(
    ("name", "direction"), [("ceiling", "120"), ("knee joint", "120"), ("fulcrum", "120")]
)
def test_a_hinge_s_name_draws_nothing(name: str, direction: str) -> None:
    named = BEAM_HINGED.replace('symbol = "R"', f'symbol = "R"\nname = "{name}"')
    assert fixture(named, "R") == fixture(BEAM_HINGED, "R")


def test_a_hinge_of_an_upright_bar_is_on_the_ground_and_of_a_hanging_one_on_a_ceiling() -> None:
    for end, normal in (('[0, "L"]', 90.0), ('[0, "-L"]', 270.0)):
        text = BEAM_HINGED.replace('["L", 0]', end)
        assert [face.normal for face in fixture(text, "R").surfaces] == [normal]


def test_a_fulcrum_is_a_wedge_with_a_pin() -> None:
    found = fixture(BEAM_HINGED, "R", 'R = "fulcrum"')
    assert found.gap == 0.0
    assert found.surfaces[0].at.imag == pytest.approx(-3.0 - 17.0)


@pytest.mark.parametrize(
    ("word", "way"), [("elbow", 1j), ("knee", -1), ("hip", -1j), ("joint", 0), ("shoulder", 0)]
)
def test_beyond_a_joint_is_the_limb_it_belongs_to(word: str, way: complex) -> None:
    found = fixture(BEAM_HINGED, "R", f'R = "{word}"')
    assert found.gap == 4.0
    assert not found.surfaces
    bones = [shape for shape in found.shapes if isinstance(shape, Curve)]
    assert bool(bones) == bool(way)
    if bones:
        centre = bounds(bones).centre
        assert (centre / way).real > 20.0


@pytest.mark.parametrize("limb", ["arm", "forearm"])
def test_beyond_the_shoulder_of_an_arm_is_one_side_of_somebody(limb: str) -> None:
    """Behind the arm, on the side it does not reach to."""
    plain = fixture(LIMB, "J", f'limb = "{limb}"')
    found = fixture(LIMB, "J", f'limb = "{limb}"', 'J = "shoulder"')
    skin = [shape for shape in found.shapes if shape.tag.what is What.BEYOND]
    assert bool(skin) == (limb == "arm")
    if skin:
        (joint,) = [s for s in plain.shapes if isinstance(s, Arc) and s.radius > 2.0]
        box = bounds(skin[:1])
        assert box.left < joint.centre.real - 30.0
        assert box.bottom < joint.centre.imag - 20.0 < joint.centre.imag + 15.0 < box.top
        assert found.shapes[len(skin) :] == plain.shapes


@pytest.mark.parametrize(("limb", "bone"), [("forearm", True), ("foot", True), ("arm", False)])
def test_the_joint_of_a_limb_is_that_of_the_body_it_belongs_to(limb: str, bone: bool) -> None:
    found = fixture(LIMB, "J", f'limb = "{limb}"')
    assert any(isinstance(shape, Curve) for shape in found.shapes) == bone


def test_above_a_lower_jaw_is_the_upper_one() -> None:
    found = fixture(LIMB, "J", 'limb = "jaw"')
    jaw = fixture(LIMB, "J", 'limb = "arm"')
    assert len(found.shapes) > len(jaw.shapes)
    assert found.gap == jaw.gap


def test_a_drum_turns_on_a_stand_higher_than_its_radius() -> None:
    (ground,) = fixture(DRUM, "R", 'drum = "drum"').surfaces
    assert ground.at.imag == pytest.approx(-(40.0 + 30.0))


def test_the_bearings_of_a_shaft_are_not_shown() -> None:
    assert fixture(DRUM, "R", 'drum = "drum"', 'R = "shaft"') == Fixture()


@pytest.mark.parametrize("word", ["arm", "machine", "frame"])
def test_a_pin_on_a_part_that_is_not_shown_has_no_ground(word: str) -> None:
    found = fixture(HINGED.replace("WAY", "120"), "R", f'R = "{word}"')
    assert found.surfaces == ()
    assert len(found.shapes) == 1
    assert found.gap > 0.0


PROPPED = """
[points]
A = [0, 0]
C = { from = "A", distance = "L", direction = 65 }
D = ["L", RISE]
[body.wall]
along = ["A", "C"]
[body.prop]
along = ["C", "D"]
[[hinge]]
body = "wall"
at = "A"
symbol = "R"
[[hinge]]
body = "wall"
other = "prop"
at = "C"
symbol = "Q"
[[contact]]
body = "prop"
at = "D"
direction = 90
symbol = "N"
[[weight]]
body = "prop"
mass = "m"
uniform = true
[[find]]
quantity = "N"
"""


@pytest.mark.parametrize(("rise", "together"), [("0", True), ('"-0.5 m"', False)])
def test_a_floor_hinge_level_with_the_floor_beside_it_has_the_same_ground(
    rise: str, together: bool
) -> None:
    text = PROPPED.replace("RISE", rise)
    hinge, floor = (fixture(text, id, 'R = "floor"').surfaces[0].at.imag for id in ("R", "N"))
    assert (hinge == pytest.approx(floor, abs=0.1)) is together


def test_a_built_in_end_is_square_to_its_wall() -> None:
    (wall,) = fixture(BEAM, "R").surfaces
    assert (wall.at, wall.normal) == (0j, 0.0)


def test_bodies_pinned_to_each_other_both_stop_short_of_one_pin() -> None:
    field = Field()
    held = draw_supports(stage(TIED), field)
    assert held.ends.gaps == {"A": PIN, "B": PIN}
    pins = [shape for shape in field.shapes if str(shape.tag).startswith("support:S")]
    assert [type(pin) for pin in pins] == [Arc]
    assert [face.normal for face in held.surfaces] == [0.0, 90.0]


def test_what_supports_leave_is_told_by_point() -> None:
    held = draw_supports(stage(LEANING), Field())
    assert held.ends.cuts == {"A": pytest.approx(1j)}
    assert not held.inclines
    assert draw_supports(stage(SLOPE), Field()).inclines == {"theta"}
    assert len(draw_supports(stage(STACK), Field()).surfaces) == 1  # nothing between the two


@pytest.mark.parametrize(
    ("word", "normal"), [("wall", 0.0), ("ceiling", 270.0), ("floor", 90.0), ("fulcrum", 90.0)]
)
def test_a_truss_is_pinned_to_what_is_said(word: str, normal: float) -> None:
    """Where several members meet: to a wall beside them, under a ceiling, else on a wedge."""
    (surface,) = fixture(TRUSS, "R", f'R = "{word}"').surfaces
    assert surface.normal == normal


BUOY = """
[body.buoy]
particle = true
[[force]]
direction = 20
magnitude = "40 N"
symbol = "P"
[[hinge]]
symbol = "R"
[[find]]
quantity = "R"
"""


def test_a_hinge_that_no_wall_holds_is_a_peg_where_it_is_seen_from_above() -> None:
    side = stage(BUOY)
    labels = replace(side.measured.labels, plan=True)
    above = replace(side, measured=replace(side.measured, labels=labels))
    element = side.system.element("R")
    assert fixture_of(side, element).surfaces
    peg = fixture_of(above, element)
    assert not peg.surfaces
    assert all(isinstance(shape, Arc) and shape.centre == 0j for shape in peg.shapes)


def test_a_block_of_wood_has_its_edge_under_the_bar_and_stands_on_the_ground_of_a_batten() -> None:
    problem = prepared(next(path for path in TEMPLATES if path.stem == "crowbar-stone"))
    for own in solved(problem, 3):
        scene = scenes_of(problem, own)[0]
        block, batten = box_of(scene, "support:R"), box_of(scene, "support:N_1")
        assert block.bottom == pytest.approx(batten.bottom, abs=0.6)
        assert block.width == pytest.approx(block.height)
        assert block.left > box_of(scene, "body:stone").right  # clear of the stone
        assert batten.width < 14.0
        assert len(tagged(scene, "ground")) == 1  # one ground
