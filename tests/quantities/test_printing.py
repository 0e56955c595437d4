"""How quantities and formulas are printed (NIST SP 811 (2008), sections 7 and 10)."""

from decimal import Decimal

import pytest

from probgen.quantities.expression import (
    PI,
    Call,
    Expression,
    Lump,
    Name,
    Number,
    Power,
    Quotient,
    number,
    over,
    times,
    total,
)
from probgen.quantities.formula import Balance, Formula, Relation, Words
from probgen.quantities.printing import latex, plain, symbol_plain
from probgen.quantities.unit import DEGREE, METRE, NEWTON, UNITS

T, L, W = Name("T", "T"), Name("L", "L"), Name("W", "W_s")
THETA = Name("theta", "theta")

SYMBOLS = [
    ("T", "T", "T"),
    ("R_x", "R_{x}", "R_x"),
    ("W_s", r"W_{\mathrm{s}}", "W_s"),
    ("d_2", "d_{2}", "d_2"),
    ("theta", r"\theta", "θ"),
    ("mu", r"\mu", "μ"),
]


@pytest.mark.parametrize(("short", "in_latex", "in_text"), SYMBOLS)
def test_symbols(short: str, in_latex: str, in_text: str) -> None:
    assert latex(Name(short, short)) == in_latex
    assert symbol_plain(short) == in_text


NUMBERS = [
    (Number(Decimal("39.2"), NEWTON), "39.2 N", r"39.2\,\mathrm{N}"),
    (Number(Decimal("40"), DEGREE), "40°", r"40^{\circ}"),
    (Number(Decimal("-4.90"), NEWTON), "−4.90 N", r"-4.90\,\mathrm{N}"),
    (Number(Decimal("1.23E+3"), NEWTON), "1.23 × 10³ N", r"1.23\times 10^{3}\,\mathrm{N}"),
    (Number(Decimal("1230"), NEWTON), "1230 N", r"1230\,\mathrm{N}"),
    (Number(Decimal("2.12E+4"), NEWTON), "2.12 × 10⁴ N", r"2.12\times 10^{4}\,\mathrm{N}"),
    (Number(Decimal("21192"), NEWTON), "21\u202f192 N", r"21\,192\,\mathrm{N}"),
    (Number(Decimal("0.000123")), "1.23 × 10⁻⁴", r"1.23\times 10^{-4}"),
    (Number(Decimal("0.377")), "0.377", "0.377"),
    (Number(Decimal(0), NEWTON), "0 N", r"0\,\mathrm{N}"),
    (Number(Decimal("5.7"), UNITS["N*m"]), "5.7 N·m", r"5.7\,\mathrm{N{\cdot}m}"),
]


@pytest.mark.parametrize(("value", "in_text", "in_latex"), NUMBERS)
def test_numbers_with_units(value: Number, in_text: str, in_latex: str) -> None:
    assert plain(value) == in_text
    assert latex(value) == in_latex


N39, M6 = Number(Decimal("39.2"), NEWTON), Number(Decimal("0.600"), METRE)
N5 = Number(Decimal("-4.9"), NEWTON)
FORMULAS: list[tuple[Expression | Formula, str, str]] = [
    (times(T, L, Call("sin", (THETA,))), "T L sin θ", r"T\,L\,\sin \theta"),
    (
        total((1, T), (-1, times(W, Lump(over(L, number(2)))))),
        "T − W_s (L/2)",
        r"T - W_{\mathrm{s}}\,(L/2)",
    ),
    (times(N39, M6), "(39.2 N)(0.600 m)", r"(39.2\,\mathrm{N})(0.600\,\mathrm{m})"),
    (
        times(N39, Call("cos", (number(40, DEGREE),))),
        "(39.2 N) cos 40°",
        r"(39.2\,\mathrm{N})\,\cos 40^{\circ}",
    ),
    (total((1, N39), (-1, N5)), "39.2 N − (−4.9 N)", r"39.2\,\mathrm{N} - (-4.9\,\mathrm{N})"),
    (
        Call("hypot", (N39, N5)),
        "√((39.2 N)² + (−4.9 N)²)",
        r"\sqrt{(39.2\,\mathrm{N})^{2} + (-4.9\,\mathrm{N})^{2}}",
    ),
    (Quotient(total((1, T), (1, W)), L), "(T + W_s)/L", r"\dfrac{T + W_{\mathrm{s}}}{L}"),
    (
        Call("sin", (total((1, number(180, DEGREE)), (-1, THETA)),)),
        "sin(180° − θ)",
        r"\sin(180^{\circ} - \theta)",
    ),
    (
        Call("atan", (Quotient(Call("abs", (W,)), Call("abs", (T,))),)),
        "arctan(|W_s|/|T|)",
        r"\arctan\left(\dfrac{|W_{\mathrm{s}}|}{|T|}\right)",
    ),
    (times(number(2), number(3)), "2 × 3", r"2\times 3"),
    (
        (Balance("torque", "A"), Relation("="), T),
        "Στ_A = T",
        r"\textstyle\sum \tau_{A} = T",
    ),
    ((Balance("moment", "A"),), "ΣM_A", r"\textstyle\sum M_{A}"),
    ((Balance("moment", "A", raised=True),), "ΣM^(A)", r"\textstyle\sum M^{(A)}"),
    ((Balance("force", "x"),), "ΣF_x", r"\textstyle\sum F_{x}"),
    ((T, Relation("→"), Words("so")), "T → so", r"T \rightarrow \text{so}"),
]


@pytest.mark.parametrize(("formula", "in_text", "in_latex"), FORMULAS)
def test_formulas(formula: Expression | Formula, in_text: str, in_latex: str) -> None:
    assert plain(formula) == in_text
    assert latex(formula) == in_latex


def test_pi_is_a_letter_that_numbers_stand_beside() -> None:
    area = times(PI, Power(number("0.25", METRE), 2))
    assert plain(area) == "π (0.25 m)²"
    assert latex(area) == r"\pi\,(0.25\,\mathrm{m})^{2}"
    assert plain(Quotient(times(number(4), L), times(number(3), PI))) == "4 L/(3 π)"
