"""A wedge in a situation: its angle told once, face to face with what it bears, nothing hidden."""

from __future__ import annotations

import pytest

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import Arc, Arrow, dot
from probgen.figures.situation.wedge import draw_wedge_angles
from tests.figures.seen import box_of, outlines, tagged, touching
from tests.figures.sketches import sketch, stage
from tests.figures.wedges import DRIVEN_DOWN, RAISED, WEDGE

SHOWN = 'wedge = "wedge"'
CLOSE = 1e-3  # pt; by itself, for what has no size is drawn far from the origin


@pytest.mark.parametrize("text", [WEDGE, DRIVEN_DOWN, RAISED])
def test_its_angle_is_told_once_and_no_label_lies_on_anything(text: str) -> None:
    scene = sketch(text, SHOWN)
    (arc,) = tagged(scene, "angle:theta")
    assert isinstance(arc, Arc)
    assert abs(arc.sweep) == pytest.approx(25.0)
    assert touching(scene) == []


def test_an_angle_drawn_before_is_not_drawn_again() -> None:
    field = Field()
    assert draw_wedge_angles(stage(WEDGE, SHOWN), field, {"theta"}) == {"theta"}
    assert list(field.shapes) == []


@pytest.mark.parametrize(("text", "body"), [(WEDGE, "block"), (DRIVEN_DOWN, "crate")])
def test_block_and_wedge_touch_along_a_face_and_nowhere_overlap(text: str, body: str) -> None:
    scene = sketch(text, SHOWN)
    ((wedge,), (block,)) = (outlines(scene, f"body:{id}") for id in ("wedge", body))
    set_out = stage(text, SHOWN)
    shape = set_out.blocks["wedge"].faced
    assert shape is not None
    out = next(f.out for f in shape.faces.values() if min(abs(f.out.real), abs(f.out.imag)) > 0.1)
    near = max(dot(corner, out) for corner in wedge.lines[0])
    far = min(dot(corner, out) for corner in block.lines[0])
    assert near == pytest.approx(far, abs=CLOSE)


def test_the_floor_runs_under_the_wedge_up_to_the_wall_the_block_slides_on() -> None:
    scene = sketch(WEDGE, SHOWN)
    grounds = [ground.lines[0] for ground in outlines(scene, "ground")]
    (floor,) = (line for line in grounds if line[0].imag == pytest.approx(line[1].imag))
    (wall,) = (line for line in grounds if line is not floor)
    ((wedge,), (block,)) = (outlines(scene, f"body:{id}") for id in ("wedge", "block"))
    foot, right = min(c.imag for c in wedge.lines[0]), max(c.real for c in block.lines[0])
    assert floor[0].imag == pytest.approx(foot, abs=CLOSE)
    assert min(c.real for c in floor) < min(c.real for c in wedge.lines[0])
    for end in (max(c.real for c in floor), *(c.real for c in wall)):
        assert end == pytest.approx(right, abs=CLOSE)
    assert min(c.imag for c in wall) == pytest.approx(foot, abs=CLOSE)
    short = right - max(c.real for c in wedge.lines[0])
    out = min(c.real for c in block.lines[0]) - min(c.real for c in wedge.lines[0])
    assert out / short == pytest.approx(42.0 / 8.0, abs=CLOSE)


def test_the_push_ends_at_the_head() -> None:
    for text in (WEDGE, DRIVEN_DOWN, RAISED):
        scene = sketch(text, SHOWN)
        (push,) = tagged(scene, "force:P")
        assert isinstance(push, Arrow)
        way = (push.head - push.tail) / abs(push.head - push.tail)
        (wedge,) = outlines(scene, "body:wedge")
        at_head = min(dot(corner, way) for corner in wedge.lines[0])
        assert dot(push.head, way) == pytest.approx(at_head, abs=CLOSE)


def test_a_bar_on_a_wedge_touches_it_with_its_lower_side() -> None:
    scene = sketch(RAISED, SHOWN)
    beam, wedge = box_of(scene, "body:beam"), box_of(scene, "body:wedge")
    assert wedge.left < beam.right < wedge.right
    assert wedge.top > beam.bottom > wedge.bottom
