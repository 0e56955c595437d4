"""The notes of free-body diagrams: where they stand, and that they stand alike in several."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from probgen.figures.freebody.notes import draw_note, in_line
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import FINE, Box, Label, Scene, line
from probgen.figures.paper.tag import Tag
from tests.figures.seen import tag

SCALE, PAIRS = ("arrows to scale", tag("note:scale")), ("ticks: a pair", tag("note:pairs"))


def drawing(*runs: tuple[complex, complex]) -> Field:
    field = Field()
    field.add(*(line(start, end, FINE) for start, end in runs))
    return field


def boxes(shapes: Sequence[object]) -> list[Box]:
    return [shape.box for shape in shapes if isinstance(shape, Label)]


def test_a_note_stands_low_in_a_free_corner_the_right_one_first() -> None:
    field = drawing((0j, 150j), (0j, 200 + 150j))
    draw_note(field, *SCALE)
    (box,) = boxes(field.shapes)
    assert box.right == pytest.approx(200.175)
    assert box.bottom == pytest.approx(-0.175)
    taken = drawing((200 + 0j, 200 + 150j), (0j + 150j, 200 + 0j))
    draw_note(taken, *SCALE)
    assert boxes(taken.shapes)[0].left == pytest.approx(0.0, abs=0.2)


def test_a_note_without_room_stands_below() -> None:
    field = drawing((0j, 30 + 0j), (30 + 0j, 30 + 20j), (30 + 20j, 20j), (20j, 0j))
    draw_note(field, *SCALE)
    assert boxes(field.shapes)[0].top < 0.0


def scene(field: Field, *notes: tuple[str, Tag]) -> Scene:
    for words, tag_ in notes or (SCALE,):
        draw_note(field, words, tag_)
    return Scene(tuple(field.shapes), field.box)


RIGHT = ((0j, 150j), (0j, 200 + 150j))  # free in its right corner alone
LEFT = ((200 + 0j, 200 + 150j), (150j, 200 + 0j))
BOTH = ((60 + 0j, 61 + 0j), (150j, 200 + 150j), (200 + 150j, 200 + 140j))


def test_notes_of_several_diagrams_stand_in_the_same_place() -> None:
    """In the left corner where the right one is not free in all, and below where none is."""
    rooms = [300 + 300j] * 2
    for each in in_line([scene(drawing(*LEFT)), scene(drawing(*BOTH))], rooms):
        assert boxes(each.shapes)[0].left == pytest.approx(each.box.left)
    for each in in_line([scene(drawing(*LEFT)), scene(drawing(*RIGHT))], rooms):
        (box,) = boxes(each.shapes)
        assert box.top < 0.0
        assert box.right == pytest.approx(each.box.right)


def test_two_notes_have_one_baseline_or_stand_one_over_the_other() -> None:
    def laid(*drawings: Field) -> list[list[Label]]:
        found = in_line([scene(each, SCALE, PAIRS) for each in drawings], [300 + 300j] * 2)
        return [list(each.labels) for each in found]

    for scale, pairs in laid(drawing(*BOTH), drawing(*BOTH)):
        assert scale.spot.imag == pytest.approx(pairs.spot.imag)
        assert pairs.box.right < 100.0 < scale.box.left
    for scale, pairs in laid(drawing(*RIGHT), drawing(*BOTH)):
        assert scale.spot.real == pytest.approx(pairs.spot.real)
        assert scale.box.bottom > pairs.box.top


def test_notes_stay_where_they_are_if_a_diagram_would_become_too_high() -> None:
    scenes = scene(drawing(*LEFT)), scene(drawing(*RIGHT))
    assert in_line(scenes, [300 + 151j] * 2) != scenes
    assert in_line(scenes, [300 + 130j] * 2) == scenes
    assert in_line(scenes[:1], [300 + 151j]) == scenes[:1]  # nor where it is alone
