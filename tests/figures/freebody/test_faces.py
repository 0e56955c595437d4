"""Forces on a wedge and on its block: pushes end at their faces, friction runs along them."""

from __future__ import annotations

import pytest

from probgen.bank.depiction import Look
from probgen.figures.freebody.faces import on_faces
from probgen.figures.measured.vector import vectors
from probgen.figures.measured.wedge import Faced, faced
from probgen.figures.paper.scene import Arrow, Path, Scene, bounds, dot, heading
from tests.figures.seen import outlines, tagged, touching
from tests.figures.sketches import alone, read, surveyed
from tests.figures.wedges import DRIVEN_DOWN, WEDGE

SIZES = {"P": 160.0, "N_1": 140.0, "f_1": 40.0, "N_2": 118.0, "f_2": 60.0, "G": 95.0, "N_3": 140.0}
EACH = [(WEDGE, "wedge"), (WEDGE, "block"), (DRIVEN_DOWN, "wedge"), (DRIVEN_DOWN, "crate")]


def drawn(text: str, body: str) -> tuple[Scene, Faced]:
    template, values, _ = read(text, 'wedge = "wedge"')
    values |= SIZES
    measured = surveyed(template, values)
    shape = faced(measured, template.system.body(body), Look.BEAM, template.depicts.wedges)
    assert shape is not None
    return alone(template, values, body, ""), shape


@pytest.mark.parametrize(("text", "body"), EACH)
def test_the_outline_is_drawn_and_no_label_lies_on_anything(text: str, body: str) -> None:
    scene, shape = drawn(text, body)
    (outline,) = outlines(scene, f"body:{body}")
    assert isinstance(outline, Path)
    assert outline.lines[0] == shape.corners
    assert touching(scene) == []


@pytest.mark.parametrize(("text", "body"), EACH)
def test_pushes_end_at_their_faces_from_outside(text: str, body: str) -> None:
    scene, shape = drawn(text, body)
    for face in shape.faces.values():
        ends = [a for a in scene.shapes if isinstance(a, Arrow) and abs(a.head - face.at) < 0.1]
        (push,) = ends
        assert dot(push.head - push.tail, face.out) == pytest.approx(-abs(push.head - push.tail))


def test_friction_runs_along_in_front_of_its_face() -> None:
    scene, shape = drawn(WEDGE, "wedge")
    (arrow,) = tagged(scene, "force:f_2")
    assert isinstance(arrow, Arrow)
    floor = next(face for face in shape.faces.values() if face.out == pytest.approx(-1j))
    assert dot(arrow.tail - floor.at, floor.out) > 2.0
    assert (arrow.head - arrow.tail).imag == pytest.approx(0.0)
    assert arrow.head.real < arrow.tail.real < floor.at.real


def test_a_weight_comes_from_above_where_a_floor_pushes_from_below() -> None:
    template, values, _ = read(DRIVEN_DOWN, 'wedge = "wedge"')
    values |= SIZES
    measured = surveyed(template, values)
    for body, presses in (("crate", True), ("wedge", False)):
        found = template.system.body(body)
        shape = faced(measured, found, Look.BEAM, template.depicts.wedges)
        assert shape is not None
        placed = on_faces(template.system, vectors(measured, found), shape)
        (weight,) = (each for each in placed if each.symbol.startswith("W"))
        assert (weight.at, weight.presses) == (shape.clear, presses)


def test_the_push_on_a_wedge_ends_at_its_head() -> None:
    scene, shape = drawn(WEDGE, "wedge")
    (push,) = tagged(scene, "force:P")
    assert isinstance(push, Arrow)
    assert push.head == pytest.approx(shape.head)
    assert push.head - push.tail == pytest.approx(abs(push.head - push.tail) * heading(0.0))


RAM = """
[body.ram]
particle = true
[[weight]]
mass = "m"
symbol = "W"
[[contact]]
direction = 90
symbol = "Q"
[[contact]]
direction = 0
symbol = "N"
[[strut]]
direction = "270 - theta"
symbol = "S"
[[find]]
quantity = "Q"
"""


def test_a_block_between_two_faces_keeps_its_outline_and_each_force_its_place() -> None:
    template, values, _ = read(RAM, 'ram = "block"')
    values |= {"Q": 300.0, "N": 80.0, "S": 190.0, "W": 118.0}
    scene = alone(template, values, "ram", "", Look.CRATE)
    (outline,) = outlines(scene, "body:ram")
    assert isinstance(outline, Path)
    box, arrows = bounds([outline]), {}
    for force in "QNSW":
        (arrows[force],) = (s for s in tagged(scene, f"force:{force}") if isinstance(s, Arrow))
    assert arrows["Q"].head.imag == pytest.approx(box.bottom, abs=1.0)
    assert arrows["N"].head.real == pytest.approx(box.left, abs=1.0)
    assert arrows["S"].head.imag == pytest.approx(box.top, abs=1.0)
    assert arrows["W"].tail == pytest.approx(box.centre)
    assert arrows["W"].head.imag > box.bottom
    assert not outlines(alone(template, values, "ram", ""), "body:ram")  # a ring, if it is no block
