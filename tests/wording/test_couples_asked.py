"""Couples that are asked, and what a course that counts clockwise torques as positive is told."""

from __future__ import annotations

import pytest

from probgen.bank.bank import default_bank
from probgen.wording.couples_asked import couples_asked
from probgen.working.convention import Convention
from tests.wording.own_telling import told_of


@pytest.mark.parametrize(
    ("id", "asked"),
    [("balcony-built-in", ["M_A"]), ("beam-stay-cable", []), ("stand-roof-inside", [])],
)
def test_a_couple_of_unknown_sense_that_is_asked(id: str, asked: list[str]) -> None:
    assert [moment.id for moment in couples_asked(default_bank().read(id).system)] == asked


def test_where_torques_count_the_other_way_that_is_said() -> None:
    clockwise = Convention(positive="clockwise")
    (said,) = (line for line in told_of("balcony-built-in", clockwise) if "to the right, y" in line)
    assert said.endswith(
        "; clockwise torques are positive, but M_A counts as positive counter-clockwise."
    )
    (said,) = (line for line in told_of("balcony-built-in") if "to the right, y" in line)
    assert said.endswith("; counter-clockwise torques are positive.")
    (said,) = (line for line in told_of("forearm-load", clockwise) if "to the right, y" in line)
    assert said.endswith("; clockwise torques are positive.")


def test_a_couple_needs_no_lever_arm_which_is_said_once() -> None:
    said = [line for line in told_of("motor-torque-base") if "about every point" in line]
    assert len(said) == 1
    assert "A couple has the same torque about every point, so M counts with no" in said[0]
