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
    ("0.5° above +x", "0.5"),
    ("90° above +x", "90"),
    ("0° right of the vertical, up", "90"),
    ("90 counterclockwise", "90"),
    ("10° ccw from the y-axis", "100"),
    ("10° cw from the -x axis", "170"),
    ("10° cw from the -y axis", "260"),
    ("-x", "180"),
    ("positive y", "90"),
    ("minus y", "270"),
    ("E 30° N", "30"),
    ("30° west of north", "120"),
    ("S 30° E", "300"),
    ("30° from vertical, down and to the left", "240"),
    ("0° up and left, from the horizontal", "180"),
    ("90° below the horizontal, to the right", "270"),
    ("360", "0"),
    ("-360", "0"),
    ("90.5", "90.5"),
    ("straight up the y axis", "90"),
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
    ("20° right of the vertical", {"70", "290"}),
    ("30° below the horizontal", {"330", "210"}),
    ("30° north and left", {"150", "120"}),  # of no compass
    ("90", {"90", "270"}),
    ("0", {"0", "180"}),
]

NONE = [
    "", "?", "blah 30", "30 and 40", "30° sideways", "100° above the horizontal, left",
    "north of east", "up and down", "30° left of right", "5 N", "x" * 300, "30° above below",
    "<b>30</b>", "30° above the blah +x", "30° above +x!", "30° above the horizontal, % left",
    "blah down", "360.5", "-361", "up left", "N 30° S",
    "100° right of the vertical", "100° ccw cw", "30° ccw from x or y", "30° above", "30° left",
    "-30° above the horizontal, left", "30 N", "2 rad/s", "30° above +x" + " " * 200 + "!",
    "30° from the horizontal and the vertical, up and left", "400°",
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
