"""Shear force and bending moment told along a body: what their diagrams show."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from probgen.quantities.unit import LENGTH
from probgen.statics.internal_forces import Inside, InternalForces
from probgen.wording.block import Picture
from probgen.wording.facts.diagram import (
    DiagramHeading,
    DiagramRead,
    InsideShown,
    LargestInside,
)
from probgen.wording.inside import point_at, unit_of
from probgen.wording.passage import Passage, sentences
from probgen.wording.stretch import stretches_told
from probgen.working.digits import Digits
from probgen.working.fact import Fact

_NONE: Final = 1e-9
"""Of the largest force: none."""


def drawn_of(found: InternalForces) -> tuple[Inside, ...]:
    """Which of the three are drawn: an axial force where there is any."""
    force = max(found.size(Inside.AXIAL), found.size(Inside.SHEAR))
    axial = found.size(Inside.AXIAL) > _NONE * force
    return (Inside.AXIAL, Inside.SHEAR, Inside.MOMENT)[0 if axial else 1 :]


def diagram_passage(
    digits: Digits, found: InternalForces, complete: Mapping[str, float]
) -> Passage:
    """The diagrams of a body with what there is to be read off them, and its expressions.

    complete: values of everything, coherent, also of forces the working did not need.
    """
    drawn = drawn_of(found)
    largest = (_largest(digits, found, of) for of in drawn if of is not Inside.AXIAL)
    return Passage(
        DiagramHeading(drawn),
        (
            sentences(_read(found, drawn), *largest),
            *stretches_told(digits, found, complete),
            Picture("diagram", found.body),
        ),
    )


def _read(found: InternalForces, drawn: tuple[Inside, ...]) -> DiagramRead:
    spread = [load for load in found.loads if load.spread]
    even = bool(spread) and all(load.even and load.square[0] < 0 for load in spread)
    return DiagramRead(found.body, drawn, bool(spread), even)


def inside_shown(digits: Digits, found: InternalForces) -> Fact:
    """The values where each curve bends or jumps."""
    values = []
    for of in drawn_of(found):
        unit, places = unit_of(digits, of), found.turning_points(of)
        values.append((of, tuple(digits.rounded(place.value, unit) for place in places)))
    return InsideShown(found.body, tuple(values))


def _largest(digits: Digits, found: InternalForces, of: Inside) -> Fact:
    most = found.largest(of)
    near = _NONE * found.length
    sides = [found.at(most.x, Inside.SHEAR, before=before) for before in (True, False)]
    none = (_NONE * found.size(Inside.SHEAR)) ** 2
    inner = near < most.x < found.length - near
    return LargestInside(
        of,
        digits.rounded(most.value, unit_of(digits, of)),
        point_at(digits, found, most.x),
        digits.rounded(most.x, digits.units.unit_of(LENGTH)),
        digits.case.system.body(found.body).outline[0],
        of is Inside.MOMENT and inner and sides[0] * sides[1] <= none,
    )
