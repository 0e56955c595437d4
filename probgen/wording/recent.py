"""What follows from a plan alone: worked out once for all who have the same problem."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from functools import wraps
from typing import Concatenate, Final, ParamSpec, TypeVar

from probgen.statics.plan import Plan

_PLANS: Final = 64  # more than a set has problems

Words = ParamSpec("Words")
Result = TypeVar("Result")


def kept_by_plan(
    work: Callable[Concatenate[Plan, Words], Result],
) -> Callable[Concatenate[Plan, Words], Result]:
    """A function that keeps its results for the plans it was asked about last.

    Plans hold mappings, so they are told apart by identity; those kept are held, so that no other
    plan can get the identity of one.  Its further arguments are hashable, and given by position.
    """
    plans: OrderedDict[int, tuple[Plan, dict[tuple[Hashable, ...], Result]]] = OrderedDict()

    @wraps(work)
    def remembered(plan: Plan, /, *words: Words.args, **named: Words.kwargs) -> Result:
        _, results = plans.setdefault(id(plan), (plan, {}))
        plans.move_to_end(id(plan))
        if len(plans) > _PLANS:
            plans.popitem(last=False)
        if words not in results:
            results[words] = work(plan, *words, **named)
        return results[words]

    return remembered
