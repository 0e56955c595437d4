"""What judged papers are counted for: verdicts, slips, steps, and the values that were drawn."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from probgen.marking.finding import Finding
from probgen.marking.marks import Answered, Marked
from probgen.mistakes.variant import Misstep
from probgen.problem.problem import Problem
from probgen.quantities.expression import evaluate

Slips = tuple[tuple[str, str, str], ...]
"""What tells a slip, or two together, from others."""


@dataclass(slots=True)
class Tally:
    """Papers counted; those of a whole class are the sum of its chunks'.

    verdicts: on each answer, by its problem's place in the set (from 1) and its id.
    slips: papers on which slips are named, the likeliest of those that an answer is put down to;
    missteps: these slips.  parts: papers that part from the key at a quantity.
    drawn: for each problem and given the value on each paper, coherent units; nan where a paper
    does not have the problem.
    """

    verdicts: Counter[tuple[int, str, Finding]] = field(default_factory=Counter)
    slips: Counter[tuple[int, Slips]] = field(default_factory=Counter)
    missteps: dict[tuple[int, Slips], tuple[Misstep, ...]] = field(default_factory=dict)
    parts: Counter[tuple[int, str]] = field(default_factory=Counter)
    drawn: dict[tuple[int, str], list[float]] = field(default_factory=dict)


def tally(marked: Sequence[Marked], problems: Sequence[Problem]) -> Tally:
    """Papers counted; problems: of the set."""
    found = Tally()
    for each in marked:
        for at in each.problems:
            found.verdicts.update((at.place, own.asked.id, own.finding) for own in at.answers)
            slips = dict(_slips(at))
            found.slips.update((at.place, key) for key in slips)
            for key, way in slips.items():
                found.missteps.setdefault((at.place, key), way)
            parted = dict.fromkeys(own.parts for own in at.answers if own.parts)
            found.parts.update((at.place, quantity) for quantity in parted)
    found.drawn = dict(_drawn(marked, problems))
    return found


def _slips(at: Answered) -> Iterator[tuple[Slips, tuple[Misstep, ...]]]:
    for own in at.answers:
        if own.slips:
            way = own.slips[0].slips
            yield tuple((each.slip, each.way, repr(each.parts)) for each in way), way


def _drawn(
    marked: Sequence[Marked], problems: Sequence[Problem]
) -> Iterator[tuple[tuple[int, str], list[float]]]:
    had = [{at.place: at.draw.values for at in each.problems} for each in marked]
    for place, problem in enumerate(problems, start=1):
        for given in problem.template.givens:
            yield (
                (place, given.id),
                [
                    float(evaluate(values[place][given.id], {})) if place in values else math.nan
                    for values in had
                ],
            )


def together(tallies: Iterable[Tally]) -> Tally:
    """Those of chunks of a class, in its order, as one."""
    found = Tally()
    for each in tallies:
        found.verdicts.update(each.verdicts)
        found.slips.update(each.slips)
        found.missteps = {**each.missteps, **found.missteps}
        found.parts.update(each.parts)
        for given, values in each.drawn.items():
            found.drawn.setdefault(given, []).extend(values)
    return found
