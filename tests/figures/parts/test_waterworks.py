"""A pump's arm reaches the pin of its handle; the post of a well stands on its rim."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Path, bounds
from probgen.figures.paper.tag import UNTAGGED, Tag, What
from probgen.figures.parts import waterworks

_BACK = Tag(What.BEYOND)


@pytest.mark.parametrize("side", [1, -1])
def test_a_pump_has_its_spout_on_one_side_and_the_pin_of_its_handle_on_the_other(side: int) -> None:
    top, pin, foot = 10 + 5j, 10 + 40 * side + 18j, 10 - 80j
    spout, arm, barrel, base, cap = (
        bounds([shape]) for shape in waterworks.pump(top, pin, foot, UNTAGGED)
    )
    assert (spout.right < barrel.left + 1.5) if side > 0 else (spout.left > barrel.right - 1.5)
    assert arm.left - 0.5 <= pin.real <= arm.right + 0.5
    assert arm.top == pytest.approx(pin.imag, abs=2.0)
    assert (arm.left if side > 0 else arm.right) == pytest.approx(
        barrel.right if side > 0 else barrel.left, abs=1.0
    )
    assert (barrel.bottom, barrel.top) == pytest.approx((-80.0, 5.0), abs=0.5)
    assert base.bottom == barrel.bottom
    assert cap.top == barrel.top
    assert base.width > barrel.width < cap.width


def test_the_rod_of_a_pump_runs_from_its_handle_into_its_head() -> None:
    rod, pin = waterworks.pump_rod(3 + 40j, 3 + 5j, UNTAGGED)
    assert isinstance(rod, Path)
    assert rod.lines == ((3 + 40j, 3 + 5j),)
    assert bounds([pin]).centre == pytest.approx(3 + 40j)


def test_a_well_is_wider_than_its_drum_and_its_post_stands_on_the_rim_behind_it() -> None:
    axle, radius, depth = 20 + 90j, 30.0, 50.0
    shaft, rim, post, *walls = waterworks.well(axle, radius, depth, UNTAGGED, _BACK)
    assert {shape.tag for shape in (shaft, rim, post)} == {_BACK}
    assert {shape.tag for shape in walls} == {UNTAGGED}
    inside, stands = bounds([shaft]), bounds([post])
    assert inside.width == pytest.approx(2 * (radius + waterworks.SHAFT))
    assert inside.top < axle.imag - radius  # clear of the drum
    assert stands.bottom == pytest.approx(inside.top, abs=0.5)
    assert stands.top == pytest.approx(axle.imag, abs=0.5)
    left, right = (bounds(half) for half in (walls[:3], walls[3:]))
    assert left.right == pytest.approx(inside.left, abs=0.5)
    assert right.left == pytest.approx(inside.right, abs=0.5)
    assert left.height == pytest.approx(depth, abs=1.0)
