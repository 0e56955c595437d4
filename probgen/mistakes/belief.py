"""Whether a student could believe a wrong answer: its sign, its size, the place it leads to."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from probgen.mistakes.variant import Misstep, axis_of
from probgen.quantities.expression import Expression, evaluate, names_in
from probgen.quantities.unit import MASS, TORQUE
from probgen.statics.derivation import span_of
from probgen.statics.geometry import way
from probgen.statics.system import Role, System
from probgen.working.case import Case

MOST: Final = 15.0
"""An answer so many times too large or too small is noticed: a judgement, above g = 9.8, so that
masses used as weights are still believed."""

_SAME: Final = 1e-9  # relative difference that only the rounding of floats accounts for


Place = tuple[Expression, Expression]
"""How far along its straight body a force acts whose place is sought, and the body's length."""


def believable(
    case: Case, misstep: Misstep, found: Mapping[str, float], sought: Sequence[Place]
) -> bool:
    """Whether nothing is noticed at once in a wrong working, up to its first wrong answer.

    found: what the wrong working has given by then, coherent units; sought: see `places`.
    """
    if misstep.only_if is not None and not evaluate(misstep.only_if, case.values) > 0.0:
        return False
    signed = all(_signed(case.system, id, value) for id, value in found.items())
    return signed and _placed(case, found, sought)


def possible(case: Case, answer: str, value: float) -> bool:
    """Whether an answer has a sign and a size it could have."""
    return _sized(case, answer, value) and _signed(case.system, answer, value)


def _sized(case: Case, id: str, value: float) -> bool:
    """Whether an answer is a number of the right size, and not the right one with a minus sign.

    A component may vanish or turn, and a couple is as likely one way round as the other.
    """
    right, variable = case.values[id], case.system.variables.get(id)
    asked = case.system.asked.get(id)
    if not math.isfinite(value):
        return False
    if not right or (asked and asked.is_direction) or (variable and variable.component_of):
        return True
    couple = variable is not None and variable.dimension == TORQUE
    if abs(value + right) <= _SAME * abs(right) and not couple:
        return False
    return abs(right) <= MOST * abs(value) and abs(value) <= MOST * abs(right)


def _signed(system: System, id: str, value: float) -> bool:
    """Whether a quantity lies where it may: no pull or mass below zero, nothing out of bounds."""
    variable = system.variables.get(id)
    if variable is None or variable.role is not Role.UNKNOWN:
        return True
    low, high = span_of(variable)
    low = 0.0 if variable.dimension == MASS else low
    slack = _SAME * max(1.0, abs(value))
    return low - slack <= value <= high + slack


def _placed(case: Case, found: Mapping[str, float], sought: Sequence[Place]) -> bool:
    """Whether every force whose place is sought still acts on its body."""
    known = {**case.values, **found} if sought else {}
    for reach, whole in sought:
        place, length = (float(evaluate(each, known)) for each in (reach, whole))
        if not -_SAME <= place <= length * (1.0 + _SAME):
            return False
    return True


def places(system: System) -> tuple[Place, ...]:
    """The places along straight bodies that a system leaves to be found."""
    return tuple(_places(system))


def _places(system: System) -> Iterator[Place]:
    unknown = frozenset(system.unknowns)
    for force in system.forces:
        body = system.body(force.body)
        if body.particle or axis_of(system, body) is None:
            continue
        start, end = body.outline[0], body.outline[-1]
        there, whole = (way(system.points, start, point) for point in (force.point, end))
        if len(there) != 1 or there[0].direction != whole[0].direction:
            continue
        if names_in(there[0].length) & unknown and not names_in(whole[0].length) & unknown:
            yield there[0].length, whole[0].length
