"""Whether a template can be trusted with a class: what nobody would notice on a single sheet.

Beside the proof of its draws: students who could copy from each other, slips that earn full marks,
answers that change sides within a class, numbers that run out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import islice
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.bank.template import Template
from probgen.draws.draw import Draw
from probgen.draws.sample import Sample, sample
from probgen.input.fault import Fault, InputError
from probgen.mistakes.unnoticed import unnoticed
from probgen.problem.problem import Problem, Worked, fit, prepare, shown_values, work
from probgen.problem.template_check import Checked, check_template
from probgen.quantities.unit import SI
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Form
from probgen.working.convention import Convention
from probgen.working.direction import Way, way_of
from probgen.working.tolerance import half_width

CLASS: Final = 300
"""Students of the class that is looked at."""
ENOUGH: Final = 5000
"""Sets of numbers that a template should have, for years of large classes: a judgement."""
MOST_ALIKE: Final = 0.001
"""Of all pairs of a class may have answers within each other's tolerance: a judgement."""
MOST_PASSING: Final = 0.05
"""Of all draws may let one slip pass with full marks: a judgement."""
_RARE: Final = 0.5
"""Of the draws; what fewer have, where others have something else, is another regime."""


class Kind(StrEnum):
    """What may be doubted."""

    ROOM = "few sets of numbers"
    COPYING = "answers alike"
    PASSING = "a slip earns full marks"
    SIDES = "a direction changes sides"


@dataclass(frozen=True, slots=True)
class Doubt:
    """share: of pairs or draws, 0 to 1; of ROOM the number of sets.

    about: the quantity or the slip it concerns, "" for all; draw: values that show it.
    """

    kind: Kind
    share: float
    about: str = ""
    draw: str = ""


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
    yield from _passing(problem, own)
    yield from _sides(problem, own)


def _passing(problem: Problem, own: Sequence[Worked]) -> Iterator[Doubt]:
    """Slips that many draws let pass, each once; who rounds early and is near has no slip."""
    shares: dict[str, float] = {}
    for each in unnoticed([worked.digits for worked in own], problem.missteps):
        if not each.misstep.figures:
            shares.setdefault(each.misstep.slip, each.draws / len(own))
    for slip, share in shares.items():
        if share > MOST_PASSING:
            yield Doubt(Kind.PASSING, share, slip)


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


def _sides(problem: Problem, own: Sequence[Worked]) -> Iterator[Doubt]:
    """Forces asked with a direction that some of the class have on another side than most."""
    for find in problem.template.system.finds:
        if find.form is not Form.MAGNITUDE_AND_DIRECTION:
            continue
        direction = Quantity(find.quantity).direction
        ways = [_side(way_of(worked.case.values[direction])) for worked in own]
        for side in dict.fromkeys(ways):
            share = ways.count(side) / len(ways)
            if share < _RARE:
                first = own[ways.index(side)].draw
                yield Doubt(Kind.SIDES, share, find.quantity, shown_values(first))


def _side(way: Way) -> tuple[bool, bool]:
    return way.up, way.right
