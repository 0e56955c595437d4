"""Supports and cables of a situation: which part each element is drawn as, and where it ends."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from probgen.figures import limb, parts
from probgen.figures.dimension import draw_angle
from probgen.figures.ground import (
    ROLLER_HEIGHT,
    Surface,
    backing,
    fulcrum,
    hatched,
    joined,
    lug,
    roller,
)
from probgen.figures.line import draw_lines
from probgen.figures.particle import blocks_of, shifts_of
from probgen.figures.placement import Field
from probgen.figures.scene import (
    MEDIUM,
    Shape,
    Spot,
    apart,
    bearing,
    circle,
    dot,
    heading,
)
from probgen.figures.survey import Survey, pushes, ways_out
from probgen.quantities.expression import Name, Number
from probgen.statics.geometry import angle_of
from probgen.statics.system import Body, Element, Kind

_WALL_GAP: Final = 11.0  # from a hinge's pin to the wall's face, pt
_FACE: Final = 14.0  # how far a face reaches beyond what it holds, pt
_WEDGE: Final = 17.0  # height of a fulcrum, pt
_FACES: Final = {"floor": 90.0, "ground": 90.0, "bracket": 90.0, "ceiling": 270.0}
_END_ON: Final = 0.6  # least |cosine| between axis and normal for an end cut to the surface


def half_thickness(depiction: str) -> float:
    """Half the thickness a body is drawn with, pt."""
    for word, half in (("ladder", 3.2), ("arm", 4.0), ("leg", 4.5), ("plank", 2.2), ("rod", 1.6)):
        if word in depiction.lower():
            return half
    return 3.0


class Supports:
    """What holds the bodies of a system, drawn on a field at a scale (pt for each metre)."""

    def __init__(
        self,
        measured: Survey,
        depicts: Mapping[str, str],
        givens: Mapping[str, Number],
        scale: float,
        field: Field,
    ) -> None:
        self.measured = measured
        self.depicts = depicts
        self.givens = givens
        self.scale = scale
        self.field = field
        self.surfaces: list[Surface] = []
        self.cuts: dict[str, complex] = {}  # point: normal the end of a bar there is cut to
        self.pins: dict[str, float] = {}  # point: how far a bar stops short of it, pt
        self.blocks = blocks_of(measured, depicts, givens)  # particles drawn as blocks, by body
        self.shifts = shifts_of(measured, self.blocks)  # point: how it is moved on paper, pt
        self.inclines: set[str] = set()  # angles labelled at the foot of a slope

    def draw(self) -> None:
        """Draw every support, then the lines that pull or push, then ground and walls."""
        for element in self.measured.system.elements:
            if not self.inner(element):
                self._support(element)
            elif element.kind == Kind.HINGE:
                self._joint_between(element)
        draw_lines(self)
        extended = any(len(body.outline) > 1 for body in self.measured.system.bodies)
        for surface in joined(self.surfaces, corners=extended):
            face, hatching = hatched(surface)
            self.field.add(face)
            self.field.add(hatching, solid=False)
            self.field.watch(backing(surface))

    def _support(self, element: Element) -> None:
        match element.kind:
            case Kind.HINGE:
                self._hinge(element)
            case Kind.FIXED:
                self._built_in(element)
            case Kind.ROLLER:
                self._roller(element)
            case Kind.CONTACT | Kind.ROUGH:
                self._contact(element)

    def inner(self, element: Element) -> bool:
        """Whether an element acts between two bodies of the system."""
        return any(self.measured.system.force(id).pair for id in element.forces)

    def _joint_between(self, element: Element) -> None:
        """A pin in the body drawn first; the other one stops short of it too."""
        if element.at not in self.pins:
            self.pins[element.at] = parts.PIN
            self.field.add(parts.pin(self.spot(element.at), f"support:{element.id}"))

    def spot(self, point: str) -> Spot:
        """A point's place on paper."""
        return self.measured.places[point] * self.scale + self.shifts.get(point, 0j)

    def half(self, body: str) -> float:
        """Half the thickness a body is drawn with, pt."""
        return half_thickness(self.depicts.get(body, ""))

    def size(self, body: str) -> float:
        """The length of a body, pt; a particle counts as a small one."""
        outline = self.measured.outline(self.measured.system.body(body))
        return max(60.0, *(abs(b - a) * self.scale for a in outline for b in outline))

    def rest(self, element: Element) -> Spot:
        """Where a line begins at an element's point: at the edge of a block drawn about it."""
        spot = self.spot(element.at)
        block = self.blocks.get(element.body)
        force = self.measured.system.force(element.forces[0])
        if block is None or not self.measured.has(force.direction):
            return spot
        unit = heading(self.measured.number(force.direction))
        if pushes(self.measured.system, element):  # it stands behind its point
            unit = -unit
        return spot + unit * block.reach(unit)

    def ways(self, element: Element) -> list[complex]:
        """The steps along the body that lead away from an element's point (pt)."""
        body = self.measured.system.body(element.body)
        at = self.measured.places[element.at]
        return [way * self.scale for way in ways_out(self.measured.outline(body), at)]

    # Hinges

    def _hinge(self, element: Element) -> None:
        pin, ways = self.spot(element.at), self.ways(element)
        shown = self.depicts.get(element.id, "").lower()
        tag = f"support:{element.id}"
        body = self.depicts.get(element.body, "").lower()
        if len(ways) != 1 or "fulcrum" in shown:
            self._wedge(pin, self.half(element.body), tag)
            self.field.add(circle(pin, 1.6, MEDIUM, tag))
            return
        way = ways[0]
        if "arm" in body or any(word in shown for word in ("elbow", "shoulder", "knee", "joint")):
            self._limb_joint(pin, element, "forearm" in body or "elbow" in shown, tag)
            return
        self.pins[element.at] = parts.PIN
        self._bracket(pin, self._bracket_normal(element, shown, way), tag)

    def _bracket_normal(self, element: Element, shown: str, way: complex) -> float:
        """The outward normal of the face a hinge is fixed to."""
        for word, normal in _FACES.items():
            if word in shown:
                return normal
        sideways = 0.0 if way.real > 0 else 180.0
        if "wall" in shown:
            return sideways
        if self._stands_on_ground(element.body):
            return 90.0
        if abs(way.real) > 0.35 * abs(way):
            return sideways
        return 90.0 if way.imag > 0 else 270.0

    def _stands_on_ground(self, body: str) -> bool:
        """Whether rollers or surfaces push the body up and no cable holds it."""
        elements = [e for e in self.measured.system.elements if e.body == body]
        pushed = any(
            e.surface is not None and abs(self.measured.number(e.surface) - 90.0) < 1.0
            for e in elements
        )
        return pushed and not any(e.kind == Kind.CABLE for e in elements)

    def _bracket(self, pin: Spot, normal: float, tag: str) -> None:
        face = pin - heading(normal) * _WALL_GAP
        self.field.add(*lug(pin, face, tag))
        self.surfaces.append(Surface(face, normal, _FACE, _FACE))

    def _wedge(self, spot: Spot, half: float, tag: str) -> None:
        tip = spot - 1j * half
        self.field.add(*fulcrum(tip, _WEDGE, tag))
        self.surfaces.append(Surface(tip - 1j * _WEDGE, 90.0, 24.0, 24.0))

    def _limb_joint(self, pin: Spot, element: Element, elbow: bool, tag: str) -> None:
        self.pins[element.at] = 4.0
        self.field.add(*limb.joint(pin, 4.0, tag))
        if "knee" in f"{element.name} {self.depicts.get(element.id, '')}":
            self.field.add(*limb.bone(pin, pin - 46.0, tag, 1.3))
        if elbow:
            top = pin + 1j * max(0.62 * self.size(element.body), 55.0)
            self.field.add(*limb.bone(pin, top, tag))

    def _built_in(self, element: Element) -> None:
        """A body's end held fast in a wall, a floor or a ceiling, square to its axis."""
        ways = self.ways(element)
        if ways:
            out = ways[0] / abs(ways[0])
            spot, half = self.spot(element.at), self.half(element.body)
            self.field.add(*parts.built_in(spot, out, half, f"support:{element.id}"))
            self.surfaces.append(Surface(spot, bearing(out), _FACE, _FACE))

    # Surfaces

    def _roller(self, element: Element) -> None:
        normal = self._normal(element)
        top = self.spot(element.at) - heading(normal) * self._depth(element, normal)
        self.field.add(*roller(top, normal, f"support:{element.id}"))
        face = top - heading(normal) * ROLLER_HEIGHT
        self.surfaces.append(Surface(face, normal, _FACE, _FACE))

    def _contact(self, element: Element) -> None:
        normal = self._normal(element)
        spot, tag = self.spot(element.at), f"support:{element.id}"
        words = f"{element.name} {self.depicts.get(element.id, '')}".lower()
        if "fulcrum" in words or "pivot" in words:
            self._wedge(spot, self.half(element.body), tag)
            return
        face = spot - heading(normal) * self._depth(element, normal)
        if "edge" in words:
            self._edge(face, normal)
        elif 5.0 < normal % 90.0 < 85.0 and element.body in self.blocks and normal < 180.0:
            self._slope(element, face, normal)
        else:
            self.surfaces.append(Surface(face, normal, _FACE + 6.0, _FACE + 6.0))

    def _slope(self, element: Element, face: Spot, normal: float) -> None:
        """An inclined plane under a block, with its angle at the foot."""
        surface = Surface(face, normal, *((44.0, 30.0) if normal < 90.0 else (30.0, 44.0)))
        foot, top = sorted(surface.ends, key=lambda spot: spot.imag)
        way = top - foot
        self.field.add(*parts.wedge(foot, way.real, way.imag, f"incline:{element.id}"))
        assert element.surface is not None  # it has a normal
        for part, factor in angle_of(element.surface).multiples:
            if isinstance(part, Name) and abs(factor) == 1:
                level = 0.0 if way.real > 0 else 180.0
                value = self.measured.number(part)
                if apart(bearing(way), level + (value if way.real > 0 else -value)) < 0.5:
                    text = self.givens.get(part.id, part)
                    draw_angle(
                        self.field, foot, level, bearing(way), text, part.id, reference_drawn=True
                    )
                    self.inclines.add(part.id)

    def _edge(self, corner: Spot, normal: float) -> None:
        """The outer edge of a wall: its level top, and its face down to the lowest point."""
        lowest = min(place.imag for place in self.measured.places.values()) * self.scale
        fall = max(corner.imag - lowest, _FACE)
        left = 90.0 < normal < 270.0
        top, face = (0.0, 2.0 * _FACE), (fall, 0.0)
        if not left:
            top, face = top[::-1], face[::-1]
        self.surfaces.append(Surface(corner, 90.0, *top))
        self.surfaces.append(Surface(corner, 180.0 if left else 0.0, *face))

    def _normal(self, element: Element) -> float:
        return self.measured.number(element.surface) % 360.0 if element.surface else 90.0

    def _depth(self, element: Element, normal: float) -> float:
        """How far behind the point a body's outline touches its surface (pt)."""
        block = self.blocks.get(element.body)
        if block:
            return block.depth(heading(normal))
        ways = self.ways(element)
        if not ways:
            return 0.0
        unit, out = ways[0] / abs(ways[0]), heading(normal)
        if len(ways) == 1 and abs(dot(unit, out)) >= _END_ON:
            self.cuts[element.at] = out
            return 0.0
        return self.half(element.body) * abs(dot(unit * 1j, out))


