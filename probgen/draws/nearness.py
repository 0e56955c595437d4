"""How near the answers of two students are, in units of what earns full marks.

Two could copy from each other where every answer of each lies within the tolerance of the other's.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.float64]
Places = NDArray[np.intp]

MOST_ALIKE: Final = 0.001
"""Of all pairs of a class may be able to copy: a judgement."""
_ROWS: Final = 64
"""So many students are compared with a whole class in one go."""


@dataclass(frozen=True, slots=True)
class Answers:
    """The numbers asked for in several draws of a problem: a row a draw, a column a number.

    values: coherent units, directions in degrees; halves: how far each may be off and still earn
    full marks; turning: which columns are directions.
    """

    values: Numbers
    halves: Numbers
    turning: tuple[bool, ...]

    def __len__(self) -> int:
        return len(self.values)

    def rows(self, places: Any) -> Answers:
        """Those of some draws: their places, or a flag for each draw."""
        return Answers(self.values[places], self.halves[places], self.turning)


@dataclass(frozen=True, slots=True)
class Copying:
    """Who of a class could copy.

    papers: that were compared; share: of their pairs, 0 to 1; exposed: papers in such a pair.
    """

    papers: int
    share: float
    exposed: int


def alike(some: Answers, others: Answers) -> tuple[Places, Places]:
    """The pairs that could copy: the place of each one among some, and among the others."""
    near = np.ones((len(some), len(others)), dtype=np.bool_)
    if some.turning:  # the first answer leaves few pairs for the others to tell apart
        differences = _difference(some.values[:, :1], others.values[:, 0], some.turning[0])
        near = differences <= np.minimum(some.halves[:, :1], others.halves[:, 0])
    one, other = np.nonzero(near)
    for column, turning in enumerate(some.turning[1:], 1):
        differences = _difference(some.values[one, column], others.values[other, column], turning)
        widths = np.minimum(some.halves[one, column], others.halves[other, column])
        one, other = one[differences <= widths], other[differences <= widths]
    return one, other


def apart(some: Answers, others: Answers) -> Numbers:
    """How far each of some is from each of the others, a row for each of some.

    The largest difference of any of their answers, in units of the smaller tolerance: those at
    most 1 apart could copy.
    """
    found = np.zeros((len(some), len(others)))
    for column, turning in enumerate(some.turning):
        values, halves = some.values[:, column, None], some.halves[:, column, None]
        differences = _difference(values, others.values[:, column], turning)
        widths = np.minimum(halves, others.halves[:, column])
        with np.errstate(divide="ignore", invalid="ignore"):
            steps = np.where(differences > 0.0, differences / widths, 0.0)
        found = np.maximum(found, steps)
    return found


def copying(answers: Answers) -> Copying:
    """Which share of the pairs of a class could copy, and how many students could."""
    papers, pairs = len(answers), 0
    exposed = np.zeros(papers, dtype=np.bool_)
    for start in range(0, papers, _ROWS):
        some = np.arange(start, min(start + _ROWS, papers))
        one, other = alike(answers.rows(some), answers)
        different = some[one] != other
        pairs += int(np.count_nonzero(different))
        exposed[other[different]] = True
    possible = papers * (papers - 1)
    return Copying(papers, pairs / possible if possible else 0.0, int(np.count_nonzero(exposed)))


def _difference(some: Numbers, others: Numbers, turning: bool) -> Numbers:
    differences: Numbers = np.abs(some - others)
    return np.abs((differences + 180.0) % 360.0 - 180.0) if turning else differences
