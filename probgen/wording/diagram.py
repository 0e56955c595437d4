"""Shear force and bending moment told along a body: what their diagrams show."""

from __future__ import annotations

from typing import Final

from probgen.quantities.expression import Number
from probgen.quantities.rounding import in_full, round_figures
from probgen.quantities.unit import FORCE, LENGTH, TORQUE, Unit
from probgen.statics.internal_forces import Inside, InternalForces
from probgen.statics.numeric_equations import coordinates
from probgen.wording.block import Picture
from probgen.wording.facts.diagram import (
    DiagramHeading,
    DiagramRead,
    InsideShown,
    LargestInside,
)
from probgen.wording.passage import Passage, sentences
from probgen.working.digits import Digits
from probgen.working.fact import Fact

_NONE: Final = 1e-9
"""Of the largest force: none."""


def drawn_of(found: InternalForces) -> tuple[Inside, ...]:
    """Which of the three are drawn: an axial force where there is any."""
    force = max(found.size(Inside.AXIAL), found.size(Inside.SHEAR))
    axial = found.size(Inside.AXIAL) > _NONE * force
    return (Inside.AXIAL, Inside.SHEAR, Inside.MOMENT)[0 if axial else 1 :]


def diagram_passage(digits: Digits, found: InternalForces) -> Passage:
    """The diagrams of a body with what there is to be read off them."""
    drawn = drawn_of(found)
    largest = (_largest(digits, found, of) for of in drawn if of is not Inside.AXIAL)
    return Passage(
        DiagramHeading(drawn),
        (
            sentences(DiagramRead(found.body, drawn), *largest),
            Picture("diagram", found.body),
        ),
    )


def inside_shown(digits: Digits, found: InternalForces) -> Fact:
    """The values where each curve bends or jumps."""
    values = []
    for of in drawn_of(found):
        unit, places = unit_of(digits, of), found.turning_points(of)
        values.append((of, tuple(digits.rounded(place.value, unit) for place in places)))
    return InsideShown(found.body, tuple(values))


def unit_of(digits: Digits, of: Inside) -> Unit:
    """The unit one of the three is told in."""
    return digits.units.unit_of(TORQUE if of is Inside.MOMENT else FORCE)


def plain_value(digits: Digits, of: Inside, value: float) -> Number:
    """A value as it stands on a diagram, whose head says the unit."""
    own = digits.convention
    size = value / unit_of(digits, of).factor
    return Number(in_full(round_figures(size, own.figures, own.rounding)))


def _largest(digits: Digits, found: InternalForces, of: Inside) -> Fact:
    most = found.largest(of)
    near = _NONE * found.length
    sides = [found.at(most.x, Inside.SHEAR, before=before) for before in (True, False)]
    inner = near < most.x < found.length - near
    return LargestInside(
        of,
        digits.rounded(most.value, unit_of(digits, of)),
        _point_at(digits, found, most.x),
        digits.rounded(most.x, digits.units.unit_of(LENGTH)),
        digits.case.system.body(found.body).outline[0],
        of is Inside.MOMENT and inner and sides[0] * sides[1] <= _NONE * max(map(abs, sides)) ** 2,
    )


def _point_at(digits: Digits, found: InternalForces, x: float) -> str:
    """The point of the template at a place on the body, "" where there is none."""
    system = digits.case.system
    outline = system.body(found.body).outline
    named = [*outline, *(e.at for e in system.elements if e.body == found.body and not e.spread)]
    places = coordinates(system, digits.case.values)
    (left, low) = (float(part) for part in places[outline[0]])
    for name in dict.fromkeys(named):
        across, up = (float(part) for part in places[name])
        if abs(across - left - x) < 1e-6 * found.length and abs(up - low) < 1e-6 * found.length:
            return name
    return ""
