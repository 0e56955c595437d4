"""People as pictograms: a round head on a neck, and trunk and limbs as thick strokes with round
ends, grey with one outline about them all.

Places are pt; a height is that of the person standing.  The proportions are those of an adult as
sketched by common practice, from memory: leg 0.48, trunk 0.30, arm 0.40 of the height.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

from probgen.figures.paper.scene import (
    BARE,
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
    polygon,
)
from probgen.figures.paper.tag import Tag

_HEAD: Final = 0.067  # radius, of the height
_NECK: Final = 0.07  # thickness
_TRUNK: Final = 0.135
_LEG: Final = 0.082
_ARM: Final = 0.062
_REACH: Final = 0.4  # of an arm, of the height
_HEEL: Final = 0.02 + 0.075j  # from the toes of somebody braced on them, of the height
_EDGE: Final = 0.7  # weight of the outline, pt

Place = Callable[[float, float], Spot]
LIFTED: Final = 1.09
"""How high the hands are of somebody who holds something up, of the height."""

AHEAD: Final = 0.16
"""And how far before the feet."""

SHOULDER: Final = 0.82
"""How high the shoulder of a person is on which something lies, of the height."""

Pair = tuple[float, float]
Run = tuple[Pair, ...]


_SUPINE: Final = (
    (0.012, 0.0), (0.0, 0.0), (0.0, 0.02), (0.0, 0.03),
    (0.0, 0.07), (-0.002, 0.1), (0.004, 0.125), (0.01, 0.14), (0.028, 0.138), (0.03, 0.118),
    (0.035, 0.09), (0.05, 0.07), (0.07, 0.062), (0.14, 0.07), (0.2, 0.072), (0.27, 0.084),
    (0.33, 0.09), (0.42, 0.105), (0.5, 0.108), (0.55, 0.11), (0.58, 0.12), (0.62, 0.122),
    (0.68, 0.126), (0.72, 0.138), (0.76, 0.124), (0.79, 0.112), (0.8, 0.085), (0.825, 0.082),
    (0.838, 0.084), (0.83, 0.118), (0.85, 0.122), (0.862, 0.124), (0.865, 0.126), (0.872, 0.13),
    (0.876, 0.15), (0.888, 0.156), (0.897, 0.135), (0.92, 0.138), (0.96, 0.13), (0.985, 0.1),
    (1.005, 0.075), (1.005, 0.035), (0.985, 0.014), (0.96, 0.0), (0.9, 0.0), (0.88, 0.02),
    (0.865, 0.035), (0.835, 0.03), (0.81, 0.008), (0.8, 0.0), (0.78, 0.0), (0.75, 0.0),
    (0.6, 0.0), (0.5, 0.0), (0.42, 0.0), (0.34, 0.0), (0.32, 0.016), (0.27, 0.016),
    (0.22, 0.016), (0.2, 0.0), (0.15, 0.002), (0.1, 0.004), (0.07, 0.016), (0.055, 0.014),
    (0.04, 0.012), (0.03, 0.0), (0.012, 0.0),
)  # fmt: skip
_ARM_BESIDE: Final = (
    (0.765, 0.095), (0.72, 0.1), (0.66, 0.084), (0.6, 0.079), (0.54, 0.075), (0.5, 0.07),
    (0.46, 0.066), (0.43, 0.063), (0.42, 0.04), (0.45, 0.038), (0.5, 0.036), (0.55, 0.04),
    (0.6, 0.044), (0.68, 0.05), (0.74, 0.044), (0.78, 0.054),
)  # fmt: skip
_EAR: Final = ((0.905, 0.07), (0.9, 0.052), (0.92, 0.045), (0.927, 0.062))
"""The outline of somebody who lies on their back from the heel by the toes, the nose and the crown
back to it, an arm and an ear: along from the soles and over what they lie on, of the height.
"""


def _figure(
    at: Place, height: float, tag: Tag, head: Pair, trunk: Run,
    legs: Sequence[Run], arms: Sequence[Run], thigh: Run = (), neck: Pair | None = None,
) -> tuple[Shape, ...]:  # fmt: skip
    """The strokes of a pose; all places are shares of the height.

    thigh: the outline of what narrows from the trunk to a leg, where they are in line; neck: where
    it begins on the trunk, if not at the middle of the shoulders.
    """

    def strokes(runs: Sequence[Run], share: float) -> Path:
        # The ends lie half a thickness inside, so that feet and hands reach their places.
        pen = Pen(round(share * height, 2), round=True)
        return Path(tuple(tuple(at(x, y) for x, y in run) for run in runs), pen, tag)

    edges = (strokes((trunk,), _TRUNK), strokes(legs, _LEG), strokes(arms, _ARM))
    necks = strokes(((neck or trunk[0], head),), _NECK)
    inside = [
        replace(edge, pen=Pen(edge.pen.weight - 2 * _EDGE, round=True), tone=Tone.PERSON)
        for edge in (*edges, necks)
    ]
    spot, radius = at(*head), _HEAD * height
    corners = [at(*corner) for corner in thigh]
    narrowing = [
        polygon(corners, pen, tag, tone=Tone.PERSON) for pen in (Pen(2 * _EDGE), BARE) if thigh
    ]
    return (
        *edges,
        *narrowing[:1],
        necks,
        circle(spot, radius, FINE, tag, filled=True),
        *inside,
        *narrowing[1:],
        circle(spot, radius - _EDGE, BARE, tag, tone=Tone.PERSON),
    )


def standing(feet: Spot, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A person upright on both feet, seen from the front."""
    return _figure(
        lambda x, y: feet + height * complex(x, y), height, tag, (0.0, 0.931),
        ((0.0, 0.76), (0.0, 0.52)),
        (((-0.055, 0.041), (-0.033, 0.5)), ((0.055, 0.041), (0.033, 0.5))),
        (((0.0, 0.787), (-0.083, 0.77), (-0.13, 0.6), (-0.135, 0.45)),
         ((0.0, 0.787), (0.083, 0.77), (0.13, 0.6), (0.135, 0.45))),
    )  # fmt: skip


