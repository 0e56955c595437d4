"""The set file: which problems a class gets, when they are due, and the method its keys show.

TOML; every field is described in the set file that `probgen demo` leaves behind.
"""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import date
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from pathlib import Path
from typing import Any, Final, cast, get_args, get_type_hints

from probgen.course.exam import Exam, read_exam
from probgen.course.print_run import PrintRun, read_print_run
from probgen.input.fault import Faults
from probgen.input.file import read_text
from probgen.input.table import Table
from probgen.input.text import LONGEST_TEXT, unfit
from probgen.input.toml import parse_toml
from probgen.quantities.unit import ACCELERATION, SI, US_CUSTOMARY, UnitSystem
from probgen.sheets.document import Paper, Room
from probgen.working.convention import Convention


@dataclass(frozen=True, slots=True)
class Assigned:
    """One problem of the set: a template's id, or the path of its file, and its points.

    pivot: the point the course takes torques about; empty leaves the choice to the plan.
    """

    template: str
    points: int
    pivot: str = ""


@dataclass(frozen=True, slots=True)
class ProblemSet:
    """A set file as it was written; paths are as typed, meant from the folder of the set file.

    due: as printed; seed: empty when the build is to draw one; bank: empty for all templates.
    working: height (cm) of the room left after each problem for the student's working.
    room: what that room is: free, lines, grid, or none at all.
    formulas: whether a page of formulas follows each sheet.
    caution: whether sheets print the templates' cautions.
    style, layouts: a house style's file and a folder of layouts, empty for the usual pages.
    run: how the papers come off the printer; exam: None where each student has a version alone.
    """

    course: str
    title: str
    roster: str
    problems: tuple[Assigned, ...]
    due: str = ""
    seed: str = ""
    bank: str = ""
    paper: Paper = "letter"
    working: float = 5.0
    room: Room = "free"
    formulas: bool = False
    caution: bool = True
    style: str = ""
    layouts: str = ""
    run: PrintRun = field(default_factory=PrintRun)
    exam: Exam | None = None
    convention: Convention = field(default_factory=Convention)


_METHOD_CHOICES: Final[dict[str, tuple[str, ...]]] = {
    name: get_args(hint) for name, hint in get_type_hints(Convention).items() if get_args(hint)
}
_MONTHS: Final = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
_USUAL: Final = ProblemSet(course="", title="", roster="", problems=())
_GRAVITY: Final = (Decimal("9.7"), Decimal("9.9"))  # m/s^2, least and greatest
SHORTEST_SEED: Final = 16
"""Characters of a seed that somebody types; a word or a date can be guessed in a second."""
_SYSTEMS: Final = {system.name: system for system in (SI, US_CUSTOMARY)}


def read_set(path: Path) -> ProblemSet:
    """The set file at a path.  Raises InputError with every fault of the file."""
    return parse_set(read_text(path, "set file"), str(path))


def parse_set(text: str, where: str) -> ProblemSet:
    """As `read_set`, from text; `where` names the file in messages."""
    faults = Faults(where)
    table = Table(parse_toml(text, where), "", faults)
    usual = _USUAL
    found = ProblemSet(
        course=table.text("course"),
        title=table.text("title"),
        roster=table.text("roster"),
        problems=_read_problems(table),
        due=_read_day(table, "due"),
        seed=_read_seed(table),
        bank=table.text("bank", usual.bank),
        paper=cast(Paper, table.word("paper", get_args(Paper), usual.paper)),
        working=float(_read_number(table, "working", usual.working, "0", "20")),
        room=cast(Room, table.word("room", get_args(Room), usual.room)),
        formulas=table.flag("formulas", usual.formulas),
        caution=table.flag("caution", usual.caution),
        style=table.text("style", usual.style),
        layouts=table.text("layouts", usual.layouts),
        run=read_print_run(table.table("print")),
        exam=read_exam(table.table("exam")) if table.has("exam") else None,
        convention=_read_method(table.table("method")),
    )
    table.close()
    faults.settle()
    return found


def unit_system_named(name: str) -> UnitSystem:
    """The unit system of that name; KeyError when there is none."""
    return _SYSTEMS[name]


