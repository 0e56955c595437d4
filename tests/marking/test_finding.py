"""What one answer is found to be by itself: right, a unit or a sign off, or wrong."""

from __future__ import annotations

import pytest

from probgen.marking.asked import Asked
from probgen.marking.finding import Finding, finding
from probgen.marking.form import Place
from probgen.marking.stated import Blank, stated
from probgen.quantities.unit import DEGREE, UNITS
from probgen.working.result import ResultKind


def asked(unit: str, low: float, high: float) -> Asked:
    return Asked(
        "x", ResultKind.QUANTITY, Blank(UNITS[unit]), (low + high) / 2, low, high, "as printed"
    )


FORCE, LENGTH = asked("N", 485, 495), asked("m", 1.18, 1.22)
HEAVY = asked("kN", 11_900, 12_100)
WAY = Asked("w", ResultKind.DIRECTION, Blank(DEGREE, "axis"), 210, 209, 211, "")
LIMIT = Asked("l", ResultKind.LIMIT, Blank(choices=(("slips",), ("tips",))), 1, 1, 1, "tips")

FOUND = [
    (FORCE, "490", "", Finding.RIGHT), (FORCE, "-490", "", Finding.SIGN),
    (FORCE, "490", "kg", Finding.UNIT),  # of another kind
    (FORCE, "490", "kN", Finding.UNIT), (FORCE, "0.49", "", Finding.UNIT),  # in kN
    (FORCE, "0.49", "kN", Finding.RIGHT), (FORCE, "0.49", "N", Finding.UNIT),
    (FORCE, "490", "lbf", Finding.UNIT), (FORCE, "110", "", Finding.WRONG),  # no power of ten
    (FORCE, "49000", "", Finding.WRONG),  # a hundredth is a unit of lengths, and of none of forces
    (FORCE, "49", "", Finding.WRONG), (FORCE, "1e999", "", Finding.WRONG),
    (FORCE, "-490", "kN", Finding.WRONG), (FORCE, "480", "kg", Finding.WRONG),
    (LENGTH, "120", "", Finding.UNIT), (LENGTH, "1200", "", Finding.UNIT),
    (LENGTH, "120", "cm", Finding.RIGHT), (LENGTH, "120", "mm", Finding.UNIT),
    (LENGTH, "12", "cm", Finding.WRONG), (LENGTH, "3.94", "", Finding.WRONG),
    (HEAVY, "12", "", Finding.RIGHT), (HEAVY, "12000", "", Finding.UNIT),
    (HEAVY, "12000", "N", Finding.RIGHT), (HEAVY, "12", "N", Finding.UNIT),
    (WAY, "210", "", Finding.RIGHT), (WAY, "-150", "", Finding.RIGHT),
    (WAY, "30", "", Finding.SIGN), (WAY, "330", "", Finding.SIGN), (WAY, "150", "", Finding.SIGN),
    (WAY, "60", "", Finding.WRONG), (WAY, "120", "", Finding.WRONG), (WAY, "27", "", Finding.WRONG),
    (FORCE, "", "N", Finding.EMPTY), (FORCE, "a lot", "N", Finding.UNREAD),
    (FORCE, "1,234", "", Finding.UNREAD),  # 1.234 or 1234
]  # fmt: skip


@pytest.mark.parametrize(("asked", "number", "unit", "expected"), FOUND)
def test_an_answer_by_itself(asked: Asked, number: str, unit: str, expected: Finding) -> None:
    told = stated(asked.blank, {Place.NUMBER: number, Place.UNIT: unit})
    assert finding(asked, told) is expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [("tips", Finding.RIGHT), ("slips", Finding.WRONG), ("both", Finding.UNREAD)],
)
def test_a_choice_is_right_or_wrong(text: str, expected: Finding) -> None:
    assert finding(LIMIT, stated(LIMIT.blank, {Place.CHOICE: text})) is expected
