"""Distances in the place of arms, and what is left out of a balance, with numbers worked by hand.

Each formula has the data of the draw in coherent units.
"""

from __future__ import annotations

from math import cos, hypot, radians, sin

import pytest

from probgen.mistakes.comparison import likely
from probgen.mistakes.variant import Misstep, wrong_values
from probgen.quantities.expression import Name
from tests.mistakes.supplied import problem, told, works
from tests.mistakes.test_templates import Data


def made(name: str, slip: str, way: str = "") -> list[Misstep]:
    every = [each for own in problem(name).missteps for each in own]
    return [each for each in every if (each.slip, each.way) == (slip, way)]


def given(name: str) -> list[Data]:
    return [Data({id: own.case.values[id] for id in own.case.numbers}) for own in works(name)]


def test_the_distance_over_two_legs_is_taken_for_an_arm() -> None:
    """A head's weight a in front of its joint and c above: W sqrt(a^2 + c^2) = F b cos(alpha)."""
    (slipped,) = made("head-over-phone", "distance_not_perpendicular", "one")
    assert [slipped.parts[end] for end in "AP"] == [Name("O", "O"), Name("C", "C")]
    for d in given("head-over-phone"):
        torque = d.head_mass * d.g * hypot(d.head_at, d.head_up)
        expected = torque / (d.muscle_at * cos(radians(d.muscle_angle)))
        assert float(wrong_values(slipped, d.values_by_id)["F"]) == pytest.approx(expected)
    assert all(each[0].misstep is slipped for each in map(likely, told("head-over-phone")))


def test_a_distance_from_elsewhere_is_taken_for_an_arm() -> None:
    """A stick c from the hip, torques about muscles a away: S c = W (a + b) - k W a."""
    stick, *others = made("hip-walking-stick", "arm_from_elsewhere")
    assert stick.parts["d"] == Name("stick_at", "c")
    assert [each.parts["d"] for each in others] == [Name("weight_at", "b")]
    for d in given("hip-walking-stick"):
        weight = d.upper_mass * d.g
        torque = weight * (d.muscle_at + d.weight_at) - d.ratio * weight * d.muscle_at
        found = float(wrong_values(stick, d.values_by_id)["S"])
        assert found == pytest.approx(torque / d.stick_at)
    assert all(stick in [s.misstep for s in likely(each)] for each in told("hip-walking-stick"))


def test_a_place_that_is_sought_is_no_arm_that_a_statement_tells() -> None:
    """A strap's place x is asked, and stands in every arm about it."""
    assert made("leg-traction", "arm_from_elsewhere") == []


def test_friction_that_is_sought_is_left_out_of_its_balance() -> None:
    """A reel on a ramp held by its cable: T = W sin(theta), and f nothing."""
    (smooth,) = made("cable-reel-ramp", "friction_left_out")
    for d in given("cable-reel-ramp"):
        found = wrong_values(smooth, d.values_by_id)
        assert float(found["T"]) == pytest.approx(d.mass * d.g * sin(radians(d.theta)))
        assert float(found["f"]) == pytest.approx(0.0, abs=1e-9)


def test_a_pull_along_the_boom_turns_nothing_and_is_forgotten() -> None:
    """T = W_n of a derrick left out: R_x = S, which is right for S, and R_y = W_n + W_b."""
    (forgotten,) = made("derrick-hoist-rope", "pull_left_out")
    for d, slips in zip(given("derrick-hoist-rope"), told("derrick-hoist-rope"), strict=True):
        found = wrong_values(forgotten, d.values_by_id)
        assert float(found["R.y"]) == pytest.approx((d.load_mass + d.boom_mass) * d.g)
        assert float(found["R.x"]) == pytest.approx(float(found["S"]))
        (own,) = [each for each in likely(slips) if each.misstep is forgotten]
        assert (own.answer, own.origin) == ("R.y", False)


def test_a_rope_counted_once_is_told_although_the_board_would_have_to_pull() -> None:
    """T is all the weight, more than the worker's own: N = W_w - T is below nothing."""
    seen = 0
    for d, slips in zip(given("painter-board-seat"), told("painter-board-seat"), strict=True):
        weight = (d.worker_mass + d.board_mass + d.pot_mass) * d.g
        own = {each.answer: each.value for each in slips if each.id == "one_strand"}
        assert own == {"T": pytest.approx(weight)}
        if weight > 1.1 * d.worker_mass * d.g:  # else it is near T = W_w, which is told then
            assert "one_strand" in [each.id for each in likely(slips)]
            seen += 1
    assert seen


def test_a_fraction_upside_down_is_rare() -> None:
    """Only where there are not two others."""
    (turned,) = made("cable-reel-ramp", "mu_inverted")
    assert turned.unlikely
    for each in map(likely, told("cable-reel-ramp")):
        assert "mu_inverted" not in [slip.id for slip in each]
