"""Slips with what holds a body: joints, cables, surfaces and their friction."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from dataclasses import replace
from typing import Final

from probgen.mistakes.variant import (
    Misstep,
    Part,
    axis_of,
    dropped,
    facing,
    flipped,
    in_equations,
    letters,
    on_terms,
    own_weights,
    replaced,
    restated,
    rewritten,
    sum_of,
    weights_on,
    with_sign_of,
)
from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Call,
    Expression,
    Name,
    Product,
    Quotient,
    names_in,
    negative,
    number,
    total,
)
from probgen.quantities.unit import PLAIN, UnitSystem
from probgen.statics.equation import Term
from probgen.statics.plan import Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.step import Step
from probgen.statics.system import Element, Force, ForcePart, Kind, System

_PULLS: Final = (Kind.CABLE, Kind.MUSCLE, Kind.ROPE)
_CABLES: Final = (Kind.CABLE, Kind.ROPE)
_APPLIED: Final = (*_PULLS, Kind.FORCE)
_SURFACES: Final = (Kind.CONTACT, Kind.ROUGH, Kind.ROLLER)


def components(system: System, joint: Element) -> tuple[Name, Name]:
    """The letters of a joint's components along x and y."""
    x, y = (system.variables[id].as_name for id in Quantity(joint.id).components)
    return x, y


def resultants(plan: Plan) -> list[Element]:
    """The joints whose magnitude and direction the plan ends with."""
    asked = {outcome.id for outcome in plan.outcomes}
    return [e for e in plan.system.elements if Quantity(e.id).magnitude in asked]


def _leaning(plan: Plan) -> list[Element]:
    """Those of them that have two components."""
    return [joint for joint in resultants(plan) if not _upright(plan, joint)]


def _joints(plan: Plan) -> list[Element]:
    """The hinges of which the plan finds both components."""
    found = {step.unknown for step in plan.steps}
    return [
        element
        for element in plan.system.elements
        if element.kind == Kind.HINGE and {*Quantity(element.id).components} <= found
    ]


def _upright(plan: Plan, joint: Element) -> bool:
    """Whether nothing pushes a joint sideways, so that it has one component only."""
    sideways = [*_results(plan, Quantity(joint.id).x)]
    return bool(sideways) and all(expression == ZERO for expression in sideways)


def _results(plan: Plan, id: str) -> Iterator[Expression]:
    """What a plan works a quantity out from."""
    yield from (step.expression for step in plan.steps if step.unknown == id)
    yield from (each.expression for each in plan.definitions if each.variable == id)


def _of(plan: Plan, joint: Element) -> dict[str, Part]:
    """A joint and the letters of its components, for sentences."""
    x, y = components(plan.system, joint)
    return {"R": joint, "x": x, "y": y}


# The joint.


