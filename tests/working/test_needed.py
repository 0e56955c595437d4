"""What answers are worked out from, and that a balance no answer needs earns nothing."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import ZERO
from probgen.working.criteria import criteria
from probgen.working.needed import needed_for
from tests.working.test_scheme import USUAL, problem


def test_what_an_answer_is_worked_out_from_is_found_through_all_that_leads_to_it() -> None:
    plan = problem("beam-stay-cable").plan
    needed = [needed_for(plan, find) for find in plan.system.finds]
    assert "T" in needed[0]
    assert {"R.x", "R.y", "T"} <= needed[-1]


@pytest.mark.parametrize("id", ["footbridge-truss-crowd", "roof-truss-snow"])
def test_a_force_found_to_be_zero_that_nothing_comes_from_earns_nothing(id: str) -> None:
    plan = problem(id).plan
    assert "R.x" in {step.unknown for step in plan.steps}
    assert "R.x" not in {each.quantity for each in criteria(plan, USUAL)}


def test_a_part_that_is_zero_earns_where_the_whole_force_is_asked() -> None:
    plan = problem("diving-board").plan
    assert [step.unknown for step in plan.steps if step.expression == ZERO] == ["R.x"]
    assert "R.x" in {each.quantity for each in criteria(plan, USUAL)}
