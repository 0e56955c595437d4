"""Quantities declared: their choices, bounds, units and signs, and what is refused of them."""

from __future__ import annotations

import math
import tomllib
from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest

from probgen.bank.quantity import (
    MOST_CHOICES,
    check_used,
    read_derived,
    read_givens,
    read_unknowns,
)
from probgen.bank.scope import Scope
from probgen.input.fault import Faults
from probgen.input.table import Table
from probgen.quantities.expression import Name, Quotient, negative, number
from probgen.quantities.unit import LENGTH, UNITS

Reader = Callable[[Table, Scope], Any]


def read(text: str, reader: Reader, scope: Scope | None = None) -> tuple[Any, Scope, Faults]:
    """What a reader makes of a table of quantities, and the faults it notes."""
    faults, scope = Faults("own.toml"), scope or Scope()
    content = tomllib.loads(text, parse_float=Decimal)
    return reader(Table(content, "q", faults), scope), scope, faults


def faults_of(text: str, reader: Reader, scope: Scope | None = None) -> dict[str, str]:
    """The faults: what is expected, by field."""
    _, _, faults = read(text, reader, scope)
    return {fault.field: fault.expected for fault in faults.found}


LENGTHS = 'L = {{ name = "length", unit = "cm", {} }}'

CHOSEN = [
    ("from = 1, to = 3, step = 1", ["1", "2", "3"]),
    ("from = 1, to = 2, step = 0.25", ["1.00", "1.25", "1.50", "1.75", "2.00"]),
    ("from = 10, to = 30, step = 10", ["10", "20", "30"]),
    ("from = 1.5, to = 1.5, step = 0.1", ["1.5"]),
    ("from = -1, to = 1, step = 1", ["-1", "0", "1"]),
    ("choices = [3.0, 1.50, 2]", ["1.50", "2", "3.0"]),
]


@pytest.mark.parametrize(("written", "choices"), CHOSEN)
def test_choices_ascend_with_the_digits_that_are_printed(written: str, choices: list[str]) -> None:
    (given,), scope, faults = read(LENGTHS.format(written), read_givens)
    assert faults.found == []
    assert [str(choice) for choice in given.choices] == choices
    low, high = (float(choices[place]) / 100.0 for place in (0, -1))
    assert scope.bounds["L"] == pytest.approx((low, high))  # metres
    assert (given.unit, scope.variables["L"].dimension) == (UNITS["cm"], LENGTH)


REFUSED = [
    ("from = 1, to = 3, step = 0", "step", "a step above zero"),
    ("from = 1, to = 3, step = -1", "step", "a step above zero"),
    ("from = 3, to = 1, step = 1", "to", "a value not below from (the range is empty)"),
    ("from = 1, to = 3, step = 0.3", "to", "a whole number of steps of 0.3 above 1"),
    ("choices = [1, 2, 1]", "choices", "every value once"),
    ("choices = [1], from = 1", "from", "either choices or from, to and step, not both"),
    ("choices = [1], to = 1", "to", "either choices or from, to and step, not both"),
    ("choices = [1], step = 1", "step", "either choices or from, to and step, not both"),
    (f"from = 0, to = {MOST_CHOICES}, step = 1", "step", f"at most {MOST_CHOICES} values"),
]


@pytest.mark.parametrize(("written", "field", "expected"), REFUSED)
def test_ranges_that_cannot_be_drawn_from(written: str, field: str, expected: str) -> None:
    assert faults_of(LENGTHS.format(written), read_givens) == {f"q.L.{field}": expected}


def test_the_largest_range_is_taken() -> None:
    written = f"from = 1, to = {MOST_CHOICES}, step = 1"
    (given,), _, faults = read(LENGTHS.format(written), read_givens)
    assert (len(given.choices), faults.found) == (MOST_CHOICES, [])


def test_something_must_be_drawn() -> None:
    assert faults_of("", read_givens) == {"given": "at least one quantity to draw"}


def test_a_unit_must_be_known() -> None:
    wrong = LENGTHS.replace("cm", "kgg").format("choices = [1]")
    _, scope, faults = read(wrong, read_givens)
    assert [fault.field for fault in faults.found] == ["q.L.unit"]
    assert faults.found[0].mend == 'did you mean "kg"?'
    assert scope.doubtful == {"L"}


def test_a_name_that_is_none_leaves_the_scope_in_doubt() -> None:
    text = '"1L" = { name = "l", symbol = "l", unit = "m", choices = [1] }'
    _, scope, faults = read(text, read_givens)
    assert [(fault.field, fault.found) for fault in faults.found] == [("q.1L", '"1L"')]
    assert not scope.whole


def scope_with_length() -> Scope:
    """L is 1 to 3 m."""
    _, scope, _ = read(LENGTHS.format("choices = [100, 300]"), read_givens)
    return scope


def test_derived_quantities_keep_their_step_and_have_bounds() -> None:
    """L/4 from 0.25 to 0.75 m; rounded to 0.1 cm it may be 0.05 cm to either side."""
    text = 'd = { is = "L/4", name = "quarter", unit = "cm", round = 0.1 }'
    (derived,), scope, faults = read(text, read_derived, scope_with_length())
    assert (derived.round, faults.found) == (Decimal("0.1"), [])
    assert scope.bounds["d"] == pytest.approx((0.2495, 0.7505))


