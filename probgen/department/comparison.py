"""Two states of a template held against each other: what is other, and of which kind.

Physics is compared by fingerprint, so that no rewording hides another sign, and no renaming looks
like one.  What is left over when all that can be told apart is, counts as reworded.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import replace
from typing import Final

from probgen.bank.reading import in_each_system
from probgen.bank.template import Template
from probgen.department.change import Change, Difference, Kind, Marks
from probgen.department.trial import trials
from probgen.input.fault import Faults, InputError
from probgen.input.table import Table
from probgen.input.toml import parse_toml
from probgen.problem.problem import prepare
from probgen.statics.fingerprint import fingerprint
from probgen.working.convention import Convention
from probgen.working.scheme import scheme

_POINTS: Final = 100
"""Of a problem, when what its steps are worth is compared."""
_NUMBERED: Final = ("id", "revision")
"""Fields that say which template and revision a file is, and nothing of it."""


def compare(before: Template, after: Template) -> Change:
    """What is other in a template, both as read in SI; it may have another id, where renamed."""
    kinds = _kinds(before, after)
    marks = (_marks(before), _marks(after)) if Kind.MARKS in kinds else ()
    return Change(
        after.id,
        before.id if before.id != after.id else "",
        (before.revision, after.revision),
        kinds,
        tuple(_differences(_fields(before), _fields(after))) if kinds else (),
        trials(before, after) if Kind.PHYSICS in kinds else (),
        marks,
    )


def _kinds(before: Template, after: Template) -> tuple[Kind, ...]:
    if _unnumbered(before.source) == _unnumbered(after.source):
        return ()
    facets, others = _facets(before), _facets(after)
    kinds = [kind for kind in facets if facets[kind] != others[kind]]
    if Kind.PHYSICS not in kinds and _marks(before) != _marks(after):
        kinds.append(Kind.MARKS)
    if not kinds:
        kinds = [Kind.LAYOUT if _whole(before) == _whole(after) else Kind.WORDS]
    return tuple(kind for kind in Kind if kind in kinds)


def _unnumbered(source: str) -> str:
    """A template's text without the lines that say which it is."""
    lines = source.splitlines()
    return "\n".join(line for line in lines if line.partition("=")[0].strip() not in _NUMBERED)


def _facets(template: Template) -> dict[Kind, object]:
    """What is compared by kind; equal where nothing of that kind is other."""
    systems = list(_in_each_system(template))
    system = template.system
    said = [(each.title, each.statement, each.labels) for each in systems]
    asked = [{v.id: v.unit.name for v in each.system.variables.values()} for each in systems]
    drawn = [(each.givens, each.derived) for each in systems]
    required = [(each.left, each.relation, each.right) for each in template.requirements]
    shown = (system.points, system.bodies, template.labels.plan)
    reasons = [each.because for each in template.requirements]
    return {
        Kind.PHYSICS: fingerprint(system),
        Kind.NUMBERS: (drawn, asked, required),
        Kind.WORDS: (said, template.cautions),
        Kind.FIGURE: (template.depicts, template.picture, shown),
        Kind.PARTICULARS: (
            template.family, template.level, template.goals, template.origin, reasons,
            template.varying,
        ),
    }  # fmt: skip


def _in_each_system(template: Template) -> Iterator[Template]:
    """As read for each system of units that it is written for and has no fault in."""
    with suppress(InputError):
        yield from in_each_system(template)


def _marks(template: Template) -> Marks:
    """What points are given for in the usual method; nothing where it cannot be solved."""
    try:
        problem = prepare(template, Convention())
    except InputError:
        return ()
    marks = scheme(problem.plan, problem.convention, _POINTS)
    return tuple((" and ".join(mark.kinds), mark.points) for mark in marks)


def _whole(template: Template) -> Template:
    return replace(template, id="", revision=1, source="", path="")


def _fields(template: Template) -> dict[str, str]:
    """Every field of a template's file by its path, as it is typed."""
    return dict(_leaves(Table(parse_toml(template.source, template.path), "", Faults(""))))


def _leaves(table: Table) -> Iterator[tuple[str, str]]:
    for key, value in table.content.items():
        path = table.field(key)
        if isinstance(value, Mapping):
            yield from _leaves(Table(value, path, table.faults))
        elif isinstance(value, list) and any(isinstance(each, Mapping) for each in value):
            for place, each in enumerate(value):
                yield from _leaves(Table(each, f"{path}[{place}]", table.faults))
        elif isinstance(value, list):
            yield path, ", ".join(map(str, value))
        else:
            yield path, str(value).strip()


def _differences(before: Mapping[str, str], after: Mapping[str, str]) -> Iterator[Difference]:
    for field in dict.fromkeys((*before, *after)):
        old, new = before.get(field, ""), after.get(field, "")
        if old != new and field not in _NUMBERED:
            yield Difference(field, old, new)
