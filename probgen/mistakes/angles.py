"""Slips with angles: another function, another line, none at all, radians."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace
from decimal import Decimal
from typing import Final

from probgen.mistakes import distances, joints
from probgen.mistakes.variant import (
    Change,
    Misstep,
    Part,
    axis_of,
    letters,
    on_terms,
    renamed,
    restated,
    rewritten,
    turned,
    with_sign_of,
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
from probgen.quantities.unit import ANGLE, DEGREE, UnitSystem
from probgen.statics.equation import Equation, Term, torque_balance
from probgen.statics.geometry import angle_of
from probgen.statics.plan import Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Force, Kind, Link, Role, System, Variable

_TRIGONOMETRIC: Final = ("sin", "cos", "tan")
_INVERSE: Final = ("asin", "acos", "atan", "atan2")
_QUARTER: Final = 90  # degrees
_IN_RADIANS: Final = Number(Decimal(repr(180.0 / math.pi)))


def _sin_cos_swap(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Of one force in its torque, of one force throughout, of all forces."""
    oblique = _letters_of(_oblique(plan))
    tries: list[tuple[str, Expression | None, str]]
    tries = [("torque", letter, "torque") for letter in oblique]
    tries += [("one", letter, "") for letter in oblique]
    tries += [("all", None, "")] if len(oblique) > 1 else []
    for kind_of_way, letter, kind in tries:
        change = (
            _exchanged(plan.system, kind, oblique[letter])
            if letter
            else _exchanged_throughout(plan.system)
        )
        changed = rewritten(plan, change)
        if changed:
            yield Misstep("sin_cos_swap", changed, kind_of_way, {"F": letter or ""})


def _exchanged(system: System, kind: str, sources: tuple[str, ...]) -> Change:
    """Sine and cosine exchanged in the terms of some forces.

    Who writes torques with components exchanges those of the force, wherever it acts.
    """
    usual = on_terms(_other_function, kind, sources)

    def change(equation: Equation) -> Equation:
        if equation.kind != "torque" or equation.method.torque != "components":
            return usual(equation)
        for id in {term.source: None for term in equation.terms if term.source in sources}:
            equation = _with_parts_exchanged(system, id, equation)
        return equation

    return change


def _exchanged_throughout(system: System) -> Change:
    """Every sine and cosine exchanged, with components those of where forces act too."""
    usual, elsewhere = on_terms(_other_function), _all_mirrored(system)

    def change(equation: Equation) -> Equation:
        if equation.kind != "torque" or equation.method.torque != "components":
            return usual(equation)
        if elsewhere is None:
            return equation
        again = torque_balance(elsewhere, equation.bodies, equation.about, equation.method)
        own = {term.source for term in equation.terms}
        return replace(equation, terms=tuple(t for t in again.terms if t.source in own))

    return change


def _all_mirrored(system: System) -> System | None:
    """The system with all components exchanged, of forces and of places; None if some cannot be."""
    ways = [force.direction for force in system.forces]
    ways += [link.direction for point in system.points.values() for link in point.links]
    other = {each: _mirrored(each) for each in ways if not angle_of(each).along_axis}
    kept: dict[Expression, Expression] = {a: b for a, b in other.items() if b is not None}
    if len(kept) < len(other):
        return None

    def put(link: Link) -> Link:
        return replace(link, direction=kept.get(link.direction, link.direction))

    return replace(
        system,
        points={id: replace(p, links=tuple(map(put, p.links))) for id, p in system.points.items()},
        forces=tuple(
            replace(each, direction=kept.get(each.direction, each.direction))
            for each in system.forces
        ),
    )


def _with_parts_exchanged(system: System, id: str, equation: Equation) -> Equation:
    """The equation with the components of one force exchanged.

    A force along an axis has one only: what is exchanged then is where it acts.
    """
    own = [term for term in equation.terms if term.source == id]
    force = next((force for force in system.forces if force.id == id), None)
    if (
        force is None
        or angle_of(force.direction).along_axis
        or all(term.link and angle_of(term.link.direction).along_axis for term in own)
    ):
        return on_terms(_other_function, "torque", (id,))(equation)
    other = _mirrored(force.direction)
    return turned(system, force, other)(equation) if other else equation


def _mirrored(direction: Expression) -> Expression | None:
    """The direction (degrees) with the components of one exchanged and their signs kept.

    c + a has those of c + 90 - a, where c is along an axis; None where it is no such sum.
    """
    angle = angle_of(direction)
    factors = [factor for _, factor in angle.multiples] or [Decimal(1)]
    below = math.floor(angle.constant / _QUARTER) * _QUARTER
    axis = angle.constant if angle.multiples else below
    if axis % _QUARTER or [abs(factor) for factor in factors] != [1]:
        return None
    both = number(int(2 * axis + _QUARTER * factors[0]), DEGREE)
    return total((1, both), (-1, direction))


def _letters_of(forces: Iterable[Force]) -> dict[Expression, tuple[str, ...]]:
    """The ids of forces by their letter: both strands of a rope pull with one T."""
    ids: dict[Expression, tuple[str, ...]] = {}
    for force in forces:
        ids[force.magnitude] = (*ids.get(force.magnitude, ()), force.id)
    return ids


