"""Directions in words, from every quarter and along every axis."""

import pytest

from probgen.wording.direction import quarter_of, sideways, toward, worded
from probgen.working.convention import Convention

HORIZONTAL, VERTICAL, AXIS = (
    Convention(direction=d) for d in ("horizontal", "vertical", "axis")
)  # type: ignore[arg-type]

WORDED = [
    (0.0, HORIZONTAL, 0.0, "to the right"),
    (90.0, HORIZONTAL, 90.0, "straight up"),
    (180.0, HORIZONTAL, 0.0, "to the left"),
    (-90.0, HORIZONTAL, 90.0, "straight down"),
    (12.34, HORIZONTAL, 12.34, "12.3° above the horizontal, to the right"),
    (167.66, HORIZONTAL, 12.34, "12.3° above the horizontal, to the left"),
    (-167.66, HORIZONTAL, 12.34, "12.3° below the horizontal, to the left"),
    (-1.92235, HORIZONTAL, 1.92235, "1.92° below the horizontal, to the right"),
    (12.34, VERTICAL, 77.66, "77.7° from the upward vertical, to the right"),
    (-167.66, VERTICAL, 77.66, "77.7° from the downward vertical, to the left"),
    (270.0, VERTICAL, 0.0, "straight down"),
    (-12.34, AXIS, 347.66, "348° counter-clockwise from +x"),
]


@pytest.mark.parametrize(("degrees", "convention", "angle", "words"), WORDED)
def test_directions(degrees: float, convention: Convention, angle: float, words: str) -> None:
    found = worded(degrees, convention)
    assert found.words == words
    assert found.angle == pytest.approx(angle)
    assert found.from_x == pytest.approx(degrees % 360.0)


ROUGH = [
    (90.0 + 1e-12, "straight up", 1),
    (89.0, "up and to the right", None),
    (200.0, "down and to the left", None),
    (359.9999999999, "to the right", 0),
]


@pytest.mark.parametrize(("degrees", "words", "quarter"), ROUGH)
def test_rough_directions(degrees: float, words: str, quarter: int | None) -> None:
    assert toward(degrees) == words
    assert quarter_of(degrees) == quarter
    assert sideways(degrees) in (words, words.split(" and ")[-1])
