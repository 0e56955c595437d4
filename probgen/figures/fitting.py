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
_SPARED: Final = 6.0  # what a guess leaves unused, lest labels that move make it too large, pt
_MORE: Final = 6  # further trials when nothing has fitted yet
_SLACK: Final = 24.0  # room left over that is not worth another trial, pt


def fitted(draw: Callable[[float], Scene], core: complex, room: complex, spare: float) -> Scene:
    """The drawing at the scale (pt for each metre) that fills its room.

    core: width and height (m) of what grows with the scale; room: width and height allowed (pt);
    spare: a first guess of what labels take in either direction (pt).
    """
    scale = min((room.real - spare) / core.real, (room.imag - spare) / core.imag)
    first = scale
    best: Scene | None = None
    before: Scene | None = None
    for trial in range(_TRIALS + _MORE):
        scene = draw(scale)
        if max(core.real, core.imag) <= POINTLIKE:
            return scene  # nothing in it grows with the scale
        if fits(scene, room) and (best is None or scene.scale > best.scale):
            best = scene
        unused = min(room.real - scene.box.width, room.imag - scene.box.height)
        if 0 <= unused < _SLACK or (best and trial >= _TRIALS - 1):
            break
        if best is None and scene.scale < _LEAST * first:
            break  # what is too large does not grow with the scale
        scale += _change(scene, before, core, room - complex(_SPARED, _SPARED), spare)
        scale = min(max(scale, 0.45 * scene.scale), 1.6 * scene.scale)
        if best is None and trial >= _TRIALS - 1:
            scale *= 0.94
        before = scene
    return best or scene


def fits(scene: Scene, room: complex) -> bool:
    """Whether a drawing keeps to its room."""
    return scene.box.width <= room.real and scene.box.height <= room.imag


def _change(
    scene: Scene, before: Scene | None, core: complex, room: complex, spare: float
) -> float:
    """By how much the scale might grow until the room is used; negative to shrink.

    What grows is at first taken to be all but `spare`, then what grew since the trial before.
    """
    sizes = ((scene.box.width, core.real, room.real), (scene.box.height, core.imag, room.imag))
    last = (before.box.width, before.box.height) if before else (0.0, 0.0)
    changes = []
    for (size, least, most), then in zip(sizes, last, strict=True):
        growth = max(least, (size - spare) / scene.scale)
        if before and scene.scale != before.scale:
            grown = (size - then) / (scene.scale - before.scale)
            # A label that moved to another place is no measure of growth.
            growth = min(max(grown, 0.75 * growth), 1.5 * growth)
        changes.append((most - size) / growth)
    return min(changes)
