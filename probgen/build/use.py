"""What a build notes in the banks that it drew from: which templates were set, to how many."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from probgen.bank.bank_folder import bank_of
from probgen.bank.release import text_digest
from probgen.bank.template import Template
from probgen.bank.uses import Use, note_uses
from probgen.course.record import Record
from probgen.input.fault import InputError
from probgen.input.outside import OutsideError


def note_use(record: Record, templates: Sequence[Template], day: date) -> tuple[str, ...]:
    """Writes a row for each template of a bank's folder; remarks on what could not be noted.

    A build is done when this comes, so that nothing here fails it.
    """
    remarks = []
    for bank, uses in uses_of(record, templates, day).items():
        try:
            note_uses(bank, uses)
        except (InputError, OutsideError, OSError) as error:
            said = error.failed if isinstance(error, OutsideError) else error
            remarks.append(f"what was set is not noted in {bank}: {said}")
    return tuple(remarks)


def uses_of(
    record: Record, templates: Sequence[Template], day: date
) -> Mapping[Path, Sequence[Use]]:
    """The uses of a set's templates by the folder of their bank; those of no such bank are none."""
    found: dict[Path, list[Use]] = {}
    for place, template in enumerate(templates):
        bank = bank_of(Path(template.path))
        use = use_of(record, place, day)
        if bank and use.students:
            found.setdefault(bank, []).append(use)
    return found


def use_of(record: Record, place: int, day: date) -> Use:
    """The use of the template at a place of a record's set, from 0."""
    frozen = record.issue.templates[place]
    return Use(
        day=day,
        course=record.set.course,
        assignment=record.set.title,
        kind="exam" if record.is_exam else "homework",
        template=frozen.template_id,
        revision=frozen.revision,
        text=text_digest(frozen.source),
        students=sum(place in record.set.places_in(each.section) for each in record.students),
    )
