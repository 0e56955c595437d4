"""What a paper asks, in which order, and what is right there."""

from __future__ import annotations

import math

import pytest

from probgen.marking.asked import Asked, asked_of
from probgen.marking.stated import Blank
from probgen.quantities.unit import DEGREE, UNITS
from probgen.working.convention import Convention
from probgen.working.result import ResultKind
from tests.situations import (
    FIND_R,
    HOLDS,
    SLIDES,
    STAYED_SHELF,
    TIPS,
    cabinet,
    finding,
    worked,
)

NUMBERS = {"m": "40", "b": "0.50", "h": "1.20", "mu": "0.30"}  # slides at 117.6 N, tips at 81.67 N
FIRST = cabinet(**NUMBERS) + SLIDES + TIPS + finding("P", "largest")
ONE_LIMIT = cabinet(**NUMBERS) + SLIDES + finding("P", "largest")
IN_PARTS = STAYED_SHELF.replace(FIND_R, finding("R", "components"))
BEFORE = STAYED_SHELF.replace(FIND_R, "").replace("[[find]]", FIND_R + "[[find]]")


def asked(text: str, convention: Convention | None = None) -> dict[str, Asked]:
    return {each.id: each for each in asked_of(*worked(text, convention))}


ORDER = [
    (STAYED_SHELF, ["T", "R.magnitude", "R.direction"]),  # the components stand beside them
    (BEFORE, ["R.magnitude", "R.direction", "T"]),
    (IN_PARTS, ["T", "R.x", "R.y"]),
    (FIRST, ["P", "P.limit"]),
    (ONE_LIMIT, ["P"]),  # no sheet asks which of one
    (ONE_LIMIT + finding("N"), ["P", "N"]),
    (cabinet("60", **NUMBERS) + SLIDES + TIPS + HOLDS, ["slides", "tips"]),
]


@pytest.mark.parametrize(("text", "ids"), ORDER)
def test_everything_is_asked_in_its_order(text: str, ids: list[str]) -> None:
    assert list(asked(text)) == ids


@pytest.mark.parametrize(("times", "unit"), [(1, "N"), (1000, "kN")])
def test_a_number_is_right_in_coherent_units_whatever_is_printed(times: int, unit: str) -> None:
    """191 N of 190.58 N, by hand in `situations`, within the usual two per cent."""
    text = STAYED_SHELF.replace("[4.0]", f"[{4 * times}]").replace("[8.0]", f"[{8 * times}]")
    found = asked(text)
    tension, way = found["T"], found["R.direction"]
    assert tension.value == pytest.approx(190.576 * times, rel=1e-5)
    assert tension.low == pytest.approx(0.98 * 190.576 * times, rel=1e-3)
    assert tension.high == pytest.approx(1.02 * 190.576 * times, rel=1e-3)
    assert tension.blank == Blank(UNITS[unit])
    assert way.blank == Blank(DEGREE, "horizontal")
    assert [each.is_direction for each in found.values()] == [False, False, True]
    assert not any(each.is_choice for each in found.values())


@pytest.mark.parametrize(("height", "first"), [("1.20", "tips"), ("0.60", "slides")])
def test_the_limit_reached_first_is_chosen_among_all(height: str, first: str) -> None:
    limit = asked(FIRST.replace("[1.20]", f"[{height}]"))["P.limit"]
    assert limit.is_choice
    assert [names[0] for names in limit.blank.choices] == ["slides", "tips"]
    assert [names[1] for names in limit.blank.choices] == ["it slides", "it tips"]
    assert limit.blank.choices[int(limit.value)][0] == first
    assert [limit.earns(place) for place in (0.0, 1.0)] == [first == "slides", first == "tips"]


@pytest.mark.parametrize(("push", "kept"), [("60", "yes"), ("100", "no")])
def test_whether_a_limit_is_kept_is_yes_or_no(push: str, kept: str) -> None:
    tips = asked(cabinet(push, **NUMBERS) + SLIDES + TIPS + HOLDS)["tips"]
    assert tips.is_choice
    assert tips.blank.choices[int(tips.value)][0] == kept


def right(kind: ResultKind, low: float, high: float) -> Asked:
    return Asked("x", kind, Blank(UNITS["N"]), (low + high) / 2, low, high, "")


SIZE, WAY = ResultKind.QUANTITY, ResultKind.DIRECTION
EARNS = [
    # both ends are included, as numbers that came out of a division are
    (SIZE, 489.5, 490.5, {489.5: True, 490.5: True, 489.49: False, 490.51: False, -490: False}),
    (SIZE, 489.5, 490.5, {489.5 - 1e-9: True, 490.5 + 1e-9: True, 489.499_99: False}),
    (SIZE, -4.9, -4.7, {-4.9: True, -4.7: True, -4.91: False, -4.69: False, 4.8: False}),
    (SIZE, -0.1, 0.1, {0.0: True, -0.1: True, 0.1: True, 0.101: False}),
    (SIZE, -1.0, 1e6, {1e6 + 1e-4: True, -1.0 - 1e-4: True, -1.01: False}),
    (SIZE, 1.0, 1.0, {1.0: True, 0.0: False, math.nan: False, math.inf: False}),
    (WAY, 209.0, 211.0, {209.0: True, 211.0: True, 208.99: False, 211.01: False, -150.0: True}),
    (WAY, 209.0, 211.0, {209 - 1e-10: True, 211 + 1e-10: True, 30.0: False, 570.0: True}),
    (WAY, -1.0, 1.0, {359.0: True, 0.0: True, 1.0: True, 358.9: False, 1.1: False, 180.0: False}),
    (WAY, 359.5, 361.5, {359.5: True, 1.5: True, 0.0: True, 359.4: False, 1.6: False}),
    (WAY, 0.0, 2.0, {0.0: True, 360.0: True, 2.0: True, math.nan: False, -0.1: False}),
]  # fmt: skip


@pytest.mark.parametrize(("kind", "low", "high", "values"), EARNS)
def test_full_marks_are_earned_from_end_to_end(
    kind: ResultKind, low: float, high: float, values: dict[float, bool]
) -> None:
    asked = right(kind, low, high)
    assert {value: asked.earns(value) for value in values} == values
