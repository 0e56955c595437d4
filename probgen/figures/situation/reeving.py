"""A hoisting rope beside its own bar: over a sheave at the bar's end, along it, to a winch beyond
its foot.  The sheave is as large as the drum, so that the rope runs level with the bar.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from probgen.bank.depiction import Anchor, Manner
from probgen.figures.paper.scene import MEDIUM, Arc, Shape, Spot, bearing, heading, line
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import mechanical
from probgen.figures.parts.solid import WINCH, winch
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element, Kind

_BEYOND: Final = 23.0  # from the bar's foot on to the drum's axle, pt
_AXLE: Final = 14.0  # of the axle above the ground, pt
_ALONG: Final = 0.001  # most sine between such a rope and its bar


@dataclass(frozen=True, slots=True)
class Reeving:
    """Where a rope runs that is one of a bar's elements.

    sheave: the axle of its wheel; side, hangs: the unit steps from there to where the rope along
    the bar, and what hangs on it, leave the wheel; axle, foot: of the winch.
    """

    element: Element
    sheave: Spot
    side: complex
    hangs: complex
    axle: Spot
    foot: Spot

    @property
    def ends(self) -> tuple[Spot, Spot]:
        """The rope's straight part, from the sheave to the drum."""
        return self.sheave + self.side * WINCH, self.axle + self.side * WINCH

    @property
    def hung(self) -> Spot:
        """Where what hangs on the rope leaves the sheave."""
        return self.sheave + self.hangs * WINCH

    @property
    def shapes(self) -> tuple[Shape, ...]:
        """The winch, the sheave and the rope over it."""
        rope, start = Tag(What.CABLE, self.element.id), bearing(self.side)
        sweep = (bearing(self.hangs) - start + 180.0) % 360.0 - 180.0
        return (
            *winch(self.axle, self.foot, Tag(What.SUPPORT, self.element.id), -self.hangs),
            line(*self.ends, MEDIUM, rope),
            *mechanical.pulley(self.sheave, WINCH - 0.4, Tag(What.PULLEY, self.element.id)),
            Arc(self.sheave, WINCH, start, sweep, MEDIUM, rope),
        )


def reeving_on(stage: Stage, body: str) -> Reeving | None:
    """The rope that a body has along itself to a winch; None where it has none."""
    for element in stage.system.elements:
        if element.body != body or stage.depicts.lines.get(element.id) is not Anchor.WINCH:
            continue
        way, ways = stage.measured.direction_of(element), stage.ways(element)
        if way is None or len(ways) != 1:
            continue
        unit = heading(way)
        turned = ways[0] / abs(ways[0]) / unit
        if turned.real > 0 and abs(turned.imag) < _ALONG and unit.imag < 0:
            tip = stage.spot(element.at)
            hangs = -1.0 if unit.real > 0 else 1.0
            axle = tip + ways[0] + unit * _BEYOND
            return Reeving(element, tip, -unit * 1j * hangs, hangs, axle, axle - 1j * _AXLE)
    return None


def hung_from(stage: Stage, element: Element) -> Spot:
    """Where a weight's rope begins: at its point, or where it leaves a sheave there."""
    reeving, load = reeving_on(stage, element.body), stage.depicts.loads.get(element.id)
    if reeving and load and load.manner is Manner.HANGS and reeving.element.at == element.at:
        return reeving.hung
    return stage.spot(element.at)


def foot_height(stage: Stage, element: Element, least: float) -> float:
    """How high a hinge on the ground is (pt), so that a winch beyond it stands on that ground."""
    reeving = reeving_on(stage, element.body)
    if element.kind is not Kind.HINGE or reeving is None:
        return least
    return max(stage.spot(element.at).imag - reeving.foot.imag, least)
