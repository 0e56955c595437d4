"""A post that something grips is one solid, with a shoe outside it at each contact."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Box, bounds
from probgen.figures.situation.contact import touching as touched
from probgen.figures.situation.stage import Stage
from tests.figures.seen import box_of, tag
from tests.figures.sketches import sketch, stage

CLAMPED = """
[points]
A = [0, 0]
B = ["L/10", "-L/4"]
E = ["L", 0]
[body.arm]
along = ["A", "E", "B"]
[[rough]]
at = "A"
direction = 180
normal = "N_A"
friction = "f_A"
friction_direction = 90
[[rough]]
at = "B"
direction = 0
normal = "N_B"
friction = "f_B"
friction_direction = 90
[[find]]
quantity = "N_B"
[[weight]]
at = "E"
mass = "m"
[[condition]]
that = "f_A = f_B"
because = "both are alike"
"""


def post_of(set_out: Stage, id: str) -> Box:
    fixture = touched(set_out, set_out.system.element(id))
    return bounds([shape for shape in fixture.shapes if shape.tag == tag(f"ground:{id}")])


def test_a_post_is_between_its_two_contacts_and_goes_on_beyond_them() -> None:
    set_out = stage(CLAMPED, 'N_A = "post"', 'N_B = "post"')
    a, b, post = set_out.spot("A"), set_out.spot("B"), post_of(set_out, "N_A")
    assert (post.left, post.right) == pytest.approx((a.real, b.real), abs=0.5)
    assert post.bottom < b.imag - 20.0
    assert post.top > a.imag + 20.0
    other = touched(set_out, set_out.system.element("N_B"))
    assert [str(shape.tag) for shape in other.shapes] == ["support:N_B"]


def test_what_is_touched_on_one_side_alone_has_another_side() -> None:
    set_out = stage(CLAMPED, 'N_A = "post"')
    post = post_of(set_out, "N_A")
    assert post.left == pytest.approx(set_out.spot("A").real, abs=0.5)
    assert post.width > 10.0


def test_a_shoe_is_outside_the_post_and_hides_the_end_of_a_bar_there() -> None:
    set_out = stage(CLAMPED, 'N_A = "post"', 'N_B = "post"')
    scene = sketch(CLAMPED, 'N_A = "post"', 'N_B = "post"')
    post = box_of(scene, "ground:N_A")
    left, right = (box_of(scene, f"support:{id}") for id in ("N_A", "N_B"))
    assert left.right == pytest.approx(post.left, abs=1.0)
    assert right.left == pytest.approx(post.right, abs=1.0)
    gaps = [touched(set_out, set_out.system.element(id)).gap for id in ("N_A", "N_B")]
    assert gaps[0] == 0.0
    assert 0.0 < gaps[1] < right.width
