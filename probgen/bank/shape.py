"""The weight of a flat part or a wire by its shape: its size, and the point where it acts.

    rectangle = ["O", "D"]       two opposite corners; its sides are level and upright
    triangle = ["A", "B", "C"]   its corners
    circle = "C"                 its centre, and radius = "r"
    half_circle = "C"            the middle of its straight side, radius = "r", facing = "up"
    wire = ["A", "B"]            straight, from one point to another
    half_ring = "C"              a wire bent to half a circle: its centre, radius and facing

Areas and centroids are those of every table of plane figures: a triangle's a third of the way from
one corner to the others, half a disc's 4 r/(3 pi) from its straight side, half a ring's 2 r/pi.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from probgen.bank.bounds import sign_of
from probgen.bank.direction import legs
from probgen.bank.length import links_to_middle, part_of
from probgen.bank.points import read_point
from probgen.bank.situation import Situation
from probgen.bank.template import Requirement
from probgen.input.fault import nearest, one_of
from probgen.input.table import Table
from probgen.quantities.expression import (
    PI,
    ZERO,
    Call,
    Expression,
    Power,
    Quotient,
    is_number,
    number,
    times,
    total,
)
from probgen.quantities.factors import with_powers
from probgen.quantities.like_terms import collected
from probgen.quantities.unit import LENGTH, PRESSURE, STIFFNESS
from probgen.statics.geometry import way
from probgen.statics.shape import Outline, Shape
from probgen.statics.system import Link, Point

_CORNERS: Final = {Outline.RECTANGLE: 2, Outline.TRIANGLE: 3, Outline.WIRE: 2}
_EACH: Final = {
    "per_area": 'the weight of the sheet for each unit of area, such as "w" in N/m^2 or psf',
    "per_length": 'the weight of the wire for each unit of length, such as "q" in N/m or lbf/ft',
}
_WANTED: Final = {
    Outline.RECTANGLE: "two opposite corners",
    Outline.TRIANGLE: "its three corners",
    Outline.WIRE: "two ends; a bent wire is a [[weight]] for each straight piece",
}
_FACING: Final = {"right": 0, "up": 90, "left": 180, "down": 270}
_STAND_IN: Final = Point("", ())


def shape_fields(row: Table) -> list[Outline]:
    """The shapes that an entry names; all of their fields are known from here on."""
    row.expect("radius", "facing", "hole", "per_area", "per_length")
    return [outline for outline in Outline if row.has(outline.value)]


def read_shape(row: Table, situation: Situation, outline: Outline) -> tuple[Shape, Expression, str]:
    """The shape, the weight of it, and the point of its centroid; after a fault, stand-ins."""
    radius: Expression = ZERO
    facing: Expression = ZERO
    if outline in _CORNERS:
        points = _corners(row, situation, outline)
    else:
        centre = read_point(row, outline.value, situation.points)
        points = (centre,) if centre else ()
        radius = situation.scope.expression(row, "radius", LENGTH)
        if outline is not Outline.CIRCLE:
            facing = number(_FACING.get(row.word("facing", list(_FACING), "up"), 90))
    shape = Shape(outline, points, radius, facing)
    each = _weight_of_each(row, situation, outline)
    if not points or each is None:
        situation.scope.whole = False
        return shape, ZERO, ""
    places = [situation.points.get(name, _STAND_IN) for name in points]
    size = with_powers(_times(each, _size(row, situation, shape, places)))
    return shape, size, _centroid(situation, shape, places)


def _weight_of_each(row: Table, situation: Situation, outline: Outline) -> Expression | None:
    """Of each unit of area, or of length; None where it is not told."""
    key, other, wanted = "per_area", "per_length", PRESSURE
    if outline.is_wire:
        key, other, wanted = other, key, STIFFNESS
    what = _EACH[key]
    if row.has(other):
        row.fault(other, row.content[other], what, f"a {outline} is told {key}")
    elif not row.has(key):
        row.fault(key, None, what)
    else:
        return situation.scope.expression(row, key, wanted)
    return None


def _corners(row: Table, situation: Situation, outline: Outline) -> tuple[str, ...]:
    names, wanted = row.texts(outline.value), _CORNERS[outline]
    before = len(row.faults.found)
    for place, name in enumerate(names):
        if name not in situation.points:
            expected = one_of(situation.points, "the points ")
            row.fault(f"{outline}[{place}]", name, expected, nearest(name, situation.points))
    if {len(names), len(set(names))} != {wanted} and len(row.faults.found) == before:
        row.fault(outline.value, list(names), _WANTED[outline])
    return names if len(row.faults.found) == before else ()


def _times(each: Expression, size: Expression) -> Expression:
    if isinstance(size, Quotient):  # w b h/2, its 2 below all of it
        return Quotient(times(each, size.top), size.bottom)
    return times(each, size)


def _size(row: Table, situation: Situation, shape: Shape, places: Sequence[Point]) -> Expression:
    """Its area, or the length of a wire."""
    squared = Power(shape.radius, 2)
    match shape.outline:
        case Outline.CIRCLE:
            return times(PI, squared)
        case Outline.HALF_CIRCLE:
            return Quotient(times(PI, squared), number(2))
        case Outline.HALF_RING:
            return times(PI, shape.radius)
        case Outline.RECTANGLE:
            across, up = map(collected, legs(places[0], places[1]))
            sides = [_positive(row, situation, shape, side) for side in (up, across)]
            return times(*sides)
        case Outline.TRIANGLE:
            (a, b), (c, d) = (map(collected, legs(places[0], other)) for other in places[1:])
            double = total((1, _product(a, d)), (-1, _product(b, c)))
            return Quotient(_positive(row, situation, shape, double), number(2))
        case Outline.WIRE:
            links = way({"0": places[0], "1": places[1]}, "0", "1")
            if len(links) == 1:
                return _positive(row, situation, shape, links[0].length)
            squares = [(1, Power(side, 2)) for side in legs(places[0], places[1])]
            return Call("sqrt", (total(*squares),))


def _product(one: Expression, other: Expression) -> Expression:
    return ZERO if is_number(one, 0) or is_number(other, 0) else times(one, other)


def _positive(row: Table, situation: Situation, shape: Shape, size: Expression) -> Expression:
    """A side or an area, whichever way the points were named."""
    if is_number(size, 0):
        row.fault(shape.outline.value, list(shape.points), _WANTED[shape.outline])
        return size
    sign = sign_of(size, situation.scope.bounds)
    if not sign:
        reason = "a part has a length and a height"
        situation.requirements.append(Requirement(size, ">", ZERO, reason))
    return total((-1, size)) if sign < 0 else size


def _centroid(situation: Situation, shape: Shape, places: Sequence[Point]) -> str:
    """The point of its centroid, made for it where it is not one that has a letter."""
    third = Fraction(1, 3)
    match shape.outline:
        case Outline.CIRCLE:
            return shape.points[0]
        case Outline.HALF_CIRCLE:
            out = Quotient(part_of(shape.radius, Fraction(4)), times(number(3), PI))
        case Outline.HALF_RING:
            out = Quotient(part_of(shape.radius, Fraction(2)), PI)
        case Outline.TRIANGLE:
            links = list(places[0].links)
            for other in places[1:]:
                steps = way({"0": places[0], "1": other}, "0", "1")
                links += [Link(part_of(step.length, third), step.direction) for step in steps]
            return situation.add_point("P", links)
        case _:
            return situation.add_point("P", links_to_middle(places[0], places[1]))
    return situation.add_point("P", (*places[0].links, Link(out, shape.facing)))
