"""Which number betrays which slip: wrong answers compared with the right ones and one another.

The numbers are those of `probgen.mistakes.rules`; here they are put in order of likelihood, those
that give one number together, and those nobody would believe are left out.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Protocol, TypeVar

import numpy as np
from numpy.typing import NDArray

from probgen.mistakes.belief import Place, as_told, believable, places, possible
from probgen.mistakes.likelihood import ANYWHERE, rank
from probgen.mistakes.variant import Misstep
from probgen.mistakes.wrong_working import Column, Missteps, WrongWorking, wrong_workings
from probgen.quantities.unit import Dimension
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import System
from probgen.working.digits import Digits
from probgen.working.tolerance import half_widths

FEW: Final = 2
"""So many slips a key tells of even where they are unlikely."""

V = TypeVar("V", float, Column)


class Gap(Protocol):
    """How far two values are apart, or two of each student."""

    def __call__(self, value: V, other: V, /) -> V: ...


CLEAR: Final = 3.0
"""Two numbers are told apart when they differ by more than so many half-widths of full marks."""


@dataclass(frozen=True, slots=True)
class Slip:
    """One wrong answer and what leads to it.

    answer: the id of the answer; of: the same as data.
    value: the wrong one, coherent units, a direction in degrees counter-clockwise from +x.
    misstep: the likeliest working with the slip; alike: ids of others that give the same number.
    origin: whether it is the first answer of the working that the slip spoils; later ones follow.
    half: how far (coherent units) another number has to be off not to be taken for this one.
    spoils: for every answer the value this slip leads to, coherent units: what follows through.
    elsewhere: whether it would earn full marks as another answer of its dimension.
    """

    answer: str
    of: Quantity
    value: float
    misstep: Misstep
    alike: tuple[str, ...]
    origin: bool
    half: float
    spoils: Mapping[str, float]
    elsewhere: bool = False

    @property
    def id(self) -> str:
        """The likeliest slip's id."""
        return self.misstep.slip

    @property
    def vanishes(self) -> bool:
        """Whether the wrong answer is nothing at all; a direction never is."""
        return not self.of.is_direction and abs(self.value) <= self.half


def slips(digits: Digits, made: Missteps) -> tuple[Slip, ...]:
    """Every wrong answer that can be told from the right one: by answer, the likeliest first."""
    return class_slips((digits,), made)[0]


def class_slips(students: Sequence[Digits], made: Missteps) -> tuple[tuple[Slip, ...], ...]:
    """The slips of many cases of one problem; each slip is worked once for all of them.

    made: the missteps of the problem's plan.
    """
    if not students:
        return ()
    known = known_of(students)
    workings, sought = wrong_workings([own.case for own in students], made), places(known.system)
    with np.errstate(invalid="ignore"):
        wrong = [_judged(known, each, sought) for each in workings]
    tolerance = students[0].convention.tolerance
    return tuple(
        tuple(_of_student(known, wrong, place, tolerance)) for place in range(len(students))
    )


def likely(found: Sequence[Slip], count: int = 3) -> tuple[Slip, ...]:
    """The few a key tells of: one number for each of the likeliest slips, where it is made; after
    the likeliest of all those on what is asked that fewest are told of.

    No two of them are so close that one could be taken for the other, none is the right number of
    another answer, which would look right on the page, and none says that what is asked for is
    nothing, which is looked at twice.  Unlikely ones only make up two, and none comes in the place
    of one left out for that.  A firm one is then told of on the next answer it spoils.
    """
    chosen: dict[str, Slip] = {}
    passed: set[str] = set()
    left = [slip for slip in found if slip.origin and not slip.vanishes]
    while left and len(chosen) < count:
        slip = min(left, key=lambda slip: _turn_of(slip, chosen.values()))
        if slip.misstep.unlikely and len({*chosen, *passed}) >= min(count, FEW):
            break
        left.remove(slip)
        if slip.id in chosen:
            continue
        if slip.elsewhere:
            later = _later(slip, found) if slip.misstep.firm else []
            left += later
            passed |= set() if later else {slip.id}
        elif _clear(slip, chosen.values()):
            chosen[slip.id] = slip
    return tuple(sorted(chosen.values(), key=lambda slip: rank(slip.misstep)))


def _later(slip: Slip, found: Sequence[Slip]) -> list[Slip]:
    """The next answer that a working spoils, where its number is none of another answer's."""
    own = (each for each in found if each.misstep is slip.misstep and not each.origin)
    return [each for each in own if not (each.elsewhere or each.vanishes)][:1]


def _turn_of(slip: Slip, chosen: Collection[Slip]) -> tuple[bool, bool, int, tuple[bool, int]]:
    """For sorting: what is likely and made on a quantity of its own first, then what is asked that
    few are told of.
    """
    told = sum(each.of.owner == slip.of.owner for each in chosen)
    return slip.misstep.unlikely, slip.id in ANYWHERE, told, rank(slip.misstep)


def _clear(slip: Slip, chosen: Iterable[Slip]) -> bool:
    return all(
        gap(slip.of)(slip.value, other.value) > CLEAR * max(slip.half, other.half)
        for other in chosen
        if other.answer == slip.answer
    )


# A class; columns have an entry a student.


