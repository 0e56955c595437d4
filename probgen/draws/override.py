"""Values a person states in place of drawn ones, such as `d = "35 cm"`."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal, localcontext
from fractions import Fraction
from typing import Final

from probgen.bank.template import Derived, Given, Template
from probgen.draws.draw import Draw, completed
from probgen.input.fault import Faults, nearest, one_of
from probgen.quantities.dimension import phrase
from probgen.quantities.expression import Number
from probgen.quantities.parser import ExpressionError, parse
from probgen.quantities.symbol import unmarked
from probgen.quantities.unit import Unit

_FIGURES: Final = 12
_FURTHEST: Final = 1000
"""Times the largest value drawn; figures are to scale, and further out they are all one point."""


def with_values(
    template: Template, start: Draw, stated: Mapping[str, str], where: str = "values"
) -> tuple[Draw, tuple[str, ...]]:
    """The draw with the stated values put in and the derived quantities computed anew.

    A bare number is in the quantity's own unit.  Returns the draw and remarks on values outside the
    range that is drawn from.  Raises InputError, all faults at once; `where` names their source.
    """
    faults = Faults(where)
    quantities: dict[str, Given | Derived] = {given.id: given for given in template.givens}
    quantities |= {each.id: each for each in template.derived}
    chosen = {given.id: start.values[given.id].value for given in template.givens}
    for id, text in stated.items():
        if id not in quantities:
            mend = _by_symbol(template, id) or nearest(id, quantities)
            faults.add(id, text, one_of(quantities, "the quantities "), mend)
        elif (value := _stated(quantities[id], text, faults)) is not None:
            chosen[id] = value
    faults.settle()
    try:
        made = completed(template, chosen)
    except ArithmeticError as error:
        faults.add(", ".join(stated), None, "values the derived quantities can have", str(error))
        faults.settle()
        raise
    return made, tuple(filter(None, (_remark(g, made.values[g.id]) for g in template.givens)))


def _by_symbol(template: Template, symbol: str) -> str:
    """A suggestion for one who names a quantity as the page prints it."""
    ids = [each.id for each in template.givens] + [each.id for each in template.derived]
    named = [id for id in ids if unmarked(template.labels.quantities[id].symbol) == symbol]
    return f'{symbol} is the symbol of "{named[0]}"' if named else ""


def _stated(quantity: Given | Derived, text: str, faults: Faults) -> Decimal | None:
    """The value in the quantity's own unit; None after a fault."""
    unit = quantity.unit
    expected = f"{phrase(unit.dimension)}: a number in {unit.plain or 'plain figures'}"
    expected += ", or with its unit" if unit.plain else ""
    try:
        number = parse(text, {})
    except ExpressionError as error:
        faults.add(quantity.id, text, expected, str(error))
        return None
    if not isinstance(number, Number):
        faults.add(quantity.id, text, expected)
        return None
    value = _in_unit(quantity, number, expected, text, faults)
    if value is not None and isinstance(quantity, Given):
        largest = max((abs(each) for each in quantity.choices), default=Decimal(0))
        most = _FURTHEST * max(largest, Decimal(1))
        if abs(value) > most:
            found = f"at most {most:f} {unit.plain}, {_FURTHEST} times what is drawn"
            faults.add(quantity.id, text, found)
            return None
    return value


def _in_unit(
    quantity: Given | Derived, number: Number, expected: str, text: str, faults: Faults
) -> Decimal | None:
    """The number in the quantity's own unit; None after a fault."""
    unit = quantity.unit
    if number.unit is None or number.unit == unit:
        return number.value
    if number.unit.dimension != unit.dimension:
        mend = f"{number.unit.name} is a unit of {number.unit.dimension.noun}"
        faults.add(quantity.id, text, expected, mend)
        return None
    return _converted(number.value, number.unit, unit)


def _converted(value: Decimal, old: Unit, new: Unit) -> Decimal:
    """The value in the new unit: exact where it is a finite decimal, to twelve figures if not."""
    size = Fraction(value) * old.size / new.size
    with localcontext(prec=_FIGURES):
        found = Decimal(size.numerator) / Decimal(size.denominator)
    return found.quantize(Decimal(1)) if found == found.to_integral_value() else found


def _remark(given: Given, number: Number) -> str:
    lowest, highest = given.choices[0], given.choices[-1]
    if lowest <= number.value <= highest:
        return ""
    unit = f" {given.unit.plain}" if given.unit.plain and not given.unit.tight else given.unit.plain
    return (
        f"{given.id} = {number.value}{unit} lies outside the range the template draws from, "
        f"{lowest}{unit} to {highest}{unit}"
    )
