"""Axes that are not level and upright: which way they run, and what stands at an angle to them."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.quantities.expression import Call, Expression, Sum, evaluate, names_in
from probgen.statics.equation import Axis, Equation, Lie, X, Y
from probgen.statics.step import Step
from probgen.wording.facts.balance import AxisTilted, Leaning, Tilt
from probgen.wording.passage import Part, sentences
from probgen.working.digits import Digits
from probgen.working.direction import Way, way_of
from probgen.working.fact import Fact


def tilted_axes(digits: Digits) -> tuple[Tilt, ...]:
    """The axes along and square to a surface that forces are summed along, that along it first."""
    equations = [each for step in digits.case.plan.steps for each in step.equations]
    laid = (each.axis for each in equations if each.axis)
    axes = [axis for axis in laid if axis.along or axis.square]
    ways: dict[str, set[Way]] = {}
    for axis in axes:
        ways.setdefault(axis.label, set()).add(_way_along(digits, axis))
    several = any(len(each) > 1 for each in ways.values())
    tilts = [
        Tilt(
            axis.label,
            axis.along,
            None if several else _way_along(digits, axis),
            axis.body,
            axis.element,
        )
        for axis in {axis.label: axis for axis in axes}.values()
    ]
    return tuple(sorted(tilts, key=lambda tilt: not tilt.along))


def axis_part(digits: Digits, step: Step) -> Iterator[Part]:
    """Which way a tilted axis runs."""
    axis = step.equation.axis
    if axis is None or axis in (X, Y):
        return
    way = _way_along(digits, axis)
    missing = _unknown_silent(digits, step)
    tilted = AxisTilted(axis.label, axis.along, way, missing, axis.element, axis.body)
    yield sentences(*_leaning(step.equation, axis), tilted)


def _leaning(equation: Equation, axis: Axis) -> Iterator[Fact]:
    """At what angles forces are to the member that an axis is square to; to a surface, if they are
    put together of several.
    """
    to_member = axis.lie is Lie.SQUARE_TO_MEMBER
    for term in equation.terms:
        match term.ratio:
            case Call("sin" | "cos" as turn, (angle,)) if to_member or isinstance(angle, Sum):
                square = (turn == "cos") is not axis.along
                yield Leaning(term.magnitude, angle, axis.element, square)


def _way_along(digits: Digits, axis: Axis) -> Way:
    return way_of(float(evaluate(axis.direction, digits.case.values)))


def _unknown_silent(digits: Digits, step: Step) -> tuple[Expression, ...]:
    """Forces of unknown size that a balance does not hold."""
    system = digits.case.system
    sizes = (system.force(id).magnitude for id in step.equation.silent)
    unknown = set(system.unknowns)
    return tuple(dict.fromkeys(size for size in sizes if names_in(size) & unknown))
