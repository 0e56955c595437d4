"""What work is done with: a motor, a trolley's wheel, a safety valve, a block of wood, a rough
stone, a panel, the plate of a road sign.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from probgen.figures.paper.scene import (
    BARE,
    FINE,
    LIGHT,
    MEDIUM,
    Arc,
    Curve,
    Path,
    Pen,
    Shape,
    Spot,
    Tone,
    circle,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag, What

CASTER: Final = 15.0
"""From a trolley's deck down to the ground under its wheel, pt."""

SPINDLE: Final = 15.0
"""From what a valve's spindle pushes down to the underside of its disc, pt."""

_TYRE: Final = 6.5  # radius of a trolley's wheel, pt
CASING: Final = 0.84
"""Radius of a motor's casing, of the height of its shaft."""

_DISC: Final = 3.0  # thickness of a valve's disc, pt
_NECK: Final = 22.0  # how long the neck under it is, pt
_PLATE: Final = 3.2  # thickness of a boiler's plate, pt
_STEAM: Final = 12.0  # how much of the steam below that is drawn, pt
_SIDE: Final = 18.0  # how far the boiler is drawn on to either side, pt
_COWLING: Final = 11.0  # radius of an engine's cowling, pt
_BLADES: Final = 22.0  # how far the blades of its propeller stand off the level, degrees
_BOARD: Final = 5.0  # thickness of a raised plank, pt
_LIP: Final = 12.0  # how far a stone is cut away over what lifts its end, pt
_ROUGH: Final = ((0.0, -0.9), (0.07, 0.1), (0.2, 0.7), (0.34, -0.2), (0.48, 0.5), (0.63, -0.4),
                 (0.78, 0.6), (0.92, 0.0), (1.0, -1.1))  # fmt: skip
"""Where along a stone's top (of its length), and how far above it (pt), its rough edge passes."""
_SLIP: Final = 11.0  # how far on a panel is drawn dashed that is about to slide, pt
_AFTER: Final = Pen(0.6, 2.0, 1.5)


