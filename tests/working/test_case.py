"""A solved problem: what is zero but for the rounding of floats is zero."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.labels import Labels
from probgen.problem.problem import Worked, draw_class, prepare, work
from probgen.working.case import case_of
from probgen.working.convention import Convention
from probgen.working.digits import Digits


@pytest.fixture(scope="module")
def own() -> Worked:
    """A beam on a hinge and a cable, of one student."""
    problem = prepare(default_bank().read("beam-stay-cable"), Convention())
    return work(problem, draw_class(problem, "case", ["ada"]).draws)[0]


@pytest.mark.parametrize(("found", "kept"), [(1e-12, 0.0), (-1e-12, 0.0), (1e-6, 1e-6), (5.0, 5.0)])
def test_a_force_far_below_the_largest_is_none(own: Worked, found: float, kept: float) -> None:
    """The largest force is 500 N: below 5e-9 N only rounding is left."""
    solved = {**own.case.values, "T": 500.0, "R.y": found}
    case = case_of(own.case.plan, own.case.labels, own.case.numbers, solved)
    assert case.values["R.y"] == kept
    assert case.values["T"] == 500.0


@pytest.mark.parametrize(("found", "kept"), [(5.6e-15, 0.0), (-1e-12, 0.0), (1e-6, 1e-6)])
def test_an_angle_that_only_rounding_keeps_from_zero_is_none(
    own: Worked, found: float, kept: float
) -> None:
    solved = {**own.case.values, "cable_angle": found}
    case = case_of(own.case.plan, own.case.labels, own.case.numbers, solved)
    assert case.values["cable_angle"] == kept


def test_lengths_are_kept_however_small(own: Worked) -> None:
    id = next(id for id in own.draw.values if id not in own.case.system.unknowns)
    case = case_of(own.case.plan, own.case.labels, own.case.numbers, {**own.case.values, id: 1e-30})
    force = case.system.variables[id].dimension == case.system.variables["T"].dimension
    assert case.values[id] == (0.0 if force else 1e-30)


@pytest.mark.parametrize(
    ("across", "up", "degrees"), [(3.0, 3.0, 45.0), (-3.0, 3.0, 135.0), (0.0, -2.0, -90.0)]
)
def test_a_direction_follows_its_components(
    own: Worked, across: float, up: float, degrees: float
) -> None:
    solved = {**own.case.values, "R.x": across, "R.y": up}
    case = case_of(own.case.plan, own.case.labels, own.case.numbers, solved)
    assert case.values["R.direction"] == pytest.approx(degrees)


def test_forces_without_a_value_are_passed_over(own: Worked) -> None:
    """A working that asks for T alone finds no R."""
    solved = {id: v for id, v in own.case.values.items() if not id.startswith("R")}
    plan = replace(own.case.plan, outcomes=())
    case = case_of(plan, Labels({}, {}, {}, {}, {}, {}), {}, solved)
    assert case.values == solved


def test_data_are_what_the_statement_gives(own: Worked) -> None:
    digits = Digits(own.case, Convention())
    assert all(digits.is_data(id) for id in (*own.draw.values, "g"))
    assert not any(digits.is_data(id) for id in own.case.system.unknowns)


def test_what_no_force_acts_on_is_idle(own: Worked) -> None:
    forces = {force.id for force in own.case.system.forces} & own.case.values.keys()
    without = {**own.case.values, **dict.fromkeys(forces, 0.0)}
    assert not own.case.is_idle
    assert replace(own.case, values=without).is_idle
