"""Is a version harder than another: rank tests, and Mantel and Haenszel's common odds ratio.

Kruskal and Wallis (J. Am. Stat. Assoc. 47, 583, 1952) for points of several versions; Mantel and
Haenszel (J. Natl. Cancer Inst. 22, 719, 1959) for one item among papers that are as good
otherwise, with the variance of Robins, Breslow and Greenland (Biometrics 42, 311, 1986).  Sizes of
an effect by the classes of the Educational Testing Service: delta = -2.35 ln(odds ratio).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

Column = NDArray[np.float64]
Size = Literal["A", "B", "C"]

LEVEL: Final = 0.05
_DELTA: Final = -2.35
_NORMAL: Final = 1.959963984540054  # 97.5 % of a normal distribution lies below
_POWER: Final = 0.8416212335729143  # 80 %


@dataclass(frozen=True, slots=True)
class Outcome:
    """A test's statistic, and how often chance alone has it as large."""

    statistic: float
    p: float


def kruskal_wallis(groups: Sequence[Column]) -> Outcome:
    """Whether points of several groups are drawn from one distribution, by ranks."""
    from scipy.special import chdtrc  # scipy.stats takes longer to begin than a class to test

    values = np.concatenate(groups) if groups else np.array([])
    if len(groups) < 2 or len(np.unique(values)) < 2:
        return Outcome(math.nan, math.nan)
    count, ranked = len(values), _ranks(values)
    sums = [each.sum() ** 2 / len(each) for each in np.split(ranked, _ends(groups))]
    tied = np.unique(values, return_counts=True)[1].astype(float)
    untied = 1.0 - (tied**3 - tied).sum() / (float(count) ** 3 - count)
    statistic = (12.0 / (count * (count + 1)) * sum(sums) - 3.0 * (count + 1)) / untied
    return Outcome(float(statistic), float(chdtrc(len(groups) - 1, statistic)))


def _ends(groups: Sequence[Column]) -> NDArray[np.int_]:
    return np.cumsum([len(each) for each in groups])[:-1]


def _ranks(values: Column) -> Column:
    """The place of each value among them in order, from 1; of equal ones the mean of theirs."""
    _, place, counts = np.unique(values, return_inverse=True, return_counts=True)
    ranks: Column = (np.cumsum(counts) - (counts - 1) / 2.0)[place]
    return ranks


def least_seen(groups: Sequence[Column]) -> float:
    """The difference of two groups' means that is found 4 times in 5, in the units of the values.

    By the normal distribution, at the level of 5 %, for the two smallest groups.
    """
    sizes = sorted(len(each) for each in groups)[:2]
    free = sum(len(each) - 1 for each in groups)
    if len(sizes) < 2 or not sizes[0] or free < 1:
        return math.nan
    spread = math.sqrt(sum(float(np.sum((each - each.mean()) ** 2)) for each in groups) / free)
    return (_NORMAL + _POWER) * spread * math.sqrt(sum(1.0 / size for size in sizes))


@dataclass(frozen=True, slots=True)
class CommonOdds:
    """The odds of one group beside another's, the same in all strata; low, high: 95 %.

    test: of a ratio of 1; corrected: the same with Yates's correction for continuity.
    """

    ratio: float
    low: float
    high: float
    test: Outcome
    corrected: Outcome

    @property
    def delta(self) -> float:
        if self.ratio == 0.0:
            return math.inf
        return _DELTA * math.log(self.ratio) if math.isfinite(self.ratio) else -self.ratio

    @property
    def size(self) -> Size:
        """A: too small to matter, or chance may make it; C: large; B: between them.

        What has no end that is known, as nobody of one group succeeds, is not called large.
        """
        delta = abs(self.delta)
        if not delta >= 1.0 or not self.test.p < LEVEL:
            return "A"
        if not 0.0 < self.low <= self.high < math.inf:
            return "B"
        ends = sorted(abs(_DELTA * math.log(end)) for end in (self.low, self.high))
        clear = (self.low - 1.0) * (self.high - 1.0) > 0.0 and ends[0] > 1.0
        return "C" if delta >= 1.5 and clear else "B"


def mantel_haenszel(tables: NDArray[np.float64]) -> CommonOdds:
    """Of 2 x 2 tables, a row a group, a column an outcome, one table a stratum.

    Strata of one paper say nothing, and are left out.
    """
    n = tables.sum(axis=(1, 2))
    tables, n = tables[n > 1], n[n > 1]
    (a, b), (c, d) = np.moveaxis(tables, 0, -1)
    with np.errstate(divide="ignore", invalid="ignore"):
        r, s = a * d / n, b * c / n
        ratio = float(r.sum() / s.sum()) if len(n) else math.nan
        p, q = (a + d) / n, (b + c) / n
        variance = (
            (p * r).sum() / (2.0 * r.sum() ** 2)
            + (p * s + q * r).sum() / (2.0 * r.sum() * s.sum())
            + (q * s).sum() / (2.0 * s.sum() ** 2)
        )
        width = _NORMAL * math.sqrt(variance) if np.isfinite(variance) else math.nan
        expected = (a + b) * (a + c) / n
        spread = (a + b) * (c + d) * (a + c) * (b + d) / (n**2 * (n - 1.0))
        off = abs(float((a - expected).sum()))
    found = (_chi2(off, float(spread.sum())), _chi2(max(off - 0.5, 0.0), float(spread.sum())))
    return CommonOdds(ratio, ratio * math.exp(-width), ratio * math.exp(width), *found)


def _chi2(off: float, variance: float) -> Outcome:
    """With one degree of freedom."""
    if not variance > 0.0:
        return Outcome(math.nan, math.nan)
    statistic = off * off / variance
    return Outcome(statistic, math.erfc(math.sqrt(statistic / 2.0)))


def strata(
    right: NDArray[np.bool_], rest: Column, group: NDArray[np.bool_], count: int = 5
) -> NDArray[np.float64]:
    """2 x 2 tables of an item, right or not, in and out of a group, by points on the rest.

    rest: points of each paper without the item; they are cut into about as many strata of as many
    papers.
    """
    edges = np.unique(np.quantile(rest, np.linspace(0.0, 1.0, count + 1)[1:-1]))
    places = np.searchsorted(edges, rest, side="right")
    return np.array([
        [[np.count_nonzero((places == at) & own & found) for found in (right, ~right)]
         for own in (group, ~group)]
        for at in range(len(edges) + 1)
    ], float)  # fmt: skip


def rank_correlation(one: Column, other: Column) -> Outcome:
    """Spearman's: whether one grows with the other; how often chance does so by Student's t."""
    from scipy.special import stdtr

    if len(one) < 3 or len(np.unique(one)) < 2 or len(np.unique(other)) < 2:
        return Outcome(math.nan, math.nan)
    found = float(np.clip(np.corrcoef(_ranks(one), _ranks(other))[0, 1], -1.0, 1.0))
    free, rest = len(one) - 2, (1.0 - found) * (1.0 + found)
    t = found * math.sqrt(free / rest) if rest > 0.0 else math.inf
    return Outcome(found, 2.0 * float(stdtr(free, -abs(t))))
