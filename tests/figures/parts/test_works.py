"""A valve's disc is on its seat, a stone is cut away over what lifts it, a panel slips ahead;
a raised plank stands on the ground.
"""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Path, bounds, heading
from probgen.figures.paper.tag import UNTAGGED, What
from probgen.figures.parts import works


def test_a_valve_is_closed_and_its_spindle_reaches_up_to_what_it_pushes() -> None:
    shapes = works.valve(0j, -22 + 3j, UNTAGGED)
    spindle, disc = (bounds([shape]) for shape in shapes[-2:])
    walls = [bounds([shape]) for shape in shapes[-4:-2]]
    assert spindle.top == pytest.approx(0.0, abs=0.3)
    assert spindle.bottom == pytest.approx(disc.top, abs=0.6)
    assert disc.bottom == pytest.approx(-works.SPINDLE, abs=0.3)
    assert all(wall.top == pytest.approx(disc.bottom, abs=0.6) for wall in walls)
    assert disc.left > walls[0].left
    assert disc.right < walls[1].right


def test_the_post_on_a_boiler_reaches_its_pin() -> None:
    pin = -22 + 3j
    with_post, without = (works.valve(0j, each, UNTAGGED) for each in (pin, None))
    assert len(with_post) == len(without) + 1
    posts = [bounds([s]) for s in with_post if isinstance(s, Path) and s.tag.what is What.BEYOND]
    assert any(abs(box.top - pin.imag) < 0.5 and box.left < pin.real < box.right for box in posts)


@pytest.mark.parametrize("lifted", [True, False])
def test_a_stone_is_cut_away_over_what_lifts_its_end(lifted: bool) -> None:
    shape = works.stone((0j, 90 + 0j), 6.5, UNTAGGED, lifted=(False, lifted))
    corners = shape.lines[0]
    low = [spot for spot in corners if spot.imag < 0.0]
    near = [spot for spot in low if spot.real > 85.0]
    assert bool(near) is not lifted
    assert min(spot.imag for spot in corners) == -6.5


@pytest.mark.parametrize("ahead", [1j, -1j])
def test_a_panel_is_dashed_where_it_is_about_to_slide(ahead: complex) -> None:
    body, after = works.panel(0j, 3 + 36j, ahead, UNTAGGED)
    assert isinstance(after, Path)
    assert after.pen.gap
    beyond = bounds([after])
    side = beyond.top if ahead.imag > 0 else -beyond.bottom
    assert side > 36.0 + 5.0
    assert (beyond.left, beyond.right) == pytest.approx((-3.0, 3.0), abs=0.5)
    assert works.panel(0j, 3 + 36j, 0j, UNTAGGED) == (body,)


def test_an_engine_stands_on_its_wing_and_its_propeller_clears_that() -> None:
    cowling, ring, cylinders, *blades, hub = works.engine(3 + 4j, UNTAGGED)
    outside = bounds([cowling])
    assert outside.bottom == pytest.approx(4.0, abs=0.5)
    assert outside.holds(bounds((ring, cylinders, hub)))
    assert len(blades) == 2
    turned = bounds(blades)
    assert turned.bottom > 4.0
    assert turned.left < outside.left < outside.right < turned.right


@pytest.mark.parametrize("turn", [25.0, 60.0, 120.0])
def test_a_raised_plank_is_cut_level_where_it_stands(turn: float) -> None:
    way = 90.0 * heading(turn)
    (board,) = works.raised_plank(3 + 4j, way, UNTAGGED)
    assert isinstance(board, Path)
    foot, top, under, heel = board.lines[0]
    assert (foot, top) == (3 + 4j, 3 + 4j + way)
    assert heel.imag == pytest.approx(foot.imag)
    assert (heel - foot).real * way.real > 0.0
    assert under.imag < top.imag
    assert abs(((under - heel) / way).imag) < 1e-9  # as thick at both ends
