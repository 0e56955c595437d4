"""The scale of a figure: as large as its room allows, found with strokes alone where it can."""

from __future__ import annotations

from dataclasses import dataclass, field

import pytest

from probgen.figures.paper.scale import fits, fitted, nearly
from probgen.figures.paper.scene import Box, Scene

ROOM = 213 + 170j


@dataclass
class Attempt:
    """A figure that is `core` metres large, with parts and labels of fixed size."""

    scale: float
    core: complex
    parts: complex
    labels: complex
    log: list[str] = field(default_factory=list)
    crowded: float = 0.0  # the scale above which a label has no place of its own

    def _box(self, fixed: complex) -> Box:
        size = self.core * self.scale + fixed
        return Box(0.0, 0.0, size.real, size.imag)

    def strokes(self) -> Box:
        self.log.append("strokes")
        return self._box(self.parts)

    def labelled(self) -> Scene:
        self.log.append("labelled")
        strained = int(self.scale > self.crowded > 0.0)
        return Scene((), self._box(self.parts + self.labels), self.scale, strained=strained)


def drawn(core: complex, parts: complex, labels: complex) -> tuple[Scene, list[str]]:
    log: list[str] = []
    scene = fitted(lambda scale: Attempt(scale, core, parts, labels, log), core, ROOM, 28 + 30j)
    return scene, log


@pytest.mark.parametrize("core", [1 + 0.3j, 0.02 + 0.07j, 12 + 12j])
@pytest.mark.parametrize("parts", [5 + 5j, 60 + 20j, 10 + 90j])
@pytest.mark.parametrize("labels", [0j, 28 + 30j, 60 + 10j])
def test_room_is_kept_to_and_filled(core: complex, parts: complex, labels: complex) -> None:
    scene, log = drawn(core, parts, labels)
    assert fits(scene, ROOM)
    assert min(ROOM.real - scene.box.width, ROOM.imag - scene.box.height) < 40.0
    assert log.count("labelled") <= 3


def test_labels_are_placed_once_where_they_take_what_was_guessed() -> None:
    _, log = drawn(1 + 0.5j, 70 + 10j, 28 + 30j)
    assert log.count("labelled") == 1
    assert log.count("strokes") > 1


def test_what_has_no_size_of_its_own_is_drawn_once() -> None:
    scene, log = drawn(1e-9 + 1e-9j, 300 + 300j, 0j)
    assert log == ["strokes", "labelled"]
    assert scene.box.width > ROOM.real


def test_what_never_fits_is_drawn_all_the_same() -> None:
    scene, log = drawn(1 + 1j, 400 + 10j, 0j)
    assert not fits(scene, ROOM)
    assert len(log) < 60


@pytest.mark.parametrize(
    ("room", "crowded", "share"),
    [(ROOM, 0.0, 1.0), (180 + 170j, 0.0, 0.8), (ROOM, 150.0, 0.7), (ROOM, 70.0, None)],
    ids=["as it is", "what keeps to its room", "a place for each label", "none near"],
)
def test_a_drawing_nearly_as_large(room: complex, crowded: float, share: float | None) -> None:
    scene = nearly(
        lambda scale: Attempt(scale, 1 + 0.5j, 10 + 10j, 0j, crowded=crowded), 200.0, room
    )
    assert (scene and scene.scale / 200.0) == (share and pytest.approx(share))
