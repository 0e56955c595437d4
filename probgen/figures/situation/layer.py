"""What lies in front of what: the strokes of a situation from the back to the front."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from probgen.figures.paper.scene import Shape

_BACK_TO_FRONT: Final = (
    ("scenery",),
    ("soil",),
    ("ground", "hatch", "incline"),
    ("beyond",),
    ("body",),
    ("support",),
    ("muscle", "cable", "rope", "spring", "strut", "pulley"),
    ("load", "shelf", "distributed"),
)
_LAYERS: Final = {kind: place for place, kinds in enumerate(_BACK_TO_FRONT) for kind in kinds}


def layered(shapes: Iterable[Shape]) -> tuple[Shape, ...]:
    """Shapes from the back to the front, by the kind in their tags; alike ones as they come."""
    return tuple(sorted(shapes, key=_layer))


def _layer(shape: Shape) -> int:
    return _LAYERS.get(shape.tag.partition(":")[0], len(_LAYERS))
