"""Lines: what they end at, and what holds them there."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from probgen.figures.paper.scene import Arc, Path, bounds, heading
from probgen.figures.parts.ground import Surface
from probgen.figures.situation.drawn_line import Line
from probgen.figures.situation.line import _particle_run, lines_of
from tests.figures.readings import PUBLISHED, prepared, scenes_of, solved
from tests.figures.rope_sketches import BY_LENGTHS, FRAME, TOWARD
from tests.figures.seen import tagged, touching
from tests.figures.sketches import HINGED, KNOT, TACKLE, TWO, sketch, stage


def lines(text: str, *shown: str, walls: list[Surface] | None = None) -> dict[str, Line]:
    faces = [] if walls is None else walls
    return {line.element: line for line in lines_of(stage(text, *shown), faces)}


def ends_of(line: Line) -> tuple[complex, complex]:
    assert line.ends is not None
    return line.ends


def test_a_cable_ends_at_its_wall_which_is_lengthened() -> None:
    walls = [Surface(-11 + 0j, 0.0, 14.0, 14.0)]
    start, end = ends_of(lines(HINGED.replace("WAY", "150"), walls=walls)["T"])
    assert start == 120 + 0j
    rise = 131.0 * math.tan(math.radians(30.0))
    assert end == pytest.approx(-11 + rise * 1j)
    (wall,) = walls
    assert max(spot.imag for spot in wall.ends) == pytest.approx(rise + 14.0)


def test_a_cable_that_would_rise_too_high_is_broken_off_before_its_wall() -> None:
    walls = [Surface(-11 + 0j, 0.0, 14.0, 14.0)]
    cable = lines(HINGED.replace("WAY", "120"), walls=walls)["T"]
    _, end = ends_of(cable)
    assert end.imag == pytest.approx(0.6 * 120.0)
    assert str(cable.shapes[0].tag) == "beyond:T"
    assert walls == [Surface(-11 + 0j, 0.0, 14.0, 14.0)]


def test_springs_to_both_sides_of_a_particle_end_at_one_ceiling() -> None:
    """A particle has no size that would say how high is too high."""
    (path,) = (each for each in PUBLISHED if each.stem == "up1-5.7-p87")
    problem = prepared(path)
    (own,) = solved(problem, 1)
    scene = scenes_of(problem, own)[0]
    left, right = (bounds(tagged(scene, f"spring:{id}")) for id in ("F_A", "F_B"))
    assert tagged(scene, "beyond") == ()
    assert right.top == pytest.approx(left.top, abs=1.5)


@pytest.mark.parametrize(
    ("way", "normal"), [("120", 0.0), ("90", 270.0), ("180", 0.0), ("0", 180.0)]
)
def test_a_line_that_finds_no_wall_has_one_of_its_own(way: str, normal: float) -> None:
    walls: list[Surface] = []
    _, end = ends_of(lines(HINGED.replace("WAY", way), 'T = "wall"', walls=walls)["T"])
    (wall,) = walls
    assert (wall.at, wall.normal) == (end, normal)


@pytest.mark.parametrize(
    ("shown", "held"), [((), False), (('T = "wall"',), True), (('T = "post"',), True)]
)
def test_a_falling_cable_goes_on_unless_it_is_said_to_be_fixed(
    shown: tuple[str, ...], held: bool
) -> None:
    walls: list[Surface] = []
    lines(HINGED.replace("WAY", "240"), *shown, walls=walls)
    assert bool(walls) == held


def test_a_cable_s_name_fixes_nothing() -> None:
    walls: list[Surface] = []
    text = HINGED.replace("WAY", "240").replace('symbol = "T"', 'symbol = "T"\nname = "wall"')
    lines(text, walls=walls)
    assert not walls


def test_two_cords_to_both_sides_are_tied_to_posts_unless_they_hang_from_a_ceiling() -> None:
    cords = lines(KNOT)
    assert [cords[id].posted for id in ("T_1", "T_2")] == [True, True]
    cords = lines(KNOT, 'T_1 = "ceiling"', 'T_2 = "wall"')
    assert [cords[id].posted for id in ("T_1", "T_2")] == [False, False]


def test_a_cord_is_long_enough_for_a_post_to_stand_beside_what_hangs() -> None:
    for id, way in (("T_1", 150.0), ("T_2", 40.0)):
        start, end = ends_of(lines(KNOT)[id])
        assert (end - start) / abs(end - start) == pytest.approx(heading(way))
        assert abs((end - start).real) >= 41.9


OFF_BODY = HINGED.replace('B = ["L", 0]', 'B = ["L", 0]\nP = ["L/2", "L/2"]')


def test_a_cable_ends_at_a_point_off_the_body_that_lies_on_its_line() -> None:
    """From B = (120, 0) at 135 degrees to P = (60, 60)."""
    towards = OFF_BODY.replace("WAY", "135")
    assert ends_of(lines(towards)["T"]) == pytest.approx((120 + 0j, 60 + 60j))
    for way in ("130", "315"):  # beside it, and away from it
        _, end = ends_of(lines(OFF_BODY.replace("WAY", way))["T"])
        assert abs(end - (60 + 60j)) > 5.0
    # A strut or a spring is told where it ends in another way.
    for kind in ("strut", "spring"):
        other = towards.replace("[[cable]]", f"[[{kind}]]")
        if kind == "strut":
            other = other.replace("135", "315")  # it pushes from there
        _, end = ends_of(lines(other)["T"])
        assert abs(end - (60 + 60j)) > 5.0


@pytest.mark.parametrize("way", ["120", "170", "300"])
def test_a_line_pinned_to_a_part_that_is_not_shown_ends_at_its_pin(way: str) -> None:
    walls = [Surface(0j, 0.0, 10.0, 10.0)]
    found = lines(HINGED.replace("WAY", way), 'T = "arm"', walls=walls)["T"]
    _, end = ends_of(found)
    assert walls == [Surface(0j, 0.0, 10.0, 10.0)]  # it neither ends there nor has its own
    assert any(abs(bounds([shape]).centre - end) < 0.1 for shape in found.shapes)


def test_a_line_goes_on_as_far_as_half_its_body_where_nothing_holds_it() -> None:
    start, end = ends_of(lines(HINGED.replace("WAY", "240"))["T"])
    assert abs(end - start) == pytest.approx(0.5 * 120.0)
    assert (end - start) / abs(end - start) == pytest.approx(heading(240.0))


@pytest.mark.parametrize(
    ("way", "run"), [(90.0, 74.0), (0.0, 74.0), (180.0, 74.0), (60.0, 108.0), (120.0, 108.0),
                     (75.0, 111.0), (45.0, 76.3675), (30.0, 74.0)],
)  # fmt: skip
def test_how_long_a_line_from_a_particle_is(way: float, run: float) -> None:
    """At least 74 pt, and 54 pt to its side, but no more than half as much again."""
    assert _particle_run(way) == pytest.approx(run, abs=1e-3)


@pytest.mark.parametrize("toward", [TOWARD, BY_LENGTHS])
def test_a_rope_over_a_pin_s_pulley_runs_up_to_the_ground_point_it_leads_to(toward: str) -> None:
    """It ends there, and the other part at the load's edge, not in it."""
    text, walls = FRAME.replace("TOWARD", toward), list[Surface]()
    found, set_out = lines(text, 'load = "crate"', walls=walls), stage(text, 'load = "crate"')
    start, end = ends_of(found["S.3"])
    assert end == pytest.approx(set_out.spot("G"))
    assert abs(start - set_out.spot("C")) == pytest.approx(9.0)
    assert any(abs(wall.height(end)) < 17.0 and wall.normal == 90.0 for wall in walls)
    hung = ends_of(found["S"])
    top = set_out.spot("M") + set_out.blocks["load"].lift + 1j * set_out.blocks["load"].half.imag
    assert hung[0] == pytest.approx(top)
    assert hung[1] == pytest.approx(set_out.spot("C") + 9.0)


