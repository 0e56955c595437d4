"""What stands about a situation: water between its banks, a boat, a wall, a phone, a van."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from probgen.bank.depiction import Look, Scenery
from probgen.figures.measured.survey import pushes
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import Arrow, Box, Pen, Shape, apart, heading, polygon
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import scenery, vehicles
from probgen.figures.parts.ground import Surface
from probgen.figures.situation import standing
from probgen.figures.situation.contact import draw_surfaces
from probgen.figures.situation.drawn_line import Line
from probgen.figures.situation.shape import UPRIGHT
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Kind

_SHORE: Final = 26.0  # how far water is drawn beyond a body where no bank ends it, pt
_DEPTH: Final = 20.0  # of water, pt
_BOAT: Final = 46.0  # length of a boat, pt
_APART: Final = 9.0  # from a wall to what is beside it, pt
_LOWER: Final = 12.0  # how far a wall is drawn below what is beside it, pt
_DRAUGHT: Final = 7.0  # from a boat's bow down to the water, pt
_TREAD: Final = 0.29  # of a step, m; common practice, no source
_BELOW: Final = 56.0  # from what is carried up down to the steps, pt
_CLEAR: Final = 44.0  # water to the right of what is in it, for an arrow and its letter, pt
_OVER: Final = 8.0  # and above it
_PLAY: Final = 2.0  # between a hatch that is shut and its floor, pt
_FLOOR: Final = 40.0  # how much of the floor is drawn, pt
_THICK: Final = 12.0  # and how thick it is
_REAR: Final = 44.0  # how much of a van is drawn that nothing is pinned on, pt
_LEVEL: Final = 0.05  # most sine of a level push
_TILT: Final = 14.0  # how far a box is drawn tilted, degrees
_TURNED: Final = Pen(0.6, 2.6, 1.9)
_TAG: Final = Tag(What.SCENERY)


def about(stage: Stage) -> Scenery | None:
    """What a template says stands about."""
    return stage.depicts.about.get("scenery")


def bedded(stage: Stage, surfaces: Sequence[Surface]) -> tuple[tuple[Surface, ...], Box | None]:
    """The surfaces with a bed under water from bank to bank, and where the water is; None: none.

    Where nothing stands on a bed none is drawn, and the water lies below all that is there.
    """
    if about(stage) not in (Scenery.WATER, Scenery.BOAT, Scenery.SUBMERGED):
        return tuple(surfaces), None
    floors = [surface for surface in surfaces if apart(surface.normal, 90.0) < 1.0]
    corners = [stage.spot(name) for body in stage.system.bodies for name in body.outline]
    bed = min(floors, key=lambda floor: floor.at.imag, default=None)
    level = bed.at.imag if bed else min(spot.imag for spot in corners) - 2 * _DEPTH
    lefts = [s.at.real for s in surfaces if apart(s.normal, 0.0) < 1.0]
    rights = [s.at.real for s in surfaces if apart(s.normal, 180.0) < 1.0]
    across = [spot.real for spot in corners]
    beyond = _BOAT + 2 * _SHORE if about(stage) is Scenery.BOAT else _SHORE
    if about(stage) is Scenery.SUBMERGED:
        across += [end.real for floor in floors for end in floor.ends]
        beyond += _CLEAR + max((block.half.real for block in stage.blocks.values()), default=0.0)
    left = max(lefts, default=min(across) - _SHORE)
    right = min(rights, default=max(across) + beyond)
    half = (right - left) / 2
    banks = [
        s.covering(complex(s.at.real, level), 0.0) if abs(s.normal % 180.0) < 1.0 else s
        for s in surfaces
        if s is not bed
    ]
    water = Box(left, level, right, level + _DEPTH)
    if bed is None:
        return tuple(banks), water
    return (*banks, replace(bed, at=complex(left + half, level), before=half, after=half)), water


def draw_scenery(stage: Stage, field: Field, water: Box | None, lines: Sequence[Line] = ()) -> None:
    """Draw it, behind everything else; lines: those of the situation."""
    ropes = [s for s in field.shapes if isinstance(s, Arrow) and s.tag.what is What.FORCE]
    if water and about(stage) is Scenery.BOAT and ropes:
        bow = ropes[0].head
        water = water._replace(top=max(bow.imag - _DRAUGHT, water.bottom + 4.0))
        field.add(*scenery.water(water, _TAG), *scenery.boat(bow, _BOAT, _TAG))
    elif water and about(stage) is Scenery.SUBMERGED:
        field.add(*scenery.water(water._replace(top=field.box.top + _OVER), _TAG))
    elif water:
        field.add(*scenery.water(water, _TAG))
    elif about(stage) is Scenery.TILTED:
        _tilted(stage, field)
    elif about(stage) is Scenery.STANDING:
        field.add(*standing.drawn(stage))
    elif about(stage) is Scenery.STAIRS:
        field.add(*_stairs_below(stage))
    elif about(stage) is Scenery.RAFT:
        at = next((b.outline[0] for b in stage.system.bodies if len(b.outline) == 1), None)
        field.add(*(scenery.raft(stage.spot(at), _TAG) if at else ()))
    elif about(stage) is Scenery.HATCHWAY:
        draw_surfaces(field, _beside_hatch(stage), corners=False)
    elif about(stage) is Scenery.BILLBOARD:
        field.add(*_billboard(stage))
    elif about(stage) is Scenery.VAN:
        field.add(*_van(stage, lines))
    elif about(stage) is Scenery.PHONE:
        _before_a_face(stage, field)
    elif about(stage) in (Scenery.WALL_LEFT, Scenery.WALL_RIGHT):
        wall = _wall_beside(field.box, left=about(stage) is Scenery.WALL_LEFT)
        draw_surfaces(field, [wall], corners=False)


def _wall_beside(drawn: Box, *, left: bool) -> Surface:
    """The wall of a house, from the top of all that is drawn to some way below it."""
    up, down = drawn.top - drawn.centre.imag, drawn.centre.imag - drawn.bottom + _LOWER
    face = complex(drawn.left - _APART if left else drawn.right + _APART, drawn.centre.imag)
    return Surface(face, 0.0, up, down) if left else Surface(face, 180.0, down, up)


def _tilted(stage: Stage, field: Field) -> None:
    """A box once more, turned about the right edge of its base."""
    for body in stage.system.bodies:
        corners = stage.corners(body)
        if stage.look(body.id) in UPRIGHT and corners:
            edge = max(corners, key=lambda corner: (-round(corner.imag, 3), corner.real))
            turn = heading(-_TILT)
            field.add(polygon([edge + (c - edge) * turn for c in corners], _TURNED, _TAG))


def _stairs_below(stage: Stage) -> tuple[Shape, ...]:
    """A staircase below the first side of the first body, as steep as that is."""
    body = stage.system.bodies[0]
    spots = [stage.spot(name) for name in body.outline]
    if len(spots) < 2 or abs((spots[1] - spots[0]).real) < 1.0:
        return ()
    low, high = sorted(spots[:2], key=lambda spot: spot.imag)
    slope = (high - low) / abs(high - low)
    tread = _TREAD * stage.scale
    side = 1 if slope.real > 0 else -1
    count = max(3, round(abs((high - low).real) / tread) + 2)
    begin = low - complex(side * tread, _BELOW + tread * slope.imag / abs(slope.real))
    return scenery.stairs(begin, slope, tread, count, _TAG)


def _beside_hatch(stage: Stage) -> list[Surface]:
    """The floor, and the edge of its opening, where the end of the first body would close it."""
    body = stage.system.bodies[0]
    spots = [stage.spot(name) for name in body.outline]
    way = spots[-1] - spots[0]
    side = 1 if way.real >= 0 else -1
    corner = spots[0] + complex(side * (abs(way) + _PLAY), stage.halves[body.id])
    floor, fall = ((0.0, _FLOOR), (_THICK, 0.0)) if side > 0 else ((_FLOOR, 0.0), (0.0, _THICK))
    edge = Surface(corner, 180.0 if side > 0 else 0.0, *fall)
    return [Surface(corner, 90.0, *floor), edge]


def _billboard(stage: Stage) -> tuple[Shape, ...]:
    """A billboard before the points of the first body that level pushes act at."""
    ways = ((e, stage.measured.direction_of(e)) for e in stage.system.elements if stage.behind(e))
    level = [(e, heading(way)) for e, way in ways if way is not None]
    pushed = [(stage.spot(e.at), way) for e, way in level if abs(way.imag) < _LEVEL]
    if not pushed:
        return ()
    side = -1 if pushed[0][1].real > 0 else 1
    return scenery.billboard([spot for spot, _ in pushed], side, _TAG)


def _van(stage: Stage, lines: Sequence[Line]) -> tuple[Shape, ...]:
    """A van whose roof ends at the first hinge, with the feet of struts on its side."""
    hinge = next((e for e in stage.system.elements if e.kind is Kind.HINGE), None)
    if hinge is None:
        return ()
    pin, struts = stage.spot(hinge.at), {e.id for e in stage.system.elements if pushes(e)}
    feet = [each.ends[1] for each in lines if each.ends and each.element in struts]
    foot = min(feet, key=lambda spot: spot.imag, default=pin - complex(0.0, _REAR))
    opens = sum(stage.ways(hinge), 0j).real >= 0
    return vehicles.van_rear(pin, foot, _TAG, 1 if opens else -1)


def _before_a_face(stage: Stage, field: Field) -> None:
    for body in stage.system.bodies:
        if stage.look(body.id) is Look.HEAD and len(body.outline) > 1:
            spots = [stage.spot(name) for name in body.outline]
            size = abs(spots[-1] - spots[0])
            at = complex(spots[-1].real + 0.75 * size, spots[0].imag - 0.45 * size)
            field.add(*scenery.phone(at, 24.0, _TAG))
