"""Loads: what stands on a body or hangs from it, as what a template says it is."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from probgen.bank.depiction import Load, Manner, Thing
from probgen.figures.paper.scene import MEDIUM, Box, Shape, Spot, bearing, bounds, heading
from probgen.figures.paper.tag import Tag
from probgen.figures.paper.type_metrics import Extent
from probgen.figures.parts import arm, goods, mechanical, person, profile, works

PEOPLE: Final = (Thing.PERSON, Thing.RIDER, Thing.CHILD, Thing.TODDLER)
ROPE: Final = 12.0
"""The usual length of the rope a load hangs by, pt."""
PERSON: Final = 1.75
CHILD: Final = 1.2
TODDLER: Final = 0.95
"""Heights people are drawn at where the scale allows it, m; common practice, no source."""

SHORTEST: Final = 34.0
TALLEST: Final = 105.0
"""Of a person standing, pt; the tallest has 37 mm."""

_NECK: Final = 4.5  # of a bottle or a bag, that is in the hand that holds it, pt
_HUNG: Final = 56.8  # of one who hangs by the hands, pt
_POST: Final = 1.8  # how broad the posts of a hung crate are, beside its label, pt
_SACK: Final = 0.6  # height of a sack, m, where the scale allows it; common practice, no source
_SMALL: Final = 0.55  # and of the least one drawn, of the usual one
_HEAD: Final = 11.0  # radius of a head at the end of a trunk, pt
_BRAIN: Final = 0.75  # from the joint of its neck to its centre of mass, of the radius


@dataclass(frozen=True, slots=True)
class Seat:
    """Where a load meets its body.

    spot: the point, on the body's axis; along: the body's direction there, pointing right or up;
    half: half the body's thickness; scale: pt for each metre; facing: where people look, 1 right.
    clear: height of the point above the ground, pt; rope: how far below the point a hung load
    begins; beyond: the unit step out of the body at its end, 0 elsewhere; arm: whether what
    hangs is held in a hand; lying: the soles of somebody who lies on it, and the step (pt) from
    there to the head; above: how far the body goes on upward from the point, pt.
    """

    spot: Spot
    along: complex
    half: float
    scale: float
    facing: int
    clear: float = math.inf
    rope: float = ROPE
    beyond: complex = 0j
    arm: bool = False
    lying: tuple[Spot, complex] | None = None
    above: float = math.inf

    @property
    def outward(self) -> complex:
        """Unit normal of the body's upper side."""
        normal = self.along * 1j
        return normal if normal.imag >= 0 else -normal

    @property
    def steep(self) -> bool:
        """Whether nothing could stand on the body here."""
        return abs(self.along.imag) > 0.6

    @property
    def top(self) -> Spot:
        """The spot on the body's upper side."""
        return self.spot + self.outward * self.half


def _stature(thing: Thing) -> float:
    return {Thing.CHILD: CHILD, Thing.TODDLER: TODDLER}.get(thing, PERSON)


def largest_scale(loads: Iterable[Load]) -> float:
    """The scale (pt for each metre) up to which all who stand, sit or climb are at true size."""
    free = (Manner.LIES, Manner.HANGS)  # who is as long as a board, or small
    people = (each.thing for each in loads if each.thing in PEOPLE and each.manner not in free)
    return min((TALLEST / _stature(thing) for thing in people), default=math.inf)


def hangs(load: Load, seat: Seat) -> bool:
    """Whether a load is let down on a rope."""
    if load.thing in PEOPLE or (load.thing is Thing.HEAD and seat.beyond):
        return False
    return load.manner is Manner.HANGS or (seat.steep and load.manner is Manner.STANDS)


def draw_load(
    load: Load, seat: Seat, room: Extent, tag: Tag
) -> tuple[tuple[Shape, ...], Box | None]:
    """The strokes of a load at its place, and the box its label goes into if it has a face.

    room: what the label takes.
    """
    thing, manner = load.thing, load.manner
    if thing in PEOPLE and seat.lying and manner is Manner.LIES:
        return person.lying(*seat.lying, tag), None
    width, height = room.width + 9.0, room.height + room.depth + 8.0
    if thing in PEOPLE:
        return _person(thing, manner, seat, tag), None
    if hangs(load, seat):
        return _hung(thing, seat, (width, height), tag)
    if thing is Thing.CUFF:
        return mechanical.cuff(seat.spot, seat.along, seat.half, tag), None
    if thing is Thing.HEAD and seat.beyond:
        return _head(seat, tag), None
    if manner is Manner.HELD:
        return mechanical.ball(seat.top + seat.outward * 7.0, 7.0, tag), None
    foot = seat.spot + 1j * seat.half / max(abs(seat.along.real), 0.5)
    if thing is Thing.BUCKET:
        return mechanical.standing_pail(foot, tag), None
    if thing is Thing.BOTTLE:
        return goods.bottle(foot + 1j * goods.BOTTLE, tag), None
    if thing is Thing.SACK:
        size = _sack_size(seat)
        return goods.sack(foot + 1j * goods.SACK * size, tag, size), None
    if thing is Thing.ENGINE:
        return works.engine(foot, tag), None
    if thing is Thing.PLANT:
        return mechanical.plant(foot, tag), None
    if thing is Thing.TREE:
        return mechanical.tree(foot, 44.0, tag), None
    if thing is Thing.HEAP:
        return goods.heap(foot, 56.0, 20.0, tag), None
    if thing is Thing.CRATE:
        shapes = mechanical.crate(foot, width + 6.0, height + 2.0, tag)
    elif thing is Thing.BALE:
        shapes = goods.bale(foot, width, height, tag)
    else:
        shapes = mechanical.block(foot, width, height, tag)
    return shapes, bounds(shapes[:1])


