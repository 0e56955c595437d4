"""Magnitude and direction of a force from its components."""

from __future__ import annotations

import math
from collections.abc import Iterator
from decimal import Decimal

from probgen.quantities.expression import Call, Name, Number, Quotient, evaluate, total
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.rounding import exact, round_places
from probgen.quantities.unit import ANGLE, DEGREE, FORCE
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Element, Find, Form, Kind
from probgen.wording.block import Display, Row
from probgen.wording.equations import rounded_off
from probgen.wording.facts.ending import (
    ForceActs,
    OneComponent,
    QuadrantTold,
    ResultantHeading,
    ResultantIs,
)
from probgen.wording.passage import Part, Passage, sentences
from probgen.working.digits import Digits
from probgen.working.direction import direction_of, quarter_of
from probgen.working.fact import Fact
from probgen.working.line import line_of


def resultant_passages(digits: Digits) -> Iterator[Passage]:
    """A passage for each force asked by magnitude and direction."""
    for find in digits.case.system.finds:
        if find.form is Form.MAGNITUDE_AND_DIRECTION:
            yield _resultant(digits, find)


def _resultant(digits: Digits, find: Find) -> Passage:
    case = digits.case
    element = case.system.element(find.quantity)
    force = case.labels.whole(element.id)
    of = Quantity(find.quantity)
    x, y = (case.system.variables[id].as_name for id in of.components)
    parts: list[Part]
    if quarter_of(case.values[of.direction]) is None:
        rows = (*_magnitude(digits, find, force, x, y), *_angle(digits, x, y))
        outcome = _outcome(digits, find, element)
        parts = [
            Display(rows),
            sentences(_quadrant(digits, find, force, x, y), outcome, bound=True),
        ]
    else:
        level = case.values[y.id] == 0.0
        zero, other = (y, x) if level else (x, y)
        bare = OneComponent(force, zero, other, level)
        parts = [sentences(bare, _outcome(digits, find, element))]
    return Passage(ResultantHeading(force), tuple(parts))


def _quadrant(digits: Digits, find: Find, force: Name, x: Name, y: Name) -> Fact:
    """What the signs of the components make of the angle just found."""
    told = direction_of(digits.case.values[Quantity(find.quantity).direction], digits.convention)
    steep = _steepness(digits, x, y)
    turned: Formula = ()
    if told.reference == "axis":
        half = Number(Decimal(360 if told.way.right else 180), DEGREE)
        if told.way.up and told.way.right:
            turned = (told.shown,)
        else:
            back = told.way.up or told.way.right
            sum_of = total((1, half), (-1 if back else 1, steep))
            turned = (sum_of, Relation("="), told.shown)
    return QuadrantTold(force, x, y, told, _letter_of_angle(digits), steep, turned)


def _steepness(digits: Digits, x: Name, y: Name) -> Number:
    """The angle of a force with the horizontal, or the vertical, to a tenth of a degree."""
    up, across = (abs(digits.case.values[part.id]) for part in (y, x))
    if digits.convention.direction == "vertical":
        up, across = across, up
    tenth = round_places(exact(math.degrees(math.atan2(up, across))), 1)
    return Number(tenth, DEGREE)


def _magnitude(digits: Digits, find: Find, force: Name, x: Name, y: Name) -> Iterator[Row]:
    size = digits.case.values[Quantity(find.quantity).magnitude]
    root = Call("hypot", (x, y))
    line = line_of(digits, root, size, FORCE)
    yield Row((force,), "=", (root, Relation("="), line.printed))
    yield Row((), "=", rounded_off(line.result, digits.rounded(size, digits.unit_of(x.id))))


def _angle(digits: Digits, x: Name, y: Name) -> Iterator[Row]:
    """phi = arctan(|R_y| / |R_x|), the steepness of the force."""
    sizes = [Call("abs", (part,)) for part in (y, x)]
    if digits.convention.direction == "vertical":
        sizes.reverse()
    slope = Call("atan", (Quotient(*sizes),))
    value = float(evaluate(slope, digits.case.values))
    line_of(digits, slope, value, ANGLE)  # gives the components the digits the angle needs
    printed = Call("atan", (Quotient(*(_size(digits, part) for part in sizes)),))
    yield Row((_letter_of_angle(digits),), "=", (slope,))
    yield Row((), "=", (printed, Relation("="), _steepness(digits, x, y)))


def _letter_of_angle(digits: Digits) -> Name:
    """phi, or another letter where the problem has one of its own by that name."""
    taken = {label.symbol for label in digits.case.labels.quantities.values()}
    letter = next(each for each in ("phi", "psi", "omega", "delta") if each not in taken)
    return Name(letter, letter)


def _size(digits: Digits, part: Call) -> Number:
    inner = part.arguments[0]
    assert isinstance(inner, Name)
    number = digits.shown(inner.id)
    return Number(abs(number.value), number.unit)


def _outcome(digits: Digits, find: Find, element: Element) -> Fact:
    case, of = digits.case, Quantity(find.quantity)
    way = direction_of(case.values[of.direction], digits.convention)
    unit = digits.unit_of(of.x)
    size = digits.rounded(case.values[of.magnitude], unit)
    if element.kind is Kind.RESULTANT:
        return ResultantIs(case.labels.whole(element.id), size, way)
    return ForceActs(element.id, element.body, size, way)
