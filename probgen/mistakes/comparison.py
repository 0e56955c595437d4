"""Which number betrays which slip: wrong answers compared with the right ones and one another.

The numbers are those of `probgen.mistakes.rules`; here they are put in order of likelihood, those
that give one number together, and those nobody would believe are left out.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from probgen.mistakes.belief import Place, believable, places, possible
from probgen.mistakes.likelihood import rank
from probgen.mistakes.variant import Misstep
from probgen.mistakes.wrong_working import Missteps, WrongCase, wrong_workings
from probgen.statics.quantity_id import Quantity
from probgen.working.case import Case
from probgen.working.digits import Digits
from probgen.working.tolerance import half_widths

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
    """

    answer: str
    of: Quantity
    value: float
    misstep: Misstep
    alike: tuple[str, ...]
    origin: bool
    half: float
    spoils: Mapping[str, float]

    @property
    def id(self) -> str:
        """The likeliest slip's id."""
        return self.misstep.slip


def slips(digits: Digits, made: Missteps) -> tuple[Slip, ...]:
    """Every wrong answer that can be told from the right one: by answer, the likeliest first."""
    return class_slips((digits,), made)[0]


def class_slips(students: Sequence[Digits], made: Missteps) -> tuple[tuple[Slip, ...], ...]:
    """The slips of many cases of one problem; each slip is worked once for all of them.

    made: the missteps of the problem's plan.
    """
    if not students:
        return ()
    cases = [own.case for own in students]
    wrong = wrong_workings(cases, made)
    asked, sought = cases[0].system.asked, places(cases[0].system)
    return tuple(
        tuple(_of_case(digits, asked, sought, [working.at(place) for working in wrong]))
        for place, digits in enumerate(students)
    )


def likely(found: Sequence[Slip], count: int = 3) -> tuple[Slip, ...]:
    """The few a key tells of: one number for each of the likeliest slips, where it is made.

    No two of them are so close that one could be taken for the other.
    """
    chosen: dict[str, Slip] = {}
    for slip in sorted(found, key=lambda slip: rank(slip.misstep)):
        if len(chosen) == count:
            break
        if slip.origin and slip.id not in chosen and _clear(slip, chosen.values()):
            chosen[slip.id] = slip
    return tuple(chosen.values())


def _clear(slip: Slip, chosen: Iterable[Slip]) -> bool:
    return all(
        gap(slip.of)(slip.value, other.value) > CLEAR * max(slip.half, other.half)
        for other in chosen
        if other.answer == slip.answer
    )


# One case.


def _of_case(
    digits: Digits,
    asked: Mapping[str, Quantity],
    sought: Sequence[Place],
    wrong: Sequence[WrongCase],
) -> Iterator[Slip]:
    case, convention = digits.case, digits.convention
    halves = half_widths(digits, asked)
    spoils = [{id: own.found[id] for id in own.found if id in asked} for own in wrong]
    origins = [_origin(case, spoilt, halves) for spoilt in spoils]
    possible_ones = [
        i
        for i, own in enumerate(wrong)
        if origins[i] and believable(case, own.misstep, own.until(origins[i]), sought)
    ]
    for answer, of in asked.items():
        # a slip made here is likelier than one made before and carried on
        order = sorted(possible_ones, key=lambda i: origins[i] != answer)
        numbers = [(i, spoils[i][answer]) for i in order if answer in spoils[i]]
        for alike in _classes(case, answer, numbers, halves[answer]):
            first = alike[0]
            ids = tuple(dict.fromkeys(wrong[i].misstep.slip for i in alike))
            value, half = spoils[first][answer], halves[answer]
            if not of.is_direction:
                half = max(half, convention.tolerance * abs(value))
            origin = origins[first] == answer
            misstep = wrong[first].misstep
            yield Slip(answer, of, value, misstep, ids[1:], origin, half, spoils[first])


def _origin(case: Case, spoilt: Mapping[str, float], halves: Mapping[str, float]) -> str:
    """The first answer of the working that is told from the right one."""
    for id, value in spoilt.items():
        apart = gap(case.system.asked[id])(value, case.values[id])
        if not apart <= CLEAR * halves[id]:  # also what is no number
            return id
    return ""


def _classes(
    case: Case, answer: str, numbers: Sequence[tuple[int, float]], half: float
) -> list[list[int]]:
    """The places of the slips that give one number clear of the right one."""
    right, apart = case.values[answer], gap(case.system.asked[answer])
    classes: list[tuple[float, list[int]]] = []
    for place, value in numbers:
        if apart(value, right) <= CLEAR * half or not possible(case, answer, value):
            continue
        dust = _SAME * max(abs(value), abs(right))
        same = next((alike for other, alike in classes if apart(value, other) <= dust), None)
        if same is None:
            classes.append((value, [place]))
        else:
            same.append(place)
    return [alike for _, alike in classes]


_SAME: Final = 1e-9  # relative difference that only the rounding of floats accounts for


def gap(answer: Quantity) -> Callable[[float, float], float]:
    """How far two values of an answer are apart; directions the short way round."""
    return _turn if answer.is_direction else _gap


def _gap(value: float, other: float) -> float:
    return abs(value - other)


def _turn(value: float, other: float) -> float:
    return abs((abs(value - other) + 180.0) % 360.0 - 180.0)
