"""Which forces turn the body about the pivot, which way, and which do not, and why."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from probgen.quantities.expression import (
    UNITY,
    Call,
    Expression,
    Lump,
    Name,
    Number,
    evaluate,
    names_in,
)
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.rounding import exact
from probgen.quantities.unit import DEGREE
from probgen.statics.equation import Equation, Term
from probgen.statics.geometry import way
from probgen.statics.step import Step
from probgen.statics.system import Force, Kind, Role, System
from probgen.wording.facts.torque import (
    AngleToArm,
    CoordinatesFrom,
    CoupleAnywhere,
    Hold,
    LeverArm,
    LineBeside,
    PassesThrough,
    PivotBare,
    PivotHeld,
    PivotMeeting,
    Placed,
    Side,
    SquareToArm,
    TurningHeading,
    TurnsBody,
    TurnsNothing,
)
from probgen.wording.go_on import go_on_in
from probgen.wording.hypotenuse import hypotenuse_part
from probgen.wording.legs import arm_along, arm_of_legs, legs_told
from probgen.wording.passage import Items, Part, Passage, Sentences
from probgen.wording.sense import signed_arms
from probgen.wording.torque_angle import angle_between, partly_along, square_line
from probgen.wording.torque_forms import by_coordinates, coordinates_called, theorems
from probgen.working.convention import Rotation, Turning
from probgen.working.digits import Digits
from probgen.working.direction import quarter_of
from probgen.working.fact import Fact

_HOLDS = (
    ((Kind.HINGE,), Hold.HINGE),
    ((Kind.FIXED,), Hold.BUILT_IN),
    ((Kind.CONTACT, Kind.ROUGH), Hold.TOUCHING),
    ((Kind.ROLLER,), Hold.PUSHED),  # there may be a wheel between
)

_NO_ARM: Final = 1e-9  # m


@dataclass(frozen=True, slots=True)
class Turner:
    """A force and the terms it adds to a torque balance.

    name: its letter, with its point where another force that turns the body has that letter too.
    sense: +1 counter-clockwise, -1 clockwise, for the force as its letter is meant.
    turned: whether it acts the other way, and so turns the body the other way.
    """

    name: Expression | Placed
    sense: int
    terms: tuple[Term, ...]
    turned: bool


def turning_passage(digits: Digits, step: Step) -> Passage:
    """The choice of the pivot and the sense and lever arm of each force about it."""
    system, equation = digits.case.system, step.equation
    turners = list(_turners(digits, equation))
    reasons = (
        _pivot(system, step, digits.convention.turning),
        *_silent(digits, step),
    )
    senses: list[Fact] = [*_senses(equation, turners, digits.convention.positive)]
    arms = tuple(_arms(digits, step, turners))
    if _alone_through(digits, equation, turners):
        letter = turners[0].terms[0].magnitude
        senses, arms = [PassesThrough(letter, equation.bodies, equation.about)], ()
    if digits.convention.torque == "components" and arms:
        turns = equation.method.positive == "counter-clockwise"
        called = coordinates_called(digits)
        senses.append(CoordinatesFrom(called, equation.about, digits.convention.turning, turns))
    couples = [couple.id for couple in system.couples if couple.body in equation.bodies]
    alike = [t.magnitude for t in equation.terms if t.length is None and t.source in couples]
    if alike:
        senses.append(CoupleAnywhere(tuple(dict.fromkeys(alike)), digits.convention.turning))
    across = tuple(hypotenuse_part(digits, [step]))
    senses += go_on_in(digits, [step], (arms, across))
    parts: list[Part] = [Sentences(reasons), Sentences(tuple(senses)), *across]
    if arms:
        parts.append(Items(arms) if len(arms) > 1 else Sentences(arms))
    if digits.convention.torque == "components":
        parts.append(Sentences(tuple(theorems(digits, equation))))
    return Passage(TurningHeading(equation.bodies, equation.about), tuple(parts))


def _alone_through(digits: Digits, equation: Equation, turners: Sequence[Turner]) -> bool:
    """Whether one force alone could turn the body, and where it acts is what the balance tells."""
    if len(turners) != 1:
        return False
    arms = signed_arms(equation, digits.case.values)
    return bool(arms) and all(abs(arm) < _NO_ARM for arm in arms.values())


def _turners(digits: Digits, equation: Equation) -> Iterator[Turner]:
    values, plan = digits.case.values, digits.case.plan
    settled = values.keys() - {step.unknown for step in plan.steps}
    groups = list(_by_force(equation))
    letters = [terms[0].magnitude for terms in groups]
    for terms in groups:
        per_unit = sum(
            term.sign * float(evaluate(term.ratio, values)) * _length(digits, term)
            for term in terms
        )
        # A couple that is known already, such as C = -M, turns the way its value says.
        held = names_in(terms[0].magnitude)
        known = held <= values.keys()
        negative = known and float(evaluate(terms[0].magnitude, values)) < 0.0
        if held <= settled and negative:
            per_unit = -per_unit
        turn = 1 if equation.method.positive == "counter-clockwise" else -1
        alone = letters.count(terms[0].magnitude) == 1
        name = terms[0].magnitude if alone else _placed(digits.case.system, terms[0])
        sense = turn * (1 if per_unit > 0 else -1)
        yield Turner(name, sense, terms, negative and not held <= settled)


def _placed(system: System, term: Term) -> Expression | Placed:
    """A force that has its letter with another, by its point."""
    points = [force.point for force in system.forces if force.id == term.source]
    return Placed(term.magnitude, points[0]) if points else term.magnitude


def _length(digits: Digits, term: Term) -> float:
    """A term's length, m: of a distance that is looked for its size, for it is taken as drawn."""
    if term.length is None:
        return 1.0
    length = float(evaluate(term.length, digits.case.values))
    drawn = isinstance(term.length, Name) and _unknown(digits.case.system, term.length)
    return abs(length) if drawn else length


