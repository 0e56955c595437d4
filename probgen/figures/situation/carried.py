"""What bodies carry in a situation: weights as the things that weigh, distributed loads as rows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from probgen.bank.depiction import Load, Look, Manner, Thing
from probgen.figures.measured.survey import mass_name
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import centred, set_in
from probgen.figures.paper.scene import (
    LIGHT,
    MEDIUM,
    Box,
    Shape,
    Spot,
    bearing,
    bounds,
    dot,
    heading,
    line,
)
from probgen.figures.paper.tag import UNTAGGED, Tag, What
from probgen.figures.paper.type_metrics import Extent, extent
from probgen.figures.parts import goods, mechanical, solid
from probgen.figures.parts.ground import Surface
from probgen.figures.parts.load import PEOPLE, ROPE, Seat, draw_load, hangs
from probgen.figures.situation.block import Block
from probgen.figures.situation.datum import Datum
from probgen.figures.situation.fixture import room_under
from probgen.figures.situation.reeving import hung_from
from probgen.figures.situation.shape import LIMBS
from probgen.figures.situation.stage import Stage
from probgen.figures.situation.standing import beside_chest
from probgen.figures.situation.waterworks import well_of
from probgen.statics.system import Body, Element, Kind, System

_OVER: Final = (Look.PALLET, Look.TROUGH, Look.BRICK)  # whose label is set above them
_UP: Final = 0.6  # how far up a panel its label is set, of half its height
_LYING: Final = 0.86  # length of somebody who lies on a board, of the board's
_PLAIN: Final = Load(Thing.BLOCK, Manner.STANDS)  # what nothing is said of
_LONGEST_ROPE: Final = 120.0  # the furthest a load is let down, pt
_WAYS: Final = (90.0, 270.0, 0.0, 180.0)
_ACROSS: Final = 60.0  # the furthest it is from a point in a limb to its outline, pt
_ALIKE: Final = 13.0  # between the widths of a block and a load on it that are drawn as one, pt
_NARROW: Final = Extent(9.0, 7.0, 0.0)  # what takes the place of a label that is too wide


@dataclass(frozen=True, slots=True)
class Note:
    """A label still to be set: what it says, where it may lie, its tag, and what it is of.

    thing: the rectangle around that, None where nothing else could be meant.
    """

    text: Datum
    anchors: tuple[tuple[Spot, float], ...]
    tag: Tag
    thing: Box | None = None


class Burdens:
    """The loads of a situation; each drawn once, with the labels that are still to be set."""

    def __init__(self, stage: Stage, field: Field, surfaces: Sequence[Surface]) -> None:
        self.stage = stage
        self.system = stage.system
        self.field = field
        self.surfaces = surfaces
        self.loads: dict[str, list[Box]] = {}  # what else stands on or hangs from a body
        self.people: dict[str, list[Box]] = {}  # who is on a body
        self.hung: dict[str, float] = {}  # how far down what hangs from a body reaches, pt
        self.things: list[Box] = []  # all that has a mass of its own

    def weight(self, element: Element) -> Note | None:
        """Draw what a weight is that of; its label where that is not set on it."""
        body = self.system.body(element.body)
        text, tag = self._label(element)
        block = self.stage.blocks.get(body.id)
        if block:
            first = next(e for e in self.system.elements if _weighs(e, body))
            if block.level and element is not first:
                return self._on_block(element, block, text, tag)
            return self._block_label(element, block, text, tag)
        load = self.stage.depicts.loads.get(element.id)
        own = load is None and not body.particle and self.stage.look(body.id) in LIMBS
        if own or (load and load.thing is Thing.CENTRE):
            mark = mechanical.centre_mark(self.stage.spot(element.at), Tag(What.CENTRE, body.id))
            upon = self.stage.look(body.id) is Look.PELVIS  # whose own mass it is not
            beside = beside_chest(self.stage, body.id) or (upon and self._outside(element))
            self.field.add(*mark)
            return self._of(bounds(mark), Note(text, beside or self._either_side(element), tag))
        corners = self.stage.corners(body)
        if corners and load is None:
            return self._in_solid(element, corners, text, tag)
        if len(body.outline) == 1:
            return self._on_particle(element, load or _PLAIN, text, tag)
        return self._load(element, load or _PLAIN, self._seat(element), text, tag)

    def is_hung(self, element: Element) -> bool:
        """Whether an element is a weight that hangs from its body."""
        if element.kind is not Kind.WEIGHT or element.body in self.stage.blocks:
            return False
        load = self.stage.depicts.loads.get(element.id)
        particle = self.system.body(element.body).particle
        return particle or (load is not None and load.manner is Manner.HANGS)

    def _label(self, element: Element) -> tuple[Datum, Tag]:
        """What a weight is labelled with, and the label's tag."""
        mass = mass_name(self.system, element)
        if mass:
            return self.stage.text(mass), Tag(What.LABEL, mass.id)
        return self.stage.measured.labels.whole(element.id), Tag(What.LABEL, element.id)

    def _block_label(self, element: Element, block: Block, text: Datum, tag: Tag) -> Note | None:
        """The label of a particle drawn as a block: on its face, or beside it."""
        spot = self.stage.spot(element.at)
        if block.look in (Look.PERSON, Look.SITTER):
            box = bounds(block.drawn(spot, UNTAGGED))
            right, left = (
                complex(side, (spot + block.lift).imag) for side in (box.right, box.left)
            )
            return self._of(box, Note(text, ((right, 0.0), (left, 180.0)), tag))
        if block.look is Look.PANEL:
            return self._before_panel(element, block, text, tag)
        if block.faced and block.faced.beside:
            anchors = tuple((spot + at, way) for at, way in block.faced.beside)
            return self._of(bounds(block.drawn(spot, UNTAGGED)), Note(text, anchors, tag))
        over = block.look in _OVER
        if over or 2 * block.half.imag < extent(text).height:
            ways = (block.up,) if over else (-block.up, block.up)
            middle = spot + block.lift
            anchors = tuple((middle + way * block.half.imag, bearing(way)) for way in ways)
            return self._of(bounds(block.drawn(spot, UNTAGGED)), Note(text, anchors, tag))
        if block.look is Look.BUCKET:
            return self._in_pail(element, block, text, tag)
        face = centred(text, spot + block.face)
        if any(box.overlaps(face) for box in self.field.boxes):
            return Note(text, self._either_side(element), tag)
        self.field.add(set_in(text, face, tag))
        return None

    def _before_panel(self, element: Element, block: Block, text: Datum, tag: Tag) -> Note:
        """The label of a panel: before its face, above or below what presses on that."""
        own = [e for e in self.system.elements if e.body == element.body and e.surface]
        way = next((self.stage.normal(e) for e in own), 180.0)
        spot = self.stage.spot(element.at)
        rows = (_UP * block.half.imag * sign for sign in (1j, -1j))
        anchors = tuple((spot + block.half.real * heading(way) + row, way) for row in rows)
        return self._of(bounds(block.drawn(spot, UNTAGGED)), Note(text, anchors, tag))

    def _in_pail(self, element: Element, block: Block, text: Datum, tag: Tag) -> Note:
        """The label beside a pail, of what is in it or of itself; what is in it in a heap."""
        middle = self.stage.spot(element.at) + block.face
        pail = bounds(block.drawn(self.stage.spot(element.at), UNTAGGED))
        load = self.stage.depicts.loads.get(element.id)
        if load and load.thing is Thing.HEAP:
            rim = middle + 1j * (block.half.imag - mechanical.BAIL / 2)
            heap = goods.heap(rim, 1.9 * block.half.real, 6.0, Tag(What.LOAD, element.id))
            self.field.add(*heap)
            beside = rim + 0.95 * block.half.real + 3j
            return Note(text, ((beside, 0.0),), tag, bounds(heap))
        right, left = complex(pail.right, middle.imag), complex(pail.left, middle.imag)
        return self._of(pail, Note(text, ((right, 0.0), (left, 180.0)), tag))

    def _on_particle(self, element: Element, load: Load, text: Datum, tag: Tag) -> Note | None:
        """No surface carries it, so it hangs from its lines, below what hangs there already."""
        seat = self._seat(element)
        if any(e.kind == Kind.HINGE and e.body == element.body for e in self.system.elements):
            return Note(text, ((seat.spot, 90.0), (seat.spot, 0.0)), tag)
        below = self.hung.get(element.body, seat.spot.imag)
        seat = replace(seat, spot=complex(seat.spot.real, below))
        return self._load(element, replace(load, manner=Manner.HANGS), seat, text, tag)

    def _load(self, element: Element, load: Load, seat: Seat, text: Datum, tag: Tag) -> Note | None:
        """Something a body carries."""
        room, drawn = extent(text), Tag(What.LOAD, element.id)
        shapes, face = self._clear_load(load, seat, room, drawn)
        box = bounds(shapes)
        upon = self.people if load.thing in PEOPLE else self.loads
        upon.setdefault(element.body, []).append(box)
        self.hung[element.body] = box.bottom
        note = self._set(shapes, face, self.stage.spot(element.at), text, tag)
        if note and seat.rope > ROPE:  # at its foot, not half-way up a long rope
            below = box._replace(top=seat.spot.imag - seat.rope)
            note = replace(note, anchors=self._about(below, seat.spot), thing=below)
        if note and self.stage.look(element.body) in LIMBS and load.manner is Manner.HANGS:
            # Under the limb, as beyond its end labels take room that it could be drawn larger in.
            # Beside its foot too, as the limb's own label may be under that.
            foot = box.bottom + 0.5 * (room.height + room.depth)
            low = ((complex(box.left, foot), 180.0), (complex(box.right, foot), 0.0))
            sides = (*note.anchors, *low)
            inward = sorted(sides, key=lambda each: -dot(heading(each[1]), -seat.beyond))
            note = replace(note, anchors=tuple(inward))
        if note and seat.steep and load.thing in PEOPLE and load.manner is not Manner.HANGS:
            # Not beyond the ladder that somebody climbs.
            away = [a for a in note.anchors if dot(heading(a[1]), seat.outward) > -0.2]
            return replace(note, anchors=tuple(away))
        return note

    def _set(
        self, shapes: tuple[Shape, ...], face: Box | None, spot: Spot,
        text: Datum, tag: Tag,
    ) -> Note | None:  # fmt: skip
        """A load drawn, its label on its face where it has one."""
        self.field.add(*shapes)
        thing = bounds(shapes)
        note = self._of(thing, Note(text, self._about(thing, spot), tag))
        if face:
            self.field.add(set_in(text, centred(text, face.centre), tag))
            return None
        return note

    def _of(self, thing: Box, note: Note) -> Note:
        """A note with what it is of, which is kept."""
        self.things.append(thing)
        return replace(note, thing=thing)

    def _clear_load(
        self, load: Load, seat: Seat, room: Extent, tag: Tag
    ) -> tuple[tuple[Shape, ...], Box | None]:
        """A load; what hangs is let down until it is clear of all that is drawn."""
        first = shapes, face = draw_load(load, seat, room, tag)
        rope = seat.rope
        while hangs(load, seat) and rope < _LONGEST_ROPE:
            box = bounds(shapes)
            below = box._replace(top=min(box.top, seat.spot.imag - rope)).grown(1.5)
            if below.bottom < below.top and not self.field.touched(below):
                return shapes, face
            rope += 6.0
            shapes, face = draw_load(load, replace(seat, rope=rope), room, tag)
        if face and room.width > _NARROW.width:  # its label goes beside it
            narrow = self._clear_load(load, seat, _NARROW, tag)[0]
            within = bounds(narrow[-1:])  # nor does any other label go on it
            ends = complex(within.left, within.bottom), complex(within.right, within.top)
            self.field.watch(line(*ends, LIGHT))
            return narrow, None
        return first

    def _on_block(self, element: Element, block: Block, text: Datum, tag: Tag) -> Note | None:
        """What else weighs on a block stands on it, at its end when somebody else does."""
        top = self.stage.spot(element.at) + block.lift + 1j * block.half.imag
        width = max(extent(text).width + 9.0, 13.0)
        over = _over(top, width)
        if any(box.overlaps(over) for box in self.field.boxes) or self.field.touched(over):
            top -= block.half.real - width / 2 - 2.0
        seat = Seat(top, 1 + 0j, 0.0, self.stage.scale, 1)
        load = replace(self.stage.depicts.loads.get(element.id, _PLAIN), manner=Manner.STANDS)
        room, load_tag = extent(text), Tag(What.LOAD, element.id)
        shapes, face = draw_load(load, seat, room, load_tag)
        wider = 2.0 * block.half.real + MEDIUM.weight - (face.width if face else 0.0)
        if face and abs(wider) < _ALIKE:
            room = replace(room, width=room.width + wider)
            shapes, face = draw_load(load, seat, room, load_tag)
        return self._set(shapes, face, top, text, tag)

    def _in_solid(
        self, element: Element, corners: list[Spot], text: Datum, tag: Tag
    ) -> Note | None:
        """What is kept in a box, or on top of it, as a block about its centre of mass."""
        spot, room = self.stage.spot(element.at), extent(text)
        width, height = room.width + 8.0, room.height + room.depth + 7.0
        low, high = min(c.imag for c in corners), max(c.imag for c in corners)
        left, right = min(c.real for c in corners), max(c.real for c in corners)
        foot = spot.imag - height / 2
        foot = high if spot.imag > high else min(max(foot, low), high - height)
        inner = 0.8 * (right - left)
        at = complex(spot.real, foot)
        shapes = mechanical.block(at, min(width, inner), height, Tag(What.LOAD, element.id))
        self.field.add(*shapes)
        self.things.append(bounds(shapes))
        middle = at + 0.5j * height
        if width <= inner:
            self.field.add(set_in(text, centred(text, middle), tag))
            return None
        # The number does not go in, and is not to lie across the block either.
        self.field.watch(line(at - inner / 2, at + 1j * height + inner / 2, LIGHT))
        beside = middle.imag * 1j
        anchors = ((right + beside, 0.0), (left + beside, 180.0))
        return Note(text, anchors, tag, bounds(shapes))

    def shelves(self, body: Body) -> None:
        """The shelves of a bookcase, where they meet nothing it holds."""
        if self.stage.look(body.id) is not Look.BOOKCASE or len(body.outline) != 2:
            return
        foot, top = (self.stage.spot(name) for name in body.outline)
        for a, b in solid.shelf_lines(foot, top, self.stage.halves[body.id]):
            if not self.field.crossings(a, b, trim=2.0) and not self.field.hits_label(a, b):
                self.field.add(line(a, b, LIGHT, Tag(What.SHELF, body.id)))

    def _seat(self, element: Element) -> Seat:
        spot = hung_from(self.stage, element)
        body = self.system.body(element.body)
        ways = self.stage.ways(element)
        along = ways[0] / abs(ways[0]) if ways else 1 + 0j
        if along.real < 0 or (along.real == 0 and along.imag < 0):
            along = -along
        outline = [self.stage.spot(name) for name in body.outline]
        middle = sum(outline, 0j) / len(outline)
        facing = 1 if middle.real >= spot.real else -1
        half = self._surface(body)
        clear = room_under(spot, self.surfaces)
        look = self.stage.look(body.id)
        beyond = -ways[0] / abs(ways[0]) if len(ways) == 1 else 0j
        rope = 9.0 if look in LIMBS else ROPE
        if well := well_of(self.stage, body.id):
            rope = max(rope, well.rope - (well.axle - spot).imag)
        ends = outline[0], outline[-1]
        soles = min(ends, key=lambda end: end.real) + 1j * half
        lying = (soles, _LYING * abs(ends[1] - ends[0]) * along) if ends[0] != ends[1] else None
        arm, scale = look is Look.TRUNK, self.stage.scale
        upward = along if along.imag >= 0 else -along
        above = max(dot(end - spot, upward) for end in outline)
        return Seat(spot, along, half, scale, facing, clear, rope, beyond, arm, lying, above)

    def _surface(self, body: Body) -> float:
        """How far what stands on a body stands above its axis, pt."""
        barrow = self.stage.look(body.id) is Look.WHEELBARROW
        return solid.TRAY if barrow else self.stage.halves[body.id]

    def _either_side(self, element: Element) -> tuple[tuple[Spot, float], ...]:
        spot, half = self.stage.spot(element.at), self.stage.halves[element.body]
        ways = self.stage.ways(element)
        along = bearing(ways[0]) if ways else 0.0
        sides = sorted((along + 90.0, along - 90.0), key=lambda d: heading(d).imag)
        return tuple((spot + heading(side) * half, side) for side in sides)

    def _outside(self, element: Element) -> tuple[tuple[Spot, float], ...]:
        """Where straight ways from an element's point leave the outline it lies in."""
        spot = self.stage.spot(element.at)
        ways = [self.field.ray(spot, spot + _ACROSS * heading(way)) for way in _WAYS]
        return tuple(
            (spot + ray.first() * heading(way), way) for ray, way in zip(ways, _WAYS, strict=True)
        )

    def _about(self, box: Box, spot: Spot) -> tuple[tuple[Spot, float], ...]:
        """The sides of a load a label may lie on; not the one it meets its body with."""
        middle = box.centre
        hangs = box.top < spot.imag + 3.0
        end = (box.bottom, 270.0) if hangs else (box.top, 90.0)
        return (
            (complex(box.right, middle.imag), 0.0),
            (complex(box.left, middle.imag), 180.0),
            (complex(middle.real, end[0]), end[1]),
        )


def _weighs(element: Element, body: Body) -> bool:
    return element.kind == Kind.WEIGHT and element.body == body.id


def _over(foot: Spot, width: float) -> Box:
    """The room a small thing takes that stands somewhere."""
    return Box(foot.real - width / 2, foot.imag + 1.0, foot.real + width / 2, foot.imag + 14.0)


def weighed(system: System) -> dict[Tag, tuple[Tag, ...]]:
    """By the label of a mass, or of a weight that is given, what has it: a load, else a body where
    no other one has a part of it.
    """
    found: dict[Tag, tuple[Tag, ...]] = {}
    for weight in (element for element in system.elements if element.kind == Kind.WEIGHT):
        if mass := mass_name(system, weight):
            label, load = Tag(What.LABEL, mass.id), Tag(What.LOAD, weight.id)
            found[label] = (load,) if label in found else (load, Tag(What.BODY, weight.body))
    return found
