"""Slips with where a force acts: wrong ends, spread loads, means, supports that share."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from probgen.bank.length import part_of
from probgen.mistakes.variant import (
    Misstep,
    Part,
    exchanged,
    facing,
    letters,
    moved,
    own_weights,
    replaced,
    rewritten,
    sum_of,
)
from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Name,
    Number,
    Product,
    Quotient,
    is_number,
    names_in,
    number,
    substituted,
    times,
    total,
)
from probgen.quantities.like_terms import collected
from probgen.quantities.unit import KILOGRAM, LENGTH, MASS, NEWTON, UnitSystem
from probgen.statics.geometry import way
from probgen.statics.plan import Plan
from probgen.statics.shape import Outline
from probgen.statics.system import Force, ForcePart, Intensity, Kind, Link, Point, System
from probgen.statics.taken_as_one import acting_on

_PULLED: Final = (Outline.TRIANGLE, Outline.HALF_CIRCLE, Outline.HALF_RING)
"""Parts whose centroid is not in their middle."""
_CORDS: Final = (Kind.CABLE, Kind.ROPE)
_PARTLY: Final = (ForcePart.X, ForcePart.Y, ForcePart.FRICTION)


def _wrong_end(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The distance of a load measured from the other end of a straight body."""
    own = {force.id for force in own_weights(plan.system)}
    turned = {t.source for s in plan.steps if s.equation.kind == "torque" for t in s.equation.terms}
    for force in plan.system.forces:
        known = not names_in(force.magnitude) & set(plan.system.unknowns)
        if force.id in own or force.id not in turned or not known:
            continue
        point = _mirrored(plan.system, force)
        changed = point and rewritten(plan, moved(plan.system, force, point))
        if changed:
            told: dict[str, Part] = {"W": force.magnitude, "body": plan.system.body(force.body)}
            yield Misstep("wrong_end", changed, parts=told)


def _mirrored(system: System, force: Force) -> Point | None:
    """The point as far from one end of a straight body as the force is from the other.

    Only of a distance from an end that has a letter, which is what the statement gives.
    """
    outline = system.body(force.body).outline
    if len(outline) != 2:
        return None
    start, end = outline
    whole, there = way(system.points, start, end), way(system.points, start, force.point)
    if len(whole) != 1 or len(there) != 1 or there[0].direction != whole[0].direction:
        return None
    rest = collected(total((1, whole[0].length), (-1, there[0].length)))
    if rest in (ZERO, there[0].length) or not any(
        isinstance(length, Name) for length in (rest, there[0].length)
    ):
        return None
    return Point("?", (*system.points[start].links, Link(rest, whole[0].direction)))


# Loads spread along a line.


