"""That a working goes on with more digits than an answer has: said where they are used first."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import fields, is_dataclass

from probgen.quantities.expression import Number, names_in
from probgen.statics.step import Step
from probgen.wording.facts.balance import GoOnWith
from probgen.working.digits import Digits
from probgen.working.fact import Fact
from probgen.working.multiple import same_amount


def go_on(digits: Digits, steps: Sequence[Step], facts: Iterable[Fact] = ()) -> Iterator[Fact]:
    """Earlier results that are used here for the first time, where rounding would change them.

    facts: what was told of the steps, which may have said it.
    """
    said = {number for fact in facts if isinstance(fact, GoOnWith) for number in fact.carried}
    yield from _said([pair for pair in _going_on(digits, steps) if pair[0] not in said])


def go_on_in(digits: Digits, steps: Sequence[Step], told: object) -> Iterator[Fact]:
    """Those of them whose digits stand in what is told of the steps before their equations."""
    yield from _said([pair for pair in _going_on(digits, steps) if _holds(told, pair[0])])


def _said(pairs: Sequence[tuple[Number, Number]]) -> Iterator[Fact]:
    if pairs:
        carried, finals = zip(*dict.fromkeys(pairs), strict=True)  # alike ones once
        yield GoOnWith(carried, finals)


def _going_on(digits: Digits, steps: Sequence[Step]) -> list[tuple[Number, Number]]:
    """What they are carried with and what their answers have."""
    plan = digits.case.plan
    before = plan.steps[: plan.steps.index(steps[0])]
    used = frozenset[str]().union(*(names_in(step.expression) for step in before))
    held = frozenset[str]().union(*(names_in(step.expression) for step in steps)) - used
    said = {digits.shown(id) for id in used if id in digits.case.values}
    fresh = [each.unknown for each in before if each.unknown in held]
    rounded = [id for id in fresh if _rounds(digits, id) and digits.shown(id) not in said]
    return [(digits.shown(id), digits.final(id)) for id in rounded]


def _rounds(digits: Digits, id: str) -> bool:
    """Whether a quantity is an answer whose printed result is not its value."""
    return digits.ends_rounded(id) and not same_amount(digits.final(id), digits.shown(id))


def _holds(told: object, number: Number) -> bool:
    """Whether a number stands in facts, formulas or rows."""
    if isinstance(told, Number):
        return told == number
    if isinstance(told, tuple | list):
        return any(_holds(part, number) for part in told)
    if is_dataclass(told):
        return any(_holds(getattr(told, part.name), number) for part in fields(told))
    return False
