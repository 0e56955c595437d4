"""What is oblique in the balances of a plan: what slips with angles are made on."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from probgen.quantities.expression import UNITY, Expression
from probgen.statics.equation import Equation
from probgen.statics.plan import Plan
from probgen.statics.system import Force


def oblique_forces(plan: Plan) -> list[Force]:
    """Forces that some balance of the plan takes only a part of, in the order they act."""
    sources = {
        term.source
        for step in plan.steps
        for term in step.equation.terms
        if step.equation.kind != "condition" and term.ratio != UNITY
    }
    return [force for force in plan.system.forces if force.id in sources]


def letters_of(forces: Iterable[Force]) -> dict[Expression, tuple[str, ...]]:
    """The ids of forces by their letter: both strands of a rope pull with one T."""
    ids: dict[Expression, tuple[str, ...]] = {}
    for force in forces:
        ids[force.magnitude] = (*ids.get(force.magnitude, ()), force.id)
    return ids


def torques_of(plan: Plan) -> list[Equation]:
    """The balances of torques that a plan uses."""
    return [e for step in plan.steps for e in step.equations if e.kind == "torque"]


def common(equation: Equation, sources: Collection[str]) -> bool:
    """Whether all terms are those of some forces and have one ratio, which then cancels."""
    ratios = {term.ratio for term in equation.terms}
    return len(ratios) == 1 and oblique_in(equation) <= set(sources)


def spoilt_of(plan: Plan, sources: Collection[str]) -> set[str]:
    """Of some forces those in balances of torques that come out wrong with other ratios of all."""
    wrong = (oblique_in(each) for each in torques_of(plan) if not common(each, sources))
    return set(sources) & set[str]().union(*wrong)


def oblique_in(equation: Equation) -> set[str]:
    """What an equation takes only a part of."""
    return {term.source for term in equation.terms if term.ratio != UNITY}
