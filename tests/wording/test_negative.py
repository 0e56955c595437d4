"""What the sign of a result means, told below it."""

from __future__ import annotations

from tests.wording.own_telling import told_of


def test_a_force_that_had_to_act_the_other_way_is_negative_as_expected() -> None:
    """The joint of a held forearm pushes it down."""
    (said,) = (line for line in told_of("forearm-load") if "is negative" in line)
    assert said == "J_y is negative, as expected: this part of the force acts straight down."


def test_a_member_pulls_or_pushes() -> None:
    said = [line for line in told_of("wall-bracket-board") if ": member" in line]
    assert said == [
        "F_CE is negative: member CE is in compression.",
        "F_AE is positive: member AE is in tension.",
        "F_DE is negative: member DE is in compression.",
    ]


def test_what_is_reasoned_of_bodies_taken_as_one_is_expected_there_too() -> None:
    """About A the stepladder's weights leave the strap's pull to the right side alone."""
    said = [line for line in told_of("stepladder-tie") if "is negative" in line]
    assert said == ["R_x is negative, as expected: this part of the force acts to the left."]
