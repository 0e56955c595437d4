"""Surfaces of a situation: floors, walls, slopes, edges, rollers, and what a force comes from."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from probgen.figures.paper.angle import draw_angle
from probgen.figures.paper.scene import (
    HEAVY,
    MEDIUM,
    Spot,
    apart,
    bearing,
    circle,
    heading,
    line,
)
from probgen.figures.parts import mechanical, solid
from probgen.figures.parts.ground import ROLLER_HEIGHT, Surface, backing, hatched, roller
from probgen.quantities.expression import Name
from probgen.statics.geometry import angle_of
from probgen.statics.system import Element, Kind

if TYPE_CHECKING:
    from probgen.figures.situation.support import Supports

_FACE: Final = 14.0  # how far a face reaches beyond what it holds, pt
_SCALE: Final = 17.0  # height of a scale, that of a fulcrum, pt
_ROUND: Final = 6.0  # radius of a branch or a rail, pt
_EXERTS: Final = ("floor", "ground", "ceiling", "nut", "stone", "scale")
"""Words for what is drawn instead of the force it exerts."""



def stands_for(supports: Supports, element: Element) -> bool:
    """Whether a force is shown by what exerts it: a surface, or something bitten on."""
    words = f"{element.name} {supports.depicts.get(element.id, '')}".lower().split()
    return any(word in _EXERTS for word in words)


def draw_source(supports: Supports, element: Element) -> None:
    """The surface, or the thing, that a force comes from."""
    direction = supports.measured.direction_of(element)
    words = f"{element.name} {supports.depicts.get(element.id, '')}".lower().split()
    if direction is None:
        return
    spot, back = supports.spot(element.at), -heading(direction)
    if {"nut", "stone"} & set(words):
        supports.field.add(circle(spot + back * 10.0, 5.5, MEDIUM, f"support:{element.id}"))
    elif "ceiling" in words:  # it pulls
        face = spot - back * (supports.wheels.get(element.body, 0.0) + 9.0)
        supports.field.add(line(spot, face, MEDIUM, f"support:{element.id}"))
        supports.surfaces.append(Surface(face, (direction + 180.0) % 360.0, _FACE, _FACE))
    elif "scale" in words:
        foot = spot - 1j * (supports.half(element.body) + _SCALE)
        supports.field.add(*solid.scale(foot, _SCALE, f"support:{element.id}"))
        supports.surfaces.append(Surface(foot, 90.0, 24.0, 24.0))
    else:
        supports.surfaces.append(Surface(spot, direction, _FACE + 8.0, _FACE + 8.0))


def draw_roller(supports: Supports, element: Element) -> None:
    """A roller on its ground, or the wheel of a barrow."""
    normal = supports.normal(element)
    words = f"{element.name} {supports.depicts.get(element.id, '')}".lower()
    if "wheel" in words:
        axle = supports.spot(element.at)
        supports.field.add(*solid.barrow_wheel(axle, f"support:{element.id}"))
        face = axle - heading(normal) * solid.WHEEL
        supports.surfaces.append(Surface(face, normal, 1.5 * _FACE, 1.5 * _FACE))
        return
    top = supports.spot(element.at) - heading(normal) * supports.depth(element, normal)
    supports.field.add(*roller(top, normal, f"support:{element.id}"))
    face = top - heading(normal) * ROLLER_HEIGHT
    supports.surfaces.append(Surface(face, normal, _FACE, _FACE))


def draw_contact(supports: Supports, element: Element) -> None:
    """What a body rests on or leans against, at the point where they touch."""
    normal = supports.normal(element)
    spot, tag = supports.spot(element.at), f"support:{element.id}"
    words = f"{element.name} {supports.depicts.get(element.id, '')}".lower()
    if "fulcrum" in words or "pivot" in words:
        supports.wedge(spot, supports.half(element.body), tag)
        return
    face = spot - heading(normal) * supports.depth(element, normal)
    if any(word in solid.ROUND for word in words.split()):
        centre = face - heading(normal) * _ROUND
        supports.field.add(circle(centre, _ROUND, MEDIUM, tag), circle(centre, 0.6, MEDIUM, tag))
    elif "edge" in words:
        _edge(supports, face, normal)
    elif 5.0 < normal % 90.0 < 85.0 and element.body in supports.blocks and normal < 180.0:
        _slope(supports, element, face, normal)
    else:
        supports.surfaces.append(_under(supports, element, face, normal))


def _under(supports: Supports, element: Element, face: Spot, normal: float) -> Surface:
    """The surface a body touches: all along a solid, up to the edge below a rope's pulley."""
    surface = Surface(face, normal, _FACE + 6.0, _FACE + 6.0)
    for corner in supports.corners(supports.measured.system.body(element.body)):
        if abs(surface.height(corner)) < 0.5:
            surface = surface.covering(corner, _FACE)
    return _to_pulley(supports, element, surface)


