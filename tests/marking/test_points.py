"""What a finding earns."""

from decimal import Decimal

from probgen.marking.finding import Finding
from probgen.marking.points import Policy


def test_what_nobody_could_read_has_no_points_yet_and_never_none_silently() -> None:
    assert Policy().earned(Finding.UNREAD, 8) is None
    assert Policy().earned(Finding.EMPTY, 8) == 0
    assert Policy().earned(Finding.CARRIED, 7) == 7
    assert Policy({Finding.UNIT: Decimal("0.25")}).earned(Finding.UNIT, 8) == 2
