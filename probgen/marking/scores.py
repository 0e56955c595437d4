"""The points of a class as a table: a row a paper, a column an item, for statistics."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from probgen.marking.form import Paper
from probgen.marking.marks import Row


class Item(NamedTuple):
    """One thing asked: its problem's place in the set, from 1, its id, the points it is worth."""

    problem: int
    answer: str
    most: int


@dataclass(frozen=True, slots=True)
class Scores:
    """points: a row a paper, a column an item; not finite where a paper does not have the item, or
    a person has yet to decide.
    """

    papers: tuple[Paper, ...]
    items: tuple[Item, ...]
    points: NDArray[np.float64]

    def column(self, item: int) -> NDArray[np.float64]:
        """The part of its points that an item earned, of the papers where that is known."""
        own = self.points[:, item]
        return own[np.isfinite(own)] / self.items[item].most

    def problem(self, place: int) -> NDArray[np.float64]:
        """The points of each paper for one problem; not finite where some are not known."""
        own = [at for at, item in enumerate(self.items) if item.problem == place]
        found: NDArray[np.float64] = self.points[:, own].sum(axis=1)
        return found

    def whole(self) -> tuple[NDArray[np.int_], NDArray[np.float64]]:
        """The places of the papers of which all is known, and their points for what all have."""
        had = np.isfinite(self.points).any(axis=0)
        complete = np.flatnonzero(np.isfinite(self.points[:, had]).all(axis=1))
        return complete, self.points[np.ix_(complete, np.flatnonzero(had))]


def scores(papers: Sequence[Paper], found: Iterable[Row]) -> Scores:
    """The table; found: the rows of all their answers, with what was changed by hand.

    What is worth no points is no item.
    """
    places = {paper.id: place for place, paper in enumerate(papers)}
    items: dict[Item, int] = {}
    cells: list[tuple[int, int, float]] = []
    for row in found:
        item = Item(int(row.problem), row.answer, int(row.of))
        if item.most:
            column = items.setdefault(item, len(items))
            cells.append((places[row.id], column, float(row.counts or math.nan)))
    points = np.full((len(papers), len(items)), np.nan)
    for place, column, value in cells:
        points[place, column] = value
    order = sorted(range(len(items)), key=lambda at: list(items)[at].problem)
    return Scores(tuple(papers), tuple(list(items)[at] for at in order), points[:, order])
