"""Surfaces of a situation: floors, walls, slopes, edges, rollers, and what a force comes from."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from probgen.bank.depiction import Look, Roller, Source, Touch
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    MEDIUM,
    Spot,
    Tone,
    apart,
    circle,
    dot,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import limb, rod, scenery, solid, vehicles, works
from probgen.figures.parts.ground import (
    ROLLER_HEIGHT,
    Surface,
    backing,
    hatched,
    joined,
    roller,
    tinted,
)
from probgen.figures.parts.mechanical import JOINT
from probgen.figures.situation.fixture import FACE, Fixture, Incline, wedge_under
from probgen.figures.situation.post import gripped
from probgen.figures.situation.shape import ROUND, arms_of
from probgen.figures.situation.slider import sliding
from probgen.figures.situation.slope import inclines_at, is_slope, slope, to_pulley
from probgen.figures.situation.stage import Stage
from probgen.figures.situation.standing import broken_off
from probgen.statics.system import Body, Element, Kind

_SCALE: Final = 17.0  # height of a scale, that of a fulcrum, pt
_UNDER: Final = 0.4  # half the weight of the circle at a joint, pt
_TILE: Final = 5.0  # thickness of a tile, pt
_FLAT: Final = 0.8  # its breadth, of that of what presses it
_BATTEN: Final = 6.0  # half the breadth of one under a bar, pt
_STICK: Final = 64.0  # length of a walking stick, pt
_ROUND: Final = 6.0  # radius of a branch or a rail, pt
_POST: Final = 34.0  # height of a post, pt
_STOP: Final = 7.0  # half the length of a stop's face, pt
_POST_HALF: Final = 4.5
_SILL: Final = 6.5  # height of a sill on a ledge or a bank, pt
_LEDGE: Final = 10.0  # how far a ledge or a bank goes on under its body, pt
_WALL: Final = 34.0  # how far the wall of a house goes up beyond its ledge, pt
_SQUARE: Final = 0.02  # most cosine between a bar and what pushes square to it
_BEYOND: Final = 9.0  # how far a floor goes on beyond a block on it, pt
_ARROWS: Final = (
    Source.ARROW, Source.PUSH, Source.PEDAL, Source.VALVE, Source.LIFTER, Source.BEARER,
    Source.HOLDER, Source.BOOT,
)  # fmt: skip
_WALLED: Final = 20.0  # and a wall beyond a panel on it, pt
_LIKE: Final = 1.0  # degrees between the normals of one surface


def stands_for(stage: Stage, element: Element) -> bool:
    """Whether a force is shown by what exerts it: a surface, or something bitten on."""
    return stage.depicts.forces.get(element.id, Source.ARROW) not in _ARROWS


def source(stage: Stage, element: Element) -> Fixture:
    """The surface, or the thing, that a force comes from."""
    direction, told = stage.measured.direction_of(element), stage.depicts.forces.get(element.id)
    if direction is None and told is Source.CEILING:
        direction = 90.0  # what hangs there is drawn below it, whatever pulls it aside
    if direction is None:
        return Fixture()
    spot, back, tag = stage.spot(element.at), -heading(direction), Tag(What.SUPPORT, element.id)
    match told:
        case Source.NUT:
            return Fixture((circle(spot + back * 10.0, 5.5, MEDIUM, tag, tone=Tone.PERSON),))
        case Source.CEILING:  # it pulls
            face = spot - back * (stage.wheel(element.body) + 9.0)
            surface = Surface(face, (direction + 180.0) % 360.0, FACE, FACE)
            return Fixture((line(spot, face, MEDIUM, tag),), (surface,))
        case Source.STICK:
            if end := broken_off(stage, spot):
                mark = limb.break_mark(end, 270.0, 1.5, tag)
                return Fixture((*solid.stick(spot, end, tag), *mark))
            foot = spot - 1j * _STICK
            return Fixture(solid.stick(spot, foot, tag), (Surface(foot, 90.0, FACE, FACE),))
        case Source.GRIP:
            return Fixture(rod.pulling_hand(spot, -back, Tag(What.LOAD, element.id)))
        case Source.SCALE:
            foot = spot - 1j * (stage.halves[element.body] + _SCALE)
            return Fixture(solid.scale(foot, _SCALE, tag), (Surface(foot, 90.0, 24.0, 24.0),))
    return Fixture(surfaces=(Surface(spot, direction, FACE + 8.0, FACE + 8.0),))


def rolling(stage: Stage, element: Element) -> Fixture:
    """A roller on its ground, the wheel of a barrow, or what a body lies on."""
    normal, tag = stage.normal(element), Tag(What.SUPPORT, element.id)
    spot, out = stage.spot(element.at), heading(normal)
    if stage.depicts.rollers.get(element.id) is Roller.WHEEL:
        surface = Surface(spot - out * solid.WHEEL, normal, 1.5 * FACE, 1.5 * FACE)
        return Fixture(solid.barrow_wheel(spot, tag), (surface,))
    if stage.depicts.rollers.get(element.id) is Roller.HAND_TRUCK:
        surface = Surface(spot - out * vehicles.WHEEL, normal, 1.5 * FACE, 1.5 * FACE)
        ways = sorted(stage.ways(element), key=abs, reverse=True)
        return Fixture(vehicles.hand_truck(spot, ways, tag), (surface,))
    joint = JOINT + _UNDER if stage.look(element.body) is Look.TRUSS else 0.0
    top = spot - out * max(stage.depth(element, normal), joint)
    match stage.depicts.rollers.get(element.id):
        case Roller.CASTER:
            surface = Surface(top - out * works.CASTER, normal, FACE, FACE)
            return Fixture(works.caster(top, tag), (surface,))
        case Roller.POST:
            return _on_post(top, tag)
        case Roller.ROLLED_POST:
            below = _on_post(top - 1j * ROLLER_HEIGHT, tag)
            return replace(below, shapes=(*roller(top, 90.0, tag), *below.shapes))
        case Roller.LEDGE:
            return _on_ledge(top, _side(stage, element), tag)
        case Roller.BANK:
            return _on_bank(top, _side(stage, element), tag)
    surface = Surface(top - out * ROLLER_HEIGHT, normal, FACE, FACE)
    return Fixture(roller(top, normal, tag), (surface,), cut=stage.cut(element, normal))


def _side(stage: Stage, element: Element) -> int:
    """To which side of a support its body runs on: 1 right, -1 left."""
    ways = stage.ways(element)
    return 1 if not ways or ways[0].real > 0 else -1


def _on_post(top: Spot, tag: Tag) -> Fixture:
    """A post that its body lies on."""
    foot = top - 1j * _POST
    return Fixture(scenery.post(top, foot, _POST_HALF, tag), (Surface(foot, 90.0, FACE, FACE),))


def _on_ledge(top: Spot, side: int, tag: Tag) -> Fixture:
    """A sill on a ledge of a house's wall, which goes down as far as a post does."""
    head = top - 1j * _SILL
    inner, outer = head - side * _LEDGE, head + side * _LEDGE
    down, up = _POST, _SILL + _WALL
    wall = Surface(inner, 0.0 if side > 0 else 180.0, *((up, down) if side > 0 else (down, up)))
    sill = scenery.post(top, head, _POST_HALF, tag)
    return Fixture((*sill, *scenery.ledge(inner, outer, 8.0, tag)), (wall,))


