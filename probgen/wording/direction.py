"""Directions in words: "up and to the left", "12.3° above the horizontal, to the right"."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from probgen.quantities.expression import Number
from probgen.quantities.printing import plain
from probgen.quantities.rounding import round_figures
from probgen.quantities.unit import DEGREE
from probgen.working.convention import Convention

_LEVEL: Final = 1e-9  # degrees within which a direction counts as straight
_STRAIGHT: Final = ("to the right", "straight up", "to the left", "straight down")


@dataclass(frozen=True, slots=True)
class Direction:
    """A direction as an answer.

    angle: the angle that is worded, degrees; words: the whole answer; from_x: degrees
    counter-clockwise from +x, 0 up to 360.
    """

    angle: float
    words: str
    from_x: float


def quarter_of(degrees: float) -> int | None:
    """0 right, 1 up, 2 left, 3 down; None for an oblique direction."""
    turned = degrees % 360.0
    nearest = round(turned / 90.0)
    return nearest % 4 if abs(turned - 90.0 * nearest) < _LEVEL else None


def toward(degrees: float) -> str:
    """The rough direction: "straight down", "up and to the left"."""
    quarter = quarter_of(degrees)
    if quarter is not None:
        return _STRAIGHT[quarter]
    radians = math.radians(degrees)
    vertical = "up" if math.sin(radians) > 0 else "down"
    side = "right" if math.cos(radians) > 0 else "left"
    return f"{vertical} and to the {side}"


def sideways(degrees: float) -> str:
    """ "to the right", "to the left", or "straight up/down"."""
    quarter = quarter_of(degrees)
    if quarter is not None:
        return _STRAIGHT[quarter]
    return "to the right" if math.cos(math.radians(degrees)) > 0 else "to the left"


def worded(degrees: float, convention: Convention) -> Direction:
    """The direction (degrees counter-clockwise from +x) as the course words it."""
    turned = degrees % 360.0
    if 360.0 - turned < _LEVEL:
        turned = 0.0
    if convention.direction == "axis":
        return Direction(turned, f"{_shown(turned, convention)} counter-clockwise from +x", turned)
    level = math.degrees(
        math.atan2(abs(math.sin(math.radians(turned))), abs(math.cos(math.radians(turned))))
    )
    quarter = quarter_of(turned)
    if convention.direction == "vertical":
        return Direction(90.0 - level, _from_vertical(turned, 90.0 - level, convention), turned)
    if quarter is not None:
        return Direction(90.0 * (quarter % 2), _STRAIGHT[quarter], turned)
    side = "above" if turned < 180.0 else "below"
    words = f"{_shown(level, convention)} {side} the horizontal, {sideways(turned)}"
    return Direction(level, words, turned)


def _from_vertical(turned: float, steep: float, convention: Convention) -> str:
    quarter = quarter_of(turned)
    if quarter is not None:
        return _STRAIGHT[quarter]
    pole = "upward" if turned < 180.0 else "downward"
    return f"{_shown(steep, convention)} from the {pole} vertical, {sideways(turned)}"


def _shown(degrees: float, convention: Convention) -> str:
    return plain(Number(round_figures(degrees, convention.figures, convention.rounding), DEGREE))
