"""Of two drawings the one is kept whose labels are as near, if it takes no more room."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import FINE, Scene, composed, line
from probgen.figures.paper.tag import Tag, What
from probgen.figures.situation.choice import as_near


def drawn(width: float, leaders: int) -> Scene:
    edge = line(0j, complex(width, width), FINE)
    led = [line(0j, 5j, FINE, Tag(What.LEADER)) for _ in range(leaders)]
    return composed([edge, *led])


@pytest.mark.parametrize(
    ("width", "leaders", "kept"), [(110.0, 1, True), (110.0, 0, True), (110.0, 2, False),
                                   (140.0, 1, False)],
)  # fmt: skip
def test_one_with_more_lines_to_labels_or_much_larger_is_not_kept(
    width: float, leaders: int, kept: bool
) -> None:
    assert as_near(drawn(width, leaders), drawn(100.0, 1)) == kept


@pytest.mark.parametrize(("spared", "kept"), [(-2, False), (1, False), (2, True), (5, True)])
def test_a_line_more_is_worth_two_that_run_through_walls(spared: int, kept: bool) -> None:
    assert as_near(drawn(100.0, 1), drawn(100.0, 0), spared) == kept