@dataclass(frozen=True, slots=True)
class Known:
    """The right values of a class's problem, and the half-widths of its answers.

    count: of students.
    """

    count: int
    system: System
    right: Mapping[str, Column]
    halves: Mapping[str, Column]


def known_of(students: Sequence[Digits]) -> Known:
    """What is right for one student or more."""
    cases = [own.case for own in students]
    system = cases[0].system
    right = {id: np.array([case.values[id] for case in cases]) for id in cases[0].values}
    widths = [half_widths(own, system.asked) for own in students]
    halves = {id: np.array([own[id] for own in widths]) for id in system.asked}
    return Known(len(cases), system, right, halves)


@dataclass(frozen=True, slots=True)
class _Judged:
    """A wrong working and what betrays it.

    found: its answers, in the order it comes to them; betrays: for each whether it could be given,
    is clear of the right one, and stands in a working that is believed.
    begins: for each whether it is the first that is clear.
    """

    misstep: Misstep
    found: Mapping[str, Column]
    betrays: Mapping[str, NDArray[np.bool_]]
    begins: Mapping[str, NDArray[np.bool_]]


def _judged(known: Known, working: WrongWorking, sought: Sequence[Place]) -> _Judged:
    asked, right = known.system.asked, known.right
    found = {id: value for id, value in working.values.items() if id in asked}
    clear = {
        id: ~(gap(asked[id])(value, right[id]) <= CLEAR * known.halves[id])  # also no number
        for id, value in found.items()
    }
    if not found:
        return _Judged(working.misstep, {}, {}, {})
    rows = np.array(list(clear.values()))
    origin = rows.argmax(axis=0)
    believed = _believed(known, working, sought)
    betrays = {
        id: believed[id]
        & clear[id]
        & possible(known.system, id, right[id], value)
        & as_told(known.system, id, right[id], value)
        for id, value in found.items()
    }
    begins = {id: origin == at for at, id in enumerate(found)}
    return _Judged(working.misstep, found, betrays, begins)


def _believed(
    known: Known, working: WrongWorking, sought: Sequence[Place]
) -> dict[str, NDArray[np.bool_]]:
    """For each answer whether its working is believed: to the end, or as far as that answer."""
    misstep, ids = working.misstep, list(working.values)
    answers = [id for id in ids if id in known.system.asked]
    ends = {id: ids.index(id) + 1 if misstep.firm else len(ids) for id in answers}
    parts = {end: {id: working.values[id] for id in ids[:end]} for end in {*ends.values()}}
    held = {
        end: believable(known.system, misstep, known.right, found, sought)
        for end, found in parts.items()
    }
    return {id: held[end] for id, end in ends.items()}


def _of_student(
    known: Known, wrong: Sequence[_Judged], place: int, tolerance: float
) -> Iterator[Slip]:
    """tolerance: the course's, of any other answer than a direction."""
    for answer, of in known.system.asked.items():
        made = [each for each in wrong if answer in each.betrays and each.betrays[answer][place]]
        # a slip made here is likelier than one made before and carried on
        made.sort(key=lambda each: not each.begins[answer][place])
        for alike in _classes(made, answer, place, gap(of), float(known.right[answer][place])):
            first = alike[0]
            ids = tuple(dict.fromkeys(each.misstep.slip for each in alike))
            spoils = {id: float(column[place]) for id, column in first.found.items()}
            value, half = spoils[answer], float(known.halves[answer][place])
            if not of.is_direction:
                half = max(half, tolerance * abs(value))
            begins = bool(first.begins[answer][place])
            elsewhere = _is_another(known, answer, value, half, place)
            yield Slip(answer, of, value, first.misstep, ids[1:], begins, half, spoils, elsewhere)


def _is_another(known: Known, answer: str, value: float, half: float, place: int) -> bool:
    """Whether a wrong value of an answer is, within full marks, the right one of another."""
    asked, own = known.system.asked, _measured(known.system, answer)
    return any(
        gap(of)(value, float(known.right[id][place])) <= max(half, float(known.halves[id][place]))
        for id, of in asked.items()
        if id != answer and _measured(known.system, id) == own
    )


def _measured(system: System, id: str) -> Dimension | None:
    """The dimension of an answer; None of a direction, which only others are beside."""
    of = system.asked[id]
    return None if of.is_direction else system.variables[of.unit_id].dimension


def _classes(
    made: Sequence[_Judged], answer: str, place: int, apart: Gap, right: float
) -> list[list[_Judged]]:
    """Workings that give one number together."""
    classes: list[tuple[float, list[_Judged]]] = []
    for each in made:
        value = float(each.found[answer][place])
        dust = _SAME * max(abs(value), abs(right))
        same = next((alike for other, alike in classes if apart(value, other) <= dust), None)
        if same is None:
            classes.append((value, [each]))
        else:
            same.append(each)
    return [alike for _, alike in classes]


_SAME: Final = 1e-9  # relative difference that only the rounding of floats accounts for


def gap(answer: Quantity) -> Gap:
    """How far two values of an answer are apart; directions the short way round."""
    return _turn if answer.is_direction else _gap


def _gap(value: V, other: V, /) -> V:
    return abs(value - other)


def _turn(value: V, other: V, /) -> V:
    return abs((abs(value - other) + 180.0) % 360.0 - 180.0)
