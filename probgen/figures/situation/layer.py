"""What lies in front of what: the strokes of a situation from the back to the front."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from probgen.figures.paper.scene import Shape
from probgen.figures.paper.tag import What

_BACK_TO_FRONT: Final = (
    (What.SCENERY,),
    (What.SOIL,),
    (What.GROUND, What.HATCH, What.INCLINE),
    (What.BEYOND,),
    (What.BODY,),
    (What.SUPPORT,),
    (What.MUSCLE, What.CABLE, What.ROPE, What.SPRING, What.STRUT, What.PULLEY),
    (What.DISTRIBUTED,),
    (What.LOAD, What.SHELF),
)
_LAYERS: Final = {kind: place for place, kinds in enumerate(_BACK_TO_FRONT) for kind in kinds}


def layered(shapes: Iterable[Shape]) -> tuple[Shape, ...]:
    """Shapes from the back to the front, by what they stand for; alike ones as they come."""
    return tuple(sorted(shapes, key=_layer))


def _layer(shape: Shape) -> int:
    return _LAYERS.get(shape.tag.what, len(_LAYERS))
