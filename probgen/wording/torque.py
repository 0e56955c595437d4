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
from probgen.quantities.recent import kept
from probgen.quantities.rounding import exact
from probgen.quantities.unit import ANGLE, DEGREE, LENGTH
from probgen.statics.derivation import Step
from probgen.statics.equation import Equation, Term
from probgen.statics.geometry import angle_of, way
from probgen.statics.plan import Plan
from probgen.statics.system import Force, Kind, Role, System
from probgen.wording.block import Block, Section
from probgen.wording.recent import kept_by_plan
from probgen.wording.sentence import Inlines, body_noun, itemized, letter, listed, paragraph, say
from probgen.working.digits import Digits

_TOUCHING = (Kind.ROLLER, Kind.CONTACT, Kind.ROUGH)


@dataclass(frozen=True, slots=True)
class Turner:
    """A force and the terms it adds to a torque balance.

    sense: +1 counter-clockwise, -1 clockwise, for the force as its letter is meant.
    """

    name: Expression
    sense: int
    terms: tuple[Term, ...]


def turning_section(digits: Digits, step: Step) -> Section:
    """The choice of the pivot and the sense and lever arm of each force about it."""
    plan, equation = digits.case.plan, step.equation
    turners = list(_turners(digits, equation))
    senses = tuple(turner.sense for turner in turners)
    opening, body = _opening(plan, step.unknown, digits.convention.turning)
    blocks = [opening, _senses(equation, body, senses, digits.convention.positive)]
    arms = list(_arms(digits, turners))
    if arms:
        blocks.append(itemized(arms) if len(arms) > 1 else paragraph(arms[0]))
    return Section(f"Which forces turn {body} about {equation.about}?", tuple(blocks))


@kept_by_plan
def _opening(plan: Plan, unknown: str, turning: str) -> tuple[Block, str]:
    """What is taken together, the pivot and what does not turn about it; the body in words."""
    step = next(step for step in plan.steps if step.unknown == unknown)
    system, equation = plan.system, step.equation
    reasons = (*together(system, equation), _choice(system, step, turning), *_silent(system, step))
    return paragraph(*reasons), equation_noun(system, equation)


def equation_noun(system: System, equation: Equation) -> str:
    """The body or bodies an equation is written for, in words."""
    return body_noun(system.body(id) for id in equation.bodies)


def together(system: System, equation: Equation) -> Iterator[Inlines]:
    """Why several bodies are taken as one: the forces between them cancel."""
    if len(equation.bodies) > 1:
        inner = [system.force(id) for id in equation.inner]
        letters = dict.fromkeys(force.magnitude for force in inner)
        yield say(
            "We take {bodies} as one body: the forces between them ({inner}) come in equal and "
            "opposite pairs and cancel.",
            bodies=equation_noun(system, equation),
            inner=listed(list(letters)),
        )


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


def _choice(system: System, step: Step, word: str) -> Inlines:
    """Where torques are taken about, the point named by what is there."""
    pivot = step.equation.about
    at = [element for element in system.elements if element.at == pivot]
    hinges = [element.name for element in at if element.kind == Kind.HINGE]
    if hinges:
        return say("We take {word}s about {by} {A}.", word=word, by=hinges[0], A=letter(pivot))
    for kinds, verb in (((Kind.FIXED,), "holds"), (_TOUCHING, "touches")):
        for element in at:
            if element.kind in kinds:
                return say(
                    "We take {word}s about {A}, where {by} {verb} the {body}.",
                    word=word,
                    A=letter(pivot),
                    by=element.name,
                    verb=verb,
                    body=system.body(element.body).name,
                )
    if not at and not any(force.point == pivot for force in system.forces):
        through = [system.force(id).magnitude for id in step.equation.silent]
        return say(
            "We take {word}s about {A}, where the lines of action of {these} meet.",
            word=word,
            A=letter(pivot),
            these=listed(through),
        )
    return say("We take {word}s about {A}.", word=word, A=letter(pivot))


def _silent(system: System, step: Step) -> Iterator[Inlines]:
    """Why some forces do not turn the body: they act at the pivot, or along a line through it."""
    pivot = step.equation.about
    silent = [system.force(id) for id in step.equation.silent]
    at_pivot = [force for force in silent if not way(system.points, pivot, force.point)]
    through = [force for force in silent if force not in at_pivot]
    if at_pivot:
        yield _no_arm(system, at_pivot, "{these} {act} there, so {its}")
    if through:
        one = len(through) == 1
        line = f"The line{'' if one else 's'} of action of {{these}} "
        line += f"pass{'es' if one else ''} through it, so {{its}}"
        yield _no_arm(system, through, line)


