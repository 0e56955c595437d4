"""Loads: each is drawn where it sits."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.bank.depiction import LOADS, Load
from probgen.figures.paper.scene import bounds, heading
from probgen.figures.paper.type_metrics import Extent
from probgen.figures.parts.load import Seat, draw_load, hangs

ROOM = Extent(25.0, 6.0, 2.0)
LEVEL = Seat(10 + 20j, 1 + 0j, 3.0, 40.0, 1)


def load(word: str) -> Load:
    return LOADS.words[word]


def test_what_stands_hangs_from_a_steep_body() -> None:
    steep = replace(LEVEL, along=heading(60.0))
    assert [hangs(load("crate"), seat) for seat in (LEVEL, steep)] == [False, True]
    assert not hangs(load("climber"), steep)
    assert hangs(load("crate hung"), LEVEL)


@pytest.mark.parametrize("word", ["crate", "person", "rider", "plant", "ball", "block"])
def test_what_stands_lies_above_its_body(word: str) -> None:
    shapes, _ = draw_load(load(word), LEVEL, ROOM, "load:W")
    assert bounds(shapes).bottom >= 20.0 + LEVEL.half - 1.5


@pytest.mark.parametrize("word", ["sign", "lamp", "bucket", "block hung"])
def test_what_hangs_lies_below_its_point(word: str) -> None:
    shapes, _ = draw_load(load(word), LEVEL, ROOM, "load:W")
    box = bounds(shapes)
    assert box.top <= 20.0 + 1.5
    assert box.centre.real == pytest.approx(10.0, abs=0.5)


def test_face_has_room_for_the_label() -> None:
    _, face = draw_load(load("crate"), LEVEL, ROOM, "load:W")
    assert face is not None
    assert face.width > ROOM.width
    assert face.height > ROOM.height + ROOM.depth


def test_bucket_near_the_ground_stays_off_it() -> None:
    low = Seat(10 + 20j, 1 + 0j, 3.0, 40.0, 1, clear=16.0)
    shapes, _ = draw_load(load("bucket"), low, ROOM, "load:W")
    assert bounds(shapes).bottom > 4.0
