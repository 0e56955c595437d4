"""A class's draws of one problem: nobody gets the numbers of another while there is room.

Where it is known who sits beside whom, numbers are spread over the class first (`spread.py`).  Who
finds none that way, or is nobody's neighbour, has an own sequence of attempts, and takes the first
set of numbers in it that is fit for use and not yet taken.  These choose in an order fixed by their
keys, so the order of the roster changes nothing for them.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import chain
from types import MappingProxyType
from typing import Final

from probgen.bank.template import Template
from probgen.draws.draw import FREE_ATTEMPTS, Draw, Values, draw, values_of
from probgen.draws.keyed_choice import keyed_choice
from probgen.draws.requirement import requirements_hold, stacked
from probgen.draws.spread import Spread

MOST_REFUSED: Final = 1000
"""So many refused attempts of one student in a row mean that the template is at fault."""
MOST_TRIED: Final = 20_000
"""So many attempts are made to find numbers nobody has."""
_AT_ONCE: Final = 16

Accept = Callable[[Sequence[Draw]], Sequence[bool]]


class NoDrawError(RuntimeError):
    """A template whose draws are all, or almost all, refused."""


class NoneLeftError(RuntimeError):
    """Students to whom a template has no numbers to give that they are not barred from."""

    def __init__(self, template: Template, students: Sequence[str]) -> None:
        super().__init__(f"{template.id} has no numbers left for {', '.join(students)}")
        self.students = tuple(students)


@dataclass(frozen=True, slots=True)
class ClassDraws:
    """The draws in the order of the students, and what the teacher should know about them."""

    draws: tuple[Draw, ...]
    remarks: tuple[str, ...] = ()


def class_draws(
    template: Template,
    seed: str,
    students: Sequence[str],
    accept: Accept | None = None,
    taken: Collection[Values] = (),
    barred: Mapping[str, Collection[Values]] = MappingProxyType({}),
    had: Collection[Values] = (),
    spread: Spread | None = None,
) -> ClassDraws:
    """The draws of a class; `students` are their ids, each once.

    accept: called with batches of draws, tells for each whether it may be used.
    taken: sets of values of the givens, in their order, that others have; had: those that others
    had before; barred: those that one student must not get.  Where a template has no room left,
    what was had is given again, and at last what is taken; a remark then tells of it.
    spread: over a class whose neighbours are known.
    Raises ValueError when an id comes twice, NoDrawError when too many draws are refused,
    NoneLeftError where somebody is barred from all that the template has.
    """
    if len(set(students)) < len(students):
        raise ValueError("a student's id comes twice")
    attempts = _Attempts(template, seed, accept or (lambda draws: [True] * len(draws)))

    def settle(waiting: Sequence[str], outside: Collection[Values]) -> dict[str, Draw]:
        found = spread.settle(waiting, outside, barred) if spread else {}
        gone = {*outside, *(values_of(template, each) for each in found.values())}
        rest = attempts.settle(_waiting(waiting, found), gone, barred)
        if spread:
            spread.seat(rest)
        return found | rest

    found = settle(students, {*taken, *had})
    remarks = []
    if had and len(found) < len(students):
        mine = {values_of(template, each) for each in found.values()}
        again = settle(_waiting(students, found), {*taken, *mine})
        remarks += [_had_again(template, len(again), len(students))] if again else []
        found |= again
    different = len(found)
    while len(found) < len(students):
        waiting = _waiting(students, found)
        shared = settle(waiting, ())
        if not shared:
            raise NoneLeftError(template, waiting)
        found |= shared
    remarks += (
        [] if different == len(students) else [_too_small(template, different, len(students))]
    )
    return ClassDraws(tuple(found[student] for student in students), tuple(remarks))


def _waiting(students: Sequence[str], found: Collection[str]) -> list[str]:
    return [student for student in students if student not in found]


def _too_small(template: Template, different: int, students: int) -> str:
    sets = "1 set" if different == 1 else f"{different} different sets"
    return (
        f"{template.id} has room for {sets} of numbers only: {students - different} of {students} "
        "students share theirs with another; widen a range or take smaller steps"
    )


def _had_again(template: Template, again: int, students: int) -> str:
    return (
        f"{template.id} has no room for numbers that nobody had before: {again} of {students} "
        "students have some that others had; widen a range or take smaller steps"
    )


@dataclass(slots=True)
class _Attempts:
    """The attempts of all students; fit: whether a set of numbers may be used, once known."""

    template: Template
    seed: str
    accept: Accept
    fit: dict[Values, bool] = field(default_factory=dict)

    @property
    def _last_attempt(self) -> int:
        return FREE_ATTEMPTS + min(self.template.room, MOST_TRIED)

    def settle(
        self,
        students: Iterable[str],
        outside: Collection[Values],
        barred: Mapping[str, Collection[Values]],
    ) -> dict[str, Draw]:
        """Draws, no two alike, for as many of the students as there is room for.

        None of them is one of those outside, nor barred for its student.
        """
        order = sorted(students, key=self._turn)
        first = self._first_fit(order)
        taken: set[Values] = set(outside)
        found = {}
        for student in order:
            if len(self.fit) == self.template.room and not self._free(taken):
                break
            each = self._first_free(student, first[student], taken, barred.get(student, ()))
            if each is not None:
                found[student] = each
                taken.add(values_of(self.template, each))
        return found

    def _free(self, taken: Collection[Values]) -> bool:
        """Whether a set of numbers that is known to be fit is left."""
        return any(fits and each not in taken for each, fits in self.fit.items())

    def _turn(self, student: str) -> tuple[int, str]:
        return keyed_choice(1 << 64, self.seed, student, self.template.id, "turn"), student

    def _first_fit(self, students: Sequence[str]) -> dict[str, int]:
        """Each student's first attempt that is fit for use, judged in batches.

        Where several were refused one after the other, more of them are judged at once.
        """
        first: dict[str, int] = {}
        attempt, most = 0, min(MOST_REFUSED, self._last_attempt)
        waiting = list(students)
        while waiting:
            if attempt >= most:
                raise NoDrawError(
                    f"{self.template.id}: {attempt} draws of one student were all refused; "
                    "loosen a requirement or change a range"
                )
            ahead = range(attempt, min(attempt + (1 if attempt < _AT_ONCE else _AT_ONCE), most))
            drawn = {student: [self._attempt(student, n) for n in ahead] for student in waiting}
            self._judge(chain.from_iterable(drawn.values()))
            for student, tried in drawn.items():
                fit = (n for n, each in zip(ahead, tried, strict=True) if self._is_fit(each))
                if (found := next(fit, None)) is not None:
                    first[student] = found
            waiting = [student for student in waiting if student not in first]
            attempt = ahead.stop
        return first

    def _first_free(
        self, student: str, start: int, taken: Collection[Values], barred: Collection[Values]
    ) -> Draw | None:
        """The first draw from attempt `start` on that is fit and free; None when there is none."""
        for batch in range(start, self._last_attempt, _AT_ONCE):
            attempts = range(batch, min(batch + _AT_ONCE, self._last_attempt))
            for attempt in attempts:
                each = self._attempt(student, attempt)
                if each is None:
                    continue
                values = values_of(self.template, each)
                if values in taken or values in barred:
                    continue
                if values not in self.fit:
                    self._judge(self._attempt(student, later) for later in attempts)
                if self._is_fit(each):
                    return each
        return None

    def _attempt(self, student: str, attempt: int) -> Draw | None:
        try:
            return draw(self.template, self.seed, student, attempt)
        except ArithmeticError:  # a derived quantity has no value: as good as refused
            return None

    def _is_fit(self, each: Draw | None) -> bool:
        return each is not None and self.fit[values_of(self.template, each)]

    def _judge(self, drawn: Iterable[Draw | None]) -> None:
        """Finds out which draws are fit for use, each set of numbers once."""
        values = {values_of(self.template, each): each for each in drawn if each is not None}
        new = {key: each for key, each in values.items() if key not in self.fit}
        if not new:
            return
        self.fit |= dict.fromkeys(new, False)
        held = requirements_hold(self.template, stacked(list(new.values())), known_only=True)
        passed = [each for each, holds in zip(new.values(), held, strict=True) if holds]
        if passed:
            rows = zip(passed, self.accept(passed), strict=True)
            self.fit |= {values_of(self.template, each): bool(fits) for each, fits in rows}
