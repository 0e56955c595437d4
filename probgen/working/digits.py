"""Which digits of a number a working shows.

Data are shown as given, converted to the unit of the working.  Results end at the course's
significant figures, angles at a tenth of a degree; a result whose last zero would only fill a place
is in a multiple of its unit (1.20 kN).  A value at its limit is shown equal to it, and the largest
or smallest value before a limit is rounded to the side where the limit still holds.  A value
carried from one line to the next is shown with a guard digit, or more where a line needs them so
that its printed numbers really give its printed result: the same digits in every line (`Guards`,
`line_of`).
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from dataclasses import dataclass, field
from decimal import Decimal

from probgen.quantities.dimension import dimension_of
from probgen.quantities.expression import (
    Call,
    Expression,
    Lump,
    Name,
    Number,
    Root,
    evaluate,
    names_in,
    parts,
    substituted,
)
from probgen.quantities.radians import in_radians
from probgen.quantities.rounding import (
    RoundingRule,
    exact,
    in_full,
    round_figures,
    round_places,
    shortened,
)
from probgen.quantities.unit import (
    ANGLE,
    DEGREE,
    NEWTON,
    NEWTON_METRE,
    PLAIN,
    SI,
    Dimension,
    Unit,
    UnitSystem,
)
from probgen.statics.quantity_id import Quantity
from probgen.statics.state import utmost_finds
from probgen.statics.system import Find, Form, Role, System
from probgen.working.case import Case
from probgen.working.convention import Convention
from probgen.working.direction import PLACES
from probgen.working.guards import Guards
from probgen.working.limit_met import limit_met
from probgen.working.multiple import figures_shown, in_one_of

_MOST_GUARD = 7
_INVERSE = ("asin", "acos", "atan", "atan2")


@dataclass(frozen=True, slots=True, eq=False)
class Digits:
    """The printed numbers of one case under one convention: one for each student's problem.

    utmost: the finds that ask how far something may go; those of the case's system if None.
    units: what the working is printed in: the course's, by the lengths that are given.
    guards: the guard digits of its carried values; those of a key's branches are the same.
    beside: the multiples of units that answers stand in; those its own case needs if None.
    compared: whether its utmost value stands beside those at other limits before one is the answer.
    """

    case: Case
    convention: Convention
    utmost: tuple[Find, ...] | None = None
    units: UnitSystem = field(init=False)
    guards: Guards = field(default_factory=Guards)
    beside: frozenset[Unit] | None = None
    compared: bool = False
    # The same few quantities stand in line after line.
    _short: dict[tuple[float, Dimension, int], Number] = field(default_factory=dict)
    _rounded: dict[tuple[float, str, RoundingRule], Number] = field(default_factory=dict)
    _final: dict[str, Number] = field(default_factory=dict)
    _answers: list[frozenset[Hashable]] = field(default_factory=list)  # likewise
    _multiples: list[frozenset[Unit]] = field(default_factory=list)  # one, once they are found

    def __post_init__(self) -> None:
        system = self.case.system
        object.__setattr__(self, "units", working_units(system, self.convention))
        object.__setattr__(self, "utmost", self.utmost or utmost_finds(system))

    def final(self, id: str) -> Number:
        """A quantity as an answer: rounded to the course's figures, in its own unit."""
        if id not in self._final:
            value, unit = self.case.values[id], self.unit_of(id)
            limit = limit_met(self.case, id, unit)
            self._final[id] = limit or self.answered(id, value, unit)
        return self._final[id]

    def answered(self, id: str, value: float, unit: Unit) -> Number:
        """A value (coherent) of a quantity, right or wrong, rounded as its answer is."""
        return self.rounded(value, unit, self.rule(id))

    def rule(self, id: str) -> RoundingRule:
        """The course's rule, or the side that holds for the utmost value of a quantity."""
        find = self.asked_utmost(id)
        if find is None:
            return self.convention.rounding
        return "down" if find.form is Form.LARGEST else "up"

    def asked_utmost(self, id: str) -> Find | None:
        """The find that asks how far a quantity may go; None where nothing asks that."""
        return next((find for find in self.utmost or () if find.quantity == id), None)

    def unit_of(self, id: str) -> Unit:
        """The unit an answer is printed in: its own, or the course's where that is customary."""
        variable = self.case.system.variables[id]
        if self.convention.units == SI or self.convention.units.speaks(variable.unit):
            return variable.unit
        return self.units.unit_of(variable.dimension)

    def rounded(self, value: float, unit: Unit, rule: RoundingRule | None = None) -> Number:
        """A value (coherent) to the course's figures in a unit, an angle to its fixed place.

        In a multiple of the unit where that is what shows the figures, here or in another answer.
        """
        key = (value, unit.name, rule := rule or self.convention.rounding)
        if key not in self._rounded:
            ended = Number(self.ended(exact(value / unit.factor), unit, rule), unit)
            self._rounded[key] = in_one_of(self.multiples, figures_shown(ended))
        return self._rounded[key]

    @property
    def multiples(self) -> frozenset[Unit]:
        """The multiples of units that some answer needs to show its figures."""
        if self.beside is not None:
            return self.beside
        if not self._multiples:
            self._multiples.append(frozenset(self._multiples_needed()))
        return self._multiples[0]

    def _multiples_needed(self) -> Iterator[Unit]:
        for id, of in self.case.system.asked.items():
            if id in self.case.values and not of.is_direction:
                unit, value = self.unit_of(of.unit_id), self.case.values[id]
                ended = self.ended(exact(value / unit.factor), unit, self.rule(id))
                shown = figures_shown(Number(ended, unit))
                if shown.unit is not None and shown.unit != unit:
                    yield shown.unit

    def ended(self, value: Decimal, unit: Unit, rule: RoundingRule) -> Decimal:
        if unit == DEGREE:
            return round_places(value, PLACES, rule)
        return round_figures(value, self.convention.figures, rule)

    def carried(self, value: float, dimension: Dimension, guard: int = 1) -> Number:
        """A value (coherent) on its way to the next line; an answer, or one that nothing is rounded
        off of, has no zeros beyond its figures.

        guard: digits beyond the course's figures, or more where another line needs more.
        """
        self.guards.show(key := key_of(value, dimension))
        if self.guards.written and (own := self.guards.written.get(key)):
            return own if value > 0.0 else Number(-own.value, own.unit)
        alike = self._shortly(abs(value), dimension, 1)
        return self._shortly(value, dimension, self.guards.of(alike, guard))

    def _shortly(self, value: float, dimension: Dimension, guard: int) -> Number:
        key = (value, dimension, guard)
        if key not in self._short:
            self._short[key] = self.cut(value, dimension, guard)
        return self._short[key]

    def cut(
        self, value: float, dimension: Dimension, guard: int, of: float | None = None
    ) -> Number:
        """A value (coherent) with so many guard digits; of: the one it is written for, if another.

        Zeros at its end are kept where something is rounded off: 1.060 m of 1.0595 m.
        """
        unit = self.units.unit_of(dimension)
        figures, full = self.convention.figures, exact(value / unit.factor)
        digits = round_figures(full, figures + guard, self.convention.rounding)
        if digits == full:
            digits = in_full(shortened(digits, figures))
        elif key_of(value if of is None else of, dimension) in self.answers:
            digits = shortened(digits, figures)  # as it stands among them
        return Number(digits, unit if dimension != PLAIN else None)

    def data(self, id: str, guard: int = 1) -> Number:
        """A given or derived quantity as printed, in a coherent unit of its dimension.

        Where that is neither a whole nor a decimal multiple of the given one, the digits are
        carried ones.
        """
        number = self.case.numbers[id]
        variable = self.case.system.variables[id]
        unit = self.units.unit_of(variable.dimension)
        own = number.unit
        if own is None or own.factor == unit.factor:  # Pa and N/m^2: as it was told
            return Number(number.value, (own or unit) if variable.dimension != PLAIN else None)
        ratio = own.size / unit.size
        decimal = exact(float(ratio)).normalize()
        if own.dimension == ANGLE or (ratio.denominator > 1 and len(decimal.as_tuple().digits) > 1):
            return self.carried(self.case.values[id], variable.dimension, guard)
        return Number(in_full(number.value * decimal), unit)

    def shown(self, id: str, guard: int = 1) -> Number:
        """A quantity within a substitution."""
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
                case Call("rad", (angle,)):
                    return Call("rad", (self._in_radians(angle, guard),))
                case Call("sin" | "cos" | "tan" as function, (angle,)) if by_lengths(angle):
                    return Call(function, (self._with_degrees(angle, guard),))
                case Root(balance, name, low, high):
                    kept = substituted(balance, lambda e: _itself(e, name) or replacement(e))
                    return Root(kept, name, low, high)
                case _:
                    return None

        return substituted(expression, replacement)

    def _in_radians(self, angle: Expression, guard: int) -> Expression:
        """An angle in radians, with more figures where a line needs them: in all lines then."""
        printed = self.put_in(angle, guard)
        more = self.guards.of(("radians", printed), guard)
        return in_radians(printed, self.convention.figures + more + 1)

    def _with_degrees(self, angle: Expression, guard: int) -> Expression:
        """An angle with what is made of lengths in it as degrees."""

        def degrees(part: Expression) -> Expression | None:
            if not isinstance(part, Call) or part.function not in _INVERSE:
                return None
            return self.carried(float(evaluate(part, self.case.values)), ANGLE, guard)

        return self.put_in(substituted(angle, degrees), guard)

    def _lump(self, inner: Expression, guard: int) -> Number:
        printed = self.put_in(inner, guard)
        return self.carried(float(evaluate(printed, {})), dimension_of(printed, {}), guard)

    def result(self, value: float, dimension: Dimension, id: str = "") -> Number:
        """A computed value (coherent) as the line that ends its working shows it.

        It has a guard digit, and more where rounding the printed digits would give another answer.
        id: of the quantity; what no answer tells of is not rounded, and the utmost value of one is
        by a rule of its own.
        """
        rule = self.rule(id)
        unit = self.units.unit_of(dimension)
        final = self.ended(exact(value / unit.factor), unit, rule)
        for guard in range(1, _MOST_GUARD):
            self.guards.begin_line()
            printed = self.carried(value, dimension, guard)
            if (id and not self.is_told(id)) or self.ended(printed.value, unit, rule) == final:
                break
        self.guards.end_line()
        return printed

    @property
    def answers(self) -> frozenset[Hashable]:
        """The values that answers tell of."""
        if not self._answers:
            values, variables = self.case.values, self.case.system.variables
            told = (id for id in values.keys() & variables.keys() if self.ends_rounded(id))
            found = (key_of(values[id], variables[id].dimension) for id in told)
            self._answers.append(frozenset(found))
        return self._answers[0]

    def is_told(self, id: str) -> bool:
        """Whether answers tell of a quantity: it is asked for, or a component of what is."""
        asked = self.case.system.asked
        if id in asked or self.asked_utmost(id) is not None:
            return True
        return any(id in Quantity(of.owner).components for of in asked.values())

    def ends_rounded(self, id: str) -> bool:
        """Whether the line that finds a quantity ends with its answer."""
        return self.is_told(id) and not (self.compared and self.asked_utmost(id))

    def holds_its_like(self, expression: Expression, value: float, dimension: Dimension) -> bool:
        """Whether a line works with what is written like its result: S = N - T, where S is T."""
        found = [id for id in names_in(expression) & set(self.case.values) if not self.is_data(id)]
        alike = self._shortly(abs(value), dimension, 1)
        return any(self._shortly(abs(self.case.values[id]), dimension, 1) == alike for id in found)

    def is_data(self, id: str) -> bool:
        role = self.case.system.variables[id].role
        return role in (Role.GIVEN, Role.DERIVED, Role.CONSTANT)


def working_units(system: System, convention: Convention) -> UnitSystem:
    """The units a working is printed in: the course's, by those the author states.

    An unknown force or couple has newtons of its own, which nobody states.
    """
    data, variables = (Role.GIVEN, Role.DERIVED), system.variables.values()
    stated = [each.unit for each in variables if each.role in data]
    sought = [each.unit for each in variables if each.role is Role.UNKNOWN]
    own = (NEWTON, NEWTON_METRE)
    return convention.units.suited_to([*stated, *(unit for unit in sought if unit not in own)])


def by_lengths(angle: Expression) -> bool:
    """Whether an arc function stands in an expression: an angle by what it is made of."""
    own = isinstance(angle, Call) and angle.function in _INVERSE
    return own or any(by_lengths(part) for part in parts(angle))


def _itself(part: Expression, name: str) -> Expression | None:
    """The part when it is the quantity looked for, which keeps its name."""
    return part if isinstance(part, Name) and part.id == name else None


def key_of(value: float, dimension: Dimension) -> Hashable:
    """A carried value, whatever sign it has."""
    return exact(abs(value)), dimension
