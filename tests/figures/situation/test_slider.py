"""Blocks that slide along a face, and slots about a pin."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arc, Path, bounds
from probgen.figures.situation.contact import touching as touched
from probgen.figures.situation.fixture import Fixture
from tests.figures.seen import tagged
from tests.figures.sketches import sketch, stage
from tests.figures.sluice import SLUICE


@pytest.mark.parametrize("normal", [0.0, 90.0, 180.0])
def test_a_slider_is_a_block_about_its_pin_on_a_face(normal: float) -> None:
    text = SLUICE.replace("direction = 0\nsymbol", f"direction = {normal}\nsymbol")
    set_out = stage(text, 'N = "slider"')
    fixture = touched(set_out, set_out.system.element("N"))
    block, pin = fixture.shapes
    (face,) = fixture.surfaces
    assert isinstance(block, Path)
    assert isinstance(pin, Arc)
    assert pin.centre == set_out.spot("B")
    heights = sorted(face.height(corner) for corner in block.lines[0])
    assert heights[:2] == pytest.approx([0.0, 0.0])  # it lies on the face, its pin in the middle
    assert heights[-1] == pytest.approx(2 * face.height(pin.centre))
    reaches = [face.reach(corner) for corner in block.lines[0]]
    assert -face.before < min(reaches) < 0.0 < max(reaches) < face.after


ARM = """
[points]
A = [0, 0]
C = ["L/2", 0]
B = ["L", 0]
[body.arm]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[contact]]
at = "PIN"
direction = WAY
symbol = "N"
[[weight]]
mass = "m"
uniform = true
[[find]]
quantity = "N"
"""


def slotted(pin: str, way: str = "90") -> Fixture:
    set_out = stage(ARM.replace("PIN", pin).replace("WAY", way), 'N = "slot"')
    return touched(set_out, set_out.system.element("N"))


@pytest.mark.parametrize(("pin", "back"), [("C", 17.0), ("B", 0.0)])
def test_a_slot_lies_along_its_bar_about_a_pin_on_a_bracket(pin: str, back: float) -> None:
    fixture = slotted(pin)
    *_, broad, edges, inside, held = fixture.shapes
    assert isinstance(held, Arc)
    assert isinstance(inside, Path)
    ((start, end),) = inside.lines
    assert start.imag == end.imag == held.centre.imag  # along the bar, on both sides of the pin
    assert end.real < held.centre.real < start.real or start.real < held.centre.real < end.real
    assert edges.pen.weight > inside.pen.weight > 2 * held.radius  # type: ignore[union-attr]
    box = bounds([broad])
    assert box.top > held.centre.imag + 3.0  # broader than the bar
    assert box.right >= held.centre.real + back
    (face,) = fixture.surfaces
    assert face.height(held.centre) > 0.0


def test_no_slot_is_drawn_where_no_bar_runs_square_to_the_push() -> None:
    assert len(slotted("C", "60").shapes) == 2  # a block and its pin


def test_a_pin_of_one_body_is_in_the_slot_of_another() -> None:
    text = ARM.replace("PIN", "C").replace("WAY", "90").replace(
        "[[hinge]]",
        '[body.crank]\nalong = ["C", "D"]\n[[hinge]]\nbody = "crank"\nat = "D"\nsymbol = "Q"\n'
        '[[couple]]\nbody = "crank"\nat = "D"\nsymbol = "M"\n[[hinge]]\nbody = "arm"',
    ).replace(
        "[body.arm]", 'D = ["L/2", "-L/3"]\n[body.arm]'
    ).replace("[[contact]]", '[[contact]]\nbody = "arm"\nother = "crank"').replace(
        "[[weight]]", '[[weight]]\nbody = "arm"'
    )  # fmt: skip
    shapes = tagged(sketch(text, 'N = "slot"'), "support:N")
    assert [type(shape) for shape in shapes] == [Path, Path, Path, Arc]
    assert not tagged(sketch(text), "support:N")
