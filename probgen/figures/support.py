"""Supports and cables of a situation: which part each element is drawn as, and where it ends."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from probgen.figures import parts
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
from probgen.figures.placement import Field
from probgen.figures.scene import (
    MEDIUM,
    REFERENCE,
    Shape,
    Spot,
    bearing,
    circle,
    dot,
    heading,
    line,
)
from probgen.figures.survey import Survey, ways_out
from probgen.statics.system import Body, Element, Kind

_WALL_GAP: Final = 11.0  # from a hinge's pin to the wall's face, pt
_FACE: Final = 14.0  # how far a face reaches beyond what it holds, pt
_WEDGE: Final = 17.0  # height of a fulcrum, pt
_RISE: Final = 1.0  # the highest a cable is followed to its wall, in lengths of its body
_BROKEN: Final = 0.6  # how high one that rises further is drawn
_RUN: Final = 0.5  # how far a cable without a wall is followed, in lengths of its body
_FACES: Final = {"floor": 90.0, "ground": 90.0, "bracket": 90.0, "ceiling": 270.0}
_LINES: Final = (Kind.CABLE, Kind.ROPE, Kind.SPRING, Kind.STRUT)  # drawn as a line to an anchor
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
        self, measured: Survey, depicts: Mapping[str, str], scale: float, field: Field
    ) -> None:
        self.measured = measured
        self.depicts = depicts
        self.scale = scale
        self.field = field
        self.surfaces: list[Surface] = []
        self.cuts: dict[str, complex] = {}  # point: normal the end of a bar there is cut to
        self.pins: dict[str, float] = {}  # point: how far a bar stops short of it, pt

    def draw(self) -> None:
        """Draw every support, then the cables and muscles, then ground and walls."""
        system = self.measured.system
        for element in system.elements:
            match element.kind:
                case Kind.HINGE:
                    self._hinge(element)
                case Kind.FIXED:
                    self._built_in(element)
                case Kind.ROLLER:
                    self._roller(element)
                case Kind.CONTACT | Kind.ROUGH:
                    self._contact(element)
        for element in system.elements:
            if element.kind in _LINES and element.forces:
                self._cable(element)
            elif element.kind == Kind.MUSCLE:
                self._muscle(element)
        for surface in joined(self.surfaces):
            face, hatching = hatched(surface)
            self.field.add(face)
            self.field.add(hatching, solid=False)
            self.field.watch(backing(surface))

    def spot(self, point: str) -> Spot:
        """A point's place on paper."""
        return self.measured.places[point] * self.scale

    def half(self, body: str) -> float:
        """Half the thickness a body is drawn with, pt."""
        return half_thickness(self.depicts.get(body, ""))

    def size(self, body: str) -> float:
        """The length of a body, pt; a particle counts as a small one."""
        outline = self.measured.outline(self.measured.system.body(body))
        return max(60.0, *(abs(b - a) * self.scale for a in outline for b in outline))

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
        self.field.add(*parts.joint(pin, 4.0, tag))
        if "knee" in f"{element.name} {self.depicts.get(element.id, '')}":
            self.field.add(*parts.upper_arm(pin, pin - 46.0, tag))
        if elbow:
            top = pin + 1j * max(0.62 * self.size(element.body), 55.0)
            self.field.add(*parts.upper_arm(pin, top, tag))

    def _built_in(self, element: Element) -> None:
        """A body's end held fast in a wall, a floor or a ceiling, square to its axis."""
        ways = self.ways(element)
        if ways:
            normal = round(bearing(ways[0]) / 90.0) * 90.0 % 360.0
            self.surfaces.append(Surface(self.spot(element.at), normal, _FACE, _FACE))

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
            return
        self.surfaces.append(Surface(face, normal, _FACE, _FACE))

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
        ways = self.ways(element)
        if not ways:
            return 0.0
        unit, out = ways[0] / abs(ways[0]), heading(normal)
        if len(ways) == 1 and abs(dot(unit, out)) >= _END_ON:
            self.cuts[element.at] = out
            return 0.0
        return self.half(element.body) * abs(dot(unit * 1j, out))

    # Cables and muscles

    def _cable(self, element: Element) -> None:
        start, tag = self.spot(element.at), f"cable:{element.id}"
        if self._has_far_end(element):
            end = self.spot(element.toward)
            self.field.add(*parts.cable(start, end, tag))
            self._anchor(end, bearing(end - start), tag)
            return
        direction = self.measured.direction_of(element)
        if direction is None:
            return
        hit = self._wall_hit(start, direction, element)
        end = hit or start + heading(direction) * max(_RUN * self.size(element.body), 34.0)
        if hit is None:
            if heading(direction).imag > 0:
                self._anchor(end, direction, tag)
            else:
                self.field.add(*parts.break_mark(end, direction, 2.0, tag))
        self.field.add(*parts.cable(start, end, tag))

    def _has_far_end(self, element: Element) -> bool:
        """Whether the point a pull runs toward is named, and another than its own."""
        return bool(element.toward) and abs(self.spot(element.toward) - self.spot(element.at)) > 1.0

    def _wall_hit(self, start: Spot, direction: float, element: Element) -> Spot | None:
        """Where a cable meets a wall; one that would rise too high is drawn broken off."""
        unit = heading(direction)
        for place, surface in enumerate(self.surfaces):
            closing = dot(unit, heading(surface.normal))
            if closing > -0.05 or surface.normal == 90.0:
                continue  # it runs away from this face, or down to the ground
            reach = -surface.height(start) / closing
            size, rise = self.size(element.body), abs(unit.imag) * reach
            if rise > _RISE * size:
                end = start + unit * reach * _BROKEN * size / rise
                more = end + unit * 13.0
                self.field.add(line(end, more, REFERENCE, f"beyond:{element.id}"))
                return end
            self.surfaces[place] = surface.covering(start + unit * reach, _FACE)
            return start + unit * reach
        return None

    def _anchor(self, end: Spot, direction: float, tag: str) -> None:
        """Fix a cable's far end to a wall nearby, or to a ceiling or wall of its own."""
        for place, surface in enumerate(self.surfaces):
            if abs(surface.height(end)) <= 1.5 * _WALL_GAP:
                face = end - heading(surface.normal) * surface.height(end)
                self.surfaces[place] = surface.covering(face, _FACE)
                if abs(face - end) > 0.5:
                    self.field.add(line(face, end, MEDIUM, tag), circle(end, 1.5, MEDIUM, tag))
                return
        normal = round((direction + 180.0) / 90.0) * 90.0 % 360.0
        self.surfaces.append(Surface(end, normal, _FACE, _FACE))

    def _muscle(self, element: Element) -> None:
        start, tag = self.spot(element.at), f"muscle:{element.id}"
        if self._has_far_end(element):
            self.field.add(*parts.muscle(start, self.spot(element.toward), tag))
            return
        direction = self.measured.direction_of(element)
        if direction is None:
            return
        reach = 0.55 * self.size(element.body)
        unit = heading(direction)
        joints = [e for e in self.measured.system.elements if e.kind == Kind.HINGE]
        for joint in joints:  # it ends where it comes over the joint
            across = (self.spot(joint.at) - start).real
            if across * unit.real > 0 and abs(unit.real) * reach > abs(across) - 4.0:
                reach = max((abs(across) - 4.0) / abs(unit.real), 16.0)
        self.field.add(*parts.muscle(start, start + unit * reach, tag))


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
        return (circle(spots[0], 4.0, MEDIUM, tag),) if spots else ()
    if "forearm" in shown:
        return parts.forearm(spots[0], spots[-1], tag)
    for end, inner in ((0, 1), (-1, -2)):
        short = supports.pins.get(body.outline[end], 0.0)
        way = spots[inner] - spots[end]
        spots[end] += way / abs(way) * short
    cuts = (supports.cuts.get(body.outline[0], 0j), supports.cuts.get(body.outline[-1], 0j))
    half = supports.half(body.id)
    if "ladder" in shown:
        return parts.ladder((spots[0], spots[-1]), half, tag, cuts)
    return parts.bar(spots, half, tag, cuts)
