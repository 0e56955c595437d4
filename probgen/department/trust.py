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

from probgen.bank.template import Template
from probgen.department.demand import demand
from probgen.department.doubt import Doubt, DoubtKind
from probgen.department.readable import badly_read
from probgen.department.regimes import regimes
from probgen.department.slips_apart import confused, passing
from probgen.draws.classroom import in_a_row
from probgen.draws.draw import Draw
from probgen.draws.nearness import MOST_ALIKE, alike, copying
from probgen.draws.sample import Sample, sample
from probgen.input.fault import Fault, InputError
from probgen.problem.problem import (
    Problem,
    Worked,
    answers_of,
    draw_class,
    fit,
    prepare,
    shown_values,
    work,
)
from probgen.problem.template_check import Checked, check_template
from probgen.quantities.unit import SI
from probgen.working.convention import Convention

CLASS: Final = 300
"""Students of the class that is looked at."""
FEW: Final = 100
"""Of them whose slips are held against one another."""
ENOUGH: Final = 5000
"""Sets of numbers that a template should have, for years of large classes: a judgement."""


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
        spread = _spread(problem)
    except InputError as error:
        return Trust(template.id, units, None, error.faults)
    return Trust(template.id, units, checked, (), tuple(_doubts(problem, own, spread)))


def _class(problem: Problem, made: Sample) -> list[Draw]:
    """The first draws that are fit for use."""
    draws = [made.draw(place) for place in range(len(made))]
    fitting = (draw for draw, fits in zip(draws, fit(problem, draws), strict=True) if fits)
    return list(islice(fitting, CLASS))


def _spread(problem: Problem) -> tuple[Draw, ...]:
    """What the students of a class would get who sit in one row."""
    students = [str(place) for place in range(CLASS)]
    return draw_class(problem, "a class", students, among=in_a_row(students)).draws


def _copied(problem: Problem, spread: Sequence[Draw]) -> Iterator[Doubt]:
    """Whether too many pairs of a class could copy, with the first such pair."""
    answers = answers_of(problem, spread)
    share = copying(answers).share
    if share > MOST_ALIKE:
        pairs = zip(*alike(answers, answers), strict=True)
        pair = next((one, other) for one, other in pairs if one < other)
        shown = "; ".join(shown_values(spread[place]) for place in pair)
        yield Doubt(DoubtKind.COPYING, share, "", shown)


def _doubts(problem: Problem, own: Sequence[Worked], spread: Sequence[Draw]) -> Iterator[Doubt]:
    if problem.template.room < ENOUGH:
        yield Doubt(DoubtKind.ROOM, count=problem.template.room)
    yield from _copied(problem, spread)
    yield from passing(problem, own)
    yield from confused(problem, own[:FEW])
    yield from regimes(own, problem.template.varying)
    yield from badly_read(own)
    yield from demand(problem)