def _by_force(equation: Equation) -> Iterator[tuple[Term, ...]]:
    """The terms of each force, in the order of the first."""
    for source in dict.fromkeys(term.source for term in equation.terms):
        yield tuple(term for term in equation.terms if term.source == source)


def _pivot(system: System, step: Step, turning: Turning) -> Fact:
    """Where torques are taken about, and what there is."""
    pivot, bodies = step.equation.about, step.equation.bodies
    own = [force for force in system.forces if force.body in bodies]
    acting = {force.id for force in own} | {force.pair for force in own}
    held = [element for element in system.elements if element.at == pivot]
    at = [element for element in held if acting.intersection(element.forces)]
    for kinds, hold in _HOLDS:
        for element in at:
            if element.kind in kinds:
                return PivotHeld(pivot, turning, hold, element.id, element.body)
    if not at and not any(force.point == pivot for force in system.forces):
        lines = tuple(system.force(id).magnitude for id in step.equation.silent)
        if len(lines) > 1:  # one line alone meets none
            return PivotMeeting(pivot, turning, lines)
    return PivotBare(pivot, turning)


def _silent(digits: Digits, step: Step) -> Iterator[Fact]:
    """Why some forces do not turn the body: they act at the pivot, or along a line through it."""
    system, pivot = digits.case.system, step.equation.about
    known = _known_before(digits, step) | _found_together(digits, step)
    silent = [system.force(id) for id in step.equation.silent]
    at_pivot = [force for force in silent if not way(system.points, pivot, force.point)]
    through = [force for force in silent if force not in at_pivot]
    if at_pivot:
        yield _no_arm(at_pivot, "", known)
    if through:
        yield _no_arm(through, pivot, known)


def _no_arm(forces: list[Force], through: str, known: frozenset[str]) -> Fact:
    letters = tuple(dict.fromkeys(force.magnitude for force in forces))
    unknown = tuple(letter for letter in letters if not names_in(letter) <= known)
    return TurnsNothing(letters, through, unknown)


def _unknown(system: System, expression: Expression) -> bool:
    return any(system.variables[name].role is Role.UNKNOWN for name in names_in(expression))


def _senses(equation: Equation, turners: list[Turner], positive: Rotation) -> Iterator[Fact]:
    """Which forces turn the body which way."""
    rotations: tuple[tuple[int, Rotation], ...] = ((-1, "clockwise"), (1, "counter-clockwise"))
    for sense, rotation in rotations:
        these = tuple(turner.name for turner in turners if turner.sense == sense)
        if these:
            drawn = any(turner.turned for turner in turners if turner.sense == sense)
            yield TurnsBody(these, equation.bodies, rotation, rotation == positive, drawn)


def _arms(digits: Digits, step: Step, turners: list[Turner]) -> Iterator[Fact]:
    known = _known_before(digits, step)
    match digits.convention.torque:
        case "angle":
            yield from _angles(digits, step.equation.about, turners, known)
        case "arm":
            yield from _lever_arms(digits, step.equation.about, turners, known)
        case "components":
            yield from by_coordinates(digits, step.equation)


def _known_before(digits: Digits, step: Step) -> frozenset[str]:
    """Quantities that have a value when a step begins."""
    plan = digits.case.plan
    before = plan.steps[: plan.steps.index(step)]
    later = {each.unknown for each in plan.steps} - {each.unknown for each in before}
    return frozenset(digits.case.values.keys() - later)


def _found_together(digits: Digits, step: Step) -> frozenset[str]:
    """What equations solved together before a step settle, whether it was worked out or not."""
    plan = digits.case.plan
    before = plan.steps[: plan.steps.index(step)]
    return frozenset(partner.unknown for each in before for partner in each.partners)


_LEVEL: Final = 1e-9  # of a lever arm, that is no height
_ALIKE: Final = (
    frozenset({Side.RIGHT, Side.LEFT}),
    frozenset({Side.ABOVE, Side.BELOW}),
    frozenset({Side.OBLIQUE}),
)
"""Sides of a pivot that lines of one direction pass on."""


