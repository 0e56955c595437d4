"""The shape of a body: its corners, its breadth, the radii of a round."""

from __future__ import annotations

import pytest

from probgen.bank.depiction import Look
from probgen.figures.situation.shape import (
    arms_of,
    corners_of,
    encloses,
    half_breadth,
    half_thickness,
    is_closed,
)
from tests.figures.sketches import BEAM, CABINET, CASE, DRUM, read, surveyed


def test_what_is_enclosed() -> None:
    square = (0j, 4 + 0j, 4 + 4j, 4j)
    assert encloses(square, 2 + 2j)
    assert not encloses(square, 5 + 2j)
    assert not encloses((), 0j)


def test_only_what_runs_back_to_its_beginning_is_closed() -> None:
    (cabinet,), (shelf,) = (read(text)[0].system.bodies for text in (CABINET, BEAM))
    assert is_closed(cabinet)
    assert not is_closed(shelf)


def test_corners_of_a_box_about_its_axis() -> None:
    template, values, _ = read(CASE)
    measured, (case,) = surveyed(template, values), template.system.bodies
    # It is as broad as the point that lies beside its foot says.
    assert half_breadth(measured, case) == pytest.approx(0.5)
    corners = corners_of(measured, case, Look.CABINET)
    assert corners == pytest.approx((0.5 + 0j, -0.5 + 0j, -0.5 + 3j, 0.5 + 3j))
    assert corners_of(measured, case, Look.BEAM) == ()


def test_a_box_of_unknown_breadth_is_slender() -> None:
    template, values, _ = read(BEAM)
    measured, (shelf,) = surveyed(template, values), template.system.bodies
    assert half_breadth(measured, shelf) == pytest.approx(0.2 * 3.0)


def test_radii_and_crank_of_a_round() -> None:
    template, values, _ = read(DRUM)
    measured, (drum,) = surveyed(template, values), template.system.bodies
    assert arms_of(measured, drum, Look.DRUM) == ("O", [0.5, 1.0], [])
    assert arms_of(measured, drum, Look.CRANKED_DRUM) == ("O", [0.5], ["H"])


def test_what_is_no_slender_thing_of_its_own_is_as_thick_as_a_beam() -> None:
    assert half_thickness(Look.JAW) == half_thickness(Look.BEAM)
    assert half_thickness(Look.LEG) > half_thickness(Look.ARM) > half_thickness(Look.FOREARM)
