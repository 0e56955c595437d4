"""A fishing rod from its butt to its tip, and the hand that pulls at something.

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
    Path,
    Shape,
    Spot,
    Tone,
    bearing,
    circle,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag
from probgen.figures.parts import limb

BUTT: Final = 2.3
"""Half the thickness of a rod at its butt, pt."""

_TIP: Final = 0.6  # and at its tip
_REEL: Final = 4.6  # radius of a reel, pt
_GUIDES: Final = (0.3, 0.58, 0.82)  # where the line is led, of the way from reel to tip
_FIST: Final = 4.4  # radius of a fist, pt
_FOREARM: Final = 34.0  # how long the forearm behind it is drawn, pt


def fishing_rod(butt: Spot, tip: Spot, reel: float, tag: Tag) -> tuple[Shape, ...]:
    """A tapering rod; under it a reel so far from its butt (pt), and the line to its tip."""
    unit = (tip - butt) / abs(tip - butt)
    under = unit * (-1j if unit.real >= 0 else 1j)
    length = abs(tip - butt)

    def at(along: float, off: float = 0.0) -> Spot:
        half = BUTT + (_TIP - BUTT) * along / length
        return butt + unit * along + under * (off + half if off >= 0 else off - half)

    shaft = polygon((at(0.0), at(length), at(length, -1e-9), at(0.0, -1e-9)), MEDIUM, tag,
                    tone=Tone.BODY)  # fmt: skip
    drum, seat = at(reel, _REEL + 0.6), at(reel)
    led = [reel + (length - reel) * share for share in _GUIDES]
    rings = tuple((at(each), at(each, 2.2)) for each in led)
    run = (drum + unit * _REEL, *(at(each, 2.2) for each in led), tip)
    return (
        Path((run,), FINE, tag),
        Path(rings, LIGHT, tag),
        line(seat - unit * 4.2 + under * 0.4, seat + unit * 4.2 + under * 0.4, HEAVY, tag),
        circle(drum, _REEL, MEDIUM, tag, tone=Tone.PERSON),
        circle(drum, 1.3, FINE, tag, tone=Tone.PAPER),
        shaft,
    )


def pulling_hand(at: Spot, way: complex, tag: Tag) -> tuple[Shape, ...]:
    """A fist about a place, and its forearm along the unit step in which it pulls."""
    wrist, elbow, side = at + way * _FIST * 0.8, at + way * _FOREARM, way * 1j
    edges = ((wrist + side * 2.6, elbow + side * 4.2), (wrist - side * 2.6, elbow - side * 4.2))
    arm = polygon((*edges[0], *reversed(edges[1])), BARE, tag, tone=Tone.PERSON)
    fingers = tuple(
        (at + side * x - way * 0.4, at + side * x - way * (_FIST - 1.0)) for x in (-1.9, 0.0, 1.9)
    )
    return (
        arm,
        Path(edges, MEDIUM, tag),
        *limb.break_mark(elbow, bearing(way), 4.2, tag),
        circle(at, _FIST, MEDIUM, tag, tone=Tone.PERSON),
        Path(fingers, FINE, tag),
    )
