"""How values are spread over many draws: bars of one width between two ends that have a label."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

BARS: Final = 24
"""The most that a histogram has."""
WIDTH: Final = 192.0
HEIGHT: Final = 40.0
"""Of the box in which bars are drawn."""

Numbers = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Histogram:
    """heights: of the bars, in parts of the highest; low, high: the ends, with their units."""

    heights: tuple[float, ...]
    low: str
    high: str

    @property
    def outline(self) -> str:
        """Its bars as the path of an SVG, y downwards, in a box of WIDTH by HEIGHT."""
        edges = np.linspace(0.0, WIDTH, len(self.heights) + 1)
        tops = [HEIGHT * (1.0 - height) for height in self.heights]
        steps = (f"V{top:.4g}H{end:.4g}" for top, end in zip(tops, edges[1:], strict=True))
        return f"M0 {HEIGHT:.4g}{''.join(steps)}V{HEIGHT:.4g}Z"


def of_choices(places: NDArray[np.int64], printed: Sequence[str]) -> Histogram:
    """Of values that are chosen from a list.

    places: in the list, one a draw; printed: the list.  Where several choices share a bar, it shows
    their mean, so that a last bar with fewer of them is no lower for it.
    """
    counts = np.bincount(places, minlength=len(printed)).astype(float)
    starts = np.arange(0, len(printed), -(-len(printed) // BARS))
    shared = np.diff([*starts, len(printed)])
    return Histogram(_scaled(np.add.reduceat(counts, starts) / shared), printed[0], printed[-1])


def of_numbers(values: Numbers, printed: Sequence[str]) -> Histogram:
    """Of one number or more, each with what is printed for it; bars between least and greatest."""
    least, greatest = int(np.argmin(values)), int(np.argmax(values))
    different = len(np.unique(values))
    counts, _ = np.histogram(values, bins=min(BARS, different))
    return Histogram(_scaled(counts.astype(float)), printed[least], printed[greatest])


def turned(angles: Numbers) -> Numbers:
    """Directions in degrees, cut where the widest gap between them is, so that they lie together.

    170 and -170 become 170 and 190.
    """
    there = np.unique(np.mod(angles, 360.0))
    gaps = [after - before for before, after in pairwise([*there, there[0] + 360.0])]
    start = there[(int(np.argmax(gaps)) + 1) % len(there)]
    lying: Numbers = start + np.mod(angles - start, 360.0)
    return lying


def _scaled(counts: Numbers) -> tuple[float, ...]:
    highest = float(counts.max()) or 1.0
    return tuple((counts / highest).round(3).tolist())
