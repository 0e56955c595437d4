"""The bones about a hip joint, seen from the front: half of a pelvis, and the upper end of the
thigh bone, where the muscles of the hip end.

Places are pt; outlines are given in centimetres from the joint, to the inner side and up.  The
proportions are those of an adult as sketched by common practice, from memory.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from probgen.figures.paper.scene import (
    BARE,
    LIGHT,
    MEDIUM,
    Curve,
    Pen,
    Shape,
    Spot,
    Tone,
    bearing,
    circle,
)
from probgen.figures.paper.tag import Tag
from probgen.figures.parts.limb import break_mark

TROCHANTER: Final = 4.2
"""How far below the joint the muscles of the hip end on the thigh bone, cm."""

_HEAD: Final = 2.6  # radius of the head of the thigh bone, cm
_SHAFT: Final = 13.5  # how far below the joint the thigh bone is broken off, cm
_HALF: Final = 1.7  # half its breadth there, cm

_Run = Sequence[tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Hip:
    """A hip about its joint.

    cm: of a centimetre on paper, pt; inner: 1 where the middle of the body is to the right, else
    -1; crest, middle: how far the pelvis goes on to the outer side, and to the middle, cm.
    """

    joint: Spot
    cm: float
    inner: int
    crest: float
    middle: float

    def at(self, across: float, up: float) -> Spot:
        """A place on paper."""
        return self.joint + self.cm * complex(self.inner * across, up)

    def pelvis(self, tag: Tag) -> tuple[Shape, ...]:
        """Half of a pelvis, with the hole between its two lower branches."""
        a, m = -self.crest, self.middle
        run = ((3.3, -1.5), (3.0, -5.2), (4.2, -8.4), (6.2, -7.6), (0.74 * m, -4.6),
               (m - 0.3, -2.8), (m + 0.9, 0.3), (m + 0.2, 3.2), (0.62 * m, 4.8), (0.5 * m, 8.2),
               (0.52 * m, 11.6), (0.2 * m, 13.2), (0.5 * a, 12.6), (a - 0.6, 10.0),
               (a - 1.2, 6.0), (a - 0.9, 2.0), (a + 0.6, -1.2), (-3.3, -1.5))  # fmt: skip
        bone = self._drawn(run, ((-3.3, 4.4), (3.3, 4.4), run[0]), tag, MEDIUM, Tone.BODY)
        x = 0.52 * m
        around = ((x, 0.4), (x + 1.9, -0.9), (x + 1.2, -3.2), (x - 0.7, -4.6), (x - 1.6, -2.2))
        hole = self._drawn(around, ((x - 1.9, -0.8), (x - 1.0, 0.4), around[0]), tag, LIGHT,
                           Tone.PAPER)  # fmt: skip
        return bone, hole

    def femur(self, outer: Spot, tag: Tag) -> tuple[Shape, ...]:
        """The thigh bone from its head down to where it is broken off; outer: where muscles end."""
        end = (outer - self.joint) / self.cm
        x, y = self.inner * end.real, end.imag
        foot = 0.55 * x
        run = ((-2.4, -0.8), (0.55 * x - 0.2, -0.4 + 0.3 * y), (x + 1.0, y + 1.4),
               (x - 0.2, y + 0.7), (x - 0.1, y - 1.6), (foot - 1.9, -9.0),
               *((foot - _HALF, -_SHAFT),) * 2, *((foot + _HALF, -_SHAFT),) * 2,
               (foot + 1.9, -9.4), (0.42 * x + 0.6, -5.0), (-0.2, -2.5))  # fmt: skip
        inside = self._drawn(run, ((-0.4, -1.6), (-1.4, -0.8), run[0]), tag, BARE, Tone.BODY)
        left, right = run[:7], run[9:]
        sides = (self._drawn(side, (), tag, MEDIUM, None) for side in (left, right))
        broken = break_mark(self.at(foot, -_SHAFT), bearing(-1j), _HALF * self.cm, tag)
        head = circle(self.joint, _HEAD * self.cm, MEDIUM, tag, tone=Tone.BODY)
        return head, inside, *sides, *broken

    def _drawn(self, run: _Run, last: _Run, tag: Tag, pen: Pen, tone: Tone | None) -> Curve:
        """A smooth curve through a run of places, a bend where one stands twice; last: the piece
        back to its start, if any.
        """
        spots = [complex(*place) for place in run]
        ways = [(b - a) / 6.0 for a, b in pairwise(spots)]
        met = zip([0j, *ways], [*ways, 0j], strict=True)
        slopes = [one + other if one and other else 0j for one, other in met]
        pieces = [
            (spots[i] + slopes[i], spots[i + 1] - slopes[i + 1], spots[i + 1])
            for i in range(len(ways))
        ]
        if last:
            pieces.append((complex(*last[0]), complex(*last[1]), complex(*last[2])))
        placed = [tuple(self.at(spot.real, spot.imag) for spot in piece) for piece in pieces]
        return Curve(self.at(*run[0]), tuple((p, q, r) for p, q, r in placed), pen, tag, tone=tone)
