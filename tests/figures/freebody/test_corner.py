"""The corners of a free-body diagram: the axes with the rotation."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.figures.freebody.corner import Frame, draw_axes, frame_of
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    FINE,
    HEAVY,
    Arrow,
    Box,
    Label,
    bearing,
    bounds,
    line,
    polygon,
)
from probgen.figures.parts.axes import HEIGHT, WIDTH
from probgen.quantities.expression import Name, number, total
from probgen.statics.equation import Axis, Lie, X, Y
from tests.figures.seen import tag
from tests.figures.sketches import SLOPE, read, surveyed

ALONG = Axis("∥", Name("theta", "theta"), Lie.ALONG_SURFACE)
SQUARE = Axis("⊥", total((1, number(90)), (1, Name("theta", "theta"))), Lie.SQUARE_TO_SURFACE)


def frame(*axes: Axis) -> Frame:
    template, values, _ = read(SLOPE)  # a slope of 25 degrees
    return frame_of(surveyed(template, values), axes)


def test_a_frame_is_level_unless_forces_are_summed_along_a_slope() -> None:
    assert frame() == frame(X) == frame(X, Y) == Frame(("x", "y"), 0.0)
    assert frame(SQUARE, ALONG) == frame(ALONG, SQUARE) == Frame(("∥", "⊥"), 25.0)
    # One axis alone turns no frame, and is shown beside x and y.
    assert frame(ALONG) == frame(ALONG, X) == Frame(others=(("∥", 25.0),))
    askew = replace(SQUARE, direction=number(100))
    assert frame(ALONG, askew) == Frame(others=(("∥", 25.0), ("⊥", 100.0)))


def drawing(width: float, height: float) -> Field:
    """Two strokes along the left and the lower edge."""
    field = Field()
    field.add(line(0j, width + 0j, FINE), line(0j, height * 1j, FINE))
    return field


def axes_of(field: Field) -> tuple[Box, dict[str, Arrow]]:
    shapes = [shape for shape in field.shapes if str(shape.tag).startswith("axes:")]
    arrows = {str(s.tag).partition(":")[2]: s for s in shapes if isinstance(s, Arrow)}
    return bounds(shapes), arrows


def test_axes_stand_in_the_free_corner() -> None:
    field = drawing(200.0, 150.0)
    draw_axes(field, 0, (), 300.0, Frame())
    box, arrows = axes_of(field)
    assert box.left > 150.0
    assert box.bottom > 100.0
    assert field.box == pytest.approx((-0.175, -0.175, 200.175, 150.175))
    assert bearing(arrows["x"].head - arrows["x"].tail) == pytest.approx(0.0)
    assert bearing(arrows["y"].head - arrows["y"].tail) == pytest.approx(90.0)


def test_axes_keep_out_of_a_solid_and_off_strokes() -> None:
    field = drawing(200.0, 150.0)
    solid = (100 + 20j, 200 + 20j, 200 + 150j, 100 + 150j)
    field.add(polygon(solid, HEAVY, tag("body:box")))
    draw_axes(field, 0, [solid], 300.0, Frame())
    box, _ = axes_of(field)
    assert box.right < 100.0
    assert box.left > 0.0
    assert box.top > 100.0  # the upper corner that is left


@pytest.mark.parametrize(("widest", "beside"), [(30.0 + WIDTH + 6.2, False), (100.0, True)])
def test_axes_without_a_free_corner_stand_beside_or_below(widest: float, beside: bool) -> None:
    field = drawing(30.0, 20.0)  # too small for axes inside
    draw_axes(field, 0, (), widest, Frame())
    box, _ = axes_of(field)
    assert (box.left > 30.0) is beside
    assert (box.top < 0.0) is not beside
    assert not beside or box.bottom > -1.0


def test_turned_axes_have_their_letters_and_room_to_their_left() -> None:
    field = drawing(200.0, 150.0)
    draw_axes(field, 1, (), 300.0, Frame(("∥", "⊥"), 25.0))
    _, arrows = axes_of(field)
    assert bearing(arrows["x"].head - arrows["x"].tail) == pytest.approx(25.0)
    assert bearing(arrows["y"].head - arrows["y"].tail) == pytest.approx(115.0)
    labels = {str(shape.tag): shape for shape in field.shapes if isinstance(shape, Label)}
    assert set(labels) == {"axis:∥", "axis:⊥"}
    for key, axis in (("x", "axis:∥"), ("y", "axis:⊥")):
        assert abs(labels[axis].box.centre - arrows[key].head) < 14.0
    assert field.box.width <= 201.0
    assert HEIGHT > 0.0


def test_an_axis_that_points_down_has_room_below() -> None:
    field = Field()  # free at its lower corner on the right
    field.add(line(0j, 150j, FINE), line(150j, 200 + 150j, FINE))
    draw_axes(field, 0, (), 300.0, Frame(others=(("∥", -60.0),)))
    box, arrows = axes_of(field)
    assert arrows["square"].head.imag < arrows["x"].head.imag
    assert box.bottom >= 0.0