def _on_bank(top: Spot, side: int, tag: Tag) -> Fixture:
    """A sill on a bank under the end of its body, which falls away to the side that runs to."""
    face = top - 1j * _SILL
    edge = face + side * _LEDGE
    level = (2.0 * FACE, _LEDGE) if side > 0 else (_LEDGE, 2.0 * FACE)
    fall = (0.0, _POST) if side > 0 else (_POST, 0.0)
    bank = Surface(face, 90.0, *level, lone=True)
    walls = bank, Surface(edge, 0.0 if side > 0 else 180.0, *fall)
    return Fixture(scenery.post(top, face, _POST_HALF, tag), walls)


def touching(stage: Stage, element: Element) -> Fixture:
    """What a body rests on or leans against, at the point where they touch."""
    normal, tag = stage.normal(element), Tag(What.SUPPORT, element.id)
    spot, told = stage.spot(element.at), stage.depicts.contacts.get(element.id)
    if told is Touch.FULCRUM:
        return wedge_under(spot, stage.halves[element.body], tag)
    if told in (Touch.SLIDER, Touch.SLOT):
        return sliding(stage, element)
    face = stage.face(element, normal)
    if told is None and _is_edge(stage, element, normal):
        told = Touch.EDGE if heading(normal).imag > 0 else Touch.BRANCH
    if told is Touch.BRANCH:
        centre = face - heading(normal) * _ROUND
        bark = circle(centre, _ROUND, MEDIUM, tag, tone=Tone.PERSON)
        rings = (bark, circle(centre, 0.6, MEDIUM, tag))
        fixture = Fixture(rings)
    elif told is Touch.EDGE:
        fixture = Fixture(surfaces=_edge(stage, face, normal))
    elif told is Touch.STOP:
        fixture = Fixture(surfaces=(Surface(face, normal, _STOP, _STOP, lone=True),))
    elif told is Touch.TILE:
        fixture = _on_tile(stage, element, face, normal)
    elif told is Touch.POST:
        fixture = gripped(stage, element, face, normal)
    elif is_slope(stage, element, normal):
        fixture = slope(stage, element, face, normal)
    else:
        fixture = _face(stage, element, face, normal)
    return replace(fixture, cut=stage.cut(element, normal))


