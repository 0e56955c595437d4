"""Templates proved over many draws, so that no student meets the one that fails."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import islice
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.bank.labels import asks_coordinates
from probgen.bank.proportions import drawn_sizes
from probgen.bank.reading import in_each_system
from probgen.bank.statement import bare_letters, told_ids
from probgen.bank.template import Derived, Given, Template
from probgen.draws.draw import Draw
from probgen.draws.sample import Sample, sample
from probgen.figures.measured.proportion import disturbances
from probgen.figures.measured.survey import survey
from probgen.input.fault import Fault, Faults, InputError
from probgen.input.remedy import WorkAgain
from probgen.input.time_limit import within
from probgen.problem.dropped import Dropped, misses
from probgen.problem.flaw_words import disturbance_told, flaws_told, untold
from probgen.problem.lookup import choose_several, every_template
from probgen.problem.problem import (
    Problem,
    Worked,
    prepare,
    proved_values,
    shown_values,
    tell_steps,
    work,
)
from probgen.quantities.expression import Name
from probgen.quantities.unit import US_CUSTOMARY
from probgen.statics.flaw import Flaw
from probgen.statics.plausibility import implausible
from probgen.statics.system import Kind, System
from probgen.working.convention import Convention

_TOLD: Final = 20  # draws whose working is told as well; telling takes far longer than proving
_DEPICTED: Final = 100  # draws whose stated proportions are looked at
_SHOWN: Final = 3  # failing draws shown of one template
_LEAST: Final = 0.02  # of all draws must be fit for use, or classes will hardly find theirs
_AT_ONCE: Final = 25_000  # draws proved in one go, so that a million fit into memory

_SECONDS: Final = 4.0
_SECONDS_A_DRAW: Final = 0.02
"""More of it for each; here they take less than a thousandth."""

_Mask = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Checked:
    """A template that passed; proved, refused: draws, and those its requirements turn away.

    residual: the largest relative residual of any balance of any draw.
    dropped: each requirement that turns draws away; a draw may fail several.
    reversed: the forces of a stated direction that are negative in every draw.
    bare, bare_in_names: the points whose letters the statement, or a name, types without braces.
    """

    template: Template
    proved: int
    refused: int
    residual: float
    dropped: tuple[Dropped, ...] = ()
    reversed: tuple[Name, ...] = ()
    bare: tuple[str, ...] = ()
    bare_in_names: tuple[str, ...] = ()


def templates_named(named: Sequence[str], faults: Faults) -> Iterator[Template]:
    """The templates of ids, banks and paths, all that come with probgen where nothing is named.

    Each is read for every system of units it is written for.  What cannot be read is added to the
    faults.
    """
    for read in () if named else every_template():
        yield from _in_each_system(read, faults)
    for each in named:
        try:
            readers = list(choose_several(each, Path(), "PATH"))
        except InputError as error:
            faults.take(error)
            continue
        for read in readers:
            yield from _in_each_system(read, faults)


def _in_each_system(read: Callable[..., Template], faults: Faults) -> Iterator[Template]:
    try:
        yield from in_each_system(read())
    except InputError as error:
        faults.take(error)


def check_template(template: Template, draws: int, convention: Convention | None = None) -> Checked:
    """Draws, solves and proves so many sets of numbers, and tells and depicts some.

    Raises InputError for data the statement never tells; showing draws that meet the template's
    requirements and have no solution that passes its proof, or one nobody would believe, or a
    figure whose stated proportions move a point elsewhere; or when hardly any draw meets them.
    """
    untold = list(_untold(template))
    problem = prepare(template, convention or Convention(units=template.units))
    with within(_SECONDS + _SECONDS_A_DRAW * draws, template.path, "proving its draws"):
        tally = _Tally(problem, draws)
        for part, start in enumerate(range(0, draws, _AT_ONCE)):
            tally.take(sample(template, min(_AT_ONCE, draws - start), part))
    if faults := [*untold, *tally.failed[:_SHOWN], *tally.unlikely.values()]:
        raise InputError(faults)
    if tally.fit <= _LEAST * draws:
        found = f"{tally.fit} of {draws} draws fit for use"
        dropped = "; ".join(map(str, tally.dropped))
        mend = f"loosen a requirement or change a range; dropped are {dropped}"
        raise InputError([Fault(template.path, "require", found, "most draws", mend)])
    _tell(problem, tally.first)
    return Checked(
        template,
        tally.fit,
        draws - tally.fit,
        tally.residual,
        tally.dropped,
        tuple(tally.reversed),
        bare_letters(template.statement, template.system.points),
        bare_letters(". ".join(_names(template)), template.system.points),
    )


def _names(template: Template) -> Iterator[str]:
    """What quantities and what exerts a force are called in the author's words."""
    labels = template.labels
    for label in (*labels.quantities.values(), *labels.elements.values()):
        if isinstance(label.name, str):
            yield label.name


