"""The shape of a record's file: every field with its type and bounds, read by one schema."""

from __future__ import annotations

import re
from base64 import b64decode
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any, Final, Literal, NewType

from probgen.course.exam import MOST_VERSIONS, Exam
from probgen.course.roster import Student
from probgen.course.setfile import Assigned, ProblemSet, unit_system_named
from probgen.input.csv import LONGEST_CELL, MOST_ROWS
from probgen.input.schema import Bound, Schema, WrongError, entries, matching, within
from probgen.input.table import LONGEST_LIST
from probgen.input.toml import LONGEST_TEXT
from probgen.quantities.unit import UNITS, Unit, UnitSystem
from probgen.sheets.house import LARGEST_LAYOUT
from probgen.sheets.style import COLOUR, LARGEST_LOGO, HouseStyle
from probgen.working.convention import Convention

Source = NewType("Source", str)
"""A template's whole text."""
Layout = NewType("Layout", str)
"""A layout's whole text."""


@dataclass(frozen=True, slots=True)
class StudentRow:
    """A student as the record has them; code: none in an exam.

    email: in records of version 0.1, and used nowhere.
    """

    name: str
    id: str
    section: str = ""
    email: str = ""
    seat: str = ""
    large: bool = False
    code: str = ""

    @property
    def student(self) -> Student:
        return Student(self.name, self.id, self.section, self.seat, self.large)


@dataclass(frozen=True, slots=True)
class Column:
    """What everybody drew for one quantity."""

    unit: Unit
    drawn: tuple[Decimal, ...]


@dataclass(frozen=True, slots=True)
class ProblemRow:
    """One problem: its template, and a column for each quantity."""

    template: str
    revision: int
    values: dict[str, Column]
    source: Source


@dataclass(frozen=True, slots=True)
class RecordFile:
    """The whole file."""

    format: Literal[1]
    probgen: str
    seed: str
    set: ProblemSet
    students: tuple[StudentRow, ...]
    problems: tuple[ProblemRow, ...]
    versions: dict[str, str] = field(default_factory=dict)
    style: HouseStyle | None = None
    layouts: dict[str, Layout] = field(default_factory=dict)


def is_code(text: str) -> bool:
    """Whether a text has the form of a version code."""
    return re.fullmatch(r"[0-9A-Z][0-9A-Z-]{0,19}", text) is not None


def _digits(value: Any) -> Decimal:
    expected = 'a number as printed, between quotes, such as "1.20"'
    if not isinstance(value, str) or len(value) > 30:
        raise WrongError(value, expected)
    try:
        number = Decimal(value)
    except ArithmeticError:
        raise WrongError(value, expected) from None
    if not number.is_finite() or abs(number.adjusted()) > 15 or str(number) != value:
        raise WrongError(value, expected)
    return number


def _unit(value: Any) -> Unit:
    if not isinstance(value, str) or value not in UNITS:
        raise WrongError(value, "a unit")
    return UNITS[value]


def _system(value: Any) -> UnitSystem:
    try:
        return unit_system_named(value)
    except (LookupError, TypeError):
        raise WrongError(value, "a system of units") from None


def _picture(value: Any) -> bytes:
    expected = f"a picture of at most {LARGEST_LOGO // 2**20} MB, in base 64"
    if not isinstance(value, str) or len(value) > LARGEST_LOGO * 4 // 3 + 4:
        raise WrongError(value, expected)
    try:
        return b64decode(value, validate=True)
    except ValueError:
        raise WrongError(value, expected) from None


def _long(most: int) -> Any:
    def read(value: Any) -> str:
        if not isinstance(value, str) or len(value) > most:
            raise WrongError(value, f"a text of at most {most} characters")
        return value

    return read


def _is_gravity(value: Any) -> bool:
    plain = re.fullmatch(r"\d{1,3}(\.\d{1,9})?", value)
    return plain is not None and Decimal("0.01") <= Decimal(value) <= 100


_LONGEST: Final = 2 * LONGEST_CELL + 1  # a first and a last name, with a space between
_SOME: Final = matching(rf"(?=.*\S).{{1,{_LONGEST}}}", "a text that is not empty, nor endless")
BOUNDS: Final = {
    RecordFile: {
        "seed": _SOME,
        "students": entries(1, MOST_ROWS),
        "problems": entries(1, LONGEST_LIST),
        "versions": entries(0, MOST_VERSIONS, dict),
        "layouts": entries(0, LONGEST_LIST, dict),
    },
    StudentRow: {"name": _SOME, "id": _SOME},
    ProblemRow: {
        "template": _SOME,
        "revision": within(1, 1_000_000),
        "values": entries(0, LONGEST_LIST, dict),
    },
    Column: {"drawn": entries(1, MOST_ROWS)},
    ProblemSet: {"problems": entries(1, LONGEST_LIST), "working": within(0, 20)},
    Assigned: {"template": _SOME, "points": within(1, 1000)},
    Exam: {
        "versions": within(2, MOST_VERSIONS),
        "row": within(0, 1000),
        "spare": within(0, 1000),
        "notes": entries(0, LONGEST_LIST),
    },
    Convention: {
        "gravity": Bound('a number from 0.01 to 100 between quotes, such as "9.80"', _is_gravity),
        "figures": within(2, 6),
        "tolerance": within(0, 0.5),
    },
    HouseStyle: {
        "colour": matching(rf"({COLOUR.pattern})?", "a colour as #RRGGBB"),
        "logo_height": within(5, 40),
    },
}
RECORD_SCHEMA: Final = Schema(
    BOUNDS,
    {
        Decimal: _digits,
        Unit: _unit,
        UnitSystem: _system,
        bytes: _picture,
        Source: _long(LONGEST_TEXT),
        Layout: _long(LARGEST_LAYOUT),
    },
)
