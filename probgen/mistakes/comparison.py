"""Which number betrays which slip: wrong answers compared with the right ones and one another.

The numbers are those of `probgen.mistakes.rules`; here they are put in order of likelihood, those
that give one number together, and those too close to tell apart are marked.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.mistakes.rules import missteps
from probgen.mistakes.variant import Misstep, wrong_values
from probgen.quantities.unit import TORQUE
from probgen.statics.plan import Plan
from probgen.statics.solution import GOVERNING
from probgen.statics.system import Form, System
from probgen.working.case import Case
from probgen.working.convention import Convention
from probgen.working.digits import Digits
from probgen.working.tolerance import half_width

CLEAR: Final = 3.0
"""Two numbers are told apart when they differ by more than so many half-widths of full marks."""

_PRACTICE: Final = "teaching practice"
LIKELIHOOD: Final[Mapping[str, str]] = {
    # Reported in research on how students learn statics.
    "whole_length_for_weight": "related: Ortiz, Heron & Shaffer, Am. J. Phys. 73, 545 (2005)",
    "distance_not_perpendicular": (
        "abstract of 'Identifying stumbling blocks in the development of student understanding of "
        "moments of forces'"
    ),
    "friction_at_limit": "Statics Concept Inventory: Steif & Dantzler; Johnson (abstract)",
    "tension_equals_load": "Am. J. Phys. 78, 1412 (2010), abstract",
    # Teaching practice, in the order of a working: torques, weights, angles, joints, numbers.
    "own_weight_forgotten": _PRACTICE,
    "sin_cos_swap": _PRACTICE,
    "no_angle": f"{_PRACTICE}: a standard trap in public teaching notes",
    "wrong_reference_line": _PRACTICE,
    "torque_sign": _PRACTICE,
    "inverted_arm_ratio": _PRACTICE,
    "mass_as_weight": _PRACTICE,
    "joint_added_not_subtracted": _PRACTICE,
    "hinge_vertical_only": f"{_PRACTICE}; University Physics vol. 1, 12.2 warns of it",
    "hinge_along_body": f"{_PRACTICE}; University Physics vol. 1, 12.2 asks about it",
    "joint_is_total_weight": _PRACTICE,
    "component_only": _PRACTICE,
    "tangent_inverted": _PRACTICE,
    "angle_sign": _PRACTICE,
    "normal_at_wall_is_weight": _PRACTICE,
    "mu_inverted": _PRACTICE,
    "unit_not_converted": _PRACTICE,
    "calculator_radians": _PRACTICE,
    "early_rounding": f"{_PRACTICE}: seen in a published answer",
}
"""What speaks for each slip, the likeliest first: research before teaching practice.

Nobody has counted how often each is made, so the order within each group is a judgement.
"""
_RANK: Final = {id: place for place, id in enumerate(LIKELIHOOD)}


@dataclass(frozen=True, slots=True)
class Slip:
    """One wrong answer and what leads to it.

    answer: the id of the answer.
    value: the wrong one, coherent units, a direction in degrees counter-clockwise from +x.
    misstep: the likeliest working with the slip; alike: ids of others that give the same number.
    origin: whether it is the first answer of the working that the slip spoils; later ones follow.
    clear: whether no likelier slip gives a number too close to tell apart from this one.
    spoils: for every answer the value this slip leads to, coherent units: what follows through.
    """

    answer: str
    value: float
    misstep: Misstep
    alike: tuple[str, ...]
    origin: bool
    clear: bool
    spoils: Mapping[str, float]

    @property
    def id(self) -> str:
        """The likeliest slip's id."""
        return self.misstep.slip


def slips(digits: Digits) -> tuple[Slip, ...]:
    """Every wrong answer that can be told from the right one: by answer, the likeliest first."""
    return class_slips((digits,))[0]


def class_slips(students: Sequence[Digits]) -> tuple[tuple[Slip, ...], ...]:
    """The slips of many cases of one problem; each slip is worked once for all of them."""
    found: list[tuple[Slip, ...]] = [()] * len(students)
    for plan, places in _by_plan([own.case for own in students]):
        slipped = _of_plan(plan, [students[place] for place in places])
        for place, own in zip(places, slipped, strict=True):
            found[place] = own
    return tuple(found)


def _by_plan(cases: Sequence[Case]) -> Iterator[tuple[Plan, list[int]]]:
    """The plan, with the places of its cases; of several branches each case has its governing."""
    groups: dict[int, list[int]] = {}
    for place, case in enumerate(cases):
        groups.setdefault(int(case.values.get(GOVERNING, 0)), []).append(place)
    for branch, places in groups.items():
        plan = cases[places[0]].plan
        yield plan.branches[branch].plan if plan.branches else plan, places


def _of_plan(plan: Plan, students: Sequence[Digits]) -> Iterator[tuple[Slip, ...]]:
    cases = [own.case for own in students]
    given = {id: np.array([case.values[id] for case in cases]) for id in cases[0].numbers}
    made = missteps(plan, given, students[0].convention.units)
    ordered = sorted(made, key=lambda misstep: _RANK[misstep.slip])
    asked = _asked(plan.system)
    wrong = [_Wrong(misstep, _columns(misstep, given, asked, cases)) for misstep in ordered]
    for place, digits in enumerate(students):
        yield tuple(_of_case(digits, asked, wrong, place))


