"""Vehicles, and what belongs to them: the rear of a van, a gas strut, a hand truck.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.figures.paper.scene import (
    BARE,
    FINE,
    HEAVY,
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
from probgen.figures.parts.mechanical import PIN, cut_rails

_CYLINDER: Final = 0.56  # how far the cylinder of a gas strut goes, of its length
_BARREL: Final = 3.0  # half the thickness of that cylinder, pt
_ROD: Final = 1.1  # and of its rod
_ROOF: Final = 4.0  # from a van's roof up to what is hinged at its end, pt
_LONG: Final = 62.0  # how much of the roof is drawn, pt
_LOWER: Final = 22.0  # how far the body is drawn below what is pinned on it, pt
_RAKE: Final = 0.14  # the least slope of a van's rear, across for each pt down
_PILLAR: Final = 10.0  # from what is pinned on a van's rear to its edge and its window, pt
WHEEL: Final = 9.0
"""Radius of a hand truck's wheel, pt."""
_TUBE: Final = Pen(2.0, round=True)
_GRIP: Final = Pen(3.2, round=True)
_FLUSH: Final = 0.9  # from what it carries to the middle of its tubes
_TALL: Final = 0.74  # how far that reaches up what stands on it, of its height
_TOE: Final = 0.6  # and how far the toe plate under that, of its depth


def gas_strut(end: Spot, foot: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A gas strut with a pin at either end: its rod at the one, its cylinder at the other."""
    unit = (end - foot) / abs(end - foot)
    mouth = foot + (end - foot) * _CYLINDER

    def tube(start: Spot, stop: Spot, half: float) -> Path:
        left, right = cut_rails((start, stop), half, (0j, 0j))
        return polygon((*left, *reversed(right)), MEDIUM, tag, tone=Tone.BODY)

    collar = mouth - 3.0 * unit
    return (
        tube(mouth, end - unit * PIN, _ROD),
        tube(foot + unit * PIN, mouth, _BARREL),
        line(collar + _BARREL * 1j * unit, collar - _BARREL * 1j * unit, FINE, tag),
        *(circle(spot, PIN, MEDIUM, tag, tone=Tone.PAPER) for spot in (end, foot)),
    )


def van_rear(hinge: Spot, foot: Spot, tag: Tag, side: int = 1) -> tuple[Shape, ...]:
    """The rear of a van below a hinge at the end of its roof: its roof, side window and lamp.

    foot: what is pinned on its side; the rear slopes so that this lies on it.  side: to which the
    van is open, 1 right.
    """
    down = min(foot.imag - hinge.imag, -3 * _PILLAR)
    across = (foot.real - hinge.real) * side
    low = down - _LOWER
    rake = max(_RAKE, (across + _PILLAR) / -down)

    def rear(level: float) -> float:
        return 1.5 - rake * (level + _ROOF)

    def at(x: float, y: float) -> Spot:
        return hinge + complex(x * side, y)

    roof, sill = -_ROOF, down + 2.0
    front = min(across, 0.0) - _LONG
    edge = (at(front, roof), at(-5.0, roof), at(0.0, roof - 2.0), at(rear(-12.0), -12.0),
            at(rear(low), low))  # fmt: skip
    behind = min(rear(sill) - 2 * _PILLAR, across - _PILLAR)
    upper = min(rear(-14.0) - 2 * _PILLAR, behind + rake * sill + 14.0 * rake)
    window = (at(front, -14.0), at(upper, -14.0), at(behind, sill), at(front, sill))
    lamp = tuple(at(rear(y) - x, y) for x, y in ((0, down - 5), (0, low + 4), (4, low + 4),
                                                  (4, down - 5)))  # fmt: skip
    side_wall = (*edge, at(front, low))
    return (
        polygon(side_wall, BARE, tag, tone=Tone.PAPER),  # so that no extension line runs over it
        polygon(side_wall, BARE, tag, tone=Tone.SKIN),
        polygon(window, BARE, tag, tone=Tone.PAPER),
        Path((window,), FINE, tag),
        polygon(lamp, LIGHT, tag, tone=Tone.PERSON),
        Path((edge,), MEDIUM, tag),
    )


def hand_truck(axle: Spot, sides: Sequence[complex], tag: Tag) -> tuple[Shape, ...]:
    """A hand truck about its axle: a frame of tubes and a handle along one side of what it carries,
    a toe plate under the other.

    sides: the steps along what it carries from the axle, the longer first.
    """
    up, out = sides[0], sides[1] if len(sides) > 1 else sides[0] * 0.3j
    unit, under = up / abs(up), out / abs(out)
    foot, top = axle - under * _FLUSH, axle - under * _FLUSH + up * _TALL
    bent = (top + unit * 5.0, top + unit * 8.5 - under * 3.0, top + unit * 9.0 - under * 9.0)
    plate = axle - unit * _FLUSH
    grip = bent[-1] + under * 2.0, bent[-1] - under * 5.0 - unit * 0.4
    return (
        line(plate, plate + out * _TOE, _TUBE, tag),
        line(foot, top, _TUBE, tag),
        Curve(top, (bent,), _TUBE, tag),
        line(*grip, _GRIP, tag),
        circle(axle, WHEEL, HEAVY, tag, tone=Tone.PERSON),
        circle(axle, 0.45 * WHEEL, FINE, tag, tone=Tone.PAPER),
        circle(axle, 1.3, FINE, tag, filled=True),
    )
