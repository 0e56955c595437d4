"""The largest, the smallest, and whether it holds: beside numbers worked by hand.

The formulas for the cabinet and the crate stand with them in `tests.situations`.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.draws.draw import completed
from probgen.problem.problem import Problem, prepare, work
from probgen.statics.flaw import Flaw, FlawKind
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.rerun import first_limit_id
from probgen.statics.solution import solve
from probgen.statics.system import Find, Form
from probgen.working.convention import Convention
from tests.situations import (
    EITHER_WAY,
    HOLDS,
    SLIDES,
    SLIPS_DOWN,
    SLIPS_UP,
    SLOPE,
    TIPS,
    cabinet,
    crate,
    finding,
    system_of,
)
from tests.two_states import two_crates

LARGEST, SMALLEST = (finding("T", form) for form in ("largest", "smallest"))
PUSHED = cabinet() + SLIDES + TIPS + finding("P", "largest")
FIRST = first_limit_id(Find("P", Form.LARGEST))

DRAWS = {
    "m": np.array([60.0, 60.0, 45.0, 75.0]),
    "b": np.array([0.50, 0.50, 0.40, 0.60]),
    "h": np.array([0.90, 0.90, 1.20, 0.70]),
    "mu": np.array([0.20, 0.35, 0.30, 0.40]),
    "g": np.full(4, 9.8),
}


def slipping() -> dict[str, np.ndarray]:
    """Data of three crates, and by hand the pulls at which they slip down and up."""
    m, mu = np.array([50.0, 65.0, 50.0]), np.array([0.30, 0.25, 0.25])
    theta = np.array([25.0, 32.0, 32.0])
    weight, turned = m * 9.8, np.radians(theta)
    return {
        "m": m, "mu": mu, "theta": theta, "g": np.full(3, 9.8),
        "down": weight * (np.sin(turned) - mu * np.cos(turned)),
        "up": weight * (np.sin(turned) + mu * np.cos(turned)),
    }  # fmt: skip


def test_slide_or_tip_whichever_comes_first() -> None:
    plan = find_plan(system_of(PUSHED), DRAWS)
    solved = solve(plan, DRAWS)
    weight = DRAWS["m"] * 9.8
    slides, tips = DRAWS["mu"] * weight, weight * DRAWS["b"] / (2.0 * DRAWS["h"])
    assert np.asarray(solved["P"]) == pytest.approx(np.minimum(slides, tips), rel=1e-12)
    assert list(np.asarray(solved[FIRST])) == list((tips < slides) * 1.0)
    assert set(np.asarray(solved[FIRST])) == {0.0, 1.0}
    assert prove(plan, solved).holds.all()


def test_what_the_comparison_does_without_comes_last_on_the_way_to_a_limit() -> None:
    text = PUSHED + finding("x")
    plan = find_plan(system_of(text), DRAWS)
    slides, tips = plan.branches
    assert [step.unknown for step in slides.compared] == ["N", "f", "P"]
    assert [step.unknown for step in slides.afterwards] == ["x"]
    assert [step.unknown for step in tips.compared] == ["x", "P"]
    assert not tips.afterwards
    assert len(plan.steps_before(tips)) == 5
    assert len(plan.steps_before(slides)) == 6


def test_what_is_so_at_any_limit_is_known_at_all() -> None:
    """The floor bears the weight whatever comes first; the friction is at its limit on one way."""
    slides, tips = (plan := find_plan(system_of(PUSHED + finding("x")), DRAWS)).branches
    assert plan.found_anyway(tips) == {"N"}
    assert plan.found_anyway(slides) == set()


def test_the_only_limit_is_worked_to_with_all_that_is_asked() -> None:
    (only,) = find_plan(system_of(cabinet() + SLIDES + finding("P", "largest") + finding("x")),
                        DRAWS).branches  # fmt: skip
    assert not only.afterwards
    assert "x" in {step.unknown for step in only.compared}


def test_everything_else_is_at_the_limit_reached() -> None:
    """Sliding: f = mu N and x = b/2 + mu h; tipping: x = b."""
    plan = find_plan(system_of(PUSHED), DRAWS)
    solved = prove(plan, solve(plan, DRAWS)).values
    tipped = np.asarray(solved[FIRST]) == 1.0
    b, h, mu = DRAWS["b"], DRAWS["h"], DRAWS["mu"]
    assert np.asarray(solved["x"]) == pytest.approx(np.where(tipped, b, b / 2.0 + mu * h))
    assert np.asarray(solved["f"]) == pytest.approx(np.asarray(solved["P"]))


def test_the_proof_finds_a_limit_that_is_passed() -> None:
    plan = find_plan(system_of(PUSHED), DRAWS)
    solved = solve(plan, DRAWS)
    first = np.asarray(solved[FIRST])
    later = [solve(branch.plan, DRAWS) for branch in plan.branches]
    wrong = {
        name: np.where(first == 0.0, later[1][name], later[0][name])
        for name in later[0].keys() & later[1].keys()
    }
    proof = prove(plan, {**wrong, FIRST: 1.0 - first})
    assert not proof.holds.any()
    passed = [Flaw(FlawKind.PASSED, limit=branch.limit.id) for branch in plan.branches]
    assert all(passed[int(by)] in fault for by, fault in zip(first, proof.faults, strict=True))


@pytest.mark.parametrize(
    ("limits", "find", "wanted"),
    [
        (SLIPS_UP, LARGEST, "up"),
        (SLIPS_DOWN, SMALLEST, "down"),
        (SLIPS_UP + SLIPS_DOWN, LARGEST, "up"),
        (SLIPS_DOWN + SLIPS_UP, LARGEST, "up"),
        (SLIPS_UP + SLIPS_DOWN, SMALLEST, "down"),
        (SLIPS_DOWN + SLIPS_UP, SMALLEST, "down"),
    ],
    ids=["up", "down", "up of both", "up of both, turned", "down of both", "down of both, turned"],
)
def test_a_limit_counts_on_its_side_only(limits: str, find: str, wanted: str) -> None:
    """What is reached when the pull shrinks does not bound it from above."""
    data = slipping()
    given = {name: data[name] for name in ("m", "mu", "theta", "g")}
    plan = find_plan(system_of(crate() + SLOPE + limits + find), given)
    solved = solve(plan, given)
    assert np.asarray(solved["T"]) == pytest.approx(data[wanted], rel=1e-12)
    (asked,) = plan.system.finds
    places = np.asarray(solved[first_limit_id(asked)])
    assert {plan.branches_to(asked)[int(place)].limit.id for place in places} == {wanted}


def test_a_limit_from_the_other_side_is_not_worked_to() -> None:
    data = slipping()
    given = {name: data[name] for name in ("m", "mu", "theta", "g")}
    for limits in (SLOPE + SLIPS_UP + SLIPS_DOWN, SLOPE + EITHER_WAY):
        plan = find_plan(system_of(crate() + limits + LARGEST), given)
        assert len(plan.branches) == 1


def test_between_which_pulls_it_stays() -> None:
    """The least pull of one state and the largest of another, each before limits of its own."""
    data = slipping()
    given = {name: data[name] for name in ("m", "mu", "theta", "g")}
    plan = find_plan(system_of(two_crates()), given)
    solved = solve(plan, given)
    assert np.asarray(solved["T"]) == pytest.approx(data["down"], rel=1e-12)
    assert np.asarray(solved["T_2"]) == pytest.approx(data["up"], rel=1e-12)
    assert prove(plan, solved).holds.all()
    assert not prove(plan, {**solved, "T_2": 1.01 * np.asarray(solved["T_2"])}).holds.any()
    assert not prove(plan, {**solved, "T": 0.99 * np.asarray(solved["T"])}).holds.any()


@pytest.mark.parametrize(
    ("find", "wanted"), [(LARGEST, "up"), (SMALLEST, "down")], ids=["largest", "smallest"]
)
def test_friction_that_may_point_either_way(find: str, wanted: str) -> None:
    """|f| <= mu N, as a rough contact below its limit states it."""
    data = slipping()
    given = {name: data[name] for name in ("m", "mu", "theta", "g")}
    plan = find_plan(system_of(crate() + SLOPE + EITHER_WAY + find), given)
    assert np.asarray(solve(plan, given)["T"]) == pytest.approx(data[wanted], rel=1e-12)


def problem_of(pull: str) -> Problem:
    return prepare(
        read_template(crate(pull) + SLOPE + EITHER_WAY + HOLDS, "own.toml"), Convention()
    )


@pytest.mark.parametrize(
    ("pull", "holds"), [("60 N", 0.0), ("80 N", 1.0), ("330 N", 1.0), ("350 N", 0.0)]
)
def test_whether_it_holds(pull: str, holds: float) -> None:
    """50 kg, 25 degrees, 0.30: by hand it holds from 73.9 N to 340.3 N."""
    problem = problem_of(pull)
    chosen = {given.id: given.choices[0] for given in problem.template.givens}
    chosen["m"], chosen["mu"] = (
        next(c for c in given.choices if float(c) in (50.0, 0.3))
        for given in problem.template.givens[:2]
    )
    (own,) = work(problem, [completed(problem.template, chosen)])
    (answer,) = own.answers
    assert (answer.id, answer.value) == ("f.limit", holds)


@pytest.mark.parametrize(("pull", "spare"), [("80 N", 6.14), ("60 N", 13.9), ("330 N", 10.3)])
def test_the_margin_is_how_far_friction_is_from_its_largest(pull: str, spare: float) -> None:
    """By hand: | |W sin theta - T| - mu W cos theta |, in newtons."""
    weight, turned = 490.0, math.radians(25.0)
    friction = weight * math.sin(turned) - float(pull.split()[0])
    by_hand = abs(abs(friction) - 0.3 * weight * math.cos(turned))
    assert by_hand == pytest.approx(spare, abs=0.05)
    problem = problem_of(pull)
    chosen = {"m": "50.0", "mu": "0.30", "theta": "25"}
    values = {
        given.id: next(c for c in given.choices if str(c) == chosen[given.id])
        for given in problem.template.givens
    }
    (own,) = work(problem, [completed(problem.template, values)])
    assert f"{spare} N" in own.answers[0].printed


def test_a_limit_at_zero_is_reached_and_not_passed() -> None:
    """The distance counted from the edge the cabinet tips about: zero where it does, but for what
    rounding leaves of it.
    """
    from_edge = PUSHED.replace('Q = ["x", 0]', 'Q = ["b - x", 0]').replace("x <= b", "x >= 0 m")
    random = np.random.default_rng(7)
    ranges = {"m": (40, 90), "b": (0.6, 0.8), "h": (1.2, 1.5), "mu": (0.2, 0.5), "g": (9.8, 9.81)}
    draws = {id: np.round(random.uniform(*ends, 400), 2) for id, ends in ranges.items()}
    sliding = draws["mu"] * draws["m"] * draws["g"]
    tipping = draws["m"] * draws["g"] * draws["b"] / (2.0 * draws["h"])
    for text in (PUSHED, from_edge):
        plan = find_plan(system_of(text), draws)
        solved = solve(plan, draws)
        assert solved["P"] == pytest.approx(np.minimum(sliding, tipping))
        proof = prove(plan, solved)
        assert proof.faults == ((),) * 400
