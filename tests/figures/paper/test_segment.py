"""Straight pieces and boxes: whether they meet, and where."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from probgen.figures.paper.scene import Box
from probgen.figures.paper.segment import crosses, meeting, meets

coordinate = st.integers(-20, 20).map(float)
UNIT = Box(0.0, 0.0, 1.0, 1.0)


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


@pytest.mark.parametrize(
    ("other", "share"),
    [
        ((0.0, 3.0, 8.0, -1.0), 0.6),  # crossed at (2.4, 1.8) of a piece to (4, 3)
        ((2.0, 1.5, 8.0, 6.0), 1.0),  # along it, from its middle to beyond its end
        ((-4.0, -3.0, 1.0, 0.75), 0.25),  # along it, until its first quarter
    ],
)
def test_where_a_piece_has_met_another(
    other: tuple[float, float, float, float], share: float
) -> None:
    assert meeting((0.0, 0.0, 4.0, 3.0), other) == pytest.approx(share)


@given(coordinate, coordinate, coordinate, coordinate)
def test_meeting_agrees_with_walking_along_the_piece(
    x0: float, y0: float, x1: float, y1: float
) -> None:
    box = Box(-7.3, -4.1, 6.2, 5.7)
    spots = [(x0 + (x1 - x0) * i / 400, y0 + (y1 - y0) * i / 400) for i in range(401)]
    inside = any(box.left <= x <= box.right and box.bottom <= y <= box.top for x, y in spots)
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


def test_place_of_meeting_is_a_share_of_the_first_piece() -> None:
    assert meeting((0.0, 0.0, 4.0, 0.0), (1.0, -1.0, 1.0, 3.0)) == pytest.approx(0.25)
    along = meeting((0.0, 0.0, 4.0, 0.0), (1.0, 0.0, 3.0, 0.0))
    assert along == pytest.approx(0.75)  # the end of a piece on the same line
