"""Like terms: joined as one does it by hand, without changing a value."""

from decimal import Decimal

import pytest

from probgen.quantities.expression import (
    Expression,
    Name,
    Number,
    Quotient,
    Sum,
    evaluate,
    number,
    over,
    times,
    total,
)
from probgen.quantities.like_terms import collected, collected_sum
from probgen.quantities.printing import plain
from probgen.quantities.unit import METRE

L, D, W = (Name(n, n) for n in "LdW")
HALF = over(L, number(2))
P6, P3 = (Number(Decimal(value), METRE) for value in ("0.6", "0.3"))
VALUES = {"L": 3.7, "d": 1.3, "W": 11.0}

CASES: list[tuple[Expression, str]] = [
    (Sum(((1, L), (-1, HALF))), "L/2"),
    (Sum(((1, L), (-1, over(times(number(2), L), number(3))))), "L/3"),
    (Sum(((1, L), (-1, times(number("0.8"), L)))), "L/5"),
    (Sum(((1, L), (-1, times(number("0.83"), L)))), "0.17 L"),
    (Sum(((1, L), (-1, D), (-1, L))), "−d"),
    (Sum(((1, number(1)), (1, number(1)))), "2"),
    (Sum(((1, L), (-1, L))), "0"),
    (Sum(((1, P6), (-1, P3))), "0.3 m"),
    (Sum(((1, times(number(2), P6)), (1, L), (-1, P3))), "0.9 m + L"),
    (Sum(((1, Number(Decimal("2.00"), METRE)), (-1, L))), "2.00 m − L"),
    (Quotient(W, Sum(((1, number(1)), (1, number(1))))), "W/2"),
    (times(W, Sum(((1, L), (-1, HALF)))), "W (L/2)"),
]


@pytest.mark.parametrize(("expression", "text"), CASES)
def test_like_terms_are_joined(expression: Expression, text: str) -> None:
    assert plain(collected(expression)) == text
    before, after = (float(evaluate(e, VALUES)) for e in (expression, collected(expression)))
    assert after == pytest.approx(before, rel=1e-14, abs=1e-14)


def test_what_is_added_stands_first_and_numbers_before_names() -> None:
    two = Number(Decimal("2.00"), METRE)
    assert plain(collected_sum((-1, D), (1, L), (1, two))) == "2.00 m + L − d"
    assert collected_sum((1, L), (-1, L)) == total()
