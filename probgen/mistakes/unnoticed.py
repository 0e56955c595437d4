"""Slips that a template's numbers let pass: their answers earn full marks all the same."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from probgen.mistakes.comparison import gap
from probgen.mistakes.variant import Misstep
from probgen.mistakes.wrong_working import Missteps, WrongCase, wrong_workings
from probgen.quantities.expression import evaluate
from probgen.working.digits import Digits
from probgen.working.tolerance import half_widths

_DUST: Final = 1e-9  # a difference that only the rounding of floats accounts for


@dataclass(frozen=True, slots=True)
class Unnoticed:
    """A misstep, and in how many of the draws it spoils no answer beyond full marks."""

    misstep: Misstep
    draws: int


def unnoticed(students: Sequence[Digits], made: Missteps) -> tuple[Unnoticed, ...]:
    """The missteps that some of the draws let pass, those let pass most often first.

    made: the missteps of the problem's plan.  A draw in which nobody would make the slip, or in
    which it changes nothing at all (an exchange of equal numbers), does not count.
    """
    if not students:
        return ()
    asked = students[0].case.system.asked
    halves = [half_widths(own, asked) for own in students]
    counted = []
    for working in wrong_workings([own.case for own in students], made):
        passed = [
            _passes(own, working.at(place), halves[place]) for place, own in enumerate(students)
        ]
        counted.append(Unnoticed(working.misstep, sum(passed)))
    let_pass = (each for each in counted if each.draws)
    return tuple(sorted(let_pass, key=lambda each: -each.draws))


def _passes(own: Digits, wrong: WrongCase, halves: dict[str, float]) -> bool:
    """Whether a slip that changes an answer changes none by more than full marks allow."""
    right, only_if = own.case.values, wrong.misstep.only_if
    if only_if is not None and not evaluate(only_if, right) > 0.0:
        return False
    asked = own.case.system.asked
    gaps = {id: gap(asked[id])(wrong.found[id], right[id]) for id in halves if id in wrong.found}
    changed = any(size > _DUST * max(1.0, abs(right[id])) for id, size in gaps.items())
    return changed and all(size <= halves[id] for id, size in gaps.items())
