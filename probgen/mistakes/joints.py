"""Slips with what holds a body: joints, cables, surfaces and their friction."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Final

from probgen.mistakes.variant import (
    Misstep,
    Part,
    axis_of,
    on_terms,
    own_weights,
    replaced,
    restated,
    rewritten,
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
from probgen.statics.derivation import Step
from probgen.statics.equation import Equation, Term
from probgen.statics.geometry import angle_of
from probgen.statics.plan import Plan
from probgen.statics.system import Element, Force, Kind, System

_PULLS: Final = (Kind.CABLE, Kind.MUSCLE, Kind.ROPE)
_CABLES: Final = (Kind.CABLE, Kind.ROPE)
_SURFACES: Final = (Kind.CONTACT, Kind.ROUGH, Kind.ROLLER)


def components(system: System, joint: Element) -> tuple[Name, Name]:
    """The letters of a joint's components along x and y."""
    x, y = (system.variables[f"{joint.id}.{axis}"].as_name for axis in "xy")
    return x, y


def resultants(plan: Plan) -> list[Element]:
    """The joints whose magnitude and direction the plan ends with."""
    asked = {outcome.id for outcome in plan.outcomes}
    return [e for e in plan.system.elements if f"{e.id}.magnitude" in asked]


def _leaning(plan: Plan) -> list[Element]:
    """Those of them that have two components."""
    return [joint for joint in resultants(plan) if not _upright(plan, joint)]


def _joints(plan: Plan) -> list[Element]:
    """The hinges of which the plan finds both components."""
    found = {step.unknown for step in plan.steps}
    return [
        element
        for element in plan.system.elements
        if element.kind == Kind.HINGE and {f"{element.id}.x", f"{element.id}.y"} <= found
    ]


def _upright(plan: Plan, joint: Element) -> bool:
    """Whether nothing pushes a joint sideways, so that it has one component only."""
    sideways = [*_results(plan, f"{joint.id}.x")]
    return bool(sideways) and all(expression == ZERO for expression in sideways)


def _results(plan: Plan, id: str) -> Iterator[Expression]:
    """What a plan works a quantity out from."""
    yield from (step.expression for step in plan.steps if step.unknown == id)
    yield from (each.expression for each in plan.definitions if each.variable == id)


def _of(plan: Plan, joint: Element) -> dict[str, Part]:
    """The letters of a joint, for sentences."""
    x, y = components(plan.system, joint)
    return {"R": Name(joint.symbol, joint.symbol), "x": x, "y": y}


def _weights(plan: Plan, body: str) -> list[Force]:
    return [f for f in plan.system.forces if f.kind is Kind.WEIGHT and f.body == body]


def _all(forces: list[Force]) -> Expression:
    return total(*((1, force.magnitude) for force in forces))


# The joint.


