"""The shape of a record's file, of both formats: every field with its type and bounds."""

from __future__ import annotations

import re
from base64 import b64decode
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any, Final, Literal, NewType

from probgen.course.assignment import Assigned, BankNames, ProblemSet, SectionDue
from probgen.course.exam import MOST_VERSIONS, Exam
from probgen.course.issue import Erratum
from probgen.course.method import unit_system_named
from probgen.course.print_run import PrintRun
from probgen.course.roster import Student
from probgen.course.rule import Rule
from probgen.input.csv import MOST_ROWS
from probgen.input.schema import Bound, Schema, WrongError, entries, matching, within
from probgen.input.table import LONGEST_LIST
from probgen.input.text import LONGEST_TEXT as LONGEST_WORDS
from probgen.input.toml import LONGEST_TEXT
from probgen.quantities.unit import UNITS, Unit, UnitSystem
from probgen.sheets.house import LARGEST_LAYOUT
from probgen.sheets.logo import LARGEST_LOGO
from probgen.sheets.style import COLOUR, HouseStyle
from probgen.working.convention import Convention
from probgen.working.shares import GROUPS, Share

MOST_ISSUES: Final = 1000
"""Corrections of one assignment; nobody prints a thousand errata."""
_MOST_HAD: Final = 50 * MOST_ROWS
"""Sets of numbers of one template in a course: many terms of a large class."""
Source = NewType("Source", str)
"""A template's whole text."""
Layout = NewType("Layout", str)
"""A layout's whole text."""
Frozen = NewType("Frozen", str)
"""A text that editions are made from, of either kind."""


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
class FirstFile:
    """A file of format 1, as version 0.1 wrote it: one issue, one printing."""

    format: Literal[1]
    probgen: str
    seed: str
    set: ProblemSet
    students: tuple[StudentRow, ...]
    problems: tuple[ProblemRow, ...]
    versions: dict[str, str] = field(default_factory=dict)
    style: HouseStyle | None = None
    layouts: dict[str, Layout] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class MemberRow:
    """A student of the class as it is; letter: of the exam's version they get."""

    name: str
    id: str
    section: str = ""
    seat: str = ""
    large: bool = False
    numbers_of: str = ""
    version: str = ""
    needs: str = ""
    letter: str = ""

    @property
    def student(self) -> Student:
        return Student(
            self.name, self.id, self.section, self.seat, self.large, self.numbers_of,
            self.version, self.needs,
        )  # fmt: skip


@dataclass(frozen=True, slots=True)
class TemplateRow:
    """A template: the digest of its text, and the unit of each quantity that is drawn."""

    template: str
    revision: int
    text: str
    units: dict[str, Unit]


@dataclass(frozen=True, slots=True)
class IssueRow:
    """layouts: the digest of each one's text."""

    probgen: str
    set: ProblemSet
    templates: tuple[TemplateRow, ...]
    style: HouseStyle | None = None
    layouts: dict[str, str] = field(default_factory=dict)
    erratum: Erratum | None = None
    draft: bool = False


@dataclass(frozen=True, slots=True)
class EditionRow:
    """drawn: for each problem the values of its quantities, in the order of the issue's units."""

    code: str
    owner: str
    drawn: tuple[tuple[Decimal, ...], ...]
    name: str = ""
    section: str = ""
    large: bool = False
    version: int = 1
    follows: str = ""
    errata: tuple[Erratum, ...] = ()


@dataclass(frozen=True, slots=True)
class PrintingRow:
    issue: int
    editions: tuple[EditionRow, ...]


@dataclass(frozen=True, slots=True)
class HadRow:
    """Numbers that a student had in another assignment; owner: "" for anybody."""

    drawn: tuple[Decimal, ...]
    owner: str = ""


@dataclass(frozen=True, slots=True)
class AvoidedRow:
    """What was drawn around of one template, the values in the order of their units."""

    template: str
    revision: int
    units: dict[str, Unit]
    had: tuple[HadRow, ...]


@dataclass(frozen=True, slots=True)
class CopyingRow:
    """Who of a class could copy a problem; fields as `draws.nearness.Copying` has them."""

    template: str
    papers: int
    share: float
    exposed: int


@dataclass(frozen=True, slots=True)
class RecordFile:
    """A file of format 2.

    digest: of all the rest; texts: each template and layout once, by its digest.
    """

    format: Literal[2]
    digest: str
    probgen: str
    seed: str
    secret: str
    students: tuple[MemberRow, ...]
    issues: tuple[IssueRow, ...]
    printings: tuple[PrintingRow, ...]
    texts: dict[str, Frozen]
    avoided: tuple[AvoidedRow, ...] = ()
    copying: tuple[CopyingRow, ...] = ()


def is_code(text: str) -> bool:
    """Whether a text has the form of a version code."""
    return re.fullmatch(_CODE, text) is not None


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


def _banks(value: Any) -> BankNames:
    named = [value] if isinstance(value, str) and value else value or []
    if not isinstance(named, list) or len(named) > LONGEST_LIST:
        raise WrongError(value, f"a list of at most {LONGEST_LIST} banks")
    return BankNames(tuple(map(_long(LONGEST_WORDS), named)))


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


