"""Draws of one problem spread over a class: answers fill their range, and neighbours' lie apart."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.bank.template import Template
from probgen.draws.classroom import SAFE, Classroom
from probgen.draws.draw import Draw, Values, values_of
from probgen.draws.nearness import Answers
from probgen.draws.requirement import stacked
from probgen.draws.sample import Sample, candidates

OFFERED: Final = 16
"""Sets of numbers that a student is offered at once; those that are not fit or free fall away."""
_TURNS: Final = 4
"""So often a student is offered others, where none is free or none safe from neighbours."""
_AT_ONCE: Final = 128
"""Students whose offers are worked out together: a large class takes no more memory."""


@dataclass(frozen=True, slots=True)
class Looked:
    """Draws looked at: whether each may be used, and the answers of each."""

    fit: NDArray[np.bool_]
    answers: Answers


Look = Callable[[Mapping[str, NDArray[np.float64]]], Looked]
"""From coherent values of everything drawn, an entry a draw."""


@dataclass(frozen=True, slots=True)
class _Offer:
    """Some of the candidates made at once, by their places."""

    made: Sample
    looked: Looked
    places: range

    def free(self, *gone: Collection[Values]) -> list[int]:
        """Places of those that may be used and are none of the sets that are gone."""
        fit = [place for place in self.places if self.looked.fit[place]]
        sets = [self._values(place) for place in fit]
        return [
            place
            for place, values in zip(fit, sets, strict=True)
            if not any(values in each for each in gone)
        ]

    def _values(self, place: int) -> Values:
        """As `values_of` has them of the draw, in a small part of its time."""
        chosen = zip(self.made.template.givens, self.made.places[:, place], strict=True)
        return tuple(given.choices[choice] for given, choice in chosen)


@dataclass(frozen=True, slots=True)
class Spread:
    """Numbers given out one by one, as suits the classroom best by then.

    So who comes later changes nothing for those before.
    """

    template: Template
    seed: str
    classroom: Classroom
    look: Look

    def settle(
        self,
        students: Sequence[str],
        outside: Collection[Values],
        barred: Mapping[str, Collection[Values]],
    ) -> dict[str, Draw]:
        """Draws, no two alike, for those of the students who are offered some that are free.

        None of them is one of those outside, nor barred for its student.  Seats those who get some.
        """
        gone = set(outside)
        found = {}
        for student, offers in self._offered(students):
            if best := self._best(student, offers, (gone, barred.get(student, ()))):
                offer, place = best
                self.classroom.seat(student, offer.looked.answers.rows([place]))
                found[student] = offer.made.draw(place)
                gone.add(values_of(self.template, found[student]))
        return found

    def _best(
        self, student: str, offers: Iterable[_Offer], gone: Sequence[Collection[Values]]
    ) -> tuple[_Offer, int] | None:
        """What is taken: of the first offer that has something safe from neighbours, if one has.

        Else what is farthest from them of all offers.
        """
        best, steps = None, -1
        for offer in offers:
            if free := offer.free(*gone):
                choice = self.classroom.choose(student, offer.looked.answers.rows(free))
                if choice.steps > steps:
                    best, steps = (offer, free[choice.place]), choice.steps
            if steps == SAFE:
                break
        return best

    def seat(self, draws: Mapping[str, Draw]) -> None:
        """Seats students, by their ids, who have numbers already."""
        if draws:
            looked = self.look(stacked(list(draws.values())))
            for place, student in enumerate(draws):
                if looked.fit[place]:
                    self.classroom.seat(student, looked.answers.rows([place]))

    def _offered(self, students: Sequence[str]) -> Iterator[tuple[str, Iterator[_Offer]]]:
        """Each student with what is offered: at first worked out together with others'."""
        for start in range(0, len(students), _AT_ONCE):
            some = students[start : start + _AT_ONCE]
            made, looked = self._made(some, 0)
            for place, student in enumerate(some):
                own = range(place * OFFERED, (place + 1) * OFFERED)
                yield student, self._offers(student, _Offer(made, looked, own))

    def _offers(self, student: str, first: _Offer) -> Iterator[_Offer]:
        yield first
        for turn in range(1, _TURNS):
            yield _Offer(*self._made([student], turn), range(OFFERED))

    def _made(self, students: Sequence[str], turn: int) -> tuple[Sample, Looked]:
        made = candidates(self.template, self.seed, students, OFFERED, turn)
        return made, self.look(made.values)
