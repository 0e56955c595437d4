"""Shapes on paper: their bounds, their straight pieces, their tags."""

from __future__ import annotations

from itertools import pairwise

import pytest

from probgen.figures.paper.placement import set_in
from probgen.figures.paper.scene import (
    FINE,
    HEAVY,
    Arc,
    Arrow,
    Box,
    Curve,
    Path,
    apart,
    barbs,
    bearing,
    bounds,
    circle,
    composed,
    dot,
    heading,
    line,
    polygon,
    runs,
    segments,
    shaft,
)
from probgen.figures.paper.tag import What
from probgen.figures.writers.latex import arc_pieces
from tests.figures.seen import tag


def test_a_box_moves_as_a_whole() -> None:
    assert Box(0.0, 1.0, 2.0, 4.0).shifted(3 + 5j) == Box(3.0, 6.0, 5.0, 9.0)


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


def test_a_box_by_its_edges() -> None:
    box = Box(1.0, 2.0, 5.0, 4.0)
    assert (box.width, box.height, box.centre) == (4.0, 2.0, 3 + 3j)
    assert box.grown(0.5) == (0.5, 1.5, 5.5, 4.5)


GAPS = [
    (Box(1, 2, 5, 4), 0.0),
    (Box(8, 2, 9, 4), 3.0),
    (Box(-4, 2, -1, 4), 2.0),
    (Box(1, 9, 5, 10), 5.0),
    (Box(1, -3, 5, 1), 1.0),
    (Box(8, 8, 9, 9), 5.0),  # 3 across and 4 up
    (Box(-5, -8, -2, -2), 5.0),
    (Box(5, 4, 6, 6), 0.0),  # corner to corner
]


@pytest.mark.parametrize(("other", "gap"), GAPS)
def test_how_far_boxes_are_apart(other: Box, gap: float) -> None:
    box = Box(1, 2, 5, 4)
    assert box.gap(other) == other.gap(box) == pytest.approx(gap)


@pytest.mark.parametrize(
    ("other", "shared"),
    [
        *((Box(2, 3, 3, 3.5), True), (Box(0, 0, 9, 9), True), (Box(4, 3, 6, 6), True)),
        *((Box(0, 1, 2, 3), True), (Box(5, 2, 6, 4), False), (Box(0, 2, 1, 4), False)),
        *((Box(1, 4, 5, 6), False), (Box(1, 0, 5, 2), False), (Box(6, 6, 7, 7), False)),
    ],
)
def test_boxes_that_touch_share_no_area(other: Box, shared: bool) -> None:
    box = Box(1, 2, 5, 4)
    assert box.overlaps(other) is other.overlaps(box) is shared


@pytest.mark.parametrize(
    ("spot", "nearest"), [(3 + 3j, 3 + 3j), (0j, 1 + 2j), (9 + 3j, 5 + 3j), (2 + 9j, 2 + 4j)]
)
def test_the_nearest_spot_of_a_box(spot: complex, nearest: complex) -> None:
    assert Box(1, 2, 5, 4).nearest(spot) == nearest


def test_an_arrow_is_cut_short_of_its_tips() -> None:
    """A head of 5 by 4 pt: its shaft ends 4 pt short, its corners lie 5 back and 2 aside."""
    arrow = Arrow(0j, 20 + 0j, HEAVY, tag(""), 5.0, 4.0)
    assert shaft(arrow) == (0j, 16 + 0j)
    assert barbs(arrow) == ((20 + 0j, 15 + 2j, 15 - 2j),)
    both = Arrow(0j, 20j, HEAVY, tag(""), 5.0, 4.0, both=True)
    assert shaft(both) == (4j, 16j)
    assert barbs(both)[1] == (0j, 2 + 5j, -2 + 5j)


def test_a_curve_is_flattened_along_its_way() -> None:
    """The middle of a piece from 0 over 3i and 8 + 3i to 8 is at (0 + 9i + 24 + 9i + 8)/8."""
    curve = Curve(0j, ((3j, 8 + 3j, 8 + 0j), (8 - 3j, -3j, 0j)), FINE)
    (run,) = runs(curve)
    assert len(run) == 13
    assert run[3] == pytest.approx(4 + 2.25j)
    assert run[6] == pytest.approx(8 + 0j)
    assert run[9] == pytest.approx(4 - 2.25j)
    assert run[-1] == pytest.approx(0j)
    assert all(first.real < second.real for first, second in pairwise(run[:7]))


@pytest.mark.parametrize(
    ("radius", "sweep", "count"), [(10.0, 360.0, 15), (3.0, 360.0, 8), (10.0, 30.0, 4), (5, -96, 4)]
)
def test_an_arc_is_taken_in_pieces_of_at_most_24_degrees(
    radius: float, sweep: float, count: int
) -> None:
    """Of at most 45 where it is small, and never fewer than four."""
    arc = Arc(1 + 1j, radius, 20.0, sweep, FINE)
    (run,) = runs(arc)
    assert len(run) == count + 1
    for i, spot in enumerate(run):
        assert spot == pytest.approx(1 + 1j + radius * heading(20.0 + sweep * i / count))


def test_an_open_path_is_not_closed_and_a_label_has_no_strokes() -> None:
    path = Path(((0j, 1 + 0j, 1j), (2j, 3j)), FINE)
    assert len(segments(path)) == 3
    assert segments(set_in("x", Box(0, 0, 5, 5), tag("note:x"))) == []
    assert len(segments(Arrow(0j, 9j, FINE))) == 1 + 2


def test_bounds_of_labels_and_strokes_together() -> None:
    label = set_in("x", Box(7.0, -3.0, 12.0, 5.0), tag("note:x"))
    assert bounds([line(0j, 10 + 4j, FINE), label]) == pytest.approx((-0.175, -3.0, 12.0, 5.0))


@pytest.mark.parametrize(("one", "other", "product"), [(1 + 2j, 3 + 4j, 11), (1, 1j, 0)])
def test_the_scalar_product_of_two_steps(one: complex, other: complex, product: float) -> None:
    assert dot(one, other) == product


def test_shapes_are_found_by_what_they_show_and_of_what() -> None:
    scene = composed([line(0j, 1j, FINE, tag("force:T")), line(0j, 2j, FINE, tag("force:W"))])
    assert scene.showing(What.FORCE) == scene.shapes
    assert scene.showing(What.FORCE, "W") == scene.shapes[1:]
    assert scene.showing(What.BODY) == ()
