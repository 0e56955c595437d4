"""The plan gone through once more: what follows from the data, and from what a person states.

A person who states one wrong value and goes on rightly finds what `rerun` finds from it.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Value
from probgen.statics.line import Carry, in_full, needed, worked
from probgen.statics.plan import Branch, Plan
from probgen.statics.state import utmost_finds, way_sought
from probgen.statics.system import Find


def first_limit_id(utmost: Find) -> str:
    """Name under which values hold the place of the limit reached first, of those of a find."""
    return f"first limit of {utmost.quantity}"


Values = Mapping[str, Value]


def rerun(
    plan: Plan,
    values: Values,
    stated: Values | None = None,
    carry: Carry = in_full,
    sought: Collection[str] | None = None,
) -> dict[str, Value]:
    """Values of everything the plan reaches, in its order, coherent units, angles in degrees.

    values: givens, derived quantities and g; floats for one draw or arrays with one entry a draw.
    stated: what a person states in the place of a datum, a step's unknown or an outcome, alike;
    everything later follows from it, nothing earlier does.
    carry: what is taken along of a value that was worked out.
    sought: what alone has to be reached; None: everything.
    What becomes impossible is not finite.  Where limits are asked, everything is at the limit
    reached first, whose place is told under `first_limit_id`; a person may state that as well.
    """
    stated = stated or {}
    if plan.branches:
        states = (
            _at_first_limit(find, plan.branches_to(find), values, stated, carry)
            for find in utmost_finds(plan.system)
        )
        return {id: value for state in states for id, value in state.items()}
    lines = plan.lines if sought is None else needed(plan.lines, sought, stated)
    return worked(lines, values, stated, carry)


def _at_first_limit(
    utmost: Find, branches: Sequence[Branch], values: Values, stated: Values, carry: Carry
) -> dict[str, Value]:
    """Everything of a state at the limit reached first when a quantity grows (or shrinks).

    Only limits that are passed on going on that way count; where none does there is no value.
    Which is first follows from the data, as long as nobody states it: what else is stated is
    meant where that limit is reached, and says nothing of the other limits.
    """
    sought, way = utmost.quantity, way_sought(utmost)
    data = {id: stated.get(id, value) for id, value in values.items()}
    right = [rerun(branch.plan, data, carry=carry) for branch in branches]
    sizes = _rows(right, sought)
    counts = np.stack([
        np.broadcast_to(branch.is_passed(size, data), sizes.shape[1:])
        for branch, size in zip(branches, sizes, strict=True)
    ])  # fmt: skip
    possible = np.isfinite(sizes) & counts
    first = np.argmin(np.where(possible, way * sizes, np.inf), axis=0)
    first = np.asarray(stated.get(first_limit_id(utmost), first), int)
    told = stated.keys() - data.keys()
    reached = [rerun(b.plan, data, stated, carry) for b in branches] if told else right
    solved = {first_limit_id(utmost): first[()] * 1.0, **_chosen(reached, first)}
    if sought not in stated:
        solved[sought] = np.where(possible.any(axis=0), solved[sought], np.nan)[()]
    return solved


def _rows(reached: list[dict[str, Value]], id: str) -> NDArray[np.float64]:
    """A quantity at each limit: a row a limit, an entry a draw."""
    return np.stack(np.broadcast_arrays(*(np.asarray(each[id], float) for each in reached)))


def _chosen(reached: list[dict[str, Value]], first: NDArray[np.int_]) -> dict[str, Value]:
    """Of what is found at every limit the values at the one that comes first."""
    shared = [id for id in reached[0] if all(id in each for each in reached)]
    return {id: np.choose(first, _rows(reached, id))[()] for id in shared}
