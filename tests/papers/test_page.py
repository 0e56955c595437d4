"""What a sheet and a key have in common is made once, and tells nothing it should not."""

import pytest

from probgen.bank.bank import default_bank
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.papers.page import Copy, key_of, sheet_of
from probgen.problem.problem import draw_class, prepare, work
from probgen.problem.problem_figures import asks_for_sizes, situation_scene
from probgen.wording.block import Math
from probgen.working.convention import Convention

IDS = sorted(default_bank().files)
USUAL = Convention()


def copy_of(id: str, convention: Convention = USUAL) -> Copy:
    problem = prepare(default_bank().read(id), convention)
    worked = work(problem, draw_class(problem, "page", ["ada"]).draws)
    problem_set = ProblemSet("M", "W", "class.csv", (Assigned(id, 10),))
    version = Version(0, "CODE", "01-ada-1", Student("Ada", "1"))
    return Copy(problem_set, version, (problem,), worked)


@pytest.mark.parametrize("id", IDS)
def test_the_key_shows_the_sheet_s_figure_unless_a_size_is_sought(id: str) -> None:
    copy = copy_of(id)
    (face,) = copy.faces
    solved = situation_scene(face.problem.template, face.own, solved=True)
    (asked,), (answered,) = sheet_of(copy).problems, key_of(copy).solutions
    assert answered.figure == solved
    assert (asked.figure != solved) <= asks_for_sizes(face.problem.template)
    assert asked.statement == answered.statement


def test_some_template_asks_for_a_size() -> None:
    copies = [copy_of(id) for id in IDS]
    sought = [c for c in copies if asks_for_sizes(c.problems[0].template)]
    assert 0 < len(sought) < len(copies)
    assert any(sheet_of(c).problems[0].figure != key_of(c).solutions[0].figure for c in sought)


@pytest.mark.parametrize("id", IDS)
def test_a_key_begins_with_all_that_is_drawn_and_all_that_is_asked(id: str) -> None:
    copy = copy_of(id)
    (own,), (solution,) = copy.worked, key_of(copy).solutions
    letters = {id: variable.as_name for id, variable in own.case.system.variables.items()}
    given = {each.symbol: each.value for each in solution.given}
    for name, value in own.draw.values.items():
        assert given[(Math((letters[name],)),)] == (Math((value,)),)
    assert len(solution.asked) == len(own.case.system.finds) > 0
    assert all(each.name for each in solution.given)


def test_a_figure_is_drawn_once_where_nothing_in_it_is_sought() -> None:
    copy = next(c for c in map(copy_of, IDS) if not asks_for_sizes(c.problems[0].template))
    (face,) = copy.faces
    assert key_of(copy).solutions[0].figure is face.figure
