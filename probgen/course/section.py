"""A class by its sections: which there are, and the part of a record that one of them has.

A student's section is the one their paper says; on an exam's papers stands none, and the class
list's counts.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from probgen.course.file_name import file_name
from probgen.course.record import Record
from probgen.course.roster import Student


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
        printings = tuple(
            replace(each, editions=tuple(e for e in each.editions if e.section == section))
            for each in printings
        )
    return replace(
        record,
        issues=(*record.issues[:-1], issue),
        printings=printings,
        students=students,
        letters=letters if record.letters else (),
    )


def folder_names(sections: Iterable[str]) -> dict[str, str]:
    """A folder's name for each section, no two of them alike on any system."""
    names: dict[str, str] = {}
    for section in sections:
        plain = name = file_name(section) or "without-section"
        count = 1
        while name in names.values():
            count += 1
            name = f"{plain}-{count}"
        names[section] = name
    return names


def _section(record: Record, student: Student) -> str:
    return student.section if record.is_exam else record.held[student.id, False].section
