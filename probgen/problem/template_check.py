"""Templates proved over many draws, so that no student meets the one that fails."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import numpy as np

from probgen.bank.bank import Bank, default_bank, read_bank, read_file
from probgen.bank.proportions import drawn_sizes
from probgen.bank.template import Template
from probgen.draws.draw import Draw, draw
from probgen.draws.requirement import requirements_hold
from probgen.figures.measured.proportion import disturbances
from probgen.figures.measured.survey import survey
from probgen.input.fault import Fault, Faults, InputError
from probgen.input.remedy import WorkAgain
from probgen.input.toml import read_toml
from probgen.problem.flaw_words import disturbance_told, flaws_told
from probgen.problem.problem import (
    Problem,
    Worked,
    prepare,
    proved,
    shown_values,
    tell_steps,
    work,
)
from probgen.statics.flaw import Flaw
from probgen.working.convention import Convention

_SEED: Final = "check"
_TOLD: Final = 20  # draws whose working is told as well; telling takes far longer than proving
_SHOWN: Final = 3  # failing draws shown of one template
_LEAST: Final = 0.02  # of all draws must be fit for use, or classes will hardly find theirs


@dataclass(frozen=True, slots=True)
class Checked:
    """A template that passed; proved, refused: draws, and those its requirements turn away.

    residual: the largest relative residual of any balance of any draw.
    """

    template: Template
    proved: int
    refused: int
    residual: float


def templates_at(paths: Sequence[Path], faults: Faults) -> Iterator[Template]:
    """The templates in files, banks and folders, all that come with probgen for no path.

    What cannot be read is added to the faults.
    """
    for path in paths:
        try:
            if path.suffix == ".toml" and path.is_file() and not _is_bank(path):
                yield read_file(path)
                continue
            bank = read_bank(path)
        except InputError as error:
            faults.take(error)
            continue
        yield from _of_bank(bank, faults)
    if not paths:
        yield from _of_bank(default_bank(), faults)


def check_template(template: Template, draws: int, convention: Convention | None = None) -> Checked:
    """Draws, solves and proves so many sets of numbers, and tells and depicts some.

    Raises InputError showing draws that meet the template's requirements and have no solution that
    passes its proof, or a figure whose stated proportions move a point elsewhere, or when hardly
    any draw meets them.
    """
    problem = prepare(template, convention or Convention())
    made = list(_drawn(template, draws))
    solved, proof = proved(problem, made)
    fit = requirements_hold(template, solved)
    failing = np.flatnonzero(fit & ~proof.holds)
    if len(failing):
        raise InputError(_failed(template, made[i], proof.faults[i]) for i in failing[:_SHOWN])
    if fit.sum() <= _LEAST * draws:
        found = f"{int(fit.sum())} of {draws} draws fit for use"
        mend = "loosen a requirement or change a range"
        raise InputError([Fault(template.path, "require", found, "most draws", mend)])
    _tell(problem, [each for each, fits in zip(made, fit, strict=True) if fits][:_TOLD])
    count = int(fit.sum())
    residual = float(np.max(proof.max_residual[fit], initial=0.0))
    return Checked(template, count, draws - count, residual)


def _is_bank(path: Path) -> bool:
    """Whether a file lists templates, or is one; a file that is no TOML is read as a template."""
    with suppress(InputError):
        return "template" in read_toml(path, "template or a bank")
    return False


def _of_bank(bank: Bank, faults: Faults) -> Iterator[Template]:
    for id in bank.files:
        try:
            yield bank.read(id)
        except InputError as error:
            faults.take(error)


def _drawn(template: Template, draws: int) -> Iterator[Draw]:
    """The same draws every time; without those in which a derived quantity has no value."""
    for number in range(draws):
        with suppress(ArithmeticError):
            yield draw(template, _SEED, str(number))


def _tell(problem: Problem, draws: Sequence[Draw]) -> None:
    own = work(problem, draws)
    for worked in own:
        tell_steps(problem, worked)
    disturbed = [fault for worked in own for fault in _disturbed(problem.template, worked)]
    if disturbed:
        raise InputError(disturbed[:_SHOWN])


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


def _failed(template: Template, failing: Draw, flaws: Iterable[Flaw]) -> Fault:
    stated = {given.id: str(failing.values[given.id].value) for given in template.givens}
    found, expected = shown_values(failing), "a solution that passes its proof"
    mend, again = "add a [[require]] or change a range", WorkAgain(template.path, stated)
    return Fault(template.path, flaws_told(template, flaws), found, expected, mend, again)
