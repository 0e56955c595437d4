"""What a template's givens and answers come to over many draws."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from probgen.department.histogram import Histogram, of_choices, of_numbers, turned
from probgen.draws.sample import Sample, sample
from probgen.papers.blanks import label
from probgen.problem.problem import Problem, Worked, fit, work
from probgen.quantities.expression import Number
from probgen.quantities.printing import plain
from probgen.quantities.symbol import unmarked
from probgen.wording.answer import Answer
from probgen.wording.block import Inline, Math
from probgen.working.result import ResultKind


@dataclass(frozen=True, slots=True)
class Spread:
    """One quantity; name: what a given is, "" of an answer.

    histogram: of numbers; words: of an answer in words, each with its draws, the most frequent
    first.
    """

    symbol: tuple[Inline, ...]
    name: str
    histogram: Histogram | None = None
    words: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Spreads:
    """Of so many draws, all of them fit for use; given: and what is derived of it."""

    draws: int
    given: tuple[Spread, ...]
    answers: tuple[Spread, ...]


def spreads(problem: Problem, draws: int) -> Spreads:
    """Of those of so many draws that meet the template's requirements and pass their proof."""
    made = sample(problem.template, draws)
    drawn = [made.draw(place) for place in range(len(made))]
    places = [place for place, held in enumerate(fit(problem, drawn)) if held]
    worked = work(problem, [drawn[place] for place in places])
    if not worked:
        return Spreads(0, (), ())
    given = (*_chosen(problem, made, places), *_derived(problem, worked))
    return Spreads(len(worked), given, tuple(_answered(problem, worked)))


def _chosen(problem: Problem, made: Sample, places: Sequence[int]) -> Iterator[Spread]:
    for row, given in enumerate(problem.template.givens):
        printed = [plain(Number(choice, given.unit)) for choice in given.choices]
        histogram = of_choices(made.places[row, places], printed)
        yield Spread(_symbol(problem, given.id), unmarked(problem.nouns.given(given.id)), histogram)


def _derived(problem: Problem, worked: Sequence[Worked]) -> Iterator[Spread]:
    for each in problem.template.derived:
        values = np.array([own.case.values[each.id] for own in worked])
        printed = [plain(own.draw.values[each.id]) for own in worked]
        name = unmarked(problem.nouns.given(each.id))
        yield Spread(_symbol(problem, each.id), name, of_numbers(values, printed))


def _symbol(problem: Problem, id: str) -> tuple[Inline, ...]:
    return (Math((problem.template.system.variables[id].as_name,)),)


def _answered(problem: Problem, worked: Sequence[Worked]) -> Iterator[Spread]:
    for answers in zip(*(own.answers for own in worked), strict=True):
        if answers[0].asked:
            yield _spread(problem, answers)


def _spread(problem: Problem, answers: Sequence[Answer]) -> Spread:
    """Of one answer, an entry a draw."""
    first, printed = answers[0], [each.printed for each in answers]
    if not first.is_number:
        words = Counter(printed).most_common()
        return Spread(label(problem, first), "", words=tuple(words))
    if first.kind is ResultKind.DIRECTION:
        values = turned(np.array([each.angle_from_x for each in answers], float))
    else:
        values = np.array([each.value for each in answers])
    return Spread(label(problem, first), "", of_numbers(values, printed))