def _joint_is_total_weight(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for joint in _joints(plan):
        weights = weights_on(plan.system, joint.body)
        if weights:
            stated = {Quantity(joint.id).y: sum_of(weights), Quantity(joint.id).x: ZERO}
            # of several bodies only what this one carries
            body = {"body": plan.system.body(joint.body)} if len(plan.system.bodies) > 1 else {}
            parts: dict[str, Part] = _of(plan, joint) | body
            way = "one" if body else ""
            yield Misstep("joint_is_total_weight", restated(plan, stated), way, parts)


def _joint_added_not_subtracted(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The pulls counted with the weights in the vertical balance that gives the joint force."""
    for joint in _joints(plan):
        upright = Quantity(joint.id).y
        terms = {
            term.source: term
            for step in plan.steps
            if step.unknown == upright and step.equation.kind == "force"
            for term in step.equation.terms
        }
        on = [f for f in plan.system.forces if f.body == joint.body and f.id in terms]
        pulls = [force for force in on if force.kind in _PULLS]
        weights = [force for force in on if force.kind is Kind.WEIGHT]
        changed = _in_step(plan, upright, flipped, {force.id for force in pulls})
        if pulls and weights and changed:
            down = {terms[weight.id].sign for weight in weights}
            way = "down" if all(terms[pull.id].sign in down for pull in pulls) else "up"
            parts: dict[str, Part] = {**_of(plan, joint), "T": letters(pulls)}
            if all(terms[pull.id].ratio != UNITY for pull in pulls):
                way += "-parts" if len(letters(pulls)) > 1 else "-part"
            parts["W"] = letters(weights)
            yield Misstep("joint_added_not_subtracted", changed, way, parts)


def _in_step(
    plan: Plan, unknown: str, change: Callable[[Term], Term], sources: Collection[str] = ()
) -> Plan | None:
    """The plan with the terms of one step's force balance changed, those of some forces or all."""
    its = [s.equation for s in plan.steps if s.unknown == unknown and s.equation.kind == "force"]
    return rewritten(plan, in_equations(its, on_terms(change, sources=sources)))


def _pull_left_out(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A known pull whose line passes through the pivot left out of the balances of forces too."""
    balances = [(step, each) for step in plan.steps for each in step.equations]
    turned = [each for _, each in balances if each.kind == "torque"]
    for pull in (force for force in plan.system.forces if force.kind in _APPLIED):
        about = {each.about for each in turned if pull.id in each.silent}
        known = [
            equation
            for step, equation in balances
            if equation.kind == "force"
            and not names_in(pull.magnitude) & {step.unknown, *(p.unknown for p in step.partners)}
        ]
        acts = any(pull.id in {term.source for term in each.terms} for each in turned)
        if not about or acts or pull.point in about:
            continue
        changed = rewritten(plan, in_equations(known, on_terms(dropped, sources={pull.id})))
        if changed:
            yield Misstep("pull_left_out", changed, parts={"F": pull.magnitude}, firm=True)


def _hinge_vertical_only(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """No horizontal part; the vertical one right, or with the full pull taken as vertical."""
    for joint in (each for each in _joints(plan) if not _upright(plan, each)):
        upright = {Quantity(joint.id).x: ZERO}
        parts = _of(plan, joint)
        yield Misstep("hinge_vertical_only", restated(plan, upright), "right", parts)
        full = _in_step(
            plan,
            Quantity(joint.id).y,
            lambda t: t if t.ratio == UNITY else replace(t, ratio=with_sign_of(t.ratio, UNITY)),
        )
        if full:
            yield Misstep("hinge_vertical_only", restated(full, upright), "full", parts)


def _hinge_along_body(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The joint force along a straight body: its horizontal part right, R_y = R_x tan(tilt)."""
    for joint in (each for each in _joints(plan) if not _upright(plan, each)):
        body = plan.system.body(joint.body)
        axis = axis_of(plan.system, body)
        if axis is not None:
            x, _ = components(plan.system, joint)
            stated = {Quantity(joint.id).y: Product((x, Call("tan", (axis,))))}
            parts = {**_of(plan, joint), "body": body}
            yield Misstep("hinge_along_body", restated(plan, stated), parts=parts)


def _component_only(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for joint in _leaning(plan):
        sizes = [Call("abs", (part,)) for part in components(plan.system, joint)]
        ways = {"x": sizes[0], "y": sizes[1], "sum": total((1, sizes[0]), (1, sizes[1]))}
        for way, magnitude in ways.items():
            changed = restated(plan, {Quantity(joint.id).magnitude: magnitude})
            yield Misstep("component_only", changed, way, _of(plan, joint))


def _tangent_inverted(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """arctan(|R_x|/|R_y|) given as the angle from the horizontal, on the right sides.

    Also of any other angle that is found by its tangent.
    """
    found = [(step.unknown, step.expression) for step in plan.steps]
    found += [(each.variable, each.expression) for each in plan.definitions]
    for id, expression in found:
        if isinstance(expression, Call) and expression.function == "atan":
            upside_down = Call("atan", (Quotient(number(1), expression.arguments[0]),))
            told: dict[str, Part] = {"a": plan.system.variables[id].as_name}
            yield Misstep("tangent_inverted", replaced(plan, id, upside_down), "angle", told)
    for joint in _leaning(plan):
        x, y = components(plan.system, joint)
        direction = Call("atan2", (with_sign_of(y, x), with_sign_of(x, y)))
        changed = restated(plan, {Quantity(joint.id).direction: direction})
        yield Misstep("tangent_inverted", changed, parts=_of(plan, joint))


def _angle_sign(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for joint in resultants(plan):
        x, y = components(plan.system, joint)
        mirrored = {"up": (negative(y), x), "side": (y, negative(x))}
        for way, sides in mirrored.items():
            changed = restated(plan, {Quantity(joint.id).direction: Call("atan2", sides)})
            yield Misstep("angle_sign", changed, way, _of(plan, joint))


# Cables and surfaces.


def _tension_equals_load(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A tension taken as what hangs, or as all the weight.

    A level cord holds up nothing of a particle, or of one body among several, and one that pulls
    down nothing at all.  Unlikely where the load is seen to rest on something, or several hang from
    two cables.
    """
    own = {force.id for force in own_weights(plan.system)}
    several = len(plan.system.bodies) > 1
    for pull, step in found_forces(plan, _CABLES):
        particle = plan.system.body(pull.body).particle
        level = facing(pull) in (0, 180)
        if level and (particle or several):
            continue
        lifting = None if level else Call("sin", (pull.direction,))
        rests = _rests(plan.system, pull.body)
        two = _beside_another(plan.system, pull)
        weights = weights_on(plan.system, pull.body)
        hung = weights if particle else [weight for weight in weights if weight.id not in own]
        loads = hung or weights
        tries = {"load" if len(loads) == 1 else "loads": loads}
        tries |= {"total": weights} if len(weights) > len(loads) else {}
        for way, forces in tries.items():
            if forces:
                changed = replaced(plan, step.unknown, sum_of(forces))
                parts: dict[str, Part] = {"T": pull.magnitude, "W": letters(forces)}
                unlikely = rests or (two and len(forces) > 1)
                yield Misstep(
                    "tension_equals_load", changed, way, parts, unlikely=unlikely, only_if=lifting
                )


def _rests(system: System, body: str) -> bool:
    """Whether ground, wall or slope pushes against a body, and not only another body."""
    on = (force for force in system.forces if force.body == body)
    return any(force.part is ForcePart.NORMAL and not force.pair for force in on)


def _beside_another(system: System, pull: Force) -> bool:
    """Whether a body hangs upright from another cable too."""
    on = (f for f in system.forces if f.body == pull.body and f.kind in _CABLES)
    others = [f for f in on if f.magnitude != pull.magnitude and not f.pair]
    return facing(pull) == 90 and any(facing(each) == 90 for each in others)


def found_forces(plan: Plan, kinds: tuple[Kind, ...]) -> Iterator[tuple[Force, Step]]:
    """The forces of some kinds whose size a step finds, with that step."""
    for step in plan.steps:
        for force in plan.system.forces:
            if force.id == step.unknown and force.kind in kinds:
                yield force, step


def _normal_at_wall_is_weight(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A wall's push taken as the weight; a floor's as the body's own weight, whoever stands on it.

    Only where there is a wall to lean on.
    """
    own = {force.id for force in own_weights(plan.system)}
    pushes = [f for f in plan.system.forces if f.kind in _SURFACES and f.part is ForcePart.NORMAL]
    walls = [push for push in pushes if facing(push) in (0, 180)]
    for push, step in found_forces(plan, _SURFACES) if walls else ():
        weights = weights_on(plan.system, push.body)
        of_body = [weight for weight in weights if weight.id in own]
        wall, floor = facing(push) in (0, 180), facing(push) == 90
        body = plan.system.body(push.body)
        tries = {"own": of_body} if wall or floor else {}
        tries |= {"total": weights} if wall and len(weights) > 1 else {}
        for way, forces in tries.items() if push.part is ForcePart.NORMAL else ():
            if forces:
                changed = replaced(plan, step.unknown, sum_of(forces))
                parts: dict[str, Part] = {"N": push.magnitude, "W": letters(forces), "body": body}
                yield Misstep("normal_at_wall_is_weight", changed, way, parts)


def _friction_at_limit(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """f = mu N although nothing is about to slip: a limit the draw stays below."""
    found = {step.unknown for step in plan.steps}
    grips = {f.id for f in plan.system.forces if f.part is ForcePart.FRICTION} & found
    for limit in plan.system.limits:
        for grip in sorted(grips & names_in(limit.left)):
            changed = replaced(plan, grip, limit.right)
            parts: dict[str, Part] = {"f": plan.system.force(grip).magnitude, "m": limit.right}
            yield Misstep("friction_at_limit", changed, parts=parts)


def _mu_inverted(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A fraction upside down, which a coefficient above one or a share above all shows at once."""
    for step in plan.steps:
        variable = plan.system.variables[step.unknown]
        fraction = variable.dimension == PLAIN and isinstance(step.expression, Quotient)
        if fraction and step.equation.kind == "condition":
            changed = replaced(plan, step.unknown, Quotient(number(1), step.expression))
            parts: dict[str, Part] = {"mu": variable.as_name}
            yield Misstep("mu_inverted", changed, parts=parts, unlikely=True)


RULES: Final = {
    "joint_is_total_weight": _joint_is_total_weight,
    "joint_added_not_subtracted": _joint_added_not_subtracted,
    "pull_left_out": _pull_left_out,
    "hinge_vertical_only": _hinge_vertical_only,
    "hinge_along_body": _hinge_along_body,
    "component_only": _component_only,
    "tangent_inverted": _tangent_inverted,
    "angle_sign": _angle_sign,
    "tension_equals_load": _tension_equals_load,
    "normal_at_wall_is_weight": _normal_at_wall_is_weight,
    "friction_at_limit": _friction_at_limit,
    "mu_inverted": _mu_inverted,
}
