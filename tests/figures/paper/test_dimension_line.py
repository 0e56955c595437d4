"""Lengths: below where that is free, clear of strokes and labels, with their extension lines."""

from __future__ import annotations

from decimal import Decimal
from itertools import pairwise

import pytest

from probgen.figures.paper.canvas import Field, Ray
from probgen.figures.paper.dimension_line import (
    _extension,
    _heads_met,
    _Setting,
    _settings,
    draw_length,
    strips,
)
from probgen.figures.paper.placement import GAP, centred, set_in
from probgen.figures.paper.scene import (
    FINE,
    HEAVY,
    Arrow,
    Box,
    Label,
    Path,
    Tone,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.segment import meets
from probgen.quantities.expression import Number
from probgen.quantities.unit import UNITS
from tests.figures.seen import tag

TEXT = Number(Decimal("1.20"), UNITS["m"])


def arrows(field: Field) -> list[Arrow]:
    return [shape for shape in field.shapes if isinstance(shape, Arrow)]


def extensions(field: Field) -> list[Path]:
    return [
        shape
        for shape in field.shapes
        if isinstance(shape, Path) and shape.tag == tag("dimension:a")
    ]


def test_it_lies_below_with_both_extension_lines() -> None:
    field = Field()
    assert draw_length(field, 0j, 100 + 0j, TEXT, "a", 3.0)
    tips = {arrow.head.real for arrow in arrows(field)}
    assert tips == {0.0, 100.0}
    assert all(arrow.head.imag < -3.0 for arrow in arrows(field))
    assert len(extensions(field)) == 2


def test_it_goes_on_where_another_ends() -> None:
    field = Field()
    field.add(line(20 - 16j, 60 - 16j, FINE))  # keeps the first one further out
    draw_length(field, 0j, 80 + 0j, TEXT, "a")
    draw_length(field, 80 + 0j, 170 + 0j, TEXT, "b")
    (level,) = {arrow.head.imag for arrow in arrows(field)}
    assert level < -16.0


def test_longer_one_lies_further_out() -> None:
    field = Field()
    draw_length(field, 0j, 80 + 0j, TEXT, "a")
    draw_length(field, 0j, 170 + 0j, TEXT, "b")
    near, far = (
        next(arrow.head.imag for arrow in arrows(field) if str(arrow.tag) == f"dimension:{id}")
        for id in "ab"
    )
    assert far < near < 0


def test_lines_one_over_the_other_lie_at_equal_distances() -> None:
    """Whether their numbers would be one over the other or not."""
    field = Field()
    field.add(*(line(-20 + 1j * y, 190 + 1j * y, FINE) for y in range(6, 170, 8)))
    for i, end in enumerate((90.0, 160.0, 170.0, 230.0)):
        draw_length(field, 0j, end + 0j, TEXT, f"{i}")
    levels = sorted({arrow.head.imag for arrow in arrows(field)})
    steps = {round(high - low, 6) for low, high in pairwise(levels)}
    assert len(levels) == 4
    assert len(steps) == 1
    assert steps <= {13.5}


def test_extension_line_begins_where_the_face_ends_that_serves_for_it() -> None:
    field = Field()
    field.add(line(20j, -18j, HEAVY))
    field.add(set_in(TEXT, centred(TEXT, 50 - 14j), tag("note:x")))  # keeps it further out
    draw_length(field, 0j, 100 + 0j, TEXT, "a")
    (left,) = [p for p in extensions(field) if abs(p.lines[0][0].real) < 1e-9]
    start, end = left.lines[0]
    assert start.imag == pytest.approx(-18.0)
    assert end.imag < arrows(field)[0].head.imag


def test_extension_line_begins_beyond_what_it_would_cross() -> None:
    field = Field()
    field.add(line(90 - 8j, 110 - 8j, FINE))
    draw_length(field, 0j, 100 + 0j, TEXT, "a")
    (right,) = [p for p in extensions(field) if abs(p.lines[0][0].real - 100) < 1e-9]
    assert right.lines[0][0].imag < -8.0


def hung(drop: float) -> Field:
    """A length that has to be measured below a label which hangs under its right end."""
    field = Field()
    field.add(*(line(-20 + 1j * y, 120 + 1j * y, FINE) for y in range(6, 170, 8)))
    field.add(set_in(TEXT, centred(TEXT, 100 - 1j * drop), tag("note:x")))
    assert draw_length(field, 0j, 100 + 0j, TEXT, "a")
    return field


def test_extension_line_is_broken_by_a_label_and_begins_at_its_point() -> None:
    field = hung(20.0)
    right = [p.lines[0] for p in extensions(field) if abs(p.lines[0][0].real - 100) < 1e-9]
    (begun, broken), (resumed, end) = right
    label = next(shape for shape in field.shapes if isinstance(shape, Label))
    assert begun.imag == pytest.approx(-2.5)
    assert broken.imag > label.box.top + GAP
    assert resumed.imag < label.box.bottom - GAP
    assert end.imag < arrows(field)[0].head.imag < resumed.imag - 6.0


def test_it_lies_in_a_row_clear_of_the_head_of_a_force() -> None:
    """And its extension line leaves a gap where the arrow ends."""
    field = Field()
    field.add(*(line(-20 + 1j * y, 120 + 1j * y, FINE) for y in range(6, 170, 8)))
    force = Arrow(100 + 0j, 100 - 20j, HEAVY)
    field.add(force)
    assert draw_length(field, 0j, 100 + 0j, TEXT, "a")
    assert min(arrow.head.imag for arrow in arrows(field) if arrow is not force) < -23.0
    right = [p.lines[0] for p in extensions(field) if abs(p.lines[0][0].real - 100) < 1e-9]
    assert max(spot.imag for piece in right for spot in piece) == pytest.approx(-22.5)


def test_its_line_rather_comes_near_the_head_of_a_force_than_meets_it() -> None:
    field, setting = Field(), _Setting(Box(0, 0, 1, 1), 0.0, ((0j, 100 + 0j),))
    near = [_heads_met(field, setting, off) for off in (3.5, 0.0)]
    assert near == [0, 0]
    field.add(Arrow(50 + 40j, 50 + 2j, HEAVY))
    assert [_heads_met(field, setting, off) for off in (3.5, 0.0)] == [1, 0]
    field.add(Arrow(80 + 40j, 80 - 2j, HEAVY))
    assert [_heads_met(field, setting, off) for off in (3.5, 0.0)] == [2, 1]


def test_no_extension_line_strikes_the_letter_of_a_force() -> None:
    """Which stands past its head, nearer to that than the line begins."""
    along = (-2.5, 50.0)
    extension = _extension(Ray((), ((51.5, 63.0),), (along,), along), 75.0)
    assert extension is not None
    assert extension[0] == ((65.5, 77.5),)


def test_it_lies_nearer_than_usual_between_a_force_s_head_and_the_object() -> None:
    """Where its letter takes the rows beyond."""
    field = Field()
    field.add(*(line(-20 + 1j * y, 120 + 1j * y, FINE) for y in range(6, 170, 8)))
    field.add(Arrow(100 + 0j, 100 - 24j, HEAVY))
    field.add(set_in(TEXT, centred(TEXT, 100 - 31j), tag("note:x")))
    assert draw_length(field, 0j, 100 + 0j, TEXT, "a")
    rows = {arrow.head.imag for arrow in arrows(field) if str(arrow.tag) == "dimension:a"}
    assert rows == {-11.0}


@pytest.mark.parametrize("row", [12.0, 25.0])
def test_it_lies_within_no_shorter_one(row: float) -> None:
    field = Field()
    field.measures.append((10 - 1j * row, 80 - 1j * row))
    draw_length(field, 0j, 170 + 0j, TEXT, "a")
    assert all(arrow.head.imag < -row - 7.9 for arrow in arrows(field))


def test_no_dimension_begins_beyond_a_label_at_its_point() -> None:
    """It lies on the other side, or above, where it need not."""
    field = Field()
    field.add(set_in(TEXT, centred(TEXT, 100 - 10j), tag("note:x")))
    draw_length(field, 0j, 100 + 0j, TEXT, "a")
    assert arrows(field)[0].head.imag > 0.0


def test_number_leaves_the_extension_lines_free_that_are_still_to_be_drawn() -> None:
    field, due = Field(), strips(50 + 0j, 300 + 0j, 0.0)
    assert draw_length(field, 0j, 100 + 0j, TEXT, "a", due=due)
    label = next(shape for shape in field.shapes if isinstance(shape, Label))
    assert not any(meets(strip, label.box.grown(GAP)) for strip in due)
    draw_length(field, 50 + 0j, 300 + 0j, TEXT, "b")
    assert min(abs(arrow.head.real - 50.0) for arrow in arrows(field)) < 1e-9


@pytest.mark.parametrize("direction", [0.0, 40.0, 64.0, 90.0, 140.0, 250.0])
def test_a_line_leads_from_a_dimension_to_a_number_past_its_end(direction: float) -> None:
    end = 20.0 * heading(direction)
    led = [setting for setting in _settings(0j, end, 40.0, 8.0) if setting.led]
    assert len(led) == 2
    for setting in led:
        ((head, tip),) = setting.led
        assert min(abs(head), abs(head - end)) < 1e-9
        assert 0.0 < abs(setting.box.nearest(tip) - tip) < 5.0
        assert not any(
            meets((a.real, a.imag, b.real, b.imag), setting.box)
            for a, b in (*setting.pieces, *setting.led)
        )


@pytest.mark.parametrize("direction", [0.0, 33.0, 90.0, 147.0])
def test_number_of_a_short_length_stands_beside_it(direction: float) -> None:
    field = Field()
    end = heading(direction) * 25.0
    assert draw_length(field, 0j, end, TEXT, "a")
    (label,) = [shape for shape in field.shapes if isinstance(shape, Label)]
    middle = sum(arrow.head for arrow in arrows(field)) / len(arrows(field))
    assert abs(label.box.centre - middle) < 45.0


def test_number_stands_beside_a_line_where_there_is_no_room_in_it() -> None:
    """Strokes every 14 pt across leave room beyond the ends of the line alone."""
    field = Field()
    for x in range(5, 100, 14):
        field.add(line(x - 170j, x - 2j, FINE), line(x + 2j, x + 170j, FINE))
    assert draw_length(field, 0j, 100 + 0j, TEXT, "a")
    (label,) = [shape for shape in field.shapes if isinstance(shape, Label)]
    assert label.box.left > 100.0 or label.box.right < 0.0
    assert {tip for a in arrows(field) for tip in (a.head.real, a.tail.real)} == {0.0, 100.0}


def test_a_line_leads_out_from_between_two_walls() -> None:
    """Its heads stand at their faces, and the number has no room between."""
    field = Field()
    field.add(*(line(x - 160j, x + 160j, FINE) for x in (0, 20)))
    assert draw_length(field, 0j, 20 + 0j, TEXT, "a")
    (label,) = [shape for shape in field.shapes if isinstance(shape, Label)]
    assert label.box.left > 20.0 or label.box.right < 0.0


def test_hemmed_in_it_says_so() -> None:
    field = Field()
    for i in range(-40, 41):
        field.add(line(-300 + 8j * i, 300 + 8j * i, FINE))
    assert not draw_length(field, 0j, 100 + 0j, TEXT, "a")


def test_extension_line_crosses_a_stroke_away_from_its_point() -> None:
    found = _extension(Ray((20.0, 21.0), (), ()), 30.0)
    assert found is not None
    assert found[0] == ((0.0, 32.5),)


def test_extension_line_begins_at_the_rim_of_what_hides_its_point() -> None:
    found = _extension(Ray((18.0,), (), (), behind=((0.0, 18.0),)), 40.0)
    assert found is not None
    assert found[0] == ((20.5, 42.5),)


def test_a_dimension_line_on_a_body_has_its_extension_lines_there() -> None:
    ray = Ray((60.0,), (), (), behind=((0.0, 60.0),))
    assert _extension(ray, 30.0) is None
    assert _extension(ray, 30.0, inside=True) == (((0.0, 32.5),), 0.0)


def test_no_stub_of_an_extension_line_is_left_between_two_labels() -> None:
    found = _extension(Ray((), ((10.0, 20.0), (28.0, 40.0)), ()), 60.0)
    assert found is not None
    assert found[0] == ((0.0, 7.5), (42.5, 62.5))


def test_the_paper_counts_the_extension_lines_that_labels_break() -> None:
    assert hung(20.0).torn == 1
    field = Field()
    draw_length(field, 0j, 100 + 0j, TEXT, "a")
    assert field.torn == 0


def test_the_length_of_a_body_s_side_lies_beside_it_and_not_within_it() -> None:
    """Though there is no room nearby on its free side."""
    field = Field()
    field.add(polygon((0j, 90 + 0j, 90 + 140j, 140j), HEAVY, tone=Tone.BODY))
    field.add(*(line(-60 + 20j * i, -1 + 20j * i, FINE) for i in range(1, 7)))
    assert draw_length(field, 0j, 140j, TEXT, "a")
    (level,) = {arrow.head.real for arrow in arrows(field)}
    assert level < 0.0 or level > 90.0


def leaning(*walls: complex) -> Field:
    """The length of a ladder dimensioned, with walls from their feet up."""
    field = Field()
    field.add(*(line(foot, foot + 160j, HEAVY, tag("ground")) for foot in walls))
    assert draw_length(field, 0j, 60 + 104j, TEXT, "a", 3.0)
    return field


def test_extension_lines_keep_to_the_side_of_a_slanting_thing_without_a_wall() -> None:
    """A wall that only they would run through, and one on the other side as well."""
    right, left = 75 + 94j, -10 - 60j
    free, leant, between = leaning(), leaning(right), leaning(right, left)
    beyond = [sum(each.head.real for each in arrows(field)) / 2 > 30.0 for field in (free, leant)]
    assert beyond == [True, False]
    assert [field.walled for field in (free, leant, between)] == [0, 0, 1]
    assert between.spoilt == 1
