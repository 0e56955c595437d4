"""A class of 300 in one row, spread or not: who could copy, and what spreading costs."""

from itertools import pairwise
from typing import NamedTuple

from probgen.bank.bank import default_bank
from probgen.draws.classroom import Classmates, in_a_row
from probgen.draws.nearness import MOST_ALIKE, apart, copying
from probgen.problem.dropped import percent
from probgen.problem.problem import Problem, answers_of, draw_class, prepare
from probgen.working.convention import Convention
from tests.bench.line import at_most, seconds

_CLASS = [str(place) for place in range(300)]


class _Found(NamedTuple):
    """share: of pairs that could copy; nearest: tolerances between the nearest neighbours."""

    share: float
    nearest: float
    seconds: float


def bench() -> None:
    bank = default_bank()
    before, after = [], []
    for id in bank.files:
        problem = prepare(bank.read(id), Convention())
        before.append(_found(problem, None))
        after.append(_found(problem, in_a_row(_CLASS)))
        (share, near, _), (spread, far, _) = before[-1], after[-1]
        print(f"  {id}: {percent(share)} of pairs could copy, spread {percent(spread)}; "
              f"neighbours {near:.2f} tolerances apart or more, spread {far:.2f}")  # fmt: skip
    bad, left = (sum(each.share > MOST_ALIKE for each in found) for found in (before, after))
    print(f"{bad} of {len(before)} templates have more than {percent(MOST_ALIKE)} unspread; the "
          f"nearest neighbours are {min(each.nearest for each in before):.2f} tolerances apart "
          f"unspread and {min(each.nearest for each in after):.2f} spread")  # fmt: skip
    at_most("templates-that-could-be-copied", left, 8)
    taken = [sum(each.seconds for each in found) for found in (before, after)]
    at_most("spreading-beside-drawing", taken[1] / taken[0], 4.0)


def _found(problem: Problem, among: Classmates | None) -> _Found:
    own = []
    taken = seconds(lambda: own.append(draw_class(problem, "bench", _CLASS, among=among).draws))
    answers = answers_of(problem, own[0])
    beside = (apart(answers.rows([a]), answers.rows([b])) for a, b in pairwise(range(len(_CLASS))))
    nearest = min(float(steps[0, 0]) for steps in beside)
    return _Found(copying(answers).share, nearest, taken)
