"""A look back where every balance of single bodies is used, or holds forces that were not told.

Equations solved together give more than was sought; bodies taken as one have balances of their
own; results can be put back into equations that were solved together; and forces on a particle
balance along the line of any of them.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from probgen.quantities.expression import ZERO, Expression, Number, evaluate, names_in
from probgen.quantities.rounding import exact, last_place
from probgen.quantities.unit import FORCE
from probgen.statics.equation import Axis, Equation, Lie, X, Y, force_balance, oriented
from probgen.statics.plan import Plan
from probgen.statics.system import Body, Force
from probgen.statics.taken_as_one import acting_on
from probgen.wording.block import Display, Row
from probgen.wording.facts.ending import (
    GivenBesides,
    PutBackForces,
    PutBackTorques,
    UnusedAxis,
    UnusedLine,
    UnusedPivot,
    UnusedWhole,
)
from probgen.wording.passage import Part, sentences
from probgen.wording.summed import as_found, summed
from probgen.wording.unused import Looked, as_unused, chosen
from probgen.working.digits import Digits
from probgen.working.direction import way_of
from probgen.working.fact import Fact
from probgen.working.line import HALF, USUAL_GUARD

_LINE: Final = "∥"  # the label of an axis along a force
_SLANT: Final = 0.01  # of the sine and the cosine of a force that stands at a slant

Looks = Iterator[tuple[Body, tuple[Part, ...]]]


def opening_of(digits: Digits, equation: Equation) -> Fact:
    """What is said of a balance that was not used."""
    if equation.kind == "force":
        return UnusedAxis(equation.about)
    return UnusedPivot(equation.about, digits.convention.turning)


def looks_besides(digits: Digits, bodies: Sequence[Looked]) -> Looks:
    """At a balance of each body that was not used, after the forces that equations solved together
    give too, each told once.
    """
    given, known = _given(digits)
    for body, unused in bodies if given else ():
        equation = chosen(digits, unused, known)
        if equation is not None:
            besides = _besides(digits, given, equation, known)
            yield body, (*besides, *summed(digits, opening_of(digits, equation), equation, known))


def look_at_whole(digits: Digits, bodies: Sequence[Body]) -> tuple[Part, ...]:
    """At all bodies taken as one, where each acts on another: what acts between them drops out."""
    system, plan = digits.case.system, digits.case.plan
    ids = tuple(body.id for body in bodies)
    _, between = acting_on(system, ids)
    if len(ids) < 2 or {force.body for force in between} != set(ids):
        return ()
    used = {each.about for s in plan.steps for each in s.equations if each.bodies == ids}
    axes = (axis for axis in (X, Y) if axis.label not in used)
    balances = (force_balance(system, ids, axis, plan.method) for axis in axes)
    unused = tuple(as_unused(each) for each in balances if each.terms)
    given, known = _given(digits)
    equation = chosen(digits, unused, digits.case.values) or chosen(digits, unused, known)
    if equation is None:
        return ()
    opening = UnusedWhole(ids, equation.about)
    besides = _besides(digits, given, equation, known)
    return (*besides, *summed(digits, opening, equation, known))


def looks_put_back(digits: Digits, bodies: Sequence[Body]) -> Looks:
    """For each group of equations solved together the balance that all others were put into, with
    every result in it: that it holds tells whether they were put together rightly.
    """
    given, known = _given(digits)
    own = {body.id: body for body in bodies}
    for step in digits.case.plan.steps:
        equation = step.equation
        told = equation.kind != "condition" and set(equation.bodies) <= own.keys()
        if not step.partners or not told or not names_in(equation.expression) <= known.keys():
            continue
        opening: Fact = PutBackForces(equation.about)
        if equation.kind == "torque":
            opening = PutBackTorques(equation.about, digits.convention.turning)
        besides = _besides(digits, given, equation, known)
        yield own[equation.body], (*besides, *summed(digits, opening, equation, known))


def looks_along(digits: Digits, bodies: Sequence[Body]) -> Looks:
    """At the forces on each particle along the line of one that stands at a slant, found if any is.

    Its angle has a letter: 60° would be turned into 30° without a word.  Not in a course that keeps
    to x and y.
    """
    system, method = digits.case.system, digits.case.plan.method
    values = digits.case.values
    if method.axes == "level":
        return
    found = {step.unknown for step in digits.case.plan.steps}
    for body in bodies:
        on = [force for force in system.forces if force.body == body.id and body.particle]
        lines = [force for force in on if _slants(force, values)]
        lines.sort(key=lambda force: not names_in(force.magnitude) & found)
        for force in lines[:1]:
            axis = Axis(_LINE, force.direction, Lie.ALONG_BODY)
            equation = oriented(force_balance(system, (body.id,), axis, method), values)
            if names_in(equation.expression) <= values.keys():
                way = way_of(float(evaluate(force.direction, values)))
                opening = UnusedLine(_LINE, force.magnitude, way)
                yield body, summed(digits, opening, equation, values)


def _slants(force: Force, values: Mapping[str, float]) -> bool:
    if not names_in(force.direction) or not names_in(force.direction) <= values.keys():
        return False
    turned = math.radians(float(evaluate(force.direction, values)))
    return min(abs(math.sin(turned)), abs(math.cos(turned))) > _SLANT


def _given(digits: Digits) -> tuple[dict[str, Expression], dict[str, float]]:
    """The forces without a value that equations solved together give besides what was sought, each
    after those that it is worked out from; and all values with theirs, coherent units.
    """
    given, known = besides_sought(digits.case.plan, digits.case.values), dict(digits.case.values)
    for id, expression in given.items():
        known[id] = float(evaluate(expression, known))
    return given, known


def besides_sought(plan: Plan, values: Mapping[str, float]) -> dict[str, Expression]:
    """The forces that steps solved together with others give, but for those with a value."""
    partners = {each.unknown: each for step in plan.steps for each in step.partners}
    variables = plan.system.variables
    waiting = {
        id: each.expression
        for id, each in partners.items()
        if id not in values and variables[id].dimension == FORCE
    }
    found: dict[str, Expression] = {}
    while ready := [i for i, e in waiting.items() if names_in(e) <= values.keys() | found.keys()]:
        found |= {id: waiting.pop(id) for id in ready}
    return found


def _besides(
    digits: Digits, given: dict[str, Expression], equation: Equation, known: Mapping[str, float]
) -> tuple[Part, ...]:
    """The forces in an equation that were not told, from the equations that gave them; they are
    taken out of what is given.
    """
    wanted = set(names_in(equation.expression))
    for id in reversed(list(given)):
        if id in wanted:
            wanted |= names_in(given[id])
    told = {id: given.pop(id) for id in list(given) if id in wanted}
    if not told:
        return ()
    rows = tuple(row for id in told for row in found_rows(digits, id, told[id], known))
    names = tuple(digits.case.system.variables[id].as_name for id in told)
    return (sentences(GivenBesides(names)), Display(rows))


def found_rows(
    digits: Digits, id: str, expression: Expression, known: Mapping[str, float]
) -> Iterator[Row]:
    """A force not found before, in symbols and its number, which what is printed before gives."""
    shown = as_found(digits, float(evaluate(expression, known)))
    if names_in(expression) <= digits.case.values.keys():
        _reach(digits, expression, shown)
    left = (digits.case.system.variables[id].as_name,)
    if expression != ZERO:
        yield Row(left, "=", (expression,))
    yield Row(() if expression != ZERO else left, "=", (shown,))


def _reach(digits: Digits, expression: Expression, shown: Number) -> None:
    """Gives what an expression holds the digits that give a number, where few are enough."""
    last = last_place(shown.value) * exact(digits.units.unit_of(FORCE).factor)
    for guard in digits.guards.attempts(USUAL_GUARD):
        worked = float(evaluate(digits.put_in(expression, guard), {}))
        if abs(worked - float(evaluate(shown, {}))) <= HALF * float(last):
            digits.guards.end_line()
            return
    digits.guards.leave_line()
