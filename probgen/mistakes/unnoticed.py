"""Slips that a template's numbers let pass: their answers earn full marks all the same."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.mistakes.comparison import Known, gap, known_of
from probgen.mistakes.variant import Misstep
from probgen.mistakes.wrong_working import Missteps, WrongWorking, wrong_workings
from probgen.quantities.expression import evaluate
from probgen.working.digits import Digits

Draws = NDArray[np.bool_]
"""Of each draw whether something is so."""

_DUST: Final = 1e-9  # a difference that only the rounding of floats accounts for


@dataclass(frozen=True, slots=True)
class Unnoticed:
    """A misstep, and in how many of the draws it spoils no answer beyond full marks.

    first: the place of the first of these.
    """

    misstep: Misstep
    draws: int
    first: int


def unnoticed(students: Sequence[Digits], made: Missteps) -> tuple[Unnoticed, ...]:
    """The missteps that some of the draws let pass, those let pass most often first.

    made: the missteps of the problem's plan.  A draw in which nobody would make the slip, or in
    which it changes nothing at all (an exchange of equal numbers), does not count.
    """
    if not students:
        return ()
    known = known_of(students)
    counted = []
    with np.errstate(invalid="ignore"):
        for each in wrong_workings([own.case for own in students], made):
            passed = _passes(known, each)
            if passed.any():
                first = int(np.argmax(passed))
                counted.append(Unnoticed(each.misstep, int(passed.sum()), first))
    return tuple(sorted(counted, key=lambda each: -each.draws))


def each_answer(known: Known, wrong: WrongWorking) -> Iterator[tuple[str, Draws, Draws]]:
    """The answers a slip leads to: in which draws it changes one, in which within full marks.

    Draws in which nobody would make the slip are in neither.
    """
    right, only_if = known.right, wrong.misstep.only_if
    made = np.ones(known.count, bool)
    if only_if is not None:
        made &= np.asarray(evaluate(only_if, right)) > 0.0
    for id, of in known.system.asked.items():
        if id in wrong.values:
            off = gap(of)(wrong.values[id], right[id])
            changed = made & (off > _DUST * np.maximum(1.0, np.abs(right[id])))
            yield id, changed, made & (off <= known.halves[id])


def _passes(known: Known, wrong: WrongWorking) -> Draws:
    """For each student whether a slip that changes an answer changes none beyond full marks."""
    changed, within = np.zeros(known.count, bool), np.ones(known.count, bool)
    for _, other, near in each_answer(known, wrong):
        changed |= other
        within &= near
    return changed & within
