"""Which way a force of unknown sense has to act, reasoned before anything is solved."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from probgen.quantities.expression import Expression, Name, evaluate, names_in
from probgen.statics.step import Step
from probgen.statics.system import Body, Force, Kind, Role, System
from probgen.wording.facts.balance import CoupleNegative, ForceNegative
from probgen.wording.facts.forces import LeverExpected, NothingAgainst, PartExpected, SignsOpen
from probgen.wording.passage import Part, sentences
from probgen.wording.sense import signed_arms
from probgen.working.case import Case
from probgen.working.digits import Digits
from probgen.working.direction import quarter_of, way_of
from probgen.working.fact import Fact

_STRAIGHT: Final = 1e-9  # of a force, the part along an axis that counts as none


@dataclass(frozen=True, slots=True)
class Expectation:
    """What the other forces of a body leave to one along an axis.

    sign: +1 as drawn, -1 against it, 0 none at all; against: the forces it holds in balance.
    lever: one force that holds all others about the joint, where the sense follows from that; else
    None.
    """

    force: Force
    sign: int
    against: tuple[Force, ...]
    lever: Force | None = None


def signs_part(digits: Digits, body: Body) -> Iterator[Part]:
    """What is to be expected of the forces and couples whose sense is not known."""
    system = digits.case.system
    expected = expectations(digits, body)
    facts: list[Fact] = [_expected(digits, each) for each in expected.values()]
    sizes = [f.magnitude for f in system.forces if f.body == body.id and _open(system, f)]
    sizes += [couple.moment for couple in system.couples if couple.body == body.id]
    reasoned = {each.force.magnitude for each in expected.values()}
    free = [size for size in dict.fromkeys(sizes) if sign_unknown(system, size)]
    settled = {condition.left for condition in system.conditions}  # friction on the verge
    left = tuple(size for size in free if size not in reasoned | settled)
    if left:
        facts.append(SignsOpen(left))
    if facts:
        yield sentences(*facts)


def sign_unknown(system: System, size: Expression) -> bool:
    """Whether a size is looked for and may come out negative."""
    held = [system.variables[name] for name in names_in(size)]
    return any(variable.role is Role.UNKNOWN and not variable.nonnegative for variable in held)


def _open(system: System, force: Force) -> bool:
    """Whether nothing tells which way a force acts: weights act down, applied ones as stated."""
    return force.kind not in (Kind.FORCE, Kind.WEIGHT) and sign_unknown(system, force.magnitude)


def expectations(digits: Digits, body: Body) -> Mapping[str, Expectation]:
    """By the id of each force whose way follows from the ways of the others alone."""
    system = digits.case.system
    on = [force for force in system.forces if force.body == body.id]
    found = {}
    for force in on:
        if isinstance(force.magnitude, Name) and _open(system, force):
            expected = _expectation(digits, force, [each for each in on if each is not force])
            if expected is not None:
                found[force.id] = expected
    return found


def _expectation(digits: Digits, force: Force, others: list[Force]) -> Expectation | None:
    """None where others act both ways along the line of the force, or themselves are open."""
    values = digits.case.values
    along = float(evaluate(force.direction, values))
    if quarter_of(along) is None:
        return None
    parts: dict[str, float] = {}
    against: list[Force] = []
    for other in others:
        known = names_in(other.direction) <= values.keys()
        turned = float(evaluate(other.direction, values)) - along if known else 45.0
        part = math.cos(math.radians(turned))
        if abs(part) < _STRAIGHT:
            continue
        if _open(digits.case.system, other):
            return None
        valued = names_in(other.magnitude) <= values.keys()
        if valued and float(evaluate(other.magnitude, values)) < 0.0:
            return None
        against.append(other)
        parts[other.id] = part
    signs = {1 if part > 0 else -1 for part in parts.values()}
    if len(signs) > 1:
        return _by_lever(digits, force, against, parts)
    return Expectation(force, -signs.pop() if signs else 0, tuple(against))


def _by_lever(
    digits: Digits, joint: Force, others: list[Force], parts: Mapping[str, float]
) -> Expectation | None:
    """One force against all the rest, whose torques about the joint it holds.

    Its line meets the joint's level nearer to the joint than any of theirs, so it is larger than
    all of them, or farther out, so it is smaller; in between nothing follows.
    """
    for lever in others:
        rest = [other for other in others if other is not lever]
        opposite = all(parts[other.id] * parts[lever.id] < 0 for other in rest)
        straight = all(abs(abs(parts[other.id]) - 1.0) < _STRAIGHT for other in rest)
        arms = _arms_about(digits.case, joint, lever) if opposite and straight and rest else {}
        if not arms or set(arms) - {lever.id} > {other.id for other in rest}:
            continue
        near = abs(arms[lever.id] / parts[lever.id])
        theirs = [arms.get(other.id, 0.0) for other in rest]
        if any(arm * arms[lever.id] > 0.0 for arm in theirs):
            continue
        up = 1 if parts[lever.id] > 0 else -1
        if near < min(map(abs, theirs)):
            return Expectation(joint, -up, tuple(rest), lever)
        if near > max(map(abs, theirs)):
            return Expectation(joint, up, tuple(rest), lever)
    return None


def _arms_about(case: Case, joint: Force, lever: Force) -> Mapping[str, float]:
    """Signed lever arms (m) in the balance about the joint that gives one force; else none."""
    for step in case.plan.steps:
        equation = step.equation
        if (equation.kind, equation.bodies, equation.about, step.unknown, step.partners) == (
            "torque", (joint.body,), joint.point, lever.id, ()
        ):  # fmt: skip
            return signed_arms(equation, case.values)
    return {}


def _expected(digits: Digits, expectation: Expectation) -> Fact:
    force = expectation.force
    drawn = float(evaluate(force.direction, digits.case.values))
    axis = "y" if way_of(drawn).quarter in (1, 3) else "x"
    if not expectation.against:
        return NothingAgainst(force.magnitude, axis)
    way = way_of(drawn if expectation.sign > 0 else drawn + 180.0)
    if expectation.lever is not None:
        against = tuple(dict.fromkeys(each.magnitude for each in expectation.against))
        pull = float(evaluate(expectation.lever.direction, digits.case.values))
        level = way_of(90.0 if way_of(pull).up else 270.0) if axis == "y" else None
        side = level or way_of(0.0 if way_of(pull).right else 180.0)
        nearer = side.quarter != way.quarter
        lever = expectation.lever.magnitude
        drawn_so = expectation.sign > 0
        return LeverExpected(
            force.magnitude, way, lever, against, side, force.point, nearer, drawn_so
        )
    theirs = way_of(drawn + 180.0 if expectation.sign > 0 else drawn)
    letters = tuple(dict.fromkeys(each.magnitude for each in expectation.against))
    return PartExpected(force.magnitude, way, letters, theirs, axis, expectation.sign > 0)


def negative_part(digits: Digits, step: Step) -> Iterator[Part]:
    """What a negative result means: the force acts the other way."""
    system, value = digits.case.system, digits.case.values[step.unknown]
    if value >= 0.0:
        return
    if any(couple.id == step.unknown for couple in system.couples):
        yield sentences(CoupleNegative(system.variables[step.unknown].as_name))
    for force in [force for force in system.forces if force.id == step.unknown][:1]:
        way = way_of(float(evaluate(force.direction, digits.case.values)) + 180.0)
        expected = expectations(digits, system.body(force.body)).get(force.id)
        reasoned = expected is not None and expected.sign < 0
        yield sentences(ForceNegative(force.magnitude, force.part in ("x", "y"), way, reasoned))
