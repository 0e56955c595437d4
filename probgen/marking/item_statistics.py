"""Statistics of items by textbook formulas: how hard, how telling, how well they go together.

A table has a row a paper and a column an item, points or parts of them.  Facility, discrimination
by the upper and the lower 27 % (T. L. Kelley, J. Educ. Psychol. 30, 17, 1939), the correlation of
an item with the rest (point-biserial for items right or wrong), and Cronbach's alpha (L. J.
Cronbach, Psychometrika 16, 297, 1951), which for such items is Kuder and Richardson's formula 20.
What has no value, such as a correlation with what never differs, is not finite.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

Column = NDArray[np.float64]
Table = NDArray[np.float64]

KELLEY: Final = 0.27
"""The part of the papers in the upper, and in the lower group."""


def facility(parts: Column) -> float:
    """The mean part of its points that an item earns."""
    return float(np.mean(parts)) if len(parts) else float("nan")


def discrimination(parts: Column, totals: Column) -> float:
    """How much more of an item's points the upper 27 % of papers earn than the lower 27 %.

    Papers of one total at the edge of a group count in part, so that no order of them matters.
    """
    return _mean_of_best(parts, totals) - _mean_of_best(parts, -totals)


def _mean_of_best(parts: Column, totals: Column) -> float:
    wanted = KELLEY * len(parts)
    found, left = 0.0, wanted
    for total in np.unique(totals)[::-1]:
        alike = totals == total
        taken = min(left, float(np.count_nonzero(alike)))
        found += taken * float(np.mean(parts[alike]))
        left -= taken
        if left <= 0.0:
            break
    return found / wanted if wanted else float("nan")


def correlation(one: Column, other: Column) -> float:
    """Pearson's; with an item that is right or wrong it is the point-biserial one."""
    a, b = one - one.mean(), other - other.mean()
    with np.errstate(invalid="ignore", divide="ignore"):
        return float(np.sum(a * b) / np.sqrt(np.sum(a * a) * np.sum(b * b)))


def with_rest(table: Table, item: int) -> float:
    """The correlation of an item with the sum of all others."""
    return correlation(table[:, item], table.sum(axis=1) - table[:, item])


def alpha(table: Table) -> float:
    """Cronbach's alpha: k/(k - 1) (1 - sum of the items' variances/variance of the sums)."""
    papers, items = table.shape
    if papers < 2 or items < 2:
        return float("nan")
    with np.errstate(invalid="ignore", divide="ignore"):
        apart = table.var(axis=0, ddof=1).sum() / table.sum(axis=1).var(ddof=1)
    return float(items / (items - 1) * (1.0 - apart))


def alpha_without(table: Table, item: int) -> float:
    """Alpha of all items but one."""
    return alpha(np.delete(table, item, axis=1))
