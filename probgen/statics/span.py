"""Where an unknown may lie, and which values of it go with all else lying where it may.

A cable only pulls, so that of the directions t and t + 180 degrees with T and -T one is left.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Value, evaluate, names_in
from probgen.quantities.unit import ANGLE
from probgen.statics.cross_check import assembled_at, is_linear, jacobian, solve_all
from probgen.statics.definition import names_behind
from probgen.statics.solve_for import Range
from probgen.statics.system import Role, System, Variable

_CLOSE: Final = 1e-7
"""Of an equation's largest term: the rest that counts as none; of a quantity: no way below zero."""


def span_of(variable: Variable) -> Range:
    """Where an unknown may lie: as its author says, else an angle from 0 to 90 degrees."""
    least = 0.0 if variable.nonnegative or variable.dimension == ANGLE else -math.inf
    most = 90.0 if variable.dimension == ANGLE else math.inf
    low = least if variable.low is None else variable.low
    return low, most if variable.high is None else variable.high


def span_at(variable: Variable, values: Mapping[str, Value]) -> tuple[Value, Value]:
    """Where an unknown may lie in each draw; values: of all that is known."""
    low, high = span_of(variable)
    return (
        low if variable.least is None else evaluate(variable.least, values),
        high if variable.most is None else evaluate(variable.most, values),
    )


def may_be(
    system: System, unknown: str, at: Value, values: Mapping[str, Value]
) -> NDArray[np.bool_]:
    """For each draw whether an unknown may have a value, as far as all others tell.

    at: its value; values: of all that is known; coherent units, one entry a draw each, or a float.
    Only where the others follow from it by linear equations can they speak against it.
    """
    draws = max(np.size(value) for value in (at, *values.values()))
    anywhere = np.ones(draws, dtype=bool)
    rest = _with_known(system, unknown)
    if not rest.unknowns or not is_linear(rest):
        return anywhere
    known = {id: np.broadcast_to(np.asarray(v, float), draws) for id, v in values.items()}
    known[unknown] = np.broadcast_to(np.asarray(at, float), draws)
    with np.errstate(all="ignore"):
        found = solve_all(rest, known, np.ones((draws, len(rest.unknowns))))
        here = assembled_at(rest, known, found)
        slopes = jacobian(rest, known, found)
    if not (np.all(np.isfinite(found)) and np.all(np.isfinite(slopes))):
        return anywhere
    size = np.where(here.scale > 0.0, here.scale, 1.0)
    settled = np.linalg.matrix_rank(slopes / size[:, :, None]) == len(rest.unknowns)
    fits = here.relative < _CLOSE
    slack = _CLOSE * np.maximum(size.max(axis=1), 1.0)
    for place, id in enumerate(rest.unknowns):
        low, high = span_at(rest.variables[id], known)
        fits &= (found[:, place] > low - slack) & (found[:, place] < high + slack)
    return np.asarray(fits | ~settled, dtype=np.bool_)


def _with_known(system: System, unknown: str) -> System:
    """The system with an unknown known, and without what is only worked out from the others."""
    given = replace(system.variables[unknown], role=Role.GIVEN)
    bare = replace(system, definitions=())
    held = bare.names_used.union(
        *(names_in(force.direction) for force in system.forces),
        *(
            names_in(part)
            for point in system.points.values()
            for link in point.links
            for part in (link.length, link.direction)
        ),
    )
    used = names_behind(held, system.definitions)
    kept = tuple(each for each in system.definitions if each.variable in used)
    variables = {**system.variables, unknown: given}
    return replace(system, variables=variables, definitions=kept)
