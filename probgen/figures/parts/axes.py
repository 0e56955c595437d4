"""The axes of a free-body diagram, and curved arrows for turning."""

from __future__ import annotations

from typing import Final

from probgen.figures.paper.scene import FINE, LIGHT, Arc, Arrow, Path, Pen, Shape, Spot, heading
from probgen.figures.paper.tag import Tag, What

WIDTH: Final = 40.0
HEIGHT: Final = 38.0
"""The room the axes take with their letters, pt."""

LENGTH: Final = 22.0
_SWEEP: Final = 230.0

TURN: Final = 11.0
"""Radius of a couple's arrow, pt."""


def axes(origin: Spot, sense: int, tilt: float = 0.0) -> tuple[Shape, ...]:
    """A pair of axes, and beside them the positive rotation with its plus sign.

    sense: 1 for counter-clockwise, -1 for clockwise, 0 where nothing turns; tilt: how far the
    axes are turned, degrees.
    """
    turn = heading(tilt)
    arrows = (
        Arrow(origin, origin + LENGTH * turn, LIGHT, Tag(What.AXES, "x"), 4.5, 3.2),
        Arrow(origin, origin + 1j * LENGTH * turn, LIGHT, Tag(What.AXES, "y"), 4.5, 3.2),
    )
    if not sense:
        return arrows
    centre = origin + (18 + 18j) * turn
    plus = Path(
        ((centre - 2.2, centre + 2.2), (centre - 2.2j, centre + 2.2j)),
        FINE,
        Tag(What.AXES, "positive"),
    )
    return *arrows, *turning(centre, 7.0, sense, LIGHT, Tag(What.AXES, "positive")), plus


def axis(origin: Spot, direction: float) -> Arrow:
    """A further axis, in a direction of degrees."""
    return Arrow(
        origin, origin + LENGTH * heading(direction), LIGHT, Tag(What.AXES, "square"), 4.5, 3.2
    )


def turning(
    centre: Spot, radius: float, sense: int, pen: Pen, tag: Tag, *,
    middle: float | None = None, sweep: float = _SWEEP,
) -> tuple[Shape, ...]:  # fmt: skip
    """A curved arrow around a centre; sense 1 is counter-clockwise.

    middle: the direction in which the middle of it lies, degrees; sweep: how far it turns.
    """
    about = 90.0 - 15.0 * sense if middle is None else middle
    start = about - sense * sweep / 2
    end = start + sense * sweep
    tip = centre + radius * heading(end)
    way = heading(end + 90.0 * sense + 14.0 * sense)
    return (
        Arc(centre, radius, start, sense * sweep, pen, tag),
        Arrow(tip, tip + way * 4.5, pen, tag, 4.5, 3.4),
    )
