"""What a support leaves on paper, and the wedge."""

from __future__ import annotations

import math

import pytest

from probgen.figures.paper.scene import bounds
from probgen.figures.parts.ground import Surface
from probgen.figures.situation.fixture import Fixture, room_under, wedge_under
from tests.figures.seen import tag


def test_nothing_is_left_by_what_holds_nothing() -> None:
    assert Fixture() == Fixture((), (), 0.0, 0j, ())


@pytest.mark.parametrize("half", [0.0, 3.0])
def test_a_wedge_has_its_edge_under_the_body_and_stands_on_the_ground(half: float) -> None:
    wedge = wedge_under(10 + 40j, half, tag("support:N"))
    (ground,) = wedge.surfaces
    box = bounds(wedge.shapes)
    assert box.top == pytest.approx(40.0 - half, abs=0.5)
    assert ground.normal == 90.0
    assert ground.at.real == 10.0
    assert ground.at.imag == pytest.approx(box.bottom, abs=0.5)
    assert ground.ends[0].real < box.left < box.right < ground.ends[1].real


@pytest.mark.parametrize(
    ("across", "low", "room"),
    [(0, 10, 10), (20, 10, math.inf), (20, 30, 30), (0, -10, math.inf)],
)
def test_what_hangs_ends_above_a_floor_under_it_not_beside_one_that_is_hardly_lower(
    across: float, low: float, room: float
) -> None:
    walls = [Surface(0j, 0.0, 50.0, 50.0), Surface(complex(across, -low), 90.0, 14.0, 14.0)]
    assert room_under(0j, walls) == pytest.approx(room)
