"""A line of a working: an expression with its numbers put in, and the number they give.

Each carried value in it has one guard digit; where its printed numbers would then give another last
digit than the value has, one or two of them have another, or all.  Where that does not help, the
value is written as the printed numbers give it, as long as its answer is the same: who works the
line again finds its result.
"""

from __future__ import annotations

import math
from collections.abc import Hashable
from dataclasses import dataclass
from functools import partial
from typing import Final

import numpy as np

from probgen.quantities.expression import Expression, Number, evaluate, names_in
from probgen.quantities.printed_sum import tidied
from probgen.quantities.rounding import exact, last_place
from probgen.quantities.unit import Dimension
from probgen.working.digits import Digits, key_of

_MOST_GUARD: Final = 7
USUAL_GUARD: Final = 2
"""As many guard digits as people write."""
HALF: Final = 0.5 + 1e-9
"""Of a unit in the last place, and the rounding of floats."""


@dataclass(frozen=True, slots=True)
class Line:
    """An expression with its numbers put in, and the number they give.

    guard: the guard digits of what was carried from lines before; of some it may be one more.
    """

    printed: Expression
    result: Number
    guard: int


def line_of(
    digits: Digits, expression: Expression, value: float, dimension: Dimension, id: str = ""
) -> Line:
    """An expression with as many guard digits as make its printed numbers give its value.

    value: coherent; id: of the quantity that is worked out, as for `Digits.result`.
    The result is what the printed numbers give, rounded; where other lines have fixed how the
    value is written, it may be less than one unit of its last digit away.  Raises ArithmeticError
    when no number of digits is enough.
    """
    sought = partial(_Sought.of, digits, expression, value, dimension, id)
    line = sought().shorter() if digits.holds_its_like(expression, value, dimension) else None
    line = line or sought().found()
    if line is None and digits.guards.write_none():
        line = sought().found()
    line = line or sought().shorter()
    if line is None:
        names = sorted(names_in(expression))
        raise ArithmeticError(f"no printed working of {names} reaches {value!r}")
    return line


@dataclass(frozen=True, slots=True)
class _Sought:
    """What a line is to give.

    value: coherent; result: the value as it is printed, where printed numbers give that; near: one
    unit of its last place, in the unit of the working; before: whether a line has shown it by now.
    """

    digits: Digits
    expression: Expression
    value: float
    dimension: Dimension
    id: str
    result: Number
    near: float
    before: bool

    @classmethod
    def of(
        cls, digits: Digits, expression: Expression, value: float, dimension: Dimension, id: str
    ) -> _Sought:
        before = digits.guards.has_shown(key_of(value, dimension))
        result = digits.result(value, dimension, id)
        near = float(last_place(result.value)) if result.value else 1e-3
        return cls(digits, expression, value, dimension, id, result, near, before)

    def found(self) -> Line | None:
        """The line with few digits that give its value; else one whose value is as they give it."""
        return self._exact() or self._nearly()

    def _exact(self) -> Line | None:
        guards = self.digits.guards
        for guard in guards.attempts(USUAL_GUARD):
            printed, worked = self._put_in(guard)
            if abs(worked - float(self.result.value)) <= HALF * self.near:
                guards.end_line()
                return Line(printed, self.result, guard)
        guards.leave_line()
        return None

    def _nearly(self) -> Line | None:
        guards = self.digits.guards
        for guard in range(1, _MOST_GUARD + 1):
            guards.begin_line()
            printed, worked = self._put_in(guard)
            off = abs(worked - float(self.result.value))
            if off > HALF * self.near and (off < self.near or guard == USUAL_GUARD):
                own = self._as_worked(worked)
                if own is not None:
                    return self._written(printed, own, guard)
            if off < self.near:
                guards.end_line()
                return Line(printed, self.result, guard)
        guards.leave_line()
        return None

    def shorter(self) -> Line | None:
        """A line whose result may have fewer digits than what is written like it elsewhere: each
        more would want one more in the numbers before it, and so on for ever.
        """
        guards, shorter = self.digits.guards, self._answering(self.value / self._factor)
        for guard in range(1, _MOST_GUARD + 1):
            guards.begin_line()
            printed, worked = self._put_in(guard)
            for own in (self.result, shorter or self.result):
                near = float(last_place(own.value)) if own.value else 1e-3
                share = 1.0 if own is self.result and guard == 1 else HALF  # as of any line
                if abs(worked - float(own.value)) <= share * near:
                    guards.end_line()
                    return Line(printed, own, guard)
        guards.leave_line()
        return None

    def _put_in(self, guard: int) -> tuple[Expression, float]:
        """The expression in numbers, and what they give in the unit of the working."""
        printed = tidied(self.digits.put_in(self.expression, guard))
        with np.errstate(all="ignore"):  # a number too small for its digits is printed as 0
            return printed, float(evaluate(printed, {})) / self._factor

    @property
    def _factor(self) -> float:
        return self.digits.units.unit_of(self.dimension).factor

    @property
    def _key(self) -> Hashable:
        return key_of(self.value, self.dimension)

    @property
    def _writer(self) -> Hashable:
        return self.expression, self.id

    def _as_worked(self, worked: float) -> Number | None:
        """What printed numbers give, if the value may be written so and its answer is the same."""
        whole = self.result.value == exact(self.value / self._factor)  # nothing is rounded off
        if whole or not math.isfinite(worked):
            return None
        if not self.digits.guards.may_write(self._key, self._writer):
            return None
        return self._answering(worked)

    def _answering(self, worked: float) -> Number | None:
        """What printed numbers give with few digits, if its answer is the value's."""
        unit, rule = self.digits.units.unit_of(self.dimension), self.digits.rule(self.id)
        final = self.digits.ended(exact(self.value / unit.factor), unit, rule)
        for guard in range(1, USUAL_GUARD + 1):
            printed = self.digits.cut(worked * unit.factor, self.dimension, guard, of=self.value)
            if self.digits.ended(printed.value, unit, rule) == final:
                return printed
        return None

    def _written(self, printed: Expression, own: Number, guard: int) -> Line:
        """The line with its value as it follows from the printed numbers, in all lines now."""
        self.digits.guards.end_line()
        size = Number(abs(own.value), own.unit)
        self.digits.guards.write(self._key, size, self._writer, self.before)
        return Line(printed, own, guard)
