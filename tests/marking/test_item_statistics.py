"""Item statistics beside published values, and what their formulas have to hold."""

from __future__ import annotations

import math
from itertools import product

import numpy as np
import pytest

from probgen.marking.item_statistics import (
    alpha,
    alpha_without,
    correlation,
    discrimination,
    facility,
    with_rest,
)

# LSAT section 6 (Bock and Lieberman, Psychometrika 35, 179, 1970): how many of 1,000 people have
# each pattern of five items, from 00000 to 11111.
COUNTS = [
    3, 6, 2, 11, 1, 1, 3, 4, 1, 8, 0, 16, 0, 3, 2, 15, 10, 29, 14, 81, 3, 28, 15, 80, 16, 56, 21,
    173, 11, 61, 28, 298,
]  # fmt: skip
LSAT = np.repeat(np.array(list(product((0.0, 1.0), repeat=5))), COUNTS, axis=0)


def test_the_counts_are_those_of_the_publication() -> None:
    assert len(LSAT) == 1000
    assert [int(n) for n in np.bincount(LSAT.sum(axis=1).astype(int))] == [3, 20, 85, 237, 357, 298]


def test_facility_of_the_law_schools_items() -> None:
    found = [facility(LSAT[:, item]) for item in range(5)]
    assert found == pytest.approx([0.924, 0.709, 0.553, 0.763, 0.870], abs=5e-4)


def test_alpha_of_all_and_without_each() -> None:
    assert alpha(LSAT) == pytest.approx(0.2950, abs=5e-5)
    without = [alpha_without(LSAT, item) for item in range(5)]
    assert without == pytest.approx([0.2754, 0.2376, 0.2168, 0.2459, 0.2663], abs=5e-5)


ALPHAS = [  # by hand
    ([[0, 0], [1, 1], [2, 2]], 1.0),  # variances 1 and 1, of the sums 4
    ([[0, 0], [1, 1], [2, 1]], 6 / 7),  # 1 and 1/3, of the sums 7/3
    ([[0, 0], [1, 1]], 1.0),
    ([[0, 0], [1, 1], [1, 0], [0, 1]], 0.0),
]


@pytest.mark.parametrize(("table", "expected"), ALPHAS)
def test_alpha_of_two_items(table: list[list[float]], expected: float) -> None:
    assert alpha(np.array(table, float)) == pytest.approx(expected, abs=1e-12)
    assert math.isnan(alpha(np.array(table[:1], float)))


def test_correlations_with_the_total_and_with_the_rest() -> None:
    totals = LSAT.sum(axis=1)
    rest = [with_rest(LSAT, item) for item in range(5)]
    whole = [correlation(LSAT[:, item], totals) for item in range(5)]
    assert rest == pytest.approx([0.1128, 0.1532, 0.1728, 0.1444, 0.1216], abs=5e-5)
    assert whole == pytest.approx([0.3620, 0.5668, 0.6184, 0.5344, 0.4354], abs=5e-5)


def test_point_biserial_of_scipys_example() -> None:
    """0.8660254 in the documentation of `scipy.stats.pointbiserialr`."""
    found = correlation(np.array([0, 0, 0, 1, 1, 1, 1.0]), np.arange(7.0))
    assert found == pytest.approx(0.8660254, abs=5e-8)


def test_discrimination_is_the_difference_of_the_upper_and_the_lower_group() -> None:
    totals = np.arange(100.0)
    assert discrimination((totals > 72.5).astype(float), totals) == 1.0  # the upper 27 alone
    assert discrimination((totals < 26.5).astype(float), totals) == -1.0
    assert discrimination(((totals > 26.5) & (totals < 72.5)).astype(float), totals) == 0.0
    assert discrimination(np.full(100, 0.4), totals) == pytest.approx(0.0)


def test_no_order_of_papers_matters_where_totals_are_alike() -> None:
    totals = LSAT.sum(axis=1)
    found = [discrimination(LSAT[:, item], totals) for item in range(5)]
    other = np.random.default_rng(5).permutation(1000)
    again = [discrimination(LSAT[other, item], totals[other]) for item in range(5)]
    assert found == pytest.approx(again)
    # The lower group is the 108 of 0 to 2 and 162 of the 237 of 3, the upper 270 of the 298 of 5.
    for item in range(5):
        low = LSAT[totals <= 2, item].sum() + 162 * LSAT[totals == 3, item].mean()
        assert found[item] == pytest.approx(1.0 - low / 270)


def test_what_has_no_value_is_not_finite() -> None:
    same = np.ones((4, 2))
    assert math.isnan(alpha(same))
    assert math.isnan(alpha(np.ones((4, 1))))
    assert math.isnan(with_rest(same, 0))
    assert math.isnan(facility(np.array([])))
