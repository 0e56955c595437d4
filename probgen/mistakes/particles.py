"""Slips in balances of forces: friction, normal forces, strands, signs, sizes simply added."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from itertools import combinations
from typing import Final

from probgen.mistakes.variant import (
    Misstep,
    Part,
    TermChange,
    dropped,
    facing,
    flipped,
    in_equations,
    letters,
    on_terms,
    renamed,
    replaced,
    restated,
    rewritten,
    sum_of,
    weights_on,
)
from probgen.quantities.expression import (
    UNITY,
    Expression,
    Name,
    names_in,
    number,
    substituted,
    times,
    total,
)
from probgen.quantities.unit import ANGLE, FORCE, LENGTH, MASS, UnitSystem
from probgen.statics.elimination import eliminated
from probgen.statics.equation import Equation, X, Y
from probgen.statics.plan import Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.step import Step
from probgen.statics.system import Force, ForcePart, Form, Kind, Role, System

_PULLS: Final = (Kind.CABLE, Kind.MUSCLE, Kind.ROPE, Kind.FORCE, Kind.STRUT)
_SURFACES: Final = (Kind.CONTACT, Kind.ROUGH)
_MANY: Final = 3
"""So many times a weight is a push that nobody takes for it: a judgement."""
_PARTLY: Final = (ForcePart.X, ForcePart.Y, ForcePart.FRICTION)


# Surfaces.


def _normal_is_weight(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """N = W of a particle that leans, is pulled up or down as well, or has something on it.

    Unlikely where two slopes bear it, as those of a cradle do.  Nobody does so where the push is
    many times the weight, as that of a press is.
    """
    found = {step.unknown for step in plan.steps}
    taken_out = {partner.unknown for step in plan.steps for partner in step.partners}
    for push in plan.system.forces:
        if push.kind not in _SURFACES or push.id not in found | taken_out:
            continue
        weights = weights_on(plan.system, push.body)
        way = _not_alone(plan.system, push)
        changed = _as_weight(plan, push, weights) if weights else None
        if changed is None and push.id in found:
            changed = replaced(plan, push.id, sum_of(weights))
        if way and weights and changed:
            told: dict[str, Part] = {"N": push.magnitude, "W": letters(weights)}
            cradled = way == "slope" and _cradled(plan.system, push)
            most = times(number(_MANY), sum_of(weights))
            near = total((1, most), (-1, push.magnitude)) if push.id in found else None
            yield Misstep("normal_is_weight", changed, way, told, unlikely=cradled, only_if=near)


def _as_weight(plan: Plan, push: Force, weights: Sequence[Force]) -> Plan | None:
    """The plan with only the push and the weights in the balance that holds both wholly."""
    kept = {push.id, *(weight.id for weight in weights)}
    for equation in (equation for step in plan.steps for equation in step.equations):
        whole = {term.source for term in equation.terms if term.ratio == UNITY}
        others = {term.source for term in equation.terms} - kept
        if equation.kind == "force" and kept <= whole and others:
            return rewritten(plan, in_equations((equation,), on_terms(dropped, sources=others)))
    return None


def _cradled(system: System, push: Force) -> bool:
    """Whether a particle leans on another slope too."""
    others = (f for f in system.forces if f.body == push.body and f.id != push.id)
    return any(f.part is ForcePart.NORMAL and facing(f) is None for f in others)


def _not_alone(system: System, push: Force) -> str:
    """Why a particle's normal force is not its weight: "slope", "pull", "carried"; "" if it is."""
    if push.part is not ForcePart.NORMAL or not system.body(push.body).particle:
        return ""
    others = [f for f in system.forces if f.body == push.body and f.id != push.id]
    if facing(push) is None:
        return "slope"
    if any(f.pair and f.part is ForcePart.NORMAL for f in others):
        return "carried" if not push.pair else ""
    oblique = [f for f in others if f.kind in _PULLS and facing(f) not in (0, 180)]
    return "pull" if oblique else ""


