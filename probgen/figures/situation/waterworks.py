"""A pump about its handle, a well about its drum: where their parts are, by what turns on them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from probgen.bank.depiction import Hinge
from probgen.figures.paper.scene import Shape, Spot, heading
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import waterworks
from probgen.figures.parts.ground import Surface, hatched, tinted
from probgen.figures.situation.fixture import FACE
from probgen.figures.situation.shape import arms_of
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element, Kind

_DOWN: Final = -0.99  # most sine of the way of a pump's rod
_LEAST: Final = 66.0  # from a pump's pin down to the ground at least, pt
_BELOW: Final = 16.0  # from the lowest of its handle down to the ground, pt
_HUNG: Final = 4.0  # from a well's rim down to the handle of a bucket in it, pt
_SHAFT: Final = 42.0  # how far its shaft is drawn below the rim, pt


@dataclass(frozen=True, slots=True)
class Pump:
    """A pump by the spots (pt) of its rod's upper end, its handle's pin, its head and its foot.

    rod: the element that its rod is.
    """

    rod: Element
    start: Spot
    pin: Spot
    head: Spot
    foot: Spot

    @property
    def shapes(self) -> tuple[Shape, ...]:
        """The pump without its rod, behind the handle."""
        return waterworks.pump(self.head, self.pin, self.foot, Tag(What.BEYOND, self.rod.id))

    @property
    def strokes(self) -> tuple[Shape, ...]:
        """The rod."""
        return waterworks.pump_rod(self.start, self.head, Tag(What.CABLE, self.rod.id))


def pump_of(stage: Stage, body: str) -> Pump | None:
    """The pump that a body is the handle of; None where it has no rod straight down."""
    own = [element for element in stage.system.elements if element.body == body]
    pins = [e for e in own if stage.depicts.hinges.get(e.id) is Hinge.PUMP]
    for rod in own if pins else ():
        way = stage.measured.direction_of(rod) if rod.kind is Kind.CABLE else None
        start, pin = stage.spot(rod.at), stage.spot(pins[0].at)
        if way is None or heading(way).imag > _DOWN or abs((start - pin).real) < waterworks.LEAST:
            continue
        lowest = min(stage.spot(name).imag for name in stage.system.body(body).outline)
        level = min(pin.imag - _LEAST, lowest - _BELOW)
        head = complex(start.real, pin.imag - waterworks.HEAD)
        return Pump(rod, start, pin, head, complex(start.real, level))
    return None


@dataclass(frozen=True, slots=True)
class Well:
    """A well under a drum of a radius (pt) about an axle; tag: of its hinge."""

    axle: Spot
    radius: float
    tag: Tag

    @property
    def rope(self) -> float:
        """How far below the axle a bucket's handle is that hangs in the shaft, pt."""
        return self.radius + waterworks.RIM + _HUNG

    @property
    def shapes(self) -> tuple[Shape, ...]:
        """Its wall and its post, and the ground to either side of it."""
        back = Tag(What.BEYOND, self.tag)
        wall = waterworks.well(self.axle, self.radius, _SHAFT, self.tag, back)
        return *wall, *(shape for side in (-1, 1) for shape in self._ground(side))

    def _ground(self, side: int) -> tuple[Shape, ...]:
        half = self.radius + waterworks.SHAFT + waterworks.WALL
        low = self.radius + waterworks.RIM + waterworks.CURB
        face = Surface(self.axle + complex(side * (half + FACE), -low), 90.0, FACE, FACE)
        return *hatched(face), tinted(face)


def well_of(stage: Stage, body: str) -> Well | None:
    """The well that a body is the drum over."""
    for element in stage.system.elements:
        if element.body == body and stage.depicts.hinges.get(element.id) is Hinge.WELL:
            _, radii, _ = arms_of(stage.measured, stage.system.body(body), stage.look(body))
            radius = max(radii, default=0.0) * stage.scale
            return Well(stage.spot(element.at), radius, Tag(What.SUPPORT, element.id))
    return None
