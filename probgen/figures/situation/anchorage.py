"""What holds the far end of a line: a wall or a ceiling that is there, or one of its own.

The faces lines are fixed to are a list, `walls`: one is lengthened where a line ends at it, and a
line that finds none gets a face of its own.
"""

from __future__ import annotations

from typing import Final

from probgen.bank.depiction import Anchor
from probgen.figures.paper.scene import (
    MEDIUM,
    REFERENCE,
    Shape,
    Spot,
    circle,
    dot,
    heading,
    line,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import solid
from probgen.figures.parts.ground import Surface
from probgen.figures.situation.fixture import FACE
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element

_REACH: Final = 16.5  # a wall this near a line's end holds it, pt
_RISE: Final = 1.45  # the highest a cable is followed to its wall, in lengths of its body
_BROKEN: Final = 0.6  # how high one that rises further is drawn
_SHORTEST: Final = 46.0  # how near a ceiling may be to it, along a cord, pt
_MAST: Final = 52.0  # from a body to a mast beside it, pt
_FARTHEST: Final = 110.0  # how far a wall may be from a particle it holds, pt


def wall_hit(
    stage: Stage, walls: list[Surface], start: Spot, direction: float, element: Element
) -> tuple[Spot, tuple[Shape, ...]] | None:
    """Where a line meets a wall; one that would rise too high is drawn broken off.

    With the spot what shows that the line goes on.
    """
    unit = heading(direction)
    particle = stage.system.body(element.body).particle
    for place, surface in enumerate(walls):
        if stage.state_at(surface.at) != stage.state_at(start):
            continue
        reach = _reach(surface, start, unit)
        if reach is None or (particle and reach > _FARTHEST):
            continue
        if particle and surface.normal == 270.0 and reach < _SHORTEST:
            continue  # a steep cord beside one that rises little has a ceiling of its own
        size, rise = stage.size(element.body), abs(unit.imag) * reach
        if not particle and rise > _RISE * size:
            end = start + unit * reach * _BROKEN * size / rise
            return end, (line(end, end + unit * 13.0, REFERENCE, Tag(What.BEYOND, element.id)),)
        walls[place] = surface.covering(start + unit * reach, FACE)
        return start + unit * reach, ()
    return None


def to_mast(
    stage: Stage, walls: list[Surface], element: Element, start: Spot, unit: complex
) -> tuple[Spot, tuple[Shape, ...]]:
    """Where a line meets a mast beside its body, and the mast, up from the ground there is below
    that or one of its own.
    """
    outline = [stage.spot(name) for name in stage.system.body(element.body).outline]
    left, right = min(s.real for s in outline), max(s.real for s in outline)
    beside = left - _MAST if unit.real < 0 else right + _MAST
    end = start + unit * (beside - start.real) / unit.real
    floors = [each for each in walls if each.normal == 90.0]
    low = min((floor.at.imag for floor in floors), default=min(s.imag for s in outline) - _MAST / 2)
    foot, tag = complex(beside, low), Tag(What.SUPPORT, element.id)
    walls.append(Surface(foot, 90.0, FACE, FACE))
    return end, (*solid.post(foot, end + 9j, tag), solid.rope_ring(end, tag))


def _reach(surface: Surface, start: Spot, unit: complex) -> float | None:
    """How far (pt) it is to a wall or a ceiling in front of a spot; None where none is met."""
    closing = dot(unit, heading(surface.normal))
    if closing > -0.05 or 60.0 < surface.normal < 120.0:
        return None  # it runs away from this face, or down to the ground
    height = surface.height(start)
    return -height / closing if height > 0 else None


def anchored(
    walls: list[Surface], end: Spot, direction: float, tag: Tag, told: Anchor | None = None
) -> tuple[Shape, ...]:
    """A line's far end fixed to a wall nearby, or to a ceiling or wall of its own.

    told: to which of the two, however level or steep it runs, unless it runs straight up.
    """
    for place, surface in enumerate(walls):
        if told is Anchor.CEILING and surface.normal != 270.0:
            continue
        if abs(surface.height(end)) <= _REACH:
            face = end - heading(surface.normal) * surface.height(end)
            walls[place] = surface.covering(face, FACE)
            if abs(face - end) > 0.5:
                return line(face, end, MEDIUM, tag), circle(end, 1.5, MEDIUM, tag)
            return ()
    # A line that rises ends at a ceiling, unless it is nearly level.
    unit = heading(direction)
    level = abs(unit.imag) < 0.3 and told is not Anchor.CEILING
    level |= told is Anchor.WALL and abs(unit.real) > 0.1
    normal = round((direction + 180.0) / (180.0 if level else 90.0)) * (180.0 if level else 90.0)
    if not level and unit.imag > 0:
        normal = 270.0
    walls.append(Surface(end, normal % 360.0, FACE, FACE))
    return ()
