"""An exam: a few versions of a set, and the pile in which they are dealt out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from probgen.course.roster import Student
from probgen.course.seating import dealt, neighbours, places_of
from probgen.input.table import Table

_LETTERS: Final = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_FEWEST: Final = 1
_USUAL: Final = 2
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
    usual = Exam(_USUAL)
    found = Exam(
        versions=table.whole("versions", _FEWEST, MOST_VERSIONS),
        row=table.whole("row", 1, 1000, usual.row),
        spare=table.whole("spare", 0, 1000, usual.spare),
        cover=table.flag("cover", usual.cover),
        notes=table.texts("notes"),
    )
    table.close()
    return found


def deal(
    exam: Exam, students: Sequence[Student], letters: Sequence[str]
) -> Iterator[tuple[str, Student | None]]:
    """The pile of an exam's papers: each with the student who is to get it, then the spare ones.

    letters: the version each student gets.
    """
    yield from zip(letters, students, strict=True)
    for place in range(exam.spare):
        yield exam.letters[place % exam.versions], None


def letters_for(
    exam: Exam, students: Sequence[Student], kept: Mapping[str, str]
) -> tuple[str, ...]:
    """The version of each student: as the class list says, else as kept, else dealt by the seats.

    kept: the versions of those, by id, who were told theirs before; newcomers among them get one
    that no neighbour has, where there is one.
    """
    places = places_of(students, exam.row)
    pattern = [exam.letters[version] for version in dealt(places, exam.versions)]
    fixed = {
        place: letter
        for place, student in zip(places, students, strict=True)
        if (letter := _fixed(exam, student, kept))
    }
    if not fixed:
        return tuple(pattern)
    found = []
    for place, letter in zip(places, pattern, strict=True):
        if place not in fixed:
            start = exam.letters.index(letter)
            turned = exam.letters[start:] + exam.letters[:start]
            near = [fixed.get(each) for each in neighbours(place, exam.versions)]
            # Those beside in the row come first: they see most of each other's papers.
            fixed[place] = min(turned, key=lambda each: (each in near[:2], near.count(each)))
        found.append(fixed[place])
    return tuple(found)


def _fixed(exam: Exam, student: Student, kept: Mapping[str, str]) -> str:
    """The version that a student is to have whatever the seats are, "" for none."""
    wanted = student.version.upper() or kept.get(student.id, "")
    return wanted if wanted in exam.letters else ""
