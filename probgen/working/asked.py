"""The numbers asked for in many draws of a problem at once, each with how far it may be off.

The widths are those of `tolerance.half_widths`, over arrays in place of one student's digits.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from typing import Final

import numpy as np

from probgen.bank.labels import Labels
from probgen.draws.nearness import Answers, Numbers
from probgen.quantities.unit import ANGLE, DEGREE, FORCE
from probgen.statics.plan import Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Form
from probgen.working.carried import carried_into
from probgen.working.case import DUST, Case
from probgen.working.convention import Convention
from probgen.working.digits import Digits
from probgen.working.direction import PLACES
from probgen.working.tolerance import ANGLE_FLOOR

_NOISE_FREE: Final = 9
"""Decimal places of a value, in units of its last figure, that no rounding of floats reaches."""


def asked_answers(
    plan: Plan, labels: Labels, convention: Convention, solved: Mapping[str, Numbers]
) -> Answers:
    """Those of everything the plan reaches, an entry a draw; of a yes or no there is none."""
    asked = plan.system.asked
    digits = Digits(Case(plan, labels, {}, {}), convention)
    floors = _Floors.of(digits, solved)
    halves = [_half_widths(digits, of, solved, floors) for of in asked.values()]
    shape = len(asked), len(next(iter(solved.values())))
    values, widths = (np.reshape(rows, shape).T for rows in ([solved[id] for id in asked], halves))
    return Answers(values, widths, tuple(of.is_direction for of in asked.values()))


def _half_widths(
    digits: Digits, of: Quantity, solved: Mapping[str, Numbers], floors: _Floors
) -> Numbers:
    values = solved[str(of)]
    if of.is_direction:
        return np.full(len(values), ANGLE_FLOOR)
    variables = digits.case.system.variables
    rounding = _last_places(digits, of.unit_id, values) / 2
    if str(of) in variables:
        rounding = np.maximum(rounding, _cut_off(digits, str(of), values))
    relative: Numbers = np.maximum(digits.convention.tolerance * np.abs(values), rounding)
    dimension = FORCE if of.is_magnitude else variables[str(of)].dimension
    if dimension == ANGLE:
        return np.maximum(relative, ANGLE_FLOOR)
    if dimension != FORCE:
        return relative
    carried = carried_into(digits.case.plan, str(of), solved, partial(_half_places, digits, solved))
    nothing = np.abs(values) <= DUST * floors.largest
    return np.maximum(relative, np.minimum(floors.halves, np.where(nothing, np.inf, carried)))


def _half_places(digits: Digits, solved: Mapping[str, Numbers], id: str) -> Numbers:
    return _last_places(digits, id, solved[id]) / 2


def _last_places(digits: Digits, id: str, values: Numbers) -> Numbers:
    """One unit of the last figure of each value as an answer, coherent units; 0 of zero."""
    unit, figures = digits.unit_of(id), digits.convention.figures
    if unit == DEGREE:
        return np.full(len(values), unit.factor * 10.0**-PLACES)
    sizes = np.abs(values) / unit.factor
    with np.errstate(all="ignore"):
        last = np.floor(np.log10(sizes)) - figures + 1
        last += np.rint(sizes / 10.0**last) >= 10.0**figures  # 9.996 becomes 10.0
        return np.where(sizes > 0.0, unit.factor * 10.0**last, 0.0)


def _cut_off(digits: Digits, id: str, values: Numbers) -> Numbers:
    """How far the utmost value before a limit is printed on the side that holds; else 0."""
    utmost = digits.asked_utmost(id)
    if utmost is None:
        return np.zeros(len(values))
    places = _last_places(digits, id, values)
    with np.errstate(divide="ignore", invalid="ignore"):
        steps = np.round(values / places, _NOISE_FREE)
    rounded = np.floor(steps) if utmost.form is Form.LARGEST else np.ceil(steps)
    return np.where(places > 0.0, np.abs(steps - rounded) * places, 0.0)


@dataclass(frozen=True, slots=True)
class _Floors:
    """The size of the largest force found in each draw, and half a unit of its last figure."""

    largest: Numbers
    halves: Numbers

    @classmethod
    def of(cls, digits: Digits, solved: Mapping[str, Numbers]) -> _Floors:
        forces = [id for id in digits.case.system.unknown_forces if id in solved]
        if not forces:
            none = np.zeros(len(next(iter(solved.values()))))
            return cls(none, none)
        places = np.array([_last_places(digits, id, solved[id]) for id in forces])
        sizes = np.abs([solved[id] for id in forces])
        largest = np.argmax(sizes, axis=0)[None, :]
        size, place = (np.take_along_axis(each, largest, axis=0)[0] for each in (sizes, places))
        return cls(size, place / 2)