def own_weight(element: Element, body: Body) -> bool:
    """Whether a weight is that of the body itself, not of something it carries."""
    noun = element.name.removeprefix("the ").strip()
    return element.kind == Kind.WEIGHT and noun == body.name.removeprefix("the ").strip()


def outline_of(supports: Supports, body: Body) -> tuple[Shape, ...]:
    """A body's own strokes, stopped short of its pins and cut to its surfaces."""
    shown = supports.depicts.get(body.id, "").lower()
    spots = [supports.spot(name) for name in body.outline]
    tag = f"body:{body.id}"
    if len(spots) < 2:
        block = supports.blocks.get(body.id)
        if block:
            return block.drawn(spots[0], tag)
        if spots and "head" in shown:
            return limb.head(spots[0], 18.0, 1, tag)
        return (parts.ring(spots[0], tag),) if spots else ()
    if "forearm" in shown:
        return limb.forearm(spots[0], spots[-1], tag)
    if "lower leg" in shown or shown == "leg":
        return limb.lower_leg(spots[0], spots[-1], tag, _toes(spots))
    for end, inner in ((0, 1), (-1, -2)):
        short = supports.pins.get(body.outline[end], 0.0)
        way = spots[inner] - spots[end]
        spots[end] += way / abs(way) * short
    cuts = (supports.cuts.get(body.outline[0], 0j), supports.cuts.get(body.outline[-1], 0j))
    half = supports.half(body.id)
    if "ladder" in shown:
        return parts.ladder((spots[0], spots[-1]), half, tag, cuts)
    return parts.bar(spots, half, tag, cuts)


def _toes(spots: list[Spot]) -> int:
    """Which side the toes of a leg are on: those of a hanging leg to the right."""
    way = spots[-1] - spots[0]
    return 1 if way.real >= 0 else -1
