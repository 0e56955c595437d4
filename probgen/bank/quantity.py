"""The quantities a template declares: [given], [derived] and [unknown]."""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import replace
from decimal import Decimal
from typing import Final

from probgen.bank.bounds import Interval, bounds
from probgen.bank.labels import Label
from probgen.bank.scope import Scope, check_id, read_symbol
from probgen.bank.template import Derived, Given
from probgen.input.fault import nearest, one_of
from probgen.input.table import Table
from probgen.quantities.expression import Expression, Name, names_in
from probgen.quantities.unit import LENGTH, MASS, ONE, PLAIN, UNITS, Unit, unit_named
from probgen.statics.system import Role, Variable

MOST_CHOICES: Final = 10_000
_NEVER_NEGATIVE: Final = (LENGTH, MASS, PLAIN)


def read_givens(table: Table, scope: Scope) -> tuple[Given, ...]:
    """Every entry of [given], each declared in the scope."""
    givens = []
    for id, row in table.rows():
        before = len(row.faults.found)
        variable, label = _variable(row, id, Role.GIVEN)
        choices = _choices(row)
        if choices and choices[0] < 0 and variable.dimension == MASS:
            key = "choices" if row.has("choices") else "from"
            row.fault(key, choices[0], "a mass, which is never below zero")
        row.close()
        _declare(variable, label, row, scope, before)
        if choices:
            factor = variable.unit.factor
            scope.bounds[id] = (float(choices[0]) * factor, float(choices[-1]) * factor)
        givens.append(Given(id, variable.unit, choices))
    if not table.content:
        table.faults.add("given", None, "at least one quantity to draw", "add a [given] table")
    return tuple(givens)


def read_derived(table: Table, scope: Scope) -> tuple[Derived, ...]:
    """Every entry of [derived]; each may use the givens and the derived ones before it."""
    derived = []
    for id, row in table.rows():
        before = len(row.faults.found)
        variable, label = _variable(row, id, Role.DERIVED)
        expression = scope.expression(row, "is", variable.dimension)
        if "g" in names_in(expression):
            mend = "g is the course's own and not known yet; ask for it with [[find]] value = ..."
            row.fault("is", row.content["is"], "an expression in the givens alone", mend)
        step = row.decimal("round", required=False)
        if step is not None and step <= 0:
            row.fault("round", step, "a step above zero, such as 0.01")
        row.close()
        _declare(variable, label, row, scope, before)
        scope.bounds[id] = _rounded_bounds(bounds(expression, scope.bounds), variable.unit, step)
        derived.append(Derived(id, expression, step, variable.unit))
    return tuple(derived)


def read_unknowns(table: Table, scope: Scope) -> None:
    """Every entry of [unknown]: a position, an angle or a mass that is to be found.

    `from` and `to` are the bounds of what is physically possible.  A length or a plain number is
    not negative unless `from` is: a place left of the origin.
    """
    for id, row in table.rows():
        before = len(row.faults.found)
        variable, label = _variable(row, id, Role.UNKNOWN)
        variable = _bounded(row, variable, scope)
        row.close()
        _declare(variable, label, row, scope, before)
        least = 0.0 if variable.nonnegative else -math.inf
        scope.bounds[id] = (
            least if variable.low is None else variable.low,
            math.inf if variable.high is None else variable.high,
        )


def _bounded(row: Table, variable: Variable, scope: Scope) -> Variable:
    """The unknown with its bounds: numbers in its unit, or expressions in givens.

    Those of expressions are of all draws; what they are in each is kept beside them.
    """
    least, most = (_written_bound(row, key, variable, scope) for key in ("from", "to"))
    low = _stated(row, "from", variable) if least is None else bounds(least, scope.bounds)[0]
    high = _stated(row, "to", variable) if most is None else bounds(most, scope.bounds)[1]
    if low is not None and high is not None and high <= low:
        expected = f"a value above from, which is {row.content['from']}"
        row.fault("to", row.content["to"], expected)
    if low is not None and low < 0:
        if variable.dimension == MASS:
            row.fault("from", row.content["from"], "a mass, which is never below zero")
        variable = replace(variable, nonnegative=False)
    return replace(variable, low=low, high=high, least=least, most=most)


