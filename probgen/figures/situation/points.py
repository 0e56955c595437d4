"""The letters of the points a problem speaks of: supports, lines, corners and ends of bodies."""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from probgen.figures.measured.survey import untold_in, ways_out
from probgen.figures.paper.canvas import Field
from probgen.figures.situation.lettering import Lettered, set_letters
from probgen.figures.situation.shape import UPRIGHT
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Body, Kind

_UNLETTERED: Final = (Kind.WEIGHT, Kind.HOLE, Kind.DISTRIBUTED)
"""What acts at points that have no letter in the figure unless something else is there."""


def draw_letters(
    stage: Stage, field: Field, named: Collection[str], marked: Collection[str]
) -> None:
    """named: the points the statement names, which have a letter whatever is there; marked: those
    where a section is.
    """
    drawn = {
        name for body in stage.system.bodies if not _boxed(stage, body) for name in body.outline
    }
    drawn |= {
        name
        for each in stage.system.elements
        if each.kind is not Kind.WEIGHT or each.own  # what stands there hides where
        for name in (each.at, each.toward)
    }
    drawn |= {*marked}
    letters = stage.measured.letters
    points = {
        name: Lettered(letters.get(name, name), stage.spot(name), _half_at(stage, name))
        for name in _lettered(stage, named)
    }
    bare = {name for name in points if name not in drawn}
    set_letters(field, points, bare)


def _boxed(stage: Stage, body: Body) -> bool:
    """Whether a body's axis is not drawn itself, but a box about it."""
    return stage.look(body.id) in UPRIGHT and len(body.outline) == 2


def _half_at(stage: Stage, point: str) -> float:
    """Half the thickness (pt) of the slender bodies at a point."""
    at = stage.measured.places[point]
    halves = [
        stage.halves[body.id]
        for body in stage.system.bodies
        if ways_out(stage.measured.outline(body), at) and not stage.corners(body)
    ]
    return max(halves, default=0.0)


def _lettered(stage: Stage, named: Collection[str]) -> list[str]:
    """Where supports and lines act on bodies with extent, their ends and corners, about which a
    key may take torques, and what the statement names.
    """
    extended = [body for body in stage.system.bodies if len(body.outline) > 1]
    shown = {body.id for body in extended}
    bars = [body for body in extended if not _boxed(stage, body)]
    wanted = {*named, *(name for body in bars for name in body.outline)}
    wanted |= {id for id, name in stage.measured.letters.items() if name in named}
    for element in stage.system.elements:
        if element.body in shown and element.kind not in _UNLETTERED:
            wanted |= {element.at, element.toward}
    return [
        point
        for point in stage.system.points
        if point in wanted and not untold_in(stage.measured, point)
    ]
