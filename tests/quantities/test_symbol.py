"""Symbols in their short notation."""

import pytest

from probgen.quantities.symbol import Symbol, is_italic, read_symbol

SYMBOLS = {
    "T": Symbol("T"),
    "m_1": Symbol("m", ("1",)),
    "W_s": Symbol("W", ("s",)),
    "theta_1_x": Symbol("theta", ("1", "x")),
    "xbar": Symbol("x", bar=True),
    "xbar_1": Symbol("x", ("1",), bar=True),
    "bar": Symbol("bar"),
    "∥": Symbol("", (), "∥"),
    "⊥": Symbol("", (), "⊥"),
    "⊥W_s": Symbol("W", ("s",), "⊥"),
}


@pytest.mark.parametrize(("short", "symbol"), SYMBOLS.items(), ids=SYMBOLS)
def test_read(short: str, symbol: Symbol) -> None:
    assert read_symbol(short) == symbol


@pytest.mark.parametrize(
    ("subscript", "italic"),
    [
        *((axis, True) for axis in "xyznijk"),
        ("theta", True),
        ("s", False),
        ("1", False),
        ("xy", False),
    ],
)
def test_italic_subscripts_stand_for_quantities(subscript: str, italic: bool) -> None:
    """NIST SP 811 (2008), 10.2: a subscript that is no quantity is roman."""
    assert is_italic(subscript) is italic
