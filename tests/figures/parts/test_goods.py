"""A heap lies on its foot, a sack hangs from its mouth, a trough is open above; a bird feeder hangs
upright below its cord's upper end.
"""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Curve, Path, Shape, Tone, bounds, runs
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts.goods import (
    HANDLE,
    RUNNER,
    SACK,
    SLIP,
    bale,
    bales,
    ball,
    feeder,
    heap,
    holdall,
    loudspeaker,
    pallet,
    piano,
    sack,
    sled,
    toolbox,
    trough,
)

LOAD = Tag(What.LOAD)


def test_a_heap_lies_on_its_foot_closed_and_as_wide_and_high_as_it_is_told() -> None:
    (shape,) = heap(50 + 20j, 40.0, 12.0, LOAD)
    assert isinstance(shape, Curve)
    assert shape.start == shape.pieces[-1][-1] == 30 + 20j
    assert [piece[-1] for piece in shape.pieces] == [50 + 32j, 70 + 20j, 30 + 20j]
    assert shape.pieces[-1] == (70 + 20j, 30 + 20j, 30 + 20j)  # straight along the ground
    assert (shape.tag, shape.tone) == (LOAD, Tone.GROUND)


def test_the_sides_of_a_heap_mirror_each_other() -> None:
    (shape,) = heap(0j, 40.0, 12.0, LOAD)
    assert isinstance(shape, Curve)
    left, right, _ = shape.pieces
    there = [shape.start, *left]
    back = [left[-1], *right]
    assert [-spot.conjugate() for spot in reversed(back)] == pytest.approx(there)


def spots(shape: Shape) -> list[complex]:
    return [spot for run in runs(shape) for spot in run]


def heights(shape: Shape) -> tuple[float, float]:
    """The lowest and the highest of its spots."""
    found = [spot.imag for spot in spots(shape)]
    return min(found), max(found)


def test_a_feeder_hangs_below_its_cord_straight_down() -> None:
    cord, tube, seed, tray, roof = feeder(100 + 200j, 15.0, LOAD)
    assert isinstance(cord, Path)
    assert cord.lines == ((100 + 200j, 100 + 185j),)
    assert heights(roof)[1] == 185.0  # the cord ends at the ridge
    assert heights(roof)[0] == heights(tube)[1]
    assert heights(tube)[0] == heights(tray)[1] > heights(tray)[0]
    assert heights(tube)[0] < heights(seed)[0] == heights(seed)[1] < heights(tube)[1]
    for part in (cord, tube, seed, tray, roof):
        found = {complex(round(spot.real - 100, 9), spot.imag) for spot in spots(part)}
        assert found == {complex(-spot.real, spot.imag) for spot in found}, part
        assert part.tag == LOAD
    widths = [max(spot.real for spot in spots(part)) for part in (seed, tube, tray, roof)]
    assert widths[0] == widths[1] < widths[2] < widths[3]


def test_a_loaded_pallet_is_low_and_stands_on_its_runners() -> None:
    runner, *feet, deck, load, seams = pallet(10 + 20j, 27 + 11j, 1j, LOAD)
    whole = bounds((runner, *feet, deck, load, seams))
    assert whole.centre == pytest.approx(10 + 20j, abs=0.1)
    assert whole.width > 2.0 * whole.height
    levels = [bounds([each]).centre.imag for each in (runner, feet[0], deck, load)]
    assert levels == sorted(levels)
    assert len(feet) == 3
    assert bounds([load]).top == pytest.approx(31.4)
    assert bounds([seams]).bottom > bounds([deck]).top - 0.5


def test_a_piano_hangs_level_in_a_sling_with_its_keys_to_the_front() -> None:
    rope, case, *parts, sling = piano(40 + 100j, 15.0, LOAD)
    assert isinstance(rope, Path)
    assert rope.lines == ((40 + 100j, 40 + 85j),)
    box = bounds([case])
    assert box.centre.real == pytest.approx(40.0)
    assert box.top < 85.0
    assert box.width > box.height  # an upright, not a grand one
    assert isinstance(sling, Path)
    *sides, under = sling.lines
    assert {run[0] for run in sides} == {40 + 85j}  # where the rope ends
    assert {run[-1] for run in sides} == {*under}
    assert under[0].imag < box.bottom < under[0].imag + 3.0
    keys = [each for each in parts if isinstance(each, Path) and len(each.lines) > 10]
    assert len(keys) == 2
    assert len(keys[0].lines) > len(keys[1].lines)  # the black ones are fewer
    ledge = bounds(keys)
    assert box.bottom + 15.0 < ledge.bottom < ledge.top < box.top - 15.0


def test_a_loudspeaker_has_its_cones_one_above_the_other_on_its_front() -> None:
    rod, box, woofer, _, tweeter = loudspeaker(5 + 50j, 8.0, LOAD)
    assert bounds([rod]).top == pytest.approx(50.4, abs=0.5)
    front = bounds([box])
    assert front.top == pytest.approx(42.0, abs=0.5)
    low, high = bounds([woofer]), bounds([tweeter])
    assert [each.centre.real for each in (low, high)] == pytest.approx([5.0, 5.0], abs=0.2)
    assert front.bottom < low.bottom < low.top < high.bottom < high.top < front.top


