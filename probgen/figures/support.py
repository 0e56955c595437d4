"""Supports and cables of a situation: which part each element is drawn as, and where it ends."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from probgen.figures import hoist, limb, parts, solid
from probgen.figures.body import (
    arms_of,
    corners_of,
    half_breadth,
    half_thickness,
    is_closed,
    is_round,
    is_upright,
    limb_of,
)
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
from probgen.figures.hoist import hoists_of
from probgen.figures.line import draw_lines
from probgen.figures.particle import blocks_of, shifts_of
from probgen.figures.placement import Field
from probgen.figures.scene import (
    HEAVY,
    MEDIUM,
    Spot,
    apart,
    bearing,
    bounds,
    circle,
    dot,
    heading,
    line,
)
from probgen.figures.survey import Survey, pushes, ways_out
from probgen.quantities.expression import Name, Number
from probgen.statics.geometry import angle_of
from probgen.statics.system import Body, Element, Kind

_WALL_GAP: Final = 11.0  # from a hinge's pin to the wall's face, pt
_FACE: Final = 14.0  # how far a face reaches beyond what it holds, pt
_WEDGE: Final = 17.0  # height of a fulcrum, pt
_FACES: Final = {"floor": 90.0, "ground": 90.0, "bracket": 90.0, "ceiling": 270.0}
_EXERTS: Final = ("floor", "ground", "ceiling", "nut", "stone")  # forces shown by what exerts them
_ROUND: Final = 6.0  # radius of a branch or a rail, pt
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
        ropes = {h.second.body: (h.first.body, hoist.apart(h, self.blocks)) for h in self.hoists}
        self.shifts = shifts_of(measured, self.blocks, ropes)  # point: its step on paper, pt
        self.wheels = {
            pull.body: hoist.WHEEL for h in self.hoists if h.tackle for pull in (h.first, h.second)
        }  # particles drawn as pulleys, with their radius
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
        self._ground_under()
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
            case Kind.FORCE if self.stands_for(element):
                self._exerts(element)

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
        """Half the thickness a body is drawn with, pt; 0 where its axis is its outline."""
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

    def stands_for(self, element: Element) -> bool:
        """Whether a force is shown by what exerts it: a surface, or something bitten on."""
        words = f"{element.name} {self.depicts.get(element.id, '')}".lower().split()
        return any(word in _EXERTS for word in words)

    def _exerts(self, element: Element) -> None:
        """The surface, or the thing, that a force comes from."""
        direction = self.measured.direction_of(element)
        words = f"{element.name} {self.depicts.get(element.id, '')}".lower().split()
        if direction is None:
            return
        spot, back = self.spot(element.at), -heading(direction)
        if {"nut", "stone"} & set(words):
            self.field.add(circle(spot + back * 10.0, 5.5, MEDIUM, f"support:{element.id}"))
        elif element.body in self.wheels:
            face = spot + back * (self.wheels[element.body] + 9.0)
            self.field.add(line(spot, face, MEDIUM, f"support:{element.id}"))
            self.surfaces.append(Surface(face, direction, _FACE, _FACE))
        else:
            self.surfaces.append(Surface(spot, direction, _FACE + 8.0, _FACE + 8.0))

    def is_kneecap(self, body: str) -> bool:
        """Whether a body is shown as a kneecap."""
        return limb_of(self.depicts.get(body, "")) == "kneecap"

    def draw_posts(self) -> None:
        """The posts cords are tied to, from a ground below all that hangs between them."""
        if not self.posts:
            return
        ground = 1j * (bounds(self.field.shapes).bottom - 12.0)
        for top in self.posts:
            foot = top.real + ground
            self.field.add(*solid.post(foot, top + 5j, "support:post"))
            self.field.add(solid.rope_ring(top, "support:post"))
        left, right = min(t.real for t in self.posts), max(t.real for t in self.posts)
        middle = (left + right) / 2 + ground
        run = (right - left) / 2 + _FACE
        face, hatching = hatched(Surface(middle, 90.0, run, run))
        self.field.add(face)
        self.field.add(hatching, solid=False)
        self.field.watch(backing(Surface(middle, 90.0, run, run)))

    def _ground_under(self) -> None:
        """The floor under a solid that nothing else is said to hold."""
        held = {e.body for e in self.measured.system.elements if e.kind != Kind.WEIGHT}
        for body in self.measured.system.bodies:
            corners = self.corners(body)
            if corners and body.id not in held:
                low = min(corner.imag for corner in corners)
                feet = [corner for corner in corners if corner.imag - low < 0.5]
                left, right = min(f.real for f in feet), max(f.real for f in feet)
                run = (right - left) / 2 + _FACE
                self.surfaces.append(Surface(complex((left + right) / 2, low), 90.0, run, run))

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
            self._wedge(pin, self.half(element.body), tag)
            self.field.add(circle(pin, 1.6, MEDIUM, tag))
            return
        way = ways[0]
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
                  "pelvis": -46j}
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
            self.field.add(*parts.built_in(spot, out, half, f"support:{element.id}"))
            self.surfaces.append(Surface(spot, bearing(out), _FACE, _FACE))

    # Surfaces

    def _roller(self, element: Element) -> None:
        normal = self._normal(element)
        words = f"{element.name} {self.depicts.get(element.id, '')}".lower()
        if "wheel" in words:
            axle = self.spot(element.at)
            self.field.add(*solid.barrow_wheel(axle, f"support:{element.id}"))
            face = axle - heading(normal) * solid.WHEEL
            self.surfaces.append(Surface(face, normal, 1.5 * _FACE, 1.5 * _FACE))
            return
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
        if any(word in solid.ROUND for word in words.split()):
            centre = face - heading(normal) * _ROUND
            self.field.add(circle(centre, _ROUND, MEDIUM, tag), circle(centre, 0.6, MEDIUM, tag))
        elif "edge" in words:
            self._edge(face, normal)
        elif 5.0 < normal % 90.0 < 85.0 and element.body in self.blocks and normal < 180.0:
            self._slope(element, face, normal)
        else:
            self.surfaces.append(self._under(element, face, normal))

    def _under(self, element: Element, face: Spot, normal: float) -> Surface:
        """The surface a body touches: all along a solid, up to the edge below a rope's pulley."""
        surface = Surface(face, normal, _FACE + 6.0, _FACE + 6.0)
        for corner in self.corners(self.measured.system.body(element.body)):
            if abs(surface.height(corner)) < 0.5:
                surface = surface.covering(corner, _FACE)
        return self._to_pulley(element, surface)

    def _to_pulley(self, element: Element, surface: Surface) -> Surface:
        """A surface ended short of what hangs from a pulley at its edge, the pulley fixed to it."""
        for each in self.hoists:
            if each.tackle or each.alike or element.body not in (each.first.body, each.second.body):
                continue
            hanging = each.second if each.first.body == element.body else each.first
            run, block = self.course(each), self.blocks.get(hanging.body)
            width = block.half.real if block else 0.0
            reach = surface.reach(self.spot(hanging.at))
            side = 1 if reach > 0 else -1
            steep = abs(surface.tangent.real)
            edge = abs(reach) - (width + 5.0) / max(steep, 0.3)
            edge = min(edge, abs(surface.reach(run.centre)) - 2.0)
            corner = surface.at + surface.tangent * edge * side
            self.field.add(line(corner, run.centre, HEAVY, f"support:{each.first.id}"))
            back = surface.before if side > 0 else surface.after
            before, after = (back, edge) if side > 0 else (edge, back)
            surface = replace(surface, before=before, after=after)
            if abs(surface.normal - 90.0) < 1.0:
                away, above, under = (0.0, 0.0, 58.0) if side > 0 else (180.0, 58.0, 0.0)
                self.surfaces.append(Surface(corner, away, above, under))
        return surface

    def course(self, each: hoist.Hoist) -> hoist.Course:
        """Where the rope between two particles runs."""
        ends = [self.rest(each.first), self.rest(each.second)]
        bodies = (each.first.body, each.second.body)
        for i, body in enumerate(bodies if each.alike else ()):
            block = self.blocks.get(body)
            if block and block.shape == "puller":  # the other part passes in front of the person
                beside = ends[i].real + block.facing * 2 * hoist.WHEEL
                ends[1 - i] = complex(beside, ends[1 - i].imag)
        return hoist.course(each, ends[0], ends[1])

    def _slope(self, element: Element, face: Spot, normal: float) -> None:
        """An inclined plane under a block, with its angle at the foot."""
        reaches = (44.0, 30.0) if normal < 90.0 else (30.0, 44.0)
        surface = self._to_pulley(element, Surface(face, normal, *reaches))
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
