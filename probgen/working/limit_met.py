"""The given limit that a quantity has just reached."""

from __future__ import annotations

import math
from typing import Final

from probgen.quantities.expression import Name, Number, evaluate
from probgen.quantities.unit import Unit
from probgen.working.case import Case

_AT_LIMIT: Final = 1e-9  # relative; a limit solved for is met to the digits of a float


def limit_met(case: Case, id: str, unit: Unit) -> Number | None:
    """The given limit a quantity has just reached, with its own digits; else None.

    unit: what the quantity is answered in.
    """
    sides = [(each.left, each.right) for each in case.system.limits]
    sides += [(each.left, each.right) for each in case.system.conditions]
    for pair in sides:
        match pair:
            case (Name(id=left), Name(id=right)) if id in (left, right):
                met = case.numbers.get(right if left == id else left)
            case (Name(id=left), Number() as met) if left == id:
                pass
            case _:
                met = None
        if met is not None and met.unit == unit and _equal(case.values[id], met):
            return met
    return None


def _equal(value: float, number: Number) -> bool:
    return math.isclose(value, float(evaluate(number, {})), rel_tol=_AT_LIMIT)
