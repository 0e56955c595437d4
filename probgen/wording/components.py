"""The angle of each oblique force in a force balance, and its parts along the axes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal

from probgen.quantities.expression import UNITY, Name, evaluate, names_in, negative, number, times
from probgen.quantities.formula import Formula
from probgen.quantities.unit import DEGREE
from probgen.statics.equation import X, Y
from probgen.statics.geometry import Angle, angle_of
from probgen.statics.step import Step
from probgen.statics.system import Force, System
from probgen.wording.facts.balance import ForceSplit
from probgen.wording.numbers import angle_worked
from probgen.working.digits import Digits
from probgen.working.direction import way_of
from probgen.working.fact import Fact


def splits(digits: Digits, steps: Sequence[Step], told: frozenset[str]) -> Iterator[Fact]:
    """One fact for each oblique force in balances along x and y; told: ids said before."""
    system = digits.case.system
    terms: dict[str, list[tuple[str, Formula]]] = {}
    for step in steps:
        for equation in step.equations:
            if equation.kind != "force" or equation.axis not in (X, Y):
                continue
            for term in equation.terms:
                size = times(term.magnitude, term.ratio)
                if term.ratio != UNITY and term.source not in told:
                    part = size if term.sign > 0 else negative(size)
                    terms.setdefault(term.source, []).append((equation.about, (part,)))
    for source, found in terms.items():
        force = system.force(source)
        if isinstance(force.magnitude, Name) and _known(digits, steps, force):
            yield _split(digits, force, tuple(found))


def split_told(system: System, steps: Sequence[Step]) -> frozenset[str]:
    """Ids of the forces that balances along x and y hold."""
    return frozenset(
        term.source
        for step in steps
        for equation in step.equations
        if equation.kind == "force"
        for term in equation.terms
    )


def _known(digits: Digits, steps: Sequence[Step], force: Force) -> bool:
    """Whether the direction has a value when the first of the steps begins."""
    plan = digits.case.plan
    later = {step.unknown for step in plan.steps[plan.steps.index(steps[0]) :]}
    return not names_in(force.direction) & later


def _split(digits: Digits, force: Force, parts: tuple[tuple[str, Formula], ...]) -> Fact:
    values = digits.case.values
    direction = float(evaluate(force.direction, values))
    way = way_of(direction)
    level = angle_of(number(0 if way.right else 180, DEGREE))
    angle = angle_of(force.direction)
    up = angle.minus(level) if way.right else level.minus(angle)
    steep = up if way.up else Angle(Decimal(0), ()).minus(up)
    steep = steep.turned(_turns(float(evaluate(steep.expression, values))))
    upright = steep.constant == 90 and any(factor < 0 for _, factor in steep.multiples)
    if upright:
        steep = angle_of(number(90, DEGREE)).minus(steep)
    return ForceSplit(force.magnitude, angle_worked(digits, steep), way, upright, parts)


def _turns(value: float) -> Decimal:
    return Decimal(-360 * round(value / 360.0))
