r"""LaTeX for math mode, with the commands of amsmath."""

from __future__ import annotations

from decimal import Decimal
from typing import Final

from probgen.quantities.expression import Number
from probgen.quantities.formula import Balance
from probgen.quantities.notation.notation import (
    LOOSE,
    TERM,
    TIGHT,
    Notation,
    Printed,
    digits,
    is_negative,
    of_numbers,
    on_the_line,
    scaled,
)
from probgen.quantities.symbol import GREEK, Symbol, read_symbol, runs

_SIGNS: Final = {"": "", "∥": r"\parallel", "⊥": r"\perp"}
_RELATIONS: Final = {
    "=": "=", "→": r"\rightarrow", "≈": r"\approx", "<": "<", "≤": r"\leq", ">": ">",
    "≥": r"\geq", "⇒": r"\Rightarrow", ",": ",", ":": r":\quad",
}  # fmt: skip
_FUNCTIONS: Final = {
    "sin": r"\sin", "cos": r"\cos", "tan": r"\tan",
    "asin": r"\arcsin", "acos": r"\arccos", "atan": r"\arctan", "ln": r"\ln",
}  # fmt: skip
_BALANCES: Final = {"force": "F", "torque": r"\tau", "moment": "M"}


class Latex(Notation):
    """A formula without delimiters; fractions of full size are those of a display."""

    plus, minus, negative = " + ", " - ", "-"
    thin, times = r"\,", r"\times "
    upon, applied = r"\,", " "  # TeX sets more space about \sin by itself
    space, comma = " ", ", "

    def symbol(self, symbol: Symbol) -> str:
        letter = symbol.letter
        if symbol.bar:
            letter = rf"\bar{{{letter}}}"
        elif letter in GREEK:
            letter = "\\" + letter
        elif len(letter.rstrip("'0123456789")) > 1:
            letter = rf"\mathit{{{letter}}}"
        low = ",".join(_subscript(part) for part in symbol.subscripts)
        if symbol.sign and letter.isalpha():
            letter = " " + letter  # which would else belong to the sign's command
        return _SIGNS[symbol.sign] + letter + (f"_{{{low}}}" if low else "")

    def quantity(self, printed: Number) -> str:
        text, unit = _number(printed.value), printed.unit
        if unit is None or not unit.latex:
            return text
        return text + ("" if unit.tight else r"\,") + unit.latex

    def brackets(self, inner: str, tall: bool) -> str:
        return rf"\left({inner}\right)" if tall else f"({inner})"

    def bars(self, inner: str) -> str:
        return f"|{inner}|"

    def fraction(self, top: Printed, bottom: Printed, depth: int) -> Printed:
        if on_the_line(top, bottom, depth):
            return self.slashed(top, bottom)
        command = r"\tfrac" if depth and of_numbers(top, bottom) else r"\dfrac"
        return Printed(f"{command}{{{top.text}}}{{{bottom.text}}}", TIGHT, tall=True)

    def behind_solidus(self, function: str) -> str:
        return f"{{{function}}}"  # an operator would keep off it

    def power(self, base: str, exponent: int) -> str:
        return f"{base}^{{{exponent}}}"

    def exponential(self, exponent: str) -> str:
        return rf"\mathrm{{e}}^{{{exponent}}}"

    def root(self, inner: str) -> str:
        return rf"\sqrt{{{inner}}}"

    def function(self, name: str) -> str:
        return _FUNCTIONS.get(name, rf"\operatorname{{{name}}}")

    def words(self, text: str) -> str:
        return rf"\text{{{text}}}"

    def relation(self, sign: str) -> str:
        return _RELATIONS[sign]

    def balance(self, balance: Balance) -> str:
        about = self.symbol(read_symbol(balance.about))
        low = f"^{{({about})}}" if balance.raised else f"_{{{about}}}" if about else ""
        return rf"\textstyle\sum {_BALANCES[balance.kind]}{low}"

    def summed(self, inner: str) -> str:
        return rf"\sum {inner}"

    def integral(self, inner: str, by: str, start: str, end: str) -> str:
        return rf"\int_{{{start}}}^{{{end}}} {inner}\,\mathrm{{d}}{by}"

    def difference(self, inner: str, start: str, end: str) -> str:
        return rf"\left[{inner}\right]_{{{start}}}^{{{end}}}"


class SlashedLatex(Latex):
    """The same with fractions on one line, L/2, for what has to stay low."""

    def fraction(self, top: Printed, bottom: Printed, depth: int) -> Printed:
        return self.slashed(top, bottom)


class BrokenLatex(Latex):
    """The same for a fraction wider than its column: lines end at any sign, or between factors.

    What is above its line stands in brackets behind one over the rest: (1/b) [P + Q].
    """

    thin, next, upon = (space + r"\penalty900 " for space in (r"\,", "", r"\,"))
    times = r"\times\penalty900 "

    def brackets(self, inner: str, tall: bool) -> str:
        return rf"\bigl({inner}\bigr)" if tall else f"({inner})"

    def fraction(self, top: Printed, bottom: Printed, depth: int) -> Printed:
        if depth > 1 or on_the_line(top, bottom, depth):
            return super().fraction(top, bottom, depth)
        if len(bottom.text) > len(top.text):
            return self.slashed(top, bottom)
        size = "bigg" if r"\dfrac" in top.text else "big"
        above = rf"\{size}l[{top.text}\{size}r]" if top.hold == LOOSE else top.text
        return Printed(rf"\dfrac{{1}}{{{bottom.text}}}\,{above}", TERM, tall=True)


def _subscript(part: str) -> str:
    return "".join([_run(*run) for run in runs(part)])


def _run(text: str, italic: bool) -> str:
    if text in GREEK:
        return "\\" + text
    if italic:
        return r"\ell" if text == "l" else text
    return _SIGNS.get(text) or (text if text.isdigit() else rf"\mathrm{{{text}}}")


def _number(value: Decimal) -> str:
    sign, power = "-" if is_negative(value) else "", scaled(value)
    return sign + digits(value, r"\,") + (rf"\times 10^{{{power}}}" if power else "")
