"""The proof catches a wrong solution, whatever made it wrong."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from probgen.quantities.expression import Expression, Value, negative, number, times
from probgen.statics.cross_check import solve_all
from probgen.statics.flaw import Flaw, FlawKind
from probgen.statics.plan import Plan, find_plan
from probgen.statics.proof import TOLERANCE, prove
from probgen.statics.solution import solve
from probgen.statics.system import System

Values = dict[str, np.ndarray]


@pytest.fixture
def plan(stayed: System, beam_values: Values) -> Plan:
    return find_plan(stayed, beam_values)


def test_a_right_solution_is_proved(plan: Plan, beam_values: Values) -> None:
    """190.6 N, 146 N and -4.90 N: worked by hand from two balances and one torque balance."""
    solved = solve(plan, beam_values)
    proof = prove(plan, solved)
    assert proof.holds.all()
    assert proof.max_residual.max() < 1e-13
    assert proof.second_solver_difference.max() < 1e-12
    tension, upward = (np.asarray(solved[id])[0] for id in ("T", "R.y"))
    assert tension == pytest.approx(117.6 / (0.96 * np.sin(np.radians(40.0))), rel=1e-12)
    assert upward == pytest.approx(-4.9, rel=1e-9)


@pytest.mark.parametrize("name", ["T", "R.x", "R.y"])
@pytest.mark.parametrize("factor", [1.0 + 1e-6, -1.0, 0.0])
def test_a_changed_value_is_caught(
    plan: Plan, beam_values: Values, name: str, factor: float
) -> None:
    solved = solve(plan, beam_values)
    solved[name] = np.multiply(solved[name], factor)
    proof = prove(plan, solved)
    assert not proof.holds.any()
    assert all(Flaw(FlawKind.UNBALANCED) in fault for fault in proof.faults)
    assert all(Flaw(FlawKind.DISPUTED) in fault for fault in proof.faults)


def _halved(expression: Expression) -> Expression:
    return times(number("0.5"), expression)


@pytest.mark.parametrize("change", [negative, _halved])
@pytest.mark.parametrize("place", [0, 1, 2])
def test_a_changed_step_is_caught(
    plan: Plan, beam_values: Values, place: int, change: Callable[[Expression], Expression]
) -> None:
    step = plan.steps[place]
    wrong = replace(step, expression=change(step.expression))
    steps = (*plan.steps[:place], wrong, *plan.steps[place + 1 :])
    changed = replace(plan, steps=steps)
    assert not prove(changed, solve(changed, beam_values)).holds.any()


def test_a_cable_that_would_have_to_push_is_named(plan: Plan, beam_values: Values) -> None:
    beam_values["theta"] = np.array([-40.0, 25.0, 62.0])
    proof = prove(plan, solve(plan, beam_values))
    assert list(proof.holds) == [False, True, True]
    (flaw,) = proof.faults[0]
    assert (flaw.kind, flaw.quantity) == (FlawKind.NEGATIVE, "T")
    assert flaw.value == pytest.approx(117.6 / (0.96 * np.sin(np.radians(-40.0))))


def test_a_cable_along_the_beam_is_not_finite_or_caught(plan: Plan, beam_values: Values) -> None:
    beam_values["theta"] = np.array([0.0, 25.0, 62.0])
    with np.errstate(all="ignore"):
        proof = prove(plan, solve(plan, beam_values))
    assert list(proof.holds) == [False, True, True]


def test_the_second_solver_needs_no_plan(stayed: System, beam_values: Values, plan: Plan) -> None:
    start = np.ones((3, 3))
    found = solve_all(stayed, beam_values, start)
    solved = solve(plan, beam_values)
    expected = np.stack([solved[name] for name in stayed.unknowns], axis=1)
    assert found == pytest.approx(expected, rel=1e-10)


def test_one_draw_and_a_batch_agree(plan: Plan, beam_values: Values) -> None:
    first: dict[str, Value] = {name: float(value[0]) for name, value in beam_values.items()}
    batch = solve(plan, beam_values)
    single = solve(plan, first)
    assert {k: float(v) for k, v in single.items()} == pytest.approx(
        {k: float(np.asarray(v)[0]) for k, v in batch.items()}
    )
    assert float(prove(plan, single).max_residual[0]) < TOLERANCE