def lying(soles: Spot, way: complex, tag: Tag) -> tuple[Shape, ...]:
    """A person flat on their back on something level, the head a step `way` from the soles: seen
    from the side, the face up and an arm along the trunk.
    """
    up = way * (1j if way.real >= 0 else -1j)

    def drawn(places: Sequence[Pair], pen: Pen, tone: Tone | None = None) -> Curve:
        start, *rest = (soles + way * along + up * over for along, over in places)
        return Curve(start, tuple(zip(rest[::3], rest[1::3], rest[2::3], strict=True)),
                     pen, tag, tone=tone)  # fmt: skip

    return drawn(_SUPINE, MEDIUM, Tone.PERSON), drawn(_ARM_BESIDE, LIGHT), drawn(_EAR, FINE)


def seated(seat: Spot, height: float, facing: int, tag: Tag) -> tuple[Shape, ...]:
    """A person sitting on something level, feet before them on it, facing right (1) or left."""
    return _figure(
        lambda x, y: seat + height * complex(x * facing, y), height, tag, (0.0, 0.488),
        ((-0.02, 0.325), (-0.01, 0.085)),
        (((-0.01, 0.06), (0.19, 0.215), (0.285, 0.041)),),
        (((-0.01, 0.335), (0.09, 0.285), (0.205, 0.265)),),
    )  # fmt: skip


