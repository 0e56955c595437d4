"""Versions compared: published values of each test, classes of effects, and power."""

from __future__ import annotations

import math

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy import stats

from probgen.marking.version_statistics import (
    CommonOdds,
    Outcome,
    kruskal_wallis,
    least_seen,
    mantel_haenszel,
    rank_correlation,
    strata,
)

# SciPy's documented examples of `scipy.stats.kruskal`.
KRUSKAL = [
    ([[1, 3, 5, 7, 9], [2, 4, 6, 8, 10]], 0.2727273, 0.6015081),
    ([[1, 1, 1], [2, 2, 2], [2, 2]], 7.0, 0.0301974),
]


@pytest.mark.parametrize(("groups", "statistic", "p"), KRUSKAL)
def test_kruskal_and_wallis(groups: list[list[int]], statistic: float, p: float) -> None:
    found = kruskal_wallis([np.array(each, float) for each in groups])
    assert (found.statistic, found.p) == pytest.approx((statistic, p), abs=5e-8)


def samples() -> list[tuple[NDArray[np.float64], NDArray[np.float64]]]:
    """Pairs of columns, with many values alike, and with none."""
    chance = np.random.default_rng(5)
    return [
        (np.floor(chance.uniform(0.0, ties, size)), chance.normal(size=size).round(places))
        for size, ties, places in ((12, 3.0, 0), (40, 6.0, 1), (60, 1e9, 9))
    ]


@pytest.mark.parametrize("pair", samples())
def test_ranks_are_compared_as_scipy_compares_them(
    pair: tuple[NDArray[np.float64], NDArray[np.float64]],
) -> None:
    """Unequal groups of the first column, and both columns."""
    own = np.split(pair[0], [5, 9])
    for found, theirs in (
        (kruskal_wallis(own), stats.kruskal(*own)),
        (rank_correlation(*pair), stats.spearmanr(*pair)),
    ):
        expected = (float(theirs.statistic), float(theirs.pvalue))
        assert (found.statistic, found.p) == pytest.approx(expected, rel=1e-9)


def test_nothing_is_tested_where_nothing_differs() -> None:
    assert math.isnan(kruskal_wallis([np.ones(3), np.ones(4)]).p)
    assert math.isnan(kruskal_wallis([np.arange(3.0)]).p)


# Admissions at Berkeley in 1973 by six departments (P. J. Bickel et al., Science 187, 398, 1975):
# men admitted and rejected, women admitted and rejected.
BERKELEY = [
    [[512, 313], [89, 19]], [[353, 207], [17, 8]], [[120, 205], [202, 391]],
    [[138, 279], [131, 244]], [[53, 138], [94, 299]], [[22, 351], [24, 317]],
]  # fmt: skip
# Smoking and lung cancer in eight cities of China (A. Agresti, An Introduction to Categorical Data
# Analysis): smokers with and without, others with and without.
CHINA = [
    [[126, 100], [35, 61]], [[908, 688], [497, 807]], [[913, 747], [336, 598]],
    [[235, 172], [58, 121]], [[402, 308], [121, 215]], [[182, 156], [72, 98]],
    [[60, 99], [11, 43]], [[104, 89], [21, 36]],
]  # fmt: skip


def test_common_odds_of_admissions() -> None:
    """As R's `mantelhaen.test(UCBAdmissions)` prints them."""
    found = mantel_haenszel(np.array(BERKELEY, float))
    assert found.ratio == pytest.approx(0.9046968, abs=5e-8)
    assert (found.low, found.high) == pytest.approx((0.7719074, 1.0603298), abs=5e-8)
    assert found.corrected.statistic == pytest.approx(1.4269, abs=5e-5)
    assert found.corrected.p == pytest.approx(0.2323, abs=5e-5)


def test_common_odds_of_smokers() -> None:
    """As the documentation of statsmodels prints them for its table `china_smoking`."""
    found = mantel_haenszel(np.array(CHINA, float))
    assert found.ratio == pytest.approx(2.174, abs=5e-4)
    assert (found.low, found.high) == pytest.approx((1.984, 2.383), abs=5e-4)
    assert found.test.statistic == pytest.approx(280.138, abs=5e-4)


