"""Angles: the number between the two lines where there is room, else beside the arc's end."""

from __future__ import annotations

import math
from decimal import Decimal
from itertools import pairwise

import pytest

from probgen.figures.paper.angle import (
    _lead,
    _Mark,
    _meets,
    arc_pieces,
    dashed_to,
    draw_angle,
)
from probgen.figures.paper.arc import Corner
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    HEAVY,
    Arc,
    Arrow,
    Box,
    Label,
    Path,
    apart,
    bearing,
    circle,
    heading,
    line,
)
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


def arc_of(field: Field) -> Arc:
    return next(shape for shape in field.shapes if isinstance(shape, Arc) and shape.sweep < 360.0)


def reaches(field: Field) -> float:
    """How far the number is from its arc, pt."""
    arc, box = arc_of(field), label_of(field).box
    shares = [i / 40 for i in range(41)]
    spots = [arc.radius * heading(arc.start + arc.sweep * share) for share in shares]
    return min(abs(box.nearest(spot) - spot) for spot in spots)


@pytest.mark.parametrize("degrees", [27, 40, 60, 110])
def test_number_stands_by_its_arc_about_the_middle(degrees: int) -> None:
    field = Field()
    field.add(line(-90 + 0j, 90 + 0j, HEAVY), line(0j, heading(degrees) * 90.0, HEAVY))
    draw_angle(field, 0j, 0.0, float(degrees), number(degrees), "theta", reference_drawn=True)
    assert 2.2 < reaches(field) < 5.5
    assert apart(bearing(label_of(field).box.centre), degrees / 2) < 0.15 * degrees


@pytest.mark.parametrize("rim", [25.0, 30.0, 44.0, 54.0])
def test_arc_keeps_off_the_rim_of_a_wheel_about_its_vertex(rim: float) -> None:
    field = Field()
    field.add(circle(0j, rim, HEAVY), line(0j, heading(27.0) * 110.0, HEAVY))
    draw_angle(field, 0j, 0.0, 27.0, number(27), "theta", reference_drawn=False)
    assert abs(arc_of(field).radius - rim) > 3.0


@pytest.mark.parametrize("length", [22.0, 28.0, 33.0, 40.0])
def test_arc_keeps_off_the_head_of_the_arrow_it_ends_at(length: float) -> None:
    field = Field()
    field.add(Arrow(0j, heading(25.0) * length, HEAVY))
    draw_angle(field, 0j, 0.0, 25.0, number(25), "theta", reference_drawn=False)
    assert not length - 7.0 < arc_of(field).radius < length + 1.0


def test_no_line_parts_a_number_from_its_arc() -> None:
    """Its arc is drawn before a wall; the number stands beside the arc rather than beyond it."""
    field = Field()
    field.add(line(0j, heading(50.0) * 100.0, HEAVY), line(23 - 40j, 23 + 90j, HEAVY))
    draw_angle(field, 0j, 0.0, 50.0, number(50), "theta", reference_drawn=False)
    assert arc_of(field).radius > 23.0 or label_of(field).box.right < 23.0


def lever(*, both_sides: bool) -> Field:
    """One with a short arm up to the left, where a rod hangs, and a long one to the right."""
    field, way = Field(), heading(-21.0)
    field.add(*bar((-38.0 * way, 120.0 * way), 3.2, tag("body")))
    field.add(line(-38.0 * way, -38.0 * way - 80j, HEAVY))
    draw_angle(
        field, 0j, 180.0, 159.0, number(21), "theta", reference_drawn=False, both_sides=both_sides
    )
    return field


def test_an_angle_goes_to_the_other_side_of_its_vertex_where_it_is_seen_better() -> None:
    near, turned = lever(both_sides=False), lever(both_sides=True)
    assert label_of(near).box.centre.real < 0.0
    assert 0.0 < 360.0 - bearing(label_of(turned).box.centre) < 21.0
    assert arc_of(turned).sweep == pytest.approx(-21.0)


def test_arcs_that_adjoin_have_different_radii() -> None:
    field = Field()
    field.add(line(0j, heading(50.0) * 90.0, HEAVY), line(0j, heading(-60.0) * 90.0, HEAVY))
    for degrees in (50, -60):
        draw_angle(field, 0j, 0.0, float(degrees), number(60), str(degrees), reference_drawn=False)
    one, other = [shape.radius for shape in field.shapes if isinstance(shape, Arc)]
    assert abs(one - other) > 3.0


def test_reference_line_is_shorter_where_the_number_stands_outside() -> None:
    lengths = []
    for degrees in (8, 40):
        field = Field()
        field.add(line(0j, heading(degrees) * 90.0, HEAVY))
        draw_angle(field, 0j, 0.0, float(degrees), number(9), "t", reference_drawn=False)
        (dashed,) = [s for s in field.shapes if s.tag.what is What.REFERENCE]
        assert isinstance(dashed, Path)
        lengths.append(abs(dashed.lines[0][1]) - arc_of(field).radius)
    assert lengths[0] < lengths[1]


def test_reference_lines_from_one_vertex_lie_nowhere_on_each_other() -> None:
    field = Field()
    field.add(line(0j, heading(25.0) * 90.0, HEAVY), line(0j, heading(-70.0) * 90.0, HEAVY))
    for degrees in (25, -70):
        draw_angle(field, 0j, 0.0, float(degrees), number(70), str(degrees), reference_drawn=False)
    lines = [shape for shape in field.shapes if isinstance(shape, Path)]
    dashed = [each.lines[0] for each in lines if each.tag.what is What.REFERENCE]
    reaches = sorted((abs(start), abs(end)) for start, end in dashed)
    assert reaches[0][0] == 0.0
    assert all(one[1] <= other[0] + 1e-9 for one, other in pairwise(reaches))
    longest = max(shape.radius for shape in field.shapes if isinstance(shape, Arc))
    assert reaches[-1][1] > longest
    assert dashed_to(field.shapes, 0j, 0.0) == pytest.approx(reaches[-1][1])
    assert dashed_to(field.shapes, 0j, 25.0) == 0j


def test_a_narrow_arc_reaches_out_of_the_member_it_ends_in() -> None:
    field, thin = Field(), Field()
    field.add(*bar((0j, heading(80.0) * 150.0), 4.5, tag("body")))
    thin.add(line(0j, heading(80.0) * 150.0, HEAVY))
    for each in (field, thin):
        draw_angle(each, 0j, 90.0, 80.0, number(10), "theta", reference_drawn=False)
    radius = arc_of(field).radius
    assert radius > arc_of(thin).radius
    assert radius * math.sin(math.radians(10.0)) > 4.5 + 2.0


def test_the_line_to_an_arc_does_not_run_along_it() -> None:
    corner = Corner(0j, 0.0, 70.0, dashed=False)
    middle = corner.on(21.0, 0.5)
    along = middle + 30.0 * heading(35.0 - 90.0)
    assert not _meets(corner, along, middle)
    assert _meets(corner, middle * 2.0, middle)
    field = Field()
    field.add(line(0j, 60 + 0j, HEAVY))
    _lead(field, _Mark(corner, 21.0, Box(28.0, -24.0, 58.0, -14.0)), "beta")
    lines = [shape for shape in field.shapes if isinstance(shape, Path)]
    ((_, end),) = (each.lines[0] for each in lines if each.tag.what is What.LEADER)
    assert abs(end) == pytest.approx(21.0)
    assert bearing(end) != pytest.approx(35.0)
