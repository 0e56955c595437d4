"""One student's numbers for one problem: drawn by key, or set by hand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import gcd
from typing import Final

from probgen.bank.template import Template
from probgen.draws.exact_value import exact_value, in_unit
from probgen.draws.keyed_choice import keyed_choice
from probgen.quantities.expression import Number

FREE_ATTEMPTS: Final = 32
"""So many attempts draw each given on its own; later ones walk through all sets of values."""


@dataclass(frozen=True, slots=True)
class Draw:
    """The givens and derived quantities of one problem, printed digits in the template's units."""

    template_id: str
    revision: int
    values: Mapping[str, Number]

    def coherent(self) -> dict[str, float]:
        """The values in metres, kilograms, seconds, newtons and degrees."""
        return {id: float(exact_value(number, {})) for id, number in self.values.items()}


Values = tuple[Decimal, ...]
"""One value for each given of a template."""


def values_of(template: Template, each: Draw) -> Values:
    """The values of the givens, in their order: what no two students are to have alike."""
    return tuple(each.values[given.id].value for given in template.givens)


def draw(template: Template, seed: str, student: str, attempt: int = 0) -> Draw:
    """The draw of one student, the same for the same arguments wherever it is made.

    Each later attempt gives other numbers; from `FREE_ATTEMPTS` on the attempts take every set of
    givens there is once, in an order that is the student's own.
    Raises ArithmeticError when a derived quantity has no value for these givens.
    """
    key = (seed, student, template.id, template.revision)
    if attempt < FREE_ATTEMPTS:
        places = [keyed_choice(len(g.choices), *key, g.id, attempt) for g in template.givens]
    else:
        places = _walked(template, key, attempt - FREE_ATTEMPTS)
    chosen = {
        given.id: given.choices[place] for given, place in zip(template.givens, places, strict=True)
    }
    return completed(template, chosen)


def completed(template: Template, chosen: Mapping[str, Decimal]) -> Draw:
    """The draw with these values of the givens, in their units, and all derived quantities.

    A derived quantity that is among `chosen` keeps the value stated.
    Raises ArithmeticError when a derived quantity has no value.
    """
    values = {given.id: Number(chosen[given.id], given.unit) for given in template.givens}
    known = {id: Fraction(n.value) * (n.unit.size if n.unit else 1) for id, n in values.items()}
    for each in template.derived:
        stated = chosen.get(each.id)
        found = in_unit(exact_value(each.expression, known), each.unit, each.round)
        values[each.id] = Number(found if stated is None else stated, each.unit)
        known[each.id] = Fraction(values[each.id].value) * each.unit.size
    return Draw(template.id, template.revision, values)


def _walked(template: Template, key: tuple[str | int, ...], step: int) -> list[int]:
    """The choices at one step of the student's own walk through all sets of values."""
    room = template.room
    start = keyed_choice(room, *key, "walk")
    stride = keyed_choice(room, *key, "stride") + 1
    while gcd(stride, room) != 1:
        stride += 1
    place = (start + step * stride) % room
    places = []
    for given in template.givens:
        place, here = divmod(place, len(given.choices))
        places.append(here)
    return places
