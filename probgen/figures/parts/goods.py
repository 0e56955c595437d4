"""Goods that loads are drawn as: a heap, a sack, a bird feeder, a loaded pallet, a piano.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from probgen.figures.paper.scene import (
    BARE,
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Box,
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

SACK: Final = 28.0
"""Height of a sack, pt."""

SLIP: Final = 9.0
"""How far on a trough is drawn dashed that is about to slide, pt."""

RUNNER: Final = 5.0
"""Height of a sled's runners, pt."""

HANDLE: Final = 7.0
"""Height of a holdall's handles, pt."""

_NECK: Final = 5.3  # from its mouth down to where it is tied, pt
_LID: Final = 5.0  # height of a toolbox's lid, pt
_BOW: Final = 8.8  # and of its handle
_STRING: Final = 2.8  # from a bale's end to its string, pt
_LONG: Final = 1.9  # length of a bale in a layer, of its height
_PIPE: Final = 3.0  # thickness of a pipe's wall, pt
_STONE: Final = 4.5  # how thick the ends of a trough are at the rim, pt
_BOTTOM: Final = 7.0  # and its bottom
_AFTER: Final = Pen(0.6, 2.0, 1.5)
_SACK_SIDE: Final = (
    (4.3, 0.0), (3.2, 1.8), (2.0, 3.2), (2.0, _NECK), (2.0, 9.0), (12.0, 9.5), (12.0, 18.5),
    (12.0, 23.5), (11.5, 26.7), (8.8, 27.4), (6.2, 28.2), (3.5, SACK), (0.0, SACK),
)  # fmt: skip
"""One side of a sack, from its mouth to the middle of its foot: how far out and how far down, pt,
each third one on the outline and two controls between.
"""


def heap(foot: Spot, width: float, height: float, tag: Tag) -> tuple[Shape, ...]:
    """Something loose in a heap."""
    a, b, up = foot - width / 2, foot + width / 2, 1j * height
    pieces = (
        (a + 0.2 * width + 0.3 * up, a + 0.3 * width + up, foot + up),
        (b - 0.3 * width + up, b - 0.2 * width + 0.3 * up, b),
        (b, a, a),
    )
    return (Curve(a, pieces, MEDIUM, tag, tone=Tone.GROUND),)


def sack(mouth: Spot, tag: Tag, size: float = 1.0) -> tuple[Shape, ...]:
    """A full bag tied at its neck, from its mouth down; size: 1 for one of the usual height."""

    def at(out: float, low: float) -> Spot:
        return mouth + size * complex(out, -low)

    down = [at(out, low) for out, low in _SACK_SIDE]
    up = [at(-out, low) for out, low in reversed(_SACK_SIDE)]
    around = [*down[1:], *up[1:]]
    pieces = list(zip(around[::3], around[1::3], around[2::3], strict=True))
    hem = (at(-2.4, 1.6), at(2.4, 1.6), down[0])
    folds = tuple(
        (at(out, _NECK), at(*end)) for out, end in
        ((-0.8, (-4.0, 10.5)), (0.4, (1.2, 12.0)), (1.3, (5.2, 9.6)))
    )  # fmt: skip
    return (
        Curve(down[0], (*pieces, hem), MEDIUM, tag, tone=Tone.BODY),
        Path(folds, FINE, tag),
        line(at(-2.5, _NECK), at(2.5, _NECK), HEAVY, tag),
    )


