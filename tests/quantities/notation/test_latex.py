"""LaTeX for math mode, piece by piece, as amsmath writes it."""

from decimal import Decimal

import pytest

from probgen.quantities.expression import Number
from probgen.quantities.formula import Balance
from probgen.quantities.notation.latex import Latex, SlashedLatex
from probgen.quantities.notation.notation import FACTOR, LOOSE, TERM, TIGHT, Edge, Printed
from probgen.quantities.symbol import read_symbol
from probgen.quantities.unit import UNITS

SYMBOLS = [
    ("T", "T"),
    ("theta", r"\theta"),
    ("Delta", r"\Delta"),
    ("CM", r"\mathit{CM}"),  # a name of two letters is one symbol
    ("T_1", "T_{1}"),
    ("R_x", "R_{x}"),
    ("W_s", r"W_{\mathrm{s}}"),
    ("mu_s", r"\mu_{\mathrm{s}}"),
    ("T_𝐴𝐵", "T_{AB}"),
    ("R_1x", "R_{1x}"),
    ("S_𝑂𝑥", "S_{Ox}"),
    ("P_w𝑥", r"P_{\mathrm{w}x}"),
    ("M_max", r"M_{\mathrm{max}}"),
    ("N_i", r"N_{\mathrm{i}}"),
    ("W_𝑙", r"W_{\ell}"),  # an l by itself would be read as a 1
    ("A1", "A1"),
    ("r_theta", r"r_{\theta}"),
    ("r_⊥", r"r_{\perp}"),
    ("theta_1_x", r"\theta_{1,x}"),
    ("∥", r"\parallel"),
    ("⊥2", r"\perp2"),
    ("⊥theta", r"\perp\theta"),
    ("⊥W_s", r"\perp W_{\mathrm{s}}"),
    ("xbar_1", r"\bar{x}_{1}"),
]


@pytest.mark.parametrize(("short", "written"), SYMBOLS)
def test_symbols(short: str, written: str) -> None:
    assert Latex().symbol(read_symbol(short)) == written


QUANTITIES = [
    (Number(Decimal("39.2"), UNITS["N"]), r"39.2\,\mathrm{N}"),
    (Number(Decimal("40"), UNITS["deg"]), r"40^{\circ}"),  # no space before the sign (7.2)
    (Number(Decimal("-0.30"), UNITS["1"]), "-0.30"),
    (Number(Decimal("0.30")), "0.30"),
    (Number(Decimal("12345")), r"12\,345"),
    (Number(Decimal("-1.2E+5"), UNITS["N"]), r"-1.2\times 10^{5}\,\mathrm{N}"),
]


@pytest.mark.parametrize(("number", "written"), QUANTITIES)
def test_quantities(number: Number, written: str) -> None:
    assert Latex().quantity(number) == written


BALANCES = [
    (Balance("force", "x"), r"\textstyle\sum F_{x}"),
    (Balance("torque", "A"), r"\textstyle\sum \tau_{A}"),
    (Balance("moment", "A_1"), r"\textstyle\sum M_{A_{1}}"),
    (Balance("torque", ""), r"\textstyle\sum \tau"),
]


@pytest.mark.parametrize(("balance", "written"), BALANCES)
def test_balances(balance: Balance, written: str) -> None:
    assert Latex().balance(balance) == written


def test_a_fraction_is_of_full_size_only_where_it_stands_by_itself() -> None:
    one, two = Printed("a + b", LOOSE), Printed("2", TIGHT)
    assert Latex().fraction(one, two, 0).text == r"\dfrac{a + b}{2}"
    assert Latex().fraction(one, two, 1) == Printed("(a + b)/2", TERM)
    over = Printed(r"4.0\,\mathrm{m}", FACTOR)
    assert Latex().fraction(two, over, 1).text == r"\dfrac{2}{4.0\,\mathrm{m}}"
    three, five = (Printed(each, TIGHT, Edge.DIGIT, Edge.DIGIT) for each in "35")
    assert Latex().fraction(three, five, 0).text == r"\dfrac{3}{5}"
    assert Latex().fraction(three, five, 1).text == r"\tfrac{3}{5}"


def test_a_fraction_over_more_than_a_letter_keeps_its_size_among_factors() -> None:
    """T h/√(d² + h²), but on the line within another fraction, as W (L/2) is among factors too."""
    height, root = Printed("h", TIGHT), Printed(r"\sqrt{d^{2} + h^{2}}", TIGHT, tall=True)
    sine = Printed(r"\sin \alpha", TERM)
    assert Latex().fraction(height, root, 1).text == r"\dfrac{h}{\sqrt{d^{2} + h^{2}}}"
    assert Latex().fraction(height, sine, 1).text == r"\dfrac{h}{\sin \alpha}"
    assert Latex().fraction(height, root, 2).text == r"h/\sqrt{d^{2} + h^{2}}"
    assert Latex().fraction(height, sine, 2).text == r"h/(\sin \alpha)"


# What is above and below a slash, each with how tightly it holds together.
SLASHED = [
    ("a", TIGHT, "b", TIGHT, "a/b"),
    ("a b", TERM, "c", TIGHT, "a b/c"),
    ("a + b", LOOSE, "c", TIGHT, "(a + b)/c"),
    ("a", TIGHT, "b c", FACTOR, "a/(b c)"),
    ("a", TIGHT, "b - c", LOOSE, "a/(b - c)"),
]


@pytest.mark.parametrize(("top", "hold", "bottom", "holds", "written"), SLASHED)
def test_on_one_line_a_fraction_is_slashed_with_the_brackets_it_needs(
    top: str, hold: int, bottom: str, holds: int, written: str
) -> None:
    found = SlashedLatex().fraction(Printed(top, hold), Printed(bottom, holds), 0)
    assert found == Printed(written, TERM)


def test_a_function_over_another_needs_no_brackets_on_one_line() -> None:
    sine, cosine = (Printed(rf"\{name} a", TERM, Edge.FUNCTION) for name in ("sin", "cos"))
    assert SlashedLatex().fraction(sine, cosine, 0).text == r"\sin a/{\cos a}"
    assert SlashedLatex().fraction(Printed("a", TIGHT), cosine, 0).text == r"a/(\cos a)"


def test_brackets_grow_about_what_is_tall() -> None:
    assert Latex().brackets("x", False) == "(x)"
    assert Latex().brackets("x", True) == r"\left(x\right)"


def test_functions_and_what_has_no_command_of_its_own() -> None:
    names = ("sin", "asin", "atan", "ln", "atan2")
    written = [r"\sin", r"\arcsin", r"\arctan", r"\ln", r"\operatorname{atan2}"]
    assert [Latex().function(name) for name in names] == written


def test_pieces() -> None:
    notation = Latex()
    assert notation.power("x", 2) == "x^{2}"
    assert notation.exponential("x") == r"\mathrm{e}^{x}"
    assert notation.root("x") == r"\sqrt{x}"
    assert notation.bars("x") == "|x|"
    assert notation.words("at most") == r"\text{at most}"
    assert notation.summed("F") == r"\sum F"
    assert [notation.relation(sign) for sign in "=≤⇒"] == ["=", r"\leq", r"\Rightarrow"]


def test_integrals() -> None:
    written = Latex().integral("w", "x", "0", "L")
    assert written == r"\int_{0}^{L} w\,\mathrm{d}x"
    assert Latex().difference("x^{2}", "0", "L") == r"\left[x^{2}\right]_{0}^{L}"
