"""Plain Unicode text on one line, for terminals, messages and readers of the screen."""

from __future__ import annotations

from decimal import Decimal
from typing import Final

from probgen.quantities.expression import Number
from probgen.quantities.formula import Balance
from probgen.quantities.notation.notation import (
    TERM,
    TIGHT,
    Notation,
    Printed,
    digits,
    is_negative,
    scaled,
)
from probgen.quantities.symbol import GREEK, Symbol, unmarked

_RAISED: Final = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
_BAR: Final = "\u0304"  # above the letter before it
_INVERSE: Final = {"asin": "arcsin", "acos": "arccos", "atan": "arctan"}
_BALANCES: Final = {"force": "F", "torque": "τ", "moment": "M"}


class Plain(Notation):
    """A formula as text; subscripts stand behind a low line, W_s."""

    plus, minus, negative = " + ", " − ", "−"
    thin, times = " ", " × "
    upon, applied = " ", " "
    space, comma = " ", ", "

    def symbol(self, symbol: Symbol) -> str:
        return unmarked(self.marked(symbol))

    def marked(self, symbol: Symbol) -> str:
        """The same with its marks of which letters are italic."""
        letter = symbol.letter + _BAR if symbol.bar else symbol.letter
        parts = (letter, *symbol.subscripts)
        return symbol.sign + "_".join(GREEK.get(part, part) for part in parts)

    def quantity(self, printed: Number) -> str:
        text, unit = _number(printed.value), printed.unit
        if unit is None or not unit.plain:
            return text
        return text + ("" if unit.tight else " ") + unit.plain

    def brackets(self, inner: str, tall: bool) -> str:
        return f"({inner})"

    def bars(self, inner: str) -> str:
        return f"|{inner}|"

    def fraction(self, top: Printed, bottom: Printed, depth: int) -> Printed:
        above = top.text if top.hold >= TERM else f"({top.text})"
        below = bottom.text if bottom.hold >= TIGHT else f"({bottom.text})"
        return Printed(f"{above}/{below}", TERM)

    def power(self, base: str, exponent: int) -> str:
        return base + str(exponent).translate(_RAISED)

    def exponential(self, exponent: str) -> str:
        return f"e^({exponent})"

    def root(self, inner: str) -> str:
        return f"√({inner})"

    def function(self, name: str) -> str:
        return _INVERSE.get(name, name)

    def words(self, text: str) -> str:
        return text

    def relation(self, sign: str) -> str:
        return sign

    def balance(self, balance: Balance) -> str:
        about = f"^({balance.about})" if balance.raised else f"_{balance.about}"
        return f"Σ{_BALANCES[balance.kind]}" + (about if balance.about else "")

    def summed(self, inner: str) -> str:
        return f"Σ {inner}"

    def integral(self, inner: str, by: str, start: str, end: str) -> str:
        return f"∫({start} to {end}) {inner} d{by}"

    def difference(self, inner: str, start: str, end: str) -> str:
        return f"[{inner}]({start} to {end})"


class Marked(Plain):
    """The same for what is set in faces of its own, as the labels of figures are."""

    def symbol(self, symbol: Symbol) -> str:
        return self.marked(symbol)


def _number(value: Decimal) -> str:
    sign, power = "−" if is_negative(value) else "", scaled(value)
    exponent = f" × 10{str(power).translate(_RAISED)}" if power else ""
    return sign + digits(value, "\u202f") + exponent
