"""Supports and cables of a situation: which part each element is drawn as, and where it ends."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from probgen.figures.measured.survey import Survey, pushes, ways_out
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    MEDIUM,
    Spot,
    bearing,
    circle,
    dot,
    heading,
)
from probgen.figures.parts import limb, mechanical, solid
from probgen.figures.parts.ground import (
    Surface,
    backing,
    fulcrum,
    hatched,
    joined,
    lug,
)
from probgen.figures.situation import pulley
from probgen.figures.situation.block import blocks_of, shifts_of
from probgen.figures.situation.body import (
    arms_of,
    corners_of,
    half_breadth,
    half_thickness,
    is_closed,
    is_round,
    is_upright,
    limb_of,
)
from probgen.figures.situation.contact import (
    draw_contact,
    draw_roller,
    draw_source,
    ground_under,
    stands_for,
)
from probgen.figures.situation.line import draw_lines
from probgen.figures.situation.pulley import hoists_of
from probgen.quantities.expression import Number
from probgen.statics.system import Body, Element, Kind

_WALL_GAP: Final = 11.0  # from a hinge's pin to the wall's face, pt
_FACE: Final = 14.0  # how far a face reaches beyond what it holds, pt
_WEDGE: Final = 17.0  # height of a fulcrum, pt
_FACES: Final = {"floor": 90.0, "ground": 90.0, "bracket": 90.0, "ceiling": 270.0}
_END_ON: Final = 0.6  # least |cosine| between axis and normal for an end cut to the surface


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
        self.hoists = hoists_of(measured)  # ropes that tie two particles
        ropes = {h.second.body: (h.first.body, pulley.apart(h, self.blocks)) for h in self.hoists}
        self.shifts = shifts_of(measured, self.blocks, ropes, scale)  # point: its step, pt
        self.wheels = {
            pull.body: pulley.WHEEL for h in self.hoists if h.tackle for pull in (h.first, h.second)
        }  # particles drawn as pulleys, with their radius
        self._halves: dict[str, float] = {}
        self.posts: list[Spot] = []  # where cords are tied to posts
        self.lines: dict[str, tuple[Spot, Spot]] = {}  # line: from where to where it is drawn
        self.inclines: set[str] = set()  # angles labelled at the foot of a slope

    def draw(self) -> None:
        """Draw every support, then the lines that pull or push, then ground and walls."""
        for element in self.measured.system.elements:
            if not self.inner(element):
                self._support(element)
            elif element.kind == Kind.HINGE:
                self._joint_between(element)
        draw_lines(self)
        ground_under(self)
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
                draw_roller(self, element)
            case Kind.CONTACT | Kind.ROUGH:
                draw_contact(self, element)
            case Kind.FORCE if stands_for(self, element):
                draw_source(self, element)

    def inner(self, element: Element) -> bool:
        """Whether an element acts between two bodies of the system."""
        return any(self.measured.system.force(id).pair for id in element.forces)

    def _joint_between(self, element: Element) -> None:
        """A pin in the body drawn first; the other one stops short of it too."""
        if element.at not in self.pins:
            self.pins[element.at] = mechanical.PIN
            self.field.add(mechanical.pin(self.spot(element.at), f"support:{element.id}"))

    def spot(self, point: str) -> Spot:
        """A point's place on paper."""
        return self.measured.places[point] * self.scale + self.shifts.get(point, 0j)

    def half(self, body: str) -> float:
        """Half the thickness a body is drawn with, pt; 0 where its axis is its outline."""
        if body not in self._halves:
            self._halves[body] = self._half(body)
        return self._halves[body]

    def _half(self, body: str) -> float:
        shown, own = self.depicts.get(body, ""), self.measured.system.body(body)
        if is_closed(own) or is_round(shown):
            return 0.0
        if is_upright(shown) and len(own.outline) > 1:
            return half_breadth(self.measured, own) * self.scale
        return half_thickness(shown)

    def corners(self, body: Body) -> list[Spot]:
        """The corners of a body drawn as a solid, none for another."""
        places = corners_of(self.measured, body, self.depicts.get(body.id, ""))
        return [place * self.scale for place in places]

    def pulled(self, body: Body) -> complex:
        """The unit step in which a particle's lines pull it together."""
        whole = sum(self._pulls(body.id), 0j)
        return whole / abs(whole) if abs(whole) > 0.1 else 1j

    def is_kneecap(self, body: str) -> bool:
        """Whether a body is shown as a kneecap."""
        return limb_of(self.depicts.get(body, "")) == "kneecap"

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
        return spot + block.grip(unit)

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
        if is_round(body) and ways:
            self._axle(pin, element, tag)
            return
        if limb_of(body):
            self._limb_joint(pin, element, limb_of(body), tag)
            return
        joints = ("elbow", "shoulder", "knee", "joint", "hip")
        if any(word in shown for word in joints) and "fulcrum" not in shown:
            part = "forearm" if "elbow" in shown else "trunk" if "hip" in shown else ""
            self._limb_joint(pin, element, part, tag)
            return
        corners = self.corners(self.measured.system.body(element.body))
        if corners:
            middle = sum(corners, 0j) / len(corners)
            self._bracket(pin, 0.0 if middle.real > pin.real else 180.0, tag)
            return
        if len(ways) != 1 or "fulcrum" in shown:
            self.wedge(pin, self.half(element.body), tag)
            self.field.add(circle(pin, 1.6, MEDIUM, tag))
            return
        way = ways[0]
        self.pins[element.at] = mechanical.PIN
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

    def wedge(self, spot: Spot, half: float, tag: str) -> None:
        tip = spot - 1j * half
        self.field.add(*fulcrum(tip, _WEDGE, tag))
        self.surfaces.append(Surface(tip - 1j * _WEDGE, 90.0, 24.0, 24.0))

    def _axle(self, pin: Spot, element: Element, tag: str) -> None:
        """The axle of a drum on a stand."""
        body = self.measured.system.body(element.body)
        _, radii, _ = arms_of(self.measured, body, self.depicts.get(body.id, ""))
        radius = max(radii, default=0.0) * self.scale
        height = radius + 30.0
        self.field.add(*solid.stand(pin, radius, height, tag))
        self.surfaces.append(Surface(pin - 1j * height, 90.0, 26.0, 26.0))

    def _limb_joint(self, pin: Spot, element: Element, part: str, tag: str) -> None:
        """A joint's ring, and the limb beyond it."""
        if part == "kneecap":
            ways = self._pulls(element.body)
            if len(ways) == 2:
                self.field.add(*limb.knee(pin, ways[0], ways[1], tag))
            return
        self.pins[element.at] = 4.0
        self.field.add(*limb.joint(pin, 4.0, tag))
        upper = 1j * max(0.62 * self.size(element.body), 55.0)
        knee = "knee" in f"{element.name} {self.depicts.get(element.id, '')}"
        beyond = {"forearm": upper, "foot": 6.0 + 52j, "head": -34j, "trunk": -8.0 - 46j,
                  "pelvis": -52.0 - 70j}
        way = -46 + 0j if knee else beyond.get(part)
        if way is not None:
            self.field.add(*limb.bone(pin, pin + way, tag, 1.0 if part == "forearm" else 1.3))

    def _pulls(self, body: str) -> list[complex]:
        """The unit steps of the lines that pull at a particle, the upper first."""
        elements = [e for e in self.measured.system.elements if e.body == body]
        ways = [self.measured.direction_of(e) for e in elements if e.kind == Kind.ROPE]
        return sorted((heading(w) for w in ways if w is not None), key=lambda way: -way.imag)

    def _built_in(self, element: Element) -> None:
        """A body's end held fast in a wall, a floor or a ceiling, square to its axis."""
        ways = self.ways(element)
        if ways:
            out = ways[0] / abs(ways[0])
            spot, half = self.spot(element.at), self.half(element.body)
            self.field.add(*mechanical.built_in(spot, out, half, f"support:{element.id}"))
            self.surfaces.append(Surface(spot, bearing(out), _FACE, _FACE))

    def course(self, each: pulley.Hoist) -> pulley.Course:
        """Where the rope between two particles runs."""
        ends = [self.rest(each.first), self.rest(each.second)]
        bodies = (each.first.body, each.second.body)
        for i, body in enumerate(bodies if each.alike else ()):
            block = self.blocks.get(body)
            if block and block.shape == "puller":  # the other part passes in front of the person
                beside = ends[i].real + block.facing * 2 * pulley.WHEEL
                ends[1 - i] = complex(beside, ends[1 - i].imag)
        return pulley.course(each, ends[0], ends[1])

    def normal(self, element: Element) -> float:
        return self.measured.number(element.surface) % 360.0 if element.surface else 90.0

    def depth(self, element: Element, normal: float) -> float:
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
