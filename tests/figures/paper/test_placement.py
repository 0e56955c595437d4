"""Places for labels: at their distance from an anchor, as large as the type."""

from __future__ import annotations

import pytest

from probgen.figures.paper.placement import beside, centred, past, set_in
from probgen.figures.paper.type_metrics import extent
from probgen.quantities.expression import Name
from tests.figures.seen import tag

TEXT = Name("T", "T_x")


@pytest.mark.parametrize("direction", [0.0, 30.0, 90.0, 135.0, 270.0])
def test_label_beside_an_anchor_keeps_its_distance(direction: float) -> None:
    box = beside(TEXT, 3 + 4j, direction, 5.0)
    nearest = complex(min(max(3, box.left), box.right), min(max(4, box.bottom), box.top))
    assert 3.0 <= abs(nearest - (3 + 4j)) <= 5.001


def test_label_fills_its_box() -> None:
    box = centred(TEXT, 10 + 20j)
    label = set_in(TEXT, box, tag("note:x"))
    room = extent(TEXT)
    assert label.spot.real == pytest.approx(box.left)
    assert label.spot.imag - room.depth == pytest.approx(box.bottom)
    assert box.centre == pytest.approx(10 + 20j)


@pytest.mark.parametrize("turn", [0, 1, 2, 3])
def test_box_past_a_slanting_line_keeps_clear_of_it(turn: int) -> None:
    way = 1j**turn * (0.6 + 0.8j)
    box = past(2 + 1j, way, 4.0, 20.0, 8.0)
    corners = [complex(x, y) for x in (box.left, box.right) for y in (box.bottom, box.top)]
    assert min(((corner - (2 + 1j)) / way).real for corner in corners) == pytest.approx(4.0)
