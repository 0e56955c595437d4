"""Answers of another regime in some draws: another side, another sign, another limit, yes for no.

A class then has different problems under one title, with other words in the key.  A template says
so where it is meant: `varies = true` at a [[find]].
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from probgen.department.doubt import Doubt, DoubtKind
from probgen.problem.problem import Worked, shown_values
from probgen.wording.answer import Answer
from probgen.working.direction import way_of

Regime = tuple[object, ...]


def regimes(own: Sequence[Worked], varying: frozenset[str]) -> Iterator[Doubt]:
    """A doubt for each answer, with the first draw of a regime that is not the commonest one.

    varying: the quantities of finds that may vary.
    """
    for answers in zip(*(worked.answers for worked in own), strict=True):
        first = answers[0]
        if not first.asked or first.find.quantity in varying:
            continue
        found = [regime(each) for each in answers]
        commonest = max(dict.fromkeys(found), key=found.count)
        others = [place for place, each in enumerate(found) if each != commonest]
        if others:
            told = " or ".join(answers[found.index(each)].printed for each in dict.fromkeys(found))
            share = len(others) / len(found)
            yield Doubt(DoubtKind.REGIME, share, first.id, shown_values(own[others[0]].draw), told)


def regime(answer: Answer) -> Regime:
    """What of an answer should not be other: a direction's side, a number's sign, what is reached
    first, or whether all is kept.
    """
    if answer.angle_from_x is not None:
        way = way_of(answer.angle_from_x)
        return way.up, way.right
    if answer.is_number:
        return (answer.value > 0.0,)
    return (answer.value,)