def test_a_rope_over_an_edge_runs_to_its_pulley_and_the_other_pull_is_drawn_with_it() -> None:
    found = lines(TWO.replace("SLOPE", "0"))
    assert found.keys() == {"T"}
    start, end = ends_of(found["T"])
    assert end.real > start.real
    assert end.imag == pytest.approx(start.imag)
    tags = {str(shape.tag) for shape in found["T"].shapes}
    assert {"rope:T", "rope:T.2", "pulley:T"} <= tags


def test_strands_between_the_blocks_of_a_tackle_are_as_many_as_pull() -> None:
    tackle = lines(TACKLE)[""]
    assert tackle.ends is None
    both, free = tackle.shapes
    assert isinstance(both, Path)
    assert isinstance(free, Path)
    assert (len(both.lines), len(free.lines)) == (2, 1)


def from_above(text: str, *shown: str) -> list[Line]:
    side = stage(text, *shown)
    labels = replace(side.measured.labels, plan=True)
    above = replace(side, measured=replace(side.measured, labels=labels))
    return list(lines_of(above, []))


def test_seen_from_above_a_rope_ends_at_a_peg_unless_a_wall_is_told() -> None:
    plan = from_above(KNOT)
    for rope in plan:
        peg = rope.shapes[0]
        assert isinstance(peg, Arc)
        assert peg.centre == pytest.approx(ends_of(rope)[1])
        assert not rope.posted
    walls = from_above(KNOT, 'T_1 = "wall"', 'T_2 = "wall"')
    assert not any(isinstance(rope.shapes[0], Arc) for rope in walls)


