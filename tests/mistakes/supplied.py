"""The supplied templates, some draws of each worked, and the slips that are found in them."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from probgen.bank.reading import read_template
from probgen.mistakes.comparison import Slip, class_slips
from probgen.problem.problem import Problem, Worked, draw_class, prepare, work
from probgen.working.convention import Convention

ROOT = Path(__file__).parents[2]
OWN = {path.stem: path for path in sorted(ROOT.glob("templates/*/*.toml"))}


@cache
def problem(name: str) -> Problem:
    path = OWN[name]
    return prepare(read_template(path.read_text(encoding="utf-8"), path.name), Convention())


@cache
def works(name: str, draws: int = 8) -> tuple[Worked, ...]:
    own = problem(name)
    return work(own, draw_class(own, "slips", [str(each) for each in range(draws)]).draws)


@cache
def told(name: str, draws: int = 8) -> tuple[tuple[Slip, ...], ...]:
    return class_slips([own.digits for own in works(name, draws)], problem(name).missteps)
