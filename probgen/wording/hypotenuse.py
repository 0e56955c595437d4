"""Lengths across, worked out where they are first used: the square root of d^2 + h^2."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from probgen.quantities.expression import Call, Expression, Lump, parts
from probgen.statics.step import Step
from probgen.wording.block import Display, Row
from probgen.wording.facts.torque import SlantingLengths
from probgen.wording.passage import Part, sentences
from probgen.working.digits import Digits


def hypotenuse_part(digits: Digits, steps: Sequence[Step]) -> Iterator[Part]:
    """The lengths across that balances hold for the first time in these steps."""
    plan = digits.case.plan
    before = set(_across(plan.steps[: plan.steps.index(steps[0])]))
    fresh = [each for each in dict.fromkeys(_across(steps)) if each not in before]
    if fresh:
        yield sentences(SlantingLengths(len(fresh)))
        yield Display(tuple(row for each in fresh for row in _rows(digits, each)))


def _rows(digits: Digits, across: Lump) -> Iterator[Row]:
    yield Row((across.inner,), "=", (digits.put_in(across.inner),))
    yield Row((), "=", (digits.put_in(across),))


def _across(steps: Sequence[Step]) -> Iterator[Lump]:
    for equation in (equation for step in steps for equation in step.equations):
        for term in equation.terms:
            yield from _held(term.ratio)


def _held(expression: Expression) -> Iterator[Lump]:
    match expression:
        case Lump(Call("hypot", _)):
            yield expression
        case _:
            for part in parts(expression):
                yield from _held(part)