def _joint_is_total_weight(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for joint in _joints(plan):
        weights = _weights(plan, joint.body)
        if weights:
            stated = {f"{joint.id}.y": _all(weights), f"{joint.id}.x": ZERO}
            yield Misstep("joint_is_total_weight", restated(plan, stated), parts=_of(plan, joint))


def _joint_added_not_subtracted(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The pulls counted with the weights in the vertical balance that gives the joint force."""
    for joint in _joints(plan):
        if not _weights(plan, joint.body):
            continue
        here = [f for f in plan.system.forces if f.kind in _PULLS and f.body == joint.body]
        changed = _in_step(plan, f"{joint.id}.y", _turned({force.id for force in here}))
        if changed:
            # both ends of one rope may pull on a body: its letter is told once
            letters = tuple(dict.fromkeys(force.magnitude for force in here))
            parts: dict[str, Part] = {**_of(plan, joint), "T": letters}
            yield Misstep("joint_added_not_subtracted", changed, parts=parts)


def _turned(sources: set[str]) -> Callable[[Term], Term]:
    """The terms of some forces with the other sign."""
    return lambda term: replace(term, sign=-term.sign) if term.source in sources else term


def _in_step(plan: Plan, unknown: str, change: Callable[[Term], Term]) -> Plan | None:
    """The plan with the terms of one step's force balance changed."""
    its = [s.equation for s in plan.steps if s.unknown == unknown and s.equation.kind == "force"]
    changed = on_terms(change)

    def only_there(equation: Equation) -> Equation:
        return changed(equation) if equation in its else equation

    return rewritten(plan, only_there)


def _hinge_vertical_only(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """No horizontal part; the vertical one right, or with the full pull taken as vertical."""
    for joint in (each for each in _joints(plan) if not _upright(plan, each)):
        upright = {f"{joint.id}.x": ZERO}
        parts = _of(plan, joint)
        yield Misstep("hinge_vertical_only", restated(plan, upright), "right", parts)
        full = _in_step(
            plan,
            f"{joint.id}.y",
            lambda t: t if t.ratio == UNITY else replace(t, ratio=with_sign_of(t.ratio, UNITY)),
        )
        if full:
            yield Misstep("hinge_vertical_only", restated(full, upright), "full", parts)


def _hinge_along_body(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The joint force along a straight body: its horizontal part right, R_y = R_x tan(tilt)."""
    for joint in _joints(plan):
        body = plan.system.body(joint.body)
        axis = axis_of(plan.system, body)
        if axis is not None:
            x, _ = components(plan.system, joint)
            stated = {f"{joint.id}.y": Product((x, Call("tan", (axis,))))}
            parts = {**_of(plan, joint), "body": body.name}
            yield Misstep("hinge_along_body", restated(plan, stated), parts=parts)


def _component_only(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for joint in _leaning(plan):
        sizes = [Call("abs", (part,)) for part in components(plan.system, joint)]
        ways = {"x": sizes[0], "y": sizes[1], "sum": total((1, sizes[0]), (1, sizes[1]))}
        for way, magnitude in ways.items():
            changed = restated(plan, {f"{joint.id}.magnitude": magnitude})
            yield Misstep("component_only", changed, way, _of(plan, joint))


def _tangent_inverted(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """arctan(|R_x|/|R_y|) given as the angle from the horizontal, on the right sides."""
    for joint in _leaning(plan):
        x, y = components(plan.system, joint)
        direction = Call("atan2", (with_sign_of(y, x), with_sign_of(x, y)))
        changed = restated(plan, {f"{joint.id}.direction": direction})
        yield Misstep("tangent_inverted", changed, parts=_of(plan, joint))


def _angle_sign(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for joint in resultants(plan):
        x, y = components(plan.system, joint)
        mirrored = {"up": (negative(y), x), "side": (y, negative(x))}
        for way, sides in mirrored.items():
            changed = restated(plan, {f"{joint.id}.direction": Call("atan2", sides)})
            yield Misstep("angle_sign", changed, way, _of(plan, joint))


# Cables and surfaces.


def _tension_equals_load(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A tension taken as what hangs, or as all the weight."""
    own = {force.id for force in own_weights(plan.system)}
    for pull, step in _found(plan, _CABLES):
        weights = _weights(plan, pull.body)
        hung = [weight for weight in weights if weight.id not in own]
        tries = {"load": hung, "total": weights} if len(weights) > 1 else {"load": weights}
        for way, forces in tries.items():
            if forces:
                changed = replaced(plan, step.unknown, _all(forces))
                parts: dict[str, Part] = {"T": pull.magnitude, "W": _letters(forces)}
                yield Misstep("tension_equals_load", changed, way, parts)


def _found(plan: Plan, kinds: tuple[Kind, ...]) -> Iterator[tuple[Force, Step]]:
    """The forces of some kinds whose size a step finds, with that step."""
    for step in plan.steps:
        for force in plan.system.forces:
            if force.id == step.unknown and force.kind in kinds:
                yield force, step


def _letters(forces: list[Force]) -> tuple[Expression, ...]:
    return tuple(force.magnitude for force in forces)


def _normal_at_wall_is_weight(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A wall's push taken as the weight; a floor's as the body's own weight, whoever stands on it.

    Only where there is a wall to lean on.
    """
    own = {force.id for force in own_weights(plan.system)}
    pushes = [f for f in plan.system.forces if f.kind in _SURFACES and f.part == "normal"]
    walls = [push for push in pushes if _faces(push) in (0, 180)]
    for push, step in _found(plan, _SURFACES) if walls else ():
        weights = _weights(plan, push.body)
        of_body = [weight for weight in weights if weight.id in own]
        wall, floor = _faces(push) in (0, 180), _faces(push) == 90
        noun = plan.system.body(push.body).name
        tries = {"own": of_body} if wall or floor else {}
        tries |= {"total": weights} if wall and len(weights) > 1 else {}
        for way, forces in tries.items() if push.part == "normal" else ():
            if forces:
                changed = replaced(plan, step.unknown, _all(forces))
                parts: dict[str, Part] = {"N": push.magnitude, "W": _letters(forces), "body": noun}
                yield Misstep("normal_at_wall_is_weight", changed, way, parts)


def _faces(force: Force) -> int | None:
    """The direction of a push where it is a number of whole degrees."""
    angle = angle_of(force.direction)
    return None if angle.multiples else int(angle.constant) % 360


def _friction_at_limit(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """f = mu N although nothing is about to slip: a limit the draw stays below."""
    found = {step.unknown for step in plan.steps}
    grips = {f.id for f in plan.system.forces if f.part == "friction"} & found
    for limit in plan.system.limits:
        for grip in sorted(grips & names_in(limit.left)):
            changed = replaced(plan, grip, limit.right)
            parts: dict[str, Part] = {"f": plan.system.force(grip).magnitude, "m": limit.right}
            yield Misstep("friction_at_limit", changed, parts=parts)


def _mu_inverted(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for step in plan.steps:
        variable = plan.system.variables[step.unknown]
        fraction = variable.dimension == PLAIN and isinstance(step.expression, Quotient)
        if fraction and step.equation.kind == "condition":
            changed = replaced(plan, step.unknown, Quotient(number(1), step.expression))
            yield Misstep("mu_inverted", changed, parts={"mu": variable.as_name})


RULES: Final = (
    _joint_is_total_weight,
    _joint_added_not_subtracted,
    _hinge_vertical_only,
    _hinge_along_body,
    _component_only,
    _tangent_inverted,
    _angle_sign,
    _tension_equals_load,
    _normal_at_wall_is_weight,
    _friction_at_limit,
    _mu_inverted,
)
