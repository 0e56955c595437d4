"""A plan gone wrong: a change of the right working, solved again.

What a change touches is solved again in symbols, once for a template; evaluating the result then
gives the wrong values of one draw or of a whole class.  No wrong number is ever written down.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from typing import Final

import numpy as np

from probgen.quantities.expression import (
    Call,
    Expression,
    Name,
    Product,
    Quotient,
    Value,
    names_in,
    substituted,
    total,
)
from probgen.quantities.unit import Unit
from probgen.statics.elimination import eliminated
from probgen.statics.equation import Equation, Term, torque_balance
from probgen.statics.geometry import angle_of, way
from probgen.statics.line import in_full
from probgen.statics.plan import Outcome, Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.rerun import rerun
from probgen.statics.step import Step
from probgen.statics.system import (
    Body,
    Element,
    Force,
    Kind,
    Limit,
    Point,
    Role,
    System,
)

Part = Expression | tuple[Expression, ...] | Body | Element | Limit | Unit | str
Change = Callable[[Equation], Equation]
TermChange = Callable[[Term], Term | None]


@dataclass(frozen=True, slots=True)
class Misstep:
    """A working with one slip in it.

    slip: the slip's id; way: which of its ways, "" where there is only one.
    plan: the working with the slip; its values are the wrong ones.
    parts: what the slip is made on, by the name a sentence calls it: quantities, a body, a support,
    units.
    figures: intermediate results are cut to so many significant figures; 0: carried in full.
    unlikely: the statement prints or shows what the slip overlooks, so that few will make it.
    only_if: what must be positive, with the right values, for anybody to make it; None: nothing.
    firm: the situation is set for it, so that it is told of where any of its numbers could be
    given, whatever follows.
    """

    slip: str
    plan: Plan
    way: str = ""
    parts: Mapping[str, Part] = field(default_factory=dict)
    figures: int = 0
    unlikely: bool = False
    only_if: Expression | None = None
    firm: bool = False


def workable(plan: Plan) -> bool:
    """Whether every line of a plan uses only what is given or has been found before it."""
    roles = (Role.GIVEN, Role.DERIVED, Role.CONSTANT)
    known = {v.id for v in plan.system.variables.values() if v.role in roles}
    for id, expression in plan.lines:
        if not names_in(expression) <= known:
            return False
        known.add(id)
    return True


def wrong_values(misstep: Misstep, values: Mapping[str, Value]) -> dict[str, Value]:
    """What a student with this slip finds: everything the plan reaches, coherent units.

    values: givens, derived quantities and g; floats for one draw or arrays with one entry a draw.
    What the slip makes impossible is not finite, nor is what follows from it: who finds a rope that
    pushes, or a length below zero, looks for the mistake and does not leave the sign out.
    """
    plan = misstep.plan
    carry = partial(cut, figures=misstep.figures) if misstep.figures else in_full
    found = rerun(plan, values, carry=carry)
    if turned := _turned(plan, found):
        found = rerun(plan, values, turned, carry)
    return {line.id: found[line.id] for line in plan.lines}


def _turned(plan: Plan, found: Mapping[str, Value]) -> dict[str, Value]:
    """Sizes that cannot be negative and come out so, with no number where they do."""
    sizes = {id: v for id, v in plan.system.variables.items() if v.nonnegative}
    turned: dict[str, Value] = {}
    for id in (line.id for line in plan.lines if line.id in sizes):
        below = np.less(found[id], -_DUST * np.maximum(1.0, np.abs(found[id])))
        if below.any():
            turned[id] = np.where(below, np.nan, found[id])[()]
    return turned


_DUST: Final = 1e-9  # what only the rounding of floats leaves below nothing


_SMALLEST: Final = 1e-300  # stands in for zero, which has no order of magnitude


def cut(value: Value, figures: int) -> Value:
    """A value with so many significant figures, rounded."""
    order = np.floor(np.log10(np.maximum(np.abs(value), _SMALLEST)))
    place = 10.0 ** (order - (figures - 1))
    cut: Value = np.round(value / place) * place
    return cut


def rewritten(plan: Plan, change: Change) -> Plan | None:
    """The plan with its equations changed and solved again for the same unknowns.

    None when the change touches nothing, or leaves an equation that cannot be solved.
    """
    steps: list[Step] = []
    touched = False
    for group in _groups(plan):
        if all(change(equation) == equation for equation in group[0].equations):
            steps += group
            continue
        again = _solved_again(plan, group[0], change)
        if again is None:
            return None
        steps += again
        touched = True
    return replace(plan, steps=tuple(steps)) if touched else None


def _groups(plan: Plan) -> Iterator[tuple[Step, ...]]:
    """The steps one by one, those of equations that are solved together in one group."""
    place = 0
    while place < len(plan.steps):
        first = plan.steps[place]
        partners = {partner.unknown for partner in first.partners}
        end = place + 1
        while end < len(plan.steps) and plan.steps[end].unknown in partners:
            end += 1
        yield plan.steps[place:end]
        place = end


def _solved_again(plan: Plan, first: Step, change: Change) -> tuple[Step, ...] | None:
    """The steps of a group whose equations are changed; all of them, also where few were needed."""
    equations = tuple(change(equation) for equation in first.equations)
    names = (first.unknown, *(partner.unknown for partner in first.partners))
    solved = eliminated(tuple(e.expression for e in equations), names)
    if solved is None:
        return None
    steps = [Step(e.unknown, equations[e.place], e.value, first.removed) for e in solved]
    return (replace(steps[0], partners=tuple(steps[1:])), *steps[1:])


def on_terms(change: TermChange, kind: str = "", sources: Collection[str] = ()) -> Change:
    """A change of the terms of balances; a term for which it gives None is dropped.

    kind: of "force" or "torque" balances only, "" for both; sources: of some forces, none for all.
    """

    def changed(equation: Equation) -> Equation:
        if equation.kind == "condition" or kind not in ("", equation.kind):
            return equation
        terms = [
            change(term) if not sources or term.source in sources else term
            for term in equation.terms
        ]
        return replace(equation, terms=tuple(term for term in terms if term is not None))

    return changed


def renamed(plan: Plan, names: Mapping[str, Expression]) -> Plan | None:
    """The plan with other expressions in the places of some quantities, wherever they stand."""

    def shown(part: Expression) -> Expression | None:
        return names.get(part.id) if isinstance(part, Name) else None

    return _with_parts(plan, names.keys(), shown)


def exchanged(plan: Plan, parts: Mapping[Expression, Expression]) -> Plan | None:
    """The plan with other expressions in the places of some parts, wherever they stand."""
    held = frozenset[str]().union(*map(names_in, parts))
    return _with_parts(plan, held, parts.get)


def _with_parts(
    plan: Plan, held: Collection[str], shown: Callable[[Expression], Expression | None]
) -> Plan | None:
    """The plan with parts that hold some of these names shown otherwise."""

    def put(expression: Expression) -> Expression:
        touched = not names_in(expression).isdisjoint(held)
        return substituted(expression, shown) if touched else expression

    def change(equation: Equation) -> Equation:
        return replace(equation, terms=tuple(_put_in_term(term, put) for term in equation.terms))

    definitions = tuple(replace(d, expression=put(d.expression)) for d in plan.definitions)
    changed = rewritten(plan, change)
    if changed is None:
        untouched = all(change(step.equation) == step.equation for step in plan.steps)
        if not untouched or definitions == plan.definitions:
            return None
        changed = plan
    return replace(changed, definitions=definitions)


def _put_in_term(term: Term, put: Callable[[Expression], Expression]) -> Term:
    length = None if term.length is None else put(term.length)
    return replace(term, magnitude=put(term.magnitude), ratio=put(term.ratio), length=length)


def restated(plan: Plan, results: Mapping[str, Expression]) -> Plan:
    """The plan with some results put together otherwise after everything has been found.

    A component that is stated otherwise changes the magnitude and direction made of it.
    """
    ends = [replace(end, expression=results.get(end.id, end.expression)) for end in plan.outcomes]
    known = {outcome.id for outcome in plan.outcomes}
    first = [
        Outcome(Quantity(id), expression) for id, expression in results.items() if id not in known
    ]
    return replace(plan, outcomes=(*first, *ends))


def replaced(plan: Plan, unknown: str, expression: Expression) -> Plan:
    """The plan with one result taken from elsewhere; what needs it goes on with it.

    Steps are put in an order in which each uses what has been found, where there is one.
    """
    definitions = tuple(
        replace(each, expression=expression) if each.variable == unknown else each
        for each in plan.definitions
    )
    steps = tuple(
        replace(step, expression=expression) if step.unknown == unknown else step
        for step in plan.steps
    )
    return replace(plan, definitions=definitions, steps=_in_order(steps))


def _in_order(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Steps, each after those whose results it uses; as they are where that cannot be."""
    waiting, ordered = list(steps), list[Step]()
    while waiting:
        unfound = {step.unknown for step in waiting}
        ready = next((s for s in waiting if not names_in(s.expression) & unfound), None)
        if ready is None:
            return steps
        waiting.remove(ready)
        ordered.append(ready)
    return tuple(ordered)


