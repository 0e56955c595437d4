"""Somebody standing on one leg, from the chest to below the knees, seen from the front: an outline
behind the parts of the body that matter.

Places are pt; the outline is given in centimetres from the hip joint of the standing leg, to the
inner side and up.  The proportions are those of an adult as sketched by common practice, from
memory.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from probgen.figures.paper.scene import LIGHT, MEDIUM, Curve, Pen, Shape, Spot, Tone
from probgen.figures.paper.tag import Tag

CUT: Final = 0.54
"""How far below the hip joint the legs are broken off, m."""

KNEE: Final = 0.42
"""How far the knee is below it, m."""

_WAIST: Final = 21.0  # how far above it the waist is, cm
_TOP: Final = 45.0  # and the chest, where the outline is broken off, cm
_SHOULDER: Final = 6.5  # how far the shoulder is beyond the chest, cm
_SKIN: Final = 3.5  # from the outer end of a pelvis to the outline, cm

_Run = Sequence[tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Body:
    """A body about the hip joint of its standing leg.

    cm: of a centimetre on paper, pt; inner: 1 where the other leg is to the right, else -1; crest:
    how far the pelvis goes on to the outer side; middle: how far the middle of the body is to the
    inner side, cm.
    """

    joint: Spot
    cm: float
    inner: int
    crest: float
    middle: float

    def at(self, across: float, up: float) -> Spot:
        """A place of the body on paper."""
        return self.joint + self.cm * complex(self.inner * across, up)

    @property
    def waist(self) -> float:
        """Half the breadth of the waist, cm."""
        return self.middle + self.crest

    @property
    def chest(self) -> float:
        """Half the breadth of the chest, cm."""
        return self.waist + 2.0

    def outline(self, tag: Tag) -> tuple[Shape, ...]:
        """Chest, hips and legs, which are broken off at one level."""
        hip, m = -self.crest - _SKIN, self.middle
        outer = ((m - self.chest, _TOP), (m - self.chest + 0.4, 36.0), (m - self.waist, _WAIST),
                 (hip + 2.2, 12.0), (hip, 0.0), (hip + 1.2, -14.0),
                 (-5.6, -38.0))  # fmt: skip
        low = -100.0 * CUT
        end = (*((-5.8, low),) * 2, (-2.0, low + 0.9), (1.8, low - 0.9), *((5.6, low),) * 2)
        inside = ((5.2, -42.0), (m - 1.6, -18.0), (m - 0.7, -11.5))
        leg = (*outer, *end, *inside)
        run = (*leg, *((2 * m - x, y) for x, y in reversed(leg)))
        third = (run[-1][0] - run[0][0]) / 3.0
        torn = ((run[0][0] + 2 * third, _TOP + 3.0), (run[0][0] + third, _TOP - 3.0), run[0])
        return (self._drawn(run, torn, tag),)

    def arm(self, hand: Spot, tag: Tag) -> tuple[Shape, ...]:
        """The arm of the inner side, from where the outline is broken off at the shoulder, over an
        elbow that is bent outward, down to a hand.
        """
        end = (hand - self.joint) / self.cm
        across, up = self.inner * end.real, end.imag
        side = self.middle + self.chest
        elbow = max(0.5 * (side + across) + 2.0, side + 7.0)
        run = ((side, 37.0), (elbow - 4.6, 20.0), (across - 3.2, up + 7.0),
               *((across - 1.8, up),) * 2, *((across + 1.8, up),) * 2, (across + 2.4, up + 7.0),
               (elbow + 4.4, 21.0), (side + _SHOULDER + 0.5, 38.0),
               (side + _SHOULDER, _TOP))  # fmt: skip
        torn = ((side + 4.0, _TOP + 2.0), (side + 2.0, _TOP - 2.0), (side, _TOP))
        return (self._drawn(run, torn, tag),)

    def pelvis(self, tag: Tag) -> tuple[Shape, ...]:
        """The hip bone, from its outer edge over the socket of the joint to the middle."""
        a, m = -self.crest, self.middle
        run = ((3.3, -1.5), (0.5 * m + 1.6, -4.2), (m + 0.6, -3.0), (m + 1.4, 2.0), (m + 0.6, 8.4),
               (0.62 * m, 10.0), (0.25 * m, 13.6), (a + 1.8, 13.0), (a - 0.9, 8.0), (a - 0.9, -0.4),
               (a + 0.8, -1.6), (-3.3, -1.5))  # fmt: skip
        return (self._drawn(run, ((-3.3, 4.4), (3.3, 4.4), run[0]), tag, MEDIUM, Tone.BODY),)

    def _drawn(
        self, run: _Run, last: _Run, tag: Tag, pen: Pen = LIGHT, tone: Tone = Tone.SKIN
    ) -> Curve:
        """A smooth curve through a run of places, a bend where one stands twice; last: the piece
        back to its start.
        """
        spots = [complex(*place) for place in run]
        ways = [(b - a) / 6.0 for a, b in pairwise(spots)]
        met = zip([0j, *ways], [*ways, 0j], strict=True)
        slopes = [one + other if one and other else 0j for one, other in met]
        pieces = [
            (spots[i] + slopes[i], spots[i + 1] - slopes[i + 1], spots[i + 1])
            for i in range(len(ways))
        ]
        pieces.append((complex(*last[0]), complex(*last[1]), complex(*last[2])))
        placed = [tuple(self.at(spot.real, spot.imag) for spot in piece) for piece in pieces]
        return Curve(self.at(*run[0]), tuple((p, q, r) for p, q, r in placed), pen, tag, tone=tone)
