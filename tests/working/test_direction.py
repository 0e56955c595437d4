"""Directions by the angle a course asks for, from every quarter and along every axis."""

import pytest

from probgen.quantities.printing import plain
from probgen.working.convention import Convention
from probgen.working.direction import direction_of, quarter_of, way_of

HORIZONTAL = Convention(direction="horizontal")
VERTICAL, AXIS = Convention(direction="vertical"), Convention(direction="axis")

# degrees from +x, convention, angle from the reference, up, right, whether it takes an angle
DIRECTIONS = [
    (90.0, HORIZONTAL, 90.0, True, None, False),
    (180.0, HORIZONTAL, 0.0, None, False, False),
    (12.34, HORIZONTAL, 12.34, True, True, True),
    (167.66, HORIZONTAL, 12.34, True, False, True),
    (-167.66, HORIZONTAL, 12.34, False, False, True),
    (-1.92235, HORIZONTAL, 1.92235, False, True, True),
    (12.34, VERTICAL, 77.66, True, True, True),
    (-167.66, VERTICAL, 77.66, False, False, True),
    (270.0, VERTICAL, 0.0, False, None, False),
    (-12.34, AXIS, 347.66, False, True, True),
    (90.0, AXIS, 90.0, True, None, True),
    (-1e-12, AXIS, 0.0, None, True, True),
]


@pytest.mark.parametrize(("degrees", "convention", "angle", "up", "right", "oblique"), DIRECTIONS)
def test_directions(
    degrees: float,
    convention: Convention,
    angle: float,
    up: bool | None,
    right: bool | None,
    oblique: bool,
) -> None:
    found = direction_of(degrees, convention)
    assert found.angle == pytest.approx(angle)
    assert found.from_x == pytest.approx(0.0 if degrees == -1e-12 else degrees % 360.0)
    assert up in (None, found.way.up)
    assert right in (None, found.way.right)
    assert found.oblique is oblique
    assert found.reference == convention.direction


QUARTERS = [(90.0 + 1e-12, 1), (89.0, None), (200.0, None), (359.9999999999, 0), (-90.0, 3)]


@pytest.mark.parametrize(("degrees", "quarter"), QUARTERS)
def test_quarters(degrees: float, quarter: int | None) -> None:
    assert quarter_of(degrees) == way_of(degrees).quarter == quarter


@pytest.mark.parametrize("figures", [2, 3, 6])
def test_an_angle_is_rounded_to_a_tenth_at_any_number_of_figures(figures: int) -> None:
    convention = Convention(direction="axis", figures=figures)
    assert plain(direction_of(264.873, convention).shown) == "264.9°"
    assert plain(direction_of(4.873, convention).shown) == "4.9°"