SEAT = """
[body.mate]
particle = true
[body.seat]
particle = true
[[weight]]
body = "mate"
mass = "m"
[[weight]]
body = "seat"
mass = "m"
symbol = "W_s"
[[contact]]
body = "mate"
other = "seat"
direction = 90
symbol = "N"
[[rope]]
symbol = "T"
pulls = [{ body = "mate", direction = 90 }, { body = "seat", direction = 90 }]
[[find]]
quantity = "T"
"""


def test_a_pulley_hangs_from_a_ceiling_or_from_a_pole_beside_all_if_one_is_told() -> None:
    words = ('mate = "person"', 'seat = "board"')
    walls: list[Surface] = []
    lines(SEAT, *words, walls=walls)
    assert [wall.normal for wall in walls] == [270.0]
    walls = []
    lines(SEAT, *words, 'T = "pole"', walls=walls)
    (ground,) = walls
    scene = sketch(SEAT, *words, 'T = "pole"')
    seat, pole = bounds(tagged(scene, "body:seat")), bounds(tagged(scene, "support:T"))
    assert ground.normal == 90.0
    assert pole.right > seat.right
    assert pole.bottom < seat.bottom
    assert pole.top > bounds(tagged(scene, "pulley:T")).centre.imag
    assert touching(scene) == []


DRAGGED = """
mu = { name = "coefficient of kinetic friction", choices = [0.2], unit = "1" }
[body.sack]
particle = true
[[weight]]
mass = "m"
[[rough]]
normal = "N"
friction = "f"
friction_direction = 180
coefficient = "mu"
sliding = SLIDES
[[cable]]
direction = "theta"
symbol = "T"
[[find]]
quantity = "T"
"""
"""A sack on level ground, dragged to the right by a rope."""


def test_nothing_holds_the_far_end_of_a_rope_that_pulls_what_slides() -> None:
    for slides, faces, shown in (("true", 0, ()), ("false", 1, ()), ("true", 1, ('T = "wall"',))):
        walls: list[Surface] = []
        (rope,) = lines(DRAGGED.replace("SLIDES", slides), *shown, walls=walls).values()
        assert len(walls) == faces
        start, end = ends_of(rope)
        assert (end - start) / abs(end - start) == pytest.approx(heading(25.0))


def test_a_sling_is_a_band_round_its_body_under_a_ceiling() -> None:
    text = HINGED.replace("WAY", "90")
    (band,) = (shape for shape in lines(text, 'shelf = "leg"', 'T = "sling"')["T"].shapes
               if isinstance(shape, Path) and shape.closed)  # fmt: skip
    set_out = stage(text, 'shelf = "leg"', 'T = "sling"')
    box, spot = bounds([band]), set_out.spot("B")
    assert box.centre == pytest.approx(spot)
    assert box.height > 4.0 * set_out.halves["shelf"]
    walls: list[Surface] = []
    lines(text, 'T = "sling"', walls=walls)
    assert [wall.normal for wall in walls] == [270.0]


def test_a_thick_cord_is_told_by_its_word() -> None:
    drawn = lines(KNOT, 'T_1 = "tree"', 'T_2 = "tree by a thick cord"')
    pens = {}
    for id in ("T_1", "T_2"):
        cord = drawn[id].shapes[-2]
        assert isinstance(cord, Path)
        pens[id] = cord.pen.weight
    assert pens["T_2"] > 1.5 * pens["T_1"]
    assert all(drawn[id].posted for id in pens)
