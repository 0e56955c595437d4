"""Sums of numbers are printed without zeros and without double minus signs."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import Expression, Product, Quotient, Sum, number, total
from probgen.quantities.printed_sum import tidied
from probgen.quantities.printing import plain
from probgen.quantities.unit import UNITS

FORCE, LENGTH = UNITS["N"], UNITS["m"]
PUSH, NONE = number(-8, FORCE), number(0, FORCE)
ARM = number(2, LENGTH)
TURNED = Product((PUSH, ARM))


@pytest.mark.parametrize(
    ("written", "printed"),
    [
        (total((-1, TURNED)), "(8 N)(2 m)"),
        (total((1, TURNED)), "(−8 N)(2 m)"),
        (total((1, number(5, FORCE)), (-1, PUSH)), "5 N + 8 N"),
        (total((1, number(5, FORCE)), (1, PUSH)), "5 N + (−8 N)"),
        (total((-1, Quotient(TURNED, ARM))), "(8 N)(2 m)/(2 m)"),
        (Quotient(total((-1, TURNED)), ARM), "(8 N)(2 m)/(2 m)"),
        (total((1, TURNED), (-1, Product((NONE, ARM)))), "(−8 N)(2 m)"),
        (Sum(((-1, NONE),)), "0 N"),
    ],
)
def test_sums_of_numbers(written: Expression, printed: str) -> None:
    assert plain(tidied(written)) == printed
