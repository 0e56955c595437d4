"""The paper: free places, what a piece crosses, what stands in the way of an extension line."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import GAP, around, centred, set_in
from probgen.figures.paper.scene import (
    FINE,
    HEAVY,
    Arrow,
    Box,
    Path,
    Tone,
    bounds,
    circle,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.segment import crosses, meets
from probgen.figures.paper.tag import What
from probgen.quantities.expression import Name
from tests.figures.seen import tag

coordinate = st.integers(-20, 20).map(float)
stroke = st.tuples(coordinate, coordinate, coordinate, coordinate)
TEXT = Name("T", "T_x")


@given(
    st.lists(st.tuples(coordinate, coordinate, coordinate, coordinate), max_size=12),
    st.sampled_from([0.0, 45.0, 90.0, 200.0]),
)
def test_label_always_finds_a_free_place(
    strokes: list[tuple[float, float, float, float]], favoured: float
) -> None:
    field = Field()
    for x0, y0, x1, y1 in strokes:
        field.add(line(complex(x0, y0), complex(x1, y1), FINE))
    first = field.place(TEXT, around(TEXT, [(0j, favoured)]), tag("label:one"))
    second = field.place(TEXT, around(TEXT, [(0j, favoured)]), tag("label:two"))
    assert not first.box.overlaps(second.box)
    for label in (first, second):
        assert not any(meets(segment, label.box.grown(GAP - 0.01)) for segment in field.segments)


@given(st.lists(stroke, max_size=12), st.floats(0.0, 359.0))
def test_crossings_of_a_moved_piece_are_those_counted_one_by_one(
    strokes: list[tuple[float, float, float, float]], direction: float
) -> None:
    field = Field()
    for x0, y0, x1, y1 in set(strokes):
        field.add(line(complex(x0, y0), complex(x1, y1), FINE))
    start, end = 0.31 + 0.17j, 0.31 + 0.17j + 15.3 * heading(direction)
    steps = [1j * heading(direction) * offset for offset in (-7.77, 0.0, 3.33, 12.12)]
    counted = []
    for step in steps:
        a, b = start + step, end + step
        piece = (a.real, a.imag, b.real, b.imag)
        counted.append(sum(crosses(piece, segment) for segment in field.segments))
    assert field.crossed(start, end, steps) == counted


def test_box_holds_all_strokes_and_labels() -> None:
    field = Field()
    field.add(circle(3 + 4j, 10.0, HEAVY), line(0j, 20 + 1j, FINE))
    field.add(set_in(TEXT, centred(TEXT, 40 + 40j), tag("note:x")))
    assert field.box == bounds(field.shapes)


def test_watched_stroke_is_kept_clear_of_but_not_drawn() -> None:
    field = Field()
    field.watch(line(-9 + 0j, 9 + 0j, FINE))
    assert not field.shapes
    assert not field.is_free(centred(TEXT, 0j))


def test_ray_tells_what_lies_along_it_what_it_meets_and_what_it_hides() -> None:
    field = Field()
    field.add(Path(((0j, 30j),), FINE), line(-5 + 50j, 5 + 50j, FINE))
    field.add(set_in(TEXT, centred(TEXT, 80j), tag("note:x")))
    ray = field.ray(0j, 100j)
    assert ray.covered(40.0) == pytest.approx(30.0)
    assert not ray.covered(60.0)  # half of the way only
    assert ray.last(60.0) == pytest.approx(50.0)
    assert not ray.hides(0.0, 60.0)
    assert ray.hides(0.0, 90.0)


def test_a_ray_knows_where_a_force_s_arrow_ends_that_lies_along_it() -> None:
    field = Field()
    field.add(Arrow(5j, 30j, HEAVY), Arrow(40j, 60j, FINE), Arrow(3 + 5j, 3 + 45j, HEAVY))
    ray = field.ray(0j, 100j)
    for at in (5.0, 30.0):
        assert ray.ends_an_arrow(at)
    for at in (0.0, 29.0, 40.0, 45.0, 60.0):
        assert not ray.ends_an_arrow(at)


def test_a_ray_that_starts_within_a_label_is_hidden_from_there() -> None:
    field = Field()
    field.add(set_in(TEXT, centred(TEXT, 0j), tag("note:x")), line(-5 + 30j, 5 + 30j, FINE))
    ray = field.ray(0j, 100j)
    assert ray.first() == 0.0
    assert ray.hides(0.0, 1.0)
    assert field.ray(20j, 100j).first() == pytest.approx(10.0)
    assert field.ray(40j, 100j).first() == 0.0


def test_a_line_may_reach_into_an_outline_and_not_run_through_it() -> None:
    field, nowhere = Field(), Box(500.0, 500.0, 501.0, 501.0)
    outline = (0j, 40 + 0j, 40 + 10j, 10j, 0j)
    field.add(Path((outline,), FINE, tag("body:plank")))
    for end, edges in ((20 - 5j, 0), (20 + 5j, 1), (20 + 30j, 2)):
        for least in (1, 2):
            met = field.hits(20 - 20j, end, What.BODY, nowhere, least)
            assert met == (edges >= least)
    assert not field.hits(20 - 20j, 20 + 30j, What.LOAD, nowhere)
    assert not field.hits(20 - 20j, 20 + 30j, What.BODY, Box(-1.0, -1.0, 50.0, 50.0))


def test_what_is_square_to_a_wall_or_ends_before_it_does_not_slant_through_it() -> None:
    field = Field()
    wall, floor = line(50 + 0j, 50 + 100j, HEAVY), line(0j, 50 + 0j, HEAVY)
    field.add(replace(wall, tag=tag("ground")), replace(floor, tag=tag("ground")))
    for end, slants in ((80 + 50j, False), (45 + 70j, False), (80 + 90j, True), (20 - 20j, False)):
        assert field.slants_through_wall(10 + 50j, end) == slants


def test_strokes_and_labels_drawn_on_a_trial_leave_the_paper_as_it_is() -> None:
    field = Field()
    field.add(line(0j, 20 + 1j, FINE))
    before, room = field.box, Box(5.0, 40.0, 15.0, 50.0)
    trial = field.trial()
    trial.add(line(0j, 90j, FINE), line(10 + 40j, 10 + 90j, FINE))
    trial.add(Arrow(0j, 30j, HEAVY), set_in(TEXT, centred(TEXT, 40 + 40j), tag("note:x")))
    trial.torn += 1
    trial.measures.append((0j, 1j))
    assert (field.box, field.torn, field.measures, field.arrows) == (before, 0, [], [])
    assert field.is_free(room)
    assert not trial.is_free(room)
    assert field.crossings(5 + 45j, 15 + 45j) == 0
    assert not field.hits_label(40 + 35j, 40 + 45j)


def test_what_is_rubbed_out_is_free_again_on_the_other_paper() -> None:
    field = Field()
    label, lead = set_in(TEXT, centred(TEXT, 40 + 40j), tag("note:x")), line(0j, 90j, FINE)
    field.add(line(-9 + 0j, 9 + 0j, FINE), label, lead)
    other = field.without(label, lead)
    assert [field.is_free(centred(TEXT, at)) for at in (40 + 40j, 60j)] == [False, False]
    assert [other.is_free(centred(TEXT, at)) for at in (40 + 40j, 60j, 0j)] == [True, True, False]
    assert not other.hits_label(0j, 60 + 60j)
    assert not other.hits(-5 + 50j, 5 + 50j, lead.tag.what, label.box)
    assert other.box == bounds(other.shapes)
    assert field.box == bounds(field.shapes)


def test_a_label_lies_on_a_body_it_is_within() -> None:
    field = Field()
    corners = (-30 - 30j, 30 - 30j, 30 + 30j, -30 + 30j)
    field.add(polygon(corners, FINE, tone=Tone.BODY))
    assert field.on_opaque(centred(TEXT, 0j))
    assert not field.on_opaque(centred(TEXT, 60 + 0j))
