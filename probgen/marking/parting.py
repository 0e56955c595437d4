"""Where a wrong working parts from the key: the step that its first wrong quantity comes from."""

from __future__ import annotations

import math
from functools import partial
from typing import Final

from probgen.marking.naming import WrongWay
from probgen.mistakes.comparison import gap
from probgen.mistakes.variant import cut
from probgen.problem.problem import Problem
from probgen.statics.line import in_full
from probgen.statics.quantity_id import Quantity
from probgen.statics.rerun import rerun
from probgen.working.case import Case
from probgen.working.criteria import criteria
from probgen.working.criterion import Criterion

_SAME: Final = 1e-9  # relative difference that only the rounding of floats accounts for


def first_spoilt(way: WrongWay, case: Case, answer: str) -> str:
    """The first quantity of a wrong working that is not the key's, of those up to an answer."""
    carry = partial(cut, figures=way.figures) if way.figures else in_full
    reached = rerun(way.plan, {id: case.values[id] for id in case.numbers}, carry=carry)
    for line in way.plan.lines:
        right, value = case.values.get(line.id, math.nan), float(reached.get(line.id, math.nan))
        if line.id == answer:
            break
        if not math.isfinite(right):
            continue
        apart = gap(case.system.asked.get(line.id, Quantity(line.id)))(value, right)
        if not apart <= _SAME * max(abs(right), 1.0):
            return line.id
    return answer


def step_to(problem: Problem, quantity: str) -> Criterion | None:
    """The step of the key in which a quantity begins to be worked out; None where none does."""
    opening: Criterion | None = None
    for each in criteria(problem.plan, problem.convention):
        if each.kind == "diagram":
            continue
        opening = opening or each
        if each.quantity == quantity:
            return opening
        if each.quantity:
            opening = None
    return None
