"""Variants of a plan, on the shelf worked by hand: T = 117.6 N m/(0.96 m sin 40°) = 190.58 N."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from probgen.mistakes import variant
from probgen.mistakes.variant import (
    Misstep,
    axis_of,
    on_terms,
    own_weights,
    renamed,
    replaced,
    restated,
    rewritten,
    with_sign_of,
    workable,
    wrong_values,
)
from probgen.quantities.expression import Name, evaluate, number
from probgen.quantities.unit import METRE
from probgen.statics.equation import Term
from probgen.statics.plan import Plan
from tests.situations import BRACKET, HEAD, STAYED_SHELF, worked

SINE, COSINE = math.sin(math.radians(40.0)), math.cos(math.radians(40.0))
_, OWN = worked(STAYED_SHELF)
PLAN = OWN.case.plan
DATA = {id: OWN.case.values[id] for id in OWN.case.numbers}


def values(plan: Plan | None, figures: int = 0) -> dict[str, float]:
    assert plan is not None
    found = wrong_values(Misstep("own", plan, figures=figures), DATA)
    return {id: float(value) for id, value in found.items()}


def test_the_plan_itself_is_right() -> None:
    assert values(PLAN)["T"] == pytest.approx(117.6 / (0.96 * SINE))
    assert workable(PLAN)


def test_a_term_left_out_of_torques_alone() -> None:
    """Without its own weight T d sin 40° = 94.08 N m; the sum of forces still has it."""
    found = values(rewritten(PLAN, on_terms(lambda term: None, "torque", ("W_s",))))
    assert found["T"] == pytest.approx(94.08 / (0.96 * SINE))
    assert found["R.y"] == pytest.approx(117.6 - 94.08 / 0.96)


def test_a_term_left_out_everywhere() -> None:
    found = values(rewritten(PLAN, on_terms(lambda term: None, sources=("W_s",))))
    assert found["R.y"] == pytest.approx(78.4 - 94.08 / 0.96)


def test_nothing_touched_is_no_variant() -> None:
    assert rewritten(PLAN, on_terms(lambda term: term)) is None
    assert rewritten(PLAN, on_terms(lambda term: None, sources=("none",))) is None


def test_what_cannot_be_solved_any_more_is_none() -> None:
    assert rewritten(PLAN, on_terms(lambda term: None, "torque", ("T",))) is None


def test_a_rope_that_pushes_is_no_result_and_nothing_follows_from_it() -> None:
    """With its torque turned T is -190.58 N, which is not 190.58 N; the joint goes on from it."""

    def turned(term: Term) -> Term:
        return replace(term, sign=-term.sign)

    found = values(rewritten(PLAN, on_terms(turned, "torque", ("T",))))
    assert found["W_s"] == pytest.approx(39.2)
    assert np.isnan([found[id] for id in ("T", "R.x", "R.y", "R.magnitude")]).all()


def test_another_quantity_in_the_place_of_one() -> None:
    """d for L throughout: T sin 40° = 39.2 N/2 + 78.4 N."""
    found = values(renamed(PLAN, {"L": Name("d", "d")}))
    assert found["T"] == pytest.approx((39.2 / 2 + 78.4) / SINE)
    in_definitions = values(renamed(PLAN, {"g": number(1)}))
    assert in_definitions["W_s"] == pytest.approx(4.0)
    assert in_definitions["T"] == pytest.approx(12.0 / (0.96 * SINE))
    assert renamed(PLAN, {"q": number(1, METRE)}) is None


def test_a_step_taken_from_elsewhere_is_gone_on_with() -> None:
    found = values(replaced(PLAN, "T", number(100)))
    assert found["T"] == 100.0
    assert found["R.x"] == pytest.approx(100.0 * COSINE)


def test_a_result_put_together_otherwise_at_the_end() -> None:
    found = values(restated(PLAN, {"R.magnitude": Name("R.x", "R_x")}))
    assert found["R.magnitude"] == pytest.approx(found["R.x"])
    found = values(restated(PLAN, {"R.x": number(30), "R.y": number(40)}))
    assert found["R.magnitude"] == pytest.approx(50.0)


def test_intermediate_results_cut_to_figures() -> None:
    """To two figures T is 190 N, and R_x = 190 N cos 40°."""
    assert values(PLAN, figures=2)["R.x"] == pytest.approx(190.0 * COSINE)


def test_a_step_stands_behind_those_it_uses() -> None:
    """T comes before the components of R, which use it; where nothing can be first all stays."""
    assert variant._in_order(tuple(reversed(PLAN.steps)))[0].unknown == "T"
    assert variant._in_order(PLAN.steps) == PLAN.steps
    circle = (*PLAN.steps[1:], replace(PLAN.steps[0], expression=Name("T", "T")))
    assert variant._in_order(circle) == circle


def test_lines_use_only_what_is_known_before_them() -> None:
    assert not workable(replace(PLAN, steps=PLAN.steps[::-1]))
    assert not workable(replace(PLAN, definitions=()))


@pytest.mark.parametrize(("right", "wrong", "value"), [(-0.5, 0.8, -0.8), (0.5, -0.8, 0.8)])
def test_only_the_size_is_mistaken(right: float, wrong: float, value: float) -> None:
    mistaken = with_sign_of(number(str(right)), number(str(wrong)))
    assert float(evaluate(mistaken, {})) == pytest.approx(value)


def test_what_rules_ask_of_a_system() -> None:
    assert [force.id for force in own_weights(PLAN.system)] == ["W_s"]
    (shelf,) = PLAN.system.bodies
    axis = axis_of(PLAN.system, shelf)
    assert axis is not None
    assert float(evaluate(axis, DATA)) == 0.0
    bracket = worked(BRACKET)[1].case.system
    assert axis_of(bracket, bracket.bodies[0]) is None  # bent


BOTH_ROUGH = (
    HEAD
    + """
[given]
L = { name = "length", choices = [2.4], unit = "m" }
m = { name = "mass", choices = [6], unit = "kg" }
theta = { name = "slope", choices = [58], unit = "deg" }
[unknown]
mu = { name = "coefficient of friction", unit = "1", from = 0, to = 1 }
[points]
A = [0, 0]
B = { from = "A", distance = "L", direction = "theta" }
[body.board]
along = ["A", "B"]
[[weight]]
uniform = true
mass = "m"
[[rough]]
at = "A"
name = "floor"
normal = "N_1"
friction = "f_1"
direction = 90
friction_direction = 0
coefficient = "mu"
[[rough]]
at = "B"
name = "wall"
normal = "N_2"
friction = "f_2"
direction = 180
friction_direction = 90
coefficient = "mu"
[[find]]
quantity = "mu"
"""
)


def test_a_slip_that_takes_too_much_work_is_dropped_and_the_others_are_found() -> None:
    """Five equations together: what a slip makes of them often has no root in short.

    By hand tan theta = (1 - mu^2)/(2 mu), so mu = (1 - sin theta)/cos theta.
    """
    problem, own = worked(BOTH_ROUGH)
    sine, cosine = math.sin(math.radians(58.0)), math.cos(math.radians(58.0))
    assert own.case.values["mu"] == pytest.approx((1.0 - sine) / cosine)
    assert problem.missteps
