"""Like terms: joined as one does it by hand, without changing a value."""

from decimal import Decimal

import pytest

from probgen.quantities.expression import (
    Call,
    Expression,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    evaluate,
    number,
    over,
    times,
    total,
)
from probgen.quantities.like_terms import (
    collected,
    collected_sum,
    in_least_numbers,
    in_one_order,
)
from probgen.quantities.printing import plain
from probgen.quantities.unit import METRE

L, D, W = (Name(n, n) for n in ("L", "d", "W_s"))
HALF = over(L, number(2))
P6, P3 = (Number(Decimal(value), METRE) for value in ("0.6", "0.3"))
VALUES = {"L": 3.7, "d": 1.3, "W_s": 11.0}

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
    (Quotient(W, Sum(((1, number(1)), (1, number(1))))), "W_s/2"),
    (times(W, Sum(((1, L), (-1, HALF)))), "W_s (L/2)"),
]


A, B = Name("a", "a"), Name("b", "b")
SIN, COS, OTHER = Call("sin", (A,)), Call("cos", (A,)), Call("cos", (B,))
VALUES |= {"a": 20.0, "b": 50.0}
CASES += [
    (Sum(((1, times(number(3), L)), (-1, times(number(2), L)))), "L"),
    (Sum(((1, L), (-1, times(L, number(2))))), "−L"),
    (Sum(((1, L), (1, L))), "2 L"),
    (Sum(((1, L), (-1, over(L, number(12))))), "11 L/12"),
    (Sum(((1, L), (-1, over(L, number(16))))), "0.9375 L"),  # no sixteenths
    (Sum(((1, L), (1, over(L, number(2))), (1, over(L, number(2))))), "2 L"),
    (Sum(((1, L), (1, times(D, L)))), "L + d L"),
    (Sum(((1, times(number(2), L, OTHER)), (-1, times(L, OTHER)))), "L cos b"),
    (Sum(((1, times(over(L, number(2)), OTHER)), (1, times(L, OTHER)))), "3 L cos b/2"),
    (Sum(((1, P6), (1, number(1)))), "0.6 m + 1"),  # no like terms
    (Sum(((1, times(L, SIN, SIN)), (1, times(L, COS, COS)))), "L"),
    (Sum(((-1, times(L, COS, COS)), (1, W), (-1, times(L, SIN, SIN)))), "−L + W_s"),
    (Sum(((1, W), (1, times(L, SIN, SIN)), (1, D), (1, times(COS, COS, L)))), "W_s + L + d"),
    (Sum(((1, times(L, SIN, SIN)), (-1, times(L, COS, COS)))), "L sin a sin a − L cos a cos a"),
    (Sum(((1, times(L, SIN, SIN)), (1, times(D, COS, COS)))), "L sin a sin a + d cos a cos a"),
    (Sum(((1, times(L, SIN, SIN)), (1, times(L, OTHER, OTHER)))), "L sin a sin a + L cos b cos b"),
    (Sum(((1, times(L, SIN)), (1, times(L, COS)))), "L sin a + L cos a"),
    (Sum(((1, times(L, SIN, COS)), (1, times(L, COS, COS)))), "L sin a cos a + L cos a cos a"),
    (Sum(((1, times(SIN, SIN)), (1, times(COS, COS)))), "1"),
    (Sum(((1, times(L, Power(SIN, 2))), (1, times(L, Power(COS, 2))))), "L"),
]


BOTH, APART = total((1, L), (1, D)), total((1, L), (-1, D))


def part(sum: Expression, of: int = 2) -> Expression:
    return over(sum, number(of))


CASES += [  # numbers beside each other
    (Sum(((1, Product((number(2), number(2), L))), (-1, L))), "3 L"),
    (Sum(((1, Product((number(2), number(3), L, D))), (1, D))), "2 × 3 L d + d"),
]

CASES += [  # within a multiple of a sum, where that is shorter
    (Sum(((1, part(BOTH)), (-1, HALF))), "d/2"),
    (Sum(((1, part(BOTH)), (1, part(APART)))), "L"),
    (Sum(((1, part(BOTH)), (-1, part(APART)))), "d"),
    (Sum(((1, part(BOTH)), (1, W))), "(L + d)/2 + W_s"),
    (Sum(((1, L), (-1, part(BOTH)))), "(L − d)/2"),
    (Sum(((1, D), (-1, part(BOTH)))), "(d − L)/2"),
    (Sum(((1, times(number(2), BOTH)), (-1, L))), "L + 2 d"),
    (Sum(((-1, part(L, 4)), (-1, part(BOTH, 4)))), "−L/2 − d/4"),
    (Sum(((1, part(BOTH, 3)), (1, part(BOTH, 3)))), "2 (L + d)/3"),
    (Sum(((1, W), (-1, part(BOTH)), (1, HALF))), "W_s − d/2"),
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


def test_products_of_the_same_factors_are_put_in_the_order_of_the_first() -> None:
    mixed = Sum(((1, times(L, D)), (-1, times(D, W)), (-1, times(D, L)), (1, times(W, W, D))))
    expected = Sum(((1, times(L, D)), (-1, times(D, W)), (-1, times(L, D)), (1, times(W, W, D))))
    assert in_one_order(mixed) == expected
    assert plain(collected(in_one_order(mixed))) == "−d W_s + W_s W_s d"
    assert in_one_order(times(L, D)) == times(L, D)


def test_a_factor_twice_is_not_the_factor_once() -> None:
    kept = Sum(((1, times(L, L, D)), (-1, times(L, D, D))))
    assert in_one_order(kept) == kept


def test_like_terms_meet_in_any_order_of_their_factors() -> None:
    """And the first of them says in which order they are written."""
    expression = total((1, number(1)), (1, times(L, D)), (-1, times(D, L)))
    assert plain(collected(expression)) == "1"
    assert plain(collected(total((1, times(D, L)), (1, times(L, D))))) == "2 d L"


@pytest.mark.parametrize(
    ("terms", "text"),
    [
        (((1, times(number(8), L)), (-1, times(number(6), D))), "4 L − 3 d"),
        (((1, times(number(8), L)), (-1, D)), "8 L − d"),
        (((1, HALF), (-1, times(number(2), D))), "L/2 − 2 d"),
    ],
)
def test_an_equation_in_the_least_whole_numbers(
    terms: tuple[tuple[int, Expression], ...], text: str
) -> None:
    assert plain(in_least_numbers(Sum(terms))) == text