def likely(found: Sequence[Slip], count: int = 3) -> tuple[Slip, ...]:
    """The few a key tells of: one number for each of the likeliest slips, where it is made."""
    chosen: dict[str, Slip] = {}
    for slip in sorted(found, key=lambda slip: _RANK[slip.id]):
        if slip.origin and slip.clear:
            chosen.setdefault(slip.id, slip)
    return tuple(chosen.values())[:count]


@dataclass(frozen=True, slots=True)
class _Wrong:
    """A misstep with its value of every asked answer, one entry a case."""

    misstep: Misstep
    values: Mapping[str, NDArray[np.float64]]


def _columns(
    misstep: Misstep,
    given: Mapping[str, NDArray[np.float64]],
    asked: Sequence[str],
    cases: Sequence[Case],
) -> dict[str, NDArray[np.float64]]:
    """The asked answers in the order the working comes to them."""
    found = wrong_values(misstep, given)
    return {
        id: np.broadcast_to(np.asarray(found[id], float), len(cases)) for id in found if id in asked
    }


def _asked(system: System) -> tuple[str, ...]:
    """The ids of the asked answers that are numbers, in the order asked."""
    ids: list[str] = []
    for find in system.finds:
        endings = _ENDINGS.get(find.form, ())
        ids += [find.quantity + ending for ending in endings]
    return tuple(ids)


_ENDINGS: Final = {
    Form.VALUE: ("",),
    Form.COMPONENTS: (".x", ".y"),
    Form.MAGNITUDE_AND_DIRECTION: (".magnitude", ".direction"),
}


# One case.


def _of_case(
    digits: Digits, asked: Sequence[str], wrong: Sequence[_Wrong], place: int
) -> Iterator[Slip]:
    case, convention = digits.case, digits.convention
    halves = {id: half_width(digits, id) for id in asked}
    spoils = [{id: float(column[place]) for id, column in w.values.items()} for w in wrong]
    origins = [_origin(case, spoilt, halves) for spoilt in spoils]
    possible = [i for i, spoilt in enumerate(spoils) if origins[i] and _possible(case, spoilt)]
    for answer in asked:
        # a slip made here is likelier than one made before and carried on
        order = sorted(possible, key=lambda i: origins[i] != answer)
        numbers = [(i, spoils[i][answer]) for i in order]
        for alike, clear in _classes(case, answer, numbers, halves[answer], convention):
            first = alike[0]
            ids = tuple(dict.fromkeys(wrong[i].misstep.slip for i in alike))
            yield Slip(
                answer,
                spoils[first][answer],
                wrong[first].misstep,
                ids[1:],
                origins[first] == answer,
                clear,
                spoils[first],
            )


def _origin(case: Case, spoilt: Mapping[str, float], halves: Mapping[str, float]) -> str:
    """The first answer of the working that is told from the right one."""
    for id, value in spoilt.items():
        if not _apart(id)(value, case.values[id]) <= CLEAR * halves[id]:  # also what is no number
            return id
    return ""


def _possible(case: Case, spoilt: Mapping[str, float]) -> bool:
    """Whether a student would write it down.

    All are numbers, nothing that is there vanishes (a component may), and only a couple is as
    likely one way round as the other.
    """
    for id, value in spoilt.items():
        right, part = case.values[id], id.partition(".")[2]
        if not math.isfinite(value):
            return False
        if part not in ("", "magnitude"):
            continue
        couple = not part and case.system.variables[id].dimension == TORQUE
        if right and (abs(value) <= _SAME * abs(right) or (value == -right and not couple)):
            return False
    return True


def _classes(
    case: Case,
    answer: str,
    numbers: Sequence[tuple[int, float]],
    half: float,
    convention: Convention,
) -> list[tuple[list[int], bool]]:
    """The places of the slips that give one number, and whether it is clear of likelier ones."""
    right, apart, turned = case.values[answer], _apart(answer), answer.endswith(".direction")
    classes: list[tuple[float, list[int], bool]] = []
    for place, value in numbers:
        if apart(value, right) <= CLEAR * half:
            continue
        dust = _SAME * max(abs(value), abs(right))
        gaps = [apart(value, other) for other, _, _ in classes]
        same = next((i for i, gap in enumerate(gaps) if gap <= dust), None)
        if same is not None:
            classes[same][1].append(place)
            continue
        reach = half if turned else max(half, convention.tolerance * abs(value))
        classes.append((value, [place], min(gaps, default=math.inf) > CLEAR * reach))
    return [(alike, clear) for _, alike, clear in classes]


_SAME: Final = 1e-9  # relative difference that only the rounding of floats accounts for


def _apart(answer: str) -> Callable[[float, float], float]:
    """How far two values of an answer are apart; directions the short way round."""
    return _turn if answer.endswith(".direction") else _gap


def _gap(value: float, other: float) -> float:
    return abs(value - other)


def _turn(value: float, other: float) -> float:
    return abs((abs(value - other) + 180.0) % 360.0 - 180.0)
