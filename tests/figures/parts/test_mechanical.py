"""Machine parts: drawn to the size asked for, reaching the places given."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arrow, Path
from probgen.figures.parts import axes, ground, limb, mechanical, person, solid

LIBRARY = (mechanical, person, limb, solid, axes, ground)
NOT_DRAWN = {"backing"}  # what labels keep clear of behind a wall


def test_spring_runs_from_end_to_end() -> None:
    (coil, *_) = mechanical.spring(1 + 1j, 41 + 31j, "")
    assert isinstance(coil, Path)
    assert coil.lines[0][0] == 1 + 1j
    assert coil.lines[0][-1] == pytest.approx(41 + 31j)


@pytest.mark.parametrize("heights", [(15.0, 15.0), (0.0, 20.0), (20.0, 8.0)])
def test_arrows_of_a_load_end_on_its_line(heights: tuple[float, float]) -> None:
    arrows = [s for s in mechanical.spread(0j, 70 + 0j, 270.0, heights, "") if isinstance(s, Arrow)]
    assert len(arrows) >= 3
    for arrow in arrows:
        share = arrow.head.real / 70
        assert arrow.head.imag == pytest.approx(0.0)
        assert abs(arrow.head - arrow.tail) == pytest.approx(
            heights[0] + share * (heights[1] - heights[0])
        )
