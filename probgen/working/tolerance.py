"""How far an answer may be off and still earn full marks."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from functools import cache, partial
from typing import Final

from probgen.quantities.expression import Number, evaluate
from probgen.quantities.rounding import exact, last_place
from probgen.quantities.unit import ANGLE, DEGREE, FORCE
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Limit
from probgen.working.carried import carried_into
from probgen.working.digits import Digits
from probgen.working.fact import Fact
from probgen.working.result import Result, ResultKind
from probgen.working.verdict import margin, side_dimension

ANGLE_FLOOR: Final = 1.0
"""Degrees either way that always earn full marks for an angle: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Interval(Fact):
    """The values of one answer that earn full marks, both ends included.

    low, high: as printed, rounded outward in the unit of the answer, to a place that hardly widens
    them; of a direction, degrees
    counter-clockwise from +x (low may be negative, high above 360).
    within: of a direction, degrees either way; None for any other answer.
    exact: whether the answer is nothing at all, and only what rounding leaves is let pass.
    """

    answer: str
    low: Number
    high: Number
    within: float | None = None
    exact: bool = False


def half_widths(digits: Digits, ids: Iterable[str]) -> dict[str, float]:
    """How far (coherent units) each answer may be off and still earn full marks.

    The course's tolerance, relative to the answer, and at least half a unit of the last figure the
    course asks for, so that the right answer rounded rightly is right.  For angles at least
    `ANGLE_FLOOR`, and that alone for directions.  A small difference of large forces cannot be
    known better than they are: for forces at least what the rounding of all they are worked from
    carries into them (`carried_into`), up to half a unit of the last figure of the largest force
    found; for a force that is nothing, that half unit itself.
    """
    of_forces = cache(partial(_force_floor, digits))
    return {
        id: ANGLE_FLOOR
        if _quantity(digits, id).is_direction
        else _half_width(digits, id, _printed(digits, id), of_forces)
        for id in ids
    }


def half_width(digits: Digits, id: str) -> float:
    """How far one answer may be off, as `half_widths` has it."""
    return half_widths(digits, (id,))[id]


def _half_width(digits: Digits, id: str, printed: Number, of_forces: Callable[[], float]) -> float:
    """printed: the answer, rounded as usual; of_forces: gives the floor for forces."""
    case = digits.case
    relative = max(
        digits.convention.tolerance * abs(case.values[id]), _rounding(digits, id, printed)
    )
    dimension = FORCE if _quantity(digits, id).is_magnitude else case.system.variables[id].dimension
    if dimension == ANGLE:
        return max(relative, ANGLE_FLOOR)
    if dimension != FORCE or (floor := of_forces()) <= relative:
        return relative
    return max(relative, min(floor, _carried(digits, id))) if printed.value else floor


def _quantity(digits: Digits, id: str) -> Quantity:
    """What is asked by an id; else, told beside an answer, a quantity of its own."""
    return digits.case.system.asked.get(id) or Quantity(id)


def _rounding(digits: Digits, id: str, printed: Number) -> float:
    """Half a unit of the last figure of an answer, coherent units.

    More where the utmost value before a limit is printed farther off, since it is rounded to the
    side that holds: a student who does so is right, and so is one who rounds as usual.
    """
    if not printed.value:
        return 0.0
    half = float(last_place(printed.value)) / 2 * _factor(printed)
    if id not in digits.case.system.variables:
        return half
    return max(half, abs(float(evaluate(digits.final(id), {})) - digits.case.values[id]))


def _printed(digits: Digits, id: str) -> Number:
    """An answer that is no direction, rounded as usual."""
    unit = digits.unit_of(_quantity(digits, id).unit_id)
    return digits.rounded(digits.case.values[id], unit)


def _carried(digits: Digits, id: str) -> float:
    """What rounding on the way carries into an answer, coherent units."""
    case = digits.case

    def half(name: str) -> float:
        shown = digits.rounded(case.values[name], digits.unit_of(name))
        return float(last_place(shown.value)) / 2 * _factor(shown) if shown.value else 0.0

    return float(carried_into(case.plan, id, case.values, half))


def _force_floor(digits: Digits) -> float:
    """Half a unit of the last figure of the largest force found, coherent units."""
    case = digits.case
    forces = [id for id in case.system.unknown_forces if id in case.values]
    if not forces:
        return 0.0
    largest = digits.final(max(forces, key=lambda id: abs(case.values[id])))
    return float(last_place(largest.value)) / 2 * _factor(largest) if largest.value else 0.0


def _factor(number: Number) -> float:
    return number.unit.factor if number.unit else 1.0


def intervals(digits: Digits, found: Iterable[Result]) -> tuple[Interval, ...]:
    """For each asked answer that is a number the interval that earns full marks, as asked."""
    of_forces = cache(partial(_force_floor, digits))
    return tuple(
        _interval(digits, result.id, of_forces)
        if result.angle_from_x is None
        else _around(digits, result)
        for result in found
        if result.asked and result.is_number
    )


def _interval(digits: Digits, id: str, of_forces: Callable[[], float]) -> Interval:
    printed = _printed(digits, id)
    factor = _factor(printed)
    half = _half_width(digits, id, printed, of_forces) / factor
    low, high = _outward(digits.case.values[id] / factor, half, last_place(printed.value))
    none = not printed.value
    return Interval(id, Number(low, printed.unit), Number(high, printed.unit), exact=none)


def margins(digits: Digits, found: Iterable[Result]) -> tuple[Interval, ...]:
    """For each yes or no the interval of its margin: as of an answer, and the rounding of both
    sides, which a student takes from each other.
    """
    verdicts = {result.id for result in found if result.kind is ResultKind.VERDICT}
    limits = [limit for limit in digits.case.system.limits if limit.id in verdicts]
    return tuple(_of_margin(digits, limit) for limit in limits)


def _of_margin(digits: Digits, limit: Limit) -> Interval:
    printed = margin(digits, limit)
    factor = _factor(printed)
    sizes = [float(evaluate(side, digits.case.values)) for side in (limit.left, limit.right)]
    unit = digits.units.unit_of(side_dimension(digits.case, limit.left))
    sides = [digits.rounded(size, unit) for size in sizes]
    rounding = sum(float(last_place(side.value)) / 2 * _factor(side) for side in sides)
    size = abs(sizes[0] - sizes[1])
    half = max(digits.convention.tolerance * size, rounding) / factor
    low, high = _outward(size / factor, half, last_place(printed.value))
    return Interval(
        limit.id, Number(max(low, Decimal(0)), printed.unit), Number(high, printed.unit)
    )


def _around(digits: Digits, direction: Result) -> Interval:
    """The interval of a direction, which is as wide either way."""
    assert direction.angle_from_x is not None
    place = last_place(digits.rounded(direction.value, DEGREE).value)
    start, end = _outward(direction.angle_from_x, ANGLE_FLOOR, place)
    return Interval(direction.id, Number(start, DEGREE), Number(end, DEGREE), ANGLE_FLOOR)


_FINER: Final = 4
"""Rounding outward widens an interval by this part of its half-width at most, on either side."""


def _outward(value: float, half: float, place: Decimal) -> tuple[Decimal, Decimal]:
    """Both ends away from the printed answer, to its place or a finer one where that is coarse."""
    while float(place) > half / _FINER > 0.0:
        place = place.scaleb(-1)
    low = exact(value - half).quantize(place, rounding=ROUND_FLOOR)
    high = exact(value + half).quantize(place, rounding=ROUND_CEILING)
    return low, high
