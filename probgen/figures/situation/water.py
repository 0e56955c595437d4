"""The water that a distributed load is the push of: beside its arrows, up to its surface."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from probgen.bank.depiction import Fluid
from probgen.figures.measured.distributed import ROW, Row, face_of, rows, spread_of
from probgen.figures.measured.water import surface_height
from probgen.figures.paper.scene import Shape, Spot, heading
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import scenery
from probgen.figures.parts.ground import Surface
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element

_BEYOND: Final = 26.0  # how far water is drawn beyond the arrows of its push, pt
_STEP: Final = 2.5  # from a face to the wall above it, pt
_FREEBOARD: Final = 9.0  # how far that wall rises above the water, pt
_LEVEL: Final = 0.05  # the least sideways share of the push of water on a face beside it


def beside(stage: Stage, row: Row) -> tuple[Shape, ...]:
    """The water a row of arrows is the push of; nothing where it is that of anything else, or
    where no surface can be told from it.
    """
    shore = _shore(stage, row.element)
    if shore is None:
        return ()
    (low, high), level = shore.face, shore.level
    outer = _outer(shore, row)
    rim, far = complex(high.real, level), complex(outer, level)
    corners = (rim, far, complex(outer, low.imag), low, high)
    return scenery.pool(corners, Tag(What.SCENERY, row.element.id))


def walls_above(stage: Stage) -> Iterator[Surface]:
    """The walls that hold back what water stands above the faces it presses on."""
    for element in stage.system.elements:
        shore = _shore(stage, element)
        if shore and shore.level - shore.face[1].imag > _STEP:
            foot = shore.face[1] + _STEP * 1j
            up = shore.level + _FREEBOARD - foot.imag
            # The tangent of a face to the right runs down, of one to the left up.
            normal, before, after = (0.0, up, 0.0) if shore.side > 0 else (180.0, 0.0, up)
            yield Surface(foot, normal, before, after, lone=True)


def beds_under(stage: Stage) -> Iterator[Surface]:
    """The ground that such water stands on, up to the face it presses on."""
    for element in stage.system.elements:
        shore = _shore(stage, element)
        if shore is None:
            continue
        half, foot = stage.halves[element.body], shore.face[0]
        for row in rows(stage.measured, [element], stage.scale, half, ROW):
            left, right = sorted((foot.real, _outer(shore, row)))
            yield Surface(complex(left, foot.imag), 90.0, 0.0, right - left)


def hangs_from_wall(stage: Stage, pin: Spot) -> bool:
    """Whether a pin is at the lower end of such a wall."""
    near = max(stage.halves.values(), default=0.0) + _STEP + 1.0
    return any(abs(wall.at - pin) < near for wall in walls_above(stage))


@dataclass(frozen=True, slots=True)
class _Shore:
    """A face with water: on which side of it that is (1 right, -1 left), its ends from the lower
    to the higher, and the height of the surface, pt.
    """

    side: int
    face: tuple[Spot, Spot]
    level: float


def _outer(shore: _Shore, row: Row) -> float:
    """Where the water ends that is away from its face, pt."""
    reach = max(spot.real * shore.side for spot in (*row.feet, *row.tops))
    return shore.side * (reach + _BEYOND)


def _shore(stage: Stage, load: Element) -> _Shore | None:
    measured = stage.measured
    if stage.depicts.fluids.get(load.id) is not Fluid.WATER:
        return None
    surface, direction = surface_height(measured, load), measured.direction_of(load)
    spread = spread_of(measured, load)
    if surface is None or direction is None or spread is None:
        return None
    push = heading(direction)
    if abs(push.real) < _LEVEL:
        return None
    over = face_of(spread, push, stage.halves[load.body])
    ends = (spread.start * stage.scale + over, spread.end * stage.scale + over)
    low, high = sorted(ends, key=lambda end: end.imag)
    return _Shore(-1 if push.real > 0 else 1, (low, high), surface * stage.scale)