_CODE: Final = "[0-9A-Z][0-9A-Z-]{0,19}"
_DIGEST: Final = matching("[0-9a-f]{32}", "a digest of 32 signs")
_SOME: Final = Bound(
    f"a text of 1 to {LONGEST_WORDS} characters",
    lambda value: bool(value.strip()) and len(value) <= LONGEST_WORDS,
    str,
)
BOUNDS: Final = {
    FirstFile: {
        "seed": _SOME,
        "students": entries(1, MOST_ROWS),
        "problems": entries(1, LONGEST_LIST),
        "versions": entries(0, MOST_VERSIONS, dict),
        "layouts": entries(0, LONGEST_LIST, dict),
    },
    RecordFile: {
        "digest": _DIGEST,
        "seed": _SOME,
        "secret": matching(r"([0-9a-f]{32})?", "32 signs from 0 to 9 and a to f, or nothing"),
        "students": entries(1, MOST_ROWS),
        "issues": entries(1, MOST_ISSUES),
        "printings": entries(1, MOST_ROWS),
        "texts": entries(1, MOST_ISSUES * LONGEST_LIST, dict),
        "avoided": entries(0, MOST_ISSUES),
        "copying": entries(0, LONGEST_LIST),
    },
    CopyingRow: {
        "template": _SOME,
        "papers": within(0, MOST_ROWS),
        "share": within(0, 1),
        "exposed": within(0, MOST_ROWS),
    },
    AvoidedRow: {
        "template": _SOME,
        "revision": within(1, 1_000_000),
        "units": entries(0, LONGEST_LIST, dict),
        "had": entries(1, _MOST_HAD),
    },
    HadRow: {"drawn": entries(0, LONGEST_LIST)},
    MemberRow: {"name": _SOME, "id": _SOME, "letter": matching("[A-Z]?", "a letter, or nothing")},
    TemplateRow: {
        "template": _SOME,
        "revision": within(1, 1_000_000),
        "text": _DIGEST,
        "units": entries(0, LONGEST_LIST, dict),
    },
    IssueRow: {
        "templates": entries(1, LONGEST_LIST),
        "layouts": entries(0, LONGEST_LIST, dict),
    },
    EditionRow: {
        "code": matching(_CODE, "a code"),
        "owner": _SOME,
        "drawn": entries(1, LONGEST_LIST),
        "version": within(1, 1000),
        "follows": matching(f"({_CODE})?", "a code, or nothing"),
        "errata": entries(0, MOST_ISSUES),
    },
    Erratum: {"day": matching(r"\d{4}-\d\d-\d\d", "a date such as 2027-03-12"), "what": _SOME},
    PrintingRow: {"issue": within(0, MOST_ISSUES), "editions": entries(1, MOST_ROWS)},
    StudentRow: {"name": _SOME, "id": _SOME},
    ProblemRow: {
        "template": _SOME,
        "revision": within(1, 1_000_000),
        "values": entries(0, LONGEST_LIST, dict),
    },
    Column: {"drawn": entries(1, MOST_ROWS)},
    ProblemSet: {
        "problems": entries(1, LONGEST_LIST),
        "working": within(0, 20),
        "due_in": entries(0, MOST_ROWS),
        "avoid": entries(0, LONGEST_LIST),
        "again": entries(0, LONGEST_LIST),
    },
    Assigned: {
        "template": _SOME,
        "points": within(1, 1000),
        "sections": entries(0, LONGEST_LIST),
        "parts": entries(0, LONGEST_LIST),
        "marks": entries(0, len(GROUPS)),
    },
    Rule: {
        "goals": entries(0, LONGEST_LIST),
        "level": within(0, 5),
        "count": within(1, LONGEST_LIST),
    },
    Share: {"group": matching("|".join(GROUPS), "a kind of step"), "points": within(1, 1000)},
    SectionDue: {"section": _SOME, "due": _SOME},
    Exam: {
        "versions": within(1, MOST_VERSIONS),
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
CALLED: Final[dict[type, dict[str, str]]] = {
    ProblemSet: {
        "run": "print",
        "convention": "method",
        "room": "working_style",
        "banks": "bank",
    },
    PrintRun: {"cover": "pile_cover"},
    Convention: {"turning": "torque_word", "figures": "significant_figures"},
}
"""What files call fields of a set, as assignment files do; records have not always done so."""
_HOOKS: Final = {
    Decimal: _digits,
    Unit: _unit,
    UnitSystem: _system,
    bytes: _picture,
    BankNames: _banks,
    Source: _long(LONGEST_TEXT),
    Layout: _long(LARGEST_LAYOUT),
    Frozen: _long(max(LONGEST_TEXT, LARGEST_LAYOUT)),
}
RECORD_SCHEMA: Final = Schema(BOUNDS, _HOOKS, CALLED)
FIRST_SCHEMA: Final = Schema(BOUNDS, _HOOKS, {ProblemSet: {"banks": "bank"}})
"""Of format 1, whose files know the former words alone."""
