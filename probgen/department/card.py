"""One template as a catalogue shows it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Final

from probgen.bank.template import Template
from probgen.bank.uses import Use, facility_of
from probgen.department.findings import Findings, findings
from probgen.department.history import Revision
from probgen.department.on_paper import on_paper
from probgen.department.spread import Spreads, spreads
from probgen.department.standing import Status
from probgen.figures.paper.scene import Scene
from probgen.papers.blanks import label
from probgen.problem.problem import Problem, Worked, prepare, work
from probgen.problem.problem_figures import situation_scene
from probgen.problem.single import draw_single
from probgen.quantities.expression import Number
from probgen.quantities.formula import Relation
from probgen.sheets import document
from probgen.wording.block import Inline, Math, Text
from probgen.working.convention import Convention

_SHOWN: Final = 6  # draws whose figures are shown
_DRAWS: Final = 300  # that histograms and findings are made of

Inlines = tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Drawn:
    """One draw; number: what `probgen work --draw` takes; values, answers: each with its letter."""

    number: int
    figure: Scene
    values: tuple[Inlines, ...]
    answers: tuple[Inlines, ...]


@dataclass(frozen=True, slots=True)
class Card:
    """A template, with its first draw as a sheet and a key have it.

    history: the newest revision first; uses: the latest first; both empty where the bank keeps
    none.  status: where the revision stands after its reviews, None where nothing was said of it.
    """

    template: Template
    sheet: document.Problem
    solution: document.Solution
    draws: tuple[Drawn, ...]
    spreads: Spreads
    findings: Findings
    history: tuple[Revision, ...] = ()
    uses: tuple[Use, ...] = ()
    status: Status | None = None

    @property
    def id(self) -> str:
        return self.template.id

    @property
    def last_set(self) -> date | None:
        """The day of its last use."""
        return max((use.day for use in self.uses), default=None)

    @property
    def facility(self) -> float | None:
        """What share of its points students got, 0 to 1; None before any marking."""
        return facility_of(self.uses)


def card_of(template: Template) -> Card:
    """The card of a template, without its past.

    Raises InputError where it cannot be worked, told or drawn.
    """
    problem = prepare(template, Convention(units=template.units))
    worked = work(problem, [draw_single(problem, number) for number in range(1, _SHOWN + 1)])
    first = on_paper(problem, worked[0])
    return Card(
        template,
        first.sheet,
        first.solution,
        tuple(_drawn(problem, number, own) for number, own in enumerate(worked, start=1)),
        spreads(problem, _DRAWS),
        findings(template, _DRAWS),
    )


def _drawn(problem: Problem, number: int, own: Worked) -> Drawn:
    figure = situation_scene(problem, own, solved=False)
    return Drawn(number, figure, tuple(_values(own)), tuple(_answers(problem, own)))


def _values(own: Worked) -> Iterator[Inlines]:
    variables = own.case.system.variables
    for id, value in own.draw.values.items():
        yield (Math((variables[id].as_name, Relation("="), value)),)


def _answers(problem: Problem, own: Worked) -> Iterator[Inlines]:
    for answer in own.answers:
        if answer.asked:
            shown = answer.shown
            printed = Math((shown,)) if isinstance(shown, Number) else Text(answer.printed)
            yield (*label(problem, answer), Text(": "), printed)
