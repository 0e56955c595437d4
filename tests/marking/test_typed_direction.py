"""Directions as people type them."""

from __future__ import annotations

from decimal import Decimal

import pytest

from probgen.marking.typed_direction import readings

ONE = [
    ("9.9° below the horizontal to the left", "189.9"),
    ("9.9° below the horizontal, to the left", "189.9"),
    ("9.9 below horizontal, left", "189.9"),
    ("189.9 deg", "189.9"),
    ("φ = 189.9°", "189.9"),
    ("-9.9", "350.1"),
    ("−9.9°", "350.1"),
    ("S 30° W", "240"),
    ("S30W", "240"),
    ("N 30° E", "60"),
    ("30° south of west", "210"),
    ("30 degrees west of south", "240"),
    ("30° north of east", "30"),
    ("straight down", "270"),
    ("vertically up", "90"),
    ("to the left", "180"),
    ("+x", "0"),
    ("30° from the vertical, up and to the right", "60"),
    ("30° left of the vertical, up", "120"),
    ("12.3° clockwise from +x", "347.7"),
    ("12.3° counter-clockwise from the x-axis", "12.3"),
    ("20° clockwise from the +y axis", "70"),
    ("30° above +x", "30"),
    ("30° below the -x axis", "210"),
    ("60° above the negative x-axis", "120"),
    ("left, 12° above", "168"),
    ("76,9° below the horizontal, to the right", "283.1"),
]

SEVERAL = [
    ("9.9", {"9.9", "170.1", "189.9", "350.1"}),  # in which quarter?
    ("30° above the horizontal", {"30", "150"}),
    ("10° up and left", {"170", "100"}),  # from the level or from the plumb line
    ("20° left of the vertical", {"110", "250"}),
]

NONE = [
    "", "?", "blah 30", "30 and 40", "30° sideways", "100° above the horizontal, left",
    "north of east", "up and down", "30° left of right", "5 N", "x" * 300, "30° above below",
    "<b>30</b>", "30° from the horizontal and the vertical, up and left", "400°",
]  # fmt: skip


@pytest.mark.parametrize(("text", "angle"), ONE)
def test_one_reading(text: str, angle: str) -> None:
    (found,) = readings(text)
    assert found.angle_from_x == Decimal(angle)


@pytest.mark.parametrize(("text", "angles"), SEVERAL)
def test_several_readings(text: str, angles: set[str]) -> None:
    assert {found.angle_from_x for found in readings(text)} == set(map(Decimal, angles))


@pytest.mark.parametrize("text", NONE)
def test_what_is_no_direction(text: str) -> None:
    assert readings(text) == ()


def test_radians() -> None:
    (found,) = readings("3.14159265 rad")
    assert float(found.angle_from_x) == pytest.approx(180.0, abs=1e-5)
