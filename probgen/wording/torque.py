"""Which forces turn the body about the pivot, which way, and which do not, and why."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Call,
    Expression,
    Lump,
    Name,
    Number,
    evaluate,
    names_in,
    times,
)
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.rounding import exact
from probgen.quantities.unit import ANGLE, DEGREE, LENGTH
from probgen.statics.derivation import Step
from probgen.statics.equation import Equation, Term
from probgen.statics.geometry import angle_of, way
from probgen.statics.system import Force, Kind, Role, System
from probgen.wording.facts.torque import (
    AngleToArm,
    ArmOfLegs,
    Hold,
    LeverArm,
    PartTurns,
    PivotBare,
    PivotHeld,
    PivotMeeting,
    SquareToArm,
    TakenAsOne,
    TurningHeading,
    TurnsBody,
    TurnsNothing,
)
from probgen.wording.passage import Items, Part, Passage, Sentences
from probgen.working.convention import Rotation, Turning
from probgen.working.digits import Digits
from probgen.working.fact import Fact

_HOLDS = (
    ((Kind.HINGE,), Hold.HINGE),
    ((Kind.FIXED,), Hold.BUILT_IN),
    ((Kind.ROLLER, Kind.CONTACT, Kind.ROUGH), Hold.TOUCHING),
)


@dataclass(frozen=True, slots=True)
class Turner:
    """A force and the terms it adds to a torque balance.

    sense: +1 counter-clockwise, -1 clockwise, for the force as its letter is meant.
    """

    name: Expression
    sense: int
    terms: tuple[Term, ...]


def turning_passage(digits: Digits, step: Step) -> Passage:
    """The choice of the pivot and the sense and lever arm of each force about it."""
    system, equation = digits.case.system, step.equation
    turners = list(_turners(digits, equation))
    reasons = (
        *together(system, equation),
        _pivot(system, step, digits.convention.turning),
        *_silent(system, step),
    )
    senses = _senses(equation, turners, digits.convention.positive)
    parts: list[Part] = [Sentences(reasons), Sentences(tuple(senses))]
    arms = tuple(_arms(digits, turners))
    if arms:
        parts.append(Items(arms) if len(arms) > 1 else Sentences(arms))
    return Passage(TurningHeading(equation.bodies, equation.about), tuple(parts))


def together(system: System, equation: Equation) -> Iterator[Fact]:
    """Why several bodies are taken as one: the forces between them cancel."""
    if len(equation.bodies) > 1:
        inner = dict.fromkeys(system.force(id).magnitude for id in equation.inner)
        yield TakenAsOne(equation.bodies, tuple(inner))


def _turners(digits: Digits, equation: Equation) -> Iterator[Turner]:
    values = digits.case.values
    for terms in _by_force(equation):
        per_unit = sum(
            term.sign
            * float(evaluate(term.ratio, values))
            * (1.0 if term.length is None else float(evaluate(term.length, values)))
            for term in terms
        )
        turn = 1 if equation.method.positive == "counter-clockwise" else -1
        yield Turner(terms[0].magnitude, turn * (1 if per_unit > 0 else -1), terms)


def _by_force(equation: Equation) -> Iterator[tuple[Term, ...]]:
    """The terms of each force, in the order of the first."""
    for source in dict.fromkeys(term.source for term in equation.terms):
        yield tuple(term for term in equation.terms if term.source == source)


def _pivot(system: System, step: Step, turning: Turning) -> Fact:
    """Where torques are taken about, and what there is."""
    pivot = step.equation.about
    at = [element for element in system.elements if element.at == pivot]
    for kinds, hold in _HOLDS:
        for element in at:
            if element.kind in kinds:
                return PivotHeld(pivot, turning, hold, element.id, element.body)
    if not at and not any(force.point == pivot for force in system.forces):
        lines = tuple(system.force(id).magnitude for id in step.equation.silent)
        return PivotMeeting(pivot, turning, lines)
    return PivotBare(pivot, turning)


def _silent(system: System, step: Step) -> Iterator[Fact]:
    """Why some forces do not turn the body: they act at the pivot, or along a line through it."""
    pivot = step.equation.about
    silent = [system.force(id) for id in step.equation.silent]
    at_pivot = [force for force in silent if not way(system.points, pivot, force.point)]
    through = [force for force in silent if force not in at_pivot]
    if at_pivot:
        yield _no_arm(system, at_pivot, False)
    if through:
        yield _no_arm(system, through, True)


def _no_arm(system: System, forces: list[Force], through: bool) -> Fact:
    letters = tuple(force.magnitude for force in forces)
    return TurnsNothing(letters, through, sum(_unknown(system, letter) for letter in letters))


def _unknown(system: System, expression: Expression) -> bool:
    return any(system.variables[name].role is Role.UNKNOWN for name in names_in(expression))


def _senses(equation: Equation, turners: list[Turner], positive: Rotation) -> Iterator[Fact]:
    """Which forces turn the body which way."""
    rotations: tuple[tuple[int, Rotation], ...] = ((-1, "clockwise"), (1, "counter-clockwise"))
    for sense, rotation in rotations:
        these = tuple(turner.name for turner in turners if turner.sense == sense)
        if these:
            yield TurnsBody(these, equation.bodies, rotation, rotation == positive)


def _arms(digits: Digits, turners: list[Turner]) -> Iterator[Fact]:
    match digits.convention.torque:
        case "angle":
            yield from _angles(digits, turners)
        case "arm":
            yield from _lever_arms(digits, turners)
        case "components":
            yield from _parts(turners)


def _angles(digits: Digits, turners: list[Turner]) -> Iterator[Fact]:
    """The angle between each force and its arm."""
    square = tuple(
        t.name
        for t in turners
        if all(term.length is not None and term.ratio == UNITY for term in t.terms)
    )
    if square:
        sine = Call("sin", (Number(exact(90), DEGREE),))
        yield SquareToArm(square, (sine, Relation("="), UNITY))
    oblique: dict[tuple[Formula, Formula], list[Expression]] = {}
    for turner in turners:
        if len(turner.terms) > 1:
            lengths = tuple(term.length for term in turner.terms if term.length is not None)
            yield ArmOfLegs(turner.name, lengths, digits.convention.turning)
        elif turner.terms[0].length is not None and turner.terms[0].ratio != UNITY:
            oblique.setdefault(_angle_between(digits, turner.terms[0]), []).append(turner.name)
    for (angle, sine_of), names in oblique.items():
        yield AngleToArm(tuple(names), angle, sine_of)


def _angle_between(digits: Digits, term: Term) -> tuple[Formula, Formula]:
    """The angle between a force and its arm, and what its sine is: sin 140° = sin 40°."""
    assert term.link is not None
    assert term.length is not None
    force = digits.case.system.force(term.source)
    between = angle_of(force.direction).minus(angle_of(term.link.direction))
    turned = float(evaluate(between.expression, digits.case.values))
    turned += 180.0 if float(evaluate(term.link.length, digits.case.values)) < 0 else 0.0
    folded = abs((turned + 180.0) % 360.0 - 180.0)
    shown = _degrees(digits, folded, between.expression)
    symbolic = _folded(digits, between.expression, turned, folded)
    angle: Formula = (shown,) if symbolic is None else (*symbolic, Relation("="), shown)
    sine, ratio = Call("sin", (shown,)), digits.put_in(term.ratio)
    return angle, () if ratio == sine else (sine, Relation("="), ratio)


def _degrees(digits: Digits, value: float, expression: Expression) -> Number:
    """An angle made of given ones, without zeros it does not need; a given one as it was given."""
    if isinstance(expression, Name) and digits.is_data(expression.id):
        return digits.data(expression.id)
    short = exact(value)
    few = len(short.as_tuple().digits) <= digits.convention.figures
    return (
        Number(short.quantize(Decimal(1)), DEGREE)
        if few and short == int(short)
        else (digits.carried(value, ANGLE))
    )


def _folded(digits: Digits, between: Expression, turned: float, folded: float) -> Formula | None:
    """The angle between in symbols, folded into 0 to 180 degrees; None when it has no names."""
    angle = angle_of(between)
    if not angle.multiples or not all(isinstance(part, Name) for part, _ in angle.multiples):
        return None
    sign = 1 if abs((turned - folded + 180.0) % 360.0 - 180.0) < 1e-9 else -1
    if sign < 0:
        angle = angle_of(ZERO).minus(angle)
    value = float(evaluate(angle.expression, digits.case.values))
    angle = angle.turned(exact(round((folded - value) / 360.0) * 360.0))
    expression = angle.expression
    if abs(float(evaluate(expression, digits.case.values)) - folded) > 1e-6:
        return None
    printed = digits.put_in(expression)
    if isinstance(expression, Name):
        return (expression,)
    return (expression, Relation("="), printed)


def _lever_arms(digits: Digits, turners: list[Turner]) -> Iterator[Fact]:
    """The perpendicular distance from the pivot to each line of action."""
    for turner in turners:
        for term in turner.terms:
            if term.length is None:
                continue
            arm = term.length if term.ratio == UNITY else _product(term)
            value = float(evaluate(arm, digits.case.values))
            formula: Formula = (arm, Relation("="), digits.carried(value, LENGTH))
            if term.ratio != UNITY:
                formula = (arm, Relation("="), digits.put_in(arm), *formula[1:])
            yield LeverArm(term.magnitude, formula)


def _product(term: Term) -> Expression:
    assert term.length is not None
    return times(Lump(term.length), term.ratio)


def _parts(turners: list[Turner]) -> Iterator[Fact]:
    """Which part of each oblique force turns, and at which distance."""
    for turner in turners:
        for term in turner.terms:
            if term.length is not None and term.ratio != UNITY:
                yield PartTurns(term.magnitude, term.length, times(term.magnitude, term.ratio))
