"""Which draws satisfy the requirements a template states."""

from __future__ import annotations

import operator
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from probgen.bank.template import Requirement, Template
from probgen.draws.draw import Draw
from probgen.input.fault import Fault, InputError
from probgen.quantities.expression import Values, evaluate, names_in

_HOLDS: Final[Mapping[str, Callable[[Any, Any], Any]]] = {
    "<": operator.lt,
    "<=": operator.le,
    ">": operator.gt,
    ">=": operator.ge,
}
SLACK: Final = 1e-9
"""Relative slack of "<=" and ">=", so that 2.30 m - 2.20 m is at least 0.1 m."""


def requirements_hold(
    template: Template, values: Values, *, known_only: bool = False
) -> NDArray[np.bool_]:
    """Whether each draw satisfies every requirement.

    values: coherent values by id, one array over the draws (or a float) each.
    known_only: pass over requirements on quantities that have no value here; otherwise InputError.
    Returns one flag a draw.
    """
    shape = np.broadcast_shapes(*(np.shape(value) for value in values.values()))
    held = np.ones(shape, dtype=np.bool_)
    for _, own in each_requirement(template, values, known_only=known_only):
        held &= own
    return held


def each_requirement(
    template: Template, values: Values, *, known_only: bool = False
) -> Iterator[tuple[Requirement, NDArray[np.bool_]]]:
    """Every requirement, and which draws satisfy it; arguments as of `requirements_hold`."""
    for requirement in template.requirements:
        names = names_in(requirement.left) | names_in(requirement.right)
        if unknown := names - values.keys():
            if known_only:
                continue
            raise InputError([_unasked(template, requirement, sorted(unknown))])
        yield requirement, _holds(requirement, values)


def stacked(draws: Sequence[Draw]) -> dict[str, NDArray[np.float64]]:
    """The coherent values of several draws of one template, one array over the draws a name."""
    rows = [each.coherent() for each in draws]
    return {id: np.array([row[id] for row in rows]) for id in (rows[0] if rows else ())}


def _unasked(template: Template, requirement: Requirement, unknown: list[str]) -> Fault:
    """A requirement on what nobody asks for, which is then never worked out."""
    expected = f"only quantities that are given or asked for ({requirement.because})"
    mend = "ask for it in a [[find]], or remove the [[require]] or [[limit]] that needs it"
    return Fault(template.path, "require", ", ".join(unknown), expected, mend)


def _holds(requirement: Requirement, values: Values) -> NDArray[np.bool_]:
    left = np.asarray(evaluate(requirement.left, values))
    right = np.asarray(evaluate(requirement.right, values))
    slack = SLACK * np.maximum(np.abs(left), np.abs(right))
    if requirement.relation == ">=":
        left = left + slack
    elif requirement.relation == "<=":
        right = right + slack
    return np.asarray(_HOLDS[requirement.relation](left, right), dtype=np.bool_)
