"""People as pictograms: a round head, and trunk and limbs as thick strokes with round ends, grey
with an outline.

Places are pt; a height is that of the person standing.  The proportions are those of an adult as
sketched by common practice, from memory: leg 0.48, trunk 0.30, arm 0.40 of the height.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

from probgen.figures.paper.scene import BARE, FINE, Path, Pen, Shape, Spot, Tone, circle
from probgen.figures.paper.tag import Tag

_HEAD: Final = 0.075  # radius, of the height
_TRUNK: Final = 0.135  # thickness
_LEG: Final = 0.082
_ARM: Final = 0.062
_EDGE: Final = 0.7  # weight of the outline, pt

Place = Callable[[float, float], Spot]
Run = tuple[tuple[float, float], ...]


def _figure(
    at: Place, height: float, tag: Tag, head: tuple[float, float], trunk: Run,
    legs: Sequence[Run], arms: Sequence[Run],
) -> tuple[Shape, ...]:  # fmt: skip
    """The strokes of a pose; all places are shares of the height."""

    def strokes(runs: Sequence[Run], share: float) -> Path:
        # The ends lie half a thickness inside, so that feet and hands reach their places.
        pen = Pen(round(share * height, 2), round=True)
        return Path(tuple(tuple(at(x, y) for x, y in run) for run in runs), pen, tag)

    edges = (strokes((trunk,), _TRUNK), strokes(legs, _LEG), strokes(arms, _ARM))
    inside = [
        replace(edge, pen=Pen(edge.pen.weight - 2 * _EDGE, round=True), tone=Tone.PERSON)
        for edge in edges
    ]
    spot, radius = at(*head), _HEAD * height
    return (
        *edges,
        circle(spot, radius, FINE, tag, filled=True),
        *inside,
        circle(spot, radius - _EDGE, BARE, tag, tone=Tone.PERSON),
    )


def standing(feet: Spot, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A person upright on both feet, seen from the front."""
    return _figure(
        lambda x, y: feet + height * complex(x, y), height, tag, (0.0, 0.925),
        ((0.0, 0.745), (0.0, 0.52)),
        (((-0.055, 0.041), (-0.033, 0.5)), ((0.055, 0.041), (0.033, 0.5))),
        (((-0.075, 0.765), (-0.135, 0.6), (-0.14, 0.45)),
         ((0.075, 0.765), (0.135, 0.6), (0.14, 0.45))),
    )  # fmt: skip


def lying(soles: Spot, way: complex, tag: Tag) -> tuple[Shape, ...]:
    """A person flat on their back on something level, the head a step `way` from the soles."""
    height = abs(way)
    unit = way / height
    up = unit * (1j if unit.real >= 0 else -1j)
    return _figure(
        lambda x, y: soles + height * (up * x + unit * y), height, tag, (0.085, 0.925),
        ((0.07, 0.78), (0.07, 0.52)),
        (((0.115, 0.03), (0.045, 0.041), (0.05, 0.5)),),
        (((0.1, 0.77), (0.06, 0.6), (0.035, 0.42)),),
    )  # fmt: skip


def seated(seat: Spot, height: float, facing: int, tag: Tag) -> tuple[Shape, ...]:
    """A person sitting on something level, feet before them on it, facing right (1) or left."""
    return _figure(
        lambda x, y: seat + height * complex(x * facing, y), height, tag, (0.0, 0.485),
        ((-0.02, 0.31), (-0.01, 0.085)),
        (((-0.01, 0.06), (0.19, 0.215), (0.285, 0.041)),),
        (((-0.01, 0.315), (0.085, 0.19), (0.215, 0.225)),),
    )  # fmt: skip


def climbing(
    feet: Spot, along: complex, outward: complex, height: float, tag: Tag
) -> tuple[Shape, ...]:
    """A person on a ladder that rises `along`, on its side `outward` (unit steps)."""
    away = 1.0 if outward.real > 0 else -1.0
    slope = along.real / max(along.imag, 0.2)

    def at(out: float, up: float) -> Spot:
        # Half of the ladder's slope: who climbs leans toward it, but stays nearer the upright.
        return feet + height * complex(away * out + slope * up * 0.55, up)

    def on_ladder(up: float) -> tuple[float, float]:
        return away * slope * up * 0.45 + 0.02, up

    return _figure(
        at, height, tag, (0.15, 0.915), ((0.17, 0.735), (0.19, 0.5)),
        ((on_ladder(0.041), (0.13, 0.27), (0.18, 0.48)),
         (on_ladder(0.16), (0.05, 0.36), (0.18, 0.48))),
        (((0.165, 0.755), (0.14, 0.6), on_ladder(0.68)),
         ((0.165, 0.755), (0.09, 0.7), on_ladder(0.8))),
    )  # fmt: skip


def hanging(hands: Spot, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A person who hangs by both hands from a point; the feet reach 1.2 heights below."""
    return _figure(
        lambda x, y: hands + height * complex(x, y - 1.2), height, tag, (0.0, 0.925),
        ((0.0, 0.745), (0.0, 0.52)),
        (((-0.03, 0.041), (-0.033, 0.5)), ((0.03, 0.041), (0.033, 0.5))),
        (((-0.075, 0.765), (-0.1, 0.98), (-0.015, 1.17)),
         ((0.075, 0.765), (0.1, 0.98), (0.015, 1.17))),
    )  # fmt: skip


def sitting(seat: Spot, height: float, facing: int, tag: Tag) -> tuple[Shape, ...]:
    """A person who sits on something level and holds a rope before them."""
    return _figure(
        lambda x, y: seat + height * complex(x * facing, y), height, tag, (0.0, 0.485),
        ((-0.02, 0.31), (-0.01, 0.085)),
        (((-0.01, 0.06), (0.13, 0.19), (0.21, 0.041)),),
        (((-0.01, 0.315), (0.1, 0.22), (0.27, 0.33)),),
    )  # fmt: skip


def holding(feet: Spot, height: float, facing: int, tag: Tag) -> tuple[Shape, ...]:
    """A person who stands and holds, pulls or pushes something at 0.6 of their height."""
    return _figure(
        lambda x, y: feet + height * complex(x * facing, y), height, tag, (0.02, 0.925),
        ((0.0, 0.745), (-0.02, 0.52)),
        (((-0.13, 0.041), (-0.03, 0.5)), ((0.09, 0.041), (0.06, 0.27), (-0.01, 0.5))),
        (((0.0, 0.765), (0.1, 0.63), (0.27, 0.62)),),
    )  # fmt: skip


def braced(toes: Spot, shoulder: Spot, hands: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A person straight from the toes to the shoulder, the arms down to the hands: a push-up."""
    way = shoulder - toes
    height = abs(way) / 0.82
    unit = way / abs(way)
    up = unit * (1j if unit.real >= 0 else -1j)
    reach = (hands + 1j * _ARM * height / 2 - shoulder) / (height * unit)
    arm = (0.82 + reach.real, reach.imag if unit.real >= 0 else -reach.imag)
    return _figure(
        lambda x, y: toes + height * (unit * x + up * y), height, tag, (0.95, 0.03),
        ((0.78, 0.0), (0.54, 0.0)),
        (((0.035, 0.02), (0.05, 0.075), (0.5, 0.0)),),
        (((0.81, -0.01), arm),),
    )  # fmt: skip
