"""The angle of each oblique force in a force balance, and its parts along the axes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Final

from probgen.quantities.expression import (
    UNITY,
    Call,
    Expression,
    Name,
    evaluate,
    names_in,
    negative,
    number,
    times,
)
from probgen.quantities.formula import Formula
from probgen.quantities.unit import DEGREE
from probgen.statics.equation import Equation, X, Y
from probgen.statics.geometry import Angle, angle_of
from probgen.statics.step import Step
from probgen.statics.system import Force, Kind, System
from probgen.wording.facts.balance import ForceSplit, PullsSeveral, WeightTurned
from probgen.wording.numbers import angle_worked
from probgen.wording.passage import Items, Part, Sentences
from probgen.working.digits import Digits
from probgen.working.direction import way_of
from probgen.working.fact import Fact

_MANY: Final = 3
"""So many oblique forces are told one below the other."""


def splits(
    digits: Digits, step: Step, equations: Sequence[Equation], told: frozenset[str]
) -> Iterator[Part]:
    """How oblique forces lie to x and y in balances of a step and those after it, and their parts:
    one below the other where there are many.  told: ids of forces said before.
    """
    facts = tuple(_splits(digits, step, equations, told))
    if facts:
        yield Items(facts) if len(facts) >= _MANY else Sentences(facts)


def _splits(
    digits: Digits, step: Step, equations: Sequence[Equation], told: frozenset[str]
) -> Iterator[Fact]:
    system = digits.case.system
    terms: dict[str, list[tuple[str, Formula]]] = {}
    for equation in equations:
        if equation.kind != "force" or equation.axis not in (X, Y):
            continue
        for term in equation.terms:
            size = times(term.magnitude, term.ratio)
            if term.magnitude != system.force(term.source).magnitude:
                continue  # by the horizontal part of a tension
            if term.ratio != UNITY and term.source not in told:
                part = size if term.sign > 0 else negative(size)
                terms.setdefault(term.source, []).append((equation.about, (part,)))
    facts = list[ForceSplit]()
    for source, found in terms.items():
        force = system.force(source)
        if isinstance(force.magnitude, Name) and _known(digits, step, force):
            in_order = sorted(found, key=lambda part: part[0])  # x before y
            facts.append(_split(digits, force, tuple(in_order)))
    letters = Counter(fact.force for fact in facts)
    before = Counter[Expression]()
    for fact in facts:
        before[fact.force] += 1
        yield replace(fact, place=before[fact.force], count=letters[fact.force])


def counted_forces(system: System, equations: Sequence[Equation]) -> Iterator[Fact]:
    """Forces that a balance holds more than once: both ends of one rope."""
    for equation in equations:
        if equation.kind != "force":
            continue
        sources: dict[tuple[int, Expression], list[str]] = {}
        for term in equation.terms:
            sources.setdefault((term.sign, term.expression(equation.method)), []).append(
                term.source
            )
        for (_, part), several in sources.items():
            if len(several) > 1:
                element = system.force(several[0]).element
                yield PullsSeveral(element, part, len(several), equation.about)


def weights_turned(
    system: System, equations: Sequence[Equation], earlier: Sequence[Step]
) -> Iterator[Fact]:
    """Weights in balances along and square to a surface; earlier: steps told before."""
    told = {
        source
        for step in earlier
        for equation in step.equations
        for source in _weights_on_slope(system, equation)
    }
    for equation in equations:
        for source, angle in _weights_on_slope(system, equation).items():
            if source not in told:
                told.add(source)
                weight = system.force(source).magnitude
                square, along = (times(weight, Call(each, (angle,))) for each in ("cos", "sin"))
                axis = equation.axis or Y
                yield WeightTurned(weight, angle, square, along, axis.body, axis.element)


def _weights_on_slope(system: System, equation: Equation) -> dict[str, Expression]:
    """The angle of the slope by the id of each weight in a balance along a tilted axis."""
    found: dict[str, Expression] = {}
    if equation.axis is None or not equation.axis.tilted:
        return found
    function = "cos" if equation.axis.square else "sin"
    for term in equation.terms:
        match term.ratio:
            case Call(name, (angle,)) if name == function:
                if system.force(term.source).kind is Kind.WEIGHT:
                    found[term.source] = angle
    return found


def split_told(system: System, steps: Sequence[Step]) -> frozenset[str]:
    """Ids of the forces that balances along x and y hold."""
    return frozenset(
        term.source
        for step in steps
        for equation in step.equations
        if equation.kind == "force"
        for term in equation.terms
    )


def _known(digits: Digits, step: Step, force: Force) -> bool:
    """Whether the direction has a value when the step begins."""
    plan = digits.case.plan
    rest = plan.steps[plan.steps.index(step) :]
    later = {each.unknown for step in rest for each in (step, *step.partners)}
    return not names_in(force.direction) & later


def _split(digits: Digits, force: Force, parts: tuple[tuple[str, Formula], ...]) -> ForceSplit:
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