def convention_with(gravity: str | None, where: str, units: UnitSystem = SI) -> Convention:
    """The usual convention in a system of units, with another g as typed in `where`.

    Raises InputError.
    """
    if gravity is None:
        return Convention(units=units)
    faults = Faults(where)
    content: dict[str, object] = {"units": units.name, "gravity": gravity}
    with suppress(ArithmeticError):
        content["gravity"] = Decimal(gravity)
    convention = _read_method(Table(content, "", faults))
    faults.settle()
    return convention


def _read_problems(table: Table) -> tuple[Assigned, ...]:
    entries = table.tables("problem")
    if not entries and not table.has("problem"):
        mend = 'write [[problem]], and below it template = "..." and points = 10'
        table.fault("problem", None, "at least one problem", mend)
    problems: list[Assigned] = []
    for entry in entries:
        points, pivot = entry.whole("points", 1, 1000), entry.text("pivot", "")
        problem = Assigned(entry.text("template"), points, pivot)
        if problem.template and any(p.template == problem.template for p in problems):
            mend = "take another template, or remove the entry"
            entry.fault("template", problem.template, "each template once in a set", mend)
        entry.close()
        problems.append(problem)
    return tuple(problems)


def _read_seed(table: Table) -> str:
    seed = table.text("seed", _USUAL.seed)
    judge_seed(seed, table.fault)
    return seed


def judge_seed(seed: str, fault: Callable[[str, object, str, str], None]) -> None:
    """Notes a seed that somebody might guess, and make everybody's numbers from."""
    if 0 < len(seed) < SHORTEST_SEED:
        expected = f"at least {SHORTEST_SEED} characters that nobody can guess"
        mend = "leave it out: one is drawn, and kept in the record"
        fault("seed", seed, expected, mend)
    elif found := unfit(seed):
        fault("seed", found, f"a text of at most {LONGEST_TEXT} characters", "leave it out")


def _read_method(table: Table) -> Convention:
    usual = Convention()
    read: dict[str, Any] = {
        name: table.word(name, choices, getattr(usual, name))
        for name, choices in _METHOD_CHOICES.items()
    }
    units = unit_system_named(table.word("units", list(_SYSTEMS), usual.units.name) or SI.name)
    read["units"] = units
    read["gravity"] = str(_read_gravity(table, units))
    read["figures"] = table.whole("figures", 2, 6, usual.figures)
    read["tolerance"] = float(_read_number(table, "tolerance", usual.tolerance, "0", "0.5"))
    table.close()
    return Convention(**read)


def gravity_bounds(units: UnitSystem) -> tuple[Decimal, Decimal]:
    """The least and the greatest g that a set may state, in the system's own unit."""
    size = Decimal(str(units.unit_of(ACCELERATION).factor))
    low, high = (end / size for end in _GRAVITY)
    place = Decimal("0.01")
    return low.quantize(place, ROUND_CEILING), high.quantize(place, ROUND_FLOOR)


def _read_gravity(table: Table, units: UnitSystem) -> Decimal:
    """g in the unit of the system, between its least and its greatest on the ground.

    From 9.7 to 9.9 m/s^2: it is 9.76 on high mountains at the equator and 9.83 at the poles.
    """
    unit, (low, high) = units.unit_of(ACCELERATION), gravity_bounds(units)
    g = table.decimal("gravity", required=False)
    if g is None:
        return Decimal(units.gravity)
    if not low <= g <= high:
        expected = f"g on the ground in {unit.plain}, from {low} to {high}"
        other = "" if units == SI else ", for the units are US customary"
        table.fault("gravity", g, expected, f"write {units.gravity}{other}")
        return Decimal(units.gravity)
    return g


def _read_number(table: Table, key: str, usual: float | str, low: str, high: str) -> Decimal:
    """A number with its digits, from low to high."""
    number = table.decimal(key, required=False)
    if number is None:
        return Decimal(str(usual))
    if not Decimal(low) <= number <= Decimal(high):
        mend = f"the usual one is {Decimal(str(usual)).normalize():f}"
        table.fault(key, number, f"a number from {low} to {high}", mend)
    return number


def _read_day(table: Table, key: str) -> str:
    """A date as it is printed; a text stays as it is."""
    day = table.content.get(key)
    if isinstance(day, date) and table.has(key):
        return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"
    return table.text(key, "", "a date such as 2026-03-09, or a text")