def _friction_of_weight(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """f = mu m g where the weight is not the normal force, which the working goes without."""
    found = {step.unknown for step in plan.steps}
    conditions = [e for s in plan.steps for e in s.equations if e.kind == "condition"]
    for push in plan.system.forces:
        if not _not_alone(plan.system, push) or push.id in found:
            continue
        weight = sum_of(weights_on(plan.system, push.body))
        for equation in conditions:
            f, most = (term.magnitude for term in equation.terms)
            if isinstance(f, Name) and push.id in names_in(most) and f.id in found:
                changed = replaced(plan, f.id, _with(most, push.id, weight))
                told: dict[str, Part] = {"f": f, "m": _with(most, push.id, weight)}
                yield Misstep("friction_of_weight", changed, parts=told)


def _with(expression: Expression, id: str, other: Expression) -> Expression:
    def shown(part: Expression) -> Expression | None:
        return other if isinstance(part, Name) and part.id == id else None

    return substituted(expression, shown)


def _friction_left_out(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for way, told, changed in _friction(plan, dropped):
        yield Misstep("friction_left_out", changed, way, told)
    yield from _without_sought_friction(plan)


def _without_sought_friction(plan: Plan) -> Iterator[Misstep]:
    """The balance that friction is found from used without it, for what else holds the body."""
    found: dict[str, Expression] = {}
    for step in plan.steps:
        frictions = {f.id for f in plan.system.forces if f.part is ForcePart.FRICTION}
        terms, equation = step.equation.terms, step.equation
        if step.unknown in frictions and equation.kind == "force" and len(terms) > 2:
            friction = next(term.magnitude for term in terms if term.source == step.unknown)
            smooth = on_terms(dropped, sources={step.unknown})(equation)
            for holding in [term.magnitude for term in terms if term.magnitude in found.values()]:
                (sought,) = names_in(holding)
                solved = eliminated((smooth.expression,), (sought,))
                if solved:
                    changed = replaced(plan, sought, solved[0].value)
                    yield Misstep("friction_left_out", changed, parts={"f": friction})
        found[step.unknown] = plan.system.variables[step.unknown].as_name


def _friction_reversed(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for way, told, changed in _friction(plan, flipped):
        yield Misstep("friction_reversed", changed, way, told)


def _friction(plan: Plan, change: TermChange) -> Iterator[tuple[str, dict[str, Part], Plan]]:
    """The balances changed in which friction is known, or at its limit, beside two other forces.

    Between two bodies it is changed on both, as who forgets or turns it does so throughout; where
    the balances of one of them give it, on the other.  One of the balances may have been solved
    with others, all of which are changed.
    """
    system = plan.system
    for force in system.forces:
        if force.part is not ForcePart.FRICTION or (force.pair and force.pair < force.id):
            continue
        both = [force, *(f for f in system.forces if f.id == force.pair)]
        known = [
            equation
            for step, equation in _balances(plan)
            if len(equation.terms) > 2
            and (not names_in(force.magnitude) & _sought(step) or _limited(step, force))
        ]
        groups = (step.equations for step in plan.steps)
        together = [e for group in groups if any(each in known for each in group) for e in group]
        changed = _changed_in(plan, together, change, {each.id for each in both})
        if changed:
            held = {term.source for equation in together for term in equation.terms}
            yield *_told_of(system, both, [each for each in both if each.id in held]), changed


def _told_of(
    system: System, both: Sequence[Force], changed: Sequence[Force]
) -> tuple[str, dict[str, Part]]:
    """The way of a slip and its parts: on which body, where the other has its friction right."""
    told: dict[str, Part] = {"f": both[0].magnitude}
    if len(changed) == len(both):
        return "", told
    return "one", told | {"body": system.body(changed[0].body)}


def _limited(step: Step, friction: Force) -> bool:
    """Whether balances are solved together with what friction is at its limit, f = mu N."""
    limits = (e.terms for e in step.equations if e.kind == "condition")
    return any(terms[0].magnitude == friction.magnitude for terms in limits)


# Balances of forces.


def _balances(plan: Plan) -> list[tuple[Step, Equation]]:
    return [(s, e) for s in plan.steps for e in s.equations if e.kind == "force"]


def _sought(step: Step) -> set[str]:
    return {step.unknown, *(partner.unknown for partner in step.partners)}


def _changed_in(
    plan: Plan,
    equations: Collection[Equation],
    change: TermChange,
    sources: Collection[str],
) -> Plan | None:
    """The terms of some forces changed in some balances only."""
    return rewritten(plan, in_equations(equations, on_terms(change, "force", sources)))


def _one_strand(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A rope that pulls twice on what is balanced, counted once."""
    ropes: dict[Expression, list[str]] = {}
    for force in plan.system.forces:
        if force.kind is Kind.ROPE:
            ropes.setdefault(force.magnitude, []).append(force.id)
    for letter, strands in ropes.items():
        both = [
            equation
            for _, equation in _balances(plan)
            if len({term.source for term in equation.terms} & set(strands)) > 1
        ]
        for strand in strands:
            changed = _changed_in(plan, both, dropped, {strand})
            if changed:
                yield Misstep("one_strand", changed, parts={"T": letter}, firm=True)


def _component_sign(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """One oblique force of a particle with a component the wrong way."""
    for _, equation in _balances(plan):
        if not all(plan.system.body(body).particle for body in equation.bodies):
            continue
        for term in equation.terms if len(equation.terms) > 2 else ():
            force = _force(plan.system, term.source)
            if term.ratio == UNITY or force is None:
                continue
            changed = _changed_in(plan, [equation], flipped, {term.source})
            if changed:
                level = equation.about in ("x", "y")
                told: dict[str, Part] = {"F": term.magnitude, "axis": equation.about}
                yield Misstep("component_sign", changed, "axis" if level else "tilted", told)


def _balance_sign(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """One weight the wrong way in the balance of forces of a body, or left out of it."""
    for step, equation in _balances(plan):
        for term in equation.terms if len(equation.terms) > 2 else ():
            force = _force(plan.system, term.source)
            if force is None or force.kind is not Kind.WEIGHT or step.partners:
                continue
            told: dict[str, Part] = {"W": force.magnitude}
            ways: dict[str, TermChange] = {"out": dropped, "turned": flipped}
            for way, change in ways.items():
                changed = _changed_in(plan, [equation], change, {force.id})
                if changed:
                    yield Misstep("balance_sign", changed, way, told, unlikely=True)


def _force(system: System, id: str) -> Force | None:
    return next((force for force in system.forces if force.id == id), None)


def _transmitted_left_out(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """What another body passes on left out: a lower basket on an upper spring."""
    for force in plan.system.forces:
        if not force.pair or force.part in _PARTLY:
            continue
        known = [
            step.equation
            for step in plan.steps
            if any(term.source == force.id for term in step.equation.terms)
            and not names_in(force.magnitude) & _sought(step)
        ]
        changed = rewritten(plan, in_equations(known, on_terms(dropped, sources={force.id})))
        if changed:
            told: dict[str, Part] = {"F": force.magnitude, "body": plan.system.body(force.body)}
            acting = (e for s in plan.steps for e in s.equations if e not in known)
            way = ""
            if any(term.source == force.id for each in acting for term in each.terms):
                axes = {each.about for each in known}
                way, told["axis"] = "part", axes.pop()
                if axes or told["axis"] not in (X.label, Y.label):
                    continue  # nobody sees which part it is
            yield Misstep("transmitted_left_out", changed, way, told)


def _sizes_added(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Two known oblique forces at a point added as numbers, not as arrows."""
    system = plan.system
    for body in (body for body in system.bodies if body.particle):
        on = [force for force in system.forces if force.body == body.id]
        known = [f for f in on if not names_in(f.magnitude) & set(system.unknowns)]
        balancing = {f.element for f in on if f not in known}
        if len(known) < 2 or len(balancing) != 1 or any(f.kind is Kind.WEIGHT for f in known):
            continue
        (one,) = balancing
        told: dict[str, Part] = {"F": letters(known), "R": system.element(one)}
        if any(find == (one, Form.MAGNITUDE_AND_DIRECTION) for find in _asked(plan)):
            changed = restated(plan, {Quantity(one).magnitude: sum_of(known)})
        else:
            changed = replaced(plan, one, sum_of(known))
        if changed != plan:
            yield Misstep("sizes_added", changed, parts=told)


def _asked(plan: Plan) -> list[tuple[str, Form]]:
    return [(find.quantity, find.form) for find in plan.system.finds]


# Data.


def _exchanged(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Two coefficients, two stiffnesses, or the angles of two cords, one for the other."""
    alone = len(plan.system.bodies) == 1 and plan.system.bodies[0].particle
    given = [v for v in plan.system.variables.values() if v.role is Role.GIVEN]
    for one, other in combinations(given, 2):
        plain = one.dimension not in (LENGTH, MASS, FORCE) and (one.dimension != ANGLE or alone)
        if one.dimension != other.dimension or not plain:
            continue
        a, b = one.as_name, other.as_name
        changed = renamed(plan, {a.id: b, b.id: a})
        if changed:
            yield Misstep("exchanged", changed, parts={"a": a, "b": b})


RULES: Final = {
    "normal_is_weight": _normal_is_weight,
    "friction_of_weight": _friction_of_weight,
    "friction_left_out": _friction_left_out,
    "friction_reversed": _friction_reversed,
    "one_strand": _one_strand,
    "component_sign": _component_sign,
    "balance_sign": _balance_sign,
    "transmitted_left_out": _transmitted_left_out,
    "sizes_added": _sizes_added,
    "exchanged": _exchanged,
}
