"""A gas strut is pinned at both ends; a van's rear has on its side what is pinned there."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arc, Path, Tone, bounds, heading
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts import vehicles
from probgen.figures.parts.mechanical import PIN
from probgen.figures.situation.shape import encloses


def test_a_gas_strut_has_a_rod_at_one_end_and_a_thicker_cylinder_at_the_other() -> None:
    rod, cylinder, _, *pins = vehicles.gas_strut(100 + 0j, 0j, UNTAGGED)
    assert bounds([rod]).height < bounds([cylinder]).height
    assert bounds([cylinder]).right == pytest.approx(bounds([rod]).left, abs=1.0)
    assert bounds([cylinder]).left == pytest.approx(PIN, abs=0.5)
    assert bounds([rod]).right == pytest.approx(100.0 - PIN, abs=0.5)
    assert [bounds([pin]).centre for pin in pins] == pytest.approx([100 + 0j, 0j])


@pytest.mark.parametrize("side", [1, -1])
@pytest.mark.parametrize("foot", [-12 - 60j, 2 - 55j, 18 - 50j])
def test_a_van_ends_at_its_hinge_and_has_what_is_pinned_on_it_between_window_and_edge(
    foot: complex, side: int
) -> None:
    at = complex(foot.real * side, foot.imag)
    _, body, window, _, lamp, _ = vehicles.van_rear(0j, at, UNTAGGED, side)
    assert isinstance(body, Path)
    assert isinstance(window, Path)
    assert body.tone is Tone.SKIN  # lighter than what is looked at
    assert encloses(body.lines[0], at)
    assert not encloses(window.lines[0], at)
    assert all(encloses(body.lines[0], spot * 0.999) for spot in window.lines[0][1:3])
    assert bounds([body]).top < -PIN  # below the pin that it carries
    assert not any(encloses(body.lines[0], complex(side * 8.0, -y)) for y in (0, 5, 9))
    assert bounds([lamp]).top < at.imag


@pytest.mark.parametrize("slope", [50.0, 60.0, 90.0, 120.0])
def test_a_hand_truck_is_along_the_outside_of_what_it_carries(slope: float) -> None:
    up, out = 120.0 * heading(slope), 40.0 * heading(slope + 90.0)
    plate, frame, _, grip, wheel, *_ = vehicles.hand_truck(5 + 3j, (up, out), UNTAGGED)
    assert isinstance(wheel, Arc)
    assert (wheel.centre, wheel.radius) == (5 + 3j, vehicles.WHEEL)
    for part, along, away in ((plate, out, -up), (frame, up, -out)):
        assert isinstance(part, Path)
        start, end = ((spot - wheel.centre) / along for spot in part.lines[0])
        assert start.real == pytest.approx(0.0, abs=1e-9)
        assert 0.4 < end.real < 1.0
        off = (part.lines[0][0] - wheel.centre) / away
        assert off.real * abs(away) == pytest.approx(part.pen.weight / 2, abs=0.2)
    assert isinstance(grip, Path)
    behind = [((spot - wheel.centre) / -out).real * abs(out) for spot in grip.lines[0]]
    assert min(behind) > 3.0  # room for a hand


def test_a_bar_on_a_hand_truck_has_its_toe_plate_square_to_it() -> None:
    plate, *_ = vehicles.hand_truck(0j, (100j,), UNTAGGED)
    assert isinstance(plate, Path)
    start, end = plate.lines[0]
    assert (end - start).imag == pytest.approx(0.0)
