"""Arcs of angles: which radius shows them best among what is drawn."""

from __future__ import annotations

import pytest

from probgen.figures.paper.arc import RADII, SMALL, Corner, between, trouble
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Arrow,
    Box,
    Label,
    circle,
    heading,
    line,
)

RIGHT_UP = Corner(0j, 0.0, 40.0, dashed=True)


def field_with(*shapes: object) -> Field:
    """The line the angle opens to, and more."""
    field = Field()
    field.add(line(0j, heading(40.0) * 100.0, HEAVY))
    for shape in shapes:
        field.add(shape)  # type: ignore[arg-type]
    return field


def at(radius: float, *shapes: object) -> float:
    return trouble(field_with(*shapes), RIGHT_UP, radius, ())


def test_an_arc_among_nothing_is_no_trouble() -> None:
    assert [at(radius) for radius in RADII] == [0.0] * len(RADII)


def test_an_arc_along_a_rim_is_worse_than_within_it_or_beyond() -> None:
    rim = circle(0j, 44.0, MEDIUM)
    assert at(44.0, rim) > at(30.0, rim)
    assert at(44.0, rim) > at(54.0, rim)
    assert at(42.0, rim) > at(30.0, rim)  # though it crosses nothing


def test_an_arc_through_the_head_of_an_arrow_is_worse_than_across_its_shaft() -> None:
    arrow = Arrow(0j, heading(20.0) * 40.0, MEDIUM)
    assert at(37.0, arrow) > at(25.0, arrow) > at(54.0, arrow)


def test_an_arc_that_ends_at_the_head_of_its_own_arrow_is_worse_than_at_the_shaft() -> None:
    field = Field()
    field.add(Arrow(0j, heading(40.0) * 40.0, MEDIUM))
    assert trouble(field, RIGHT_UP, 36.0, ()) > trouble(field, RIGHT_UP, 25.0, ())


def test_an_arc_that_ends_at_nothing_is_worse_than_one_at_its_line() -> None:
    field = Field()
    field.add(line(0j, heading(40.0) * 35.0, HEAVY))
    assert RIGHT_UP.bare_arms(field, 25.0) == []
    ((start, end),) = RIGHT_UP.bare_arms(field, 54.0)
    assert abs(start) < 54.0 < abs(end)
    assert trouble(field, RIGHT_UP, 54.0, ()) > trouble(field, RIGHT_UP, 25.0, ())


def test_a_line_that_is_not_drawn_as_far_as_its_arc_begins_past_what_is_drawn() -> None:
    field = Field()
    field.add(circle(0j, 6.0, FINE))
    ((start, end),) = RIGHT_UP.bare_arms(field, 54.0)
    assert abs(start) == pytest.approx(8.0, abs=0.2)
    assert abs(end) > 54.0


def test_an_arc_through_a_label_is_worse_than_anything_else() -> None:
    spot = heading(20.0) * 30.0
    box = Box(spot.real - 4.0, spot.imag - 4.0, spot.real + 4.0, spot.imag + 4.0)
    label = Label(spot, "a", 8.0, box)
    walls = [line(complex(x, -50), complex(x, 50), HEAVY) for x in (12.0, 13.5, 15.0)]
    assert at(30.0, label) > at(17.0, *walls) > at(17.0, label) == 0.0


@pytest.mark.parametrize("radius", [17.0, 19.0])
def test_an_arc_keeps_off_that_of_another_angle(radius: float) -> None:
    other = list(Corner(0j, 40.0, 50.0, dashed=False).chords(17.0))
    assert trouble(field_with(), RIGHT_UP, radius, other) > 0.0
    assert trouble(field_with(), RIGHT_UP, 25.0, other) == 0.0


def test_two_arcs_that_cross_are_worse_than_two_side_by_side() -> None:
    across, aside = [(10 + 5j, 30 + 5j)], [(20 + 1j, 20 + 9j)]
    crossed, beside = (trouble(field_with(), RIGHT_UP, 17.0, each) for each in (across, aside))
    assert crossed > beside > 0.0


def test_a_narrow_angle_has_its_arc_further_out_than_a_wide_one() -> None:
    small = [radius for radius in RADII if radius <= SMALL]
    easiest = [
        min(small, key=Corner(0j, 0.0, degrees, dashed=True).ease)
        for degrees in (90.0, 15.0, 10.0, 6.0)
    ]
    assert easiest == sorted(easiest)
    assert easiest[0] < easiest[1] < easiest[3]


def test_the_equal_angle_behind_opens_as_far_the_same_way_round() -> None:
    behind = RIGHT_UP.behind
    assert behind.sweep == RIGHT_UP.sweep
    assert behind.on(20.0, 0.5) == pytest.approx(-RIGHT_UP.on(20.0, 0.5))


def test_lines_on_each_other_are_met_as_one() -> None:
    field = Field()
    field.add(line(-20 + 0j, 20 + 0j, HEAVY), line(-10 + 0.3j, 30 + 0.3j, LIGHT))
    assert between(field, 5 - 10j, 5 + 10j) == 1
    field.add(line(-20 + 4j, 20 + 4j, HEAVY))
    assert between(field, 5 - 10j, 5 + 10j) == 2
    assert between(field, 5 - 10j, 5 - 3j) == 0
