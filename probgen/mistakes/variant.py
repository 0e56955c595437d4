"""A plan gone wrong: a change of the right working, solved again.

What a change touches is solved again in symbols, once for a template; evaluating the result then
gives the wrong values of one draw or of a whole class.  No wrong number is ever written down.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Final

import numpy as np

from probgen.quantities.expression import (
    Call,
    Expression,
    Name,
    Product,
    Quotient,
    Value,
    evaluate,
    names_in,
    substituted,
)
from probgen.statics.derivation import Step
from probgen.statics.equation import Equation, Term
from probgen.statics.geometry import way
from probgen.statics.plan import Outcome, Plan
from probgen.statics.solve_for import eliminated
from probgen.statics.system import Body, Force, Kind, Role, System

Part = Expression | tuple[Expression, ...] | str
Change = Callable[[Equation], Equation]
TermChange = Callable[[Term], Term | None]


@dataclass(frozen=True, slots=True)
class Misstep:
    """A working with one slip in it.

    slip: the slip's id; way: which of its ways, "" where there is only one.
    plan: the working with the slip; its values are the wrong ones.
    parts: what the slip is made on, by the name a sentence calls it: letters or words.
    figures: intermediate results are cut to so many significant figures; 0: carried in full.
    """

    slip: str
    plan: Plan
    way: str = ""
    parts: Mapping[str, Part] = field(default_factory=dict)
    figures: int = 0


def workable(plan: Plan) -> bool:
    """Whether every line of a plan uses only what is given or has been found before it."""
    roles = (Role.GIVEN, Role.DERIVED, Role.CONSTANT)
    known = {v.id for v in plan.system.variables.values() if v.role in roles}
    for id, expression in _lines(plan):
        if not names_in(expression) <= known:
            return False
        known.add(id)
    return True


def _lines(plan: Plan) -> list[tuple[str, Expression]]:
    """What is worked out, in order: definitions, steps, what is put together at the end."""
    lines = [(d.variable, d.expression) for d in plan.definitions]
    lines += [(step.unknown, step.expression) for step in plan.steps]
    return lines + [(outcome.id, outcome.expression) for outcome in plan.outcomes]


def wrong_values(misstep: Misstep, values: Mapping[str, Value]) -> dict[str, Value]:
    """What a student with this slip finds: everything the plan reaches, coherent units.

    values: givens, derived quantities and g; floats for one draw or arrays with one entry a draw.
    What the slip makes impossible is not finite.
    """
    found: dict[str, Value] = {}
    carried, figures = dict(values), misstep.figures
    with np.errstate(all="ignore"):
        for id, expression in _lines(misstep.plan):
            found[id] = evaluate(expression, carried)
            carried[id] = _cut(found[id], figures) if figures else found[id]
    return found


_SMALLEST: Final = 1e-300  # stands in for zero, which has no order of magnitude


def _cut(value: Value, figures: int) -> Value:
    order = np.floor(np.log10(np.maximum(np.abs(value), _SMALLEST)))
    place = 10.0 ** (order - (figures - 1))
    cut: Value = np.round(value / place) * place
    return cut


def rewritten(plan: Plan, change: Change) -> Plan | None:
    """The plan with its equations changed and solved again for the same unknowns.

    A size that cannot be negative is taken without its sign, as a student would report it.  None
    when the change touches nothing, or leaves an equation that cannot be solved.
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
    steps = []
    for each in solved:
        size = plan.system.variables[each.unknown].nonnegative
        value = Call("abs", (each.value,)) if size else each.value
        steps.append(Step(each.unknown, equations[each.place], value, first.removed))
    return (replace(steps[0], partners=tuple(steps[1:])), *steps[1:])


def on_terms(change: TermChange, kind: str = "", source: str = "") -> Change:
    """A change of the terms of balances; a term for which it gives None is dropped.

    kind: of "force" or "torque" balances only; source: of one force only; "" for all.
    """

    def changed(equation: Equation) -> Equation:
        if equation.kind == "condition" or kind not in ("", equation.kind):
            return equation
        terms = [change(term) if source in ("", term.source) else term for term in equation.terms]
        return replace(equation, terms=tuple(term for term in terms if term is not None))

    return changed


def renamed(plan: Plan, names: Mapping[str, Expression]) -> Plan | None:
    """The plan with other expressions in the places of some quantities, wherever they stand."""

    def shown(part: Expression) -> Expression | None:
        return names.get(part.id) if isinstance(part, Name) else None

    def put(expression: Expression) -> Expression:
        return substituted(expression, shown) if names_in(expression) & names.keys() else expression

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
    ends = [Outcome(id, results.get(id, old)) for id, old in _outcomes(plan)]
    known = {id for id, _ in _outcomes(plan)}
    first = [Outcome(id, expression) for id, expression in results.items() if id not in known]
    return replace(plan, outcomes=(*first, *ends))


def _outcomes(plan: Plan) -> list[tuple[str, Expression]]:
    return [(outcome.id, outcome.expression) for outcome in plan.outcomes]


def replaced(plan: Plan, unknown: str, expression: Expression) -> Plan:
    """The plan with one step's result taken from elsewhere; later steps go on with it."""
    steps = tuple(
        replace(step, expression=expression) if step.unknown == unknown else step
        for step in plan.steps
    )
    return replace(plan, steps=steps)


def with_sign_of(right: Expression, wrong: Expression) -> Expression:
    """The size of a wrong ratio with the sign of the right one: only the function is mistaken."""
    sign = Quotient(right, Call("abs", (right,)))
    return Product((sign, Call("abs", (wrong,))))


# What rules ask of a system.


def own_weights(system: System) -> tuple[Force, ...]:
    """The weights of the bodies themselves, known by the noun of what weighs."""
    nouns = {body.id: (body.name, f"the {body.name}") for body in system.bodies}
    return tuple(
        force
        for force in system.forces
        if force.kind is Kind.WEIGHT and force.source in nouns.get(force.body, ())
    )


def axis_of(system: System, body: Body) -> Expression | None:
    """The direction of a straight body, degrees from +x; None for a bent one or a particle."""
    links = way(system.points, body.outline[0], body.outline[-1])
    return links[0].direction if len(links) == 1 else None
