"""What is asked is known without numbers, and results follow it."""

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.problem import draw_class, prepare, work
from probgen.working.convention import Convention
from probgen.working.result import ResultKind, target_of, targets
from tests.situations import FIND_R, HINGED, SHELF, STAYED, finding, worked

BANK = default_bank()


@pytest.mark.one_in(2)
@pytest.mark.parametrize("id", sorted(BANK.files))
def test_answers_are_of_the_targets_whatever_was_drawn(id: str) -> None:
    problem = prepare(BANK.read(id), Convention())
    asked = targets(problem.plan, problem.template.labels)
    due = [(t.id, t.kind, t.symbol, t.asked) for t in asked]
    for own in work(problem, draw_class(problem, "result", ["ada", "bea"]).draws):
        assert [(a.id, a.kind, a.symbol, a.asked) for a in own.answers] == due


def test_components_are_told_beside_a_magnitude_and_direction() -> None:
    problem = prepare(BANK.read("beam-stay-cable"), Convention())
    found = {t.id: (t.kind, t.asked) for t in targets(problem.plan, problem.template.labels)}
    assert found == {
        "T": (ResultKind.QUANTITY, True),
        "R.magnitude": (ResultKind.MAGNITUDE, True),
        "R.direction": (ResultKind.DIRECTION, True),
        "R.x": (ResultKind.QUANTITY, False),
        "R.y": (ResultKind.QUANTITY, False),
    }


def test_what_happens_first_is_asked_where_there_are_several_limits() -> None:
    for id, several in (("cabinet-slide-or-tip", True), ("trough-ramp-winch", False)):
        problem = prepare(BANK.read(id), Convention())
        kinds = {target.kind for target in targets(problem.plan, problem.template.labels)}
        assert (ResultKind.LIMIT in kinds) == several


def test_every_answer_is_of_something() -> None:
    template = BANK.read("trough-ramp-winch")
    found = target_of(template.system, template.labels, "T_1")
    assert found is not None
    assert (found.kind, found.owner) == (ResultKind.QUANTITY, "T_1")
    assert target_of(template.system, template.labels, "T_1.limit") is not None
    assert target_of(template.system, template.labels, "T_3") is None


@pytest.mark.parametrize("components_first", [True, False])
def test_a_force_asked_by_both_is_answered_once(components_first: bool) -> None:
    parts = finding("R", "components")
    _, own = worked(
        SHELF + HINGED + STAYED + (parts + FIND_R if components_first else FIND_R + parts)
    )
    whole, both = ["R.magnitude", "R.direction"], ["R.x", "R.y"]
    assert [a.id for a in own.answers] == (both + whole if components_first else whole + both)
    assert all(answer.asked for answer in own.answers)
