"""Directions: roughly which way, and as the angle a course asks for."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final, Literal

from probgen.quantities.expression import Number
from probgen.quantities.rounding import exact, round_places
from probgen.quantities.unit import DEGREE
from probgen.statics.system import Force, Kind
from probgen.working.convention import Convention
from probgen.working.fact import Fact

PLACES: Final = 1
"""Decimal places of a printed direction: it is told to a tenth of a degree, however large it is."""
_LEVEL: Final = 1e-9  # degrees within which a direction counts as straight


@dataclass(frozen=True, slots=True)
class Way(Fact):
    """Roughly which way.

    quarter: 0 right, 1 up, 2 left, 3 down; None for an oblique way.
    up, right: on which sides of the axes it lies.
    """

    quarter: int | None
    up: bool
    right: bool


@dataclass(frozen=True, slots=True)
class Direction(Fact):
    """A direction as an answer.

    from_x: degrees counter-clockwise from +x, 0 up to 360.
    reference: what the angle is measured from: the horizontal, the vertical, or +x ("axis").
    angle: from there, degrees; shown: the same as printed.
    """

    from_x: float
    way: Way
    reference: Literal["horizontal", "vertical", "axis"]
    angle: float
    shown: Number

    @property
    def oblique(self) -> bool:
        """Whether it takes an angle to tell it: "straight up" needs none."""
        return self.reference == "axis" or self.way.quarter is None


def quarter_of(degrees: float) -> int | None:
    """0 right, 1 up, 2 left, 3 down; None for an oblique direction."""
    turned = degrees % 360.0
    nearest = round(turned / 90.0)
    return nearest % 4 if abs(turned - 90.0 * nearest) < _LEVEL else None


def way_of(degrees: float) -> Way:
    """Roughly which way a direction (degrees counter-clockwise from +x) points."""
    turned = math.radians(degrees)
    return Way(quarter_of(degrees), math.sin(turned) > 0, math.cos(turned) > 0)


def way_stated(force: Force) -> bool:
    """Whether the problem says which way a force acts: a weight's down, an applied one's."""
    return force.kind in (Kind.FORCE, Kind.WEIGHT) and not force.part.is_component


def direction_of(degrees: float, convention: Convention) -> Direction:
    """A direction (degrees counter-clockwise from +x) by the angle the course asks for."""
    turned = degrees % 360.0
    if 360.0 - turned < _LEVEL:
        turned = 0.0
    angle = _angle(turned, convention)
    digits = round_places(exact(angle), PLACES)
    way, reference = way_of(turned), convention.direction
    return Direction(turned, way, reference, angle, Number(digits, DEGREE))


def _angle(turned: float, convention: Convention) -> float:
    if convention.direction == "axis":
        return turned
    radians = math.radians(turned)
    steep = math.degrees(math.atan2(abs(math.sin(radians)), abs(math.cos(radians))))
    if convention.direction == "vertical":
        return 90.0 - steep
    quarter = quarter_of(turned)
    return steep if quarter is None else 90.0 * (quarter % 2)
