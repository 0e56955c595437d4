"""The notes of free-body diagrams, small, in the same places in all that stand beside a text."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import chain, combinations
from typing import Final

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around, set_in
from probgen.figures.paper.scene import Box, Label, Scene
from probgen.figures.paper.tag import Tag, What
from probgen.figures.paper.type_metrics import extent

_SMALL: Final = 7.5  # size of notes, pt
_LINE: Final = 9.5  # from one line of notes to the next, pt
_BETWEEN: Final = 1.0  # the least from one line to the next, pt
_BESIDE: Final = 8.0  # the same between notes side by side, pt
_MORE: Final = 11.0  # how much higher a diagram may become to have its notes where others do, pt
_UNDER: Final = 4.0  # from a drawing to a note below it, pt

Note = tuple[str, Tag]
"""What is said of a drawing, and the tag it has."""


def draw_note(field: Field, words: str, tag: Tag) -> None:
    """Say something of the drawing, small, in a lower corner with room, else below it."""
    box, room = field.box, extent(words, _SMALL)
    width, height = room.width, room.height + room.depth
    corners = (
        Box(left, box.bottom, left + width, box.bottom + height)
        for left in (box.right - width, box.left)
        if box.width > width
    )
    below = around(words, ((complex(box.right - width / 2, box.bottom), 270.0),), size=_SMALL)
    field.place(words, chain(corners, below), tag, _SMALL)


def in_line(scenes: Sequence[Scene], rooms: Sequence[complex]) -> tuple[Scene, ...]:
    """The diagrams of one problem with their notes in the same places in all, flush with their edge
    as the diagrams are; as they are where that would make one too large.

    rooms: width and height allowed for each, pt.
    """
    if len(scenes) < 2:
        return tuple(scenes)
    fields, notes = [_bare(scene) for scene in scenes], [_notes(scene) for scene in scenes]
    trials = (_ways(field.box, own) for field, own in zip(fields, notes, strict=True))
    for ways in zip(*trials, strict=True):
        if not all(map(_is_free, fields, ways)):
            continue
        alike = tuple(map(_noted, scenes, fields, notes, ways))
        if all(map(_keeps, scenes, alike, rooms)):
            return alike
    return tuple(scenes)


def _is_free(field: Field, boxes: Sequence[Box]) -> bool:
    """Whether there is room for notes; none is broader than a drawing in whose corner it stands."""
    narrow = any(box.left < field.box.left and box.top > field.box.bottom for box in boxes)
    grown = [box._replace(right=box.right + _BESIDE - _BETWEEN) for box in boxes]
    apart = all(a.gap(b) > _BETWEEN for a, b in combinations(grown, 2))
    return not narrow and apart and all(map(field.is_free, boxes))


def _ways(box: Box, notes: Sequence[Note]) -> tuple[tuple[Box, ...], ...]:
    """Where notes may stand about a drawing, best first: in its two lower corners, one over the
    other in the right one and in the left one; below it, side by side and one over the other.
    """
    rooms = [extent(words, _SMALL) for words, _ in notes]
    corners = [*(box.right - room.width for room in rooms[:1]), *(box.left for _ in rooms[1:])]
    rights = [box.right - max(room.width for room in rooms) for _ in rooms]
    rows = [_LINE * row for row in reversed(range(len(rooms)))]
    high = max((room.height for room in rooms), default=0.0)
    deep = max((room.depth for room in rooms), default=0.0)
    base, under = box.bottom + deep, box.bottom - _UNDER - high

    def laid(lefts: Sequence[float], low: float, rows: Sequence[float]) -> tuple[Box, ...]:
        return tuple(
            Box(left, low + row - room.depth, left + room.width, low + row + room.height)
            for left, row, room in zip(lefts, rows, rooms, strict=True)
        )

    return (
        laid(corners, base, [0.0 for _ in rows]),
        laid(rights, base, rows),
        laid([box.left for _ in rooms], base, rows),
        laid(corners, under, [0.0 for _ in rows]),
        laid(rights, under - max(rows, default=0.0), rows),
    )


def _labels(notes: Sequence[Note], boxes: Sequence[Box]) -> list[Label]:
    pairs = zip(notes, boxes, strict=True)
    return [set_in(words, box, tag, _SMALL) for (words, tag), box in pairs]


def _notes(scene: Scene) -> list[Note]:
    found = [label for label in scene.labels if label.tag.what is What.NOTE]
    return [(label.text, label.tag) for label in found if isinstance(label.text, str)]


def _bare(scene: Scene) -> Field:
    """The paper of a diagram without its notes."""
    field = Field()
    field.add(*(shape for shape in scene.shapes if shape.tag.what is not What.NOTE))
    return field


def _noted(scene: Scene, field: Field, notes: Sequence[Note], boxes: Sequence[Box]) -> Scene:
    noted = field.trial()
    noted.add(*_labels(notes, boxes))
    return replace(scene, shapes=tuple(noted.shapes), box=noted.box)


def _keeps(scene: Scene, other: Scene, room: complex) -> bool:
    """Whether a diagram keeps to its room, or grows no larger than it was."""
    return (
        other.box.width <= max(room.real, scene.box.width)
        and other.box.height <= max(room.imag + _MORE, scene.box.height)
    )  # fmt: skip
