"""Plain text of formulas, piece by piece, as a terminal shows it."""

from decimal import Decimal

import pytest

from probgen.quantities.expression import Number
from probgen.quantities.formula import Balance
from probgen.quantities.notation.notation import FACTOR, LOOSE, TERM, TIGHT, Printed
from probgen.quantities.notation.plain import Plain
from probgen.quantities.symbol import read_symbol
from probgen.quantities.unit import UNITS

SYMBOLS = [
    ("T", "T"),
    ("W_s", "W_s"),
    ("theta", "θ"),
    ("theta_1_x", "θ_1_x"),
    ("r_theta", "r_θ"),
    ("⊥W_s", "⊥W_s"),
    ("xbar_1", "x\u0304_1"),
]


@pytest.mark.parametrize(("short", "written"), SYMBOLS)
def test_symbols(short: str, written: str) -> None:
    assert Plain().symbol(read_symbol(short)) == written


QUANTITIES = [
    (Number(Decimal("39.2"), UNITS["N"]), "39.2 N"),
    (Number(Decimal("40"), UNITS["deg"]), "40°"),  # no space before the sign (7.2)
    (Number(Decimal("-0.30"), UNITS["1"]), "−0.30"),
    (Number(Decimal("0.30")), "0.30"),
    (Number(Decimal("12345")), "12\u202f345"),
    (Number(Decimal("-1.2E+5"), UNITS["N"]), "−1.2 × 10⁵ N"),
    (Number(Decimal("0.000123")), "1.23 × 10⁻⁴"),
]


@pytest.mark.parametrize(("number", "written"), QUANTITIES)
def test_quantities(number: Number, written: str) -> None:
    assert Plain().quantity(number) == written


BALANCES = [("force", "x", "ΣF_x"), ("torque", "A", "Στ_A"), ("moment", "A", "ΣM_A"),
            ("torque", "", "Στ")]  # fmt: skip


@pytest.mark.parametrize(("kind", "about", "written"), BALANCES)
def test_balances(kind: str, about: str, written: str) -> None:
    assert Plain().balance(Balance(kind, about)) == written


# What is above and below a slash, each with how tightly it holds together.
FRACTIONS = [
    ("a", TIGHT, "b", TIGHT, "a/b"),
    ("a b", TERM, "c", TIGHT, "a b/c"),
    ("a + b", LOOSE, "c", TIGHT, "(a + b)/c"),
    ("a", TIGHT, "b c", FACTOR, "a/(b c)"),
    ("a", TIGHT, "b − c", LOOSE, "a/(b − c)"),
]


@pytest.mark.parametrize(("top", "hold", "bottom", "holds", "written"), FRACTIONS)
def test_a_fraction_is_slashed_with_the_brackets_it_needs(
    top: str, hold: int, bottom: str, holds: int, written: str
) -> None:
    found = Plain().fraction(Printed(top, hold), Printed(bottom, holds), 0)
    assert found == Printed(written, TERM)


def test_pieces() -> None:
    notation = Plain()
    assert notation.brackets("x", True) == notation.brackets("x", False) == "(x)"
    assert notation.power("x", -12) == "x⁻¹²"
    assert notation.exponential("x") == "e^(x)"
    assert notation.root("x") == "√(x)"
    assert notation.bars("x") == "|x|"
    assert notation.summed("F") == "Σ F"
    assert [notation.function(name) for name in ("sin", "acos")] == ["sin", "arccos"]
    assert notation.relation("≤") == "≤"
    assert notation.words("at most") == "at most"


def test_integrals() -> None:
    assert Plain().integral("x w", "x", "0", "L") == "∫(0 to L) x w dx"
    assert Plain().difference("x²/2", "0", "L") == "[x²/2](0 to L)"
