"""Particles in a situation: blocks where they rest or are pushed, rings where lines meet."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Final

from probgen.bank.depiction import Depictions, Look
from probgen.figures.measured.survey import Survey, mass_name, pushes, spans
from probgen.figures.measured.wedge import HALF, Faced, faced, partners
from probgen.figures.paper.scene import (
    FINE,
    MEDIUM,
    Path,
    Shape,
    Spot,
    Text,
    Tone,
    dot,
    heading,
    polygon,
)
from probgen.figures.paper.tag import Tag
from probgen.figures.paper.type_metrics import extent
from probgen.figures.parts import goods, mechanical, person, solid, works
from probgen.figures.situation.datum import datum_of
from probgen.figures.situation.linked import (
    HOLDS,
    SURFACES,
    carriers,
    free,
    is_stated,
    level,
    links,
)
from probgen.figures.situation.shape import BLOCKS, look_of
from probgen.quantities.expression import Number
from probgen.statics.system import Body, Element, ForcePart, Kind, System

APART: Final = 122.0
"""Between particles that do not touch, pt."""

_TIED: Final = 66.0  # between particles that a line ties to each other, pt
_BOARD: Final = 46.0 + 2.6j  # half the width and height of a board that somebody is on, pt
_PALLET: Final = 27.0 + 11.5j  # and of a loaded pallet
_TROUGH: Final = 27.0 + 15.5j  # and of a trough
_BRICK: Final = 26.0 + 9.5j  # and of a brick
_PANEL: Final = 3.6 + 36.0j  # and of a panel from its edge, pt
_ROUND: Final = (Look.BALL, Look.PIPE)
_PERSON: Final = 11.0 + 29.0j  # half the width and height of a person, pt
_SITTER: Final = 14.0 + 18.0j  # half the width and height of one who sits, pt
_SEATED: Final = 0.56  # height of one who sits, of the same person standing
_PAIL: Final = 13.0 + 16.5j  # half the width and height of a pail with its handle, pt
_BAR_END: Final = 20.0 + 3.0j  # half of what the end of a bar takes on a wedge, pt


@dataclass(frozen=True, slots=True)
class Block:
    """A particle drawn with an extent: half its width and height (pt), and how it is turned.

    up: unit step square to what it rests on; look: what it is drawn as, a plain crate or another;
    facing: the side a person holds a line on, 1 right, 0 for nobody who does; faced: the outline
    of a wedge, or of a block cut to one; lift: from its point to its middle, pt; ahead:
    the unit step in which a panel or a trough is about to slide; boarded: whether it has posts.
    """

    half: complex
    up: complex
    look: Look = Look.CRATE
    facing: int = 0
    faced: Faced | None = None
    lift: complex = 0j
    ahead: complex = 0j
    boarded: bool = False

    @property
    def level(self) -> bool:
        """Whether its top is a level place to put something on."""
        return self.look is Look.CRATE and abs(self.up - 1j) < 0.01

    def grip(self, way: complex) -> Spot:
        """Where a line that leaves in a direction is fixed, from its point."""
        return self.lift + self._grip(way)

    def _grip(self, way: complex) -> Spot:
        if self.faced:
            return self.faced.grip(way)
        height = 2 * self.half.imag
        if self.look is Look.SITTER:
            height /= _SEATED
            return complex(0.27 * self.facing, 0.33 - 0.5 * _SEATED) * height
        if self.facing:
            return complex(0.27 * self.facing, 0.12) * height
        return way * self.reach(way)

    def reach(self, way: complex) -> float:
        """From the middle to the edge in a direction (pt)."""
        if self.look in _ROUND:
            return self.half.real
        out, along = abs(dot(way, self.up)), abs(dot(way, 1j * self.up))
        return min(
            self.half.imag / out if out > 1e-9 else math.inf,
            self.half.real / along if along > 1e-9 else math.inf,
        )

    @property
    def face(self) -> Spot:
        """From its point to the middle of the face its label is set on."""
        if self.faced:
            return self.faced.clear
        raised = {Look.BUCKET: -mechanical.BAIL / 2, Look.SLED: goods.RUNNER / 2}
        return self.lift + 1j * raised.get(self.look, 0.0)

    def depth(self, normal: complex) -> float:
        """From the middle back to the face it touches (pt)."""
        return self.reach(-normal)

    def drawn(self, point: Spot, tag: Tag) -> tuple[Shape, ...]:
        """Its strokes, by its point."""
        spot = point + self.lift
        if self.look in _ROUND:
            return goods.ball(spot, self.half.real, tag, hollow=self.look is Look.PIPE)
        if self.faced:
            outline = [spot + corner for corner in self.faced.corners]
            return (solid.table_leg if self.look is Look.LEG else solid.box)(outline, tag)
        feet, height = spot - 1j * self.half.imag, 2 * self.half.imag
        if self.look is Look.SITTER:
            return person.sitting(feet, height / _SEATED, self.facing or 1, tag)
        if self.facing:
            return person.holding(feet, height, self.facing, tag)
        if self.look is Look.PERSON:
            return person.standing(feet, height, tag)
        if self.look is Look.BUCKET:
            return mechanical.pail(spot, self.half, tag)
        if self.look is Look.PALLET:
            return goods.pallet(spot, self.half, self.up, tag)
        if self.look is Look.PANEL:
            return works.panel(spot, self.half, self.ahead, tag)
        if self.look is Look.TROUGH:
            return goods.trough(spot, self.half, self.up, self.ahead, tag)
        if self.look is Look.SLED:
            return goods.sled(spot, self.half, tag)
        return self._box(spot, tag)

    def _box(self, spot: Spot, tag: Tag) -> tuple[Shape, ...]:
        """A plain block about its middle, or a crate with a post at either end."""
        w, h = self.up * -1j * self.half.real, self.up * self.half.imag
        corners = (spot - w - h, spot + w - h, spot + w + h, spot - w + h)
        body = polygon(corners, MEDIUM, tag, tone=Tone.BODY)
        if not self.boarded:
            return (body,)
        inner = w * (1.0 - mechanical.CORNER / self.half.real)
        posts = tuple((spot + side * inner - h, spot + side * inner + h) for side in (-1, 1))
        return body, Path(posts, FINE, tag)


def blocks_of(
    measured: Survey, depicts: Depictions, givens: Mapping[str, Number]
) -> dict[str, Block]:
    """The particles drawn as blocks: those a template says are, and where it says nothing those
    that rest on something, that no line holds, or that another one hangs from.
    """
    found = {}
    loaded = {other for body, (other, _) in links(measured).items() if _hangs(measured, body)}
    for body in measured.system.bodies:
        if len(body.outline) != 1:
            continue
        elements = [e for e in measured.system.elements if e.body == body.id]
        weighs = any(e.kind == Kind.WEIGHT for e in elements)
        look = depicts.bodies.get(body.id)
        asked, other = look in BLOCKS, look is not None and look not in BLOCKS
        rests = [e for e in elements if e.kind in SURFACES]
        held = any(e.kind in HOLDS and not pushes(e) for e in elements)
        if weighs and not other and (asked or rests or not held or body.id in loaded):
            found[body.id] = _block(measured, look, elements, rests, givens)
    return {**found, **_at_wedges(measured, depicts, givens)}


def _hangs(measured: Survey, body: str) -> bool:
    """Whether a single line holds a particle that is tied to another: it hangs from that, and is no
    knot between two lines.
    """
    elements = [e for e in measured.system.elements if e.body == body]
    return sum(e.kind in HOLDS and not pushes(e) for e in elements) == 1


def _at_wedges(
    measured: Survey, depicts: Depictions, givens: Mapping[str, Number]
) -> dict[str, Block]:
    """The wedges, as long as what they bear is broad, and the blocks that are cut to them."""
    found = {}
    bodies = measured.system.bodies if depicts.wedges else ()
    halves = {b.id: _half(measured, b, look_of(depicts, b.id), givens) for b in bodies}
    for body in bodies:
        half = halves[body.id]
        if body.id in depicts.wedges:
            borne = (other.body for other in partners(measured, body).values())
            half = max((halves[id] for id in borne), key=lambda size: size.real, default=HALF)
        look = look_of(depicts, body.id)
        shape = faced(measured, body, look, depicts.wedges, half)
        if shape:
            top = max(corner.imag for corner in shape.corners)
            kind = look if look in (Look.WEDGE, Look.LEG) else Look.CRATE
            if look is Look.LEG:
                shape = replace(shape, clear=solid.table_top(shape.corners).centre)
            found[body.id] = Block(complex(half.real, top), 1j, kind, faced=shape)
    return found


def _half(measured: Survey, body: Body, look: Look, givens: Mapping[str, Number]) -> complex:
    """Half the width and height (pt) of a block with its weight on it; less for a bar's end."""
    if len(body.outline) != 1 or look is Look.LEG:
        return solid.LEG if look is Look.LEG else _BAR_END
    weights = (e for e in measured.system.elements if e.kind is Kind.WEIGHT and e.body == body.id)
    rooms = [extent(_text(measured, weight, givens)) for weight in weights][:1]
    width = max((room.width + 14.0 for room in rooms), default=0.0) / 2
    height = max((room.height + room.depth + 12.0 for room in rooms), default=0.0) / 2
    return complex(max(width, HALF.real), max(height, HALF.imag))


