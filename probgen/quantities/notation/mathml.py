"""Presentation MathML, of the elements of MathML Core (W3C), for a page on a screen.

Every method returns elements that may stand in a row; `row` makes one of several.
"""

from __future__ import annotations

from decimal import Decimal
from html import escape
from typing import Final

from probgen.quantities.expression import Number
from probgen.quantities.formula import Balance
from probgen.quantities.notation.notation import (
    TIGHT,
    Notation,
    Printed,
    digits,
    is_negative,
    of_numbers,
    on_the_line,
    scaled,
)
from probgen.quantities.symbol import GREEK, SIGNS, Symbol, read_symbol, runs

_THIN: Final = '<mspace width="0.167em"/>'
_NARROW: Final = "\u202f"
_FUNCTIONS: Final = {"asin": "arcsin", "acos": "arccos", "atan": "arctan"}
_BALANCES: Final = {"force": "F", "torque": "tau", "moment": "M"}


class MathML(Notation):
    """A formula as elements; fractions of full size are in display style."""

    plus, minus, negative = "<mo>+</mo>", "<mo>−</mo>", "<mo>−</mo>"
    thin, times = "<mo>\u2062</mo>" + _THIN, "<mo>×</mo>"  # the first is read as "times"
    next = "<mo>\u2062</mo>"
    upon, applied = "<mo>\u2062</mo>" + 2 * _THIN, _THIN
    space, comma = "", "<mo>,</mo>"

    def symbol(self, symbol: Symbol) -> str:
        sign = f"<mo>{symbol.sign}</mo>" if symbol.sign else ""
        letter = _letter(symbol.letter) if symbol.letter else ""
        if symbol.bar:
            letter = f'<mover accent="true">{letter}<mo stretchy="false">¯</mo></mover>'
        low = "<mo>,</mo>".join(_subscript(part) for part in symbol.subscripts)
        return sign + (f"<msub>{letter}{self.row(low)}</msub>" if low else letter)

    solidus = "<mo>/</mo>"

    def quantity(self, printed: Number) -> str:
        text, unit = _number(printed.value), printed.unit
        if unit is None or not unit.plain:
            return text
        gap = "" if unit.tight else _THIN
        return f"<mrow>{text}{gap}<mtext>{escape(unit.plain)}</mtext></mrow>"

    def brackets(self, inner: str, tall: bool) -> str:
        sized = "" if tall else ' stretchy="false"'
        return f"<mrow><mo{sized}>(</mo>{inner}<mo{sized}>)</mo></mrow>"

    def bars(self, inner: str) -> str:
        return f"<mrow><mo>|</mo>{inner}<mo>|</mo></mrow>"

    def fraction(self, top: Printed, bottom: Printed, depth: int) -> Printed:
        if on_the_line(top, bottom, depth):
            return self.slashed(top, bottom)
        size = "" if depth and of_numbers(top, bottom) else ' displaystyle="true"'
        text = f"<mfrac{size}>{self.row(top.text)}{self.row(bottom.text)}</mfrac>"
        return Printed(text, TIGHT, tall=True)

    def power(self, base: str, exponent: int) -> str:
        return f"<msup>{self.row(base)}{_exponent(exponent)}</msup>"

    def exponential(self, exponent: str) -> str:
        return f'<msup><mi mathvariant="normal">e</mi><mrow>{exponent}</mrow></msup>'

    def root(self, inner: str) -> str:
        return f"<msqrt>{inner}</msqrt>"

    def function(self, name: str) -> str:
        return f"<mi>{escape(_FUNCTIONS.get(name, name))}</mi><mo>\u2061</mo>"  # "of"

    def words(self, text: str) -> str:
        return f"<mtext>{escape(text)}</mtext>"

    def relation(self, sign: str) -> str:
        return f"<mo>{escape(sign)}</mo>"

    def balance(self, balance: Balance) -> str:
        letter, about = _letter(_BALANCES[balance.kind]), self.symbol(read_symbol(balance.about))
        if balance.raised:
            above = self.row(f"<mo>(</mo>{about}<mo>)</mo>")
            return self.summed(f"<msup>{letter}{above}</msup>")
        return self.summed(f"<msub>{letter}{self.row(about)}</msub>" if about else letter)

    def summed(self, inner: str) -> str:
        return f"<mrow><mo>∑</mo>{inner}</mrow>"

    def integral(self, inner: str, by: str, start: str, end: str) -> str:
        sign = f"<msubsup><mo>∫</mo>{self.row(start)}{self.row(end)}</msubsup>"
        return f'<mrow>{sign}{inner}{_THIN}<mi mathvariant="normal">d</mi>{by}</mrow>'

    def difference(self, inner: str, start: str, end: str) -> str:
        held = f"<mrow><mo>[</mo>{inner}<mo>]</mo></mrow>"
        return f"<msubsup>{held}{self.row(start)}{self.row(end)}</msubsup>"

    def row(self, inner: str) -> str:
        return f"<mrow>{inner}</mrow>"


class SlashedMathML(MathML):
    """The same with fractions on one line, L/2, for running text."""

    def fraction(self, top: Printed, bottom: Printed, depth: int) -> Printed:
        return self.slashed(top, bottom)


def _letter(letter: str) -> str:
    """A letter: small ones and Latin ones italic, Greek capitals upright, as LaTeX has them."""
    shown = GREEK.get(letter, letter)
    if letter in GREEK and shown.isupper():
        return f'<mi mathvariant="normal">{shown}</mi>'
    slant = ' style="font-style: italic"' if len(shown) > 1 else ""
    return f"<mi{slant}>{escape(shown)}</mi>"


def _subscript(part: str) -> str:
    return "".join([_run(*run) for run in runs(part)])


def _run(text: str, italic: bool) -> str:
    if text in SIGNS:
        return f"<mo>{text}</mo>"
    if text in GREEK:
        return f"<mi>{GREEK[text]}</mi>"
    if italic:
        return "".join([f"<mi>{'ℓ' if letter == 'l' else letter}</mi>" for letter in text])
    if text.isdigit():
        return f"<mn>{text}</mn>"
    return f'<mi mathvariant="normal">{escape(text)}</mi>'


def _number(value: Decimal) -> str:
    sign, power = "<mo>−</mo>" if is_negative(value) else "", scaled(value)
    text = f"<mn>{digits(value, _NARROW)}</mn>"
    if power:
        text += f"<mo>×</mo><msup><mn>10</mn>{_exponent(power)}</msup>"
    return f"<mrow>{sign}{text}</mrow>" if sign or power else text


def _exponent(exponent: int) -> str:
    text = f"<mn>{abs(exponent)}</mn>"
    return f"<mrow><mo>−</mo>{text}</mrow>" if exponent < 0 else text