def with_sign_of(right: Expression, wrong: Expression) -> Expression:
    """The size of a wrong ratio with the sign of the right one: only the function is mistaken."""
    sign = Quotient(right, Call("abs", (right,)))
    return Product((sign, Call("abs", (wrong,))))


# What rules ask of a system.


def own_weights(system: System) -> tuple[Force, ...]:
    """The weights of the bodies themselves."""
    own = {element.id for element in system.elements if element.own}
    return tuple(force for force in system.forces if force.element in own)


def flipped(term: Term) -> Term:
    """The term with the other sign."""
    return replace(term, sign=-term.sign)


def dropped(term: Term) -> None:
    """No term at all."""


def in_equations(equations: Collection[Equation], change: Change) -> Change:
    """The change made in some equations only."""
    return lambda equation: change(equation) if equation in equations else equation


def moved(system: System, force: Force, point: Point) -> Change:
    """The force's torques taken as if it acted at another point, which may be a new one."""
    points = {**system.points, point.id: point}
    return _torques_of(replace(system, points=points), replace(force, point=point.id))


def turned(system: System, force: Force, direction: Expression) -> Change:
    """The force's torques taken as if it acted in another direction (degrees from +x)."""
    return _torques_of(system, replace(force, direction=direction))


def _torques_of(system: System, wrong: Force) -> Change:
    """The torques of a force as those of a wrong one in its place."""
    others = tuple(force for force in system.forces if force.id != wrong.id)
    elsewhere = replace(system, forces=(*others, wrong))

    def change(equation: Equation) -> Equation:
        if equation.kind != "torque" or wrong.body not in equation.bodies:
            return equation
        kept = tuple(term for term in equation.terms if term.source != wrong.id)
        again = torque_balance(elsewhere, equation.bodies, equation.about, equation.method)
        new = tuple(term for term in again.terms if term.source == wrong.id)
        return replace(equation, terms=(*kept, *new))

    return change


def weights_on(system: System, body: str) -> list[Force]:
    """The weights that act on a body, its own and what it carries."""
    return [force for force in system.forces if force.kind is Kind.WEIGHT and force.body == body]


def sum_of(forces: Iterable[Force]) -> Expression:
    """The sizes of forces added."""
    return total(*((1, force.magnitude) for force in forces))


def letters(forces: Iterable[Force]) -> tuple[Expression, ...]:
    """The letters of forces, each once: one rope pulls in several places."""
    return tuple(dict.fromkeys(force.magnitude for force in forces))


def facing(force: Force) -> int | None:
    """The direction of a force where it is a number of whole degrees."""
    angle = angle_of(force.direction)
    return None if angle.multiples else int(angle.constant) % 360


def axis_of(system: System, body: Body) -> Expression | None:
    """The direction of a straight body, degrees from +x; None for a bent one or a particle."""
    links = way(system.points, body.outline[0], body.outline[-1])
    return links[0].direction if len(links) == 1 else None
