"""What is printed once each: a student's own paper, or a letter of an exam, in its last edition."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.course.edition import Edition
from probgen.course.file_name import file_name
from probgen.course.issue import Erratum
from probgen.course.roster import Student
from probgen.course.version_code import is_draft
from probgen.draws.draw import Draw


@dataclass(frozen=True, slots=True)
class Version:
    """What one paper and its key are made from.

    code: printed on it; name: of its files; draws: one for each problem.
    letter: of an exam's version; its student is nobody.  large: whether its sheet is in large
    print.  errata: the corrections it tells of.
    """

    code: str
    name: str
    student: Student
    draws: tuple[Draw, ...] = ()
    letter: str = ""
    large: bool = False
    errata: tuple[Erratum, ...] = ()

    @property
    def owner(self) -> str:
        """Whose it is, for messages."""
        if self.letter:
            return f"version {self.letter}"
        return f"{self.student.name} ({self.student.id})"

    @property
    def draft(self) -> bool:
        """Whether it is not to be handed out."""
        return is_draft(self.code)

    @property
    def repeats(self) -> bool:
        """Whether it is another version in large print, with the same key."""
        return bool(self.letter) and self.large


def version_of(edition: Edition, exam: bool) -> Version:
    """An edition as it is printed: of an exam it has a letter, else a student."""
    student = Student("", "") if exam else _student(edition)
    return Version(
        edition.code,
        name_of_files(edition, exam),
        student,
        edition.draws,
        edition.owner if exam else "",
        edition.large,
        edition.errata,
    )


def _student(edition: Edition) -> Student:
    """The one whose paper it is, as the paper names them."""
    return Student(edition.name, edition.owner, edition.section, large=edition.large)


def name_of_files(edition: Edition, exam: bool) -> str:
    """The name of a paper's files, without ending: name, id and code, or letter and code."""
    own = ("version", edition.owner) if exam else (edition.name, edition.owner)
    return file_name(*own, "large" if edition.large else "", code=edition.code)
