"""Lengths across are worked out once, before the balance that first holds them."""

from __future__ import annotations

import pytest

from probgen.working.convention import Convention
from tests.wording.own_telling import told_of

METHODS = [
    Convention(),
    Convention(torque="arm"),
    Convention(torque="components", order="forces first"),
]


@pytest.mark.parametrize("method", METHODS, ids=lambda method: method.torque)
def test_a_length_across_is_worked_out_once(method: Convention) -> None:
    """The strut of the first draw, 0.70 m along and 0.40 m down: 0.8062 m."""
    lines = told_of("sign-arm-strut", method)
    worked = [line for line in lines if "√(d² + h²) = √((0.70 m)² + (0.40 m)²)" in line]
    assert len(worked) == 1
    after = lines[lines.index(worked[0]) :]
    assert after[0].endswith("0.8062 m") or after[1].strip() == "= 0.8062 m"
    assert not any("0.8062 m)" in line for line in lines[: lines.index(worked[0])])
    assert any("First the length of the slanting line:" in line for line in lines)
