"""An exam: a few versions of a set, and the pile in which they are dealt out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from probgen.course.roster import Student
from probgen.course.seating import dealt, places_of
from probgen.input.table import Table

_LETTERS: Final = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_FEWEST: Final = 2
MOST_VERSIONS: Final = len(_LETTERS)


@dataclass(frozen=True, slots=True)
class Exam:
    """Some versions of a set, in place of one for each student; nobody's name is on them.

    versions: how many, called A, B, C ...; row: seats in a row, where the class list has no seats,
    0 for one long row; spare: copies beyond one for each student.
    cover: each paper begins with a page to write the name on; notes: what it says, one by one.
    """

    versions: int
    row: int = 0
    spare: int = 0
    cover: bool = True
    notes: tuple[str, ...] = ()

    @property
    def letters(self) -> str:
        """The names of the versions, one letter each."""
        return _LETTERS[: self.versions]


def read_exam(table: Table) -> Exam:
    """The exam of an assignment file's [exam]; notes its faults.  Closes the table."""
    usual = Exam(_FEWEST)
    found = Exam(
        versions=table.whole("versions", _FEWEST, MOST_VERSIONS),
        row=table.whole("row", 1, 1000, usual.row),
        spare=table.whole("spare", 0, 1000, usual.spare),
        cover=table.flag("cover", usual.cover),
        notes=table.texts("notes"),
    )
    table.close()
    return found


def deal(exam: Exam, students: Sequence[Student]) -> Iterator[tuple[str, Student | None]]:
    """The pile of an exam's papers: each with the student who is to get it, then the spare ones."""
    places = places_of(students, exam.row)
    for version, student in zip(dealt(places, exam.versions), students, strict=True):
        yield exam.letters[version], student
    for place in range(exam.spare):
        yield exam.letters[place % exam.versions], None