def _angles(
    digits: Digits, pivot: str, turners: list[Turner], known: frozenset[str]
) -> Iterator[Fact]:
    """The angle between each force and its arm, or how far beside the pivot its line passes."""
    beside: dict[tuple[Formula, Side, bool], list[Expression | Placed]] = {}
    square: list[Turner] = []
    oblique: dict[tuple[Formula, Formula], list[Turner]] = {}
    for turner in turners:
        first = turner.terms[0]
        if first.length is None:
            continue
        if len(turner.terms) > 1:
            yield legs_told(digits, turner.name, turner.terms, turner.sense)
        elif partly_along(digits, pivot, first):
            arm, aside = _arm_known(digits, first, known), _is_aside(digits, pivot, first)
            place = arm, _side(digits, pivot, first), aside
            beside.setdefault(place, []).append(turner.name)
        elif first.ratio == UNITY:
            square.append(turner)
        else:
            oblique.setdefault(angle_between(digits, first, known), []).append(turner)
    if square:
        sine = Call("sin", (Number(exact(90), DEGREE),))
        ratio = sine, Relation("="), UNITY
        yield SquareToArm(_names(square), _straight_arms(digits, pivot, square), ratio)
    told: set[frozenset[Side]] = set()
    for (arm, side, aside), names in beside.items():
        lines = next(alike for alike in _ALIKE if side in alike)
        yield LineBeside(tuple(names), pivot, arm, side, lines in told or aside)
        if not aside:
            told.add(lines)
    for (angle, sine_of), these in oblique.items():
        yield AngleToArm(_names(these), _straight_arms(digits, pivot, these), angle, sine_of)


def _names(turners: Sequence[Turner]) -> tuple[Expression | Placed, ...]:
    return tuple(turner.name for turner in turners)


def _straight_arms(
    digits: Digits, pivot: str, turners: Sequence[Turner]
) -> tuple[tuple[str, str], ...]:
    """From the pivot to where each force acts, each line once."""
    forces = (digits.case.system.force(turner.terms[0].source) for turner in turners)
    return tuple(dict.fromkeys((pivot, force.point) for force in forces))


def _arm_known(digits: Digits, term: Term, known: frozenset[str]) -> Formula:
    """A lever arm by its letters, and its value once that is known."""
    assert term.length is not None
    arm = term.length if term.ratio == UNITY else arm_along(term)
    if not names_in(arm) <= known or isinstance(arm, Number):
        return (arm,)
    if isinstance(arm, Name) and digits.is_data(arm.id):
        return (arm, Relation("="), digits.data(arm.id))
    return (arm, Relation("="), digits.put_in(Lump(arm)))  # as the balance will have it


def _side(digits: Digits, pivot: str, term: Term) -> Side:
    """On which side of the pivot a force's line of action passes."""
    system, values = digits.case.system, digits.case.values
    force = system.force(term.source)
    quarter = quarter_of(float(evaluate(force.direction, values)))
    if quarter is None:
        return Side.OBLIQUE
    along, positive, negative = (
        (0.0, Side.RIGHT, Side.LEFT) if quarter % 2 else (90.0, Side.ABOVE, Side.BELOW)
    )
    return positive if _reach(digits, pivot, force.point, along) > 0 else negative


def _is_aside(digits: Digits, pivot: str, term: Term) -> bool:
    """Whether a force acts straight beside the pivot, neither before nor behind it on its line."""
    force = digits.case.system.force(term.source)
    along = float(evaluate(force.direction, digits.case.values))
    before = _reach(digits, pivot, force.point, along)
    return abs(before) < _LEVEL * abs(_reach(digits, pivot, force.point, along + 90.0))


def _reach(digits: Digits, pivot: str, point: str, along: float) -> float:
    """How far a point is from the pivot in a direction (degrees), m."""
    system, values = digits.case.system, digits.case.values
    return sum(
        float(evaluate(link.length, values))
        * math.cos(math.radians(float(evaluate(link.direction, values)) - along))
        for link in way(system.points, pivot, point)
    )


def _lever_arms(
    digits: Digits, pivot: str, turners: list[Turner], known: frozenset[str]
) -> Iterator[Fact]:
    """The perpendicular distance from the pivot to each line of action."""
    told: set[str] = set()
    for turner in turners:
        across = arm_of_legs(digits, turner.name, turner.terms, known)
        if across:
            yield across
            continue
        for term in turner.terms:
            if term.length is None:
                continue
            arm = term.length if term.ratio == UNITY else arm_along(term)
            formula = _arm_known(digits, term, known)
            if len(formula) == 1:
                sought = sorted(names_in(arm) - known - told)
                told.update(sought)
                names = tuple(digits.case.system.variables[id].as_name for id in sought)
                yield LeverArm(turner.name, formula, names)
                continue
            force = digits.case.system.force(term.source)
            if term.ratio == UNITY:
                line = square_line(digits, pivot, force)
                yield LeverArm(turner.name, formula, line=line)
                continue
            formula = (arm, Relation("="), digits.put_in(arm), *formula[1:])
            if len(turner.terms) > 1 or partly_along(digits, pivot, term):
                yield LeverArm(turner.name, formula)
                continue
            line = pivot, force.point
            angle, sine = angle_between(digits, term, known)
            yield LeverArm(turner.name, formula, (), line, angle, sine)
