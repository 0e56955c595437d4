"""Axes, and curved arrows that turn the way they say."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import MEDIUM, Arc, Arrow, bearing
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts.axes import HEIGHT, LENGTH, WIDTH, axes, turning


def test_axes_point_right_and_up_and_keep_to_their_room() -> None:
    x, y = (shape for shape in axes(3 + 4j, 1) if str(shape.tag) in ("axes:x", "axes:y"))
    assert isinstance(x, Arrow)
    assert isinstance(y, Arrow)
    assert (x.head - x.tail, y.head - y.tail) == (LENGTH, LENGTH * 1j)
    assert x.tail == y.tail == 3 + 4j
    assert max(WIDTH, HEIGHT) > LENGTH


def test_where_nothing_turns_no_rotation_is_shown() -> None:
    assert len(axes(0j, 0)) == 2
    assert any(str(shape.tag) == "axes:positive" for shape in axes(0j, -1))


@pytest.mark.parametrize("sense", [1, -1])
def test_a_curved_arrow_turns_the_way_it_says(sense: int) -> None:
    arc, arrow = turning(10 + 0j, 8.0, sense, MEDIUM, UNTAGGED)
    assert isinstance(arc, Arc)
    assert isinstance(arrow, Arrow)
    assert arc.sweep * sense > 0
    assert abs(arrow.tail - 10) == pytest.approx(8.0)
    # Its tip goes on along the circle, a quarter turn ahead of the radius.
    ahead = (bearing(arrow.head - arrow.tail) - bearing(arrow.tail - 10) + 180.0) % 360.0 - 180.0
    assert ahead * sense == pytest.approx(90.0, abs=20.0)
