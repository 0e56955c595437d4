"""Angles: the number between the two lines where there is room, else beside the arc's end."""

from __future__ import annotations

from decimal import Decimal

import pytest

from probgen.figures.paper.angle import arc_pieces, draw_angle
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import HEAVY, Arc, Label, Path, apart, bearing, heading, line
from probgen.figures.paper.tag import What
from probgen.figures.parts.mechanical import bar
from probgen.quantities.expression import Number
from probgen.quantities.unit import UNITS
from tests.figures.seen import tag


def number(degrees: int) -> Number:
    return Number(Decimal(degrees), UNITS["deg"])


def leaning(degrees: int, wall: float) -> Field:
    """A ladder's place: a floor, a wall some way off (pt), a bar that leans against it."""
    field = Field()
    field.add(line(-20 + 0j, wall + 0j, HEAVY), line(wall + 0j, wall + 150j, HEAVY))
    field.add(*bar((0j, heading(degrees) * 140.0), 3.2, tag("body")))
    draw_angle(field, 0j, 0.0, float(degrees), number(degrees), "theta", reference_drawn=True)
    return field


def label_of(field: Field) -> Label:
    return next(shape for shape in field.shapes if isinstance(shape, Label))


@pytest.mark.parametrize("degrees", [40, 55, 68, 72, 76])
def test_number_of_a_leaning_body_stands_within_the_angle(degrees: int) -> None:
    box = label_of(leaning(degrees, 140.0 * heading(degrees).real)).box
    corners = [complex(x, y) for x in (box.left, box.right) for y in (box.bottom, box.top)]
    assert all(0.0 < bearing(corner) < degrees for corner in corners)


@pytest.mark.parametrize("degrees", [5, 12])
def test_number_too_large_for_its_angle_stands_close_to_the_arc(degrees: int) -> None:
    field = Field()
    field.add(line(-90 + 0j, 90 + 0j, HEAVY), line(0j, heading(degrees) * 90.0, HEAVY))
    draw_angle(field, 0j, 0.0, float(degrees), number(degrees), "theta", reference_drawn=True)
    (arc,) = [shape for shape in field.shapes if isinstance(shape, Arc)]
    ends = [arc.radius * heading(angle) for angle in (0.0, degrees)]
    box = label_of(field).box
    assert min(abs(box.centre - end) for end in ends) < 25.0
    assert arc.radius <= 36.0


@pytest.mark.parametrize("degrees", [16, 20, 28, -18])
def test_number_stands_between_its_lines_where_they_are_wide_enough_further_out(
    degrees: int,
) -> None:
    field = Field()
    field.add(line(-90 + 0j, 90 + 0j, HEAVY), line(0j, heading(degrees) * 90.0, HEAVY))
    draw_angle(field, 0j, 0.0, float(degrees), number(20), "theta", reference_drawn=True)
    centre = label_of(field).box.centre
    assert apart(bearing(centre), degrees / 2) < abs(degrees) / 2
    assert not [shape for shape in field.shapes if shape.tag.what is What.LEADER]


def test_an_arc_is_no_wider_than_the_line_it_ends_at_is_long() -> None:
    field = Field()
    field.add(line(-90 + 0j, 90 + 0j, HEAVY), line(0j, heading(16.0) * 38.0, HEAVY))
    draw_angle(field, 0j, 0.0, 16.0, number(20), "theta", reference_drawn=True)
    (arc,) = [shape for shape in field.shapes if isinstance(shape, Arc)]
    assert arc.radius < 38.0


def test_a_line_leads_to_its_arc_from_a_number_outside() -> None:
    field = Field()
    field.add(line(-90 + 0j, 90 + 0j, HEAVY), line(0j, heading(14.0) * 90.0, HEAVY))
    draw_angle(field, 0j, 0.0, 14.0, number(14), "theta", reference_drawn=True)
    (arc,) = [shape for shape in field.shapes if isinstance(shape, Arc)]
    (leader,) = [shape for shape in field.shapes if shape.tag.what is What.LEADER]
    assert isinstance(leader, Path)
    ((start, end),) = leader.lines
    assert end == pytest.approx(arc.radius * heading(7.0))
    assert 0.0 < abs(label_of(field).box.nearest(start) - start) < 4.0


def test_reference_line_is_dashed_where_none_is_drawn() -> None:
    field = Field()
    field.add(line(0j, heading(50.0) * 90.0, HEAVY))
    draw_angle(field, 0j, 0.0, 50.0, number(50), "theta", reference_drawn=False)
    (dashed,) = [shape for shape in field.shapes if str(shape.tag) == "reference:theta"]
    assert not isinstance(dashed, Label)
    assert dashed.pen.dash


@pytest.mark.parametrize(
    ("reference", "direction", "reflex", "sweep"),
    [
        (0.0, 215.0, True, 215.0),  # counter-clockwise from the right, down to the left
        (0.0, 215.0, False, -145.0),
        (90.0, -100.0, True, -190.0),  # by compass
        (350.0, 10.0, False, 20.0),
    ],
)
def test_an_angle_beyond_half_a_turn_goes_the_longer_way_round(
    reference: float, direction: float, reflex: bool, sweep: float
) -> None:
    field = Field()
    draw_angle(
        field, 0j, reference, direction, number(9), "t", reference_drawn=False, reflex=reflex
    )
    (arc,) = [shape for shape in field.shapes if isinstance(shape, Arc)]
    assert [arc.start, arc.sweep] == pytest.approx([reference, sweep])
    *_, (_, last) = arc_pieces(0j, reference, direction, reflex)
    assert bearing(last) % 360.0 == pytest.approx(direction % 360.0)


@pytest.mark.parametrize("bearings", [(321, 30, 163), (238, 45, 200), (300, 100, 190)])
def test_an_arc_beyond_half_a_turn_stays_small_and_has_its_number_beside_it(
    bearings: tuple[int, int, int],
) -> None:
    """By compass, with lines between that it cannot but pass over."""
    field = Field()
    for each, length in zip(bearings, (120.0, 120.0, 30.0), strict=True):
        field.add(line(0j, heading(90.0 - each) * length, HEAVY))
    first = bearings[0]
    draw_angle(
        field, 0j, 90.0, 90.0 - first, number(first), "t", reference_drawn=False, reflex=True
    )
    (arc,) = [shape for shape in field.shapes if isinstance(shape, Arc)]
    assert arc.sweep == pytest.approx(-first)
    assert arc.radius <= 25.0
    box = label_of(field).box
    assert arc.radius < abs(box.nearest(0j)) < arc.radius + 9.0
    opened = (90.0 - bearing(box.centre)) % 360.0
    assert 0.5 * first - 5.0 < opened < first  # toward the line it ends at