def _hung(
    thing: Thing, seat: Seat, size: tuple[float, float], tag: Tag
) -> tuple[tuple[Shape, ...], Box | None]:
    """A load on a rope, both short enough to stay off the ground where that can be."""
    spot = seat.spot
    rope = min(max(seat.clear - 24.0, 3.0), seat.rope)
    if seat.arm:
        return _in_hand(thing, spot, spot - 1j * max(rope, 40.0), size, tag)
    match thing:
        case Thing.LAMP:
            return mechanical.lamp(spot, rope, tag), None
        case Thing.BOTTLE:
            return goods.bottle(spot - 1j * (rope - _NECK), tag), None
        case Thing.SACK:
            mouth = spot - 1j * (rope - min(_NECK, rope))
            sack = goods.sack(mouth, tag, _sack_size(seat))
            return (*mechanical.cable(spot, mouth - 1j, tag), *sack), None
        case Thing.NET:
            return goods.net(spot, 2.2 * rope, tag), None
        case Thing.FEEDER:
            return goods.feeder(spot, rope, tag), None
        case Thing.PIANO:
            return goods.piano(spot, rope, tag), None
        case Thing.SPEAKER:
            return goods.loudspeaker(spot, rope, tag), None
        case Thing.BUCKET:
            shrunk = min(max((seat.clear - rope) / 23.0, 0.5), 1.0)
            return mechanical.bucket(spot, rope, shrunk, tag), None
    return _faced(thing, spot, rope, size, tag)


def _in_hand(
    thing: Thing, spot: Spot, hand: Spot, size: tuple[float, float], tag: Tag
) -> tuple[tuple[Shape, ...], Box | None]:
    """A load in the hand of an arm that hangs down from a spot."""
    held = arm.hanging_arm(spot, hand, tag)
    if thing is Thing.TOOLBOX:
        box, face = goods.toolbox(hand, *size, tag)
        return (*box, *held), face
    shapes = (*held, *mechanical.hung_block(hand, 11.0, *size, tag))
    return shapes, bounds(shapes[-1:])


def _faced(
    thing: Thing, spot: Spot, rope: float, size: tuple[float, float], tag: Tag
) -> tuple[tuple[Shape, ...], Box | None]:
    """A load on a rope that has its label on its face."""
    match thing:
        case Thing.TOOLBOX:
            box, face = goods.toolbox(spot - 1j * rope, *size, tag)
            return (*mechanical.cable(spot, spot - 1j * rope, tag), *box), face
        case Thing.BALE:
            top = spot - 1j * (rope + size[1])
            straw = goods.bale(top, *size, tag)
            return (*mechanical.cable(spot, spot - 1j * rope, tag), *straw), bounds(straw[:1])
        case Thing.CRATE:
            block = mechanical.hung_block(spot, rope, *size, tag)
            face = bounds(block[-1:])
            foot = complex(spot.real, face.bottom + MEDIUM.weight / 2)
            return (*block, *mechanical.crate(foot, *size, tag, _POST)[1:]), face
        case Thing.HOLDALL:
            top = spot - 1j * max(rope - goods.HANDLE, 0.0)
            bag = goods.holdall(top, size[0], size[1], tag)
            shapes = (*mechanical.cable(spot, top, tag), *bag)
        case Thing.SIGN:
            shapes = mechanical.hung_sign(spot, size[0] + 4.0, size[1] + 2.0, tag, max(rope, 13.0))
        case _:
            shapes = mechanical.hung_block(spot, rope, *size, tag)
    return shapes, bounds(shapes[-1:])


def _sack_size(seat: Seat) -> float:
    """The size of a sack, of the usual one: smaller where its body is."""
    return min(max(_SACK * seat.scale / goods.SACK, _SMALL), 1.0)


def _head(seat: Seat, tag: Tag) -> tuple[Shape, ...]:
    """A head at the end of a trunk, about its centre of mass; it looks to the side it leans to."""
    facing = 1 if seat.beyond.real >= 0 else -1
    lean = max(abs(90.0 - bearing(seat.beyond)) - 25.0, 0.0)
    neck = seat.spot - 1j * heading(-lean * facing) * _BRAIN * _HEAD
    shapes = profile.head(neck, _HEAD, facing, tag, lean)
    return *shapes, *mechanical.centre_mark(seat.spot, tag)


def _person(thing: Thing, manner: Manner, seat: Seat, tag: Tag) -> tuple[Shape, ...]:
    """A person at true size where the scale allows, on whatever is there to stand or sit on."""
    # What a small child stands on is small as well, and drawn at a large scale.
    height = min(max(_stature(thing) * seat.scale, SHORTEST), TALLEST)
    if manner is Manner.HANGS:
        return person.hanging(seat.spot, min(height, _HUNG), tag)
    if seat.steep:
        upward = seat.along if seat.along.imag > 0 else -seat.along
        return person.climbing(seat.top, upward, seat.outward, height, seat.above, tag)
    if thing in (Thing.RIDER, Thing.CHILD):
        return person.seated(seat.top, height, seat.facing, tag)
    return person.standing(seat.top, height, tag)
