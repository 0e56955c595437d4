"""Angles in radians: how they stand in an exponent, printed and put in alike."""

from __future__ import annotations

import math
from typing import Final

from probgen.quantities.expression import Expression, Number
from probgen.quantities.rounding import round_figures
from probgen.quantities.unit import ANGLE, UNITS

_FIGURES: Final = 6
_RADIAN: Final = UNITS["rad"]


def in_radians(angle: Expression, figures: int = 0) -> Expression:
    """A number that is an angle in radians, with the figures it is printed with; else as it is.

    figures: where more than usual are needed; those it has already are kept.
    """
    if not isinstance(angle, Number) or angle.unit is None or angle.unit.dimension != ANGLE:
        return angle
    wanted = max(figures, _FIGURES)
    if angle.unit == _RADIAN and len(angle.value.as_tuple().digits) >= wanted:
        return angle
    return Number(
        round_figures(math.radians(float(angle.value) * angle.unit.factor), wanted), _RADIAN
    )
