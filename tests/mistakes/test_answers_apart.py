"""No answer of a supplied template is got, within full marks, by a way that is wrong."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest

from probgen.bank.bank import default_bank
from probgen.mistakes.comparison import known_of
from probgen.mistakes.unnoticed import each_answer
from probgen.mistakes.wrong_working import wrong_workings
from probgen.problem.problem import draw_class, prepare, work
from probgen.quantities.unit import SI, US_CUSTOMARY, UnitSystem
from probgen.working.convention import Convention

DRAWS = 100
MOST = 0.11
"""Of the draws: what is so in a twentieth of all is so in more of a hundred once in 230 times."""
_PASSED_OVER = ("early_rounding", "hinge_vertical_only")
"""Slips that are meant to leave answers as they are: rounding, and a component that is asked."""
HARDLY_MOVED = {
    # The joint's force stays nearly along the muscle's; a course asks its direction all the same.
    "forearm-load": {"J.direction"},
}
HARDLY_MOVED_BY = {
    # The stick bears a tenth of what the muscles pull with, and is asked itself, before them.
    "hip-walking-stick": {("arm_from_elsewhere", "F")},
}


def shares(id: str, units: UnitSystem) -> Iterator[tuple[str, str, float]]:
    """A slip, an answer it changes, and in what share of the draws it does so within full marks."""
    problem = prepare(default_bank().read(id, units), Convention(units=units))
    draws = draw_class(problem, "slips", [str(each) for each in range(DRAWS)]).draws
    digits = [own.digits for own in work(problem, draws)]
    known = known_of(digits)
    with np.errstate(invalid="ignore"):
        for wrong in wrong_workings([each.case for each in digits], problem.missteps):
            slip = wrong.misstep
            if slip.slip not in _PASSED_OVER:
                for answer, changed, within in each_answer(known, wrong):
                    share = float((changed & within).mean())
                    yield f"{slip.slip} {slip.way}".strip(), answer, share


@pytest.mark.one_in(8)
@pytest.mark.parametrize("units", [SI, US_CUSTOMARY], ids=lambda units: units.name)
@pytest.mark.parametrize("id", sorted(default_bank().files))
def test_a_wrong_way_gives_no_answer(id: str, units: UnitSystem) -> None:
    hardly, by = HARDLY_MOVED.get(id, set()), HARDLY_MOVED_BY.get(id, set())
    found = [each for each in shares(id, units) if each[1] not in hardly and each[2] > MOST]
    assert [each for each in found if each[:2] not in by] == []


def test_what_hardly_moves_is_still_so() -> None:
    """Each exception is needed."""
    for id, answers in HARDLY_MOVED.items():
        assert {answer for _, answer, share in shares(id, SI) if share > MOST} == answers
    for id, ways in HARDLY_MOVED_BY.items():
        assert {(way, answer) for way, answer, share in shares(id, SI) if share > MOST} == ways
