"""What is oblique in the balances of a plan."""

from __future__ import annotations

from probgen.mistakes.oblique import common, letters_of, oblique_forces, spoilt_of, torques_of
from probgen.statics.system import Kind
from tests.mistakes import supplied


def test_a_ratio_that_all_terms_have_cancels() -> None:
    """About A all arms have cos theta; about C that of f_B has sin theta."""
    plan = supplied.problem("climbing-triangle").plan
    ids = {force.id for force in oblique_forces(plan)}
    cancels = {each.about: common(each, ids) for each in torques_of(plan)}
    assert cancels == {"A": True, "C": False}
    assert spoilt_of(plan, ids) == {"N_B", "f_B", "W_2"}


def test_what_is_left_right_in_such_a_balance_does_not_cancel() -> None:
    plan = supplied.problem("climbing-triangle").plan
    about_a = next(each for each in torques_of(plan) if each.about == "A")
    assert not common(about_a, {"N_B"})


def test_both_strands_of_a_rope_have_one_letter() -> None:
    forces = supplied.problem("painter-board-seat").plan.system.forces
    strands = [force for force in forces if force.kind is Kind.ROPE]
    (ids,) = letters_of(strands).values()
    assert len(ids) == len(strands) > 1
