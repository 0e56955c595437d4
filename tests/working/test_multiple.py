"""Answers in multiples of their units."""

from __future__ import annotations

from decimal import Decimal

import pytest

from probgen.quantities.expression import Number
from probgen.quantities.printing import plain
from probgen.quantities.unit import UNITS
from probgen.working.multiple import figures_shown, in_one_of

# By hand.
SHOWN = [
    ("1.20E+3", "N", "1.20 kN"),
    ("1204", "N", "1204 N"),
    ("8E+2", "N", "0.8 kN"),
    ("1.31E+4", "N*m", "13.1 kN·m"),
    ("1.24E+6", "N", "1.24 MN"),
    ("1.2E+2", "cm", "1.2 m"),
    ("1.2E+3", "lbf", "1.2 kip"),
    ("1.2E+3", "kg", "1.2 × 10³ kg"),
]


@pytest.mark.parametrize(("digits", "unit", "shown"), SHOWN)
def test_a_last_zero_never_only_fills_a_place(digits: str, unit: str, shown: str) -> None:
    assert plain(figures_shown(Number(Decimal(digits), UNITS[unit]))) == shown


# By hand: a tenth of the multiple is the least that is written in it.
BESIDE = [
    ("748", "N", "kN", "0.748 kN"),
    ("-220", "N", "kN", "−0.220 kN"),
    ("99.9", "N", "kN", "99.9 N"),
    ("748", "N", "kip", "748 N"),
    ("748", "N", "MN", "748 N"),
    ("1.24", "kN", "kN", "1.24 kN"),
    ("340", "mm", "m", "0.340 m"),
    ("0", "N", "kN", "0 kN"),
]


@pytest.mark.parametrize(("digits", "unit", "multiple", "shown"), BESIDE)
def test_what_stands_beside_a_multiple_is_in_it(
    digits: str, unit: str, multiple: str, shown: str
) -> None:
    number = Number(Decimal(digits), UNITS[unit])
    assert plain(in_one_of({UNITS[multiple]}, number)) == shown
