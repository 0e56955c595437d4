"""The stage: where everything in a situation is on paper, at one scale.

Places on paper are complex numbers in pt; nothing here draws.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Final

from probgen.bank.depiction import Depictions, Look, Source, Touch
from probgen.figures.measured.opening import Opening
from probgen.figures.measured.states import separate
from probgen.figures.measured.survey import Survey, pushes, ways_out
from probgen.figures.paper.scene import Spot, box_around, dot, heading
from probgen.figures.parts import solid
from probgen.figures.situation import pulley
from probgen.figures.situation.block import APART, Block, blocks_of, shifts_of
from probgen.figures.situation.datum import Datum, datum_of
from probgen.figures.situation.perch import perched
from probgen.figures.situation.pulley import Course, Hoist, hoists_of
from probgen.figures.situation.rope import WHEEL, turned
from probgen.figures.situation.shape import (
    ROUND,
    UPRIGHT,
    corners_of,
    half_breadth,
    half_thickness,
    is_closed,
    look_of,
)
from probgen.quantities.expression import Name, Number, Sum
from probgen.statics.system import Body, Element, Kind, System

_PUSH: Final = 30.0  # length of a given force's arrow, pt
_AT_RING: Final = 50.0  # of one at a particle that is no block
_BY_THEMSELVES: Final = 190.0  # between states with arrows between them, pt
_STANDS: Final = 36.0  # how high a rope is on a bollard that stands by itself, pt
_END_ON: Final = 0.5  # least |cosine| between axis and normal for an end cut to the surface
_AGAINST: Final = 0.9  # least cosine between two forces that act against each other
_BESIDE: Final = 12.0  # how far beside each other their arrows may be, pt
_BEHIND: Final = (Source.PUSH, Source.PEDAL, Source.VALVE)
_RIM: Final = 3.4  # radius of a ring with half of its line, pt


@dataclass(frozen=True, slots=True)
class Ends:
    """How bars end at what holds them, by the point they end at.

    gaps: how far a bar stops short of the point, pt; cuts: the outward normal (unit step) of the
    surface it is cut to; laps: by body and point, whether it ends in its upper half alone there, as
    it lies on another bar (1), or in its lower half (-1).
    """

    gaps: Mapping[str, float]
    cuts: Mapping[str, complex]
    laps: Mapping[tuple[str, str], int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Stage:
    """A survey with what it shows, set out on paper.

    depicts: what bodies and elements are drawn as; givens: the printed number of each quantity;
    scale: pt for each metre; blocks: the particles drawn as blocks, by body; hoists: the ropes
    that tie two particles; shifts: how far a point is moved from its place to scale, pt;
    halves: half the thickness a body is drawn with, pt, 0 where its axis is its outline.
    """

    measured: Survey
    depicts: Depictions
    givens: Mapping[str, Number]
    scale: float
    blocks: Mapping[str, Block]
    hoists: tuple[Hoist, ...]
    shifts: Mapping[str, complex]
    halves: Mapping[str, float]

    @property
    def system(self) -> System:
        return self.measured.system

    def look(self, body: str) -> Look:
        """What a body is drawn as."""
        return look_of(self.depicts, body)

    def text(self, name: Name | Number) -> Datum:
        """What a quantity is labelled with."""
        return datum_of(name, self.givens)

    def stated(self, name: Name) -> Name:
        """The given that a quantity is but for its sign, M for a couple -M; else itself."""
        for definition in self.measured.system.definitions:
            match definition.expression:
                case Sum(((-1, Name() as given),)) if definition.variable == name.id:
                    return given
        return name

    # Places

    def spot(self, point: str) -> Spot:
        """A point's place on paper."""
        return self.measured.places[point] * self.scale + self.shifts.get(point, 0j)

    def rest(self, element: Element) -> Spot:
        """Where a line begins at an element's point: at the edge of a block drawn about it."""
        spot = self.spot(element.at)
        block = self.blocks.get(element.body)
        direction = self.measured.direction_of(element)
        if direction is None:
            return spot
        if any(hoist.hauled and hoist.first is element for hoist in self.hoists):
            return spot + pulley.off_block(heading(direction))
        unit = heading(direction + 180.0 if self.behind(element) else direction)
        if self.look(element.body) is Look.BOLLARD:
            return spot + unit * solid.BOLLARD
        if block is None:  # what pushes a ring ends at its rim
            ringed = self.system.body(element.body).particle and self.behind(element)
            return spot + unit * _RIM if ringed and element.kind is Kind.FORCE else spot
        return spot + block.grip(unit)

    def on_paper(self, place: complex) -> Spot:
        """A place (m) on paper, moved with the particle that is there."""
        points = self.measured.places.items()
        at = next((name for name, p in points if name in self.shifts and abs(p - place) < 1e-9), "")
        return place * self.scale + self.shifts.get(at, 0j)

    def set_out(self, opening: Opening) -> tuple[Spot, float, float]:
        """Where an angle opens on paper, from which direction to which (degrees).

        That of a line at a particle opens at its edge, and behind it where the line pushes.
        """
        ways = opening.reference, opening.direction
        element = next((e for e in self.system.elements if opening.force in e.forces), None)
        if element is None or not self.system.body(element.body).particle:
            return self.on_paper(opening.at), *ways
        turn = 180.0 if self.behind(element) else 0.0
        return self.rest(element), ways[0] + turn, ways[1] + turn

    def has_far_end(self, element: Element) -> bool:
        """Whether the point a line runs toward is named, and another than its own."""
        if not element.toward:
            return False
        return abs(self.spot(element.toward) - self.spot(element.at)) > 1.0

    def behind(self, element: Element) -> bool:
        """Whether what exerts a force stands behind its point: it pushes."""
        return pushes(element) or self.depicts.forces.get(element.id) in _BEHIND

    def state_at(self, spot: Spot) -> int:
        """Which of the states that stand apart a spot belongs to, 0 where there is one."""
        states = self.measured.states
        if not states and all(body.particle for body in self.system.bodies) and self.shifts:
            states = tuple(separate(self.measured))
        outlines = [
            [self.spot(name) for id in bodies for name in self.system.body(id).outline]
            for bodies in states
        ]
        away = [abs(box_around(spots).nearest(spot) - spot) for spots in outlines]
        return away.index(min(away)) if away else 0

    def course(self, each: Hoist) -> Course:
        """Where the rope between two particles runs."""
        ends = [self.rest(each.first), self.rest(each.second)]
        bodies = (each.first.body, each.second.body)
        for i, body in enumerate(bodies if each.alike else ()):
            block = self.blocks.get(body)
            if block and block.facing:  # the other part passes in front of the person
                beside = ends[i].real + block.facing * 2 * WHEEL
                ends[1 - i] = complex(beside, ends[1 - i].imag)
        return pulley.course(each, ends[0], ends[1])

    # Bodies

    def corners(self, body: Body) -> list[Spot]:
        """The corners of a body drawn as a solid, none for another."""
        block = self.blocks.get(body.id)
        if block and block.faced:
            return [self.spot(body.outline[0]) + corner for corner in block.faced.corners]
        places = corners_of(self.measured, body, self.look(body.id))
        return [place * self.scale for place in places]

    def leads_into_truss(self, element: Element, step: complex) -> bool:
        """Whether a step (pt) from an element's point goes in among the members of its truss."""
        joints = [self.spot(name) for name in self.system.body(element.body).joints]
        middle = sum(joints, 0j) / max(len(joints), 1)
        return bool(joints) and dot(step, middle - self.spot(element.at)) > 0.0

    def squeezes(self, element: Element, step: complex) -> bool:
        """Whether a force's arrow (pt) would run into that of one against it: two hands, a vice."""
        for other in self.system.elements:
            way = self.measured.direction_of(other) if other.kind is Kind.FORCE else None
            if other is element or way is None:
                continue
            along = (self.spot(other.at) - self.spot(element.at)) / (step / abs(step))
            against = dot(heading(way), step) < -_AGAINST * abs(step)
            if against and 0.0 < along.real < 2.2 * abs(step) and abs(along.imag) < _BESIDE:
                return True
        return False

    def size(self, body: str) -> float:
        """The length of a body, pt; a particle counts as a small one."""
        outline = self.measured.outline(self.system.body(body))
        return max(60.0, *(abs(b - a) * self.scale for a in outline for b in outline))

    def ways(self, element: Element) -> list[complex]:
        """The steps along the body that lead away from an element's point (pt)."""
        outline = self.measured.outline(self.system.body(element.body))
        at = self.measured.places[element.at]
        return [way * self.scale for way in ways_out(outline, at)]

    def foot(self, body: Body) -> Spot:
        """Where what stands beside blocks, or people, has its foot: on the ground they stand on."""
        spot = self.spot(body.outline[0])
        bodies = [each for each in self.system.bodies if each.id in self.blocks]
        feet = [self.spot(b.outline[0]).imag - self.blocks[b.id].half.imag for b in bodies]
        return complex(spot.real, min(feet, default=spot.imag - _STANDS))

    def pulls(self, body: str) -> list[complex]:
        """The unit steps of the ropes that pull at a particle, the upper first."""
        elements = [e for e in self.system.elements if e.body == body]
        ways = [self.measured.direction_of(e) for e in elements if e.kind == Kind.ROPE]
        return sorted((heading(w) for w in ways if w is not None), key=lambda way: -way.imag)

    def wheel(self, body: str) -> float:
        """The radius of a particle drawn as a pulley block, pt; 0 for any other body."""
        tied = (h for h in self.hoists if h.tackle)
        return WHEEL if any(body in (h.first.body, h.second.body) for h in tied) else 0.0

    # What holds them

    def is_joint(self, element: Element) -> bool:
        """Whether a body turns about an element: a hinge, or a joint that pushes one way only."""
        contact = self.depicts.contacts.get(element.id)
        return element.kind is Kind.HINGE or contact is Touch.JOINT

    def is_inner(self, element: Element) -> bool:
        """Whether an element acts between two bodies of the system."""
        return any(self.system.force(id).pair for id in element.forces)

    def arrow(self, element: Element) -> float:
        """How long a given force's arrow is, pt: longer at a ring, where angles open between."""
        body = self.system.body(element.body)
        ring = body.particle and body.id not in self.blocks and not self.wheel(body.id)
        return _AT_RING if ring else _PUSH

    def slides(self, body: str) -> bool:
        """Whether a body slides over what it rests on, so that nothing holds it to its place."""
        return any(each.body == body and each.slides for each in self.system.elements)

    def normal(self, element: Element) -> float:
        """The outward normal of the surface an element is, degrees; a floor's by default."""
        return self.measured.number(element.surface) % 360.0 if element.surface else 90.0

    def cut(self, element: Element, normal: float) -> complex:
        """The normal (unit step) a bar's end is cut to at its surface; 0 where it lies along it."""
        ways, out = self.ways(element), heading(normal)
        if element.body in self.blocks or len(ways) != 1:
            return 0j
        return out if abs(dot(ways[0], out)) >= _END_ON * abs(ways[0]) else 0j

    def face(self, element: Element, normal: float) -> Spot:
        """Where a body's outline touches the surface an element is, of an outward normal."""
        spot, block = self.spot(element.at), self.blocks.get(element.body)
        if block and block.faced:
            return spot + block.faced.faces[element.id].at
        return spot - heading(normal) * self.depth(element, normal)

    def depth(self, element: Element, normal: float) -> float:
        """How far behind the point a body's outline touches its surface (pt)."""
        block = self.blocks.get(element.body)
        if block:
            return block.depth(heading(normal))
        ways = self.ways(element)
        if not ways or self.cut(element, normal):
            return 0.0
        return self.halves[element.body] * abs(dot(ways[0] / abs(ways[0]) * 1j, heading(normal)))