def test_without_a_step_nothing_is_added_to_the_bounds() -> None:
    _, scope, _ = read(
        'd = { is = "L/4", name = "quarter", unit = "cm" }', read_derived, scope_with_length()
    )
    assert scope.bounds["d"] == pytest.approx((0.25, 0.75))


@pytest.mark.parametrize("step", ["0", "-0.1"])
def test_a_step_is_above_zero(step: str) -> None:
    text = f'd = {{ is = "L/4", name = "quarter", unit = "cm", round = {step} }}'
    expected = {"q.d.round": "a step above zero, such as 0.01"}
    assert faults_of(text, read_derived, scope_with_length()) == expected


def test_what_is_derived_is_not_made_with_g() -> None:
    text = 'w = { is = "L*g/g", name = "w", unit = "cm" }'
    found = faults_of(text, read_derived, scope_with_length())
    assert found == {"q.w.is": "an expression in the givens alone"}


UNKNOWN = 'x = {{ name = "place", unit = "{}"{} }}'
BOUNDS = [
    ("cm", ", from = 20, to = 50", (0.2, 0.5), True),
    ("cm", "", (0.0, math.inf), True),  # a length is never negative
    ("cm", ", to = 50", (0.0, 0.5), True),
    ("cm", ", from = -20, to = 50", (-0.2, 0.5), False),  # but to the left of the origin
    ("1", ", from = -2", (-2.0, math.inf), False),
    ("deg", "", (-math.inf, math.inf), False),
    ("N", ", from = -5", (-5.0, math.inf), False),
    ("kg", "", (0.0, math.inf), True),
    ("1", "", (0.0, math.inf), True),
]


@pytest.mark.parametrize(("unit", "range_", "bounds", "nonnegative"), BOUNDS)
def test_an_unknown_lies_where_it_physically_may(
    unit: str, range_: str, bounds: tuple[float, float], nonnegative: bool
) -> None:
    _, scope, faults = read(UNKNOWN.format(unit, range_), read_unknowns)
    assert faults.found == []
    assert scope.bounds["x"] == pytest.approx(bounds)
    assert scope.variables["x"].nonnegative is nonnegative


def test_a_bound_may_be_computed_from_givens() -> None:
    """Beyond 1 to 3 m no draw's place lies; in each it lies up to that draw's own L/2."""
    text = UNKNOWN.format("cm", ', from = "-L", to = "L/2"')
    _, scope, faults = read(text, read_unknowns, scope_with_length())
    assert faults.found == []
    variable = scope.variables["x"]
    assert (variable.low, variable.high) == pytest.approx((-3.0, 1.5))
    length = Name("L", "L")
    assert (variable.least, variable.most) == (negative(length), Quotient(length, number(2)))
    assert not variable.nonnegative
    assert scope.bounds["x"] == pytest.approx((-3.0, 1.5))


@pytest.mark.parametrize(
    ("written", "field", "expected"),
    [
        (', to = "L*2 N"', "to", "an expression for a length"),
        (', from = 4, to = "y"', "to", "an expression in the givens alone"),
        (', from = "2*L", to = 1', "to", "a value above from, which is 2*L"),
    ],
)
def test_a_computed_bound_that_is_none(written: str, field: str, expected: str) -> None:
    scope = scope_with_length()
    text = 'y = { name = "other place", unit = "cm" }\n' + UNKNOWN.format("cm", written)
    found = faults_of(text, read_unknowns, scope)
    assert found == {f"q.x.{field}": expected}


def test_a_mass_to_be_found_is_not_below_zero() -> None:
    found = faults_of(UNKNOWN.format("kg", ", from = -2"), read_unknowns)
    assert found == {"q.x.from": "a mass, which is never below zero"}


@pytest.mark.parametrize("last", ["20", "10"])
def test_the_bounds_of_an_unknown_are_two(last: str) -> None:
    found = faults_of(UNKNOWN.format("cm", f", from = 20, to = {last}"), read_unknowns)
    assert found == {"q.x.to": "a value above from, which is 20"}


def test_an_unknown_is_used_somewhere() -> None:
    faults = Faults("own.toml")
    table = Table({"x": {}, "y": {}}, "unknown", faults)
    check_used(table, {"y", "T"})
    assert [(fault.field, fault.found) for fault in faults.found] == [("unknown.x", '"x"')]


@pytest.mark.parametrize(
    ("written", "field"),
    [("choices = [-4.0, 2.0]", "choices"), ("from = -1, to = 2, step = 1", "from")],
)
def test_a_mass_below_zero_is_refused(written: str, field: str) -> None:
    text = f'm = {{ name = "mass", unit = "kg", {written} }}'
    assert faults_of(text, read_givens) == {f"q.m.{field}": "a mass, which is never below zero"}
    assert faults_of(text.replace("-", ""), read_givens) == {}
