"""The assignment file: which problems a class gets, when they are due, the method its keys show.

TOML; every field is described in the assignment file that `probgen demo` leaves behind.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path
from typing import Final, NewType, cast, get_args

from probgen.course.exam import Exam, read_exam
from probgen.course.method import read_method
from probgen.course.print_run import PrintRun, read_print_run
from probgen.course.rule import Chosen, Rule, read_rule
from probgen.input import file_kind
from probgen.input.fault import Faults
from probgen.input.file import read_text
from probgen.input.file_kind import require_kind, require_no_table
from probgen.input.table import Table
from probgen.input.text import LONGEST_TEXT, unfit
from probgen.input.toml import parse_toml
from probgen.sheets.document import Paper, Room
from probgen.working.convention import Convention
from probgen.working.shares import GROUPS, Share, Shares

ASSIGNMENT: Final = "assignment.toml"
"""The usual name of an assignment file."""
_FORMER_NAME: Final = "set.toml"
BankNames = NewType("BankNames", tuple[str, ...])
"""Banks by name or path; what records of version 0.2 have as one text."""
_ALL_TEMPLATES: Final = BankNames(())
SHORTEST_SEED: Final = 16
"""Characters of a seed that somebody types; a word or a date can be guessed in a second."""


@dataclass(frozen=True, slots=True)
class Assigned:
    """One problem of the set: a template's id, or the path of its file, and its points.

    pivot: the point the course takes torques about; empty leaves the choice to the plan.
    sections: who gets it, by the names of the class list; empty for everybody.
    parts, marks: the course's own sharing of the points, as in `Shares`.
    rule: to choose templates by, where none is named yet; chosen: why this one was taken.
    """

    template: str
    points: int
    pivot: str = ""
    sections: tuple[str, ...] = ()
    parts: tuple[int, ...] = ()
    marks: tuple[Share, ...] = ()
    rule: Rule | None = None
    chosen: Chosen | None = None

    @property
    def shares(self) -> Shares:
        return Shares(self.parts, self.marks)


@dataclass(frozen=True, slots=True)
class SectionDue:
    """When one section's papers are due, as printed."""

    section: str
    due: str


@dataclass(frozen=True, slots=True)
class ProblemSet:
    """An assignment file as it was written; paths are as typed, meant from its folder.

    due: as printed; due_in: for sections that have another day.
    seed: empty when the build is to draw one; banks: empty for the supplied templates.
    working: height (cm) of the room left after each problem for the student's working.
    room: what that room is: free, lines, grid, or none at all.
    formulas: whether a page of formulas follows each sheet.
    caution: whether sheets print the templates' cautions; origins: and who wrote each template,
    after what, and under which licence.
    style, layouts: a house style's file and a folder of layouts, empty for the usual pages.
    run: how the papers come off the printer; exam: None where each student has a version alone.
    avoid: globs of records, or of folders with some, whose numbers are drawn around; again:
    templates that an exam may have although the class had them before.
    """

    course: str
    title: str
    roster: str
    problems: tuple[Assigned, ...]
    due: str = ""
    seed: str = ""
    banks: BankNames = _ALL_TEMPLATES
    paper: Paper = "letter"
    working: float = 5.0
    room: Room = "free"
    formulas: bool = False
    caution: bool = True
    origins: bool = False
    style: str = ""
    layouts: str = ""
    run: PrintRun = field(default_factory=PrintRun)
    exam: Exam | None = None
    convention: Convention = field(default_factory=Convention)
    due_in: tuple[SectionDue, ...] = ()
    avoid: tuple[str, ...] = ()
    again: tuple[str, ...] = ()

    def dues_of(self, sections: Iterable[str]) -> tuple[str, ...]:
        """The days, as printed, of some sections, each once."""
        return tuple(dict.fromkeys(self.for_section(each).due for each in sections))

    def places_in(self, section: str) -> tuple[int, ...]:
        """The places, from 0, of the problems that a section gets."""
        own = enumerate(self.problems)
        return tuple(i for i, each in own if not each.sections or section in each.sections)

    def for_section(self, section: str) -> ProblemSet:
        """The set as a section has it."""
        due = next((each.due for each in self.due_in if each.section == section), self.due)
        problems = tuple(self.problems[place] for place in self.places_in(section))
        return replace(self, problems=problems, due=due)

    @property
    def sections_named(self) -> tuple[tuple[str, str], ...]:
        """The sections that the file names, each with the field that does."""
        problems = enumerate(self.problems)
        named = ((f"problem[{i}].sections", name) for i, own in problems for name in own.sections)
        return (*named, *((f"due_in.{each.section}", each.section) for each in self.due_in))


_MONTHS: Final = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
_USUAL: Final = ProblemSet(course="", title="", roster="", problems=())


def read_assignment(
    path: Path, remarks: list[str] | None = None, faults: Faults | None = None
) -> ProblemSet:
    """The assignment file at a path; adds remarks on what it says in words of an earlier release.

    faults: where those of single fields are noted, when what could be read is wanted all the same.
    Raises InputError with every fault of the file otherwise, and where it is no such file at all.
    """
    require_no_table(path, file_kind.ASSIGNMENT)
    text = read_text(path, file_kind.ASSIGNMENT)
    told = remarks if remarks is not None else []
    if path.name == _FORMER_NAME:
        told.append(f"{path}: is called {ASSIGNMENT} now; rename it when it suits")
    return parse_assignment(text, str(path), told, faults)


