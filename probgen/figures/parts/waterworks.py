"""Where water is raised: a hand pump with its spout, the wall of a well about its shaft.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from typing import Final

from probgen.figures.paper.scene import (
    BARE,
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Curve,
    Path,
    Shape,
    Spot,
    Tone,
    circle,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag
from probgen.figures.parts.mechanical import PIN

HEAD: Final = 13.0
"""How far the head of a pump's barrel is below the pin of its handle, pt."""

BARREL: Final = 7.0
"""Half the breadth of that barrel, pt."""

LEAST: Final = 18.0
"""The least sideways from its middle to that pin, pt."""

RIM: Final = 8.0
"""How far the rim of a well is below the drum over it, pt."""

SHAFT: Final = 15.0
"""How far the shaft of a well reaches beyond that drum to either side, pt."""

WALL: Final = 9.0
"""How thick its wall is, pt."""

CURB: Final = 20.0
"""How high that stands above the ground, pt."""

_STONE: Final = 7.0  # height of a course of its stones, pt
_POST: Final = 3.2  # half the breadth of the post on it, pt


def _slab(middle: Spot, half: float, high: float, tag: Tag) -> Path:
    """A level slab on a spot."""
    corners = (middle - half, middle + half, middle + half + 1j * high, middle - half + 1j * high)
    return polygon(corners, MEDIUM, tag, tone=Tone.BODY)


def pump(top: Spot, pin: Spot, foot: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A hand pump: its barrel from the head down to the ground, the spout on one side, and on the
    other the arm that carries the pin of its handle.
    """
    side = 1 if pin.real >= top.real else -1
    cheek = top + side * BARREL

    def out(x: float, y: float) -> Spot:
        """To the side of the spout, from where it leaves the barrel."""
        return top + complex(-side * (BARREL + x), y - 17.0)

    spout = Curve(
        out(0.0, 5.0),
        (
            (out(8.0, 5.0), out(17.0, 4.0), out(17.0, -11.0)),
            (out(17.0, -11.0), out(11.0, -11.0), out(11.0, -11.0)),
            (out(11.0, -4.0), out(7.0, -3.0), out(0.0, -3.0)),
        ),
        MEDIUM, tag, tone=Tone.BODY,
    )  # fmt: skip
    arm = (pin - side * PIN + 1j, pin + side * PIN - 1j, cheek - 30j, cheek - 13j)
    return (
        spout,
        polygon(arm, MEDIUM, tag, tone=Tone.BODY),
        _slab(foot, BARREL, (top - foot).imag, tag),
        _slab(foot, BARREL + 5.0, 4.0, tag),
        _slab(top - 4j, BARREL + 2.5, 4.0, tag),
    )


def pump_rod(start: Spot, end: Spot, tag: Tag) -> tuple[Shape, ...]:
    """The rod of a pump, from the handle down into the barrel."""
    return line(start, end, HEAVY, tag), circle(start, 1.8, MEDIUM, tag, tone=Tone.PAPER)


def well(axle: Spot, radius: float, depth: float, tag: Tag, back: Tag) -> tuple[Shape, ...]:
    """The wall of a well under a drum, cut open in front, and the post that carries the axle.

    depth: how far the shaft is drawn below the rim; back: the tag of what is behind the drum.
    """
    rim, half = axle - 1j * (radius + RIM), radius + SHAFT
    low = rim - 1j * depth
    shaft = (rim - half, rim + half, low + half, low - half)
    post = (rim - _POST, rim + _POST, axle + _POST, axle - _POST)
    return (
        polygon(shaft, BARE, back, tone=Tone.SKIN),
        line(rim - half, rim + half, LIGHT, back),
        polygon(post, MEDIUM, back, tone=Tone.BODY),
        *_wall(rim - half - WALL, rim - half, depth, tag),
        *_wall(rim + half, rim + half + WALL, depth, tag),
    )


def _wall(left: Spot, right: Spot, depth: float, tag: Tag) -> tuple[Shape, ...]:
    """One side of a well's wall in section: courses of stone, broken off below."""
    down = -1j * depth
    count = round(depth / _STONE)
    edges = [down * course / count for course in range(1, count)]
    courses = tuple((left + edge, right + edge) for edge in edges)
    return (
        polygon((left, right, right + down, left + down), BARE, tag, tone=Tone.PERSON),
        Path(courses, FINE, tag),
        Path(((left + down, left, right, right + down),), MEDIUM, tag),
    )
