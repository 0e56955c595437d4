"""Where brackets and signs stand, whatever the notation."""

import re
from decimal import Decimal

import pytest

from probgen.quantities.expression import (
    Call,
    Expression,
    Lump,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    number,
)
from probgen.quantities.formula import Difference, Integral
from probgen.quantities.printing import latex, latex_in_line, plain
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
    (
        Power(Sum(((1, X), (1, Call("hypot", (X, X))))), 2),
        r"\left(x + \sqrt{x^{2} + x^{2}}\right)^{2}",
    ),
    (
        Power(Sum(((1, X), (1, Call("sin", (Quotient(X, X),))))), 2),
        r"(x + \sin(x/x))^{2}",
    ),
    (Power(Number(Decimal(3), METRE), 2), r"(3\,\mathrm{m})^{2}"),
    (Call("hypot", (X, number(3))), r"\sqrt{x^{2} + 3^{2}}"),
    (Call("atan2", (X, X)), r"\operatorname{atan2}(x, x)"),
    (Call("atan2", (Quotient(X, X), X)), r"\operatorname{atan2}(x/x, x)"),
    (
        Product((Call("atan2", (X, X)), Call("atan2", (X, X)))),
        r"\operatorname{atan2}(x, x)\,\operatorname{atan2}(x, x)",
    ),
    (Product((X, Call("exp", (Product((X, Call("rad", (X,)))),)))), r"x\,\mathrm{e}^{x\,x}"),
    (
        Call("exp", (Call("rad", (Number(Decimal(540), DEGREE),)),)),
        r"\mathrm{e}^{9.42478\,\mathrm{rad}}",
    ),
    (Quotient(Call("ln", (Quotient(X, X),)), X), r"\dfrac{\ln(x/x)}{x}"),
    (Call("deg", (Quotient(X, X),)), r"\dfrac{x}{x}"),
    (Call("sum", (X,)), r"\sum x"),
    (Product((Call("sum", (X,)), X)), r"(\sum x)\,x"),
    (Call("abs", (Sum(((1, X), (-1, X))),)), "|x - x|"),
    (Product((Call("abs", (X,)), X)), r"|x|\,x"),
    (Call("sqrt", (X,)), r"\sqrt{x}"),
    (Call("sin", (Sum(((1, X), (1, X))),)), r"\sin(x + x)"),
    (Call("sin", (Product((number(2), X)),)), r"\sin(2\,x)"),
    (Call("cos", (Call("sin", (X,)),)), r"\cos(\sin x)"),
    (Call("cos", (plain_number("-2"),)), r"\cos(-2)"),
    (Call("cos", (plain_number("1.2E-4"),)), r"\cos(1.2\times 10^{-4})"),
    (Product((Call("sin", (X,)), Call("cos", (X,)))), r"\sin x\,\cos x"),
    (Power(Call("sin", (X,)), 2), r"(\sin x)^{2}"),
    (Power(plain_number("3"), 2), "3^{2}"),
    (Power(X, -1), "x^{-1}"),
    (Product((plain_number("3"), Power(number(2), 2))), r"3\times 2^{2}"),
    (Product((X, plain_number("-2"))), r"x\,(-2)"),
    (Product((number(2), X, number(3))), r"2\,x\,3"),
    (Sum(((1, plain_number("-2")), (-1, X))), "-2 - x"),
    (Sum(((-1, plain_number("-2")), (-1, X))), "-(-2) - x"),
    (Sum(((1, X), (-1, Sum(((1, X), (1, X)))))), "x - (x + x)"),
    (Sum(((1, Sum(((1, X), (1, X)))), (1, X))), "x + x + x"),
    (Quotient(Quotient(X, X), X), r"\dfrac{x/x}{x}"),
    (Quotient(X, Quotient(X, X)), r"\dfrac{x}{x/x}"),
    (Sum(((1, X), (1, Quotient(X, X)))), r"x + \dfrac{x}{x}"),
    (Product((X, Quotient(X, X))), r"x\,(x/x)"),
    (Call("sqrt", (Quotient(X, X),)), r"\sqrt{x/x}"),
    (Lump(Quotient(X, X)), r"\dfrac{x}{x}"),
    (Root(Sum(((1, X), (1, X))), "x", 0.0, 1.0), "x + x"),
]


@pytest.mark.parametrize(("expression", "written"), SIDE_BY_SIDE)
def test_side_by_side(expression: Expression, written: str) -> None:
    assert latex(expression) == written


@pytest.mark.parametrize(("expression", "written"), SIDE_BY_SIDE)
def test_no_fraction_in_a_line_has_its_full_size(expression: Expression, written: str) -> None:
    assert not re.search(r"\\[dt]frac", latex_in_line(expression))


SLASHED: list[tuple[Expression, str]] = [
    (Quotient(Sum(((1, X), (1, X))), X), "(x + x)/x"),
    (Quotient(Product((number(2), X)), X), r"2\,x/x"),
    (Quotient(X, Product((number(2), X))), r"x/(2\,x)"),
    (Quotient(X, Quotient(X, X)), "x/(x/x)"),
    (Quotient(Quotient(X, X), X), "x/x/x"),
    (Product((Quotient(X, X), X)), r"(x/x)\,x"),
    (Call("sin", (Quotient(X, X),)), r"\sin(x/x)"),
    (Power(Quotient(X, X), 2), "(x/x)^{2}"),
]


@pytest.mark.parametrize(("expression", "written"), SLASHED)
def test_fractions_on_one_line(expression: Expression, written: str) -> None:
    assert latex_in_line(expression) == written
    assert plain(expression) == written.replace(r"\,", " ").replace("\\", "").replace("^{2}", "²")


@pytest.mark.parametrize(
    ("symbol", "in_latex", "in_text"),
    [
        ("x_theta", r"x_{\theta}", "x_θ"),
        ("x_1_s", r"x_{1,\mathrm{s}}", "x_1_s"),
        ("ab", r"\mathit{ab}", "ab"),
        ("⊥W", r"\perp W", "⊥W"),
        ("r_∥", r"r_{\parallel}", "r_∥"),
    ],
)
def test_symbols_of_several_parts(symbol: str, in_latex: str, in_text: str) -> None:
    assert latex(Name(symbol, symbol)) == in_latex
    assert plain(Name(symbol, symbol)) == in_text


W, L = Name("w", "w"), Name("L", "L")
INTEGRALS: list[tuple[Integral | Difference, str, str]] = [
    (Integral(W, X, number(0), L), "∫(0 to L) w dx", r"\int_{0}^{L} w\,\mathrm{d}x"),
    (  # a sum in brackets, a product without
        Integral(Sum(((1, W), (-1, X))), X, number(0), L),
        "∫(0 to L) (w − x) dx",
        r"\int_{0}^{L} (w - x)\,\mathrm{d}x",
    ),
    (
        Integral(Product((X, W)), X, Quotient(L, number(2)), L),
        "∫(L/2 to L) x w dx",
        r"\int_{L/2}^{L} x\,w\,\mathrm{d}x",
    ),
    (
        Difference(Quotient(Power(X, 2), number(2)), number(0), L),
        "[x²/2](0 to L)",
        r"\left[\dfrac{x^{2}}{2}\right]_{0}^{L}",
    ),
]


@pytest.mark.parametrize(("piece", "text", "written"), INTEGRALS)
def test_integrals(piece: Integral | Difference, text: str, written: str) -> None:
    assert plain((piece,)) == text
    assert latex((piece,)) == written
