"""A line of a working: a quantity and what it is worked out from."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from typing import NamedTuple

import numpy as np

from probgen.quantities.expression import Expression, Value, evaluate, names_in

Carry = Callable[[Value], Value]
"""What is taken along of a value that was worked out: all of its figures, or a few."""


class Line(NamedTuple):
    """id = expression."""

    id: str
    expression: Expression


def in_full(value: Value) -> Value:
    """A value carried with all its figures."""
    return value


def needed(lines: Sequence[Line], ids: Collection[str], stated: Collection[str]) -> list[Line]:
    """The lines without which some quantities are not found; what is stated needs no others."""
    found, wanted = [], set(ids)
    for line in reversed(lines):
        if line.id in wanted:
            found.append(line)
            if line.id not in stated:
                wanted |= names_in(line.expression)
    return found[::-1]


def worked(
    lines: Iterable[Line],
    values: Mapping[str, Value],
    stated: Mapping[str, Value] | None = None,
    carry: Carry = in_full,
) -> dict[str, Value]:
    """The values, and what the lines give one after the other, coherent units, angles in degrees.

    stated: what stands in the place of a value or of a line's result; later lines go on with it.
    What cannot be worked out is not finite.
    """
    stated = stated or {}
    found = {id: stated.get(id, value) for id, value in values.items()}
    carried = dict(found)
    with np.errstate(all="ignore"):
        for id, expression in lines:
            if id in stated:
                found[id] = carried[id] = stated[id]
            else:
                found[id] = evaluate(expression, carried)
                carried[id] = carry(found[id])
    return found
