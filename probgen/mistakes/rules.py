"""Slips: the ways a student's working of a plan is known to go wrong.

Each rule looks for what it needs in a plan and gives the workings it leads to.  Which slips there
are, and what speaks for each, is told in `probgen.mistakes.comparison`.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import replace
from decimal import Decimal
from typing import Final

from probgen.mistakes import joints
from probgen.mistakes.variant import (
    Change,
    Misstep,
    Part,
    axis_of,
    on_terms,
    own_weights,
    renamed,
    restated,
    rewritten,
    with_sign_of,
    workable,
)
from probgen.quantities.expression import (
    UNITY,
    Call,
    Expression,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    names_in,
    number,
    parts,
    substituted,
    total,
)
from probgen.quantities.recent import kept
from probgen.quantities.unit import (
    ACCELERATION,
    ANGLE,
    DEGREE,
    LENGTH,
    MASS,
    SI,
    UnitSystem,
)
from probgen.statics.equation import Equation, Term, torque_balance
from probgen.statics.plan import Plan, Probe, find_plan
from probgen.statics.refusal import Refusal
from probgen.statics.system import Force, Kind, Role, System, Variable

Rule = Callable[[Plan, UnitSystem], Iterator[Misstep]]
_SUPPORTS: Final = (Kind.HINGE, Kind.ROUGH)
_TRIGONOMETRIC: Final = ("sin", "cos", "tan")
_INVERSE: Final = ("asin", "acos", "atan", "atan2")
_IN_RADIANS: Final = Number(Decimal(repr(180.0 / math.pi)))


def missteps(plan: Plan, probe: Probe, units: UnitSystem = SI) -> tuple[Misstep, ...]:
    """Every slip that has a meaning for a plan; found once, good for every draw.

    probe: coherent values of givens, derived quantities and g, arrays of one or more draws.
    units: the coherent units of the course; what is given in them needs no converting.
    """
    return tuple(made for working in workings(plan, probe) for made in _made_in(working, units))


@kept(64)  # a class may be worked in several portions
def _made_in(working: Plan, units: UnitSystem) -> tuple[Misstep, ...]:
    found = (made for rule in RULES for made in rule(working, units))
    return tuple(misstep for misstep in found if workable(misstep.plan))


def workings(plan: Plan, probe: Probe) -> tuple[Plan, ...]:
    """The workings slips are looked for in: torques about the support first, as most students
    write them, and the plan's own where it does otherwise.
    """
    system = plan.system
    support = next((e.at for e in system.elements if e.kind in _SUPPORTS), "")
    if not support or system.pivot or len(system.bodies) > 1 or support in plan.pivots:
        return (plan,)
    try:
        usual = find_plan(replace(system, pivot=support), probe, plan.method)
    except Refusal:
        return (plan,)
    return (usual, plan)


# Weights, masses and units.


def _mass_as_weight(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """m g -> m, where masses are in the unit that goes with the unit of force."""
    used = frozenset().union(*(names_in(d.expression) for d in plan.definitions))
    masses = [v for v in plan.system.variables.values() if v.id in used and v.dimension == MASS]
    coherent = units.unit_of(MASS).factor
    changed = renamed(plan, {"g": number(1, units.unit_of(ACCELERATION))})
    if changed and all(mass.unit.factor == coherent for mass in masses):
        yield Misstep("mass_as_weight", changed, parts={"g": Name("g", "g")})


def _own_weight_forgotten(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for weight in own_weights(plan.system):
        changed = rewritten(plan, on_terms(lambda term: None, source=weight.id))
        if changed:
            noun = plan.system.body(weight.body).name
            told: dict[str, Part] = {"W": weight.magnitude, "body": noun}
            yield Misstep("own_weight_forgotten", changed, parts=told)


def _whole_length_for_weight(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The body's own weight moved to its end far from the support."""
    for weight in own_weights(plan.system):
        outline = plan.system.body(weight.body).outline
        ends = [end for end in (outline[0], outline[-1]) if end not in _held(plan.system)]
        if len(ends) != 1 or len(outline) > 2 or ends[0] == weight.point:
            continue
        changed = rewritten(plan, _moved(plan.system, weight, ends[0]))
        if changed:
            noun, end = plan.system.body(weight.body).name, Name(ends[0], ends[0])
            told: dict[str, Part] = {"W": weight.magnitude, "body": noun, "end": end}
            yield Misstep("whole_length_for_weight", changed, parts=told)