def _written_bound(row: Table, key: str, variable: Variable, scope: Scope) -> Expression | None:
    """The expression under `key`; None where there is none, but a number or nothing."""
    if not isinstance(row.content.get(key), str):
        return None
    written = scope.expression(row, key, variable.dimension)
    known = (Role.GIVEN, Role.DERIVED)
    if any(scope.variables[id].role not in known for id in names_in(written)):
        row.fault(key, row.content[key], "an expression in the givens alone")
    return written


def _stated(row: Table, key: str, variable: Variable) -> float | None:
    """The number under `key` in coherent units; None where there is none."""
    return _coherent(row.decimal(key, required=False), variable)


def check_used(table: Table, used: Collection[str]) -> None:
    """An unknown that nothing depends on could not be found."""
    for id in table.content:
        if id not in used:
            expected = "an unknown that a point, a load, a spring or a condition is written with"
            table.fault(id, id, expected, "use it, or leave it out")


def _coherent(value: Decimal | None, variable: Variable) -> float | None:
    return None if value is None else float(value) * variable.unit.factor


def _rounded_bounds(found: Interval, unit: Unit, step: Decimal | None) -> Interval:
    """Bounds with room for rounding, of which four significant figures leave the sign as it is."""
    slack = float(step) / 2 * unit.factor if step else 0.0
    return found[0] - slack, found[1] + slack


def _variable(row: Table, id: str, role: Role) -> tuple[Variable, Label]:
    symbol = read_symbol(row, id) if check_id(row, id) else row.text("symbol", "")
    unit = read_unit(row)
    name = row.text("name", expected='what it is in words, such as "shelf length"')
    nonnegative = role is Role.UNKNOWN and unit.dimension in _NEVER_NEGATIVE
    variable = Variable(Name(id, symbol), unit.dimension, unit, role, nonnegative)
    return variable, Label(symbol, name, row.text("measured", ""))


def _declare(variable: Variable, label: Label, row: Table, scope: Scope, before: int) -> None:
    scope.declare(variable, label, row)
    if len(row.faults.found) > before:
        scope.doubtful.add(variable.id)
    if any(fault.field == row.path for fault in row.faults.found):  # its name is none
        scope.whole = False


def read_unit(row: Table) -> Unit:
    """The unit of a row; the plain unit stands in after a fault."""
    text = row.text("unit", expected='a unit, such as "m" ("1" for a plain number)')
    if not text:
        return ONE
    try:
        return unit_named(text)
    except ValueError:
        row.fault("unit", text, one_of(UNITS, "the units "), nearest(text, UNITS))
        return ONE


def _choices(row: Table) -> tuple[Decimal, ...]:
    """The values a given may take: a list, or from ... to ... in steps."""
    if row.has("choices"):
        for key in ("from", "to", "step"):
            if row.has(key):
                row.fault(key, row.content[key], "either choices or from, to and step, not both")
        values = row.decimals("choices")
        if len(set(values)) < len(values):
            row.fault("choices", row.content["choices"], "every value once", "drop the repeats")
        return tuple(sorted(values))
    first, last, step = row.decimal("from"), row.decimal("to"), row.decimal("step")
    if first is None or last is None or step is None:
        return ()
    return _range(row, first, last, step)


def _range(row: Table, first: Decimal, last: Decimal, step: Decimal) -> tuple[Decimal, ...]:
    if step <= 0:
        row.fault("step", step, "a step above zero")
        return ()
    if last < first:
        mend = f"from is {first}; swap the two"
        row.fault("to", last, "a value not below from (the range is empty)", mend)
        return ()
    count, left_over = divmod(last - first, step)
    if left_over:
        mend = f"the last value reached is {first + count * step}"
        row.fault("to", last, f"a whole number of steps of {step} above {first}", mend)
    if count >= MOST_CHOICES:
        row.fault("step", step, f"at most {MOST_CHOICES} values", "take a larger step")
        return ()
    digits = min(int(v.as_tuple().exponent) for v in (first, last, step))
    places = Decimal(1).scaleb(min(digits, 0))
    return tuple((first + i * step).quantize(places) for i in range(int(count) + 1))
