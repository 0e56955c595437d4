"""A fishing rod tapers, its line under it from reel to tip; a hand pulls along its forearm."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arc, Path, bounds, dot, heading, runs
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts.rod import BUTT, fishing_rod, pulling_hand


@pytest.mark.parametrize("way", [60.0, 120.0])
def test_a_rod_tapers_and_its_line_is_under_it(way: float) -> None:
    unit = heading(way)
    cord, *_, shaft = fishing_rod(0j, 150 * unit, 30.0, UNTAGGED)
    assert isinstance(shaft, Path)
    ends: dict[bool, list[float]] = {False: [], True: []}
    for spot in shaft.lines[0]:
        ends[dot(spot, unit) > 75.0].append(dot(spot, unit * 1j))
    butt, tip = (max(ends[side]) - min(ends[side]) for side in (False, True))
    assert butt > 3 * tip
    assert isinstance(cord, Path)
    (run,) = cord.lines
    assert run[-1] == 150 * unit
    assert all(spot.imag < (spot.real / unit.real * unit).imag for spot in run[:-1])


def test_the_reel_sits_on_its_rod() -> None:
    _, _, foot, reel, _, shaft = fishing_rod(0j, 150 + 0j, 30.0, UNTAGGED)
    assert isinstance(reel, Arc)
    assert bounds([reel]).top == pytest.approx(-BUTT * 0.85, abs=0.6)
    assert bounds([foot]).width > 7.0
    assert bounds([foot]).left > bounds([shaft]).left


@pytest.mark.parametrize("way", [0.0, 155.0])
def test_the_forearm_lies_where_the_hand_pulls_to(way: float) -> None:
    shapes = pulling_hand(5 + 5j, heading(way), UNTAGGED)
    reaches = [
        dot(s - 5 - 5j, heading(way)) for shape in shapes for run in runs(shape) for s in run
    ]
    assert max(reaches) > 30.0
    assert min(reaches) > -5.0
    assert abs(bounds(shapes[-2:-1]).centre - 5 - 5j) < 0.5  # the fist
