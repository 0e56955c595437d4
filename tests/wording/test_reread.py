"""Every printed working read back from its LaTeX alone, and worked again with its units."""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.draws.draw import completed
from probgen.problem.problem import Problem, Worked, draw_class, prepare, tell_steps, work
from probgen.quantities.expression import evaluate
from probgen.quantities.printing import latex
from probgen.quantities.unit import US_CUSTOMARY
from probgen.statics.solution import solve
from probgen.wording.block import Display
from probgen.working.convention import Convention
from tests.situations import SLOPED, worked
from tests.wording.equation_chain import (
    Chain,
    chain_of,
    chains,
    check_numbers,
    check_symbols,
)
from tests.wording.formula_reader import DEGREES, METRES, Reader, Told, UnreadableError, World
from tests.wording.stretch_table import check_table, is_table

SOMEWHERE = 0.37
"""A distance along a load, metres."""
PUBLISHED = Path(__file__).parents[1] / "published"
CONVENTIONS = {
    "angle": Convention(torque="angle"),
    "arm": Convention(torque="arm", positive="clockwise"),
    "components": Convention(torque="components", figures=4),
    "customary": Convention(units=US_CUSTOMARY),
}


@cache
def problem_of(id: str, convention: str) -> Problem:
    bank = default_bank()
    if id in bank.files:
        method = CONVENTIONS[convention]
        return prepare(bank.read(id, method.units), method)
    text = (PUBLISHED / f"{id}.toml").read_text(encoding="utf-8")
    return prepare(read_template(text, f"{id}.toml"), CONVENTIONS[convention])


def worlds_of(own: Worked) -> list[World]:
    """What each printed symbol means: in the end, with each resultant's angle, at each limit."""
    data, labels = {name: own.case.values[name] for name in own.case.numbers}, own.case.labels
    branches = [solve(branch.plan, data) for branch in own.case.plan.branches]
    found = []
    for values in [own.complete, *branches]:
        world: World = {}
        for variable in own.case.system.variables.values():
            if variable.id in values:
                length, mass, time, angle = map(float, variable.dimension)
                size = float(values[variable.id])
                world[latex(labels.letter(variable.id))] = size, (length, mass, time, angle)
        angles: list[World] = []
        for element in own.case.system.elements:
            if element.spread is not None and (load := element.spread.intensity) is not None:
                along = {**values, load.along.id: SOMEWHERE}
                world[latex(load.along)] = SOMEWHERE, METRES
                world[latex(load.letter)] = float(evaluate(load.load, along)), (0, 1, -2, 0)
            if f"{element.id}.magnitude" in values:
                size = float(values[f"{element.id}.magnitude"])
                world[latex(labels.whole(element.id))] = size, (1, 1, -2, 0)
                x, y = (abs(float(values[f"{element.id}.{axis}"])) for axis in "xy")
                steep = math.degrees(math.atan2(y, x))
                angles.append({r"\phi": (steep, DEGREES)})
        found += [world | angle for angle in angles or [{}]]
    return found


def told_of(own: Worked) -> Told:
    """The formulas of loads along x, by the letters of their sizes."""
    loads = (e.spread.intensity for e in own.case.system.elements if e.spread is not None)
    return {latex(load.letter): latex(load.load) for load in loads if load is not None}


def reread(id: str, convention: str, draws: int) -> int:
    """Every line of so many students' workings read back; how many lines there were."""
    problem = problem_of(id, convention)
    if draws == 1:
        first = {given.id: given.choices[0] for given in problem.template.givens}
        chosen = [completed(problem.template, first)]
    else:
        ids = [f"reader-{place}" for place in range(draws)]
        chosen = list(draw_class(problem, "reread", ids).draws)
    lines = told = 0
    for own in work(problem, chosen):
        worlds, told_by_formula = worlds_of(own), told_of(own)
        for section in tell_steps(problem, own):
            tables = [block for block in section.blocks if is_table(block)]
            for table in tables:
                assert isinstance(table, Display)
                assert check_table(table, own, worlds[0])
            for chain in chains([block for block in section.blocks if block not in tables]):
                lines += check_numbers(
                    chain, worlds[0], problem.convention.figures, told_by_formula
                )
                told += check_symbols(chain, worlds, told_by_formula)
    assert told > lines / 2  # equations in symbols were read as well
    return lines


