"""Wedges and the blocks on them: true angles, faces that meet, where they are gripped."""

from __future__ import annotations

import pytest

from probgen.bank.depiction import Look
from probgen.figures.measured.wedge import BARE, Faced, faced, partners
from probgen.figures.paper.scene import apart, bearing, dot, heading
from tests.figures.sketches import STACK, read, surveyed
from tests.figures.wedges import DRIVEN_DOWN, RAISED, WEDGE

SLOPE = 25.0  # theta of the sketches
EACH = [(WEDGE, "block"), (DRIVEN_DOWN, "crate")]


def shape(text: str, body: str, look: Look = Look.BEAM) -> Faced | None:
    template, values, _ = read(text, 'wedge = "wedge"')
    measured = surveyed(template, values)
    return faced(measured, template.system.body(body), look, template.depicts.wedges)


def known(text: str, body: str) -> Faced:
    found = shape(text, body)
    assert found is not None
    return found


@pytest.mark.parametrize("text", [WEDGE, DRIVEN_DOWN, RAISED])
def test_a_wedge_narrows_by_its_angle_towards_where_it_is_driven(text: str) -> None:
    wedge = known(text, "wedge")
    sides = zip(wedge.corners, (*wedge.corners[1:], wedge.corners[0]), strict=True)
    turns = [apart(2 * bearing(b - a), 2 * bearing(wedge.tip)) / 2 for a, b in sides]
    assert sorted(turns) == pytest.approx([0.0, SLOPE, 90.0, 90.0], abs=1e-6)
    thick = [abs((corner / wedge.tip).imag) for corner in wedge.corners]
    ahead = [dot(corner, wedge.tip) for corner in wedge.corners]
    tip = sum(t for t, a in zip(thick, ahead, strict=True) if a == pytest.approx(max(ahead)))
    head = sum(t for t, a in zip(thick, ahead, strict=True) if a == pytest.approx(min(ahead)))
    assert 0.0 < tip < 0.5 * head


@pytest.mark.parametrize(("text", "tip"), [(WEDGE, 1), (DRIVEN_DOWN, -1j), (RAISED, -1)])
def test_a_push_on_a_wedge_acts_at_its_head(text: str, tip: complex) -> None:
    wedge = known(text, "wedge")
    assert wedge.tip == pytest.approx(tip)
    assert wedge.grip(wedge.tip) == wedge.grip(-wedge.tip) == wedge.head
    assert dot(wedge.head, wedge.tip) == pytest.approx(min(dot(c, tip) for c in wedge.corners))


@pytest.mark.parametrize(("text", "body"), EACH)
def test_faces_that_touch_look_at_each_other(text: str, body: str) -> None:
    template, values, _ = read(text, 'wedge = "wedge"')
    found = partners(surveyed(template, values), template.system.body(body))
    ((own, other),) = found.items()
    assert other.body == "wedge"
    faces = known(text, body).faces[own], known(text, "wedge").faces[other.id]
    assert faces[0].out == pytest.approx(-faces[1].out)


@pytest.mark.parametrize(("text", "body"), [*EACH, (WEDGE, "wedge"), (DRIVEN_DOWN, "wedge")])
def test_each_face_is_a_side_of_the_outline(text: str, body: str) -> None:
    found = known(text, body)
    for face in found.faces.values():
        on = [corner for corner in found.corners if abs(dot(corner - face.at, face.out)) < 1e-9]
        assert len(on) == 2
        assert dot(face.at - on[0], on[1] - face.at) > 0.0
        assert all(dot(corner - face.at, face.out) < 1e-9 for corner in found.corners)


def test_a_block_keeps_its_size_clear_of_what_is_cut_off() -> None:
    block = known(WEDGE, "block")
    for x, y in ((-1, -1), (-1, 1), (1, -1), (1, 1)):
        inner = block.clear + complex(x * BARE.real, y * BARE.imag)
        assert all(dot(inner - face.at, face.out) < 1e-9 for face in block.faces.values())
    assert max(c.imag for c in block.corners) - block.clear.imag == pytest.approx(BARE.imag)


def test_a_line_from_a_block_begins_at_its_edge() -> None:
    block = known(WEDGE, "block")
    assert block.grip(1j) == pytest.approx(1j * max(corner.imag for corner in block.corners))
    assert block.grip(-1) == pytest.approx(-BARE.real)
    assert abs(block.grip(heading(45.0))) > BARE.imag


def test_its_angle_opens_where_it_stands_out_and_is_the_quantity() -> None:
    corner = known(WEDGE, "wedge").corner
    assert corner is not None
    assert corner.id == "theta"
    assert (corner.reference, corner.way) == pytest.approx((180.0, 155.0))
    assert known(WEDGE.replace("- theta", "- 2*theta"), "wedge").corner is None


def test_only_wedges_and_blocks_on_them_have_faces() -> None:
    assert shape(WEDGE, "block", Look.PERSON) is None
    assert shape(RAISED, "beam") is None
    template, values, _ = read(STACK)
    measured = surveyed(template, values)
    assert faced(measured, template.system.body("box"), Look.CRATE, ()) is None


def test_two_faces_that_run_alongside_are_no_wedge() -> None:
    assert shape(WEDGE.replace('"90 - theta"', "90").replace('"-theta"', "0"), "wedge") is None
