"""Slopes under blocks, and the edge a surface ends at below a rope's pulley."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from probgen.bank.depiction import Look, Touch
from probgen.figures.paper.scene import (
    HEAVY,
    MEDIUM,
    Shape,
    Spot,
    Tone,
    apart,
    bearing,
    dot,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import goods, mechanical, rod, scenery, works
from probgen.figures.parts.ground import Surface
from probgen.figures.situation.block import Block
from probgen.figures.situation.fixture import FACE, Fixture, Incline
from probgen.figures.situation.pulley import Hoist
from probgen.figures.situation.stage import Stage
from probgen.figures.situation.winch import winch_of
from probgen.quantities.expression import Name
from probgen.statics.geometry import angle_of
from probgen.statics.system import Element

_UPHILL: Final = 26.0  # how far a slope goes on beyond the block on it, pt
_DOWNHILL: Final = 18.0  # and before it, at least
_OVERHANG: Final = 80.0  # and at most, to have its foot below all of the block
_CLEAR: Final = 6.0  # from that foot to what is above it, sideways, pt
_IN_PLANE: Final = 1.5  # from a plane to the faces that lie in it, pt
_FALL: Final = 58.0  # how far a face is drawn down below the edge a rope runs over, pt
_BRACKET: Final = 13.0  # height of what holds a pulley at the face below that edge, pt
_LIKE: Final = 1.0  # degrees between the normals of one surface


def is_slope(stage: Stage, element: Element, normal: float) -> bool:
    """Whether a surface is an inclined plane under a block."""
    block = stage.blocks.get(element.body)
    return (
        bool(block)
        and not (block and block.faced)
        and 5.0 < normal % 90.0 < 85.0
        and normal < 180.0
    )


def slope(stage: Stage, element: Element, face: Spot, normal: float) -> Fixture:
    """An inclined plane under a block, and under all others on it, with its angle at the foot."""
    alike = _on_one_slope(stage, element, face, normal)
    if alike[0].id != element.id:
        return Fixture()  # it is drawn with that one
    surface = _beneath(stage, alike, face, normal)
    other = _beyond_ridge(stage, element, normal)
    if other:
        level = min(spot.imag for each in (surface, other) for spot in each.ends)
        surface, other = _down_to(surface, level), _down_to(other, level)
    surface, held, beneath = to_pulley(stage, element, surface)
    foot, top = sorted(surface.ends, key=lambda spot: spot.imag)
    way, tag = top - foot, Tag(What.INCLINE, element.id)
    if stage.depicts.contacts.get(element.id) is Touch.PLANK:
        angles = inclines_at(stage, element, foot, way)
        return Fixture((*held, *_raised(foot, way, tag)), _floor_under(foot, way), inclines=angles)
    plane = mechanical.wedge(foot, way.real, way.imag, tag)
    if other:  # one hill, or one roof, for both
        far = min(other.ends, key=lambda spot: spot.imag)
        roof = stage.depicts.contacts.get(element.id) is Touch.ROOF
        whole = (scenery.roof if roof else mechanical.ridge)(foot, far, top)
        plane = *(whole if way.real > 0 else ()), plane[-1]
    return Fixture((*held, *plane), beneath, inclines=inclines_at(stage, element, foot, way))


def _raised(foot: Spot, way: complex, tag: Tag) -> tuple[Shape, ...]:
    """A plank from the ground up, and the hand that has raised its end."""
    board = works.raised_plank(foot, way, tag)
    hand = rod.pulling_hand(foot + way, 1j, Tag(What.LOAD, tag))
    return *board, *hand


def _floor_under(foot: Spot, way: complex) -> tuple[Surface, ...]:
    """The ground that a plank stands on with its lower end."""
    before, after = (FACE, abs(way.real)) if way.real > 0 else (abs(way.real), FACE)
    return (Surface(foot, 90.0, before, after),)


def _beneath(stage: Stage, alike: Sequence[Element], face: Spot, normal: float) -> Surface:
    """The plane under all blocks on it, with its foot below all of them."""
    element = alike[0]
    block = stage.blocks[element.body]
    up = max(block.half.real + _UPHILL, _to_winch(stage, element, face, normal))
    down = _to_groove(stage, element, face, normal) or _to_foot(block, heading(normal))
    downhill = heading(normal + (-90.0 if normal < 90.0 else 90.0))
    reaches = (up, down) if normal < 90.0 else (down, up)
    surface = Surface(face, normal, *reaches)
    for other in alike[1:]:
        block, spot = stage.blocks[other.body], stage.face(other, normal)
        surface = surface.covering(spot, block.half.real + _DOWNHILL)
        surface = surface.covering(spot + _to_foot(block, heading(normal)) * downhill, 0.0)
    return surface


def _beyond_ridge(stage: Stage, element: Element, normal: float) -> Surface | None:
    """The plane on the other side of a ridge that a rope from a block runs over to another."""
    for each in stage.hoists:
        ends = (each.first.body, each.second.body)
        if each.tackle or each.alike or element.body not in ends:
            continue
        for other in stage.system.elements:
            out = stage.normal(other)
            opposite = other.body in ends and (out - 90.0) * (normal - 90.0) < 0.0
            if other.surface is not None and opposite and is_slope(stage, other, out):
                face = stage.face(other, out)
                return _beneath(stage, _on_one_slope(stage, other, face, out), face, out)
    return None


def _down_to(surface: Surface, level: float) -> Surface:
    """A plane lengthened down to a level."""
    reach = (level - surface.at.imag) / surface.tangent.imag
    return surface.covering(surface.at + surface.tangent * reach, 0.0)


def _to_foot(block: Block, out: complex) -> float:
    """From the middle of a block down to the foot of its slope (pt), below all that leans out."""
    leaning = (2.0 * block.half.imag * abs(out.real) + _CLEAR) / out.imag
    leaning += goods.SLIP if block.look is Look.TROUGH else 0.0
    return block.half.real + min(max(leaning, _DOWNHILL), _OVERHANG)


def _on_one_slope(stage: Stage, element: Element, face: Spot, normal: float) -> list[Element]:
    """The surfaces in the plane of one, itself among them; first that of a block tied over a
    pulley, at which the slope ends.
    """
    plane = Surface(face, normal, 0.0, 0.0)
    found = [
        other
        for other in stage.system.elements
        if other.surface is not None
        and other.body in stage.blocks
        and apart(stage.normal(other), normal) < _LIKE
        and is_slope(stage, other, normal)
        and abs(plane.height(stage.face(other, normal))) < _IN_PLANE
        and not stage.is_inner(other)
    ]
    over = {body for h in stage.hoists for body in (h.first.body, h.second.body)}
    return sorted(found, key=lambda other: other.body not in over)


def _to_winch(stage: Stage, element: Element, face: Spot, normal: float) -> float:
    """How far up a slope the winch stands that a rope from its block runs to (pt); 0: none does."""
    uphill = heading(normal + 90.0 if normal < 90.0 else normal - 90.0)
    own = (other for other in stage.system.elements if other.body == element.body)
    feet = (each.foot for each in (winch_of(stage, other) for other in own if other.forces) if each)
    return max((dot(foot - face, uphill) + FACE for foot in feet), default=0.0)


def _to_groove(stage: Stage, element: Element, face: Spot, normal: float) -> float:
    """How far down a slope another rises, the block between them (pt); 0: there is none."""
    downhill = heading(normal - 90.0 if normal < 90.0 else normal + 90.0)
    block, spot = stage.blocks[element.body], stage.spot(element.at)
    for other in stage.system.elements:
        if other.body != element.body or other is element or other.surface is None:
            continue
        out = heading(stage.normal(other))
        if 0.05 < out.imag < 0.995 and dot(downhill, out) < 0:
            return dot(spot - out * block.depth(out) - face, out) / dot(downhill, out)
    return 0.0


def inclines_at(
    stage: Stage, element: Element, foot: Spot, way: complex, *, bare: bool = False
) -> tuple[Incline, ...]:
    """The quantity that a slope rises by, where it is one; bare: nothing is drawn below it."""
    assert element.surface is not None  # it has a normal
    level = 0.0 if way.real > 0 else 180.0
    found = []
    for part, factor in angle_of(element.surface).multiples:
        if isinstance(part, Name) and abs(factor) == 1:
            value = stage.measured.number(part)
            if apart(bearing(way), level + (value if way.real > 0 else -value)) < 0.5:
                text = stage.text(part)
                found.append(Incline(foot, level, bearing(way), text, part.id, bare))
    return tuple(found)


def to_pulley(
    stage: Stage, element: Element, surface: Surface
) -> tuple[Surface, tuple[Shape, ...], tuple[Surface, ...]]:
    """A surface ended short of what hangs from a pulley at its edge.

    With it what fixes the pulley there, and the face that falls away below the edge.
    """
    held: list[Shape] = []
    beneath: list[Surface] = []
    for each in stage.hoists:
        if each.tackle or each.alike or element.body not in (each.first.body, each.second.body):
            continue
        surface, corner = _ended(stage, each, element.body, surface)
        centre = stage.course(each).centre
        level = abs(surface.normal - 90.0) < 1.0
        # Level from the face below the edge where the pulley is no higher than that.
        start = complex(corner.real, min(corner.imag, centre.imag)) if level else corner
        tag = Tag(What.SUPPORT, each.first.id)
        if level:
            under = complex(corner.real, start.imag - _BRACKET)
            held.append(polygon((start, under, centre - 2j, centre), MEDIUM, tag, tone=Tone.BODY))
        else:
            held.append(line(start, centre, HEAVY, tag))
        if level:
            right = surface.reach(corner) > 0
            away, above, below = (0.0, 0.0, _FALL) if right else (180.0, _FALL, 0.0)
            beneath.append(Surface(corner, away, above, below))
    return surface, tuple(held), tuple(beneath)


def _ended(stage: Stage, each: Hoist, body: str, surface: Surface) -> tuple[Surface, Spot]:
    """A body's surface ended below the pulley of its rope, and the edge it ends at: the ridge,
    where the other body is on a slope too.
    """
    hanging = each.second if each.first.body == body else each.first
    block = stage.blocks.get(hanging.body)
    width = block.half.real if block else 0.0
    reach = surface.reach(stage.spot(hanging.at))
    edge = abs(reach) - (width + 5.0) / max(abs(surface.tangent.real), 0.3)
    edge = min(edge, abs(surface.reach(stage.course(each).centre)) - 2.0)
    side = 1 if reach > 0 else -1
    edge = _to_ridge(stage, hanging.body, surface, side) or edge
    corner = surface.at + surface.tangent * edge * side
    if side > 0:
        return replace(surface, after=edge), corner
    return replace(surface, before=edge), corner


def _to_ridge(stage: Stage, body: str, surface: Surface, side: int) -> float:
    """How far on a side (1 along the tangent) a slope meets the one under another body (pt)."""
    for other in stage.system.elements:
        normal = stage.normal(other)
        if other.body != body or other.surface is None or not is_slope(stage, other, normal):
            continue
        plane = Surface(stage.face(other, normal), normal, 0.0, 0.0)
        closing = dot(surface.tangent, heading(normal)) * side
        if abs(surface.normal - 90.0) > 1.0 and closing > 0.1:
            return -plane.height(surface.at) / closing
    return 0.0
