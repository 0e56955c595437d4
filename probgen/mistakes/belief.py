"""Whether a student could believe a wrong answer: its sign, its size, the place it leads to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.mistakes.variant import Misstep, axis_of
from probgen.quantities.expression import Expression, Value, evaluate, names_in
from probgen.quantities.unit import MASS, TORQUE
from probgen.statics.geometry import way
from probgen.statics.span import span_of
from probgen.statics.system import Kind, Role, System

MOST: Final = 15.0
"""An answer so many times too large or too small is noticed: a judgement, above g = 9.8, so that
masses used as weights are still believed."""

_SAME: Final = 1e-9  # relative difference that only the rounding of floats accounts for


Place = tuple[Expression, Expression]
"""How far along its straight body a force acts whose place is sought, and the body's length."""


def believable(
    system: System,
    misstep: Misstep,
    right: Mapping[str, Value],
    found: Mapping[str, Value],
    sought: Sequence[Place],
) -> NDArray[np.bool_]:
    """Whether nothing is noticed at once in a wrong working, from its beginning to its end.

    right, found: what the right working gives and what the wrong one does, coherent units, an entry
    a student.  sought: see `places`.
    """
    fits = np.ones((), bool)
    if misstep.only_if is not None:
        fits = fits & (np.asarray(evaluate(misstep.only_if, right)) > 0.0)
    for id, value in found.items():
        fits = fits & _signed(system, id, value)
        fits = fits & as_told(system, id, right.get(id, np.nan), value)
    return fits & _placed({**right, **found}, sought)


def possible(system: System, answer: str, right: Value, value: Value) -> NDArray[np.bool_]:
    """Whether an answer has a sign and a size it could have.

    right, value: the right one and what is found for it, for one student or many.
    """
    return _sized(system, answer, right, value) & _signed(system, answer, value)


def as_told(system: System, id: str, right: Value, value: Value) -> NDArray[np.bool_]:
    """Whether a push or pull of which the way is told, and right, still acts that way.

    Somebody who finds it the other way round looks for the mistake.
    """
    variable = system.variables.get(id)
    size = variable.as_name if variable else None
    applied = any(each.kind is Kind.FORCE and each.magnitude == size for each in system.forces)
    turned: NDArray[np.bool_] = np.logical_and(np.asarray(right) > 0.0, np.asarray(value) < 0.0)
    return ~turned if applied else np.ones(turned.shape, bool)


def _sized(system: System, id: str, right: Value, value: Value) -> NDArray[np.bool_]:
    """Whether an answer is a number of the right size, and not the right one with a minus sign.

    A component may vanish or turn, and a couple is as likely one way round as the other.
    """
    variable, asked = system.variables.get(id), system.asked.get(id)
    finite: NDArray[np.bool_] = np.isfinite(value)
    if (asked and asked.is_direction) or (variable and variable.component_of):
        return finite
    size, wanted = np.abs(value), np.abs(right)
    fits = (wanted <= MOST * size) & (size <= MOST * wanted)
    if variable is None or variable.dimension != TORQUE:
        fits &= ~(np.abs(value + right) <= _SAME * wanted)
    sized: NDArray[np.bool_] = finite & (fits | (wanted == 0.0))
    return sized


def _signed(system: System, id: str, value: Value) -> NDArray[np.bool_]:
    """Whether a quantity lies where it may: no pull or mass below zero, nothing out of bounds."""
    variable = system.variables.get(id)
    if variable is None or variable.role is not Role.UNKNOWN:
        return np.ones(np.shape(value), bool)
    low, high = span_of(variable)
    low = 0.0 if variable.dimension == MASS else low
    slack = _SAME * np.maximum(1.0, np.abs(value))
    within: NDArray[np.bool_] = (low - slack <= value) & (value <= high + slack)
    return within


def _placed(known: Mapping[str, Value], sought: Sequence[Place]) -> NDArray[np.bool_]:
    """Whether every force whose place is sought still acts on its body."""
    fits = np.ones((), bool)
    for reach, whole in sought:
        place, length = (np.asarray(evaluate(each, known)) for each in (reach, whole))
        fits = fits & (place >= -_SAME) & (place <= length * (1.0 + _SAME))
    return fits


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