def _block(
    measured: Survey, look: Look | None, elements: list[Element], rests: list[Element],
    givens: Mapping[str, Number],
) -> Block:  # fmt: skip
    weights = [e for e in elements if e.kind == Kind.WEIGHT]
    up = 1j
    if rests and rests[0].surface is not None:
        up = heading(measured.number(rests[0].surface))
        up = 1j if up.imag < -0.01 else up
    if look in (Look.PERSON, Look.SITTER) and abs(up.real) < 0.1:
        standing = _person(measured, elements)
        return standing if look is Look.PERSON else replace(standing, half=_SITTER, look=look)
    room = extent(_text(measured, weights[0], givens))
    width, height = room.width + 9.0, room.height + room.depth + 9.0
    if look is Look.BUCKET and not rests:
        return Block(_PAIL, 1j, look)
    if look is Look.PALLET:
        return Block(_PALLET, up, look)
    if look is Look.TROUGH:
        return Block(_TROUGH, up, look, ahead=_about_to_slide(measured, rests))
    if look is Look.BRICK:
        return Block(_BRICK, up, look)
    if look is Look.BOARD:
        return Block(_BOARD, up)
    turn = abs(up.real)
    across, high = width * abs(up.imag) + height * turn, width * turn + height * abs(up.imag)
    if look in _ROUND:
        return Block(complex(1, 1) * 0.5 * math.hypot(width, height), up, look)
    if look is Look.PANEL:
        return Block(_PANEL, 1j, look, ahead=_about_to_slide(measured, rests))
    if look is Look.SLED:
        return Block(complex(width, height + goods.RUNNER) / 2, 1j, look)
    boards = 2.0 * mechanical.CORNER if look is Look.CRATE else 0.0
    half = complex(max(across + boards, 24.0), max(high, 16.0)) / 2
    return Block(half, up, boarded=look is Look.CRATE)