def climbing(
    feet: Spot, along: complex, outward: complex, height: float, above: float, tag: Tag
) -> tuple[Shape, ...]:
    """A person on a rung of a ladder that rises `along`, on its side `outward` (unit steps).

    above: how far the ladder goes on beyond the feet, pt; the hands hold it there.
    """
    away = 1.0 if outward.real > 0 else -1.0
    slope = along.real / max(along.imag, 0.2)
    rise = above * along.imag / height
    # Half of the ladder's slope: who climbs leans toward it, but stays nearer the upright, and
    # at the top short of the wall it leans against.
    lean = 0.55 * slope
    if abs(slope) > 1e-6:
        lean *= max(0.0, min(1.0, (abs(slope) * rise + 0.03) / (0.5 * abs(slope))))

    def at(out: float, up: float) -> complex:
        return complex(away * out + lean * up, up)

    def on_ladder(up: float) -> complex:
        return complex(away * 0.02 + slope * up, up)

    def arm(up: float) -> tuple[complex, ...]:
        shoulder = at(0.165, 0.765)
        way = on_ladder(up) - shoulder
        way *= min(1.0, _REACH / abs(way))
        bend = (_REACH**2 - abs(way) ** 2) ** 0.5 / 2
        return shoulder, shoulder + way / 2 + way / abs(way) * 1j * away * bend, shoulder + way

    upper = min(0.8, rise - 0.03)
    foot, hip = on_ladder(0.041), at(0.18, 0.48)
    return _figure(
        lambda x, y: feet + height * complex(x, y), height, tag, _pair(at(0.155, 0.92)),
        (_pair(at(0.17, 0.755)), _pair(at(0.19, 0.5))),
        _pairs((foot, at(0.14, 0.27), hip), (foot, at(0.1, 0.28), hip)),
        _pairs(arm(min(0.68, upper - 0.06)), arm(upper)),
    )  # fmt: skip


def _pair(spot: complex) -> tuple[float, float]:
    return spot.real, spot.imag


def _pairs(*runs: Sequence[complex]) -> tuple[Run, ...]:
    return tuple(tuple(_pair(spot) for spot in run) for run in runs)


