"""Where brackets and signs stand, whatever the notation."""

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
    number,
)
from probgen.quantities.printing import latex, plain
from probgen.quantities.unit import DEGREE, METRE

X = Name("x", "x")


def plain_number(text: str) -> Number:
    return Number(Decimal(text))


@pytest.mark.parametrize("digits", ["0.820", "0.810", "12.10", "0.4103", "101", "0.10"])
def test_a_number_is_bracketed_for_its_power_of_ten_and_not_for_its_digits(digits: str) -> None:
    product = Product((plain_number(digits), X))
    assert plain(product) == f"{digits} x"
    assert latex(product) == rf"{digits}\,x"
    assert latex(Call("sin", (Number(Decimal(digits), DEGREE),))) == rf"\sin {digits}^{{\circ}}"


SIDE_BY_SIDE: list[tuple[Expression, str]] = [
    (Product((plain_number("1.2E+4"), X)), r"(1.2\times 10^{4})\,x"),
    (Product((plain_number("12"), plain_number("34"))), r"12\times 34"),
    (Product((number(2), Number(Decimal(40), DEGREE))), r"2\times 40^{\circ}"),
    (Product((Number(Decimal(3), METRE), X)), r"(3\,\mathrm{m})\,x"),
    (Product((Number(Decimal(3), METRE), plain_number("0.5"))), r"(3\,\mathrm{m})(0.5)"),
    (Product((X, Sum(((1, X), (-1, number(1)))))), r"x\,(x - 1)"),
    (Product((Sum(((1, X), (1, X))), Sum(((1, X), (1, X))))), "(x + x)(x + x)"),
    (Product((Call("sin", (X,)), X)), r"x\,\sin x"),
    (Sum(((-1, X), (1, plain_number("-2")))), "-x + (-2)"),
    (Power(Sum(((1, X), (1, Quotient(X, X)))), 2), r"\left(x + \dfrac{x}{x}\right)^{2}"),
    (Power(Sum(((1, X), (1, Call("sqrt", (X,))))), 2), r"\left(x + \sqrt{x}\right)^{2}"),
    (Power(Sum(((1, X), (1, Call("hypot", (X, X))))), 2),
     r"\left(x + \sqrt{x^{2} + x^{2}}\right)^{2}"),
    (Power(Sum(((1, X), (1, Call("sin", (Quotient(X, X),))))), 2),
     r"\left(x + \sin\left(\tfrac{x}{x}\right)\right)^{2}"),
    (Power(Number(Decimal(3), METRE), 2), r"(3\,\mathrm{m})^{2}"),
    (Call("hypot", (X, number(3))), r"\sqrt{x^{2} + 3^{2}}"),
    (Call("atan2", (X, X)), r"\operatorname{atan2}(x, x)"),
]


@pytest.mark.parametrize(("expression", "written"), SIDE_BY_SIDE)
def test_side_by_side(expression: Expression, written: str) -> None:
    assert latex(expression) == written
