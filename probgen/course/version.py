"""The versions of a set: one for each student, or a few that an exam's neighbours share out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from probgen.course.exam import Exam, deal
from probgen.course.file_name import file_name
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
    return tuple(
        Version(number, code, file_name(each.name, each.id, code=code), each, large=each.large)
        for number, (code, each) in enumerate(zip(codes, students, strict=True))
    )


def versions_of_exam(
    exam: Exam, students: Sequence[Student], codes: Sequence[str]
) -> tuple[Version, ...]:
    """The versions of an exam, each in large print too where somebody needs it so."""
    made = []
    large = {letter for letter, student in deal(exam, students) if student and student.large}
    for number, (letter, code) in enumerate(zip(exam.letters, codes, strict=True)):
        name = f"version-{letter}"
        made.append(Version(number, code, file_name(name, code=code), _NOBODY, letter))
        if letter in large:
            name = file_name(name, "large", code=code)
            made.append(Version(number, code, name, _NOBODY, letter, large=True))
    return tuple(made)


_NOBODY = Student("", "")
