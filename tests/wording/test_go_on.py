"""That a working goes on with more digits than an answer has, where it first does."""

from __future__ import annotations

import pytest

from probgen.statics.method import TorqueForm
from probgen.working.convention import Convention
from tests.wording.own_telling import told_of

SAID = "We go on with"


def test_results_that_are_alike_are_carried_on_once() -> None:
    """The friction on the reel and the pull of its cable, both 81.79 N."""
    (said,) = [
        line.split(". ")[-1]
        for line in told_of("cable-reel-ramp", Convention(torque="components", axes="level"))
        if "We go on with" in line
    ]
    assert said == "We go on with 81.79 N, not the rounded 81.8 N."


@pytest.mark.parametrize("torque", ["angle", "arm"])
def test_it_is_said_before_the_angles_or_arms_that_are_worked_with_it(torque: TorqueForm) -> None:
    """The rope's angle, with which its angle to the hatch is told; and only there."""
    lines = told_of("cellar-hatch-rope", Convention(torque=torque), draw=3)
    (at,) = (place for place, line in enumerate(lines) if SAID in line)
    assert lines[at].endswith(". We go on with 36.87°, not the rounded 36.9°.")
    first = next(place for place, line in enumerate(lines) if "180° − 36.87°" in line)
    assert at < first < lines.index("# Torque balance")


def test_it_is_said_at_the_balance_where_no_arm_is_worked_with_it() -> None:
    lines = told_of("jetty-mooring", Convention(torque="arm"), draw=5)
    (at,) = (place for place, line in enumerate(lines) if SAID in line)
    assert lines[at].endswith("We go on with 2817.5 N, not the rounded 2.82 kN.")
    assert "# Force balance" in lines[at - 1]
