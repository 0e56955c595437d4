"""Water lies from bank to bank, a boat where a rope's arrow ends, a phone before a face."""

from __future__ import annotations

from itertools import pairwise
from math import radians, tan
from pathlib import Path

import pytest

from probgen.figures.paper.scene import Arrow, Scene, bounds, runs
from probgen.figures.paper.scene import Path as Strokes
from probgen.figures.paper.tag import What
from probgen.figures.situation.shape import encloses
from tests.figures.readings import TEMPLATES, prepared, scenes_of, solved
from tests.figures.seen import outlines, tagged
from tests.figures.sketches import BOOM, CASE, HINGED, KNOT, TRUSS, sketch


def drawn(template: str, count: int = 3) -> list[Scene]:
    path: Path = next(path for path in TEMPLATES if path.stem == template)
    problem = prepared(path)
    return [scenes_of(problem, own)[0] for own in solved(problem, count)]


def test_a_pier_stands_in_water_between_two_banks() -> None:
    for scene in drawn("footbridge-two-beams"):
        pier = bounds(tagged(scene, "support:N_B"))
        water = bounds(tagged(scene, "scenery"))
        near, far = (bounds(tagged(scene, f"support:{id}")) for id in ("N_A", "N_E"))
        assert water.left < pier.left < pier.right < water.right
        assert near.left < water.left < water.right < far.right
        assert pier.bottom == pytest.approx(water.bottom, abs=0.5)
        assert pier.top > water.top


def test_where_nothing_stands_on_a_bed_the_water_is_below_all(tmp_path: Path) -> None:
    (dry,) = (path for path in TEMPLATES if path.stem == "balcony-built-in")
    wet = tmp_path / "wet.toml"
    text = dry.read_text(encoding="utf-8")
    wet.write_text(text.replace("[depicts]", '[depicts]\nscenery = "water"'), encoding="utf-8")
    problem = prepared(wet)
    for own in solved(problem, 2):
        scene = scenes_of(problem, own)[0]
        assert bounds(tagged(scene, "scenery")).top <= bounds(tagged(scene, "body")).bottom


def test_a_boat_floats_where_its_rope_ends() -> None:
    for scene in drawn("jetty-mooring"):
        (rope,) = (shape for shape in tagged(scene, "force") if isinstance(shape, Arrow))
        _, _, hull = tagged(scene, "scenery")
        box = bounds([hull])
        assert abs(complex(box.left, box.top) - rope.head) < 1.0
        assert box.bottom < bounds(tagged(scene, "scenery")[:1]).top


def test_a_head_is_bent_over_a_phone_and_its_muscles_pull_down_and_backward() -> None:
    for scene in drawn("head-over-phone"):
        assert bounds(tagged(scene, "scenery")).left > bounds(tagged(scene, "body")).right - 30.0
        tendons = tagged(scene, "muscle")[0]
        assert isinstance(tendons, Strokes)
        way = tendons.lines[-1][-1] - tendons.lines[0][0]
        assert way.real < 0
        assert way.imag < 0


def test_a_spring_is_labelled_with_its_stiffness() -> None:
    for scene in drawn("spring-scales-baskets"):
        assert tagged(scene, "label:upper_stiffness")
        assert tagged(scene, "label:lower_stiffness")


def test_a_foot_presses_on_its_pedal_from_above() -> None:
    for scene in drawn("pedal-bell-crank"):
        (press,) = (shape for shape in tagged(scene, "force") if isinstance(shape, Arrow))
        pad = bounds(tagged(scene, "load"))
        assert press.tail.imag > press.head.imag >= pad.top - 0.5


@pytest.mark.parametrize("limb", ["forearm-load", "leg-raise-cuff"])
def test_a_muscle_ends_at_the_bone_beyond_its_joint(limb: str) -> None:
    for scene in drawn(limb):
        bone = bounds(tagged(scene, "support"))
        muscle = tagged(scene, "muscle")
        ends = [spot for shape in muscle for run in runs(shape) for spot in (run[0], run[-1])]
        assert any(bone.grown(4.0).nearest(spot) == spot for spot in ends)


