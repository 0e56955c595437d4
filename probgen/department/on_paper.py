"""One draw of a template as students and teachers get it."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass

from probgen.bank.template import Template
from probgen.draws.draw import Draw, completed
from probgen.input.fault import InputError
from probgen.papers.handout import copy_of_one
from probgen.papers.page import key_of, sheet_of
from probgen.problem.problem import Problem, Worked, prepare, work
from probgen.problem.single import Single, draw_single
from probgen.sheets import document
from probgen.working.convention import Convention


@dataclass(frozen=True, slots=True)
class OnPaper:
    """What stands on a sheet, and in its key."""

    draw: Draw
    sheet: document.Problem
    solution: document.Solution


def on_paper(problem: Problem, worked: Worked) -> OnPaper:
    """A draw that was worked.  Raises InputError where it cannot be told."""
    copy = copy_of_one(Single(problem, worked))
    (sheet,), (solution,) = sheet_of(copy).problems, key_of(copy).solutions
    return OnPaper(worked.draw, sheet, solution)


def first_on_paper(template: Template, like: Draw | None = None) -> OnPaper:
    """A template's first draw; like: of another state, whose values are taken where they fit.

    Raises InputError where it cannot be worked, told or drawn.
    """
    problem = prepare(template, Convention(units=template.units))
    own = draw_single(problem, 1)
    if like:
        with suppress(InputError, ArithmeticError):
            chosen = {g.id: like.values.get(g.id, own.values[g.id]).value for g in template.givens}
            (worked,) = work(problem, [completed(template, chosen)])
            return on_paper(problem, worked)
    (worked,) = work(problem, [own])
    return on_paper(problem, worked)
