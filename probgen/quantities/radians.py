"""Angles in radians: how they stand in an exponent, printed and put in alike."""

from __future__ import annotations

import math
from typing import Final

from probgen.quantities.expression import Expression, Number
from probgen.quantities.rounding import round_figures
from probgen.quantities.unit import ANGLE, UNITS

_FIGURES: Final = 6


def in_radians(angle: Expression) -> Expression:
    """A number that is an angle in radians, with the figures it is printed with; else as it is."""
    if isinstance(angle, Number) and angle.unit is not None and angle.unit.dimension == ANGLE:
        size = math.radians(float(angle.value) * angle.unit.factor)
        return Number(round_figures(size, _FIGURES), UNITS["rad"])
    return angle