def _to_pulley(supports: Supports, element: Element, surface: Surface) -> Surface:
    """A surface ended short of what hangs from a pulley at its edge, the pulley fixed to it."""
    for each in supports.hoists:
        if each.tackle or each.alike or element.body not in (each.first.body, each.second.body):
            continue
        hanging = each.second if each.first.body == element.body else each.first
        run, block = supports.course(each), supports.blocks.get(hanging.body)
        width = block.half.real if block else 0.0
        reach = surface.reach(supports.spot(hanging.at))
        side = 1 if reach > 0 else -1
        steep = abs(surface.tangent.real)
        edge = abs(reach) - (width + 5.0) / max(steep, 0.3)
        edge = min(edge, abs(surface.reach(run.centre)) - 2.0)
        corner = surface.at + surface.tangent * edge * side
        supports.field.add(line(corner, run.centre, HEAVY, f"support:{each.first.id}"))
        back = surface.before if side > 0 else surface.after
        before, after = (back, edge) if side > 0 else (edge, back)
        surface = replace(surface, before=before, after=after)
        if abs(surface.normal - 90.0) < 1.0:
            away, above, under = (0.0, 0.0, 58.0) if side > 0 else (180.0, 58.0, 0.0)
            supports.surfaces.append(Surface(corner, away, above, under))
    return surface


def _slope(supports: Supports, element: Element, face: Spot, normal: float) -> None:
    """An inclined plane under a block, with its angle at the foot."""
    reaches = (44.0, 30.0) if normal < 90.0 else (30.0, 44.0)
    surface = _to_pulley(supports, element, Surface(face, normal, *reaches))
    foot, top = sorted(surface.ends, key=lambda spot: spot.imag)
    way = top - foot
    supports.field.add(*mechanical.wedge(foot, way.real, way.imag, f"incline:{element.id}"))
    assert element.surface is not None  # it has a normal
    for part, factor in angle_of(element.surface).multiples:
        if isinstance(part, Name) and abs(factor) == 1:
            level = 0.0 if way.real > 0 else 180.0
            value = supports.measured.number(part)
            if apart(bearing(way), level + (value if way.real > 0 else -value)) < 0.5:
                text = supports.givens.get(part.id, part)
                draw_angle(
                    supports.field, foot, level, bearing(way), text, part.id, reference_drawn=True
                )
                supports.inclines.add(part.id)


def _edge(supports: Supports, corner: Spot, normal: float) -> None:
    """The outer edge of a wall: its level top, and its face down to the lowest point."""
    lowest = min(place.imag for place in supports.measured.places.values()) * supports.scale
    fall = max(corner.imag - lowest, _FACE)
    left = 90.0 < normal < 270.0
    top, face = (0.0, 2.0 * _FACE), (fall, 0.0)
    if not left:
        top, face = top[::-1], face[::-1]
    supports.surfaces.append(Surface(corner, 90.0, *top))
    supports.surfaces.append(Surface(corner, 180.0 if left else 0.0, *face))


def draw_posts(supports: Supports) -> None:
    """The posts cords are tied to, from a ground below all that hangs between them."""
    if not supports.posts:
        return
    ground = 1j * (supports.field.box.bottom - 12.0)
    for top in supports.posts:
        foot = top.real + ground
        supports.field.add(*solid.post(foot, top + 5j, "support:post"))
        supports.field.add(solid.rope_ring(top, "support:post"))
    left, right = min(t.real for t in supports.posts), max(t.real for t in supports.posts)
    middle = (left + right) / 2 + ground
    run = (right - left) / 2 + _FACE
    face, hatching = hatched(Surface(middle, 90.0, run, run))
    supports.field.add(face)
    supports.field.add(hatching, solid=False)
    supports.field.watch(backing(Surface(middle, 90.0, run, run)))


def ground_under(supports: Supports) -> None:
    """The floor under a solid that nothing else is said to hold."""
    held = {e.body for e in supports.measured.system.elements if e.kind != Kind.WEIGHT}
    for body in supports.measured.system.bodies:
        corners = supports.corners(body)
        if corners and body.id not in held:
            low = min(corner.imag for corner in corners)
            feet = [corner for corner in corners if corner.imag - low < 0.5]
            left, right = min(f.real for f in feet), max(f.real for f in feet)
            run = (right - left) / 2 + _FACE
            supports.surfaces.append(Surface(complex((left + right) / 2, low), 90.0, run, run))
