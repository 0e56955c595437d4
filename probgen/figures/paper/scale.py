"""The scale a figure is drawn at: the largest at which it keeps to its room.

Labels, arrows and parts keep their size when the scale changes, so the scale is found by trying:
with the strokes alone, which are quickly drawn, before any label is placed among them.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Final, Protocol

from probgen.figures.paper.scene import Box, Scene

POINTLIKE: Final = 1e-6
"""What is no larger than this has no size of its own, m."""

LEEWAY: Final = 10 + 40j
"""How much wider and higher than its room a figure may be that would be cramped otherwise, pt."""

_SKETCHES: Final = 5  # of the strokes alone, for one guess of what labels take
_TRIALS: Final = 2  # whole drawings, when one of them fits
_MORE: Final = 5  # further ones as long as none fits
_NEAR: Final = (1.0, 0.9, 0.8, 0.7)  # of a scale, that still are near it
_LEAST: Final = 0.3  # of the first guess, below which no scale is tried
_STEP: Final = 0.8  # the least of its scale that a figure is drawn at next
_CRAMPED: Final = 0.75  # of the scale of such a figure
_FIXED: Final = 28.0  # a first guess of what parts of fixed size take in either direction, pt
_SPARED: Final = 4.0  # what a guess leaves unused, lest labels that move make it too large, pt
_SLACK: Final = 22.0  # room that strokes may leave, pt
_MOST: Final = 0.45  # of the room, that labels are left in either direction at first
_MORE_ROOM: Final = 0.06  # of the room, that they are left more at each further trial
_UNUSED: Final = 34.0  # room left over that is not worth another whole drawing, pt


class Drawing(Protocol):
    """An attempt at a figure at one scale."""

    @property
    def scale(self) -> float:
        """Points on paper for each metre."""

    def strokes(self) -> Box:
        """Draw all that labels are placed among; the rectangle around it."""

    def labelled(self) -> Scene:
        """The whole figure, once its strokes are drawn."""


def fitted(
    begin: Callable[[float], Drawing], core: complex, room: complex, labels: complex
) -> Scene:
    """The drawing at the scale that fills its room.

    begin: starts a drawing at a scale (pt for each metre); core: width and height (m) of what
    grows with the scale; room: width and height allowed (pt); labels: a first guess of what they
    add to the strokes' width and height (pt).
    """
    scale = first = _least(room - labels - complex(_FIXED, _FIXED), core)
    best: Scene | None = None
    near: Scene | None = None  # one that is a little too large
    for trial in range(_TRIALS + _MORE):
        drawing, box = _sketched(begin, scale, core, room - labels)
        if trial and drawing.scale < _STEP * scale:  # what labels take leaps from scale to scale
            drawing = begin(_STEP * scale)
            box = drawing.strokes()
        if near and drawing.scale < _CRAMPED * near.scale:
            break
        scene, scale = drawing.labelled(), drawing.scale
        if max(core.real, core.imag) <= POINTLIKE:
            return scene  # nothing in it grows with the scale
        if fits(scene, room):
            best = scene if best is None or scale > best.scale else best
        elif fits(scene, room + LEEWAY):
            near = near or scene
        enough = _is_filled(scene.box, room, _UNUSED) or (best and trial >= _TRIALS - 1)
        if enough or (best is None and scale < _LEAST * first):
            break  # what is too large at the least scale does not grow with it
        taken = _size(scene.box) - _size(box) + complex(_SPARED, _SPARED) * trial
        # One label far off is no reason to draw everything else tiny.
        most = room * (_MOST + _MORE_ROOM * trial)
        labels = complex(min(taken.real, most.real), min(taken.imag, most.imag))
    return best or near or scene


def nearly(begin: Callable[[float], Drawing], scale: float, room: complex) -> Scene | None:
    """The drawing at a scale, or at the next smaller one at which it keeps to its room with a place
    for each of its labels; None where there is none near.
    """
    for share in _NEAR:
        drawing = begin(share * scale)
        drawing.strokes()
        scene = drawing.labelled()
        if fits(scene, room) and not scene.strained:
            return scene
    return None


def fits(scene: Scene, room: complex) -> bool:
    """Whether a drawing keeps to its room."""
    return scene.box.width <= room.real and scene.box.height <= room.imag


def _sketched(
    begin: Callable[[float], Drawing], scale: float, core: complex, room: complex
) -> tuple[Drawing, Box]:
    """A drawing whose strokes fill their room, as nearly as a few trials find, and their box."""
    low, high = 0.0, math.inf  # the largest scale that fitted, the smallest that did not
    best: tuple[Drawing, Box] | None = None
    for _ in range(_SKETCHES):
        drawing = begin(scale)
        box = drawing.strokes()
        if _is_filled(box, room, _SLACK) or max(core.real, core.imag) <= POINTLIKE:
            return drawing, box
        unused = room - complex(_SPARED, _SPARED) - _size(box)
        if min(unused.real, unused.imag) < 0:
            high = scale
        else:
            low, best = scale, (drawing, box)
        scale += _least(unused, _growth(_size(box), scale, core))
        if not low < scale < high:  # some parts leap from size to size
            scale = (low + high) / 2 if low and high < math.inf else 0.5 * high
    return best or (drawing, box)


def _growth(size: complex, scale: float, core: complex) -> complex:
    """By how much width and height grow with the scale: by all but what is of fixed size."""
    grown = (size - complex(_FIXED, _FIXED)) / scale
    return complex(max(core.real, grown.real), max(core.imag, grown.imag))


def _size(box: Box) -> complex:
    return complex(box.width, box.height)


def _least(lengths: complex, by: complex) -> float:
    """The smaller one of the quotients of the widths and of the heights."""
    return min(lengths.real / by.real, lengths.imag / by.imag)


def _is_filled(box: Box, room: complex, slack: float) -> bool:
    """Whether a box keeps to its room and leaves less than some slack (pt) of it."""
    return 0 <= min(room.real - box.width, room.imag - box.height) < slack
