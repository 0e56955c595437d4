"""Numbers of what acts inside a body: units, digits, and the points they stand at."""

from __future__ import annotations

import pytest

from probgen.quantities.printing import plain
from probgen.statics.internal_forces import Inside
from probgen.wording.inside import plain_value, point_at, unit_of
from tests.bank.test_section import ON_TWO
from tests.wording.test_diagram import ASKED, DOWN, EVEN, ONE, worked


@pytest.mark.parametrize(("x", "point"), [(0.0, "A"), (1.5, "C"), (6.0, "B"), (3.0, "")])
def test_the_point_at_a_place(x: float, point: str) -> None:
    _, own = worked(ONE + ON_TWO + DOWN + EVEN + ASKED)
    assert point_at(own.digits, own.inside[0], x) == point


def test_values_have_the_course_s_figures_and_no_unit() -> None:
    _, own = worked(ONE + ON_TWO + DOWN + EVEN + ASKED)
    told = [plain(plain_value(own.digits, of, 1417.5)) for of in Inside]
    assert told == ["1420", "1420", "1420"]
    assert [unit_of(own.digits, of).plain for of in Inside] == ["N", "N", "N·m"]
