"""The scale a figure is drawn at: the largest at which it keeps to its room.

Labels, arrows and parts keep their size when the scale changes, so the scale is found by trying.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from probgen.figures.scene import Scene

POINTLIKE: Final = 1e-6
"""What is no larger than this has no size of its own, m."""

_TRIALS: Final = 3
_LEAST: Final = 0.3  # of the first guess, below which no scale is tried
_SPARED: Final = 4.0  # what a guess leaves unused, lest labels that move make it too large, pt
_MORE: Final = 6  # further trials when nothing has fitted yet
_SLACK: Final = 28.0  # room left over that is not worth another trial, pt


def fitted(draw: Callable[[float], Scene], core: complex, room: complex, spare: float) -> Scene:
    """The drawing at the scale (pt for each metre) that fills its room.

    core: width and height (m) of what grows with the scale; room: width and height allowed (pt);
    spare: a first guess of what labels take in either direction (pt).
    """
    scale = min((room.real - spare) / core.real, (room.imag - spare) / core.imag)
    first = scale
    best: Scene | None = None
    for trial in range(_TRIALS + _MORE):
        scene = draw(scale)
        over = _change(scene, core, room)
        if over >= 0 and (best is None or scene.scale > best.scale):
            best = scene
        if max(core.real, core.imag) <= POINTLIKE:
            return scene  # nothing in it grows with the scale
        slack = over * max(core.real, core.imag)
        if 0 <= slack < _SLACK or (best and trial >= _TRIALS - 1):
            break
        if best is None and scene.scale < _LEAST * first:
            break  # what is too large does not grow with the scale
        scale += over - _SPARED / max(core.real, core.imag)
        scale = min(max(scale, 0.55 * scene.scale), 1.6 * scene.scale)
        if best is None and trial >= _TRIALS - 1:
            scale *= 0.94
    return best or scene


def fits(scene: Scene, room: complex) -> bool:
    """Whether a drawing keeps to its room."""
    return scene.box.width <= room.real and scene.box.height <= room.imag


def _change(scene: Scene, core: complex, room: complex) -> float:
    """By how much the scale might grow, were everything to grow with it; negative to shrink."""
    wide = (room.real - scene.box.width) / core.real
    high = (room.imag - scene.box.height) / core.imag
    return min(wide, high)
