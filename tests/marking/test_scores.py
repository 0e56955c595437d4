"""The table of points that statistics are made from."""

from __future__ import annotations

from decimal import Decimal

import numpy as np

from probgen.marking.scores import Item, scores
from tests.marking.test_marks import PAPERS, table

OWN = [each.paper for each in PAPERS]

# Of T (4 points) and theta (6), the same problem twice: the third and the fourth paper's T is open.
ITEMS = (Item(1, "T", 4), Item(1, "t", 6), Item(2, "T", 4), Item(2, "t", 6))


def test_a_row_a_paper_and_a_column_an_item() -> None:
    found = scores(OWN, table(PAPERS))
    assert found.items == ITEMS
    expected = [[4, 6, 4, 6], [0, 0, 0, 0], [np.nan, 3, np.nan, 3], [np.nan, 6, np.nan, 6]]
    np.testing.assert_array_equal(found.points, np.array(expected, float))
    np.testing.assert_array_equal(found.problem(2), np.array([10, 0, np.nan, np.nan]))
    np.testing.assert_array_equal(found.column(0), [1.0, 0.0])
    np.testing.assert_array_equal(found.column(1), [1.0, 0.0, 0.5, 1.0])


def test_papers_of_which_all_is_known() -> None:
    found = scores(OWN, table(PAPERS))
    places, points = found.whole()
    assert places.tolist() == [0, 1]
    assert points.tolist() == [[4, 6, 4, 6], [0, 0, 0, 0]]
    by_hand = {("4", "1", "T"): Decimal(2), ("4", "2", "T"): Decimal(1)}
    places, points = scores(OWN, table(PAPERS, by_hand)).whole()
    assert places.tolist() == [0, 1, 3]
    assert points[2].tolist() == [2, 6, 1, 6]