@pytest.mark.parametrize("size", [1.0, 0.6])
def test_a_sack_is_narrow_where_it_is_tied_and_full_below(size: float) -> None:
    body, folds, tie = sack(5 + 60j, LOAD, size)
    whole = bounds([body])
    assert whole.top == pytest.approx(60.0, abs=0.6)
    assert whole.height == pytest.approx(size * SACK, abs=1.0)
    assert isinstance(body, Curve)
    assert body.tone is Tone.BODY
    assert body.start == body.pieces[-1][-1]  # closed
    neck = bounds([tie])
    assert neck.centre.real == pytest.approx(5.0)
    assert neck.width < 0.3 * whole.width
    assert neck.centre.imag < whole.top - 4.0 * size
    assert whole.holds(bounds([folds]))


def test_a_holdall_hangs_from_where_its_two_handles_meet() -> None:
    straps, bag = holdall(3 + 40j, 60.0, 16.0, LOAD)
    assert isinstance(straps, Path)
    assert [run[1] for run in straps.lines] == [3 + 40j, 3 + 40j]
    face = bounds([bag])
    assert face.top == pytest.approx(40.0 - HANDLE, abs=0.5)
    assert face.width == pytest.approx(60.8, abs=0.1)
    assert face.height == pytest.approx(16.8, abs=0.1)
    assert all(end.imag == 40.0 - HANDLE for run in straps.lines for end in run[::2])


def test_a_toolbox_hangs_by_its_handle_with_the_lid_above_the_room_for_its_label() -> None:
    shapes, face = toolbox(3 + 40j, 60.0, 16.0, LOAD)
    bow, body, seam, clasps = (bounds([shape]) for shape in shapes)
    assert bow.top == pytest.approx(40.0, abs=0.5)
    assert bow.bottom == pytest.approx(body.top, abs=1.0)
    assert (face.width, face.height) == pytest.approx((60.0, 16.0))
    assert face.bottom == pytest.approx(body.bottom, abs=0.5)
    assert face.top == pytest.approx(seam.centre.imag)
    assert face.top < body.top - 3.0
    assert body.holds(clasps)
    assert clasps.left < 3.0 < clasps.right


def test_a_bale_is_tied_near_its_ends_where_straw_sticks_out() -> None:
    body, strings, straws = (bounds([shape]) for shape in bale(3 + 4j, 60.0, 16.0, LOAD))
    assert (body.bottom, body.top) == pytest.approx((4.0, 20.0), abs=0.5)
    assert body.width == pytest.approx(60.0, abs=1.0)
    assert body.holds(strings)
    assert strings.width > 0.85 * body.width  # a label has its room between them
    assert straws.left < body.left < body.right < straws.right
    assert body.bottom < straws.bottom < straws.top < body.top


def test_bales_lie_in_two_layers_each_over_a_joint_of_the_other() -> None:
    body, layer, upper, lower, strings = bales(0j, 150 + 0j, 45.0, LOAD)
    assert bounds([body]).height == pytest.approx(45.0, abs=1.0)
    assert bounds([layer]).centre == pytest.approx(75 + 22.5j)
    assert isinstance(upper, Path)
    assert isinstance(lower, Path)
    above, below = ({line[0].real for line in each.lines} for each in (upper, lower))
    assert len(above) == len(below) + 1
    assert not above & below
    assert bounds([strings]).bottom > 22.0  # none among the arrows of the load


def test_a_pipe_is_open_at_its_end_and_a_ball_is_not() -> None:
    rim, hole = ball(3 + 4j, 20.0, LOAD, hollow=True)
    assert (rim,) == ball(3 + 4j, 20.0, LOAD)
    assert bounds([hole]).centre == pytest.approx(3 + 4j, abs=0.5)
    assert 0.8 * bounds([rim]).width < bounds([hole]).width < bounds([rim]).width - 3.0
    assert hole.tone is Tone.PAPER  # type: ignore[union-attr]


def test_a_trough_is_open_above_between_its_thick_ends() -> None:
    inside, cut = trough(0j, 27 + 15j, 1j, 0j, LOAD)
    hollow, stone = bounds([inside]), bounds([cut])
    assert hollow.top == pytest.approx(stone.top, abs=0.3)
    assert hollow.bottom > stone.bottom + 5.0
    assert stone.left + 3.0 < hollow.left < hollow.right < stone.right - 3.0
    assert isinstance(cut, Path)
    assert not [spot for spot in cut.lines[0] if abs(spot.real) < 10.0 and spot.imag > -5.0]


@pytest.mark.parametrize("ahead", [1 + 0j, -1 + 0j])
def test_a_trough_is_dashed_ahead_where_it_is_about_to_slide(ahead: complex) -> None:
    after, hides, *drawn = trough(0j, 27 + 15j, 1j, ahead, LOAD)
    assert isinstance(after, Path)
    assert after.pen.gap
    moved, still = bounds([after]), bounds([drawn[-1]])
    assert (moved.centre - still.centre) == pytest.approx(ahead * SLIP)
    assert isinstance(hides, Path)
    assert hides.tone is Tone.PAPER  # what is dashed shows beyond it only
    assert drawn == [*trough(0j, 27 + 15j, 1j, 0j, LOAD)]


def test_a_sled_stands_on_runners_that_turn_up_at_both_ends() -> None:
    runner, legs, load = sled(4 + 20j, 32 + 12j, LOAD)
    whole = bounds((runner, legs, load))
    assert whole.centre == pytest.approx(4 + 20j, abs=0.2)
    assert bounds([runner]).bottom == pytest.approx(8.0, abs=0.6)
    assert bounds([load]).bottom == pytest.approx(8.0 + RUNNER, abs=0.5)
    low, high = spots(runner)[len(spots(runner)) // 2], spots(runner)[0]
    assert high.imag > low.imag + 3.0