def _moved(system: System, force: Force, point: str) -> Change:
    """The force's torques taken as if it acted at another point."""
    others = tuple(f for f in system.forces if f.id != force.id)
    elsewhere = replace(system, forces=(*others, replace(force, point=point)))

    def change(equation: Equation) -> Equation:
        if equation.kind != "torque" or force.body not in equation.bodies:
            return equation
        kept = tuple(term for term in equation.terms if term.source != force.id)
        again = torque_balance(elsewhere, equation.bodies, equation.about, equation.method)
        new = tuple(term for term in again.terms if term.source == force.id)
        return replace(equation, terms=(*kept, *new))

    return change


def _unit_not_converted(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """One length or mass put in with its own digits, as if they were coherent."""
    for variable in plan.system.variables.values():
        coherent = units.unit_of(variable.dimension)
        given = variable.role in (Role.GIVEN, Role.DERIVED)
        if variable.dimension not in (LENGTH, MASS) or not given:
            continue
        if variable.unit.factor == coherent.factor:
            continue
        ratio = number(repr(coherent.factor / variable.unit.factor))
        changed = renamed(plan, {variable.id: Product((ratio, variable.as_name))})
        if changed:
            own, due = variable.unit.plain, coherent.plain
            told: dict[str, Part] = {"q": variable.as_name, "own": own, "due": due}
            yield Misstep("unit_not_converted", changed, parts=told)


# Angles.


def _sin_cos_swap(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Of one force in its torque, of one force throughout, of all forces."""
    oblique = _oblique(plan)
    tries = [("torque", force.id, "torque") for force in oblique]
    tries += [("one", force.id, "") for force in oblique]
    tries += [("all", "", "")] if len(oblique) > 1 else []
    for kind_of_way, source, kind in tries:
        changed = rewritten(plan, on_terms(_other_function, kind, source))
        if changed:
            told: dict[str, Part] = {"F": _letter(plan.system, source)}
            yield Misstep("sin_cos_swap", changed, kind_of_way, told)


def _other_function(term: Term) -> Term:
    """The ratio sqrt(1 - ratio^2): cosine for sine, sine for cosine, also where lengths give it."""
    if term.ratio == UNITY:
        return term
    other = Call("sqrt", (total((1, UNITY), (-1, Power(term.ratio, 2))),))
    return replace(term, ratio=with_sign_of(term.ratio, other))


def _wrong_reference_line(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """a -> 90° - a for each angle; beside a tilted body also a + tilt and a - tilt."""
    angles = [v for v in plan.system.variables.values() if _is_given_angle(v)]
    tilts = _tilts(plan.system)
    quarter = number(90, DEGREE)
    for angle in angles:
        a = angle.as_name
        others = [("vertical", total((1, quarter), (-1, a)))]
        for tilt in angles:
            if tilt.id in tilts and tilt.id != angle.id and angle.id not in tilts:
                t = tilt.as_name
                others += [("tilt", total((1, a), (1, t))), ("tilt", total((1, a), (-1, t)))]
        for kind_of_way, other in others:
            changed = renamed(plan, {angle.id: other})
            if changed:
                told: dict[str, Part] = {"a": a, "b": other}
                yield Misstep("wrong_reference_line", changed, kind_of_way, told)


def _no_angle(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The full force in the torque: of one oblique force that is no weight, of all forces."""
    forces = [force for force in _oblique(plan) if force.kind is not Kind.WEIGHT]
    tries = [("one", force.id) for force in forces]
    tries += [("all", "")] if len(_oblique(plan)) > 1 else []
    for kind_of_way, source in tries:
        changed = rewritten(plan, on_terms(_square_on, "torque", source))
        if changed:
            told: dict[str, Part] = {"F": _letter(plan.system, source)}
            yield Misstep("no_angle", changed, kind_of_way, told)


def _square_on(term: Term) -> Term:
    if term.ratio == UNITY:
        return term
    return replace(term, ratio=with_sign_of(term.ratio, UNITY))


def _distance_not_perpendicular(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The distance along a tilted body taken as the lever arm of every weight."""
    weights = [force for force in _oblique(plan) if force.kind is Kind.WEIGHT]
    ids = {force.id for force in weights}
    changed = rewritten(plan, on_terms(lambda t: _square_on(t) if t.source in ids else t, "torque"))
    if changed:
        letters = tuple(force.magnitude for force in weights)
        told: dict[str, Part] = {"W": letters, "body": plan.system.body(weights[0].body).name}
        yield Misstep("distance_not_perpendicular", changed, parts=told)


def _calculator_radians(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Degrees keyed in as radians; angles that the calculator found itself are not affected."""

    def shown(part: Expression) -> Expression | None:
        if not isinstance(part, Call) or part.function not in _TRIGONOMETRIC:
            return None
        if _holds(part, _INVERSE):
            return part
        return Call(part.function, (Product((_IN_RADIANS, part.arguments[0])),))

    def change(term: Term) -> Term:
        length = term.length and substituted(term.length, shown)
        return replace(term, ratio=substituted(term.ratio, shown), length=length)

    changed = rewritten(plan, on_terms(change)) or plan
    for joint in joints.resultants(plan):
        x, y = joints.components(plan.system, joint)
        level = Call("abs", (Call("atan", (Quotient(y, x),)),))
        printed = Quotient(level, _IN_RADIANS)
        sides = with_sign_of(y, Call("sin", (printed,))), with_sign_of(x, Call("cos", (printed,)))
        changed = restated(changed, {f"{joint.id}.direction": Call("atan2", sides)})
    if changed is not plan:
        yield Misstep("calculator_radians", changed)


# Torques.


def _torque_sign(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The torque of one force the wrong way round."""
    forces = {t.source for s in plan.steps if s.equation.kind == "torque" for t in s.equation.terms}
    for force in plan.system.forces:
        if force.id in forces:
            flip = on_terms(lambda term: replace(term, sign=-term.sign), "torque", force.id)
            changed = rewritten(plan, flip)
            if changed:
                yield Misstep("torque_sign", changed, parts={"F": force.magnitude})


def _inverted_arm_ratio(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Levers only: F l_1 = W l_2 written F l_2 = W l_1, each arm (or each force) upside down."""

    def arms(term: Term) -> Term:
        return replace(term, length=term.length and Quotient(UNITY, term.length))

    def forces(term: Term) -> Term:
        return replace(term, magnitude=Quotient(UNITY, term.magnitude))

    turning = [step for step in plan.steps if step.equation.kind == "torque"]
    level = all(t.ratio == UNITY and t.length for s in turning for t in s.equation.terms)
    if not turning or not level:
        return
    changed = rewritten(plan, on_terms(arms, "torque"))
    changed = changed or rewritten(plan, on_terms(forces, "torque"))
    if changed:
        yield Misstep("inverted_arm_ratio", changed)


def _early_rounding(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Each result cut to two figures before it is used again."""
    if plan.steps or plan.definitions:
        yield Misstep("early_rounding", plan, figures=2)


RULES: Final[tuple[Rule, ...]] = (
    _mass_as_weight,
    _own_weight_forgotten,
    _whole_length_for_weight,
    _unit_not_converted,
    _sin_cos_swap,
    _wrong_reference_line,
    _no_angle,
    _distance_not_perpendicular,
    _calculator_radians,
    _torque_sign,
    _inverted_arm_ratio,
    _early_rounding,
    *joints.RULES,
)


# What the rules ask of a plan.


def _is_given_angle(variable: Variable) -> bool:
    return variable.dimension == ANGLE and variable.role in (Role.GIVEN, Role.DERIVED)


def _tilts(system: System) -> frozenset[str]:
    """The ids of the angles that straight bodies are tilted by."""
    axes = [axis_of(system, body) for body in system.bodies]
    return frozenset().union(*(names_in(axis) for axis in axes if axis is not None))


def _held(system: System) -> frozenset[str]:
    """The points where supports act."""
    return frozenset(e.at for e in system.elements if e.kind in _SUPPORTS)


def _oblique(plan: Plan) -> list[Force]:
    """Forces that some balance of the plan takes only a part of, in the order they act."""
    sources = {
        term.source
        for step in plan.steps
        for term in step.equation.terms
        if step.equation.kind != "condition" and term.ratio != UNITY
    }
    return [force for force in plan.system.forces if force.id in sources]


def _letter(system: System, source: str) -> Part:
    return system.force(source).magnitude if source else ""


def _holds(expression: Expression, functions: tuple[str, ...]) -> bool:
    if isinstance(expression, Call) and expression.function in functions:
        return True
    return any(_holds(part, functions) for part in parts(expression))
