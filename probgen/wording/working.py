"""One step of the plan as lines of equations: balance, isolated, numbers put in, result."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from probgen.quantities.dimension import dimension_of
from probgen.quantities.expression import (
    ZERO,
    Expression,
    Name,
    Number,
    Quotient,
    evaluate,
)
from probgen.quantities.formula import Balance, Formula, Relation
from probgen.quantities.unit import Dimension
from probgen.statics.equation import Equation
from probgen.statics.plan import Step
from probgen.wording.block import Display, Row
from probgen.wording.digits import Digits


def working(digits: Digits, step: Step) -> Display:
    """The lines of one step, ending at its rounded result."""
    return Display((balance_row(digits, step.equation), *_result_rows(digits, step)))


def balance_row(digits: Digits, equation: Equation) -> Row:
    """Sum of ... = 0, or the condition as stated."""
    if equation.kind == "condition":
        left, right = equation.terms
        return Row((left.magnitude,), "=", (right.magnitude,))
    kind = "force" if equation.kind == "force" else digits.convention.turning
    balance: Formula = (equation.expression, Relation("="), ZERO)
    return Row((Balance(kind, equation.about),), "=", balance)


def _result_rows(digits: Digits, step: Step) -> Iterator[Row]:
    name = digits.case.system.variables[step.unknown].as_name
    yield from rows_of(digits, name, step.expression, step.unknown)


def rows_of(digits: Digits, left: Name, expression: Expression, id: str) -> Iterator[Row]:
    """left = expression = numbers put in = carried result -> final result."""
    variable = digits.case.system.variables[id]
    value = digits.case.values[id]
    guard = digits.guard_for(expression, value, variable.dimension)
    printed = digits.put_in(expression, guard)
    yield Row((left,), "=", (expression,))
    if not isinstance(printed, Number):
        yield Row((), "=", (printed,))
    between = _between(digits, printed, guard)
    if between is not None:
        yield Row((), "=", (between,))
    yield Row((), "=", result(digits, id, guard))


def result(digits: Digits, id: str, guard: int) -> Formula:
    """The carried value and, where it has more digits, the rounded one."""
    variable = digits.case.system.variables[id]
    carried = digits.carried(digits.case.values[id], variable.dimension, guard)
    final = digits.final(id)
    if carried == final or (carried.value == final.value and carried.unit in (final.unit, None)):
        return (final,)
    return (carried, Relation("→"), final)


def _between(digits: Digits, printed: Expression, guard: int) -> Expression | None:
    """A quotient with its top and bottom worked out, where either was more than one number."""
    if not isinstance(printed, Quotient):
        return None
    worked = Quotient(_one(digits, printed.top, guard), _one(digits, printed.bottom, guard))
    return None if worked == printed else worked


def _one(digits: Digits, printed: Expression, guard: int) -> Expression:
    if isinstance(printed, Number):
        return printed
    dimension = dimension_of(printed, _NO_NAMES)
    return digits.carried(float(evaluate(printed, {})), dimension, guard)


_NO_NAMES: Mapping[str, Dimension] = {}
