"""A draw taken over by another revision of its template, where that can still give it."""

from __future__ import annotations

from probgen.bank.template import Template
from probgen.draws.draw import Draw, completed


def kept_draw(template: Template, earlier: Draw) -> Draw | None:
    """The same numbers, with the template's digits and derived quantities; None for none.

    None where a given is new or in another unit, its value is none of those that are drawn, or a
    derived quantity has none.  Whether the draw is fit for use is not asked here.
    """
    chosen = {}
    for given in template.givens:
        number = earlier.values.get(given.id)
        if number is None or number.unit != given.unit or number.value not in given.choices:
            return None
        chosen[given.id] = given.choices[given.choices.index(number.value)]
    try:
        return completed(template, chosen)
    except ArithmeticError:
        return None
