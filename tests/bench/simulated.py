"""Papers as students might fill them in: right, with slips known and unknown, and at random."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from random import Random
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.marking.asked import Asked, asked_of
from probgen.marking.form import Place
from probgen.marking.judged import ways_for
from probgen.marking.naming import WrongWay, table
from probgen.mistakes.belief import possible
from probgen.mistakes.wrong_working import wrong_workings
from probgen.problem.problem import Problem, Worked, draw_class, work
from probgen.quantities.unit import UNITS
from probgen.statics.rerun import first_limit_id, rerun
from probgen.statics.state import utmost_finds

KINDS: Final = {"right": 15, "slip": 35, "pair": 15, "arithmetic": 15, "unit": 5, "random": 15}
"""Kinds of papers, and how many of 100 are of each: a judgement, no source."""
_FIGURES: Final = (2, 3, 3, 3, 4, 4)
DRAWS: Final = 120
"""Different sets of numbers a template; several students have each."""
_WITHIN: Final = 3.0
"""A number at random is within so many times the right one, evenly by ratio."""

Values = Mapping[str, float]


@dataclass(frozen=True, slots=True)
class Paper:
    """One problem filled in.

    kind: of `KINDS`; own: the draw it has; slips: what went wrong, none unless slips are known.
    values: what its student found; typed: the cells.
    """

    kind: str
    own: Worked
    slips: WrongWay | None
    values: Values
    typed: Mapping[str, Mapping[Place, str]]


class Students:
    """Those who work one problem; draws: different sets of its numbers."""

    def __init__(self, problem: Problem, chance: Random, draws: int = DRAWS) -> None:
        self.problem, self._chance = problem, chance
        ids = [str(n) for n in range(draws)]
        self._worked = work(problem, draw_class(problem, str(chance.random()), ids).draws)
        self._asked = [asked_of(problem, own) for own in self._worked]
        self._ways, self._rows = self._wrong_values()
        self._single = [at for at, way in enumerate(self._ways) if len(way.slips) == 1]
        self._pairs = [at for at, way in enumerate(self._ways) if len(way.slips) == 2]

    def papers(self, count: int) -> Iterator[Paper]:
        """So many papers of all kinds, with draws at random."""
        for kind in self._kinds(count):
            yield self._paper(kind, self._chance.randrange(len(self._worked)))

    def one_each(self) -> Iterator[Paper]:
        """A paper for each draw, in order."""
        for place, kind in enumerate(self._kinds(len(self._worked))):
            yield self._paper(kind, place)

    def _kinds(self, count: int) -> Sequence[str]:
        return self._chance.choices(list(KINDS), list(KINDS.values()), k=count)

    def _wrong_values(self) -> tuple[Sequence[WrongWay], Mapping[str, NDArray[np.float64]]]:
        """Every way to go wrong, and for each answer what it leads to: a row a way."""
        cases = [own.case for own in self._worked]
        ids = list(cases[0].system.asked)
        if self.problem.plan.branches:
            found = wrong_workings(cases, self.problem.missteps)
            lost = np.full(len(cases), np.nan)
            rows = {id: np.array([each.values.get(id, lost) for each in found]) for id in ids}
            return [WrongWay((each.misstep,)) for each in found], rows
        given = {id: np.array([case.values[id] for case in cases]) for id in cases[0].numbers}
        ways = ways_for(self.problem)
        return ways, table(ways, given, {}, len(cases), ids)

    def _paper(self, kind: str, place: int) -> Paper:
        own, asked = self._worked[place], self._asked[place]
        values, slips = dict(own.case.values), None
        numbers = [each.id for each in asked if not each.is_choice]
        spoilt = self._chance.choice(numbers)
        match kind:
            case "slip" | "pair":
                slips, values = self._slipped(kind, place)
            case "arithmetic":
                values = self._miscalculated(own)
            case "random":
                values[spoilt] = self._at_random(own, spoilt)
        typed = {each.id: self._cells(each, values) for each in asked}
        if kind == "unit":
            typed[spoilt] = self._other_unit(typed[spoilt])
        return Paper(kind if slips or kind not in ("slip", "pair") else "right", own, slips,
                     values, typed)  # fmt: skip

    def _slipped(self, kind: str, place: int) -> tuple[WrongWay | None, dict[str, float]]:
        """A way that somebody could go with these numbers and believe, and what it leads to."""
        own, asked = self._worked[place], self._asked[place]
        ways = self._pairs if kind == "pair" and self._pairs else self._single
        for at in self._chance.sample(ways, min(20, len(ways))):
            found = {**own.case.values}
            found |= {id: float(row[at, place]) for id, row in self._rows.items()}
            wrong = [
                each for each in asked if not each.is_choice and not each.earns(found[each.id])
            ]
            right, system = own.case.values, own.case.system
            fit = all(possible(system, each.id, right[each.id], found[each.id]) for each in wrong)
            if wrong and fit and self._ways[at].made_by(own.case):
                return self._ways[at], found
        return None, dict(own.case.values)

    def _miscalculated(self, own: Worked) -> dict[str, float]:
        """One result of the working with a wrong digit, digits exchanged, or the point misplaced.

        A factor of two lost is no arithmetic: it is a slip that is known.
        """
        plan = self.problem.plan
        branch = plan
        for find in utmost_finds(plan.system)[:1]:
            place = int(own.case.values[first_limit_id(find)])
            branch = plan.branches_to(find)[place].plan
        given = {id: own.case.values[id] for id in own.case.numbers}
        step = self._chance.choice([line.id for line in branch.lines])
        right = float(rerun(branch, given)[step])
        found = rerun(branch, given, {step: self._misprinted(right)})
        return {**own.case.values, **{id: float(value) for id, value in found.items()}}

    def _misprinted(self, value: float) -> float:
        digits = list(f"{abs(value):.4g}")
        places = [at for at, each in enumerate(digits[:5]) if each.isdigit()]
        way = self._chance.randrange(3)
        if way == 0 or len(places) < 2 or not value:
            return value * self._chance.choice((10.0, 0.1))
        one = self._chance.choice(places)
        if way == 1:
            digits[one] = str(self._chance.randrange(10))
        else:
            other = self._chance.choice(places)
            digits[one], digits[other] = digits[other], digits[one]
        return math.copysign(float("".join(digits)), value)

    def _at_random(self, own: Worked, id: str) -> float:
        right = own.case.values[id]
        if own.case.system.asked[id].is_direction:
            return self._chance.uniform(0.0, 360.0)
        within = math.log(_WITHIN)
        return (right or 1.0) * math.exp(self._chance.uniform(-within, within))

    def _cells(self, asked: Asked, values: Values) -> dict[Place, str]:
        """What is typed for a value; nothing for none."""
        if asked.is_choice:
            return {Place.CHOICE: asked.blank.choices[int(asked.value)][0]}
        value = values[asked.id]
        if not math.isfinite(value):
            return {}
        if asked.is_direction:
            return _direction(value)
        unit = asked.blank.unit
        assert unit is not None
        figures = self._chance.choice(_FIGURES)
        return {Place.NUMBER: f"{value / unit.factor:#.{figures}g}", Place.UNIT: unit.plain}

    def _other_unit(self, cells: dict[Place, str]) -> dict[Place, str]:
        unit = self._chance.choice([each for each in UNITS if each not in ("1", "deg")])
        return {**cells, Place.UNIT: unit} if cells.get(Place.UNIT) else cells


def _direction(angle: float) -> dict[Place, str]:
    """An angle from the horizontal, and its side."""
    angle = math.radians(angle)
    up, right = math.sin(angle) >= 0.0, math.cos(angle) >= 0.0
    size = math.degrees(math.asin(min(1.0, abs(math.sin(angle)))))
    side = f"{'above' if up else 'below'} the horizontal, to the {'right' if right else 'left'}"
    return {Place.NUMBER: f"{size:.1f}", Place.SIDE: side}
