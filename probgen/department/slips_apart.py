"""Slips that a template's numbers hide: from full marks, or behind one another."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import Final

from probgen.department.doubt import Doubt, DoubtKind
from probgen.mistakes.comparison import Slip, class_slips, gap
from probgen.mistakes.unnoticed import unnoticed
from probgen.mistakes.variant import Misstep
from probgen.problem.problem import Problem, Worked, shown_values
from probgen.wording.facts.asked import SlipSaid
from probgen.wording.sentence import plain_text

MOST_PASSING: Final = 0.05
"""Of all draws may let one slip pass with full marks: a judgement."""
MOST_CONFUSED: Final = 0.5
"""Of all draws may have two slips' answers within one tolerance: a judgement."""
_DUST: Final = 1e-9
"""Relative; two slips that come to one equation come to one number whatever is drawn."""


def passing(problem: Problem, own: Sequence[Worked]) -> Iterator[Doubt]:
    """Slips that many draws let pass, each once; who rounds early and is near has no slip."""
    told: set[str] = set()
    for each in unnoticed([worked.digits for worked in own], problem.missteps):
        slip, share = each.misstep.slip, each.draws / len(own)
        if each.misstep.figures or slip in told:
            continue
        told.add(slip)
        if share > MOST_PASSING:
            draw = shown_values(own[each.first].draw)
            yield Doubt(DoubtKind.PASSING, share, slip, draw, _said(problem, each.misstep))


def confused(problem: Problem, own: Sequence[Worked]) -> Iterator[Doubt]:
    """Pairs of slips whose wrong answers most draws have within one tolerance.

    Their numbers differ, so that others would tell them apart.
    """
    counts: Counter[tuple[str, str]] = Counter()
    first: dict[tuple[str, str], tuple[int, Slip, Slip]] = {}
    for place, found in enumerate(class_slips([each.digits for each in own], problem.missteps)):
        near = {(one.id, other.id): (place, one, other) for one, other in _near(found)}
        counts.update(near.keys())
        first = near | first
    for pair, count in counts.items():
        if count / len(own) > MOST_CONFUSED:
            place, one, other = first[pair]
            said = "; or ".join(_said(problem, each.misstep) for each in (one, other))
            draw, about = shown_values(own[place].draw), ", ".join(pair)
            yield Doubt(DoubtKind.CONFUSED, count / len(own), about, draw, f"{one.answer}: {said}")


def _near(found: Sequence[Slip]) -> Iterator[tuple[Slip, Slip]]:
    origins = sorted((each for each in found if each.origin), key=lambda each: each.id)
    for one, other in combinations(origins, 2):
        if one.answer == other.answer and one.id != other.id:
            apart = gap(one.of)(one.value, other.value)
            if _DUST * abs(one.value) < apart <= min(one.half, other.half):
                yield one, other


def _said(problem: Problem, misstep: Misstep) -> str:
    fact = SlipSaid(misstep, problem.convention.turning)
    return plain_text(problem.language.say(fact, problem.nouns))