class _Tally:
    """What so many draws come to, taken part by part.

    fit: how many meet every requirement, first: the first of them; failed, unlikely: what is wrong
    with some of these, the latter by its kind; reversed: as in `Checked`, so far.
    """

    def __init__(self, problem: Problem, draws: int) -> None:
        self._problem, self._draws = problem, draws
        self._missed: dict[str, int] = {}
        self.fit = 0
        self.first: list[Draw] = []
        self.failed: list[Fault] = []
        self.unlikely: dict[Flaw, Fault] = {}
        self.residual = 0.0
        self.reversed = _applied(problem.template.system)

    @property
    def dropped(self) -> tuple[Dropped, ...]:
        return tuple(
            Dropped(by, count / self._draws) for by, count in self._missed.items() if count
        )

    def take(self, made: Sample) -> None:
        """Solves and proves the draws of one part."""
        problem, template = self._problem, self._problem.template
        if not len(made):
            return
        solved, proof = proved_values(problem, made.values)
        fit = self._requirements(solved)
        failing = np.flatnonzero(fit & ~proof.holds).tolist()
        for place in islice(failing, _SHOWN - len(self.failed)):
            flaws = flaws_told(template, proof.faults[place])
            self.failed.append(_fault(template, flaws, made.draw(place)))
        sound = fit & proof.holds
        for flaw, wrong in implausible(problem.plan, {**proof.values, **solved}):
            self._blame(made, flaw, sound & wrong)
        self.reversed = [size for size in self.reversed if _below_zero(size, solved, fit)]
        places = np.flatnonzero(fit).tolist()
        self.first += map(made.draw, places[: _DEPICTED - len(self.first)])
        self.fit += len(places)
        self.residual = max(self.residual, float(np.max(proof.max_residual[fit], initial=0.0)))

    def _requirements(self, solved: Mapping[str, NDArray[np.float64]]) -> _Mask:
        """Which draws of a part meet every requirement; those that miss one are counted."""
        fit = np.ones(len(next(iter(solved.values()))), dtype=np.bool_)
        for by, missed in misses(self._problem.template, solved).items():
            fit &= ~missed
            self._missed[by] = self._missed.get(by, 0) + int(missed.sum())
        return fit

    def _blame(self, made: Sample, flaw: Flaw, wrong: _Mask) -> None:
        if flaw not in self.unlikely and wrong.any():
            first = made.draw(int(np.flatnonzero(wrong)[0]))
            said = flaws_told(self._problem.template, [flaw])
            self.unlikely[flaw] = _fault(self._problem.template, said, first)


def _applied(system: System) -> list[Name]:
    """The unknown sizes of forces that act at a stated direction."""
    applied = (f for f in system.forces if f.kind is Kind.FORCE and not f.part.is_component)
    sizes = dict.fromkeys(f.magnitude for f in applied if isinstance(f.magnitude, Name))
    return [size for size in sizes if size.id in system.unknowns]


def _below_zero(size: Name, solved: Mapping[str, NDArray[np.float64]], fit: _Mask) -> bool:
    """Whether a size is worked out, and negative in all draws that fit."""
    return size.id in solved and bool(np.all(solved[size.id][fit] < 0.0))


def _untold(template: Template) -> Iterator[Fault]:
    """Data a student would have to guess."""
    told = told_ids(template.statement)
    stated: tuple[Given | Derived, ...] = (*template.givens, *template.derived)
    for each in stated:
        if each.id not in told:
            found = untold(template, each.id)
            mend = f"write {{{{ {each.id} }}}} where it is to be told, or leave the quantity out"
            yield Fault(template.path, "statement", found, "every given with its value", mend)
    if asks_coordinates(template.labels) and not _origin_told(template):
        expected = "the point that coordinates are measured from, the one at [0, 0]"
        mend = "give it a letter under [points] and tell it: measured from {{ O }}"
        yield Fault(template.path, "statement", "no such point", expected, mend)


def _origin_told(template: Template) -> bool:
    """Whether the statement names a point in the place that all others are reached from."""
    origins = {id for id, point in template.system.points.items() if not point.links}
    return not origins.isdisjoint(told_ids(template.statement))


def _tell(problem: Problem, draws: Sequence[Draw]) -> None:
    own = work(problem, draws[: _DEPICTED if problem.template.picture else _TOLD])
    for worked in own[:_TOLD]:
        tell_steps(problem, worked)
    disturbed: dict[str, Fault] = {}  # each kind once, with the first draw that has it
    for worked in own:
        for fault in _disturbed(problem.template, worked):
            disturbed.setdefault(fault.expected, fault)
    if disturbed:
        raise InputError(islice(disturbed.values(), _SHOWN))


def _disturbed(template: Template, own: Worked) -> Iterator[Fault]:
    """What the template's own picture proportions put elsewhere than it is with these values."""
    sizes = drawn_sizes(template, own.case.values)
    wrong = [f"{id} has no size" for id in template.picture if id not in sizes]
    if sizes:
        true, drawn = (
            survey(template.system, template.labels, {**own.complete, **each})
            for each in ({}, sizes)
        )
        wrong += (disturbance_told(template, each) for each in disturbances(true, drawn))
    if wrong:
        expected = f"sizes that leave every point in its order: {'; '.join(wrong)}"
        mend = "change a size, or write it so that it grows with the others"
        yield Fault(template.path, "picture", shown_values(own.draw), expected, mend)


def _fault(template: Template, said: str, failing: Draw) -> Fault:
    stated = {given.id: str(failing.values[given.id].value) for given in template.givens}
    found, expected = shown_values(failing), "a solution that passes its proof"
    mend = "add a [[require]] or change a range"
    again = WorkAgain(template.path, stated, customary=template.units == US_CUSTOMARY)
    return Fault(template.path, said, found, expected, mend, again)
