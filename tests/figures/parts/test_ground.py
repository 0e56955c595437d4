"""Hatched faces: which side is solid, and how faces meet."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Path, dot, heading
from probgen.figures.parts.ground import Surface, hatched, joined

FLOOR = Surface(0j, 90.0, 10.0, 10.0)
WALL = Surface(30 + 40j, 180.0, 10.0, 10.0)


@pytest.mark.parametrize("normal", [0.0, 90.0, 180.0, 270.0, 120.0])
def test_hatching_lies_behind_the_face(normal: float) -> None:
    surface = Surface(5 + 5j, normal, 20.0, 20.0)
    face, hatching = hatched(surface)
    assert isinstance(face, Path)
    assert isinstance(hatching, Path)
    for foot, back in hatching.lines:
        assert surface.height(foot) == pytest.approx(0.0)
        assert surface.height(back) < -1.0
        assert -20.0 <= surface.reach(back) <= 20.0
    assert all(dot(end - surface.at, heading(normal)) == pytest.approx(0) for end in surface.ends)


def test_floor_and_wall_meet_in_their_corner() -> None:
    floor, wall = joined([FLOOR, WALL])
    assert floor.ends[1] == pytest.approx(30 + 0j)
    assert min(abs(end - 30) for end in wall.ends) == pytest.approx(0.0)
    assert floor.ends[0] == pytest.approx(-10 + 0j)


def test_without_corners_only_faces_that_would_cross_end_there() -> None:
    assert joined([FLOOR, WALL], corners=False) == [FLOOR, WALL]
    across = Surface(30 + 5j, 180.0, 10.0, 10.0)
    longer = Surface(0j, 90.0, 10.0, 40.0)
    floor, wall = joined([longer, across], corners=False)
    assert floor.ends == pytest.approx((-10 + 0j, 30 + 0j))
    assert min(end.imag for end in wall.ends) == pytest.approx(0.0)
    assert max(end.imag for end in wall.ends) == pytest.approx(15.0)


def test_slanted_faces_make_a_corner_only_where_both_come_near_it() -> None:
    """The slope runs on into the floor at its origin, 10 or 60 beyond its foot."""
    near, far = (Surface(heading(40.0) * away, 130.0, 10.0, 10.0) for away in (20.0, 70.0))
    floor = Surface(-20 + 0j, 90.0, 10.0, 10.0)
    assert joined([floor, near])[0].ends[1] == pytest.approx(0j)
    assert joined([floor, far])[0] == floor


def test_faces_on_one_line_become_one() -> None:
    (only,) = joined([FLOOR, Surface(50 + 0j, 90.0, 5.0, 5.0)])
    assert only.ends == pytest.approx((-10 + 0j, 55 + 0j))


def test_a_face_by_itself_ends_where_it_ends_and_ends_no_other() -> None:
    alone = Surface(30 + 40j, 180.0, 10.0, 10.0, lone=True)
    assert joined([FLOOR, alone]) == [FLOOR, alone]


def test_faces_of_an_outer_edge_keep_their_lengths() -> None:
    top, side = Surface(0j, 90.0, 0.0, 30.0), Surface(0j, 180.0, 40.0, 0.0)
    assert joined([top, side]) == [top, side]


def test_covering_reaches_beyond_the_spot() -> None:
    longer = FLOOR.covering(100 + 0j, 14.0)
    assert longer.ends == pytest.approx((-10 + 0j, 114 + 0j))
