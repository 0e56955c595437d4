"""Angles in radians have the figures they are printed with."""

import pytest

from probgen.quantities.expression import Expression, Name, number
from probgen.quantities.printing import plain
from probgen.quantities.radians import in_radians
from probgen.quantities.unit import DEGREE, NEWTON, UNITS


@pytest.mark.parametrize(
    ("angle", "printed"),
    [
        (number(180, DEGREE), "3.14159 rad"),
        (number(30, DEGREE), "0.523599 rad"),
        (number("1.25", UNITS["rad"]), "1.25000 rad"),
        (number("0.5", UNITS["turn"]), "3.14159 rad"),
        (number(180), "180"),
        (number(180, NEWTON), "180 N"),
        (Name("beta", "beta"), "β"),
    ],
)
def test_an_angle_has_six_figures_and_all_else_is_left(angle: Expression, printed: str) -> None:
    assert plain(in_radians(angle)) == printed


def test_more_figures_are_kept_once_it_has_them() -> None:
    angle = in_radians(number(180, DEGREE), 8)
    assert plain(angle) == plain(in_radians(angle)) == "3.1415927 rad"
