"""Why a bending moment is the largest in its body, told before the section where it is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from probgen.quantities.expression import Expression, names_in, positive_first
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.unit import FORCE, LENGTH, TORQUE
from probgen.statics.internal_forces import Inside, InternalForces
from probgen.statics.numeric_equations import coordinates
from probgen.statics.stretch import stretches
from probgen.statics.system import LargestMoment
from probgen.wording.block import Display, Row
from probgen.wording.equations import lone_number
from probgen.wording.facts.diagram import (
    LargestHeading,
    LargestHeld,
    ShearBeside,
    ShearChanges,
    ShearKeepsSign,
    ShearTurnsMoment,
    SmallerMoments,
)
from probgen.wording.inside import point_at
from probgen.wording.passage import Part, Passage, sentences
from probgen.wording.stretch import SHEAR, place_letter, told_from
from probgen.working.digits import Digits
from probgen.working.fact import Fact
from probgen.working.line import line_of

_NONE: Final = 1e-9
"""Of the largest value along a body: none."""
_NEAR: Final = 1e-6
"""Of its length: no distance."""


def largest_passage(digits: Digits, asked: LargestMoment, found: InternalForces) -> Passage:
    """Where the shear force changes its sign, and what the moment is at other such places."""
    at = _along(digits, asked.body, asked.at)
    parts: list[Part] = [sentences(ShearTurnsMoment(asked.body))]
    ending = _at_end_or_couple(digits, asked, found, at)
    if ending is None:
        first, last = asked.between or (asked.at, asked.at)
        beside = ((first, False), (last, True))
        beside = beside if asked.between else beside[::-1]
        parts.append(sentences(ShearBeside(beside)))
        rows = (_shear_row(digits, found, name, before=before) for name, before in beside)
        parts.append(Display(tuple(rows)))
        letter = digits.case.system.variables[asked.place].as_name
        at_first = _along(digits, asked.body, first)
        falls = found.at(at_first, Inside.SHEAR, before=not asked.between) > 0.0
        ending = ShearChanges(asked.between, asked.at, letter, asked.origin, falls)
    parts.append(sentences(ending, *_smaller(digits, found, at)))
    return Passage(LargestHeading(), tuple(parts))


def _along(digits: Digits, body: str, point: str) -> float:
    """How far a point is from a body's first (m)."""
    system = digits.case.system
    first = system.body(body).outline[0]
    needed = replace(system, points={id: system.points[id] for id in (first, point)})
    places = coordinates(needed, digits.case.values)
    (x, y), (left, low) = (map(float, places[name]) for name in (point, first))
    return abs(complex(x - left, y - low))


def _shear_row(digits: Digits, found: InternalForces, point: str, *, before: bool) -> Row:
    """V beside a point: by letters, by numbers, and its value."""
    place, near = _along(digits, found.body, point), _NEAR * found.length
    value = found.at(place, Inside.SHEAR, before=before)
    side, written = told_from(digits, found.body, place_letter(digits))
    ends = [each.high if before else each.low for each in written]
    at = next((n for n, end in enumerate(ends) if abs(end - place) < near), None)
    if at is not None:
        x = written[at].end if before else written[at].start
        there = stretches(digits.case.system.uncut, digits.case.values, found.body, x, side)[at]
        if names_in(there.shear) <= digits.case.values.keys():
            return Row((SHEAR,), "=", _worked(digits, positive_first(there.shear), value))
    return Row((SHEAR,), "=", (digits.rounded(value, digits.units.unit_of(FORCE)),))


def _worked(digits: Digits, expression: Expression, value: float) -> Formula:
    line = line_of(digits, expression, value, FORCE)
    shown = () if lone_number(line.printed) else (line.printed, Relation("="))
    return (expression, Relation("="), *shown, line.result)


def _at_end_or_couple(
    digits: Digits, asked: LargestMoment, found: InternalForces, at: float
) -> Fact | None:
    """What makes the moment largest where the shear force does not change its sign."""
    near, most = _NEAR * found.length, _NONE * found.size(Inside.SHEAR)
    outline = digits.case.system.body(asked.body).outline
    end = next(
        (p for p, x in zip(outline, (0.0, found.length), strict=True) if abs(at - x) < near), ""
    )
    if not end:
        sides = [found.at(at, Inside.SHEAR, before=before) for before in (True, False)]
        changes = asked.between or sides[0] * sides[1] <= most * max(map(abs, sides))
        return None if changes else LargestHeld(asked.at, couple=True)
    shear = [place.value for place in found.turning_points(Inside.SHEAR)]
    free = outline[1] if end == outline[0] else outline[0]
    other = found.length if end == outline[0] else 0.0
    bare = abs(found.at(other, Inside.MOMENT, before=other > 0.0)) <= _NONE * found.size(
        Inside.MOMENT
    )
    if bare and (min(shear) >= -most or max(shear) <= most):
        return ShearKeepsSign(asked.body, end, free, max(shear) > most)
    return LargestHeld(asked.at, couple=False)


def _smaller(digits: Digits, found: InternalForces, at: float) -> Iterator[Fact]:
    """The other places where V changes its sign, a couple acts or an end is held."""
    near, size = _NEAR * found.length, found.size(Inside.MOMENT)
    told: dict[float, float] = {}
    for place in found.turning_points(Inside.MOMENT):
        if abs(place.x - at) < near or abs(place.value) <= _NONE * size:
            continue
        values = [
            [found.at(place.x, of, before=before) for before in (True, False)]
            for of in (Inside.SHEAR, Inside.MOMENT)
        ]
        (left, right), (one, other) = values
        inner = near < place.x < found.length - near
        jumps = abs(one - other) > _NONE * size
        none = (_NONE * found.size(Inside.SHEAR)) ** 2
        if inner and not jumps and left * right > none:
            continue
        if abs(place.value) > abs(told.get(place.x, 0.0)):
            told[place.x] = place.value
    start = digits.case.system.body(found.body).outline[0]
    places = tuple(
        (
            point_at(digits, found, x),
            digits.rounded(x, digits.units.unit_of(LENGTH)),
            digits.rounded(value, digits.units.unit_of(TORQUE)),
        )
        for x, value in told.items()
    )
    if places:
        yield SmallerMoments(start, places)