def _on_tile(stage: Stage, element: Element, face: Spot, normal: float) -> Fixture:
    """Something flat under a block, on the surface that the block would rest on."""
    out, block = heading(normal), stage.blocks.get(element.body)
    half = _FLAT * block.half.real if block else _BATTEN
    below = _face(stage, element, face - out * _TILE, normal)
    corners = (face - half * out * 1j, face + half * out * 1j)
    under = tuple(corner - out * _TILE for corner in corners[::-1])
    tag = Tag(What.SUPPORT, element.id)
    slab = polygon((*corners, *under), MEDIUM, tag, tone=Tone.PERSON)
    return replace(below, shapes=(*below.shapes, slab))


def _is_edge(stage: Stage, element: Element, normal: float) -> bool:
    """Whether a slanting bar lies on something at one place between its ends: its push is square
    to the bar, and no other one is like it, as on a slope.
    """
    ways, out = stage.ways(element), heading(normal)
    if len(ways) != 2 or any(abs(dot(way, out)) > _SQUARE * abs(way) for way in ways):
        return False
    others = [e for e in stage.system.elements if e.body == element.body and e is not element]
    alike = [e for e in others if e.surface and apart(stage.normal(e), normal) < _LIKE]
    return 5.0 < normal % 90.0 < 85.0 and not alike


def _face(stage: Stage, element: Element, face: Spot, normal: float) -> Fixture:
    """The surface a body touches: beyond both ends of a solid, a block and a round, up to the edge
    below a rope's pulley.
    """
    body = stage.system.body(element.body)
    radii = arms_of(stage.measured, body, stage.look(body.id))[1] if _is_round(stage, body) else []
    reach = FACE + 6.0 + max(radii, default=0.0) * stage.scale
    surface = Surface(face, normal, reach, reach)
    for corner in stage.corners(body):
        if abs(surface.height(corner)) < 0.5:
            surface = surface.covering(corner, FACE)
    block = stage.blocks.get(body.id)
    if block and not block.faced:
        ends = (way * block.reach(way) for way in (surface.tangent, -surface.tangent))
        for end in ends:
            surface = surface.covering(face + end, _WALLED if block.look is Look.PANEL else _BEYOND)
    surface, held, beneath = to_pulley(stage, element, surface)
    inclines: tuple[Incline, ...] = ()
    if _is_round(stage, body) and 5.0 < normal % 90.0 < 85.0 and normal < 180.0:
        foot, top = sorted(surface.ends, key=lambda spot: spot.imag)
        inclines = inclines_at(stage, element, foot, top - foot, bare=True)
    return Fixture(held, (*beneath, surface), inclines=inclines)


def _is_round(stage: Stage, body: Body) -> bool:
    return len(body.outline) > 1 and stage.look(body.id) in ROUND


def _edge(stage: Stage, corner: Spot, normal: float) -> tuple[Surface, Surface]:
    """The outer edge of a wall: its level top, and its face down to the lowest point."""
    lowest = min(place.imag for place in stage.measured.places.values()) * stage.scale
    fall = max(corner.imag - lowest, FACE)
    left = 90.0 < normal < 270.0
    top, face = (0.0, 2.0 * FACE), (fall, 0.0)
    if not left:
        top, face = top[::-1], face[::-1]
    return Surface(corner, 90.0, *top), Surface(corner, 180.0 if left else 0.0, *face)


def floors_under(stage: Stage) -> list[Surface]:
    """The floors under solids that nothing else is said to hold."""
    held = {e.body for e in stage.system.elements if e.kind != Kind.WEIGHT}
    floors = []
    for body in stage.system.bodies:
        corners = stage.corners(body)
        if corners and body.id not in held:
            low = min(corner.imag for corner in corners)
            feet = [corner for corner in corners if corner.imag - low < 0.5]
            left, right = min(f.real for f in feet), max(f.real for f in feet)
            run = (right - left) / 2 + FACE
            floors.append(Surface(complex((left + right) / 2, low), 90.0, run, run))
    return floors


def draw_surfaces(field: Field, surfaces: Sequence[Surface], *, corners: bool) -> None:
    """Ground and walls hatched; corners: with those that meet drawn up to the corner."""
    for surface in joined(surfaces, corners=corners):
        _hatch(field, surface)


def draw_posts(field: Field, tops: Sequence[Spot], *, trees: bool = False) -> None:
    """The posts, or trees, cords are tied to, from a ground below all that hangs between them."""
    if not tops:
        return
    ground = 1j * (field.box.bottom - 12.0)
    for top in tops:
        tag, foot = Tag(What.SUPPORT, "post"), top.real + ground
        if trees:
            field.add(*solid.tied_tree(foot, top, tag))
        else:
            field.add(*solid.post(foot, top + 5j, tag), solid.rope_ring(top, tag))
    left, right = min(top.real for top in tops), max(top.real for top in tops)
    run = (right - left) / 2 + FACE
    _hatch(field, Surface((left + right) / 2 + ground, 90.0, run, run))


def _hatch(field: Field, surface: Surface) -> None:
    face, hatching = hatched(surface)
    field.add(face)
    field.add(tinted(surface), hatching, solid=False)
    field.watch(backing(surface))