def stage_at(
    scale: float, measured: Survey, depicts: Depictions, givens: Mapping[str, Number]
) -> Stage:
    """A survey set out at a scale (pt for each metre)."""
    blocks, hoists = blocks_of(measured, depicts, givens), hoists_of(measured)
    ropes = {
        h.second.body: (h.first.body, pulley.apart(h, blocks, placed=pulley.is_placed(measured, h)))
        for h in hoists
    }
    halves = {
        body.id: _half(measured, body, look_of(depicts, body.id), scale)
        for body in measured.system.bodies
    }
    shifts = shifts_of(measured, blocks, ropes, scale, halves, _apart(measured, depicts))
    shifts |= _far_ends(measured.system, shifts)
    blocks = perched(measured, blocks, halves, turned(measured))
    return Stage(measured, depicts, givens, scale, blocks, hoists, shifts, halves)


def _apart(measured: Survey, depicts: Depictions) -> float:
    """How far apart particles are that do not touch, pt: more where they are states of their own
    and arrows are between them.
    """
    sides = set()
    for element in measured.system.elements:
        way = measured.direction_of(element) if element.kind is Kind.FORCE else None
        if way is not None:
            behind = pushes(element) or depicts.forces.get(element.id) is Source.PUSH
            sides.add((element.body, (heading(way).real > 0.0) != behind))
    states = [bodies[0] for bodies in separate(measured)]
    facing = any((one, True) in sides and (two, False) in sides for one, two in pairwise(states))
    return _BY_THEMSELVES if facing else APART


def _far_ends(system: System, shifts: Mapping[str, complex]) -> dict[str, complex]:
    """How far the points move that only lines of moved particles run to: with these."""
    others = {name for body in system.bodies for name in body.outline}
    others |= {each.at for each in system.elements}
    found: dict[str, set[complex]] = {}
    for each in system.elements:
        if each.toward and each.toward not in others:
            found.setdefault(each.toward, set()).add(shifts.get(each.at, 0j))
    together = {name: steps.pop() for name, steps in found.items() if len(steps) == 1}
    return {name: step for name, step in together.items() if step}


def _half(measured: Survey, body: Body, look: Look, scale: float) -> float:
    if is_closed(body) or look in ROUND:
        return 0.0
    if look in UPRIGHT and len(body.outline) > 1:
        return half_breadth(measured, body) * scale
    return half_thickness(look)
