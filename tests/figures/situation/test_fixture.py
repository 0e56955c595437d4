"""What a support leaves on paper, and the wedge."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import bounds
from probgen.figures.situation.fixture import Fixture, wedge_under
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
