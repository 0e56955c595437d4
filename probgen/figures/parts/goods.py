"""Goods that loads are drawn as: a heap, a bird feeder, a loaded pallet, a piano.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from probgen.figures.paper.scene import (
    FINE,
    LIGHT,
    MEDIUM,
    Curve,
    Path,
    Pen,
    Shape,
    Spot,
    Tone,
    circle,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag

BOTTLE: Final = 29.0
"""Height of a bottle, pt."""

BOTTLE_HALF: Final = 4.6
"""Half its breadth."""


def heap(foot: Spot, width: float, height: float, tag: Tag) -> tuple[Shape, ...]:
    """Something loose in a heap."""
    a, b, up = foot - width / 2, foot + width / 2, 1j * height
    pieces = (
        (a + 0.2 * width + 0.3 * up, a + 0.3 * width + up, foot + up),
        (b - 0.3 * width + up, b - 0.2 * width + 0.3 * up, b),
        (b, a, a),
    )
    return (Curve(a, pieces, MEDIUM, tag, tone=Tone.GROUND),)


def bottle(top: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A bottle, from its cap down."""
    side = ((0.0, 1.9), (5.0, 1.9), (10.0, BOTTLE_HALF), (BOTTLE, BOTTLE_HALF))
    left = [top - complex(half, down) for down, half in side]
    right = [top + complex(half, -down) for down, half in side]
    cap = line(left[1] + 2j, right[1] + 2j, LIGHT, tag)
    return polygon((*left, *reversed(right)), MEDIUM, tag, tone=Tone.BODY), cap


def pallet(middle: Spot, half: complex, up: complex, tag: Tag) -> tuple[Shape, ...]:
    """A low stack on a pallet with runners, about its middle; half: half its width and height."""
    width, height = half.real, half.imag

    def slab(left: float, right: float, low: float, high: float) -> Path:
        corners = ((left, low), (right, low), (right, high), (left, high))
        spots = [middle + up * complex(y - height, -x) for x, y in corners]
        return polygon(spots, LIGHT, tag, tone=Tone.BODY)

    runner, deck, stack = 2.2, 5.0, 7.2
    feet = [slab(x - 2.6, x + 2.6, runner, deck) for x in (3.6 - width, 0.0, width - 3.6)]
    layers = [stack + (2 * height - stack) * share / 5 for share in range(1, 5)]
    seams = tuple(
        tuple(middle + up * complex(y - height, x) for x in (0.6 - width, width - 0.6))
        for y in layers
    )
    load = slab(0.2 - width, width - 0.2, stack, 2 * height)
    return (
        slab(-width, width, 0.0, runner),
        *feet,
        slab(-width, width, deck, stack),
        replace(load, pen=MEDIUM),
        Path(seams, FINE, tag),
    )


def piano(at: Spot, rope: float, tag: Tag) -> tuple[Shape, ...]:
    """An upright piano from the front, in a sling on a rope below a place."""
    top = at - 1j * (rope + 20.0)

    def slab(half: float, high: float, low: float, tone: Tone = Tone.BODY) -> Path:
        spots = [top + complex(x, y) for x, y in
                 ((-half, -high), (half, -high), (half, -low), (-half, -low))]  # fmt: skip
        return polygon(spots, LIGHT, tag, tone=tone)

    def strokes(*pairs: tuple[complex, complex]) -> Path:
        return Path(tuple((top + a, top + b) for a, b in pairs), FINE, tag)

    white = [complex(x, -28.0) for x in range(-27, 30, 3)]
    sharps = [key for i, key in enumerate(white[:-1], 1) if i % 7 not in (3, 0)]
    case = replace(slab(31.0, 0.0, 50.0), pen=MEDIUM)
    legs = [polygon([top + complex(side * x, y) for x, y in
                     ((27.0, -31.0), (32.0, -31.0), (30.5, -50.0), (27.5, -50.0))],
                    LIGHT, tag, tone=Tone.PERSON) for side in (-1, 1)]  # fmt: skip
    sling = tuple((at - 1j * rope, top + side * 20.0, top + side * 20.0 - 52j) for side in (-1, 1))
    return (
        line(at, at - 1j * rope, MEDIUM, tag),
        case,
        slab(24.0, 5.0, 21.0),
        slab(33.0, -3.0, 0.0, Tone.PERSON),
        slab(22.0, 35.0, 46.0),
        *legs,
        slab(33.0, 24.0, 31.0),
        slab(27.0, 25.0, 29.5, Tone.PAPER),
        strokes(*((key + 3.0j, key - 1.5j) for key in white)),
        Path(tuple((top + key + 3.0j, top + key + 0.6j) for key in sharps), Pen(1.3), tag),
        Path((*sling, (top - 20.0 - 52j, top + 20.0 - 52j)), MEDIUM, tag),
    )


