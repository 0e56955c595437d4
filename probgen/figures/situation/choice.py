"""Which of two drawings of one situation to keep."""

from __future__ import annotations

from typing import Final

from probgen.figures.paper.scene import Scene
from probgen.figures.paper.tag import What

_WORTH: Final = 2  # extension lines through walls, of one line to a label
_LARGER: Final = 1.2  # by how much a figure may grow


def as_near(one: Scene, other: Scene, spared: int = 0) -> bool:
    """Whether as few lines lead to labels in one as in another, and it takes hardly more room.

    spared: how many extension lines fewer run through walls in it; some are worth a line more.
    """
    led, least = (len(scene.showing(What.LEADER)) for scene in (one, other))
    width, height = one.box.width / other.box.width, one.box.height / other.box.height
    return led <= least + max(spared, 0) // _WORTH and max(width, height) < _LARGER
