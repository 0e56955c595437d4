"""A class by its sections: which there are, and the part of a record that one of them has.

A student without a section is of the section "", which no assignment file can name.
A student's section is the one their paper says; on an exam's papers stands none, and the class
list's counts.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from probgen.course.assignment import ProblemSet
from probgen.course.edition import Edition
from probgen.course.file_name import file_name
from probgen.course.record import Record
from probgen.course.roster import Student
from probgen.input.fault import Faults, nearest, one_of

_DEVICE: Final = re.compile("con|prn|aux|nul|(com|lpt)[0-9]")
"""Names that no folder can have on Windows."""


def sections_of(record: Record) -> tuple[str, ...]:
    """The sections of the class as it is, in the order of the print run; "" for who has none."""
    return tuple(dict.fromkeys(_section(record, student) for student in record.students))


def part_of(record: Record, section: str) -> Record:
    """The record of one section: its students, their editions, its problems and its day."""
    rows = list(zip(record.students, record.letters or [""] * len(record.students), strict=True))
    own = [(student, letter) for student, letter in rows if _section(record, student) == section]
    students, letters = zip(*own, strict=True)
    whole = record.set
    templates = tuple(record.issue.templates[place] for place in whole.places_in(section))
    issue = replace(record.issue, set=whole.for_section(section), templates=templates)
    printings = record.printings
    if not record.is_exam:
        last = _last_sections(record.editions)
        printings = tuple(
            replace(each, editions=tuple(e for e in each.editions if last[e.code] == section))
            for each in printings
        )
    return replace(
        record,
        issues=(*record.issues[:-1], issue),
        printings=printings,
        students=students,
        letters=letters if record.letters else (),
        copying=(),
    )


def _last_sections(editions: Sequence[Edition]) -> dict[str, str]:
    """For each code the section of the last edition that took its paper's place."""
    last: dict[str, str] = {}
    for edition in reversed(editions):
        last.setdefault(edition.code, edition.section)
        last.setdefault(edition.follows, last[edition.code])
    return last


def judge_sections(
    problem_set: ProblemSet,
    students: Sequence[Student],
    earlier: Record,
    listed: str,
    faults: Faults,
) -> None:
    """Notes where sections are named that there are not, or one gets no problem.

    listed: names the class list in messages.  A section counts also where its students have left:
    it stands on papers of the earlier record.
    """
    known = {student.section for student in students}
    known |= {edition.section for edition in earlier.editions}
    known.discard("")
    expected = one_of(sorted(known), "a section of the class list: ")
    if not known:
        expected = f"a class list with sections: {listed} has no column Section, or it is empty"
    for field, name in problem_set.sections_named:
        if name not in known:
            faults.add(field, name, expected, nearest(name, known))
    for name in dict.fromkeys(student.section for student in students):
        if not problem_set.places_in(name):
            own = f"section {name}" if name else "students without a section"
            mend = "add it to the sections of a problem, or leave sections out of one"
            faults.add("problem", None, f"a problem for {own} too", mend)


def folder_names(sections: Iterable[str]) -> dict[str, str]:
    """A folder's name for each section, no two of them alike on any system."""
    names: dict[str, str] = {}
    for section in sections:
        plain = name = file_name(section) or "without-section"
        if _DEVICE.fullmatch(name):
            plain = name = f"section-{name}"
        count = 1
        while name in names.values():
            count += 1
            name = f"{plain}-{count}"
        names[section] = name
    return names


def _section(record: Record, student: Student) -> str:
    return student.section if record.is_exam else record.held[student.id, False].section
