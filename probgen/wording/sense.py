"""Whether a result is sensible: a pull beside the weights that it holds."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from probgen.quantities.expression import Number, evaluate, names_in
from probgen.quantities.rounding import round_figures
from probgen.quantities.unit import FORCE
from probgen.statics.equation import Equation
from probgen.statics.plan import Plan
from probgen.statics.system import Body, Force, Kind
from probgen.wording.facts.ending import ArmAmong, PullCompared
from probgen.working.digits import Digits
from probgen.working.fact import Fact

_PULLS = (Kind.CABLE, Kind.MUSCLE)


def sense_of(digits: Digits, body: Body) -> Iterator[Fact]:
    """How a pull that alone holds the weights of a body compares with them, and why."""
    values = digits.case.values
    found = _one_pull_against_weights(digits.case.plan, body)
    if found is None:
        return
    equation, pull, weights = found
    turning = signed_arms(equation, values)
    arms = [turning.get(weight.id, 0.0) for weight in weights]
    sizes = [float(evaluate(weight.magnitude, values)) for weight in weights]
    against = all(arm * turning[pull.id] <= 0.0 for arm in arms)
    among = _among(abs(turning[pull.id]), [abs(arm) for arm in arms])
    if among is None or not against or sum(sizes) <= 0.0 or values[pull.id] <= 0.0:
        return
    yield PullCompared(
        pull.magnitude,
        Number(round_figures(values[pull.id] / sum(sizes), 2)),
        digits.carried(sum(sizes), FORCE),
        several=len(weights) > 1,
        arm=among,
    )


def _one_pull_against_weights(
    plan: Plan, body: Body
) -> tuple[Equation, Force, tuple[Force, ...]] | None:
    """A torque balance of the body that holds one pull and weights, and nothing else."""
    on = {force.id: force for force in plan.system.forces if force.body == body.id}
    weights = tuple(force for force in on.values() if force.kind is Kind.WEIGHT)
    for step in plan.steps:
        equation = step.equation
        if equation.kind != "torque" or equation.bodies != (body.id,):
            continue
        held = [on.get(source) for source in dict.fromkeys(t.source for t in equation.terms)]
        pulls = [force for force in held if force and force.kind in _PULLS]
        alone = len(pulls) == 1 and all(f and (f in pulls or f in weights) for f in held)
        if alone and weights and pulls[0].id == step.unknown and _sizes_known(plan, weights):
            return equation, pulls[0], weights
    return None


def _sizes_known(plan: Plan, weights: tuple[Force, ...]) -> bool:
    """Whether no weight is itself looked for."""
    sought = {step.unknown for step in plan.steps}
    return not any(names_in(weight.magnitude) & sought for weight in weights)


def signed_arms(equation: Equation, values: Mapping[str, float]) -> dict[str, float]:
    """Signed lever arm (m) of each force in a torque balance, its sense by the sign."""
    arms: dict[str, float] = {}
    for term in equation.terms:
        if term.length is not None:
            arm = float(evaluate(term.length, values)) * float(evaluate(term.ratio, values))
            arms[term.source] = arms.get(term.source, 0.0) + term.sign * arm
    return arms


def _among(arm: float, others: list[float]) -> ArmAmong | None:
    """None between those of several, where a pull may be more or less than all of them."""
    if arm < min(others):
        return ArmAmong.SHORTER
    if arm > max(others):
        return ArmAmong.LONGER
    return ArmAmong.EQUAL if len(others) == 1 else None
