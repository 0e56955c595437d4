"""Straight pieces and boxes: whether they meet; labels: whether they find room."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from probgen.figures.metrics import extent
from probgen.figures.placement import GAP, Field, around, beside, centred, crosses, meets, set_in
from probgen.figures.scene import FINE, Box, line
from probgen.quantities.expression import Name

coordinate = st.integers(-20, 20).map(float)
UNIT = Box(0.0, 0.0, 1.0, 1.0)
TEXT = Name("T", "T_x")


@pytest.mark.parametrize(
    ("segment", "met"),
    [
        ((-1.0, 0.5, 2.0, 0.5), True),
        ((0.2, 0.2, 0.8, 0.8), True),
        ((-1.0, 0.5, -0.1, 0.5), False),
        ((-0.6, 0.6, 0.6, 1.8), False),
        ((-0.4, 0.4, 0.6, 1.4), True),
        ((2.0, -1.0, 2.0, 3.0), False),
    ],
)
def test_piece_meets_box(segment: tuple[float, float, float, float], met: bool) -> None:
    assert meets(segment, UNIT) is met


@given(coordinate, coordinate, coordinate, coordinate)
def test_meeting_agrees_with_walking_along_the_piece(
    x0: float, y0: float, x1: float, y1: float
) -> None:
    box = Box(-7.3, -4.1, 6.2, 5.7)
    spots = [(x0 + (x1 - x0) * i / 400, y0 + (y1 - y0) * i / 400) for i in range(401)]
    inside = any(
        box.left <= x <= box.right and box.bottom <= y <= box.top for x, y in spots
    )
    grown = box.grown(0.1)
    if inside:
        assert meets((x0, y0, x1, y1), grown)
    if meets((x0, y0, x1, y1), box.grown(-0.1)):
        assert inside


@pytest.mark.parametrize(
    ("one", "other", "cross"),
    [
        ((0, 0, 2, 2), (0, 2, 2, 0), True),
        ((0, 0, 1, 1), (0, 2, 2, 0), True),
        ((0, 0, 0.9, 0.9), (0, 2, 2, 0), False),
        ((0, 0, 1, 0), (2, 0, 3, 0), False),
        ((0, 0, 2, 0), (1, 0, 3, 0), True),
    ],
)
def test_pieces_cross(
    one: tuple[float, float, float, float], other: tuple[float, float, float, float], cross: bool
) -> None:
    assert crosses(one, other) is cross
    assert crosses(other, one) is cross


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
    first = field.place(TEXT, around(TEXT, [(0j, favoured)]), "one")
    second = field.place(TEXT, around(TEXT, [(0j, favoured)]), "two")
    assert not first.box.overlaps(second.box)
    for label in (first, second):
        assert not any(meets(segment, label.box.grown(GAP - 0.01)) for segment in field.segments)


@pytest.mark.parametrize("direction", [0.0, 30.0, 90.0, 135.0, 270.0])
def test_label_beside_an_anchor_keeps_its_distance(direction: float) -> None:
    box = beside(TEXT, 3 + 4j, direction, 5.0)
    nearest = complex(min(max(3, box.left), box.right), min(max(4, box.bottom), box.top))
    assert 3.0 <= abs(nearest - (3 + 4j)) <= 5.001


def test_label_fills_its_box() -> None:
    box = centred(TEXT, 10 + 20j)
    label = set_in(TEXT, box, "x")
    room = extent(TEXT)
    assert label.spot.real == pytest.approx(box.left)
    assert label.spot.imag - room.depth == pytest.approx(box.bottom)
    assert box.centre == pytest.approx(10 + 20j)
