"""Slips with angles: another line, none at all, radians."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Final

from probgen.mistakes import distances, joints, sines
from probgen.mistakes.oblique import (
    common,
    letters_of,
    oblique_forces,
    oblique_in,
    spoilt_of,
    torques_of,
)
from probgen.mistakes.variant import (
    Misstep,
    Part,
    axis_of,
    in_equations,
    letters,
    on_terms,
    renamed,
    restated,
    rewritten,
    with_sign_of,
)
from probgen.quantities.expression import (
    UNITY,
    Call,
    Expression,
    Name,
    Number,
    Product,
    Quotient,
    names_in,
    number,
    parts,
    substituted,
    total,
)
from probgen.quantities.unit import ANGLE, DEGREE, UnitSystem
from probgen.statics.equation import Term, read_off
from probgen.statics.geometry import angle_of
from probgen.statics.plan import Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Kind, Role, System, Variable

_TRIGONOMETRIC: Final = ("sin", "cos", "tan")
_INVERSE: Final = ("asin", "acos", "atan", "atan2")
_IN_RADIANS: Final = Number(Decimal(repr(180.0 / math.pi)))


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
    ids = letters_of(force for force in oblique_forces(plan) if force.kind is not Kind.WEIGHT)
    one, every = ("one-arm", "all-arms") if form == "arm" else ("one", "all")
    tries: list[tuple[str, Expression | None]] = [(one, letter) for letter in ids]
    tries += [(every, None)] if len(oblique_forces(plan)) > 1 else []
    for kind_of_way, letter in tries:
        changed = rewritten(plan, on_terms(_square_on, "torque", ids[letter] if letter else ()))
        if changed:
            told: dict[str, Part] = {"F": letter or ""}
            left_out = _read_off(plan, ids[letter] if letter else ())
            if left_out:
                kind_of_way, more = _without(left_out) if letter else ("all-read", {})
                told |= more
            yield Misstep("no_angle", changed, kind_of_way, told)


def _read_off(plan: Plan, sources: Collection[str]) -> list[Term]:
    """The terms of forces, of all where none are given, in the first balance of torques with an
    angle in them, if they have arms that are read off there; of those no line is square to a force.
    """
    forces = {force.id: force for force in plan.system.forces}
    for equation in torques_of(plan):
        terms = [t for t in equation.terms if t.source in forces and t.ratio != UNITY]
        terms = [t for t in terms if not sources or t.source in sources]
        points, about = plan.system.points, equation.about
        read = [t for t in terms if read_off(points, about, forces[t.source], t)]
        if read or (terms and sources):
            return read
    return []


def _without(terms: Sequence[Term]) -> tuple[str, dict[str, Part]]:
    """How a force's arms, read off, are taken without their angles: its way and its parts."""
    ratios = tuple(dict.fromkeys(term.ratio for term in terms))
    if len(terms) == 1 and terms[0].length is not None:
        return "one-read", {"d": terms[0].length, "r": ratios[0]}
    return "one-parts", {"r": ratios}


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
    along = [force for force in oblique_forces(plan) if angle_of(force.direction).along_axis]
    tilted = {force.body for force in along if force.kind is Kind.WEIGHT}
    alike = [force for force in along if force.body in tilted]
    ids = {force.id for force in alike}
    torques = torques_of(plan)
    if any([t.source for t in each.terms].count(id) > 1 for each in torques for id in ids):
        return
    spoilt = [each for each in torques if ids & oblique_in(each) and not common(each, ids)]
    held = spoilt_of(plan, ids)
    alike = [force for force in alike if force.id in held]
    change = on_terms(lambda t: _square_on(t) if t.source in ids else t, "torque")
    changed = rewritten(plan, in_equations(spoilt, change))
    if changed:
        pivots = tuple(Name(p, p) for p in dict.fromkeys(each.about for each in spoilt))
        told: dict[str, Part] = {"W": letters(alike), "A": pivots}
        way = "one" if len(alike) == len(pivots) == 1 else ""
        if way:
            end = alike[0].point
            told |= {"A": pivots[0], "P": Name(end, end)}
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
    "sin_cos_swap": sines.sin_cos_swap,
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


def _holds(expression: Expression, functions: tuple[str, ...]) -> bool:
    if isinstance(expression, Call) and expression.function in functions:
        return True
    return any(_holds(part, functions) for part in parts(expression))
