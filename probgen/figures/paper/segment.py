"""Straight pieces x0, y0, x1, y1 (pt): whether they meet each other or a box.

Plain floats throughout: a figure asks this some ten thousand times.
"""

from __future__ import annotations

from typing import Final

from probgen.figures.paper.scene import Box, Segment

_PARALLEL: Final = 1e-9  # pt squared


def meets(segment: Segment, box: Box) -> bool:
    """Whether a straight piece shares a place with a box, its edge included.

    They are apart when a line upright, level or along the piece parts them (separating axes).
    """
    x0, y0, x1, y1 = segment
    left, bottom, right, top = box
    if (
        (x0 < left and x1 < left)
        or (x0 > right and x1 > right)
        or (y0 < bottom and y1 < bottom)
        or (y0 > top and y1 > top)
    ):
        return False
    dx, dy = x1 - x0, y1 - y0
    aside = dx * (bottom + top - 2 * y0) - dy * (left + right - 2 * x0)
    return abs(aside) <= abs(dx) * (top - bottom) + abs(dy) * (right - left)


def crosses(one: Segment, other: Segment) -> bool:
    """Whether two straight pieces meet; pieces along one line count when they overlap."""
    ax, ay, bx, by = one
    cx, cy, dx, dy = other
    if (
        (ax < cx and ax < dx and bx < cx and bx < dx)
        or (ax > cx and ax > dx and bx > cx and bx > dx)
        or (ay < cy and ay < dy and by < cy and by < dy)
        or (ay > cy and ay > dy and by > cy and by > dy)
    ):  # as most are
        return False
    ux, uy = bx - ax, by - ay
    if (ux * (cy - ay) - uy * (cx - ax)) * (ux * (dy - ay) - uy * (dx - ax)) > 0.0:
        return False
    vx, vy = dx - cx, dy - cy
    return (vx * (ay - cy) - vy * (ax - cx)) * (vx * (by - cy) - vy * (bx - cx)) <= 0.0


def meeting(one: Segment, other: Segment) -> float:
    """The share of the first piece after which it has met the second, which it meets."""
    ax, ay, bx, by = one
    cx, cy, dx, dy = other
    turn = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if abs(turn) < _PARALLEL:
        length = (bx - ax) ** 2 + (by - ay) ** 2
        ends = ((cx, cy), (dx, dy))
        shares = [((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length for x, y in ends]
        return min(max(shares), 1.0)
    return ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / turn


def edges(box: Box) -> tuple[Segment, ...]:
    """The four sides of a box."""
    left, bottom, right, top = box
    return (
        (left, bottom, right, bottom),
        (right, bottom, right, top),
        (right, top, left, top),
        (left, top, left, bottom),
    )
