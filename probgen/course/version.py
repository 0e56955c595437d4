"""What is printed once each: a student's own paper, or a letter of an exam, in its last edition."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass

from probgen.course.edition import Edition
from probgen.course.issue import Erratum
from probgen.course.roster import Student
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
    def repeats(self) -> bool:
        """Whether it is another version in large print, with the same key."""
        return bool(self.letter) and self.large


def version_of(edition: Edition, exam: bool) -> Version:
    """An edition as it is printed: of an exam it has a letter, else a student."""
    student = Student("", "") if exam else _student(edition)
    return Version(
        edition.code,
        file_name(edition, exam),
        student,
        edition.draws,
        edition.owner if exam else "",
        edition.large,
        edition.errata,
    )


def _student(edition: Edition) -> Student:
    """The one whose paper it is, as the paper names them."""
    return Student(edition.name, edition.owner, edition.section, large=edition.large)


def file_name(edition: Edition, exam: bool) -> str:
    """A file name, without ending: name, id and code, or letter and code."""
    own = ["version", edition.owner.lower()]
    if not exam:
        own = [_slug(edition.name), _slug(edition.owner)]
    return "-".join(filter(None, [*own, edition.code, "large" if edition.large else ""]))


def _slug(text: str) -> str:
    """Lower-case ASCII letters, digits and hyphens; empty when nothing of the text is left."""
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:40].rstrip("-")
