"""A force that several lengths place: its torques one by one, and its one lever arm."""

from __future__ import annotations

from probgen.working.convention import Convention
from tests.wording.own_telling import told_of


def test_the_leg_by_which_a_force_turns_a_body_back_is_told() -> None:
    """Along the cabinet its weight turns it down about the lower corner; up from there, back."""
    (said,) = (line for line in told_of("box-carried-upstairs") if "legs" in line)
    assert said == (
        "The way from the pivot to W_c has two legs, L/2 and h/2; each gives a torque of its own, "
        "that of h/2 counter-clockwise."
    )


def test_the_one_lever_arm_of_two_legs_is_their_difference() -> None:
    (said,) = (
        line
        for line in told_of("box-carried-upstairs", Convention(torque="arm"))
        if "lever arm of W_c" in line
    )
    assert said.startswith(
        "On the way from the pivot to W_c, along L/2 and h/2, we go (L/2) cos θ toward its line "
        "of action and (h/2) sin θ back: the lever arm of W_c is (L/2) cos θ − (h/2) sin θ = "
    )
