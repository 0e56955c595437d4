"""What hides a fine line behind it: the insides of tinted shapes, not those seen through."""

from __future__ import annotations

import pytest

from probgen.figures.paper.cover import behind, covers
from probgen.figures.paper.scene import FINE, Path, Pen, Shape, Tone, circle, polygon

SQUARE = (10 - 5j, 20 - 5j, 20 + 5j, 10 + 5j)


@pytest.mark.parametrize(
    ("shape", "hidden"),
    [
        (polygon(SQUARE, FINE, tone=Tone.BODY), [(10.0, 20.0)]),
        (circle(0j, 8.0, FINE, tone=Tone.PERSON), [(0.0, 8.0)]),
        (Path(((30 - 9j, 30 + 9j),), Pen(6.0), tone=Tone.PERSON), [(27.0, 33.0)]),
        (polygon(SQUARE, FINE), []),
        (polygon(SQUARE, FINE, tone=Tone.WATER), []),
        (polygon([corner + 7j for corner in SQUARE], FINE, tone=Tone.BODY), []),
    ],
)
def test_insides_hide_a_line_from_rim_to_rim(
    shape: Shape, hidden: list[tuple[float, float]]
) -> None:
    found = list(behind(covers(shape), 0j, 100 + 0j))
    assert len(found) == len(hidden)
    for got, due in zip(found, hidden, strict=True):
        assert got == pytest.approx(due, abs=0.2)
