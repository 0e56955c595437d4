"""A class as its numbers are given out: who sits beside whom, and what answers are there already.

Of the numbers that a student could get those are chosen whose answers no neighbour could use, then
as few of the class as possible; then those farther from the neighbours', then those that lie where
the range of the answers has been used least.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from probgen.draws.draw import Draw
from probgen.draws.nearness import Answers, Numbers, alike, apart

STRATA: Final = 10
"""Into so many parts of one width the range of each answer is cut."""
SAFE: Final = 3
"""Tolerances apart, from which on neighbours cannot copy, nor nearly: a judgement."""
FAR: Final = 5
"""Tolerances apart, beyond which neighbours are as good as any: a judgement."""


@dataclass(frozen=True, slots=True)
class Classmates:
    """Who sits beside whom, by ids, and the draws of those of the class who have some already."""

    beside: Mapping[str, Collection[str]]
    draws: Mapping[str, Draw]


def in_a_row(students: Sequence[str]) -> Classmates:
    """A class of one row, none of whom has numbers."""
    ends = ("", *students, "")
    beside = {
        student: tuple(filter(None, (ends[place], ends[place + 2])))
        for place, student in enumerate(students)
    }
    return Classmates(beside, {})


class Choice(NamedTuple):
    """The place of what is chosen, and how many tolerances the nearest neighbour is away.

    steps: whole ones, `SAFE` at most.
    """

    place: int
    steps: int


@dataclass(slots=True)
class Classroom:
    """The answers to one problem of those who have numbers.

    beside: the neighbours of each student, by id; probes: answers of draws of no student, which
    show how far the range of the answers goes.
    """

    beside: Mapping[str, Collection[str]]
    probes: Answers
    _places: dict[str, int] = field(default_factory=dict, init=False)
    _there: Answers = field(init=False)
    _counts: NDArray[np.int64] = field(init=False)
    _ends: tuple[Numbers, Numbers] = field(init=False)

    def __post_init__(self) -> None:
        columns = len(self.probes.turning)
        room = np.zeros((max(1, len(self.beside)), columns))
        self._there = Answers(room, room.copy(), self.probes.turning)
        self._counts = np.zeros((columns, STRATA), dtype=np.int64)
        values = _turned(self.probes, self.probes)
        self._ends = values.min(axis=0), values.max(axis=0)

    def seat(self, student: str, answers: Answers) -> None:
        """Notes what answers a student has; a row."""
        place = self._places.setdefault(student, len(self._places))
        self._there.values[place], self._there.halves[place] = answers.values, answers.halves
        for column, stratum in enumerate(self._strata(answers.rows([0]))[0]):
            self._counts[column, stratum] += 1

    def choose(self, student: str, offered: Answers) -> Choice:
        """Which of the answers offered suit the class best; the first of equals.

        By whole numbers alone, so that no rounding of floats decides.
        """
        near = [self._places[each] for each in self.beside[student] if each in self._places]
        there = self._there.rows(slice(len(self._places)))
        steps = np.full(len(offered), FAR)
        if near:
            steps = np.minimum(apart(offered, there.rows(near)).min(axis=1), FAR).astype(int)
        one, _ = alike(offered, there)
        partners = np.bincount(one, minlength=len(offered))
        used = self._counts[np.arange(self._counts.shape[0]), self._strata(offered)].sum(axis=1)
        chosen = int(np.lexsort((used, -steps, partners, -np.minimum(steps, SAFE)))[0])
        return Choice(chosen, min(int(steps[chosen]), SAFE))

    def _strata(self, answers: Answers) -> NDArray[np.intp]:
        """In which part of its range each answer lies."""
        low, high = self._ends
        values = _turned(answers, self.probes)
        parts = np.floor((values - low) / np.where(high > low, high - low, 1.0) * STRATA)
        found: NDArray[np.intp] = np.clip(parts, 0, STRATA - 1).astype(np.intp)
        return found


def _turned(answers: Answers, probes: Answers) -> Numbers:
    """The values, directions measured either way from that of the first probe."""
    turning = np.array(answers.turning, dtype=np.bool_)
    from_first = (answers.values - probes.values[0] + 180.0) % 360.0 - 180.0
    return np.where(turning, from_first, answers.values)