def _load_not_halved(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The size of a triangular load taken as that of an even one."""
    for force in _triangles(plan.system):
        told: dict[str, Part] = {"W": force.magnitude}
        for definition in plan.definitions:
            if definition.variable == force.id:
                whole = Product((number(2), definition.expression))
                changed = replaced(plan, definition.variable, whole)
                yield Misstep("load_not_halved", changed, parts=told)


def _load_at_middle(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The resultant of a triangular load, or of one by a formula, placed at half of its length."""
    yield from _curve_at_middle(plan)
    for force in _triangles(plan.system):
        spread = plan.system.element(force.element).spread
        assert spread is not None
        half = Link(Quotient(spread.line.length, number(2)), spread.line.direction)
        middle = Point("?", (*plan.system.points[spread.start].links, half))
        changed = rewritten(plan, moved(plan.system, force, middle))
        if changed:
            yield Misstep("load_at_middle", changed, parts={"W": force.magnitude})


def _load_at_end(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The resultant of an even load that begins at the pivot taken with its whole length as arm."""
    points = plan.system.points
    pivots = (s.equation.about for s in plan.steps if s.equation.kind == "torque")
    starts = {points[pivot].links for pivot in pivots}
    for force in plan.system.forces:
        spread = plan.system.element(force.element).spread
        if spread is None or spread.intensity is not None or spread.first != spread.last:
            continue
        if points[spread.start].links not in starts:
            continue
        end = Point("?", (*points[spread.start].links, spread.line))
        changed = rewritten(plan, moved(plan.system, force, end))
        if changed:
            yield Misstep("load_at_end", changed, parts={"W": force.magnitude})


def _triangles(system: System) -> list[Force]:
    """The resultants of loads that run evenly and vanish at one end."""
    forces = []
    for force in system.forces:
        spread = system.element(force.element).spread
        if spread is None or spread.intensity is not None:
            continue
        if is_number(spread.first, 0) or is_number(spread.last, 0):
            forces.append(force)
    return forces


def _curve_at_middle(plan: Plan) -> Iterator[Misstep]:
    for force, load in _curves(plan.system):
        middle = Quotient(total((1, load.low), (1, load.high)), number(2))
        changed = replaced(plan, load.centroid.id, middle)
        yield Misstep("load_at_middle", changed, "curve", {"W": force.magnitude})


def _load_as_even(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The size of a load by a formula as its largest value times its length."""
    for force, _ in _curves(plan.system):
        largest, _, length = _grown(plan.system, force)
        if largest is not None:
            changed = replaced(plan, force.id, times(largest, length))
            yield Misstep("load_as_even", changed, parts={"W": force.magnitude})


def _load_as_triangle(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Size and place of a load by a formula as those of a triangle."""
    for force, load in _curves(plan.system):
        largest, part, length = _grown(plan.system, force)
        if largest is not None:
            half = Quotient(times(largest, length), number(2))
            changed = replaced(plan, force.id, half)
            place = total((1, load.low), (1, part_of(length, part)))
            changed = replaced(changed, load.centroid.id, place)
            told: dict[str, Part] = {"W": force.magnitude, "x": load.centroid}
            yield Misstep("load_as_triangle", changed, parts=told)


def _curves(system: System) -> Iterator[tuple[Force, Intensity]]:
    """The resultants of loads by a formula, each once."""
    for element in system.elements:
        if element.spread is not None and element.spread.intensity is not None:
            yield system.force(element.id), element.spread.intensity


def _grown(system: System, force: Force) -> tuple[Expression | None, Fraction, Expression]:
    """The largest value of a load that vanishes at one end alone, the part of its length at which
    a triangle like it acts, and that length; no value for another load.
    """
    spread = system.element(force.element).spread
    assert spread is not None
    length = spread.line.length
    none = [is_number(size, 0) for size in (spread.first, spread.last)]
    if none[0] == none[1]:
        return None, Fraction(1, 2), length
    if none[0]:
        return spread.last, Fraction(2, 3), length
    return spread.first, Fraction(1, 3), length


def _unweighted_mean(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A centre of mass as the plain mean of the places, where nothing is cut out."""
    masses = {v.id for v in plan.system.variables.values() if v.dimension == MASS}
    yield from _plain_means(plan, masses, "", number(1, KILOGRAM))
    shaped = [each for each in plan.system.elements if each.shape is not None]
    if all(each.kind is Kind.WEIGHT for each in shaped):
        weights = {id for each in shaped for id in each.forces}
        yield from _plain_means(plan, weights, "weights", number(1, NEWTON))


def _plain_means(plan: Plan, weighing: set[str], way: str, one: Number) -> Iterator[Misstep]:
    """weighing: the ids of what each place is counted with."""
    for definition in plan.definitions:
        variable = plan.system.variables[definition.variable]
        held = names_in(definition.expression) & weighing
        if variable.dimension == LENGTH and len(held) > 1:
            mean = substituted(
                definition.expression,
                lambda part: one if isinstance(part, Name) and part.id in weighing else None,
            )
            told: dict[str, Part] = {"q": variable.as_name}
            changed = replaced(plan, definition.variable, mean)
            yield Misstep("unweighted_mean", changed, way, parts=told)


def _centroid_halfway(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The centroid of a triangle, of half a disc or half a ring at half of its height."""
    points = plan.system.points
    for element in plan.system.elements:
        shape = element.shape
        if shape is None or shape.outline not in _PULLED:
            continue
        reach = points[element.at].links[len(points[shape.points[0]].links) :]
        half = part_of(shape.radius, Fraction(1, 2))
        if shape.outline is Outline.TRIANGLE:  # a third of the way from a corner
            lengths = {each.length: part_of(each.length, Fraction(3, 2)) for each in reach}
        else:
            lengths = {each.length: half for each in reach}
        changed = exchanged(plan, lengths)
        if changed is not None:
            weight = plan.system.force(element.forces[0]).magnitude
            yield Misstep("centroid_halfway", changed, parts={"W": weight})


def _shape_not_halved(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A triangle, half a disc or half a ring as large as what it is half of."""
    sizes = {each.variable: each.expression for each in plan.definitions}
    for element in plan.system.elements:
        if element.shape is None or element.shape.outline not in _PULLED:
            continue
        (weight,) = element.forces
        changed = replaced(plan, weight, times(number(2), sizes[weight]))
        way = "triangle" if element.shape.outline is Outline.TRIANGLE else "round"
        told: dict[str, Part] = {"W": plan.system.force(weight).magnitude}
        yield Misstep("shape_not_halved", changed, way, parts=told)


# Supports that share.


def _equal_sharing(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Two supports of one body or of a few as one, or two cords at one knot, taken to bear half of
    the load each.

    A cord that pulls down bears nothing.  Unlikely where it is stated how they share.
    """
    sets: list[tuple[str, ...]] = [(body.id,) for body in plan.system.bodies]
    sets += [each.bodies for step in plan.steps for each in step.equations if each.bodies]
    for bodies in dict.fromkeys(sets):
        acting, _ = acting_on(plan.system, bodies)
        holding = _holders(plan.system, acting)
        loads = _loads(plan.system, acting)
        if len(holding) == 2 and loads:
            half = Quotient(sum_of(loads), number(2))
            changed = plan
            for holder in holding:
                changed = replaced(changed, holder.id, half)
            if changed != plan:
                told: dict[str, Part] = {"N": letters(holding), "W": sum_of(loads)}
                lifting = times(*(Call("sin", (each.direction,)) for each in holding))
                shares = _share_stated(plan.system, holding)
                yield Misstep(
                    "equal_sharing", changed, parts=told, unlikely=shares, only_if=lifting
                )


def _share_stated(system: System, holding: Sequence[Force]) -> bool:
    """Whether a condition holds all of these forces and nothing else that is sought."""
    sizes = frozenset[str]().union(*(names_in(each.magnitude) for each in holding))
    return any(
        (names_in(each.left) | names_in(each.right)) & set(system.unknowns) == sizes
        for each in system.conditions
    )


def _holders(system: System, acting: Sequence[Force]) -> list[Force]:
    """The unknown forces that hold up what they act on; none where a joint or a shared rope does
    so too.
    """
    unknown = set(system.unknowns)
    on = [force for force in acting if names_in(force.magnitude) & unknown]
    letters_of = [force.magnitude for force in system.forces if not force.pair]
    if any(letters_of.count(force.magnitude) > 1 or force.part in _PARTLY for force in on):
        return []
    if all(system.body(force.body).particle for force in on):
        return on if all(force.kind in _CORDS for force in on) else []
    return on if all(facing(force) == 90 for force in on) else []


def _loads(system: System, acting: Sequence[Force]) -> list[Force]:
    """What bears down; nothing where a load is not straight down."""
    known = [force for force in acting if not names_in(force.magnitude) & set(system.unknowns)]
    return known if all(facing(force) == 270 for force in known) else []


RULES: Final = {
    "wrong_end": _wrong_end,
    "load_not_halved": _load_not_halved,
    "load_at_middle": _load_at_middle,
    "load_at_end": _load_at_end,
    "load_as_even": _load_as_even,
    "load_as_triangle": _load_as_triangle,
    "unweighted_mean": _unweighted_mean,
    "centroid_halfway": _centroid_halfway,
    "shape_not_halved": _shape_not_halved,
    "equal_sharing": _equal_sharing,
}
