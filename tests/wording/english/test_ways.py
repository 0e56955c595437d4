"""Directions from every quarter and along every axis, and by the compass where seen from above."""

from dataclasses import replace

import pytest

from probgen.bank.labels import Labels
from probgen.quantities.symbol import unmarked
from probgen.wording.english.ways import (
    direction,
    direction_in_short,
    ends_of_axes,
    part,
    toward,
)
from probgen.wording.nouns import NO_NOUNS
from probgen.working.convention import Convention
from probgen.working.direction import direction_of, way_of

FROM_ABOVE = replace(NO_NOUNS, labels=Labels(plan=True))
HORIZONTAL = Convention(direction="horizontal")
VERTICAL, AXIS = Convention(direction="vertical"), Convention(direction="axis")

WORDED = [
    (0.0, HORIZONTAL, "to the right"),
    (90.0, HORIZONTAL, "straight up"),
    (180.0, HORIZONTAL, "to the left"),
    (-90.0, HORIZONTAL, "straight down"),
    (12.34, HORIZONTAL, "12.3° above the horizontal, to the right"),
    (167.66, HORIZONTAL, "12.3° above the horizontal, to the left"),
    (-167.66, HORIZONTAL, "12.3° below the horizontal, to the left"),
    (-1.92235, HORIZONTAL, "1.9° below the horizontal, to the right"),
    (12.34, VERTICAL, "77.7° from the upward vertical, to the right"),
    (-167.66, VERTICAL, "77.7° from the downward vertical, to the left"),
    (270.0, VERTICAL, "straight down"),
    (-12.34, AXIS, "347.7° counter-clockwise from +x"),
]


@pytest.mark.parametrize(("degrees", "convention", "words"), WORDED)
def test_directions(degrees: float, convention: Convention, words: str) -> None:
    assert unmarked(direction(direction_of(degrees, convention), NO_NOUNS)) == words


ROUGH = [
    (90.0 + 1e-12, "straight up"),
    (89.0, "up and to the right"),
    (200.0, "down and to the left"),
    (359.9999999999, "to the right"),
]


@pytest.mark.parametrize(("degrees", "words"), ROUGH)
def test_rough_directions(degrees: float, words: str) -> None:
    assert toward(way_of(degrees), NO_NOUNS) == words


def test_the_letter_of_an_axis_is_marked() -> None:
    told = direction_of(-12.34, AXIS)
    assert direction(told, NO_NOUNS).endswith("from +𝑥")
    assert direction_in_short(told, NO_NOUNS).endswith("from +𝑥")


IN_SHORT = [
    (0.0, HORIZONTAL, "to the right"),
    (90.0, HORIZONTAL, "straight up"),
    (12.34, HORIZONTAL, "12.3° above, right"),
    (-167.66, HORIZONTAL, "12.3° below, left"),
    (12.34, VERTICAL, "77.7° from up, right"),
    (-12.34, AXIS, "347.7° from +x"),
]


@pytest.mark.parametrize(("degrees", "convention", "words"), IN_SHORT)
def test_directions_in_short(degrees: float, convention: Convention, words: str) -> None:
    assert unmarked(direction_in_short(direction_of(degrees, convention), NO_NOUNS)) == words


COMPASS = [
    (0.0, HORIZONTAL, "to the east"),
    (90.0, HORIZONTAL, "to the north"),
    (180.0, VERTICAL, "to the west"),
    (270.0, VERTICAL, "to the south"),
    (12.34, HORIZONTAL, "12.3° north of east"),
    (167.66, HORIZONTAL, "12.3° north of west"),
    (-167.66, HORIZONTAL, "12.3° south of west"),
    (-12.34, VERTICAL, "77.7° east of south"),
    (102.34, VERTICAL, "12.3° west of north"),
    (-12.34, AXIS, "347.7° counter-clockwise from +x"),
]


@pytest.mark.parametrize(("degrees", "convention", "words"), COMPASS)
def test_directions_by_the_compass(degrees: float, convention: Convention, words: str) -> None:
    told = direction_of(degrees, convention)
    assert unmarked(direction(told, FROM_ABOVE)) == words
    in_short = unmarked(direction_in_short(told, FROM_ABOVE))
    assert in_short == words.replace("counter-clockwise ", "")


def test_rough_directions_by_the_compass() -> None:
    told = [toward(way_of(degrees), FROM_ABOVE) for degrees in (20.0, 110.0, 200.0, 290.0, 270.0)]
    ways = ("north and east", "north and west", "south and west", "south and east")
    assert told == [*(f"toward the {way}" for way in ways), "to the south"]


def test_ends_of_axes() -> None:
    assert [part(quarter, NO_NOUNS) for quarter in (1, 3, 5)] == ["upward", "downward", "upward"]
    assert [part(quarter, FROM_ABOVE) for quarter in (0, 2)] == ["to the east", "to the west"]
    assert " ".join(ends_of_axes(FROM_ABOVE).values()) == "east north west south"
    assert ends_of_axes(NO_NOUNS)["up"] == "up"
