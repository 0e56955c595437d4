"""English grammar: directions from every quarter and along every axis, lists, counts, capitals."""

import pytest

from probgen.quantities.expression import Name
from probgen.wording.english.grammar import (
    capitalized,
    counted,
    direction,
    direction_in_short,
    series,
    toward,
)
from probgen.wording.sentence import filled, plain_text
from probgen.working.convention import Convention
from probgen.working.direction import direction_of, way_of

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
    assert direction(direction_of(degrees, convention)) == words


ROUGH = [
    (90.0 + 1e-12, "straight up"),
    (89.0, "up and to the right"),
    (200.0, "down and to the left"),
    (359.9999999999, "to the right"),
]


@pytest.mark.parametrize(("degrees", "words"), ROUGH)
def test_rough_directions(degrees: float, words: str) -> None:
    assert toward(way_of(degrees)) == words


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
    assert direction_in_short(direction_of(degrees, convention)) == words


A, B, C = (Name(n, n) for n in "ABC")


@pytest.mark.parametrize(
    ("parts", "text"), [([A], "A"), ([A, B], "A and B"), ([A, B, C], "A, B and C")]
)
def test_lists(parts: list[Name], text: str) -> None:
    assert plain_text(series(parts)) == text


@pytest.mark.parametrize(
    ("number", "text"), [(1, "one force"), (4, "four forces"), (13, "13 forces")]
)
def test_counts(number: int, text: str) -> None:
    assert counted(number, "force") == text


def test_capitals() -> None:
    assert plain_text(capitalized(filled("the arm of {A}", A=A))) == "The arm of A"
    assert plain_text(capitalized(filled("{A} arm", A=A))) == "A arm"
