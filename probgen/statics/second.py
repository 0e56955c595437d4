"""The second solver: all equations of all bodies at once, by Newton's method on their numbers.

It knows nothing of the plan.  Residuals come from `assembly` (coordinates and vectors), the
Jacobian from differences of residuals; for equations linear in every unknown one step is exact.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Value, evaluate
from probgen.statics.assembly import Assembled, assemble
from probgen.statics.system import System

Array = NDArray[np.float64]


def with_definitions(system: System, values: Mapping[str, Value]) -> dict[str, Value]:
    """The values with every defined quantity computed from the others."""
    complete = dict(values)
    for definition in system.definitions:
        complete[definition.variable] = evaluate(definition.expression, complete)
    return complete


def assembled_at(system: System, values: Mapping[str, Value], guess: Array) -> Assembled:
    """The equations with the unknowns set to `guess`, shape (draws, unknowns)."""
    trial: dict[str, Value] = dict(values)
    trial.update({name: guess[:, i] for i, name in enumerate(system.unknowns)})
    return assemble(system, with_definitions(system, trial))


def jacobian(system: System, values: Mapping[str, Value], guess: Array) -> Array:
    """Derivatives of the residuals by central differences, shape (draws, equations, unknowns)."""
    columns = []
    for place in range(guess.shape[1]):
        step = np.zeros_like(guess)
        step[:, place] = np.maximum(np.abs(guess[:, place]), 1e-3) * 2.0**-10
        above = assembled_at(system, values, guess + step).residual
        below = assembled_at(system, values, guess - step).residual
        columns.append((above - below) / (2.0 * step[:, place, None]))
    return np.stack(columns, axis=2)


def solve_all(system: System, values: Mapping[str, Value], start: Array, rounds: int = 12) -> Array:
    """All unknowns of every draw, shape (draws, unknowns), from a start of the same shape."""
    guess = start.copy()
    for _ in range(rounds):
        here = assembled_at(system, values, guess)
        if float(np.max(here.relative, initial=0.0)) < 1e-14:
            break
        slopes = jacobian(system, values, guess)
        size = np.where(here.scale > 0.0, here.scale, 1.0)[:, :, None]
        move = np.linalg.pinv(slopes / size) @ (here.residual[:, :, None] / size)
        guess = guess - move[:, :, 0]
    return guess
