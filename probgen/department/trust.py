"""Whether a template can be trusted with a class: what nobody would notice on a single sheet.

Beside the proof of its draws: students who could copy from each other, slips that its numbers
hide, answers of another regime within a class, numbers that run out or read badly, a level beside
its steps.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.bank.template import Template
from probgen.department.demand import demand
from probgen.department.doubt import Doubt, Kind
from probgen.department.readable import badly_read
from probgen.department.regimes import regimes
from probgen.department.slips_apart import confused, passing
from probgen.draws.draw import Draw
from probgen.draws.sample import Sample, sample
from probgen.input.fault import Fault, InputError
from probgen.problem.problem import Problem, Worked, fit, prepare, shown_values, work
from probgen.problem.template_check import Checked, check_template
from probgen.quantities.unit import SI
from probgen.working.convention import Convention
from probgen.working.tolerance import half_width

CLASS: Final = 300
"""Students of the class that is looked at."""
FEW: Final = 100
"""Of them whose slips are held against one another."""
ENOUGH: Final = 5000
"""Sets of numbers that a template should have, for years of large classes: a judgement."""
MOST_ALIKE: Final = 0.001
"""Of all pairs of a class may have answers within each other's tolerance: a judgement."""


@dataclass(frozen=True, slots=True)
class Trust:
    """A template looked at; checked: None where its check failed with `faults`.

    units: the system of units, "" for SI.
    """

    id: str
    units: str
    checked: Checked | None
    faults: tuple[Fault, ...] = ()
    doubts: tuple[Doubt, ...] = ()


def units_told(template: Template) -> str:
    """The system of units it is in, "" for SI."""
    return "" if template.units == SI else template.units.name


def trust(template: Template, draws: int) -> Trust:
    """The template proved over so many draws, and a class of `CLASS` looked at."""
    units = units_told(template)
    try:
        checked = check_template(template, draws)
        problem = prepare(template, Convention(units=template.units))
        own = work(problem, _class(problem, sample(template, 4 * CLASS)))
    except InputError as error:
        return Trust(template.id, units, None, error.faults)
    return Trust(template.id, units, checked, (), tuple(_doubts(problem, own)))


def _class(problem: Problem, made: Sample) -> list[Draw]:
    """The first draws that are fit for use."""
    draws = [made.draw(place) for place in range(len(made))]
    fitting = (draw for draw, fits in zip(draws, fit(problem, draws), strict=True) if fits)
    return list(islice(fitting, CLASS))


def _doubts(problem: Problem, own: Sequence[Worked]) -> Iterator[Doubt]:
    if problem.template.room < ENOUGH:
        yield Doubt(Kind.ROOM, problem.template.room)
    alike = _alike(own)
    pairs = len(own) * (len(own) - 1) / 2
    copying = float(np.count_nonzero(alike)) / 2 / pairs if pairs else 0.0
    if copying > MOST_ALIKE:
        shown = "; ".join(shown_values(own[place].draw) for place in np.argwhere(alike)[0])
        yield Doubt(Kind.COPYING, copying, "", shown)
    yield from passing(problem, own)
    yield from confused(problem, own[:FEW])
    yield from regimes(own, problem.template.varying)
    yield from badly_read(own)
    yield from demand(problem)


def _alike(own: Sequence[Worked]) -> NDArray[np.bool_]:
    """Which pairs have all answers within each other's tolerance, a row a student."""
    alike = ~np.eye(len(own), dtype=np.bool_)
    for id, of in (own[0].case.system.asked if own else {}).items():
        values = np.array([worked.case.values[id] for worked in own])
        halves = np.array([half_width(worked.digits, id) for worked in own])
        apart = np.abs(values[:, None] - values[None, :])
        if of.is_direction:
            apart = np.abs((apart + 180.0) % 360.0 - 180.0)
        alike &= (apart <= halves[:, None]) & (apart <= halves[None, :])
    return alike