def caster(top: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A trolley's wheel in its fork, under the deck."""
    axle = top - 1j * (CASTER - _TYRE)
    fork = (top - 5.0, top + 5.0, axle + 2.2 - 1.5j, axle - 2.2 - 1.5j)
    return (
        circle(axle, _TYRE, MEDIUM, tag, tone=Tone.PERSON),
        circle(axle, 0.62 * _TYRE, FINE, tag, tone=Tone.PAPER),
        polygon(fork, LIGHT, tag, tone=Tone.BODY),
        circle(axle, 1.2, FINE, tag, filled=True),
    )


def motor(foot: Spot, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A motor seen along its shaft, its feet bolted on; height: from there up to the shaft."""
    shaft, casing = foot + 1j * height, CASING * height
    base = [foot + complex(x, y) * height
            for x, y in ((-1.05, 0.0), (1.05, 0.0), (1.05, 0.14), (0.72, 0.2), (0.5, 0.5),
                         (-0.5, 0.5), (-0.72, 0.2), (-1.05, 0.14))]  # fmt: skip
    fins = tuple(
        (shaft + 0.86 * casing * heading(way), shaft + casing * heading(way))
        for way in range(-30, 215, 15)
    )
    bolts = ((foot + x * height, foot + (x + 0.24j) * height) for x in (-0.9, 0.9))
    rim = [shaft + 0.66 * casing * heading(way) for way in (45, 135, 225, 315)]
    return (
        polygon(base, MEDIUM, tag, tone=Tone.BODY),
        *(line(*bolt, MEDIUM, tag) for bolt in bolts),
        circle(shaft, casing, MEDIUM, tag, tone=Tone.BODY),
        Path(fins, FINE, tag),
        circle(shaft, 0.8 * casing, LIGHT, tag, tone=Tone.PAPER),
        *(circle(spot, 0.9, FINE, tag) for spot in rim),
        circle(shaft, 0.3 * casing, LIGHT, tag, tone=Tone.BODY),
        circle(shaft, 0.15 * casing, MEDIUM, tag, tone=Tone.PERSON),
    )


def valve(top: Spot, pin: Spot | None, tag: Tag) -> tuple[Shape, ...]:
    """A safety valve on a boiler, its spindle up to a place; pin: what a post on the boiler holds.

    The disc lies on the seat at the mouth of an open neck, so that an arrow has room in that.
    """
    disc, behind = top - 1j * SPINDLE, Tag(What.BEYOND, tag)
    shell = disc - 1j * _NECK
    left = min(spot.real for spot in (pin, top) if spot is not None) - _SIDE
    right = max(spot.real for spot in (pin, top) if spot is not None) + _SIDE

    def slab(corner: Spot, other: Spot, tone: Tone, tag: Tag, pen: Pen = LIGHT) -> Path:
        a, b = corner, other
        around = (a, complex(b.real, a.imag), b, complex(a.real, b.imag))
        return polygon(around, pen, tag, tone=tone)

    walls = [
        [disc + complex(side * x, y) for x, y in
         ((4.2, 0.0), (7.6, 0.0), (6.6, -4.0), (6.6, 4.0 - _NECK), (9.6, 4.0 - _NECK),
          (9.6, -_NECK), (4.2, -_NECK))]
        for side in (-1, 1)
    ]  # fmt: skip
    low = 1j * (shell.imag - _PLATE)
    return (
        slab(left + low, right + low - 1j * _STEAM, Tone.SKIN, behind, BARE),
        slab(disc - 4.2, disc + 4.2 + low - 1j * disc.imag, Tone.SKIN, behind, BARE),
        slab(left + 1j * shell.imag, shell - 4.2 - 1j * _PLATE, Tone.BODY, behind),
        slab(shell + 4.2, right + low, Tone.BODY, behind),
        *_pin_post(pin, shell.imag, behind),
        *(polygon(wall, LIGHT, behind, tone=Tone.BODY) for wall in walls),
        slab(disc + complex(-1.3, _DISC), disc + complex(1.3, SPINDLE), Tone.BODY, tag),
        slab(disc - 7.0, disc + complex(7.0, _DISC), Tone.PERSON, tag),
    )


def _pin_post(pin: Spot | None, level: float, tag: Tag) -> Iterator[Shape]:
    if pin is not None:
        foot = complex(pin.real, level)
        corners = (foot - 5.0, foot + 5.0, pin + 2.6, pin - 2.6)
        yield polygon(corners, MEDIUM, tag, tone=Tone.BODY)


def wooden_block(edge: Spot, height: float, side: int, tag: Tag) -> tuple[Shape, ...]:
    """A block of wood with an upper edge at a place; side: to which it lies, 1 right."""
    corners = [edge + complex(side * x, y) * height for x, y in ((0, 0), (1, 0), (1, -1), (0, -1))]
    heart = corners[3] + 0.15 * side * height
    begin, sweep = (10.0, 68.0) if side > 0 else (170.0, -68.0)
    rings = (Arc(heart, share * height, begin, sweep, FINE, tag) for share in (0.3, 0.52, 0.74))
    return polygon(corners, MEDIUM, tag, tone=Tone.PERSON), *rings


def engine(foot: Spot, tag: Tag) -> tuple[Shape, ...]:
    """The engine of an aeroplane from the front, on its wing: a cowling and a propeller."""
    hub = foot + 1j * _COWLING
    blades = []
    for way in (heading(_BLADES), -heading(_BLADES)):
        side = way * 1j
        tip = hub + way * 2.1 * _COWLING
        blades.append(Curve(
            hub,
            ((hub + way * 6.0 + side * 4.5, tip - way * 5.0 + side * 3.0, tip),
             (tip - way * 3.0 - side * 2.0, hub + way * 8.0 - side * 1.5, hub)),
            LIGHT, tag, tone=Tone.PERSON,
        ))  # fmt: skip
    spokes = (heading(45.0 + 90.0 * turn) for turn in range(4))
    cylinders = tuple((hub + 4.5 * way, hub + (_COWLING - 2.5) * way) for way in spokes)
    return (
        circle(hub, _COWLING, MEDIUM, tag, tone=Tone.BODY),
        circle(hub, _COWLING - 2.0, FINE, tag, tone=Tone.PAPER),
        Path(cylinders, MEDIUM, tag),
        *blades,
        circle(hub, 2.4, LIGHT, tag, tone=Tone.BODY),
    )


def raised_plank(foot: Spot, way: complex, tag: Tag) -> tuple[Shape, ...]:
    """A plank that slopes up by a step from the foot of its upper face, cut level where it stands
    on the ground.
    """
    unit = way / abs(way)
    under = unit * (-1j if unit.real >= 0 else 1j) * _BOARD
    heel = foot + _BOARD / unit.imag * (1 if unit.real >= 0 else -1)
    return (polygon((foot, foot + way, foot + way + under, heel), MEDIUM, tag, tone=Tone.PERSON),)


def stone(ends: tuple[Spot, Spot], half: float, tag: Tag, *, lifted: tuple[bool, bool]) -> Path:
    """A slab of rough stone about its axis; lifted: the ends that something lifts at the axis, over
    which it is cut away.
    """
    start, end = ends
    way = end - start
    unit = way / abs(way)
    up = unit * 1j if unit.real >= 0 else unit * -1j

    def side(spot: Spot, inward: complex, *, cut: bool) -> list[Spot]:
        if cut:
            return [spot + up * 1.4, spot + inward * 4.0 + up * 0.6,
                    spot + inward * _LIP - up * half]  # fmt: skip
        return [spot - inward * 0.7, spot + inward * 0.5 - up * 0.45 * half, spot - up * half]

    top = [start + way * share + up * (half + rise) for share, rise in _ROUGH]
    right = side(end, -unit, cut=lifted[1])
    left = side(start, unit, cut=lifted[0])
    return polygon((*top, *right, *reversed(left)), MEDIUM, tag, tone=Tone.BODY)


def panel(middle: Spot, half: complex, ahead: complex, tag: Tag) -> tuple[Shape, ...]:
    """A thin upright panel, and the same dashed a little further to where it is about to slide.

    half: half its width and height; ahead: the unit step of that slide, 0 for none.
    """
    corners = [middle + complex(x * half.real, y * half.imag)
               for x, y in ((-1, -1), (1, -1), (1, 1), (-1, 1))]  # fmt: skip
    body = polygon(corners, MEDIUM, tag, tone=Tone.BODY)
    if not ahead:
        return (body,)
    after = [corner + ahead * _SLIP for corner in corners]
    ends = after[1::-1] if ahead.imag < 0 else after[2:]
    near = corners[1::-1] if ahead.imag < 0 else corners[2:]
    return body, Path(((near[0], ends[0], ends[1], near[1]),), _AFTER, tag)


def sign_plate(low: Spot, high: Spot, side: complex, thick: float, tag: Tag) -> tuple[Shape, ...]:
    """The plate of a road sign from its edge, along one face of a post, with its two clamps.

    low, high: on that face; side: the unit step away from the post; thick: of the plate.
    """
    rise = high - low
    corners = (low, low + side * thick, high + side * thick, high)
    clamps = []
    for share in (0.2, 0.8):
        at = low + rise * share
        clamp = (at - 2j, at + 2j, at + 2j - side * 7.0, at - 2j - side * 7.0)
        clamps.append(polygon(clamp, LIGHT, tag, tone=Tone.PERSON))
    return *clamps, polygon(corners, MEDIUM, tag, tone=Tone.PERSON)
