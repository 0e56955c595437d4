"""The folder of a new course: class list, house style, secret and a first assignment."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.build.example import (
    HOUSE,
    ROSTER,
    course_assignment,
    course_roster,
    course_style,
)
from probgen.course.assignment import ASSIGNMENT
from probgen.course.secret import SECRET, find_secret, write_secret
from probgen.input.fault import Fault, InputError
from probgen.input.file import require_nameable, write_beside
from probgen.input.text import is_seen, unfit

FIRST: Final = "week-1"
"""The folder of a course's first assignment."""
_COPY: Final = f"a copy of {FIRST}/{ASSIGNMENT} in a folder of its own beside {FIRST}"
_UNNAMED: Final = "Introductory Mechanics"


@dataclass(frozen=True, slots=True)
class NewCourse:
    """left: the files that were there already, and stay as they are."""

    folder: Path
    left: tuple[Path, ...]

    @property
    def roster(self) -> Path:
        return self.folder / ROSTER

    @property
    def style(self) -> Path:
        return self.folder / HOUSE

    @property
    def secret(self) -> Path:
        return self.folder / SECRET

    @property
    def assignment(self) -> Path:
        return self.folder / FIRST / ASSIGNMENT


def write_course(folder: Path) -> NewCourse:
    """Makes what a course begins with, as far as it is not there; nothing is written over.

    Raises InputError where all of it is there, no folder can be, or another course is around it.
    """
    require_nameable(folder, "folder of a course")
    _require_alone(folder)
    course = NewCourse(folder, ())
    own = folder.resolve().name
    texts = {
        course.roster: course_roster(),
        course.style: course_style(),
        course.assignment: course_assignment(own if is_seen(own) and not unfit(own) else _UNNAMED),
    }
    left = tuple(path for path in (*texts, course.secret) if os.path.lexists(path))
    if len(left) == len(texts) + 1:
        expected = "a folder that is no course yet"
        mend = f"edit what is there; another assignment is {_COPY}"
        raise InputError([Fault(str(folder), "", "a course", expected, mend)])
    for path, text in texts.items():
        if path not in left:
            write_beside(path, text.encode())
    write_secret(folder)
    return NewCourse(folder, left)


def _require_alone(folder: Path) -> None:
    around = folder.resolve()
    while around != around.parent and not around.exists():
        around = around.parent
    if around.exists() and not around.is_dir():
        found, expected = "a file", "the path of a folder, which may be there or not"
        raise InputError([Fault(str(around), "", found, expected, "take another name")])
    secret = find_secret(folder)
    if secret and secret.folder != folder.resolve():
        expected = "a folder that belongs to no course"
        mend = f"another assignment of that course is {_COPY}"
        found = f"a folder of the course in {secret.folder}"
        raise InputError([Fault(str(folder), "", found, expected, mend)])
