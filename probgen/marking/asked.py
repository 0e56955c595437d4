"""What one paper asks, and what is right there: all that judging an answer needs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.marking.stated import Blank
from probgen.problem.problem import Problem, Worked
from probgen.quantities.expression import Number, Value
from probgen.quantities.unit import DEGREE, ONE
from probgen.wording.answer import Answer
from probgen.working.result import LimitNamed, ResultKind
from probgen.working.tolerance import intervals

_NO_YES: Final = (("no", "n", "false", "0"), ("yes", "y", "true", "1"))


@dataclass(frozen=True, slots=True)
class Asked:
    """One answer that a paper asks for.

    value: the right one, coherent units, a direction in degrees counter-clockwise from +x, a choice
    by its place.  low, high: what earns full marks, both included, as the key prints it (low may be
    negative for a direction, high above 360).
    full: both with the dust of floats.
    printed: as the key prints the answer; part: which of the things asked it is of, from 0.
    figures: significant ones that the course asks for.
    """

    id: str
    kind: ResultKind
    blank: Blank
    value: float
    low: float
    high: float
    printed: str
    part: int = 0
    figures: int = 3
    full: tuple[float, float] = field(init=False, compare=False, repr=False)

    def __post_init__(self) -> None:
        dust = _DUST if self.is_direction else _DUST * max(abs(self.low), abs(self.high))
        object.__setattr__(self, "full", (self.low - dust, self.high + dust))

    @property
    def is_direction(self) -> bool:
        return self.kind is ResultKind.DIRECTION

    @property
    def is_choice(self) -> bool:
        return bool(self.blank.choices)

    def earns(self, value: float) -> bool:
        """Whether a value earns full marks; never what is not finite."""
        return bool(_within(*self.full, value, self.is_direction))


def earning(asked: Sequence[Asked], values: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Which values of one answer earn full marks: a column a paper."""
    low, high = np.array([each.full for each in asked]).T
    return np.asarray(_within(low, high, values, asked[0].is_direction))


def _within(
    low: Value, high: Value, value: Value, is_direction: bool
) -> NDArray[np.bool_] | np.bool_ | bool:
    if is_direction:
        return (value - low) % 360.0 <= high - low
    return (low <= value) & (value <= high)


_DUST: Final = 1e-9  # of floats; relative, or degrees


def asked_of(problem: Problem, own: Worked) -> tuple[Asked, ...]:
    """Everything asked on one paper, in the order asked."""
    return tuple(_asked_of(problem, own))


def _asked_of(problem: Problem, own: Worked) -> Iterator[Asked]:
    full = {each.answer: each for each in intervals(own.digits, own.answers)}
    for answer in own.answers:
        if not answer.asked:
            continue
        blank = _blank(problem, answer)
        if answer.id in full:
            low, high = (_coherent(end) for end in (full[answer.id].low, full[answer.id].high))
            value = own.case.values[answer.id]
        else:
            value = answer.value if answer.kind is ResultKind.VERDICT else _place(problem, answer)
            low = high = value
        part = problem.plan.system.finds.index(answer.find)
        figures = problem.convention.figures
        yield Asked(answer.id, answer.kind, blank, value, low, high, answer.printed, part, figures)


def _coherent(number: Number) -> float:
    return float(number.value) * (number.unit.factor if number.unit else 1.0)


def _place(problem: Problem, answer: Answer) -> float:
    """Which of the limits offered is reached first."""
    assert isinstance(answer.shown, LimitNamed)
    return float(_limits(problem, answer).index(answer.shown.limit))


def _limits(problem: Problem, answer: Answer) -> list[str]:
    return [branch.limit.id for branch in problem.plan.branches_to(answer.find)]


def _blank(problem: Problem, answer: Answer) -> Blank:
    match answer.kind:
        case ResultKind.DIRECTION:
            return Blank(DEGREE, problem.convention.direction)
        case ResultKind.VERDICT:
            return Blank(choices=_NO_YES)
        case ResultKind.LIMIT:
            named = ((id, problem.tell(LimitNamed(id))) for id in _limits(problem, answer))
            return Blank(choices=tuple(named))
        case ResultKind.QUANTITY | ResultKind.MAGNITUDE:
            assert isinstance(answer.shown, Number)
            return Blank(answer.shown.unit or ONE)
