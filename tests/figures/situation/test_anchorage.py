"""What holds the far end of a line."""

from __future__ import annotations

import pytest

from probgen.bank.depiction import Anchor
from probgen.figures.paper.scene import Arc, Path, heading
from probgen.figures.parts.ground import Surface
from probgen.figures.situation.anchorage import _reach, anchored
from probgen.figures.situation.fixture import FACE
from tests.figures.seen import tag

FACES = [
    (Surface(50 + 0j, 180.0, 9.0, 9.0), 0.0, 50.0),  # a wall in front
    (Surface(50 + 0j, 180.0, 9.0, 9.0), 60.0, 100.0),
    (Surface(50 + 0j, 0.0, 9.0, 9.0), 0.0, None),  # seen from behind
    (Surface(50 + 0j, 180.0, 9.0, 9.0), 180.0, None),  # which it runs away from
    (Surface(-50 + 0j, 180.0, 9.0, 9.0), 0.0, None),  # behind the spot
    (Surface(40j, 270.0, 9.0, 9.0), 90.0, 40.0),  # a ceiling
    (Surface(-40j, 90.0, 9.0, 9.0), 270.0, None),  # the ground holds no line
    (Surface(40j, 270.0, 9.0, 9.0), 1.0, None),  # all but along it
]


@pytest.mark.parametrize(("surface", "way", "reach"), FACES)
def test_how_far_it_is_to_a_face(surface: Surface, way: float, reach: float | None) -> None:
    found = _reach(surface, 0j, heading(way))
    assert found == (None if reach is None else pytest.approx(reach))


ANCHORS = [(90.0, 270.0), (60.0, 270.0), (150.0, 270.0), (10.0, 180.0), (170.0, 0.0), (0.0, 180.0),
           (180.0, 0.0), (270.0, 90.0), (240.0, 90.0), (-10.0, 180.0)]  # fmt: skip


@pytest.mark.parametrize(("way", "normal"), ANCHORS)
def test_what_holds_a_line_faces_it(way: float, normal: float) -> None:
    """What rises ends at a ceiling, what is nearly level at a wall, what falls at the ground."""
    walls: list[Surface] = []
    assert anchored(walls, 5 + 7j, way, tag("cable:T")) == ()
    (face,) = walls
    assert (face.at, face.normal) == (5 + 7j, normal)


def test_a_wall_nearby_holds_a_line_and_is_lengthened() -> None:
    walls = [Surface(0j, 0.0, 5.0, 5.0)]
    link = anchored(walls, 16 + 30j, 180.0, tag("cable:T"))
    assert [type(shape) for shape in link] == [Path, Arc]
    assert isinstance(link[0], Path)
    assert link[0].lines == ((30j, 16 + 30j),)
    assert len(walls) == 1
    assert max(spot.imag for spot in walls[0].ends) == pytest.approx(30.0 + FACE)
    assert anchored(walls, 0.2 + 10j, 180.0, tag("cable:T")) == ()  # it lies on the face
    anchored(walls, 17 + 30j, 180.0, tag("cable:T"))  # too far: a wall of its own
    assert len(walls) == 2


def test_what_is_told_to_be_tied_above_ends_at_a_ceiling_however_level_it_runs() -> None:
    walls: list[Surface] = []
    assert anchored(walls, 5 + 7j, 10.0, tag("cable:T"), Anchor.CEILING) == ()
    (face,) = walls
    assert (face.at, face.normal) == (5 + 7j, 270.0)


def test_what_is_told_to_be_tied_above_is_so_beside_a_wall_too() -> None:
    walls = [Surface(0j, 0.0, 5.0, 5.0)]
    assert anchored(walls, 6 + 30j, 100.0, tag("strut:S"), Anchor.CEILING) == ()
    assert [face.normal for face in walls] == [0.0, 270.0]
    assert walls[0] == Surface(0j, 0.0, 5.0, 5.0)


@pytest.mark.parametrize(("way", "normal"), [(60.0, 180.0), (120.0, 0.0), (90.0, 270.0)])
def test_what_is_told_to_be_tied_to_a_wall_ends_at_one_unless_it_runs_straight_up(
    way: float, normal: float
) -> None:
    walls: list[Surface] = []
    anchored(walls, 5 + 7j, way, tag("cable:T"), Anchor.WALL)
    assert [face.normal for face in walls] == [normal]