def loudspeaker(at: Spot, rope: float, tag: Tag) -> tuple[Shape, ...]:
    """A loudspeaker on a bracket below a place, seen from the front."""
    top = at - 1j * rope
    low, half = top - 31j, 10.0
    cone, tweeter = top - 20j, top - 7.5j
    return (
        line(at, top, MEDIUM, tag),
        polygon((top - half, top + half, low + half, low - half), MEDIUM, tag, tone=Tone.BODY),
        circle(cone, 7.4, LIGHT, tag, tone=Tone.PERSON),
        circle(cone, 2.6, LIGHT, tag, tone=Tone.BODY),
        circle(tweeter, 3.2, LIGHT, tag, tone=Tone.PERSON),
    )


def net(at: Spot, rope: float, tag: Tag) -> tuple[Shape, ...]:
    """A full net on a rope, its cords gathered at a knot."""
    knot = at - 1j * rope

    def down(half: float, pen: Pen, tone: Tone | None = None) -> Curve:
        """From the knot by one side to the bottom and back by the other."""
        waist, floor = knot - 17j, knot - 29j
        pieces = (
            (knot + complex(0.15 * half, -5.0), waist + half + 8j, waist + half),
            (waist + half - 7j, floor + 0.6 * half, floor),
            (floor - 0.6 * half, waist - half - 7j, waist - half),
            (waist - half + 8j, knot + complex(-0.15 * half, -5.0), knot),
        )
        return Curve(knot, pieces, pen, tag, tone=tone)

    rounds = tuple(
        Curve(knot + complex(-half, -low), ((knot + complex(-0.5 * half, -low - sag),
              knot + complex(0.5 * half, -low - sag), knot + complex(half, -low)),), FINE, tag)
        for half, low, sag in ((9.0, 10.5, 3.0), (12.8, 15.0, 4.0), (12.4, 20.0, 4.0))
    )  # fmt: skip
    meshes = down(9.0, FINE), down(4.0, FINE), *rounds
    return line(at, knot, MEDIUM, tag), down(13.0, MEDIUM, Tone.BODY), *meshes


def feeder(at: Spot, rope: float, tag: Tag) -> tuple[Shape, ...]:
    """A bird feeder on a cord: a roof, a tube of seed, a tray with a perch."""
    top = at - 1j * rope
    eaves, floor = top - 8j, top - 27j
    roof = polygon((top, eaves + 12, eaves - 12), MEDIUM, tag, tone=Tone.PERSON)
    tube = polygon((eaves - 6, eaves + 6, floor + 6, floor - 6), LIGHT, tag, tone=Tone.BODY)
    seed = line(eaves - 6 - 5j, eaves + 6 - 5j, FINE, tag)
    tray = polygon(
        (floor - 11, floor + 11, floor + 9 - 4j, floor - 9 - 4j), MEDIUM, tag, tone=Tone.BODY
    )
    return line(at, top, MEDIUM, tag), tube, seed, tray, roof
