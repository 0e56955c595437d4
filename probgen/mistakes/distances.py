"""Slips with distances: one from elsewhere, or the whole way to a force, in place of its arm."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from probgen.mistakes.variant import Change, Misstep, Part, in_equations, on_terms, rewritten
from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Call,
    Expression,
    Name,
    Power,
    names_in,
    total,
)
from probgen.quantities.like_terms import collected
from probgen.quantities.unit import UnitSystem
from probgen.statics.equation import Equation, Term
from probgen.statics.geometry import angle_of, way
from probgen.statics.plan import Plan
from probgen.statics.system import Force, Kind


def over_legs(plan: Plan) -> Iterator[Misstep]:
    """The distance to a weight taken for its arm, where it lies so far across and so far up.

    Both lengths have a letter, which is what the statement gives.
    """
    for equation, force, term in _alone(plan):
        legs = [link.length for link in way(plan.system.points, equation.about, force.point)]
        level = angle_of(force.direction).along_axis and term.ratio == UNITY
        if force.kind is not Kind.WEIGHT or not level or len(legs) != 2:
            continue
        if term.length in legs and all(isinstance(leg, Name) for leg in legs):
            whole = Call("sqrt", (total(*((1, Power(leg, 2)) for leg in legs)),))
            changed = rewritten(plan, _with_arm(equation, force, whole))
            if changed:
                ends = {"A": equation.about, "P": force.point}
                told = {key: Name(end, end) for key, end in ends.items()}
                yield Misstep(
                    "distance_not_perpendicular", changed, "one", told | {"W": force.magnitude}
                )


def _arm_from_elsewhere(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The distance that tells where a force acts taken for its arm about a point elsewhere.

    Of the force that is sought, or of the only one known: nobody gets one of several alone wrong.
    """
    moved: dict[Equation, list[Force]] = {}
    for equation, force, term in _alone(plan):
        distance = _distance(plan, force)
        if distance and term.length and names_in(term.length) - names_in(distance):
            moved.setdefault(equation, []).append(force)
    for equation, force, term in _alone(plan):
        forces, distance = moved.get(equation, []), _distance(plan, force)
        known = [each for each in forces if not _unknown(plan, each.magnitude)]
        if force not in forces or (force in known and known != [force]):
            continue
        arm = collected(term.length) if term.length else ZERO
        told = isinstance(distance, Name) and distance.id in names_in(arm)
        if distance and told and not _unknown(plan, arm):
            changed = rewritten(plan, _with_arm(equation, force, distance))
            if changed:
                about = Name(equation.about, equation.about)
                parts: dict[str, Part] = {"d": distance, "F": force.magnitude, "P": about}
                yield Misstep("arm_from_elsewhere", changed, parts=parts | {"arm": arm})


def _distance(plan: Plan, force: Force) -> Expression | None:
    """The one length that tells where a force acts."""
    links = plan.system.points[force.point].links
    return links[0].length if len(links) == 1 else None


def _unknown(plan: Plan, expression: Expression) -> bool:
    return not names_in(expression).isdisjoint(plan.system.unknowns)


def _alone(plan: Plan) -> Iterator[tuple[Equation, Force, Term]]:
    """The forces that have one term in a torque balance, with it; what is sought first."""
    forces = {force.id: force for force in plan.system.forces}
    for step, equation in ((own, each) for own in plan.steps for each in own.equations):
        sources = [term.source for term in equation.terms]
        own = [term for term in equation.terms if sources.count(term.source) == 1]
        own.sort(key=lambda term: step.unknown not in names_in(term.magnitude))
        for term in own if equation.kind == "torque" else ():
            if term.source in forces:
                yield equation, forces[term.source], term


def _with_arm(equation: Equation, force: Force, length: Expression) -> Change:
    def put(term: Term) -> Term:
        return replace(term, length=length)

    return in_equations((equation,), on_terms(put, "torque", (force.id,)))


RULES: Final = {"arm_from_elsewhere": _arm_from_elsewhere}
