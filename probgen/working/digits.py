"""Which digits of a number a working shows.

Data are shown as given, converted to the coherent unit.  Results end at the course's significant
figures.  A value carried from one line to the next is shown with guard digits, as many as the
step needs so that its printed numbers really give its printed result.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal

from probgen.quantities.expression import (
    Expression,
    Lump,
    Name,
    Number,
    Root,
    evaluate,
    names_in,
    substituted,
)
from probgen.quantities.rounding import exact, last_place, round_figures
from probgen.quantities.unit import ANGLE, PLAIN, SI, Dimension, Unit
from probgen.statics.system import Role
from probgen.working.case import Case
from probgen.working.convention import Convention

_MOST_GUARD = 7


@dataclass(frozen=True, slots=True)
class Line:
    """An expression with its numbers put in, and the number they give.

    guard: the guard digits of what was carried from lines before.
    """

    printed: Expression
    result: Number
    guard: int


@dataclass(frozen=True, slots=True)
class Digits:
    """The printed numbers of one case under one convention: one for each student's problem."""

    case: Case
    convention: Convention
    # The same few quantities stand in line after line.
    _shown: dict[tuple[str, int], Number] = field(default_factory=dict, compare=False, repr=False)
    _final: dict[str, Number] = field(default_factory=dict, compare=False, repr=False)

    def final(self, id: str) -> Number:
        """A quantity as an answer: rounded to the course's figures, in its own unit."""
        if id not in self._final:
            self._final[id] = self.rounded(self.case.values[id], self.unit_of(id))
        return self._final[id]

    def unit_of(self, id: str) -> Unit:
        """The unit an answer is printed in: its own, or the course's where that is customary."""
        variable = self.case.system.variables[id]
        if self.convention.units == SI or variable.unit in self.convention.units.units:
            return variable.unit
        return self.convention.units.unit_of(variable.dimension)

    def rounded(self, value: float, unit: Unit) -> Number:
        """A value (coherent) to the course's significant figures in a unit."""
        digits = round_figures(
            value / unit.factor, self.convention.figures, self.convention.rounding
        )
        return Number(digits, unit)

    def carried(self, value: float, dimension: Dimension, guard: int = 1) -> Number:
        """A value (coherent) on its way to the next line; exact short values stay short."""
        unit = self.convention.units.unit_of(dimension)
        figures, full = self.convention.figures, exact(value / unit.factor)
        digits = round_figures(full, figures + guard, self.convention.rounding)
        if digits == full:
            digits = _shortened(digits, figures)
        return Number(digits, unit if dimension != PLAIN else None)

    def data(self, id: str, guard: int = 1) -> Number:
        """A given or derived quantity as printed, in the coherent unit of its dimension.

        Where that unit is no decimal multiple of the given one, the digits are carried ones.
        """
        number = self.case.numbers[id]
        variable = self.case.system.variables[id]
        unit = self.convention.units.unit_of(variable.dimension)
        own = number.unit
        if own is None or own.factor == unit.factor:
            return Number(number.value, unit if variable.dimension != PLAIN else None)
        ratio = exact(own.factor / unit.factor)
        if own.dimension == ANGLE or len(ratio.as_tuple().digits) > 1:
            return self.carried(self.case.values[id], variable.dimension, guard)
        return Number(_plain_exponent(number.value * ratio), unit)

    def shown(self, id: str, guard: int = 1) -> Number:
        """A quantity within a substitution."""
        if (id, guard) not in self._shown:
            self._shown[id, guard] = self._within(id, guard)
        return self._shown[id, guard]

    def _within(self, id: str, guard: int) -> Number:
        if id in self.case.numbers:
            return self.data(id, guard)
        variable = self.case.system.variables[id]
        return self.carried(self.case.values[id], variable.dimension, guard)

    def put_in(self, expression: Expression, guard: int = 1) -> Expression:
        """The expression with its numbers in the places of its names; lumps become one number."""

        def replacement(part: Expression) -> Expression | None:
            match part:
                case Name(id=id):
                    return self.shown(id, guard)
                case Lump(Name(id=id)):
                    return self.shown(id, guard)
                case Lump(inner):
                    return self._lump(inner, guard)
                case Root(balance, name, low, high):
                    kept = substituted(balance, lambda e: _itself(e, name) or replacement(e))
                    return Root(kept, name, low, high)
                case _:
                    return None

        return substituted(expression, replacement)

    def _lump(self, inner: Expression, guard: int) -> Number:
        printed = self.put_in(inner, guard)
        units = self.convention.units
        length = units.unit_of(Dimension(length=1))
        return self.carried(float(evaluate(printed, {})), length.dimension, guard)

    def result(self, value: float, dimension: Dimension) -> Number:
        """A computed value (coherent) as the line that ends its working shows it.

        It has a guard digit, and more where rounding the printed digits would give another answer.
        """
        figures, rule = self.convention.figures, self.convention.rounding
        unit = self.convention.units.unit_of(dimension)
        final = round_figures(value / unit.factor, figures, rule)
        for guard in range(1, _MOST_GUARD):
            printed = self.carried(value, dimension, guard)
            if round_figures(printed.value, figures, rule) == final:
                break
        return printed

    def line(self, expression: Expression, value: float, dimension: Dimension) -> Line:
        """An expression with as many guard digits as make its printed numbers give its result.

        The result agrees when it is less than one unit of its last digit away.  Raises
        ArithmeticError when no number of digits is enough.
        """
        unit = self.convention.units.unit_of(dimension)
        result = self.result(value, dimension)
        near = float(last_place(result.value)) if result.value else 1e-3
        for guard in range(1, _MOST_GUARD + 1):
            printed = self.put_in(expression, guard)
            worked = float(evaluate(printed, {})) / unit.factor
            if abs(worked - float(result.value)) < near:
                return Line(printed, result, guard)
        raise ArithmeticError(
            f"no printed working of {sorted(names_in(expression))} reaches {value!r}"
        )

    def is_data(self, id: str) -> bool:
        role = self.case.system.variables[id].role
        return role in (Role.GIVEN, Role.DERIVED, Role.CONSTANT)


def _itself(part: Expression, name: str) -> Expression | None:
    """The part when it is the quantity looked for, which keeps its name."""
    return part if isinstance(part, Name) and part.id == name else None


def _plain_exponent(value: Decimal) -> Decimal:
    """The same number without a positive exponent (3.5E+2 is written 350)."""
    exponent = int(value.as_tuple().exponent)
    return value.quantize(Decimal(1)) if exponent > 0 else value


def _shortened(digits: Decimal, figures: int) -> Decimal:
    """The number without zeros at its end, down to so many figures."""
    while len(shown := digits.as_tuple().digits) > figures and shown[-1] == 0:
        digits = digits.quantize(last_place(digits).scaleb(1))
    return digits