def test_a_lever_arm_is_told_with_the_number_that_its_balance_has() -> None:
    """0.96 m sin 31.574° = 0.50266 m, though 31.57° gives 0.5026 m."""
    problem, own = worked(SLOPED, Convention(torque="arm", pivot="support"))
    told = [chain for each in tell_steps(problem, own) for chain in chains(each.blocks)]
    (arm,) = (chain for chain in told if chain.links[0][1] == r"d\,\sin \theta")
    (pull,) = (chain for chain in told if chain.links[0][1] == "T")
    assert arm.links[-1][1] == r"0.50266\,\mathrm{m}"
    assert r"}{0.50266\,\mathrm{m}}" in pull.links[2][1]


SUPPLIED = sorted(default_bank().files)
PRINTED = sorted(path.stem for path in PUBLISHED.glob("*.toml") if path.stem != "answers")


@pytest.mark.one_in(8)
@pytest.mark.parametrize("convention", CONVENTIONS)
@pytest.mark.parametrize("id", SUPPLIED)
def test_what_is_printed_gives_what_is_printed(id: str, convention: str) -> None:
    assert reread(id, convention, 3) >= 3


@pytest.mark.proof
@pytest.mark.parametrize("convention", CONVENTIONS)
@pytest.mark.parametrize("id", SUPPLIED)
def test_so_it_does_for_a_whole_class(id: str, convention: str) -> None:
    assert reread(id, convention, 50) >= 50


@pytest.mark.parametrize("id", PRINTED)
def test_so_do_the_published_problems(id: str) -> None:
    assert reread(id, "angle", 1) >= 1


@pytest.mark.proof
@pytest.mark.parametrize("convention", [name for name in CONVENTIONS if name != "angle"])
@pytest.mark.parametrize("id", PRINTED)
def test_so_do_they_however_torque_is_written(id: str, convention: str) -> None:
    assert reread(id, convention, 1) >= 1


@pytest.mark.parametrize(
    ("formula", "wrong"),
    [
        (r"T = \dfrac{60.0\,\mathrm{N}}{2} = 30.0\,\mathrm{N}", r"30.0\,\mathrm{N{\cdot}m}"),
        (r"T = (20.0\,\mathrm{N})\,\sin 30^{\circ} = 10.0\,\mathrm{N}", r"17.3\,\mathrm{N}"),
        (r"T = 10\,976\,\mathrm{N} = 1.098\times 10^{4}\,\mathrm{N}", r"10\,970\,\mathrm{N}"),
        (r"T = 190.6\,\mathrm{N} \rightarrow 191\,\mathrm{N}", r"190\,\mathrm{N}"),
        (r"T = 2345\,\mathrm{N} \rightarrow 2350\,\mathrm{N}", r"2330\,\mathrm{N}"),
    ],
)
def test_the_reader_tells_right_from_wrong(formula: str, wrong: str) -> None:
    """So that no line above is read as true whatever it says."""
    names: World = {"T": (1.0, (1, 1, -2, 0))}
    check_numbers(Chain(tuple(chain_of(formula))), names, 3)
    last = formula.rsplit(r"\rightarrow" if "arrow" in formula else "=", 1)[1].strip()
    with pytest.raises(AssertionError):
        check_numbers(Chain(tuple(chain_of(formula.replace(last, wrong)))), names, 3)


@pytest.mark.parametrize(
    "formula",
    [
        r"\tfrac{1}{2}^{2}",  # a power on a fraction without brackets
        r"3.0\,\mathrm{m}^{2}",  # a power on a unit, or on the number as well?
        r"2 + -3",
        r"2\,\mathrm{m} + 3\,\mathrm{N}",
        r"\sin 30",  # radians?
        r"\sin^{2} 30^{\circ}",
        r"2 3",
        r"\sqrt{-1}",
    ],
)
def test_the_reader_refuses_what_is_ambiguous(formula: str) -> None:
    with pytest.raises(UnreadableError):
        Reader(formula).whole()