def test_a_back_keeps_its_size_however_many_labels_stand_about_it() -> None:
    for scene in drawn("bent-back-toolbox", 12):
        assert bounds(tagged(scene, "body")).width > 60.0


@pytest.mark.parametrize(("side", "normal"), [("left", 0.0), ("right", 180.0)])
def test_a_wall_stands_beside_all_that_is_there(side: str, normal: float) -> None:
    scene = sketch(KNOT, f'scenery = "wall {side}"')
    assert len(tagged(scene, "soil")) == len(tagged(sketch(KNOT), "soil")) + 1
    (face,) = (each for each in outlines(scene, "ground") if bounds([each]).height > 20.0)
    (soil,) = (each for each in outlines(scene, "soil") if bounds([each]).height > 20.0)
    ((start, end),) = face.lines
    assert start.real == end.real
    shown = (What.CABLE, What.BODY, What.LOAD)
    others = [bounds([each]) for each in scene.shapes if each.tag.what in shown]
    toward = 1 if normal == 0.0 else -1
    clear = min(toward * (x - start.real) for box in others for x in (box.left, box.right))
    assert clear > 5.0
    assert toward * (bounds([soil]).centre.real - start.real) < 0.0  # the house is behind it


def test_a_tilted_box_is_the_same_about_the_right_edge_of_its_base() -> None:
    scene = sketch(CASE, 'case = "bookcase"', 'scenery = "tilted"')
    (upright,), (tilted,) = outlines(scene, "body:case"), outlines(scene, "scenery")
    assert tilted.pen.dash > 0.0
    box = bounds([upright])
    edge = complex(box.right - 0.4, box.bottom + 0.4)
    reach = [
        sorted(round(abs(spot - edge), 3) for spot in each.lines[0]) for each in (upright, tilted)
    ]
    assert reach[0] == pytest.approx(reach[1])
    assert all(spot.imag >= edge.imag - 1e-6 for spot in tilted.lines[0])
    assert max(spot.real for spot in tilted.lines[0]) > box.right + 10.0
    assert sketch(CASE, 'scenery = "tilted"').showing(What.SCENERY) == ()


def test_a_tailgate_is_open_over_the_van_that_its_gas_struts_are_pinned_on() -> None:
    for scene in drawn("tailgate-gas-struts", 6):
        _, van, *_ = outlines(scene, "scenery")
        rod, cylinder, _, at, foot = tagged(scene, "strut:S")
        assert encloses(van.lines[0], bounds([foot]).centre)
        assert not encloses(van.lines[0], bounds([at]).centre)
        tailgate = bounds(tagged(scene, "body"))
        long = abs(complex(tailgate.width, tailgate.height))
        assert 0.5 * long < abs(bounds([at]).centre - bounds([foot]).centre) < 0.7 * long
        assert bounds([cylinder]).bottom < bounds([rod]).bottom
        (hinge,) = tagged(scene, "support:R")
        assert bounds([van]).top < bounds([hinge]).bottom + 1.0
        assert tagged(scene, "ground") == ()  # it is fixed to no building


def test_a_van_without_struts_or_hinge_is_drawn_as_far_as_there_is_anything() -> None:
    bare = sketch(HINGED.replace("WAY", "120"), 'R = "frame"', 'scenery = "van"')
    assert tagged(bare, "scenery")
    assert sketch(CASE, 'scenery = "van"').showing(What.SCENERY) == ()


@pytest.mark.parametrize("rises", [1, -1])
def test_a_staircase_rises_below_what_is_carried_up_as_steeply_as_it(rises: int) -> None:
    text = BOOM.replace("STEEP", "25" if rises > 0 else "155")
    scene = sketch(text, 'scenery = "stairs"')
    flight, steps = outlines(scene, "scenery")
    (run,) = steps.lines
    ways = [after - before for before, after in pairwise(run)]
    risers, treads = ways[::2], ways[1::2]
    assert all(abs(way.real) < 1e-9 < way.imag for way in risers)
    assert all(abs(way.imag) < 1e-9 < way.real * rises for way in treads)
    assert risers[0].imag / abs(treads[0].real) == pytest.approx(tan(radians(25.0)))
    boom = bounds(tagged(scene, "body:boom"))
    assert bounds([steps]).left < boom.centre.real < bounds([steps]).right
    assert not any(encloses(flight.lines[0], spot) for spot in outlines(scene, "body")[0].lines[0])


