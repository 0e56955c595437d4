"""Bodies with breadth, and rounds: boxes, cabinets, bookcases, drums, wheelbarrows, trees.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.figures.paper.scene import (
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Path,
    Shape,
    Spot,
    circle,
    heading,
    line,
    polygon,
)
from probgen.figures.parts import mechanical

WHEEL: Final = 13.0
"""Radius of a wheelbarrow's wheel, pt."""


def box(corners: Sequence[Spot], tag: str) -> tuple[Shape, ...]:
    """A solid outline."""
    return (polygon(corners, MEDIUM, tag),)


def shelf_lines(foot: Spot, top: Spot, half: float) -> list[tuple[Spot, Spot]]:
    """Where the shelves of a bookcase may be, from below."""
    side = (top - foot) / abs(top - foot) * 1j * half
    return [
        (foot + (top - foot) * share + side, foot + (top - foot) * share - side)
        for share in (0.04, 0.25, 0.44, 0.63, 0.82)
    ]


def drum(axle: Spot, radii: Sequence[float], tag: str) -> tuple[Shape, ...]:
    """A drum, or drums of several radii on one axle."""
    rims = tuple(circle(axle, radius, MEDIUM, tag) for radius in radii)
    return (*rims, circle(axle, mechanical.PIN, MEDIUM, tag))


def stand(axle: Spot, radius: float, height: float, tag: str) -> tuple[Shape, ...]:
    """The posts that carry a drum's axle, seen below the drum."""
    feet = axle - 1j * height
    way = complex(0.2, -1.0) / abs(complex(0.2, -1.0))
    posts = []
    for side in (1, -1):
        unit = complex(way.real * side, way.imag)
        posts.append((axle + unit * radius, feet + 0.2 * height * side))
    return (Path(tuple(posts), HEAVY, tag),)


def scale(foot: Spot, height: float, tag: str) -> tuple[Shape, ...]:
    """A scale to weigh on, its dial to the front."""
    dial = foot + 0.5j * height
    hand = line(dial, dial + heading(60.0) * 0.25 * height, FINE, tag)
    return *mechanical.block(foot, 30.0, height, tag), circle(dial, 0.32 * height, LIGHT, tag), hand


def wheelbarrow(axle: Spot, grips: Spot, tag: str) -> tuple[Shape, ...]:
    """Shafts from the wheel's axle to the grips, a tray on them, and a leg."""
    way = grips - axle
    up = way / abs(way) * (1j if way.real > 0 else -1j)

    def at(share: float, height: float) -> Spot:
        return axle + way * share + up * height

    tray = (at(0.11, 1.5), at(0.66, 1.5), at(0.74, 27.0), at(0.03, 27.0))
    leg = ((at(0.6, -1.5), at(0.66, -10.0)), (at(0.7, -1.5), at(0.66, -10.0)))
    shaft = mechanical.bar((at(0.0, 0.0) + way / abs(way) * mechanical.PIN, grips), 1.5, tag)
    return *shaft, polygon(tray, MEDIUM, tag), Path(leg, LIGHT, tag)


def barrow_wheel(axle: Spot, tag: str) -> tuple[Shape, ...]:
    """The wheel of a wheelbarrow about its axle."""
    return (
        circle(axle, WHEEL, HEAVY, tag),
        circle(axle, WHEEL - 2.2, FINE, tag),
        circle(axle, mechanical.PIN, MEDIUM, tag),
    )


def post(foot: Spot, top: Spot, tag: str) -> tuple[Shape, ...]:
    """A post from the ground up."""
    return (
        Path(((foot - 2.2, top - 2.2, top + 2.2, foot + 2.2),), MEDIUM, tag),
    )


def rope_ring(at: Spot, tag: str) -> Shape:
    """Where a rope goes round a post."""
    return line(at - 2.2, at + 2.2, HEAVY, tag)
