"""Bodies with breadth: what stands where, and keeps within its outline."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arc, Path, bounds
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts import solid


def test_shelves_lie_between_the_sides_from_below() -> None:
    shelves = solid.shelf_lines(0j, 80j, 12.0)
    heights = [start.imag for start, _ in shelves]
    assert heights == sorted(heights)
    assert 0.0 < heights[0] < heights[-1] < 80.0
    assert {abs(end - start) for start, end in shelves} == {24.0}


def test_a_drum_has_its_rims_about_its_axle() -> None:
    *rims, pin = solid.drum(3 + 4j, (20.0, 9.0), UNTAGGED)
    assert [rim.radius for rim in rims if isinstance(rim, Arc)] == [20.0, 9.0]
    assert isinstance(pin, Arc)
    assert pin.centre == 3 + 4j
    assert pin.radius < 9.0


def test_a_stand_reaches_from_the_rim_to_the_ground() -> None:
    box = bounds(solid.stand(0j, 20.0, 50.0, UNTAGGED))
    assert box.bottom == pytest.approx(-50.0, abs=0.6)
    assert box.top == pytest.approx(-20.0, abs=1.0)


def test_a_rope_s_turns_keep_to_the_bollard_they_are_round() -> None:
    *iron, turns = solid.bollard(20j, 0j, UNTAGGED, UNTAGGED)
    whole, round_it = bounds(iron), bounds([turns])
    assert whole.bottom == pytest.approx(0.0, abs=0.5)
    assert whole.top > 20.0
    assert round_it.centre == pytest.approx(20j)
    assert round_it.width == pytest.approx(2 * solid.BOLLARD, abs=1.0)


def test_a_scale_and_a_post_are_as_high_as_asked() -> None:
    scale = bounds(solid.scale(10 + 0j, 17.0, UNTAGGED))
    assert (scale.bottom, scale.top) == pytest.approx((0.0, 17.0), abs=0.5)
    post = bounds(solid.post(5 + 0j, 5 + 60j, UNTAGGED))
    assert post.height == pytest.approx(60.0, abs=1.0)
    assert post.centre.real == pytest.approx(5.0)


@pytest.mark.parametrize("side", [1, -1])
def test_a_table_s_top_is_over_its_leg_and_goes_on_from_where_the_leg_is_longer(side: int) -> None:
    """As a wedge lies there that is driven in from the other side."""
    corners = [complex(side * x, y) for x, y in ((14, -40), (14, 30), (-14, 30), (-14, -34))]
    top = solid.table_top(corners)
    assert top.top == pytest.approx(30.0)
    assert (top.right if side > 0 else -top.left) == pytest.approx(14.0)
    assert (top.left if side > 0 else -top.right) == pytest.approx(-76.0)
    leg, over = (bounds([shape]) for shape in solid.table_leg(corners, UNTAGGED))
    assert leg.bottom == pytest.approx(-40.0, abs=0.5)
    assert over.centre == pytest.approx(top.centre)


@pytest.mark.parametrize("side", [1, -1])
def test_the_tray_of_a_wheelbarrow_is_over_its_shafts_whichever_way_it_stands(side: int) -> None:
    *_, tray, leg = solid.wheelbarrow(0j, 90.0 * side + 0j, UNTAGGED)
    assert bounds([tray]).bottom > 0.0
    assert -solid.WHEEL + 1.5 < bounds([leg]).bottom < -9.0  # lifted off the ground
    assert bounds([tray]).centre.real * side > 0


@pytest.mark.parametrize("turn", [0, 1, 2, 3])
def test_the_drawers_of_a_filing_cabinet_are_on_its_right_whatever_its_outline_begins_with(
    turn: int,
) -> None:
    corners = (2 + 3j, 42 + 3j, 42 + 93j, 2 + 93j)
    outline, fronts, handles = solid.filing_cabinet(corners[turn:] + corners[:turn], UNTAGGED)
    whole, drawers, stick_out = (bounds([shape]) for shape in (outline, fronts, handles))
    assert drawers.left > whole.centre.real + 10.0
    assert whole.bottom < drawers.bottom < drawers.top < whole.top
    assert stick_out.left > whole.right - 1.5
    assert stick_out.right < whole.right + 4.0
    assert isinstance(handles, Path)
    assert len(handles.lines) == 4


def test_a_wheel_is_about_its_axle() -> None:
    rings = [ring for ring in solid.barrow_wheel(2 + 3j, UNTAGGED) if isinstance(ring, Arc)]
    assert {ring.centre for ring in rings} == {2 + 3j}
    assert max(ring.radius for ring in rings) == solid.WHEEL
    ring = solid.rope_ring(1j, UNTAGGED)
    assert bounds([ring]).centre == pytest.approx(1j)


@pytest.mark.parametrize("height", [60.0, 80.0, 120.0])
def test_the_middle_of_a_gate_is_on_a_board(height: float) -> None:
    corners = (0j, 1j * height, 130 + 1j * height, 130 + 0j)
    _, lines = solid.boarded(corners, UNTAGGED)
    assert isinstance(lines, Path)
    levels = [a.imag for a, b in lines.lines if a.imag == b.imag]
    assert len(levels) in (2, 4)
    assert min(abs(level - height / 2) for level in levels) > 9.0  # with room for its letter
    assert all(0.0 < spot.real < 130.0 for run in lines.lines for spot in run)


def test_a_band_is_round_the_side_of_its_drum_that_it_does_not_pull_to() -> None:
    under = solid.band(3 + 4j, (-17 + 4j, 23 + 4j), 2j, UNTAGGED)
    assert (under.centre, under.radius) == (3 + 4j, 20.0)
    assert bounds([under]).top < 4.0 + 2.0
    assert bounds([under]).bottom == pytest.approx(-16.0, abs=1.0)
    over = solid.band(0j, (-20 + 0j, 20 + 0j), -2j, UNTAGGED)
    assert bounds([over]).bottom > -2.0


def test_a_reel_has_a_hub_within_its_flange() -> None:
    rims = [shape for shape in solid.reel(1j, 50.0, UNTAGGED) if isinstance(shape, Arc)]
    assert max(rim.radius for rim in rims) == 50.0
    assert bounds(rims[1:]).width < bounds(rims[:1]).width


@pytest.mark.parametrize("first", [0, 1])
def test_a_refrigerator_has_its_doors_opposite_its_first_long_side(first: int) -> None:
    corners = (0j, 90j, -30 + 90j, -30 + 0j)
    outline = (*corners[first - 1 :], *corners[: first - 1]) if first else corners
    shell, seams, handles = solid.refrigerator(outline, UNTAGGED)
    assert isinstance(seams, Path)
    assert isinstance(handles, Path)
    assert bounds([shell]) == bounds(solid.box(corners, UNTAGGED))
    (edge, parted) = seams.lines
    assert {round(spot.real, 6) for spot in edge} == {-26.4}
    assert sorted(spot.imag for spot in edge) == [0.0, 90.0]
    assert {spot.imag for run in handles.lines for spot in run if spot.imag > parted[0].imag}
    assert {spot.imag for run in handles.lines for spot in run if spot.imag < parted[0].imag}
    assert {round(spot.real, 6) for run in handles.lines for spot in run} == {-30.0, -33.0}
