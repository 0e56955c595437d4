"""A finished scene drawn larger: what it shows grows, its print and its lines keep their size.

The angles are set anew in the room that has become free.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from probgen.figures.paper.angle import dashed_to, draw_angle
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    Arc,
    Arrow,
    Box,
    Curve,
    Label,
    Path,
    Scene,
    Shape,
    bounds,
    runs,
)
from probgen.figures.paper.tag import Tag, What

_MOST: Final = 1.4
"""Beyond this, labels would stand too far from what they name."""


def enlarged(
    scene: Scene, room: complex, things: Mapping[Tag, Sequence[Tag]] | None = None
) -> Scene:
    """The scene as large as its room (width and height, pt) lets it be, up to a limit.

    things: by the tag of a label those of the thing it stands beside, and is to stay as near to, of
    which the first that is drawn counts.
    Other labels keep their place beside what they name; their leaders reach them as before.
    """
    most = min(_MOST, room.real / scene.box.width, room.imag / scene.box.height)
    if most <= 1.0:
        return scene
    boxes = {}
    for label, tags in (things or {}).items():
        drawn = (scene.showing(tag.what, tag.of) for tag in tags)
        if shapes := next(filter(None, drawn), ()):
            boxes[label] = bounds(shapes)
    moved = {each: _moved(each, most, boxes.get(each.tag)) for each in scene.labels}
    grown = tuple(_grown(shape, most, moved) for shape in scene.shapes)
    larger = replace(scene, shapes=grown, box=bounds(grown), scale=scene.scale * most)
    anew = _angles_anew(larger)
    return anew if anew.box.width <= room.real and anew.box.height <= room.imag else larger


def _angles_anew(scene: Scene) -> Scene:
    """The scene with its angles set among all else that is drawn, in the same order."""
    arcs = [s for s in scene.shapes if isinstance(s, Arc) and s.tag.what is What.ANGLE]
    marks = {arc: _mark(scene, arc) for arc in arcs}
    old = {shape for mark in marks.values() for shape in mark}
    field = Field()
    for shape in scene.shapes:
        if shape not in old:
            field.add(shape, solid=shape.tag.what is not What.HATCH)
    for number, (arc, mark) in enumerate(marks.items(), start=1):
        coming = [run for each in arcs[number:] for run in runs(each)]
        draw_angle(
            field,
            arc.centre,
            arc.start,
            arc.start + arc.sweep,
            next(shape.text for shape in mark if isinstance(shape, Label)),
            str(arc.tag.of),
            reference_drawn=dashed_to(scene.shapes, arc.centre, arc.start) == arc.centre,
            reflex=abs(arc.sweep) > 180.0,
            others=[piece for run in coming for piece in pairwise(run)],
        )
    return replace(scene, shapes=tuple(field.shapes), box=field.box)


def _mark(scene: Scene, arc: Arc) -> set[Shape]:
    """All that tells one angle: its arc, its lines as far as they are drawn for it, its number."""
    name = Tag(What.LABEL, arc.tag.of)
    tags = {arc.tag, name, Tag(What.LEADER, name)}
    tags |= {Tag(what, arc.tag.of) for what in (What.ARM, What.REFERENCE)}
    return {shape for shape in scene.shapes if shape.tag in tags}


def _moved(label: Label, by: float, thing: Box | None) -> Label:
    """The label in its share of the way; as near to its thing as before, where that is named."""
    step = label.box.centre * (by - 1.0)
    if thing is not None:
        moved, grown = label.box.shifted(step), thing.scaled(by)
        way, before = moved.way_to(grown), label.box.gap(thing)
        if abs(way) > before:
            step += way * (1.0 - before / abs(way))
    return replace(label, spot=label.spot + step, box=label.box.shifted(step))


def _grown(shape: Shape, by: float, moved: Mapping[Label, Label]) -> Shape:
    match shape:
        case Label():
            return moved[shape]
        case Path(tag=Tag(What.LEADER)):
            return _led(shape, by, {a: b for a, b in moved.items() if a.tag == shape.tag.of})
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


def _led(leader: Path, by: float, moved: Mapping[Label, Label]) -> Path:
    """The leader from its label's edge to what it points at, both of which have moved."""
    ((start, end),) = leader.lines
    at = Box(start.real, start.imag, start.real, start.imag)
    label = min(moved, key=lambda each: each.box.gap(at))
    around = moved[label].box.grown(label.box.gap(at))
    return replace(leader, lines=((around.nearest(end * by), end * by),))
