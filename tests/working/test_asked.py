"""The numbers asked for in many draws, as they are found and judged one by one."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, draw_class, prepare, proved, work
from probgen.quantities.unit import US_CUSTOMARY
from probgen.statics.system import Form
from probgen.working.asked import asked_answers
from probgen.working.convention import Convention
from probgen.working.tolerance import half_width

ROOT = Path(__file__).parents[2]
OWN = sorted(ROOT.glob("templates/*/*.toml"))
LADDER = ROOT / "templates" / "ladders" / "ladder-holds.toml"
USUAL = Convention()
COURSES = {
    "usual": USUAL,
    "customary": Convention(units=US_CUSTOMARY),
    "two figures": replace(USUAL, figures=2, tolerance=0.05),
    "half a figure is more than the tolerance": replace(USUAL, figures=2, tolerance=0.001),
}


def problem_of(path: Path, convention: Convention = USUAL) -> Problem:
    text = path.read_text(encoding="utf-8")
    return prepare(read_template(text, path.name), convention)


@pytest.mark.one_in(8)
@pytest.mark.parametrize("convention", COURSES.values(), ids=COURSES)
@pytest.mark.parametrize("path", OWN, ids=lambda path: path.stem)
def test_a_row_a_draw_and_a_column_a_number_asked(path: Path, convention: Convention) -> None:
    problem = problem_of(path, convention)
    draws = draw_class(problem, "asked", ["1", "2", "3", "4"]).draws
    solved, _ = proved(problem, draws)
    own = asked_answers(problem.plan, problem.template.labels, convention, solved)
    asked = problem.template.system.asked
    assert own.turning == tuple(each.endswith("direction") for each in asked)
    for row, worked in enumerate(work(problem, draws)):
        values = [worked.case.values[each] for each in asked]
        assert own.values[row].tolist() == pytest.approx(values)
        halves = [half_width(worked.digits, each) for each in asked]
        assert own.halves[row].tolist() == pytest.approx(halves)


def test_a_place_more_by_rounding() -> None:
    """9.996 N to three figures is 10.0 N: half its last place is 0.05 N; of 9.994 N 0.005 N."""
    problem = problem_of(LADDER, replace(USUAL, tolerance=0.0))
    system = problem.plan.system
    assert tuple(system.asked) == ("f", "n")
    some = {id: np.full(3, 1e-3) for id in system.unknowns}
    some |= {"f": np.array([9.996, 9.994, 0.0]), "n": np.ones(3)}
    own = asked_answers(problem.plan, problem.template.labels, problem.convention, some)
    assert own.halves.T[0].tolist() == pytest.approx([0.05, 0.005, 5e-6])


def test_of_a_yes_or_no_there_is_no_number() -> None:
    problem = problem_of(LADDER)
    system = problem.plan.system
    yes_or_no = tuple(find for find in system.finds if find.form is Form.HOLDS)
    plan = replace(problem.plan, system=replace(system, finds=yes_or_no))
    solved = {"f": np.ones(3), "N_g": np.ones(3)}
    own = asked_answers(plan, problem.template.labels, problem.convention, solved)
    assert (own.values.shape, own.halves.shape, own.turning) == ((3, 0), (3, 0), ())
