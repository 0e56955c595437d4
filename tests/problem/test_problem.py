"""Problems worked for whole classes: drawn, solved, proved, and told."""

from contextlib import AbstractContextManager, nullcontext

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.draws.override import with_values
from probgen.draws.requirement import requirements_hold
from probgen.input.fault import InputError
from probgen.problem.problem import Problem, draw_class, prepare, tell_steps, work
from probgen.working.convention import Convention

IDS = sorted(default_bank().files)


def problem_of(id: str) -> Problem:
    return prepare(default_bank().read(id), Convention())


def prove_class(id: str, size: int) -> None:
    """A class, every one proved and told; who shares numbers does so for want of others."""
    problem = problem_of(id)
    drawn = draw_class(problem, "proof", [f"student-{place}" for place in range(size)])
    different = len({tuple(draw.values.items()) for draw in drawn.draws})
    said = [f"{id} has room for {different} different sets of numbers only"]
    assert [remark.partition(":")[0] for remark in drawn.remarks] == said * (different < size)
    for own in work(problem, drawn.draws):
        assert max(own.residual, own.difference) < 1e-9
        assert requirements_hold(problem.template, own.case.values).all()
        assert tell_steps(problem, own)


@pytest.mark.one_in(4)
@pytest.mark.parametrize("id", IDS)
def test_a_class_is_proved_and_told(id: str) -> None:
    prove_class(id, 100)


@pytest.mark.proof
@pytest.mark.parametrize("id", IDS)
def test_a_large_class_is_proved_and_told(id: str) -> None:
    prove_class(id, 3000)


def test_nobody_draws_what_fails_its_proof() -> None:
    """A muscle behind the elbow would have to push: half of these draws are no forearms."""
    source = default_bank().read("forearm-load").source
    ahead = 'from = 3.5, to = 5.0, step = 0.1, unit = "cm"'
    assert ahead in source
    text = source.replace(ahead, 'choices = [-4.0, 4.0], unit = "cm"')
    problem = prepare(read_template(text, "own.toml"), Convention())
    draws = draw_class(problem, "spring", [str(place) for place in range(30)]).draws
    assert {str(draw.values["insertion"].value) for draw in draws} == {"4.0"}


@pytest.mark.parametrize(
    ("id", "needs"),
    [("beam-stay-cable", True), ("seesaw-two-riders", True), ("jaw-bites-nut", False)],
)
def test_g_is_told_where_a_weight_is_made_of_a_mass(id: str, needs: bool) -> None:
    """A jaw is drawn by a muscle and held by a nut, and weighs nothing."""
    assert problem_of(id).needs_gravity is needs


def test_one_at_a_time_is_as_all_together() -> None:
    problem = problem_of("beam-stay-cable")
    draws = draw_class(problem, "spring", ["ada", "bea", "cid"]).draws
    alone = [work(problem, [draw])[0].case.values for draw in draws]
    assert [worked.case.values for worked in work(problem, draws)] == alone
    assert work(problem, []) == ()


def test_what_fails_its_proof_names_values_and_reason() -> None:
    problem = problem_of("forearm-load")
    (start,) = draw_class(problem, "spring", ["ada"]).draws
    pushing, _ = with_values(problem.template, start, {"insertion": "-4.0"})
    with pytest.raises(InputError) as caught:
        work(problem, [start, pushing])
    (fault,) = caught.value.faults
    assert "comes out negative" in fault.field
    assert "insertion = −4.0 cm" in fault.found


@pytest.mark.parametrize("students", [1, 40])
def test_a_large_class_has_more_time(students: int, monkeypatch: pytest.MonkeyPatch) -> None:
    given: list[float] = []

    def within(seconds: float, *rest: object) -> AbstractContextManager[None]:
        given.append(seconds)
        return nullcontext()

    problem = problem_of("seesaw-two-riders")
    monkeypatch.setattr("probgen.problem.problem.within", within)
    draws = draw_class(problem, "time", [str(each) for each in range(students)]).draws
    work(problem, draws)
    assert given == pytest.approx([4.0 + 0.1 * students] * 2)


def test_a_situation_statics_cannot_solve_is_refused() -> None:
    source = default_bank().read("beam-stay-cable").source
    second = '[[hinge]]\nat = "F"\nsymbol = "Q"\n\n'
    held_twice = source.replace("[[hinge]]", f"{second}[[hinge]]")
    with pytest.raises(InputError, match="statics alone"):
        prepare(read_template(held_twice, "own.toml"), Convention())


def test_what_points_are_given_for_is_found_once_for_all_students() -> None:
    problem = prepare(default_bank().read("beam-stay-cable"), Convention())
    marks = problem.scheme(10)
    assert sum(mark.points for mark in marks) == 10
    assert problem.scheme(10) is marks
    assert sum(mark.points for mark in problem.scheme(7)) == 7
