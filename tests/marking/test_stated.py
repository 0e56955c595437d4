"""What a student states: the cells of an answer, and every reading of them."""

from __future__ import annotations

import math

import pytest

from probgen.marking.form import Place
from probgen.marking.stated import Blank, Reading, stated
from probgen.quantities.unit import DEGREE, ONE, UNITS

FORCE = Blank(UNITS["N"])
BIG = Blank(UNITS["kN"])
NONE_AT_ALL = Blank(None)
LEVEL = Blank(DEGREE, "horizontal")
AXIS = Blank(DEGREE, "axis")
LIMIT = Blank(choices=(("slips", "the ladder slips"), ("tips", "the ladder tips")))


def read(blank: Blank, number: str, unit: str = "", side: str = "") -> tuple[Reading, ...]:
    cells = {Place.NUMBER: number, Place.UNIT: unit, Place.SIDE: side}
    return stated(blank, cells).readings


NUMBERS = [
    (FORCE, "490", "", 490.0, 0.5), (FORCE, "490 N", "", 490.0, 0.5),
    (FORCE, "0.49", "kN", 490.0, 5.0), (FORCE, "490", "N", 490.0, 0.5),
    (FORCE, "490 N", "N", 490.0, 0.5), (FORCE, "4.9e2", "", 490.0, 5.0),
    (BIG, "1.20", "", 1200.0, 5.0), (BIG, "1200", "N", 1200.0, 0.5),
    (BIG, "1.2", "kN", 1200.0, 50.0), (BIG, "-1.20", "", -1200.0, 5.0),
    (NONE_AT_ALL, "2.5", "", 2.5, 0.05),
    (FORCE, "1e999", "", math.inf, math.inf),
    # 110 x 4.4482216152605 N, the pound-force of NIST SP 811; no pound of mass is a force
    (FORCE, "110 lb", "", 489.304377678655, 2.22411080763),
]  # fmt: skip


@pytest.mark.parametrize(("blank", "number", "unit", "value", "half"), NUMBERS)
def test_one_reading_of_a_number(
    blank: Blank, number: str, unit: str, value: float, half: float
) -> None:
    (found,) = read(blank, number, unit)
    assert found.value == pytest.approx(value, rel=1e-12)
    assert found.half == pytest.approx(half, rel=1e-9)
    assert found.bare == float(number.split()[0]) * (blank.unit or ONE).factor


def test_a_unit_of_another_kind_leaves_the_number() -> None:
    for blank, factor in ((FORCE, 1), (BIG, 1000)):
        (found,) = read(blank, "490", "kg")
        assert math.isnan(found.value)
        assert found.bare == 490.0 * factor
        assert found.unit == UNITS["kg"]
        assert found.figures == (2, 3)


SEVERAL = [
    (FORCE, "1,234", "N", ""),
    (FORCE, "1,234", "kg", ""),
    (LEVEL, "30", "", ""),
    (LEVEL, "30", "", "above"),
]
NONE = [(FORCE, "?", "", ""), (FORCE, "490", "furlong", ""), (FORCE, "490 N", "kN", ""),
        (LEVEL, "thirty", "", ""), (AXIS, "30 N", "", "")]  # fmt: skip


@pytest.mark.parametrize(("blank", "number", "unit", "side"), [*SEVERAL, *NONE])
def test_what_is_not_clear_has_no_reading_that_counts(
    blank: Blank, number: str, unit: str, side: str
) -> None:
    cells = {Place.NUMBER: number, Place.UNIT: unit, Place.SIDE: side}
    told = stated(blank, cells)
    assert told.only is None
    assert not told.empty


def test_directions_are_turned_from_the_axis() -> None:
    assert [r.value for r in read(LEVEL, "9.9", "", "below the horizontal, left")] == [189.9]
    assert [r.value for r in read(LEVEL, "9.9° below the horizontal to the left")] == [189.9]
    assert [r.value for r in read(LEVEL, "-9.9")] == [pytest.approx(350.1)]


# Typed, and where printed from the axis: degrees, and half a unit of the last figure.
FROM_THE_AXIS = [("30", 30.0, 0.5), ("-30", 330.0, 0.5), ("30.0°", 30.0, 0.05), ("390", 30.0, 0.5),
                 ("1.0 rad", 57.29577951308232, 0.05 * 57.29577951308232),
                 ("straight up", 90.0, 0.5)]  # fmt: skip


@pytest.mark.parametrize(("typed", "angle", "half"), FROM_THE_AXIS)
def test_an_angle_from_the_axis_is_a_number(typed: str, angle: float, half: float) -> None:
    (found,) = read(AXIS, typed)
    assert found.value == found.bare == pytest.approx(angle)
    assert found.half == pytest.approx(half)


def test_a_choice_is_known_by_any_of_its_names() -> None:
    for text, place in (("slips", 0), ("The Ladder  Tips", 1)):
        (found,) = stated(LIMIT, {Place.CHOICE: text}).readings
        assert found.value == place
    assert stated(LIMIT, {Place.CHOICE: "both"}).readings == ()


@pytest.mark.parametrize("cells", [{}, {Place.NUMBER: " "}, {Place.UNIT: "N"}])
def test_empty_is_empty_whatever_unit_stands_there(cells: dict[Place, str]) -> None:
    assert stated(FORCE, cells).empty


CELLS = [
    ({Place.NUMBER: " 490 ", Place.UNIT: "N"}, "490 N"),
    ({Place.NUMBER: "9.9", Place.SIDE: "below, left"}, "9.9 below, left"),
    ({Place.SIDE: "straight down"}, "straight down"),
    ({Place.CHOICE: "tips"}, "tips"),
]


@pytest.mark.parametrize(("cells", "text"), CELLS)
def test_what_was_typed_is_kept_as_one_text(cells: dict[Place, str], text: str) -> None:
    told = stated(LEVEL, cells)
    assert told.text == text
    assert not told.empty


def test_a_direction_may_stand_in_the_cell_of_its_side() -> None:
    assert [r.value for r in read(LEVEL, "", side="straight down")] == [270.0]
