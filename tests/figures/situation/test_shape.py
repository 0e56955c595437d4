"""The shape of a body: its corners, its breadth, the radii of a round."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.bank.depiction import Hinge, Look
from probgen.figures.situation.shape import (
    arms_of,
    beyond,
    corners_of,
    encloses,
    half_breadth,
    half_thickness,
    is_closed,
    look_of,
)
from tests.figures.sketches import BEAM, CABINET, CASE, DRUM, read, surveyed, template_of


def test_what_is_enclosed() -> None:
    square = (0j, 4 + 0j, 4 + 4j, 4j)
    assert encloses(square, 2 + 2j)
    for outside in (5 + 2j, -1 + 2j, 2 + 5j, 2 - 1j):
        assert not encloses(square, outside)
    assert not encloses((), 0j)


def test_what_is_enclosed_by_slanted_sides() -> None:
    """A triangle from 0 over 8 to 8i, whose long side runs through 4 + 4i; then a hollow one."""
    triangle = (0j, 8 + 0j, 8j)
    assert encloses(triangle, 3.9 + 3.9j)
    assert not encloses(triangle, 4.1 + 4.1j)
    hollow = (0j, 8 + 0j, 8 + 8j, 4 + 1j, 8j)
    assert not encloses(hollow, 4 + 4j)
    assert encloses(hollow, 7 + 2j)
    assert encloses(hollow, 1 + 2j)


def test_what_is_beyond_a_joint_goes_up_or_back() -> None:
    assert beyond(None, None, 100.0) == beyond(Look.BEAM, None, 100.0) == 0
    assert beyond(Look.FOREARM, Hinge.KNEE, 100.0) == beyond(None, Hinge.KNEE, 20.0) != 0
    assert beyond(Look.FOREARM, None, 100.0) == 62j
    assert beyond(Look.FOREARM, None, 20.0) == 55j  # an arm is no stump
    assert beyond(Look.FOOT, None, 50.0).imag > 40.0  # a leg stands on its foot
    for part in (Look.HEAD, Look.TRUNK, Look.PELVIS):
        assert beyond(part, None, 50.0).imag < -30.0  # what carries these is below


def test_a_bar_is_drawn_where_nothing_is_said() -> None:
    template = template_of(BEAM, ['shelf = "ladder"'])
    assert look_of(template.depicts, "shelf") is Look.LADDER
    assert look_of(template.depicts, "another") is Look.BEAM


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
    system = template.system
    backward = replace(template, system=replace(system, elements=system.elements[::-1]))
    assert arms_of(surveyed(backward, values), drum, Look.DRUM) == ("O", [0.5, 1.0], [])


def test_what_is_no_slender_thing_of_its_own_is_as_thick_as_a_beam() -> None:
    assert half_thickness(Look.JAW) == half_thickness(Look.BEAM)
    assert half_thickness(Look.LEG) > half_thickness(Look.ARM) > half_thickness(Look.FOREARM)
