"""Empty axes below a body: as long as it, right below it, and telling nothing."""

from __future__ import annotations

import pytest

from probgen.figures.inside.axes import with_axes
from probgen.figures.paper.scene import HEAVY, Arrow, Label, Path, Scene, bounds, line
from probgen.figures.paper.tag import Tag, What
from probgen.quantities.expression import Name
from probgen.statics.internal_forces import Inside

SCALE, START, LENGTH = 40.0, 25.0 + 5.0j, 6.0
KINDS = ((Inside.SHEAR, Name("V", "V"), "N"), (Inside.MOMENT, Name("M", "M"), "N·m"))


def drawn() -> Scene:
    beam = line(START, START + LENGTH * SCALE, HEAVY, Tag(What.BODY, "beam"))
    measure = line(START - 20j, START + 80 - 20j, HEAVY, Tag(What.DIMENSION, "a"))
    above = Scene((beam, measure), bounds([beam, measure]), SCALE, "A beam.")
    return with_axes(above, START, LENGTH, KINDS, "Axes.")


@pytest.mark.parametrize("of", [Inside.SHEAR, Inside.MOMENT])
def test_a_zero_line_is_as_long_as_the_body_and_right_below_it(of: Inside) -> None:
    zero, upward = drawn().showing(What.DIAGRAM, of)
    assert isinstance(zero, Path)
    assert isinstance(upward, Arrow)
    ends = zero.lines[0]
    assert [spot.real for spot in ends] == pytest.approx([25.0, 25.0 + 240.0])
    assert upward.tail.real == upward.head.real == pytest.approx(25.0)
    assert ends[0] == pytest.approx((upward.tail + upward.head) / 2)  # as much above as below
    assert upward.head.imag > upward.tail.imag


def test_all_of_the_figure_stays_and_the_rows_are_below_it_in_their_order() -> None:
    scene = drawn()
    assert len(scene.showing(What.DIMENSION, "a")) == 1
    arrows = [shape for shape in scene.shapes if isinstance(shape, Arrow)]
    shear, moment = arrows
    assert START.imag - 20.0 > shear.head.imag
    assert shear.tail.imag > moment.head.imag
    assert scene.scale == SCALE
    assert scene.words == "A beam. Axes."


def test_each_row_has_its_letter_and_its_unit_and_no_number() -> None:
    texts = [shape.text for shape in drawn().shapes if isinstance(shape, Label)]
    assert texts == ["(N)", Name("V", "V"), "(N·m)", Name("M", "M")]
