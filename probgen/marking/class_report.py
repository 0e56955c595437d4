"""What a marked class tells its instructor: items, slips, steps to teach again, versions."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from probgen.marking import item_statistics as statistics
from probgen.marking.finding import Finding
from probgen.marking.parting import step_to
from probgen.marking.scores import Item, Scores
from probgen.marking.tally import Tally
from probgen.marking.version_statistics import (
    LEVEL,
    kruskal_wallis,
    least_seen,
    mantel_haenszel,
    rank_correlation,
    strata,
)
from probgen.mistakes.variant import Misstep
from probgen.problem.problem import Problem
from probgen.wording.facts.class_marks import (
    AlphaFound,
    ItemAgainst,
    ItemAsked,
    ItemEasierOn,
    ItemsHard,
    PapersLeftOut,
    ValueMatters,
    VersionsAlike,
    VersionsDiffer,
)
from probgen.wording.nouns import NO_NOUNS, Nouns
from probgen.working.fact import Fact

FEWEST: Final = 10
"""Papers; of fewer no statistic beyond a mean says anything."""
_HARD: Final = 0.4
"""A facility below this is told: a judgement."""
_AGAINST: Final = 0.1
"""A correlation with the rest is told where it is as far below zero, and farther than chance."""


class ItemReport(NamedTuple):
    """Statistics of one item; what has no value is not finite."""

    item: Item
    asked: ItemAsked
    papers: int
    facility: float
    discrimination: float
    with_rest: float
    alpha_without: float
    verdicts: dict[Finding, int]


class Told(NamedTuple):
    """How many papers something concerns, in one problem (its place in the set)."""

    place: int
    papers: int


@dataclass(frozen=True, slots=True)
class SlipCount:
    """A slip, or two together, and on how many papers it was made."""

    problem: Problem
    told: Told
    slips: tuple[Misstep, ...]


@dataclass(frozen=True, slots=True)
class StepCount:
    """A step of a key, and how many papers part from the key there."""

    problem: Problem
    told: Told
    step: Fact


class Spread(NamedTuple):
    """Points of a problem (place; 0: of all) in one group of papers."""

    place: int
    by: str
    group: str
    papers: int
    mean: float
    deviation: float


@dataclass(frozen=True, slots=True)
class ClassReport:
    """facts: what the numbers say, to be put in words; alpha: of all items."""

    scores: Scores
    items: tuple[ItemReport, ...]
    alpha: float
    slips: tuple[SlipCount, ...]
    steps: tuple[StepCount, ...]
    spreads: tuple[Spread, ...]
    facts: tuple[Fact, ...]


def class_report(
    tally: Tally, scores: Scores, problems: Sequence[Problem], exam: bool
) -> ClassReport:
    """All of it; problems: of the set; exam: whether papers are versions several students have."""
    complete, table = scores.whole()
    found_alpha = statistics.alpha(table) if len(complete) >= FEWEST else math.nan
    nouns = tuple(each.nouns for each in problems)
    items = tuple(_items(tally, scores, nouns))
    facts = [*_on_items(scores, items, found_alpha)]
    facts += _on_versions(scores, nouns) if exam else _on_values(tally, scores, nouns)
    return ClassReport(
        scores,
        items,
        found_alpha,
        tuple(_slips(tally, problems)),
        tuple(_steps(tally, problems)),
        tuple(_by_version(scores) if exam else _by_value(tally, scores)),
        tuple(facts),
    )


# Items.


def _items(tally: Tally, scores: Scores, nouns: Sequence[Nouns]) -> Iterator[ItemReport]:
    complete, table = scores.whole()
    totals = table.sum(axis=1)
    kept = [at for at in range(len(scores.items)) if np.isfinite(scores.points[:, at]).any()]
    verdicts: dict[tuple[int, str], dict[Finding, int]] = {}
    for (problem, answer, finding), papers in tally.verdicts.items():
        verdicts.setdefault((problem, answer), {})[finding] = papers
    for at, item in enumerate(scores.items):
        parts = scores.column(at)
        values = [math.nan] * 3
        if len(complete) >= FEWEST and at in kept:
            column = kept.index(at)
            values = [
                statistics.discrimination(table[:, column] / item.most, totals),
                statistics.with_rest(table, column),
                statistics.alpha_without(table, column),
            ]
        counted = verdicts.get((item.problem, item.answer), {})
        telling, with_rest, without = values
        hard = statistics.facility(parts)
        asked = asked_of(item, nouns)
        yield ItemReport(item, asked, len(parts), hard, telling, with_rest, without, counted)


def _on_items(scores: Scores, items: Sequence[ItemReport], alpha: float) -> Iterator[Fact]:
    papers = len(scores.whole()[0])
    if papers < len(scores.papers):
        yield PapersLeftOut(len(scores.papers) - papers)
    if math.isfinite(alpha):
        yield AlphaFound(alpha, len(items), papers)
    hard = [each for each in items if each.facility < _HARD]
    if hard:
        yield ItemsHard(tuple(each.asked for each in hard), _HARD)
    for each in items:
        if each.with_rest < -max(_AGAINST, 1.96 / math.sqrt(max(each.papers, FEWEST))):
            yield ItemAgainst(each.asked, each.with_rest)


def asked_of(item: Item, nouns: Sequence[Nouns]) -> ItemAsked:
    """What an item asks; nouns: of the problems of the set, in their order."""
    own = nouns[item.problem - 1] if nouns else NO_NOUNS
    return ItemAsked(item.problem, item.answer, own)


# Slips and steps.


def _slips(tally: Tally, problems: Sequence[Problem]) -> Iterator[SlipCount]:
    """What is named likeliest, the commonest first."""
    for key, papers in tally.slips.most_common():
        yield SlipCount(problems[key[0] - 1], Told(key[0], papers), tally.missteps[key])


def _steps(tally: Tally, problems: Sequence[Problem]) -> Iterator[StepCount]:
    """Where papers part from the key, each once a problem and step, the commonest first."""
    merged: Counter[tuple[int, Fact]] = Counter()
    for (place, quantity), papers in tally.parts.items():
        step = step_to(problems[place - 1], quantity)
        if step is not None:
            merged[place, step.what] += papers
    for (place, what), papers in merged.most_common():
        yield StepCount(problems[place - 1], Told(place, papers), what)


# Versions and drawn values.


def _versions(scores: Scores) -> dict[str, NDArray[np.bool_]]:
    """For each version which papers have it."""
    letters = sorted({paper.owner for paper in scores.papers})
    return {each: np.array([paper.owner == each for paper in scores.papers]) for each in letters}


def _on_versions(scores: Scores, nouns: Sequence[Nouns]) -> Iterator[Fact]:
    complete, table = scores.whole()
    totals = table.sum(axis=1)
    groups = {id: own[complete] for id, own in _versions(scores).items()}
    points = {id: totals[own] for id, own in groups.items() if own.sum() >= 2}
    if len(points) < 2 or len(complete) < FEWEST:
        return
    found, least = kruskal_wallis(list(points.values())), least_seen(list(points.values()))
    letters = tuple(points)
    if found.p < LEVEL:
        means = [float(each.mean()) for each in points.values()]
        hardest, easiest = letters[int(np.argmin(means))], letters[int(np.argmax(means))]
        yield VersionsDiffer(letters, found.p, hardest, easiest, max(means) - min(means))
    else:
        yield VersionsAlike(letters, found.p, least)
    yield from _items_by_version(scores, groups, nouns)


def _items_by_version(
    scores: Scores, groups: dict[str, NDArray[np.bool_]], nouns: Sequence[Nouns]
) -> Iterator[Fact]:
    """Items that are harder on one version for papers as good otherwise; groups: as in `whole`."""
    _, table = scores.whole()
    had = [at for at in range(len(scores.items)) if np.isfinite(scores.points[:, at]).any()]
    comparisons = len(had) * len(groups)
    for column, at in enumerate(had):
        item = scores.items[at]
        right = table[:, column] >= item.most
        rest = table.sum(axis=1) - table[:, column]
        for letter, own in groups.items():
            found = mantel_haenszel(strata(right, rest, own))
            if found.size != "A":
                yield ItemEasierOn(
                    letter, asked_of(item, nouns), found.ratio, found.low, found.high,
                    found.size == "C", comparisons,
                )  # fmt: skip


def _by_version(scores: Scores) -> Iterator[Spread]:
    for letter, own in _versions(scores).items():
        for place in sorted({item.problem for item in scores.items}):
            yield _spread(place, "version", letter, scores.problem(place)[own])
        whole = np.array([np.nansum(row) if np.isfinite(row).any() else np.nan
                          for row in scores.points[own]])  # fmt: skip
        yield _spread(0, "version", letter, whole)


def _spread(place: int, by: str, group: str, points: NDArray[np.float64]) -> Spread:
    known = points[np.isfinite(points)]
    mean = float(known.mean()) if len(known) else math.nan
    deviation = float(known.std(ddof=1)) if len(known) > 1 else math.nan
    return Spread(place, by, group, len(known), mean, deviation)


def _drawn(tally: Tally) -> Iterator[tuple[int, str, NDArray[np.float64]]]:
    """Each problem's givens that are not alike on all papers, with the value on each."""
    for (place, given), values in tally.drawn.items():
        if len({value for value in values if math.isfinite(value)}) > 1:
            yield place, given, np.array(values)


def _on_values(tally: Tally, scores: Scores, nouns: Sequence[Nouns]) -> Iterator[Fact]:
    """Givens whose value goes with the points, beyond what so many comparisons have by chance."""
    drawn = list(_drawn(tally))
    for place, given, values in drawn:
        points = scores.problem(place)
        known = np.isfinite(points) & np.isfinite(values)
        if np.count_nonzero(known) < FEWEST:
            continue
        found = rank_correlation(values[known], points[known])
        if found.p < LEVEL / len(drawn):
            own = nouns[place - 1]
            yield ValueMatters(place, given, found.statistic, found.p, own)


def _by_value(tally: Tally, scores: Scores) -> Iterator[Spread]:
    """The points of papers with smaller and with larger values of each given."""
    for place, given, values in _drawn(tally):
        points, middle = scores.problem(place), float(np.nanmedian(values))
        small, large = values <= middle, values > middle
        if large.any():
            yield _spread(place, given, "smaller half", points[small])
            yield _spread(place, given, "larger half", points[large])
