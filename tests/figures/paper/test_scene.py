"""Shapes on paper: their bounds, their straight pieces, their tags."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import (
    FINE,
    HEAVY,
    Arc,
    Arrow,
    apart,
    barbs,
    bearing,
    bounds,
    circle,
    composed,
    heading,
    line,
    polygon,
    segments,
)
from probgen.figures.writers.latex import arc_pieces


@pytest.mark.parametrize("degrees", [0.0, 45.0, 90.0, 179.0, 270.0, 359.0])
def test_bearing_undoes_heading(degrees: float) -> None:
    assert apart(bearing(heading(degrees)), degrees) == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(("one", "other", "angle"), [(10, 350, 20), (0, 180, 180), (-90, 270, 0)])
def test_apart_is_the_smaller_angle(one: float, other: float, angle: float) -> None:
    assert apart(one, other) == pytest.approx(angle)


def test_bounds_include_half_the_line() -> None:
    box = bounds([line(0j, 10 + 5j, HEAVY)])
    assert (box.left, box.top) == pytest.approx((-HEAVY.weight / 2, 5 + HEAVY.weight / 2))


def test_bounds_of_a_circle() -> None:
    box = bounds([circle(3 + 4j, 10.0, FINE)])
    assert box.centre == pytest.approx(3 + 4j, abs=0.3)
    assert 19.0 < box.width < 20.5


def test_polygon_is_closed() -> None:
    assert len(segments(polygon((0j, 1 + 0j, 1j), FINE))) == 3


def test_arrow_head_points_the_arrow_s_way() -> None:
    arrow = Arrow(0j, 30 * heading(40.0), HEAVY)
    ((tip, left, right),) = barbs(arrow)
    assert tip == arrow.head
    assert bearing(tip - (left + right) / 2) == pytest.approx(40.0)
    assert len(barbs(Arrow(0j, 30j, HEAVY, both=True))) == 2


@pytest.mark.parametrize("sweep", [360.0, 90.0, -200.0, 12.0])
def test_bezier_arc_stays_on_its_circle(sweep: float) -> None:
    arc = Arc(2 + 1j, 10.0, 25.0, sweep, FINE)
    at, pieces = arc_pieces(arc)
    for first, second, end in pieces:
        middle = (at + 3 * first + 3 * second + end) / 8
        assert abs(middle - arc.centre) == pytest.approx(10.0, abs=0.004)
        at = end
    assert at == pytest.approx(arc.centre + 10 * heading(25.0 + sweep))


def test_tags_are_found_whole_or_by_their_beginning() -> None:
    scene = composed([line(0j, 1j, FINE, "force:T"), line(0j, 2j, FINE, "forces")])
    assert len(scene.tagged("force")) == 1
    assert len(scene.tagged("forces")) == 1