def holdall(top: Spot, width: float, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A bag of stout cloth under its two handles, which meet at a spot; the bag comes last."""
    rim, half = top - HANDLE * 1j, width / 2

    def at(out: float, low: float) -> Spot:
        return rim + complex(out, -low)

    ends = (0.26 * half, 0.62 * half)
    straps = tuple((at(side * ends[0], 0.0), top, at(side * ends[1], 0.0)) for side in (-1, 1))
    bag = Curve(
        at(-half + 2.0, 0.0),
        (
            (at(-half + 2.0, 0.0), at(half - 2.0, 0.0), at(half - 2.0, 0.0)),
            (at(half - 0.4, 0.0), at(half, 1.0), at(half, 3.0)),
            (at(half, 3.0), at(half, height - 4.0), at(half, height - 4.0)),
            (at(half, height - 1.0), at(half - 1.0, height), at(half - 4.0, height)),
            (at(half - 4.0, height), at(4.0 - half, height), at(4.0 - half, height)),
            (at(1.0 - half, height), at(-half, height - 1.0), at(-half, height - 4.0)),
            (at(-half, height - 4.0), at(-half, 3.0), at(-half, 3.0)),
            (at(-half, 1.0), at(0.4 - half, 0.0), at(2.0 - half, 0.0)),
        ),
        MEDIUM, tag, tone=Tone.BODY,
    )  # fmt: skip
    return Path(straps, LIGHT, tag), bag


def toolbox(grip: Spot, width: float, height: float, tag: Tag) -> tuple[tuple[Shape, ...], Box]:
    """A toolbox under the grip of its handle, and the part of its front below the lid."""
    top, half = grip - 1j * _BOW, width / 2
    seam, low = top - 1j * _LID, top - 1j * (_LID + height)
    bow = (top - 0.3 * half, grip - 5.0, grip + 5.0, top + 0.3 * half)
    body = polygon((top - half, top + half, low + half, low - half), MEDIUM, tag, tone=Tone.BODY)
    clasps = tuple((seam + x * half + 2j, seam + x * half - 2j) for x in (-0.6, 0.6))
    shapes = (
        Path((bow,), MEDIUM, tag),
        body,
        line(seam - half, seam + half, LIGHT, tag),
        Path(clasps, HEAVY, tag),
    )
    return shapes, Box(low.real - half, low.imag, low.real + half, seam.imag)


def bale(foot: Spot, width: float, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A bale of straw with its two strings; the straw sticks out of it a little."""

    def at(x: float, y: float) -> Spot:
        return foot + complex(x * width, y * height)

    corners = (at(-0.5, 0.0), at(0.5, 0.0), at(0.5, 1.0), at(-0.5, 1.0))
    inner = 0.5 - _STRING / width
    strings = tuple((at(x, 0.0), at(x, 1.0)) for x in (-inner, inner))
    straws = tuple(
        (at(side * 0.5, y) + side * 1.6 + 1j * lean, at(side * 0.5, y) - side * 1.2)
        for side in (-1, 1) for y, lean in ((0.16, -1.0), (0.4, 1.2), (0.62, -0.8), (0.85, 1.0))
    )  # fmt: skip
    body = polygon(corners, MEDIUM, tag, tone=Tone.BODY)
    return body, Path(strings, LIGHT, tag), Path(straws, FINE, tag)


def bales(start: Spot, end: Spot, height: float, tag: Tag) -> tuple[Shape, ...]:
    """Bales on something level, in two layers of which the upper one shows their strings."""
    way, up = end - start, 1j * height
    count = max(1, round(abs(way) / (_LONG * height / 2)))

    def upright(place: float, low: float) -> tuple[Spot, Spot]:
        foot = start + way * place / count + up * low
        return foot, foot + up / 2

    lower = [upright(place, 0.0) for place in range(1, count)]
    upper = [upright(place + 0.5, 0.5) for place in range(count)]
    strings = [upright(place + side, 0.5) for place in range(1, count) for side in (-0.25, 0.25)]
    layers = line(start + up / 2, end + up / 2, MEDIUM, tag)
    body = polygon((start, end, end + up, start + up), MEDIUM, tag, tone=Tone.BODY)
    joints = Path(tuple(upper), MEDIUM, tag), Path(tuple(lower), LIGHT, tag)
    return body, layers, *joints, Path(tuple(strings), FINE, tag)


def ball(at: Spot, radius: float, tag: Tag, *, hollow: bool = False) -> tuple[Shape, ...]:
    """A ball; hollow: a pipe from its end."""
    rim = circle(at, radius, MEDIUM, tag, tone=Tone.BODY)
    return (rim, circle(at, radius - _PIPE, LIGHT, tag, tone=Tone.PAPER)) if hollow else (rim,)


def bottle(top: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A bottle, from its cap down."""
    side = ((0.0, 1.9), (5.0, 1.9), (10.0, BOTTLE_HALF), (BOTTLE, BOTTLE_HALF))
    left = [top - complex(half, down) for down, half in side]
    right = [top + complex(half, -down) for down, half in side]
    cap = line(left[1] + 2j, right[1] + 2j, LIGHT, tag)
    return polygon((*left, *reversed(right)), MEDIUM, tag, tone=Tone.BODY), cap


def trough(middle: Spot, half: complex, up: complex, ahead: complex, tag: Tag) -> tuple[Shape, ...]:
    """A trough of stone cut lengthwise, about its middle, and the same dashed a little further to
    where it is about to slide.

    half: half its width and height; up: the unit step square to what it stands on; ahead: that of
    the slide, 0 for none.
    """

    def at(x: float, y: float) -> Spot:
        return middle + up * complex(y, -x)

    wide, high = half.real, half.imag
    corners = (at(-wide, -high), at(wide, -high), at(wide, high), at(-wide, high))
    rim, floor = wide - _STONE, (wide - 2.0 * _STONE, _BOTTOM - high)
    hollow = (at(rim, high), at(floor[0], floor[1]), at(-floor[0], floor[1]), at(-rim, high))
    cut = polygon((*corners[:3], *hollow, corners[3]), MEDIUM, tag, tone=Tone.BODY)
    inside = polygon(hollow, LIGHT, tag, tone=Tone.SKIN)
    if not ahead:
        return inside, cut
    after = Path((tuple(corner + ahead * SLIP for corner in corners),), _AFTER, tag, closed=True)
    return after, polygon(corners, BARE, tag, tone=Tone.PAPER), inside, cut


def sled(middle: Spot, half: complex, tag: Tag) -> tuple[Shape, ...]:
    """A loaded sled about its middle, with the runners it stands on; half: with these."""
    foot, wide = middle - 1j * half.imag, half.real
    deck, high = foot + 1j * RUNNER, 2 * half.imag - RUNNER
    load = (deck - wide, deck + wide, deck + wide + 1j * high, deck - wide + 1j * high)
    tips = tuple(foot + complex(side * wide, 0.8 * RUNNER) for side in (-1, 1))
    bend = 0.14 * wide
    runner = Curve(
        tips[0],
        (
            (tips[0] - 0.6j * RUNNER, foot - wide + 0.4 * bend, foot - wide + bend),
            (foot - wide + bend, foot + wide - bend, foot + wide - bend),
            (foot + wide - 0.4 * bend, tips[1] - 0.6j * RUNNER, tips[1]),
        ),
        HEAVY, tag,
    )  # fmt: skip
    legs = tuple((foot + x * wide, deck + x * wide) for x in (-0.6, 0.6))
    return runner, Path(legs, HEAVY, tag), polygon(load, MEDIUM, tag, tone=Tone.BODY)


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
