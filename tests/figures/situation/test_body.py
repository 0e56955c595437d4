"""Bodies are drawn as what they are."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import (
    Arc,
    Curve,
    Path,
    Tone,
    dot,
    heading,
)
from probgen.figures.situation.body import outline_of
from probgen.figures.situation.stage import Ends
from tests.figures.seen import tagged, touching
from tests.figures.sketches import (
    BEAM,
    DRUM,
    HELD,
    KNOT,
    LIMB,
    SLOPE,
    sketch,
    stage,
)


@pytest.mark.parametrize("word", ["foot", "head", "jaw", "forearm", "lower leg", "arm"])
def test_limbs_are_drawn_with_their_flesh(word: str) -> None:
    scene = sketch(LIMB, f'limb = "{word}"')
    assert any(isinstance(shape, Curve) for shape in tagged(scene, "body"))
    assert tagged(scene, "centre")  # its weight is its own, nothing it carries
    assert touching(scene) == []


def test_who_does_a_push_up_is_drawn_as_a_person() -> None:
    scene = sketch(LIMB, 'limb = "push-up"')
    filled = [shape for shape in tagged(scene, "body") if isinstance(shape, Path)]
    assert any(shape.tone is Tone.PERSON for shape in filled)
    assert tagged(scene, "centre")


def shapes_of(text: str, *shown: str, ends: Ends | None = None) -> list[object]:
    set_out = stage(text, *shown)
    return list(outline_of(set_out, set_out.system.bodies[0], ends or Ends({}, {})))


def test_a_bar_stops_short_of_its_pin_and_is_cut_to_its_surface() -> None:
    (plain,) = shapes_of(BEAM)
    (short,) = shapes_of(BEAM, ends=Ends({"A": 5.0}, {}))
    assert isinstance(plain, Path)
    assert isinstance(short, Path)
    assert min(spot.real for spot in plain.lines[0]) == pytest.approx(0.0)
    assert min(spot.real for spot in short.lines[0]) == pytest.approx(5.0)
    slanted = 1j * heading(-30.0)
    (cut,) = shapes_of(BEAM, ends=Ends({}, {"B": slanted}))
    assert isinstance(cut, Path)
    end = [spot for spot in cut.lines[0] if spot.real > 60.0]
    assert dot(end[0] - end[1], slanted) == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize(
    ("word", "half"), [("beam", 3.0), ("gate", 3.0), ("plank", 2.2), ("rod", 1.6), ("ladder", 3.2)]
)
def test_a_slender_body_has_the_thickness_of_what_it_is(word: str, half: float) -> None:
    rails = shapes_of(BEAM, f'shelf = "{word}"')[0]
    assert isinstance(rails, Path)
    across = {round(abs(spot.imag), 6) for run in rails.lines for spot in run}
    assert across == {half}


def test_a_ladder_has_rungs_and_a_name_makes_none() -> None:
    assert len(shapes_of(BEAM, 'shelf = "ladder"')) == 2
    assert len(shapes_of(BEAM.replace("[body.shelf]", '[body.shelf]\nname = "ladder"'))) == 1


@pytest.mark.parametrize(("word", "rims", "bars"), [("drum", 2, 0), ("drum with crank", 1, 1)])
def test_a_drum_has_a_rim_for_each_point_but_that_of_its_crank(
    word: str, rims: int, bars: int
) -> None:
    shapes = shapes_of(DRUM, f'drum = "{word}"')
    circles = [shape for shape in shapes if isinstance(shape, Arc)]
    assert len(circles) == rims + 1  # and the axle
    cranks = [spot for shape in shapes if isinstance(shape, Path) for spot in shape.lines[0]]
    assert len(cranks) == 4 * bars
    assert {round(spot.real, 6) for spot in cranks[::3]} <= {2.4}  # from the axle's rim


def test_a_particle_is_a_ring_or_its_block() -> None:
    (ring,) = shapes_of(KNOT)
    (block,) = shapes_of(SLOPE)
    assert isinstance(ring, Arc)
    assert isinstance(block, Path)


def test_a_fishing_rod_has_its_reel_beyond_the_hand_that_grips_it() -> None:
    text = HELD.replace('at = "B"\ndirection', 'at = "C"\ndirection').replace(
        "[body.shelf]", 'C = ["L/4", 0]\n[body.shelf]'
    )
    for shown, along in ((('F = "grip"',), 0.75 * 40 + 11.0), ((), 0.25 * 3 * 40)):
        set_out = stage(text, 'shelf = "fishing rod"', *shown)
        drawn = outline_of(set_out, set_out.system.bodies[0], Ends({}, {}))
        reel = max((s for s in drawn if isinstance(s, Arc)), key=lambda arc: arc.radius)
        assert reel.centre.real - set_out.spot("A").real == pytest.approx(along)


def test_a_leg_without_its_knee_is_broken_off() -> None:
    for text, pieces in ((LIMB, 1), (HELD.replace("shelf", "limb"), 2)):
        set_out = stage(text, 'limb = "leg"')
        assert len(outline_of(set_out, set_out.system.bodies[0], Ends({}, {}))) == pieces


BAND = """
[points]
C = [0, 0]
P = ["-L", 0]
Q = ["L", 0]
[body.drum]
along = ["P", "C", "Q"]
[[hinge]]
at = "C"
symbol = "R"
[[cable]]
at = "P"
direction = 90
symbol = "T_1"
[[cable]]
at = "Q"
direction = 90
symbol = "T_2"
[[find]]
quantity = "T_1"
"""


def test_a_band_lies_on_its_drum_between_its_ends() -> None:
    plain = shapes_of(BAND, 'drum = "drum"')
    *rest, lain = shapes_of(BAND, 'drum = "drum"', 'T_1 = "band"', 'T_2 = "band"')
    assert rest == plain
    assert isinstance(lain, Arc)
    assert lain.radius == pytest.approx(120.0)


def test_only_a_closed_gate_has_boards() -> None:
    assert len(shapes_of(BEAM, 'shelf = "gate"')) == 1
    closed = BEAM.replace('B = ["L", 0]', 'B = ["L", 0]\nC = ["L", "L"]\nD = [0, "L"]').replace(
        'along = ["A", "B"]', 'along = ["A", "B", "C", "D", "A"]'
    )
    assert len(shapes_of(closed, 'shelf = "beam"')) == 1
    assert len(shapes_of(closed, 'shelf = "gate"')) == 2
