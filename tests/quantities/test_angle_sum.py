"""Products of sines and cosines read as those of a sum, without changing a value."""

import pytest

from probgen.quantities.angle_sum import with_angle_apart, with_angle_sums
from probgen.quantities.expression import Call, Expression, Name, evaluate, times, total
from probgen.quantities.printing import plain

A, B, P, W = (Name(n, n) for n in "abPW")
SIN_A, COS_A, SIN_B, COS_B = (Call(f, (x,)) for x in (A, B) for f in ("sin", "cos"))
VALUES = {"a": 21.0, "b": 48.0, "P": 3.0, "W": 7.0}

CASES: list[tuple[Expression, str]] = [
    (total((1, times(COS_B, COS_A)), (-1, times(SIN_B, SIN_A))), "cos(a + b)"),
    (total((1, times(SIN_B, SIN_A)), (-1, times(COS_A, COS_B))), "−cos(a + b)"),
    (total((1, times(COS_A, COS_B)), (1, times(SIN_A, SIN_B))), "cos(a − b)"),
    (total((1, times(COS_A, SIN_B)), (1, times(COS_B, SIN_A))), "sin(a + b)"),
    (total((1, W), (1, times(P, COS_A, COS_B)), (-1, times(P, SIN_A, SIN_B))), "W + P cos(a + b)"),
]
APART: list[tuple[Expression, str]] = [
    (Call("cos", (total((1, A), (1, B)),)), "cos a cos b − sin a sin b"),
    (Call("cos", (total((1, A), (-1, B)),)), "cos a cos b + sin a sin b"),
    (Call("cos", (total((1, B), (-1, A)),)), "cos a cos b + sin a sin b"),
    (Call("sin", (total((1, A), (1, B)),)), "sin a cos b + cos a sin b"),
    (Call("sin", (total((1, A), (-1, B)),)), "sin a cos b − cos a sin b"),
    (Call("sin", (total((1, B), (-1, A)),)), "−sin a cos b + cos a sin b"),
    (times(P, Call("cos", (total((1, A), (1, B)),))), "P cos a cos b − P sin a sin b"),
]
KEPT: list[Expression] = [
    total((1, times(SIN_A, COS_B)), (-1, times(COS_A, SIN_B))),  # nobody sees its sign
    total((1, times(COS_A, COS_A)), (-1, times(SIN_A, SIN_A))),
    total((1, times(P, COS_A, COS_B)), (-1, times(W, SIN_A, SIN_B))),
    times(COS_A, COS_B),
]


@pytest.mark.parametrize(("products", "written"), CASES)
def test_products_that_a_theorem_joins(products: Expression, written: str) -> None:
    found = with_angle_sums(products)
    assert plain(found) == written
    assert evaluate(found, VALUES) == pytest.approx(float(evaluate(products, VALUES)))


@pytest.mark.parametrize(("joined", "written"), APART)
def test_an_angle_is_written_apart(joined: Expression, written: str) -> None:
    found = with_angle_apart(joined, "a")
    assert plain(found) == written
    assert evaluate(found, VALUES) == pytest.approx(float(evaluate(joined, VALUES)))


def test_what_holds_no_sum_with_the_angle_stays() -> None:
    for kept in (COS_A, Call("cos", (total((1, B), (1, W)),)), Call("sin", (times(W, A),))):
        assert with_angle_apart(kept, "a") is kept


@pytest.mark.parametrize("products", KEPT)
def test_others_stay(products: Expression) -> None:
    assert with_angle_sums(products) is products