def _person(measured: Survey, elements: list[Element]) -> Block:
    """A person standing, who holds what line there is."""
    pulls = [e for e in elements if e.kind in (Kind.ROPE, Kind.CABLE)]
    ways = [measured.direction_of(pull) for pull in pulls]
    known = [heading(way) for way in ways if way is not None]
    if not known or known[0].imag < -0.5:
        return Block(_PERSON, 1j, Look.PERSON)
    return Block(_PERSON, 1j, Look.PERSON, -1 if known[0].real < -0.1 else 1)


def _text(measured: Survey, weight: Element, givens: Mapping[str, Number]) -> Text:
    mass = mass_name(measured.system, weight)
    return datum_of(mass, givens) if mass else measured.labels.whole(weight.id)


def stacked(measured: Survey, ropes: Mapping[str, str]) -> Survey:
    """The survey with every particle that rests on another, or is tied to it, at its place, and
    every one that two bodies with extent grip, as tongs do, between their ends.

    ropes: by a body on a rope, the body at the other end.
    """
    places = dict(measured.places)
    below = carriers(measured)
    tied = {body: other for body, (other, _) in links(measured).items()}
    below = {**free(ropes, below), **tied, **below}
    points = {b.id: b.outline[0] for b in measured.system.bodies if len(b.outline) == 1}
    for body in sorted(points, key=lambda each: level(each, below)):
        carrier = below.get(body)
        if carrier in points:
            places[points[body]] = places[points[carrier]]
    for body, point in points.items():
        grips = [places[name] for name in _grips(measured.system, body)]
        if len(grips) > 1 and not is_stated(measured.system.points[point]):
            places[point] = sum(grips, 0j) / len(grips)
    return replace(measured, places=places)


