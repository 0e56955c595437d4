"""The same numbers put into two states of a template, and what comes out of each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from math import isclose
from typing import Final

from probgen.bank.template import Template
from probgen.department.change import Trial
from probgen.draws.draw import completed
from probgen.draws.sample import sample
from probgen.input.fault import InputError
from probgen.problem.problem import Problem, prepare, shown_values, work
from probgen.wording.answer import Answer
from probgen.working.convention import Convention

TRIALS: Final = 20
_SAME: Final = 1e-9
"""How far equal answers may be apart, of their size: what rounding of floats leaves."""


def trials(before: Template, after: Template) -> tuple[Trial, ...]:
    """Draws of one worked in both, each given that the other does not know at its own value."""
    olds, news = sample(before, TRIALS), sample(after, TRIALS)
    drawn = [olds.draw(place) for place in range(min(len(olds), len(news)))]
    values = [{given.id: each.values[given.id].value for given in before.givens} for each in drawn]
    own = [
        {g.id: row.get(g.id, news.draw(place).values[g.id].value) for g in after.givens}
        for place, row in enumerate(values)
    ]
    both = zip(_answers(_prepared(before), values), _answers(_prepared(after), own), strict=True)
    shown = map(shown_values, drawn)
    return tuple(_trial(*pair, told) for pair, told in zip(both, shown, strict=True))


def _prepared(template: Template) -> Problem | None:
    try:
        return prepare(template, Convention())
    except InputError:  # one that statics alone cannot solve
        return None


def _answers(
    problem: Problem | None, rows: Sequence[Mapping[str, Decimal]]
) -> Iterator[dict[str, Answer]]:
    """For each row of givens the answers by what is asked; none where they have no solution."""
    if problem is None:
        yield from ({} for _ in rows)
        return
    try:
        own = work(problem, [completed(problem.template, values) for values in rows])
    except (InputError, ArithmeticError):
        if len(rows) == 1:
            yield {}
            return
        for row in rows:  # most can be worked all the same
            yield from _answers(problem, [row])
        return
    for worked in own:
        yield {each.id: each for each in worked.answers if each.asked}


def _trial(before: Mapping[str, Answer], after: Mapping[str, Answer], values: str) -> Trial:
    both = before.keys() & after.keys()
    agree = bool(both) and all(_equal(before[id], after[id]) for id in both)
    return Trial(values, _printed(before), _printed(after), agree)


def _printed(answers: Mapping[str, Answer]) -> tuple[tuple[str, str], ...]:
    return tuple((id, each.printed) for id, each in answers.items())


def _equal(one: Answer, other: Answer) -> bool:
    sizes = ((one.value, other.value), (one.angle_from_x, other.angle_from_x))
    return one.unit == other.unit and all(map(_near, *zip(*sizes, strict=True)))


def _near(one: float | None, other: float | None) -> bool:
    if one is None or other is None:
        return one is other
    return isclose(one, other, rel_tol=_SAME, abs_tol=_SAME)
