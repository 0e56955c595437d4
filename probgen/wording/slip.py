"""Likely slips: the wrong numbers a problem's usual mistakes lead to, told with their reason.

The numbers are those of `probgen.mistakes.rules`; here they are compared with the right answers and
with one another, put in order of likelihood, and worded.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.mistakes.rules import missteps
from probgen.mistakes.variant import Misstep, wrong_values
from probgen.quantities.expression import Number
from probgen.quantities.formula import Relation
from probgen.quantities.printing import plain
from probgen.quantities.unit import TORQUE
from probgen.statics.plan import Plan
from probgen.statics.solution import GOVERNING
from probgen.statics.system import Form, System
from probgen.wording.block import Section
from probgen.wording.direction import worded
from probgen.wording.marking_scheme import half_width
from probgen.wording.sentence import Inlines, Part, itemized, letter, listed, say
from probgen.working.case import Case
from probgen.working.convention import Convention
from probgen.working.digits import Digits

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

SENTENCES: Final[Mapping[tuple[str, str], str]] = {
    ("mass_as_weight", ""): "masses used as weights, without {g}",
    ("sin_cos_swap", "torque"): "sine and cosine exchanged in the {turning} of {F}",
    ("sin_cos_swap", "one"): "sine and cosine exchanged for {F}",
    ("sin_cos_swap", "all"): "sine and cosine exchanged throughout",
    ("wrong_reference_line", "vertical"): "{a} measured from the wrong line, so {b} in its place",
    ("wrong_reference_line", "tilt"): "{a} measured from the wrong line, so {b} in its place",
    ("no_angle", "one"): "{F} taken to act square to its arm (no angle in its {turning})",
    ("no_angle", "all"): "every force taken to act square to its arm (no angles)",
    ("whole_length_for_weight", ""): "the {body}'s weight {W} placed at its end {end}",
    ("distance_not_perpendicular", ""): "distances along the {body} used as lever arms of {W}",
    ("own_weight_forgotten", ""): "the {body}'s own weight {W} left out",
    ("torque_sign", ""): "the {turning} of {F} taken the wrong way round",
    ("unit_not_converted", ""): "{q} left in {own}, not converted to {due}",
    ("inverted_arm_ratio", ""): "the ratio of the lever arms upside down",
    ("joint_is_total_weight", ""): "{R} taken as the sum of the weights alone",
    ("joint_added_not_subtracted", ""): "{T} added to the weights in {y}, not taken off",
    ("hinge_vertical_only", "right"): "{R} taken to be vertical, {x} forgotten",
    ("hinge_vertical_only", "full"): "every force taken to be vertical, {R} too",
    ("hinge_along_body", ""): "{R} taken to act along the {body}",
    ("component_only", "x"): "{x} alone given as {R}",
    ("component_only", "y"): "{y} alone given as {R}",
    ("component_only", "sum"): "the sizes of {x} and {y} simply added",
    ("tangent_inverted", ""): "{x} and {y} exchanged in the tangent",
    ("angle_sign", "up"): "up and down exchanged",
    ("angle_sign", "side"): "left and right exchanged",
    ("calculator_radians", ""): "calculator set to radians",
    ("tension_equals_load", "load"): "{T} taken to be the load {W}",
    ("tension_equals_load", "total"): "{T} taken to be all the weight, {W}",
    ("friction_at_limit", ""): "{f} taken at its limit {m}, though nothing is about to slip",
    ("mu_inverted", ""): "the fraction for {mu} upside down",
    ("normal_at_wall_is_weight", "own"): "{N} taken to be the {body}'s own weight {W}",
    ("normal_at_wall_is_weight", "total"): "{N} taken to be all the weight, {W}",
    ("early_rounding", ""): "results rounded to two figures before they were used again",
}
"""What went wrong, by slip and way; letters and nouns of the problem fill the places."""


@dataclass(frozen=True, slots=True)
class Slip:
    """One wrong answer and what leads to it.

    answer: the id of the answer; symbol: its printed letter, of a direction that of the force.
    value: the wrong one, coherent units, a direction in degrees counter-clockwise from +x.
    digits: the printed numbers of the case it is a slip in.
    id: the likeliest slip; words: what went wrong; alike: ids of others that give the same number.
    origin: whether it is the first answer of the working that the slip spoils; later ones follow.
    clear: whether no likelier slip gives a number too close to tell apart from this one.
    spoils: for every answer the value this slip leads to, coherent units: what follows through.
    """

    answer: str
    symbol: str
    value: float
    digits: Digits = field(compare=False, repr=False)
    id: str
    words: Inlines
    alike: tuple[str, ...]
    origin: bool
    clear: bool
    spoils: Mapping[str, float]

    @property
    def shown(self) -> Number | str:
        """The value as the key prints it, a direction in words."""
        if self.answer.endswith(".direction"):
            return worded(self.value, self.digits.convention).words
        unit = self.digits.unit_of(self.answer.replace(".magnitude", ".x"))
        return self.digits.rounded(self.value, unit)

    @property
    def printed(self) -> str:
        shown = self.shown
        return shown if isinstance(shown, str) else plain(shown)


def slips(case: Case, convention: Convention) -> tuple[Slip, ...]:
    """Every wrong answer that can be told from the right one: by answer, the likeliest first."""
    return class_slips((case,), convention)[0]


def class_slips(cases: Sequence[Case], convention: Convention) -> tuple[tuple[Slip, ...], ...]:
    """The slips of many cases of one problem; each slip is worked once for all of them."""
    found: list[tuple[Slip, ...]] = [()] * len(cases)
    for plan, places in _by_plan(cases):
        own = [cases[place] for place in places]
        for place, slipped in zip(places, _of_plan(plan, own, convention), strict=True):
            found[place] = slipped
    return tuple(found)


def _by_plan(cases: Sequence[Case]) -> Iterator[tuple[Plan, list[int]]]:
    """The plan, with the places of its cases; of several branches each case has its governing."""
    groups: dict[int, list[int]] = {}
    for place, case in enumerate(cases):
        groups.setdefault(int(case.values.get(GOVERNING, 0)), []).append(place)
    for branch, places in groups.items():
        plan = cases[places[0]].plan
        yield plan.branches[branch].plan if plan.branches else plan, places


def _of_plan(
    plan: Plan, cases: Sequence[Case], convention: Convention
) -> Iterator[tuple[Slip, ...]]:
    given = {id: np.array([case.values[id] for case in cases]) for id in cases[0].numbers}
    made = missteps(plan, given, convention.units)
    ordered = sorted(made, key=lambda misstep: _RANK[misstep.slip])
    asked = _asked(plan.system)
    wrong = [_Wrong(m, _words(m, convention), _columns(m, given, asked, cases)) for m in ordered]
    for place, case in enumerate(cases):
        yield tuple(_of_case(case, convention, asked, wrong, place))


def likely(found: Sequence[Slip], count: int = 3) -> tuple[Slip, ...]:
    """The few a key tells of: one number for each of the likeliest slips, where it is made."""
    chosen: dict[str, Slip] = {}
    for slip in sorted(found, key=lambda slip: _RANK[slip.id]):
        if slip.origin and slip.clear:
            chosen.setdefault(slip.id, slip)
    return tuple(chosen.values())[:count]


@dataclass(frozen=True, slots=True)
class _Wrong:
    """A misstep with its words and its value of every asked answer, one entry a case."""

    misstep: Misstep
    words: Inlines
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
    case: Case, convention: Convention, asked: Sequence[str], wrong: Sequence[_Wrong], place: int
) -> Iterator[Slip]:
    halves = {id: half_width(case, convention, id) for id in asked}
    spoils = [{id: float(column[place]) for id, column in w.values.items()} for w in wrong]
    origins = [_origin(case, spoilt, halves) for spoilt in spoils]
    possible = [i for i, spoilt in enumerate(spoils) if origins[i] and _possible(case, spoilt)]
    digits = Digits(case, convention)
    for answer in asked:
        symbol = _symbol(case.system, answer)
        # a slip made here is likelier than one made before and carried on
        order = sorted(possible, key=lambda i: origins[i] != answer)
        numbers = [(i, spoils[i][answer]) for i in order]
        for alike, clear in _classes(case, answer, numbers, halves[answer], convention):
            first = alike[0]
            ids = tuple(dict.fromkeys(wrong[i].misstep.slip for i in alike))
            value = spoils[first][answer]
            yield Slip(
                answer,
                symbol,
                value,
                digits,
                ids[0],
                wrong[first].words,
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


# In words.


def _symbol(system: System, answer: str) -> str:
    owner, _, part = answer.partition(".")
    whole = part in ("magnitude", "direction")
    return system.element(owner).symbol if whole else system.variables[answer].symbol


def _words(misstep: Misstep, convention: Convention) -> Inlines:
    parts: dict[str, Part] = {"turning": convention.turning}
    for name, part in misstep.parts.items():
        parts[name] = listed(part) if isinstance(part, tuple) else part
    return say(SENTENCES[misstep.slip, misstep.way], **parts)


def tell_slip(slip: Slip) -> Inlines:
    """ "T = 152 N: the shelf's own weight W_s left out." """
    name, shown = letter(slip.symbol), slip.shown
    if isinstance(shown, str):
        joint = " at " if shown[0].isdigit() else " "
        return say("{q}{way}: {words}.", q=name, way=joint + shown, words=slip.words)
    return say("{q}: {words}.", q=(name, Relation("="), shown), words=slip.words)


def slips_section(chosen: Sequence[Slip]) -> Section:
    """What goes wrong here, one line for each slip."""
    return Section("What goes wrong here", (itemized(tell_slip(slip) for slip in chosen),))