def _grips(system: System, body: str) -> list[str]:
    """The points of bodies with extent that press on a particle."""
    pairs = [
        system.force(force.pair)
        for force in system.forces
        if force.body == body and force.pair and force.kind in SURFACES
    ]
    pressing = [pair for pair in pairs if len(system.body(pair.body).outline) > 1]
    return list(dict.fromkeys(pair.point for pair in pressing))


def shifts_of(
    measured: Survey,
    blocks: Mapping[str, Block],
    ropes: Mapping[str, tuple[str, complex]],
    scale: float,
    halves: Mapping[str, float] = MappingProxyType({}),
    apart: float = APART,
) -> dict[str, complex]:
    """How far the points of particles are moved on paper (pt), so that none hides another.

    What rests on another particle is set on it, what touches a wedge against its face; what only
    shares its place, or comes too near where no length is stated, is set beside it.
    ropes: by a body on a rope, the body at its other end and the step (pt) from there;
    scale: pt for each metre; halves: half the thickness of bars, pt; apart: between particles that
    do not touch, pt.
    """
    bodies = [body for body in measured.system.bodies if len(body.outline) == 1]
    shifts: dict[str, complex] = {}
    placed: list[Body] = []
    spots: dict[str, Spot] = {}
    closest = 1e-3 if spans(measured) else apart - 1.0
    below, ties = carriers(measured), links(measured)
    ends = free({one: other for one, (other, _) in ropes.items()}, below)
    tied_to = {**ends, **{one: other for one, (other, _) in ties.items()}}
    order = {**tied_to, **below}
    for body in sorted(bodies, key=lambda each: level(each.id, order)):
        point = body.outline[0]
        carrier = next((b for b in placed if b.id == below.get(body.id)), None)
        tied = next((b for b in placed if b.id == tied_to.get(body.id)), None)
        against = _against(measured, blocks, body, spots, scale, halves)
        if against is not None:
            shifts[point] = against - measured.places[point] * scale
        elif tied and not carrier:
            away = ropes[body.id][1] if body.id in ropes else 0j
            if body.id in ties:
                away = _beside(ties[body.id][1], blocks.get(tied.id))
            shifts[point] = shifts.get(tied.outline[0], 0j) + away
        elif carrier and body.id in blocks and carrier.id in blocks:
            lift = blocks[carrier.id].half.imag + blocks[body.id].half.imag
            shifts[point] = shifts.get(carrier.outline[0], 0j) + lift * 1j
        else:
            here = measured.places[point] * scale
            near = [spot for spot in spots.values() if abs(spot - here) < closest]
            if near:
                shifts[point] = max(spot.real for spot in near) + apart - here.real + 0j
        spots[body.id] = measured.places[point] * scale + shifts.get(point, 0j)
        placed.append(body)
    return shifts


def _against(
    measured: Survey, blocks: Mapping[str, Block], body: Body, spots: Mapping[str, Spot],
    scale: float, halves: Mapping[str, float],
) -> Spot | None:  # fmt: skip
    """Where a wedge, or what it bears, is on paper, face to face with what has its place there."""
    own = blocks.get(body.id)
    faces = own.faced.faces if own and own.faced else {}
    for id, other in partners(measured, body).items() if faces else ():
        face, borne = faces[id], blocks.get(other.body)
        if borne and borne.faced and other.body in spots:
            return spots[other.body] + borne.faced.faces[other.id].at - face.at
        if len(measured.system.body(other.body).outline) > 1:  # the end of a bar
            under = face.out * halves.get(other.body, 0.0)
            return measured.places[other.at] * scale - under - face.at
    return None


def _beside(pull: complex, holder: Block | None) -> complex:
    """The step to what a line ties to a particle and pulls in a direction (unit step); from the
    hands of somebody who holds the line.
    """
    if holder is None or not holder.facing:
        return -pull * _TIED
    return holder.grip(-pull) - pull * (_TIED - holder.half.real)


def _about_to_slide(measured: Survey, rests: list[Element]) -> complex:
    """The unit step against the friction, where data say which way that acts; 0: they do not."""
    ids = {element.id for element in rests}
    for force in measured.system.forces:
        known = force.part is ForcePart.FRICTION and measured.has(force.direction)
        if known and force.element in ids:
            return -heading(measured.number(force.direction))
    return 0j
