"""What an assignment file names: a template worked about a point of the course's choice."""

import pytest

from probgen.bank.bank import default_bank
from probgen.input.fault import InputError
from probgen.problem.lookup import with_pivot
from probgen.problem.problem import prepare
from probgen.working.convention import Convention

BEAM = default_bank().read("beam-stay-cable")


def test_no_pivot_leaves_the_template_as_it_is() -> None:
    assert with_pivot(BEAM, "", "assignment.toml", "problem[0].pivot") is BEAM


def test_a_named_pivot_is_the_only_one_torques_are_taken_about() -> None:
    plan = prepare(with_pivot(BEAM, "C", "assignment.toml", "problem[0].pivot"), Convention()).plan
    assert set(plan.pivots) == {"C"}
    assert set(prepare(BEAM, Convention()).plan.pivots) == {"A"}


def test_a_pivot_that_is_no_point_is_told_with_the_points() -> None:
    with pytest.raises(InputError) as caught:
        with_pivot(BEAM, "Q", "assignment.toml", "problem[2].pivot")
    (fault,) = caught.value.faults
    assert (fault.file, fault.field, fault.found) == ("assignment.toml", "problem[2].pivot", "Q")
    assert fault.expected == "one of the points A, C, D, E, F"
