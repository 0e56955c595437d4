"""Which of two drawings of one situation to keep."""

from __future__ import annotations

from typing import Final

from probgen.figures.paper.scene import Scene
from probgen.figures.paper.tag import What

_LARGER: Final = 1.2  # by how much a figure may grow


def as_near(one: Scene, other: Scene) -> bool:
    """Whether as few lines lead to labels in one as in another, and it takes hardly more room."""
    led, least = (len(scene.showing(What.LEADER)) for scene in (one, other))
    width, height = one.box.width / other.box.width, one.box.height / other.box.height
    return led <= least and max(width, height) < _LARGER
