"""Distributed loads: arrows on a line, under an envelope, with room for what stands there."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arrow, Box, Path
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts import distributed


def test_a_load_leaves_room_for_what_stands_in_it() -> None:
    """A box from 30 to 40 and as high as the arrows: none comes within 2 pt of it."""
    box = Box(30.0, 0.0, 40.0, 15.0)
    top, *arrows = distributed.spread(0j, 70 + 0j, 270.0, (15.0, 15.0), UNTAGGED, (box,))
    feet = [arrow.head.real for arrow in arrows if isinstance(arrow, Arrow)]
    assert feet
    assert not [x for x in feet if 28.0 < x < 42.0]
    assert isinstance(top, Path)
    first, second = top.lines
    assert max(spot.real for spot in first) == pytest.approx(28.0)
    assert min(spot.real for spot in second) == pytest.approx(42.0)
    low = Box(30.0, -20.0, 40.0, -1.0)  # below the line it stands in nobody's way
    (whole, *_) = distributed.spread(0j, 70 + 0j, 270.0, (15.0, 15.0), UNTAGGED, (low,))
    assert isinstance(whole, Path)
    assert len(whole.lines) == 1


def test_the_edge_of_a_load_runs_on_behind_what_stands_before_it() -> None:
    box = Box(30.0, 0.0, 40.0, 15.0)
    top, *arrows = distributed.spread(0j, 70 + 0j, 270.0, (15.0, 15.0), UNTAGGED, (), (box,))
    feet = [arrow.head.real for arrow in arrows if isinstance(arrow, Arrow)]
    assert feet
    assert not [x for x in feet if 28.0 < x < 42.0]
    assert isinstance(top, Path)
    assert len(top.lines) == 1


def test_a_box_takes_a_share_of_a_slanting_line_too() -> None:
    """Its lower corners 30 + 30j and 40 + 30j, laid off square to the line, as shares of 100."""
    shares = distributed._shares(0j, 100 + 100j, Box(30.0, 30.0, 40.0, 60.0))
    assert shares == pytest.approx((0.30, 0.35))


def test_arrows_stand_about_thirteen_points_apart() -> None:
    for length, count in ((70.0, 6), (20.0, 4), (130.0, 11)):
        _, *arrows = distributed.spread(0j, length + 0j, 270.0, (15.0, 15.0), UNTAGGED)
        assert len(arrows) == count


def test_short_arrows_have_short_heads() -> None:
    """Of 0, 3, 6, 9, 12 and 15 pt all but the first."""
    _, *shapes = distributed.spread(0j, 70 + 0j, 270.0, (0.0, 15.0), UNTAGGED)
    arrows = [each for each in shapes if isinstance(each, Arrow)]
    lengths = [abs(each.head - each.tail) for each in arrows]
    assert lengths == pytest.approx([3.0, 6.0, 9.0, 12.0, 15.0])
    assert all(each.length < long for each, long in zip(arrows, lengths, strict=True))
    assert len({each.length for each in arrows[1:]}) == 1
    assert arrows[0].length < arrows[1].length
    assert len({round(each.width / each.length, 9) for each in arrows}) == 1


@pytest.mark.parametrize("heights", [(15.0, 15.0), (0.0, 20.0), (20.0, 8.0)])
def test_arrows_of_a_load_end_on_its_line(heights: tuple[float, float]) -> None:
    arrows = [
        s for s in distributed.spread(0j, 70 + 0j, 270.0, heights, UNTAGGED) if isinstance(s, Arrow)
    ]
    assert len(arrows) >= 3
    for arrow in arrows:
        share = arrow.head.real / 70
        assert arrow.head.imag == pytest.approx(0.0)
        assert abs(arrow.head - arrow.tail) == pytest.approx(
            heights[0] + share * (heights[1] - heights[0])
        )


def test_arrows_of_a_curve_end_under_it() -> None:
    """Heights at five equal steps; between two of them the edge is straight."""
    heights = (0.0, 4.0, 16.0, 9.0, 20.0)
    edge, *arrows = distributed.spread(0j, 80 + 0j, 270.0, heights, UNTAGGED)
    assert isinstance(edge, Path)
    assert edge.lines == (
        (0j, 0j, 20 + 4j, 40 + 16j, 60 + 9j, 80 + 20j, 80 + 0j),
    )  # fmt: skip
    lengths = {a.head.real: abs(a.head - a.tail) for a in arrows if isinstance(a, Arrow)}
    assert max(lengths) == pytest.approx(80.0)
    for x, length in lengths.items():
        step, share = int(min(x // 20, 3)), x / 20 - min(x // 20, 3)
        assert length == pytest.approx(heights[step] + share * (heights[step + 1] - heights[step]))


def test_a_curve_is_open_where_a_box_stands() -> None:
    box = Box(30.0, 0.0, 50.0, 25.0)
    edge, *_ = distributed.spread(0j, 80 + 0j, 270.0, (5.0, 20.0, 5.0), UNTAGGED, (box,))
    assert isinstance(edge, Path)
    first, second = edge.lines
    assert max(spot.real for spot in first) == pytest.approx(28.0)
    assert min(spot.real for spot in second) == pytest.approx(52.0)


def test_sizes_between_steps() -> None:
    found = [distributed.size_between((0.0, 4.0, 2.0), quarter / 4) for quarter in range(5)]
    assert found == [0.0, 2.0, 4.0, 3.0, 2.0]


def test_no_arrow_of_water_lies_on_its_bed() -> None:
    whole, inner = (
        [shape for shape in shapes if isinstance(shape, Arrow)]
        for each in (False, True)
        for shapes in [distributed.spread(0j, 60j, 0.0, (20.0, 8.0), UNTAGGED, inner=each)]
    )
    assert len(inner) == len(whole) - 1
    assert min(arrow.head.imag for arrow in whole) == 0.0
    assert min(arrow.head.imag for arrow in inner) > 4.0
    assert max(arrow.head.imag for arrow in inner) < 56.0
