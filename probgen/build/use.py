"""What a build notes in the banks that it drew from: which templates were set, to how many."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from pathlib import Path

from probgen.bank.bank_folder import bank_of
from probgen.bank.release import text_digest
from probgen.bank.template import Template
from probgen.bank.uses import Use, note_uses
from probgen.course.record import Record
from probgen.input.fault import InputError


def note_use(record: Record, templates: Sequence[Template], day: date) -> tuple[str, ...]:
    """Writes a row for each template of a bank's folder; remarks on what could not be noted.

    A build is done when this comes, so that nothing here fails it.
    """
    remarks = []
    for bank, uses in uses_of(record, templates, day).items():
        try:
            note_uses(bank, uses)
        except (InputError, OSError) as error:
            remarks.append(f"what was set is not noted in {bank}: {error}")
    return tuple(remarks)


def uses_of(
    record: Record, templates: Sequence[Template], day: date
) -> Mapping[Path, Sequence[Use]]:
    """The uses of a set's templates by the folder of their bank; those of no such bank are none."""
    found: dict[Path, list[Use]] = {}
    for place, template in enumerate(templates):
        bank = bank_of(Path(template.path))
        students = sum(_has(record, place))
        if bank and students:
            use = Use(
                day=day,
                course=record.set.course,
                assignment=record.set.title,
                kind="exam" if record.is_exam else "homework",
                template=template.id,
                revision=template.revision,
                text=text_digest(template.source),
                students=students,
            )
            found.setdefault(bank, []).append(use)
    return found


def _has(record: Record, place: int) -> Iterator[bool]:
    """Whether each student of the class has the problem at a place of the set."""
    for student in record.students:
        yield place in record.set.places_in(student.section)
