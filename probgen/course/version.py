"""The versions of a set: one for each student, or a few that an exam's neighbours share out."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from probgen.course.exam import Exam, deal
from probgen.course.roster import Student


@dataclass(frozen=True, slots=True)
class Version:
    """What one paper and its key are made from.

    number: which draw of each problem it has, from 0; code: printed on it; name: of its files.
    letter: of an exam's version; its student is nobody.  large: whether its sheet is in large
    print.
    """

    number: int
    code: str
    name: str
    student: Student
    letter: str = ""
    large: bool = False

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


def versions_of_class(students: Sequence[Student], codes: Sequence[str]) -> tuple[Version, ...]:
    """A version for each student, in their order."""
    rows = zip(codes, file_names(students), students, strict=True)
    return tuple(
        Version(number, code, name, student, large=student.large)
        for number, (code, name, student) in enumerate(rows)
    )


def versions_of_exam(
    exam: Exam, students: Sequence[Student], codes: Sequence[str]
) -> tuple[Version, ...]:
    """The versions of an exam, each in large print too where somebody needs it so."""
    made = []
    large = {letter for letter, student in deal(exam, students) if student and student.large}
    for number, (letter, code) in enumerate(zip(exam.letters, codes, strict=True)):
        name = f"version-{letter.lower()}"
        made.append(Version(number, code, name, _NOBODY, letter))
        if letter in large:
            made.append(Version(number, code, f"{name}-large", _NOBODY, letter, large=True))
    return tuple(made)


def file_names(students: Iterable[Student]) -> tuple[str, ...]:
    """A file name, without ending, for each student: place in the class, name, id."""
    listed = list(students)
    width = max(2, len(str(len(listed))))
    return tuple(
        "-".join(filter(None, (f"{place:0{width}}", _slug(student.name), _slug(student.id))))
        for place, student in enumerate(listed, start=1)
    )


_NOBODY = Student("", "")


def _slug(text: str) -> str:
    """Lower-case ASCII letters, digits and hyphens; empty when nothing of the text is left."""
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:40].rstrip("-")