def _other_function(term: Term) -> Term:
    """The ratio sqrt(1 - ratio^2): cosine for sine, sine for cosine, also where lengths give it."""
    if term.ratio == UNITY:
        return term
    other = Call("sqrt", (total((1, UNITY), (-1, Power(term.ratio, 2))),))
    return replace(term, ratio=with_sign_of(term.ratio, other))


def _wrong_reference_line(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """a -> 90° - a for each angle; beside a tilted body also a + tilt and a - tilt."""
    wound = _angles_of_contact(plan.system)
    variables = plan.system.variables.values()
    angles = [v for v in variables if _is_given_angle(v) and v.id not in wound]
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
    """The full force in the torque: of one oblique force that is no weight, of all forces.

    Nobody who writes torques with components leaves all angles out.
    """
    form = plan.method.torque
    if form == "components":
        return
    ids = _letters_of(force for force in _oblique(plan) if force.kind is not Kind.WEIGHT)
    one, every = ("one-arm", "all-arms") if form == "arm" else ("one", "all")
    tries: list[tuple[str, Expression | None]] = [(one, letter) for letter in ids]
    tries += [(every, None)] if len(_oblique(plan)) > 1 else []
    for kind_of_way, letter in tries:
        changed = rewritten(plan, on_terms(_square_on, "torque", ids[letter] if letter else ()))
        if changed:
            yield Misstep("no_angle", changed, kind_of_way, {"F": letter or ""})


def _square_on(term: Term) -> Term:
    if term.ratio == UNITY:
        return term
    return replace(term, ratio=with_sign_of(term.ratio, UNITY))


def _distance_not_perpendicular(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The distance along a tilted body taken as the lever arm of every weight, and of all else that
    is level or upright; not where two lengths place one of them, which no distance is told of.

    Of a weight that lies across and up by lengths with letters it is the distance these make.
    """
    yield from distances.over_legs(plan)
    along = [force for force in _oblique(plan) if angle_of(force.direction).along_axis]
    tilted = {force.body for force in along if force.kind is Kind.WEIGHT}
    alike = [force for force in along if force.body in tilted]
    ids = {force.id for force in alike}
    torques = [e for step in plan.steps for e in step.equations if e.kind == "torque"]
    if any([t.source for t in each.terms].count(id) > 1 for each in torques for id in ids):
        return
    changed = rewritten(plan, on_terms(lambda t: _square_on(t) if t.source in ids else t, "torque"))
    if changed:
        told: dict[str, Part] = {"W": letters(alike), "body": plan.system.body(alike[0].body)}
        pivots = {each.about for each in torques if ids & {term.source for term in each.terms}}
        way = "one" if len(alike) == len(pivots) == 1 else ""
        if way:
            (pivot,), end = pivots, alike[0].point
            told |= {"A": Name(pivot, pivot), "P": Name(end, end)}
        yield Misstep("distance_not_perpendicular", changed, way, told)


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
        changed = restated(changed, {Quantity(joint.id).direction: Call("atan2", sides)})
    if changed is not plan:
        yield Misstep("calculator_radians", changed)


RULES: Final = {
    "sin_cos_swap": _sin_cos_swap,
    "wrong_reference_line": _wrong_reference_line,
    "no_angle": _no_angle,
    "distance_not_perpendicular": _distance_not_perpendicular,
    "calculator_radians": _calculator_radians,
}


# What the rules ask of a plan.


def _is_given_angle(variable: Variable) -> bool:
    return variable.dimension == ANGLE and variable.role in (Role.GIVEN, Role.DERIVED)


def _angles_of_contact(system: System) -> frozenset[str]:
    """The ids of the angles that conditions alone hold, and no direction or place: of a rope round
    a post. They are measured from no line.
    """
    links = [link for point in system.points.values() for link in point.links]
    laid = [part for link in links for part in (link.length, link.direction)]
    laid += [force.direction for force in system.forces]
    laid += [definition.expression for definition in system.definitions]
    sides = [side for each in system.conditions for side in (each.left, each.right)]
    held, elsewhere = (frozenset().union(*map(names_in, each)) for each in (sides, laid))
    return held - elsewhere


def _tilts(system: System) -> frozenset[str]:
    """The ids of the angles that straight bodies are tilted by."""
    axes = [axis_of(system, body) for body in system.bodies]
    return frozenset().union(*(names_in(axis) for axis in axes if axis is not None))


def _oblique(plan: Plan) -> list[Force]:
    """Forces that some balance of the plan takes only a part of, in the order they act."""
    sources = {
        term.source
        for step in plan.steps
        for term in step.equation.terms
        if step.equation.kind != "condition" and term.ratio != UNITY
    }
    return [force for force in plan.system.forces if force.id in sources]


def _holds(expression: Expression, functions: tuple[str, ...]) -> bool:
    if isinstance(expression, Call) and expression.function in functions:
        return True
    return any(_holds(part, functions) for part in parts(expression))