def _no_arm(system: System, forces: list[Force], pattern: str) -> Inlines:
    one = len(forces) == 1
    gone = [f.magnitude for f in forces if _unknown(system, f.magnitude)]
    ending = ": {it} nothing{leaving}."
    if not gone:
        leaving = ""
    elif len(gone) == 1:
        leaving = ", and that unknown leaves the equation"
    elif len(gone) == 2:
        leaving = ", and both of these unknowns leave the equation"
    else:
        leaving = ", and these unknowns leave the equation"
    return say(
        pattern + ending,
        these=listed([force.magnitude for force in forces]),
        act="acts" if one else "act",
        its="its lever arm is zero" if one else "their lever arms are zero",
        it="it turns" if one else "they turn",
        leaving=leaving,
    )


def _unknown(system: System, expression: Expression) -> bool:
    return any(system.variables[name].role is Role.UNKNOWN for name in names_in(expression))


@kept(256)
def _senses(equation: Equation, body: str, senses: tuple[int, ...], positive: str) -> Block:
    """Which forces turn the body which way; senses: as `Turner.sense`, one for each force."""
    names = [terms[0].magnitude for terms in _by_force(equation)]
    told = []
    for sense, word in ((-1, "clockwise"), (1, "counter-clockwise")):
        these = [name for name, own in zip(names, senses, strict=True) if own == sense]
        if these:
            turns = say(
                "{these} {turn} {body} {word} ({sign}).",
                these=listed(these),
                turn="turns" if len(these) == 1 else "turn",
                body=body,
                word=word,
                sign="positive" if word == positive else "negative",
            )
            told.append(turns)
    return paragraph(*told)


def _arms(digits: Digits, turners: list[Turner]) -> Iterator[Inlines]:
    form = digits.convention.torque
    if form == "angle":
        yield from _angles(digits, turners)
    elif form == "arm":
        yield from _lever_arms(digits, turners)
    else:
        yield from _parts(turners)


def _angles(digits: Digits, turners: list[Turner]) -> Iterator[Inlines]:
    """The angle between each force and its arm."""
    square = [
        t.name
        for t in turners
        if all(term.length is not None and term.ratio == UNITY for term in t.terms)
    ]
    if square:
        one = len(square) == 1
        yield say(
            "{these} {act} at right angles to {its} ({sine}).",
            these=listed(square),
            act="acts" if one else "act",
            its="its arm" if one else "their arms",
            sine=(Call("sin", (Number(exact(90), DEGREE),)), Relation("="), UNITY),
        )
    oblique: dict[Inlines, list[Expression]] = {}
    for turner in turners:
        if len(turner.terms) > 1:
            yield _split(digits, turner)
        elif turner.terms[0].length is not None and turner.terms[0].ratio != UNITY:
            told = _angle_between(digits, turner.terms[0])
            oblique.setdefault(told, []).append(turner.name)
    for told, names in oblique.items():
        single = "The angle between {F} and its arm is {told}."
        several = "For {F} the angle between force and arm is {told}."
        yield say(single if len(names) == 1 else several, F=listed(names), told=told)


def _split(digits: Digits, turner: Turner) -> Inlines:
    lengths = [term.length for term in turner.terms if term.length is not None]
    return say(
        "The way from the pivot to {F} has two legs, {lengths}; each gives a {word} of its own.",
        F=turner.name,
        lengths=listed(lengths),
        word=digits.convention.turning,
    )


def _angle_between(digits: Digits, term: Term) -> Inlines:
    """The angle between a force and its arm: "180° - θ = 140°, and sin 140° = sin 40°"."""
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
    sine = Call("sin", (shown,))
    ratio = digits.put_in(term.ratio)
    if ratio == sine:
        return say("{angle}", angle=angle)
    return say("{angle}, and {same}", angle=angle, same=(sine, Relation("="), ratio))


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


def _lever_arms(digits: Digits, turners: list[Turner]) -> Iterator[Inlines]:
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
            yield say("Lever arm of {F}: {arm}.", F=term.magnitude, arm=formula)


def _product(term: Term) -> Expression:
    assert term.length is not None
    return times(Lump(term.length), term.ratio)


def _parts(turners: list[Turner]) -> Iterator[Inlines]:
    """Which part of each oblique force turns, and at which distance."""
    for turner in turners:
        for term in turner.terms:
            if term.length is not None and term.ratio != UNITY:
                yield say(
                    "Of {F} only the part square to {l} turns: {part}.",
                    F=term.magnitude,
                    l=term.length,
                    part=times(term.magnitude, term.ratio),
                )
