"""What rounding on the way carries into a result: each number it is worked from may be rounded."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

import numpy as np

from probgen.quantities.expression import Expression, Value, evaluate, names_in
from probgen.statics.line import needed
from probgen.statics.plan import Plan

Halves = Callable[[str], Value]
"""Half a unit of the last figure of a quantity found, coherent units."""

_ANY: Final = np.inf


def carried_into(plan: Plan, id: str, values: Mapping[str, Value], halves: Halves) -> Value:
    """How far (coherent units) a quantity is off at most where all it is worked from is rounded.

    values: of all that is given or found, floats of one draw or arrays with an entry a draw.
    Every number found on the way is off by half a unit of its last figure and by what was carried
    into it; the effects of all of them are added (first-order error propagation, worst case), by
    the lines of the plan, and by those to any limit where it has several.  Infinite where no line
    says.
    """
    ways = [_along(way, id, values, halves) for way in plan.ways]
    reached = [each for each in ways if each is not None]
    with np.errstate(all="ignore"):
        widest: Value = np.max(np.stack(np.broadcast_arrays(*reached)), axis=0) if reached else _ANY
    return np.where(np.isfinite(widest), widest, _ANY)[()]


def _along(plan: Plan, id: str, values: Mapping[str, Value], halves: Halves) -> Value | None:
    """By the lines of one plan; None where they do not reach it, or its data are not told."""
    off: dict[str, Value] = {}
    for line in needed(plan.lines, (id,), ()):
        held = names_in(line.expression)
        if not held <= values.keys():
            return None
        shifts = (
            _shift(line.expression, values, name, halves(name) + off[name])
            for name in off
            if name in held
        )
        off[line.id] = sum(shifts, 0.0)
    return off.get(id)


def _shift(line: Expression, values: Mapping[str, Value], name: str, by: Value) -> Value:
    """How far a line's result moves, at most, where one number in it is off by so much."""
    right = evaluate(line, values)
    moved = (evaluate(line, {**values, name: values[name] + way * by}) for way in (1.0, -1.0))
    shift: Value = np.maximum(*(np.abs(each - right) for each in moved))
    return shift
