"""What a finding earns."""

from __future__ import annotations

from decimal import Decimal

from probgen.marking.finding import Finding
from probgen.marking.policy import Policy


def test_what_nobody_could_read_has_no_points_yet_and_never_none_silently() -> None:
    assert Policy().earned(Finding.UNREAD, 8) is None
    assert Policy().earned(Finding.UNREAD, 0) == 0  # nothing is to be decided
    assert Policy().earned(Finding.EMPTY, 8) == 0
    assert Policy().earned(Finding.CARRIED, 7) == 7
    assert Policy({Finding.UNIT: Decimal("0.25")}).earned(Finding.UNIT, 8) == 2


def test_too_few_figures_take_off_no_more_than_there_is() -> None:
    policy = Policy(figures=Decimal("0.75"))
    assert policy.earned(Finding.RIGHT, 8, few_figures=True) == 2
    assert policy.earned(Finding.SLIP, 8, few_figures=True) == 0
    assert policy.earned(Finding.RIGHT, 8) == 8