def hanging(hands: Spot, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A person who hangs by both hands from a point; the feet reach 1.2 heights below."""
    return _figure(
        lambda x, y: hands + height * complex(x, y - 1.2), height, tag, (0.0, 0.931),
        ((0.0, 0.76), (0.0, 0.52)),
        (((-0.03, 0.041), (-0.033, 0.5)), ((0.03, 0.041), (0.033, 0.5))),
        (((0.0, 0.78), (-0.075, 0.785), (-0.1, 0.98), (-0.015, 1.17)),
         ((0.0, 0.78), (0.075, 0.785), (0.1, 0.98), (0.015, 1.17))),
    )  # fmt: skip


def sitting(seat: Spot, height: float, facing: int, tag: Tag) -> tuple[Shape, ...]:
    """A person who sits on something level and holds a rope before them."""
    return _figure(
        lambda x, y: seat + height * complex(x * facing, y), height, tag, (0.0, 0.488),
        ((-0.02, 0.325), (-0.01, 0.085)),
        (((-0.01, 0.06), (0.13, 0.19), (0.21, 0.041)),),
        (((-0.01, 0.335), (0.1, 0.23), (0.27, 0.33)),),
    )  # fmt: skip


def holding(feet: Spot, height: float, facing: int, tag: Tag) -> tuple[Shape, ...]:
    """A person who stands and holds, pulls or pushes something at 0.6 of their height."""
    return _figure(
        lambda x, y: feet + height * complex(x * facing, y), height, tag, (0.02, 0.931),
        ((0.0, 0.765), (-0.02, 0.52)),
        (((-0.13, 0.041), (-0.03, 0.5)), ((0.09, 0.041), (0.06, 0.27), (-0.01, 0.5))),
        (((0.0, 0.775), (0.1, 0.63), (0.27, 0.62)),),
    )  # fmt: skip


def lifting(feet: Spot, hands: Spot, facing: int, tag: Tag) -> tuple[Shape, ...]:
    """A person who walks under something and holds it up before them with both hands."""
    height = (hands - feet).imag / LIFTED

    def arm(shoulder: complex) -> Run:
        hand = complex((hands - feet).real * facing, (hands - feet).imag) / height - 1j * _ARM / 2
        way = hand - shoulder
        bend = max(_REACH**2 - abs(way) ** 2, 0.0) ** 0.5 / 2
        elbow = shoulder + way / 2 - way / abs(way) * 1j * bend
        return _pair(shoulder), _pair(elbow), _pair(hand)

    return _figure(
        lambda x, y: feet + height * complex(x * facing, y), height, tag, (0.03, 0.925),
        ((0.0, 0.765), (-0.03, 0.52)),
        (((-0.15, 0.041), (-0.07, 0.27), (-0.04, 0.5)),
         ((0.09, 0.041), (0.08, 0.28), (-0.02, 0.5))),
        (arm(0.01 + 0.77j), arm(-0.01 + 0.77j)),
    )  # fmt: skip


def bearing(feet: Spot, height: float, facing: int, tag: Tag) -> tuple[Shape, ...]:
    """A person who walks with something on the shoulder, straight above the feet."""
    return _figure(
        lambda x, y: feet + height * complex(x * facing, y), height, tag, (0.11, 0.925),
        ((0.05, 0.765), (0.02, 0.52)),
        (((-0.12, 0.041), (-0.02, 0.27), (0.01, 0.5)),
         ((0.16, 0.041), (0.12, 0.28), (0.03, 0.5))),
        (((0.06, 0.775), (0.19, 0.64), (0.27, SHOULDER)),),
    )  # fmt: skip


def boot(toe: Spot, length: float, facing: int, tag: Tag) -> tuple[Shape, ...]:
    """A boot on the ground with its toe at a place, and the leg in it broken off."""
    size = length / 15.0

    def at(x: float, y: float) -> Spot:
        return toe + complex(x * facing, y) * size

    upper = Curve(
        at(-15.0, 2.0),
        (
            (at(-15.0, 7.0), at(-13.4, 9.0), at(-13.4, 17.0)),
            (at(-10.0, 18.6), at(-9.6, 15.4), at(-6.2, 17.0)),
            (at(-6.2, 12.0), at(-6.6, 9.0), at(-5.0, 7.6)),
            (at(-2.0, 6.6), at(0.0, 5.4), at(0.0, 2.0)),
            (at(0.0, 2.0), at(-15.0, 2.0), at(-15.0, 2.0)),
        ),
        MEDIUM, tag, tone=Tone.PERSON,
    )  # fmt: skip
    heel = (at(-15.0, 2.0), at(-15.0, 0.4), at(-10.0, 0.4), at(-9.0, 1.2))
    sole = (at(-8.0, 0.4), at(0.0, 0.4), at(0.0, 2.0))
    return polygon((*heel, *sole), MEDIUM, tag, tone=Tone.BODY), upper


def braced(toes: Spot, shoulder: Spot, hands: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A person straight from the heels to the shoulder, the arms down to the hands: a push-up."""
    height = abs(shoulder - toes) / 0.82
    facing = 1 if shoulder.real >= toes.real else -1

    def share(spot: Spot) -> complex:
        way = (spot - toes) / height
        return complex(way.real * facing, way.imag)

    top, hand = share(shoulder), share(hands) + 1j * _ARM / 2
    reach = abs(top - _HEEL)
    along = (top - _HEEL) / reach

    def on(run: float, over: float) -> tuple[float, float]:
        # From the shoulder down the body, and above the middle of the trunk.
        spot = top - along * (run - 1j * over)
        return spot.real, spot.imag

    # Trunk and legs are level at the back; what is inside the edges is a little less.
    back, leg, edge = _TRUNK / 2, (_TRUNK - _LEG) / 2, _EDGE / height
    return _figure(
        lambda x, y: toes + height * complex(x * facing, y), height, tag, on(-0.108, 0.025),
        (on(0.04, 0.0), on(0.27, 0.0)),
        (((0.004, _LEG / 2), on(reach, leg), on(0.3, leg)),),
        ((on(0.01, 0.0), (hand.real, hand.imag)),),
        (on(0.27, back - edge), on(reach, back - edge),
         on(reach - 0.1, leg - _LEG / 2 + edge), on(0.27, edge - back)),
        on(0.04, 0.015),
    )  # fmt: skip