def parse_assignment(
    text: str, where: str, remarks: list[str] | None = None, noted: Faults | None = None
) -> ProblemSet:
    """As `read_assignment`, from text; `where` names the file in messages."""
    faults = Faults(where, remarks=[] if remarks is None else remarks)
    content = parse_toml(text, where)
    require_kind(content, file_kind.ASSIGNMENT, where)
    table = Table(content, "", faults)
    table.rename(working_style="room")
    usual = _USUAL
    found = ProblemSet(
        course=table.text("course"),
        title=table.text("title"),
        roster=table.text("roster"),
        problems=_read_problems(table),
        due=_read_day(table, "due"),
        seed=_read_seed(table),
        banks=_read_banks(table),
        paper=cast(Paper, table.word("paper", get_args(Paper), usual.paper)),
        working=float(table.number("working", usual.working, "0", "20")),
        room=cast(Room, table.word("working_style", get_args(Room), usual.room)),
        formulas=table.flag("formulas", usual.formulas),
        caution=table.flag("caution", usual.caution),
        origins=table.flag("origins", usual.origins),
        style=table.text("style", usual.style),
        layouts=table.text("layouts", usual.layouts),
        run=read_print_run(table.table("print")),
        exam=read_exam(table.table("exam")) if table.has("exam") else None,
        convention=read_method(table.table("method")),
        due_in=_read_due_in(table.table("due_in")),
        avoid=table.texts("avoid"),
        again=table.texts("again"),
    )
    if found.again and not (found.exam and found.avoid):
        expected = "beside avoid and an [exam]: homework may have any template again"
        faults.add("again", list(found.again), expected, "leave it out")
    if found.exam:
        for field, name in found.sections_named:
            expected = "one set of problems and one day for all who sit an exam"
            faults.add(field, name, expected, "give the section an assignment file of its own")
    table.close()
    if noted is None:
        faults.settle()
    else:
        noted.found += faults.found
    return found


def _read_problems(table: Table) -> tuple[Assigned, ...]:
    entries = table.tables("problem")
    if not entries and not table.has("problem"):
        mend = 'write [[problem]], and below it template = "..." and points = 10'
        table.fault("problem", None, "at least one problem", mend)
    problems: list[Assigned] = []
    for entry in entries:
        points, pivot = entry.whole("points", 1, 1000), entry.text("pivot", "")
        shares = _read_shares(entry, points)
        rule, sections = read_rule(entry), _read_sections(entry)
        template = "" if rule else entry.text("template")
        problem = Assigned(template, points, pivot, sections, shares.parts, shares.marks, rule)
        if problem.template and any(p.template == problem.template for p in problems):
            mend = "take another template, or remove the entry"
            entry.fault("template", problem.template, "each template once in a set", mend)
        entry.close()
        problems.append(problem)
    return tuple(problems)


def _read_sections(entry: Table) -> tuple[str, ...]:
    sections = tuple(name.strip() for name in entry.texts("sections"))
    for place, name in enumerate(sections):
        if not name:
            mend = "leave sections out for everybody"
            entry.fault(f"sections[{place}]", name, "a section of the class list", mend)
    return tuple(dict.fromkeys(sections))


def _read_shares(entry: Table, points: int) -> Shares:
    """The course's own sharing of a problem's points."""
    own = entry.table("marks")
    named = [group for group in GROUPS if own.has(group)]
    marks = tuple(Share(group, own.whole(group, 1, points)) for group in own.content
                  if group in named)  # fmt: skip
    whole = own.close()
    found = entry.decimals("parts") if entry.has("parts") else ()
    if any(part != int(part) or part < 1 for part in found):
        entry.fault("parts", ", ".join(map(str, found)), "whole points of 1 or more for each part")
        found = ()
    shares = Shares(tuple(map(int, found)), marks)
    if shares.parts and shares.marks:
        mend = "leave one of them out"
        entry.fault("marks", "marks beside parts", "points by parts or by kinds of steps", mend)
    if whole and not (entry.faulty("points") or any(map(own.faulty, named))):
        for key, told in shares.complaints(points):
            entry.fault(key, told, f"a sum of {points}, as points says", "make the two agree")
    return shares


def _read_banks(table: Table) -> BankNames:
    """One bank as a text, several as a list."""
    if isinstance(table.content.get("bank"), list):
        return BankNames(table.texts("bank"))
    named = table.text("bank", "", "the name or path of a bank, or a list of them")
    return BankNames((named,) if named else ())


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


def _read_due_in(table: Table) -> tuple[SectionDue, ...]:
    found = []
    for name in table.content:
        found.append(SectionDue(name, day := _read_day(table, name)))
        if not day and not table.faulty(name):
            expected = "a date such as 2026-03-09, or a text"
            table.fault(name, day, expected, "leave it out for the day of all")
    return tuple(found)


def _read_day(table: Table, key: str) -> str:
    """A date as it is printed; a text stays as it is."""
    day = table.content.get(key)
    if isinstance(day, date) and table.has(key):
        return day_printed(day)
    return table.text(key, "", "a date such as 2026-03-09, or a text")


def day_printed(day: date) -> str:
    """As it stands on papers: "9 March 2026"."""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def day_of(due: str) -> date | None:
    """The date that is printed so; None for a text of another kind."""
    words = due.split()
    try:
        day, month, year = words
        return date(int(year), _MONTHS.index(month) + 1, int(day))
    except ValueError:
        return None