def test_nothing_is_carried_up_a_staircase_that_stands_upright() -> None:
    assert sketch(CASE, 'scenery = "stairs"').showing(What.SCENERY) == ()


def test_a_buoy_held_under_water_has_the_bed_below_it_and_the_surface_above_all() -> None:
    for scene in drawn("buoy-current"):
        water, surface = tagged(scene, "scenery")
        box = bounds([water])
        for words in ("body", "cable", "force"):
            part = bounds(tagged(scene, words))
            assert box.left < part.left < part.right < box.right
            assert part.top < box.top
        assert bounds([surface]).centre.imag == pytest.approx(box.top, abs=1.0)
        ground = bounds(outlines(scene, "ground"))
        assert ground.top == pytest.approx(box.bottom, abs=0.6)
        assert (ground.left, ground.right) == pytest.approx((box.left, box.right), abs=1.0)
        assert len(tagged(scene, "cable")) > 10  # the links of a chain


@pytest.mark.parametrize("way", [25, 155])
def test_the_floor_goes_on_where_a_hatch_would_end_that_is_shut(way: int) -> None:
    text = BOOM.replace("STEEP", str(way))
    scene = sketch(text, 'scenery = "hatchway"', 'R = "wall"')
    flap = bounds(tagged(scene, "body:boom"))
    (run,) = outlines(scene, "body:boom")[0].lines
    floor = next(each for each in outlines(scene, "ground") if bounds([each]).width > 30.0)
    level = bounds([floor]).centre.imag
    side = 1 if way < 90 else -1
    ends = sorted(spot.real * side for spot in floor.lines[0])
    hinge = flap.left if side > 0 else flap.right
    length = max(abs(a - b) for a in run for b in run)
    assert ends[0] - hinge * side == pytest.approx(length, abs=5.0)
    assert flap.bottom < level < flap.bottom + 8.0  # its upper face, when it is shut


def test_a_raft_has_its_corner_where_boats_pull_at_it() -> None:
    for scene in drawn("raft-two-boats"):
        raft, (knot,) = bounds(tagged(scene, "scenery")), tagged(scene, "body")
        at = bounds([knot]).centre
        assert raft.left < at.real - 50.0 < at.real < raft.right < at.real + 20.0
        assert raft.bottom < at.imag - 30.0 < at.imag < raft.top < at.imag + 15.0
        pulled = [s for s in tagged(scene, "force") if isinstance(s, Arrow) and s.head.imag > 1.0]
        assert all(raft.nearest(each.head) != each.head for each in pulled)  # off it
    assert sketch(CASE, 'scenery = "raft"').showing(What.SCENERY) == ()


@pytest.mark.parametrize("way", [0, 180])
def test_a_billboard_is_before_what_it_pushes_level(way: int) -> None:
    wind = TRUSS.replace("direction = 270", f"direction = {way}", 1)
    scene = sketch(wind, 'P = "push"', 'scenery = "billboard"')
    (push,) = (shape for shape in tagged(scene, "force:P") if isinstance(shape, Arrow))
    stays, board = tagged(scene, "scenery")
    plate = bounds([board])
    assert plate.bottom + 10.0 < push.head.imag < plate.top - 10.0
    between = sorted((push.tail.real, push.head.real))
    assert between[0] < plate.left < plate.right < between[1]  # the wind is beyond it
    assert bounds([stays]).away(push.head) < 0.5
    order = [shape.tag.what for shape in scene.shapes]
    assert order.index(What.SCENERY) < order.index(What.FORCE)


def test_no_billboard_is_where_nothing_pushes_level() -> None:
    assert not tagged(sketch(TRUSS, 'scenery = "billboard"'), "scenery")
    assert not tagged(sketch(TRUSS, 'P = "push"', 'scenery = "billboard"'), "scenery")


def test_the_boards_of_all_draws_are_clear_of_what_is_told() -> None:
    for scene in drawn("billboard-truss-wind"):
        board = bounds(tagged(scene, "scenery")[1:])
        assert not [label.tag for label in scene.labels if label.box.grown(1.0).overlaps(board)]
