"""A finished scene drawn larger: what it shows grows, its print and its lines keep their size."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from probgen.figures.paper.scene import Arc, Arrow, Box, Curve, Label, Path, Scene, Shape, bounds
from probgen.figures.paper.tag import Tag, What

_MOST: Final = 1.4
"""Beyond this, labels would stand too far from what they name."""


def enlarged(scene: Scene, room: complex) -> Scene:
    """The scene as large as its room (width and height, pt) lets it be, up to a limit.

    Labels keep their place beside what they name; their leaders reach them as before.
    """
    most = min(_MOST, room.real / scene.box.width, room.imag / scene.box.height)
    if most <= 1.0:
        return scene
    grown = tuple(_grown(shape, most, scene.labels) for shape in scene.shapes)
    return replace(scene, shapes=grown, box=bounds(grown), scale=scene.scale * most)


def _moved(label: Label, by: float) -> Label:
    step = label.box.centre * (by - 1.0)
    box = label.box
    moved = Box(
        box.left + step.real, box.bottom + step.imag, box.right + step.real, box.top + step.imag
    )
    return replace(label, spot=label.spot + step, box=moved)


def _grown(shape: Shape, by: float, labels: Sequence[Label]) -> Shape:
    match shape:
        case Label():
            return _moved(shape, by)
        case Path(tag=Tag(What.LEADER)):
            return _led(shape, by, [label for label in labels if label.tag == shape.tag.of])
        case Path():
            runs = tuple(tuple(spot * by for spot in run) for run in shape.lines)
            return replace(shape, lines=runs)
        case Curve():
            pieces = tuple((a * by, b * by, c * by) for a, b, c in shape.pieces)
            return replace(shape, start=shape.start * by, pieces=pieces)
        case Arc():
            return replace(shape, centre=shape.centre * by, radius=shape.radius * by)
        case Arrow():
            return replace(shape, tail=shape.tail * by, head=shape.head * by)


def _led(leader: Path, by: float, labels: Sequence[Label]) -> Path:
    """The leader from its label's edge to what it points at, both of which have moved."""
    ((start, end),) = leader.lines
    at = Box(start.real, start.imag, start.real, start.imag)
    label = min(labels, key=lambda each: each.box.gap(at))
    margin = label.box.gap(at)
    return replace(
        leader, lines=((_moved(label, by).box.grown(margin).nearest(end * by), end * by),)
    )
