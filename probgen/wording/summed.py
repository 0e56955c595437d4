"""A balance with the number of each of its terms, and what rounding leaves of their sum."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from probgen.quantities.expression import Number, Sum, evaluate, names_in
from probgen.quantities.formula import Balance, Formula, Relation
from probgen.quantities.rounding import exact, round_figures, round_places
from probgen.quantities.symbol import unmarked
from probgen.quantities.unit import FORCE, TORQUE
from probgen.statics.equation import Equation
from probgen.wording.block import Display, Row
from probgen.wording.facts.ending import RoundingLeft
from probgen.wording.passage import Part, sentences
from probgen.working.digits import Digits, key_of
from probgen.working.fact import Fact


def summed(
    digits: Digits, opening: Fact, equation: Equation, values: Mapping[str, float]
) -> tuple[Part, ...]:
    """What is looked at, its terms with their numbers, and what rounding leaves of their sum.

    values: coherent units, of all that the equation holds.
    """
    numbers, total = _closing(digits, equation, as_printed(digits, equation, values))
    display = Display(_rows(digits, equation, numbers, total))
    left = (sentences(RoundingLeft(), bound=True),) if total else ()
    return (sentences(opening), display, *left)


def as_printed(digits: Digits, equation: Equation, values: Mapping[str, float]) -> dict[str, float]:
    """The values in an equation as this telling has printed them, coherent units: who works its
    terms out again has no others.
    """
    return {id: _printed(digits, id, values[id]) for id in sorted(names_in(equation.expression))}


def _printed(digits: Digits, id: str, value: float) -> float:
    if id not in digits.case.values:
        return float(evaluate(as_found(digits, value), {}))
    key = key_of(value, digits.case.system.variables[id].dimension)
    told = id in digits.case.numbers or digits.guards.has_shown(key)
    return float(evaluate(digits.shown(id), {})) if told else value


def as_found(digits: Digits, force: float) -> Number:
    """A force (N) that is found only to look back, as its line shows it."""
    unit = digits.units.unit_of(FORCE)
    return Number(round_figures(exact(force / unit.factor), digits.convention.figures + 1), unit)


def balance_of(digits: Digits, equation: Equation) -> Balance:
    """What is summed, about which point or along which axis."""
    kind = "force" if equation.kind == "force" else digits.convention.turning
    return Balance(kind, equation.about, raised=kind == "moment" and _couples_lettered(digits))


def _couples_lettered(digits: Digits) -> bool:
    """Whether a quantity has the letter that a sum of moments would have, as M_A of a wall."""
    sums = {f"M_{point}" for point in digits.case.system.points}
    return any(unmarked(each.symbol) in sums for each in digits.case.labels.quantities.values())


def _rows(
    digits: Digits, equation: Equation, numbers: list[tuple[int, Number]], total: Decimal
) -> tuple[Row, ...]:
    """The balance in symbols, then each term's number, then their sum."""
    left = (balance_of(digits, equation),)
    unit = numbers[0][1].unit
    zero = Number(Decimal(0), unit)
    ending: Formula = (Number(total, unit), Relation("≈"), zero) if total else (zero,)
    return (
        Row(left, "=", (equation.expression,)),
        Row((), "=", (Sum(tuple(numbers)),)),
        Row((), "=", ending),
    )


def _closing(
    digits: Digits, equation: Equation, values: Mapping[str, float]
) -> tuple[list[tuple[int, Number]], Decimal]:
    """The numbers of the terms and their sum, with the course's figures where nothing is left."""
    usual = digits.convention.figures
    for figures in (usual, usual + 1):
        numbers = _term_numbers(digits, equation, values, figures)
        total = sum((sign * number.value for sign, number in numbers), Decimal(0))
        if not total and all(number.value for _, number in numbers):
            break
    return numbers, total


def _term_numbers(
    digits: Digits, equation: Equation, known: Mapping[str, float], figures: int
) -> list[tuple[int, Number]]:
    """Each term's value to one common decimal place, with so many figures in the largest."""
    dimension = FORCE if equation.kind == "force" else TORQUE
    unit = digits.units.unit_of(dimension)
    values = [
        term.sign * float(evaluate(term.expression(equation.method), known))
        / unit.factor
        for term in equation.terms
    ]  # fmt: skip
    if not values:
        raise ArithmeticError("no force is left in a balance")
    largest = max(abs(value) for value in values)
    places = max(figures - 1 - round_figures(largest, figures).adjusted(), 0)
    chosen = [round_places(exact(value), places) for value in values]
    return [(-1 if value < 0 else 1, Number(abs(value), unit)) for value in chosen]
