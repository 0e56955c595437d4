"""The record of an assignment: all that was ever handed out, and what is to be made of it now."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Final

from probgen import __version__
from probgen.course.assignment import ProblemSet
from probgen.course.edition import Edition, Printing, current
from probgen.course.issue import Issue
from probgen.course.numbers_had import Had
from probgen.course.roster import Student
from probgen.course.version import Version, version_of
from probgen.draws.nearness import Copying
from probgen.input.fault import Fault, InputError
from probgen.input.remedy import TrustLayouts
from probgen.sheets.house import House

RECORD: Final = "record.json"
"""The name of the record in a build's folder."""
CODES: Final = "codes.csv"
"""The table beside it that tells which paper has which code, and where its key is."""


@dataclass(frozen=True)
class Record:
    """A class ready to be worked and printed, with its past.

    seed: what numbers are drawn from; secret: what codes are keyed by, empty in a record of
    version 0.1 that nobody has added to.
    issues: in their order, the last one holds now; printings: in their order.
    students: the class as it is, in the order of the print run; letters: for an exam the version
    each of them gets.
    version: of probgen, when the record was last added to.
    avoided: what students had in other assignments, around which numbers were drawn.
    copying: of each problem who of the class could copy, when the record was last added to; empty
    in records of before that was told.
    """

    seed: str
    secret: str
    issues: tuple[Issue, ...]
    printings: tuple[Printing, ...]
    students: tuple[Student, ...]
    letters: tuple[str, ...] = ()
    version: str = __version__
    avoided: tuple[Had, ...] = ()
    copying: tuple[Copying, ...] = ()

    @property
    def issue(self) -> Issue:
        return self.issues[-1]

    @property
    def set(self) -> ProblemSet:
        return self.issue.set

    @property
    def house(self) -> House:
        return self.issue.house

    @property
    def is_exam(self) -> bool:
        return bool(self.issues) and self.set.exam is not None

    @property
    def is_draft(self) -> bool:
        """Whether none of its papers was ever handed out."""
        return bool(self.issues) and self.issue.draft

    @cached_property
    def editions(self) -> tuple[Edition, ...]:
        """Every edition there ever was, in their order."""
        return tuple(edition for each in self.printings for edition in each.editions)

    @cached_property
    def held(self) -> dict[tuple[str, bool], Edition]:
        """The last edition of everybody there ever was, as `edition.current` has them."""
        return current(self.editions, self.is_exam)

    @cached_property
    def current(self) -> tuple[Edition, ...]:
        """The editions of the class as it is, in the order of the print run.

        Of an exam's version the usual print, and the large one where somebody needs it so.
        """
        if not self.set.exam:
            return tuple(self.held[student.id, False] for student in self.students)
        large = large_letters(self.students, self.letters)
        wanted = (
            (letter, big)
            for letter in self.set.exam.letters
            for big in (False, True)
            if not big or letter in large
        )
        return tuple(self.held[place] for place in wanted)

    @cached_property
    def versions(self) -> tuple[Version, ...]:
        """What is to be printed once each."""
        return tuple(version_of(edition, self.is_exam) for edition in self.current)

    @cached_property
    def issue_of(self) -> dict[str, int]:
        """The place of the issue under which each edition was printed, by code."""
        return {e.code: each.issue for each in self.printings for e in each.editions}

    @property
    def letter_of(self) -> dict[str, str]:
        """The version of an exam that each student gets, by id."""
        ids = (student.id for student in self.students)
        return dict(zip(ids, self.letters, strict=True)) if self.letters else {}


def large_letters(students: tuple[Student, ...], letters: tuple[str, ...]) -> frozenset[str]:
    """The versions of an exam that are needed in large print too."""
    rows = zip(letters, students, strict=True)
    return frozenset(letter for letter, student in rows if student.large)


def require_no_layouts(record: Record, where: str) -> None:
    """Raises InputError for a record that carries page layouts, which nobody has vouched for."""
    if record.house.layouts:
        found = ", ".join(name for name, _ in record.house.layouts)
        mend = "layouts decide what TeX does on this machine: read them, or ask whom they are from"
        expected = "a record without page layouts of its own"
        raise InputError([Fault(where, "layouts", found, expected, mend, TrustLayouts())])
