"""Numbers that students had in other assignments: new ones are drawn around them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from probgen.bank.template import Template
from probgen.draws.draw import Draw, Values, values_of


@dataclass(frozen=True, slots=True)
class Had:
    """One problem's numbers, and whose they were.

    owner: a student's id; "" for what anybody may have had, such as a version of an exam.
    """

    owner: str
    draw: Draw

    @property
    def key(self) -> tuple[str, str, tuple[tuple[str, str, str], ...]]:
        """By which the same numbers of the same owner are known; printings of a paper are alike."""
        values = (
            (name, str(number.value), number.unit.name if number.unit else "")
            for name, number in self.draw.values.items()
        )
        return self.draw.template_id, self.owner, tuple(values)


def each_once(had: Iterable[Had]) -> tuple[Had, ...]:
    """Without those that come again, in an order that follows from what they are."""
    return tuple(found for _, found in sorted({each.key: each for each in had}.items()))


def values_had(had: Iterable[Had], template: Template) -> dict[str, set[Values]]:
    """By owner, the sets of values that a template might give again, in its units."""
    units = {given.id: given.unit for given in template.givens}
    found: dict[str, set[Values]] = {}
    for each in had:
        values = each.draw.values
        alike = all(id in values and values[id].unit == unit for id, unit in units.items())
        if each.draw.template_id == template.id and alike:
            found.setdefault(each.owner, set()).add(values_of(template, each.draw))
    return found
