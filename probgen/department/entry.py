"""A template as a bank lists it: what it asks and teaches, how long it takes, how it was used."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from probgen.bank.template import Template
from probgen.statics.system import Find, Form, System


@dataclass(frozen=True, slots=True)
class Entry:
    """The newest revision of a template, and its past.

    asks: the kinds of what is asked ("force", "direction"); minutes: 0 where nobody said.
    last: the day of its last use, None for none; facility: as `uses.facility_of` has it.
    """

    id: str
    revision: int
    title: str
    family: str
    level: int
    goals: tuple[str, ...]
    asks: tuple[str, ...]
    minutes: int
    licence: str
    times: int = 0
    students: int = 0
    last: date | None = None
    facility: float | None = None


def entry_of(template: Template) -> Entry:
    """What the template's own file says."""
    return Entry(
        template.id,
        template.revision,
        template.title,
        template.family,
        template.level,
        template.goals,
        tuple(dict.fromkeys(_asked(template.system))),
        template.origin.minutes,
        template.origin.licence,
    )


def _asked(system: System) -> Iterator[str]:
    for find in system.finds:
        yield from _kinds(system, find)


def _kinds(system: System, find: Find) -> Iterator[str]:
    """The kinds of quantity that one question asks, and what else about them."""
    if find.quantity in system.variables:
        yield system.variables[find.quantity].dimension.noun
    elif find.form in (Form.COMPONENTS, Form.MAGNITUDE_AND_DIRECTION):
        yield "force"
    if find.form is Form.MAGNITUDE_AND_DIRECTION:
        yield "direction"
    elif find.form is not Form.VALUE:
        yield find.form.value