def test_strata_of_one_paper_say_nothing() -> None:
    alone = [*BERKELEY, [[1, 0], [0, 0]], [[0, 0], [0, 0]]]
    assert mantel_haenszel(np.array(alone, float)) == mantel_haenszel(np.array(BERKELEY, float))
    assert math.isnan(mantel_haenszel(np.array([[[1.0, 0.0], [0.0, 0.0]]])).ratio)


# exp(1/2.35) = 1.530 and exp(1.5/2.35) = 1.893 are where the classes begin.
SIZES = [
    (1.5, 1.2, 1.9, 0.001, "A"), (1.6, 1.2, 2.1, 0.001, "B"), (1.6, 0.9, 2.8, 0.10, "A"),
    (2.5, 1.7, 3.7, 0.001, "C"), (2.5, 1.3, 4.8, 0.01, "B"), (0.4, 0.27, 0.6, 0.001, "C"),
    (0.4, 0.2, 0.8, 0.01, "B"), (0.6, 0.4, 0.9, 0.01, "B"),
    (math.nan, math.nan, math.nan, 0.5, "A"), (0.0, math.nan, math.nan, 0.001, "B"),
    (math.inf, math.nan, math.nan, 0.001, "B"), (0.0, math.nan, math.nan, 0.3, "A"),
]  # fmt: skip


@pytest.mark.parametrize(("ratio", "low", "high", "p", "size"), SIZES)
def test_classes_of_effects(ratio: float, low: float, high: float, p: float, size: str) -> None:
    assert CommonOdds(ratio, low, high, Outcome(1.0, p), Outcome(1.0, p)).size == size


def test_delta_is_minus_two_point_three_five_times_the_logarithm() -> None:
    found = CommonOdds(math.e, 1.0, 2.0, Outcome(1.0, 0.1), Outcome(1.0, 0.1))
    assert found.delta == pytest.approx(-2.35)


def test_the_least_difference_seen_is_found_four_times_in_five() -> None:
    """So many pairs of samples so far apart, each tested by its own z: about 80 % are found."""
    chance = np.random.default_rng(11)
    groups = [chance.normal(0.0, 2.0, 4000), chance.normal(0.0, 2.0, 4000)]
    least = least_seen([each[:40] for each in groups])
    assert least == pytest.approx(2.8 * 2.0 * math.sqrt(2 / 40), rel=0.25)
    apart = 2.8016 * 2.0 * math.sqrt(2 / 40)
    means = chance.normal(0.0, 2.0, (20_000, 2, 40)).mean(axis=2) + np.array([apart, 0.0])
    seen = np.abs(means[:, 0] - means[:, 1]) > 1.96 * 2.0 * math.sqrt(2 / 40)
    assert seen.mean() == pytest.approx(0.8, abs=0.02)


def test_the_least_difference_of_groups_of_several_sizes() -> None:
    """By hand: squares 2 and 8 about the means, 3 degrees of freedom; z of 97.5 % and of 80 %."""
    groups = [np.array([1.0, 3.0]), np.array([2.0, 4.0, 6.0])]
    expected = (1.959964 + 0.841621) * math.sqrt(10 / 3) * math.sqrt(1 / 2 + 1 / 3)
    assert least_seen(groups) == pytest.approx(expected, rel=1e-6)
    larger = [*groups, np.array([5.0, 5.0, 5.0, 5.0])]  # 6 degrees, and the two smallest stay
    assert least_seen(larger) == pytest.approx(expected * math.sqrt(3 / 6), rel=1e-6)
    assert math.isnan(least_seen([np.array([1.0]), np.array([2.0])]))
    assert math.isnan(least_seen([np.array([]), np.array([2.0, 3.0])]))
    assert math.isnan(least_seen(groups[:1]))


def test_strata_hold_every_paper_once_among_its_like() -> None:
    rest = np.arange(100.0)
    group = rest % 2 == 0
    found = strata(rest > 49.5, rest, group, 5)
    assert found.shape == (5, 2, 2)
    assert found.sum() == 100
    assert found[0].tolist() == [[0, 10], [0, 10]]
    assert found[4].tolist() == [[10, 0], [10, 0]]


def test_rank_correlation() -> None:
    perfect = rank_correlation(np.arange(9.0), -(np.arange(9.0) ** 3))
    assert (perfect.statistic, perfect.p) == pytest.approx((-1.0, 0.0), abs=1e-12)
    assert math.isnan(rank_correlation(np.ones(5), np.arange(5.0)).p)
