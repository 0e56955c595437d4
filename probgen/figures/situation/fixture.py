"""A fixture: what one support leaves on paper, and the wedge that more than one of them is."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from probgen.figures.paper.scene import Shape, Spot
from probgen.figures.paper.tag import Tag
from probgen.figures.parts.ground import Surface, fulcrum
from probgen.figures.situation.datum import Datum

FACE: Final = 14.0
"""How far a face reaches beyond what it holds, pt."""

_WEDGE: Final = 17.0  # height of a fulcrum, pt
_LOW: Final = 21.0  # below a spot, what stands under rollers and brackets is nearer, pt


@dataclass(frozen=True, slots=True)
class Incline:
    """The angle at the foot of a slope: from the level to the way up, degrees; id: its quantity.

    bare: no level line is drawn there.
    """

    foot: Spot
    level: float
    way: float
    text: Datum
    id: str
    bare: bool = False


@dataclass(frozen=True, slots=True)
class Fixture:
    """What a support leaves on paper.

    shapes: its strokes; surfaces: the faces it needs, which are hatched once all are known;
    gap: how far a bar stops short of the support's point, pt; cut: the outward normal a bar's end
    there is cut to, 0 for none; inclines: the angles told at a slope's foot.
    """

    shapes: tuple[Shape, ...] = ()
    surfaces: tuple[Surface, ...] = ()
    gap: float = 0.0
    cut: complex = 0j
    inclines: tuple[Incline, ...] = ()


def wedge_under(spot: Spot, half: float, tag: Tag) -> Fixture:
    """A wedge on the ground under a body of half a thickness (pt)."""
    tip = spot - 1j * half
    surface = Surface(tip - 1j * _WEDGE, 90.0, 24.0, 24.0)
    return Fixture(fulcrum(tip, _WEDGE, tag), (surface,))


def room_under(spot: Spot, surfaces: Sequence[Surface]) -> float:
    """How far down (pt) something may hang from a spot: to the floor under it, not beside one that
    is hardly lower, as under a roller nearby.
    """
    floors = [each for each in surfaces if each.normal == 90.0]
    return min(
        (f.height(spot) for f in floors if f.height(spot) > _least(f, spot)), default=math.inf
    )


def _least(floor: Surface, spot: Spot) -> float:
    """How far below a spot a floor is at least that what hangs there ends above (pt)."""
    beside = not -floor.before <= floor.reach(spot) <= floor.after
    return _LOW if beside else 0.0
