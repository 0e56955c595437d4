"""A chain runs taut from one place to another, its links within it and apart."""

from __future__ import annotations

from itertools import pairwise

import pytest

from probgen.figures.paper.scene import Path, bounds
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts.chain import chain


@pytest.mark.parametrize("length", [6.0, 20.0, 33.0, 100.0])
def test_links_are_spread_evenly_between_the_ends_of_a_chain(length: float) -> None:
    through, *links = chain(0j, length + 0j, UNTAGGED)
    assert isinstance(through, Path)
    assert through.lines == ((0j, length + 0j),)
    boxes = [bounds([link]) for link in links]
    assert boxes
    middles = [box.centre.real for box in boxes]
    assert middles[0] - 0.0 == pytest.approx(length - middles[-1])
    assert all(one.right < other.left for one, other in pairwise(boxes))
    assert boxes[0].left > -0.5
    assert all(box.height < box.width for box in boxes)
    assert len(boxes) >= length / 9.0 - 1.0
