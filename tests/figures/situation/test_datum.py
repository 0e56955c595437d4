"""What stands at a length, an angle or a force in a figure."""

from __future__ import annotations

from decimal import Decimal

from probgen.figures.paper.scene import Stated
from probgen.figures.situation.datum import datum_of
from probgen.quantities.expression import Name, Number
from probgen.quantities.unit import METRE

L, T = Name("L", "L"), Name("T", "T")
LONG = Number(Decimal("1.20"), METRE)


def test_a_given_has_its_symbol_and_its_number() -> None:
    assert datum_of(L, {"L": LONG}) == Stated(L, LONG)


def test_what_is_sought_has_its_symbol_alone() -> None:
    assert datum_of(T, {"L": LONG}) == T


def test_a_number_stands_as_it_is() -> None:
    assert datum_of(LONG, {"L": LONG}) == LONG
