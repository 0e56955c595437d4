"""Loads: the part a word asks for, and where it sits."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import bounds
from probgen.figures.paper.type_metrics import Extent
from probgen.figures.parts.load import Seat, draw_load, manner_of

ROOM = Extent(25.0, 6.0, 2.0)
LEVEL = Seat(10 + 20j, 1 + 0j, 3.0, 40.0, 1)


@pytest.mark.parametrize(
    ("word", "part", "manner"),
    [
        ("person", "person", "stands"),
        ("hung crate", "crate", "hangs"),
        ("crate", "crate", "stands"),
        ("hand-held ball", "ball", "held"),
        ("the first rider", "rider", "sits"),
        ("sign", "sign", "hangs"),
        ("gizmo", "block", "stands"),
    ],
)
def test_word_chooses_the_part(word: str, part: str, manner: str) -> None:
    assert manner_of(word) == (part, manner)


@pytest.mark.parametrize("word", ["crate", "person", "rider", "plant", "ball", "gizmo"])
def test_what_stands_lies_above_its_body(word: str) -> None:
    shapes, _ = draw_load(word, LEVEL, ROOM, "load:W")
    assert bounds(shapes).bottom >= 20.0 + LEVEL.half - 1.5


@pytest.mark.parametrize("word", ["sign", "lamp", "bucket", "hung gizmo"])
def test_what_hangs_lies_below_its_point(word: str) -> None:
    shapes, _ = draw_load(word, LEVEL, ROOM, "load:W")
    box = bounds(shapes)
    assert box.top <= 20.0 + 1.5
    assert box.centre.real == pytest.approx(10.0, abs=0.5)


def test_face_has_room_for_the_label() -> None:
    _, face = draw_load("crate", LEVEL, ROOM, "load:W")
    assert face is not None
    assert face.width > ROOM.width
    assert face.height > ROOM.height + ROOM.depth


def test_bucket_near_the_ground_stays_off_it() -> None:
    low = Seat(10 + 20j, 1 + 0j, 3.0, 40.0, 1, clear=16.0)
    shapes, _ = draw_load("bucket", low, ROOM, "load:W")
    assert bounds(shapes).bottom > 4.0
