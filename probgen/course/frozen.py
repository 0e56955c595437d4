"""Templates as a record keeps them, read again and held against the numbers drawn from them."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.course.edition import Edition
from probgen.course.issue import FrozenTemplate, Issue
from probgen.course.shares import judge_shares
from probgen.draws.draw import Draw, completed
from probgen.input.fault import Faults
from probgen.problem.lookup import with_pivot
from probgen.problem.problem import Problem, prepare
from probgen.quantities.unit import UnitSystem

_MEND = "take the record.json of a build, unchanged"


def frozen_problems(issue: Issue, editions: Sequence[Edition], where: str) -> tuple[Problem, ...]:
    """The problems of an issue, ready to be worked for its editions.

    where: names the record in messages.  Raises InputError where a template cannot be read, or a
    draw is none that it gives.
    """
    convention = issue.set.convention
    problems, faults = [], Faults(where)
    for place, (frozen, assigned) in enumerate(
        zip(issue.templates, issue.set.problems, strict=True)
    ):
        draws = tuple(edition.draws[place] for edition in editions)
        template = _template(frozen, draws, where, convention.units)
        pivoted = with_pivot(template, assigned.pivot, where, frozen.template_id)
        problems.append(prepare(pivoted, convention))
        judge_shares(problems[-1], assigned, frozen.template_id, faults)
    faults.settle()
    return tuple(problems)


def _template(
    frozen: FrozenTemplate, draws: Sequence[Draw], where: str, units: UnitSystem
) -> Template:
    inside = f"{where}: {frozen.template_id}"
    template = read_template(frozen.source, inside, units)
    require_drawn_from(template, frozen, draws, inside)
    return template


def require_drawn_from(
    template: Template, frozen: FrozenTemplate, draws: Sequence[Draw], where: str
) -> None:
    """Raises InputError where the draws kept are none that this template gives.

    where: names the template's text in messages.
    """
    faults = Faults(where)
    if (template.id, template.revision) != (frozen.template_id, frozen.revision):
        found = f"{template.id}, revision {template.revision}"
        expected = f"{frozen.template_id}, revision {frozen.revision}"
        faults.add("source", found, expected, _MEND)
    units = {given.id: given.unit for given in template.givens}
    units |= {each.id: each.unit for each in template.derived}
    for draw in draws[:1]:
        if {name: number.unit for name, number in draw.values.items()} != units:
            found = ", ".join(draw.values)
            faults.add("values", found, f"{', '.join(units)}, each in its unit", _MEND)
    faults.settle()
    choices = {given.id: frozenset(map(str, given.choices)) for given in template.givens}
    for place, draw in enumerate(draws):
        _judge_draw(template, draw, choices, place, faults)
    faults.settle()


def _judge_draw(
    template: Template,
    draw: Draw,
    choices: Mapping[str, Collection[str]],
    place: int,
    faults: Faults,
) -> None:
    drawn = {name: str(number.value) for name, number in draw.values.items()}
    strange = [name for name, listed in choices.items() if drawn[name] not in listed]
    if not strange:
        strange = _underivable(template, draw)
    for name in strange:
        faults.add(f"values.{name}.drawn[{place}]", drawn[name], "a value that can be drawn", _MEND)


def _underivable(template: Template, draw: Draw) -> list[str]:
    """The derived quantities that do not follow from the givens drawn."""
    derived = [each.id for each in template.derived]
    if not derived:
        return []
    given = {each.id: draw.values[each.id].value for each in template.givens}
    try:
        values = completed(template, given).values
    except ArithmeticError:
        return derived
    return [id for id in derived if str(values[id].value) != str(draw.values[id].value)]
