"""Quantities and formulas as they are printed, in LaTeX and in plain Unicode text.

Follows NIST SP 811 (2008): quantity symbols italic, units and descriptive subscripts roman
(10.1 to 10.2), a space between number and unit but none before the degree sign (7.2), digits in
groups of three from five digits on (10.5.3).  Numbers of five and more digits whose last printed
figure is left of the units place, and numbers below a thousandth, are printed with a power of ten.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache
from itertools import pairwise
from typing import Final

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
)
from probgen.quantities.formula import Balance, Formula, Piece, Relation, Words
from probgen.quantities.recent import kept

_GREEK: Final = {
    "alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "epsilon": "ε", "eta": "η",
    "theta": "θ", "kappa": "κ", "lambda": "λ", "mu": "μ", "nu": "ν", "rho": "ρ",
    "sigma": "σ", "tau": "τ", "phi": "φ", "psi": "ψ", "omega": "ω", "Delta": "Δ",
    "Sigma": "Σ", "Omega": "Ω", "Phi": "Φ", "ell": "ℓ",
}  # fmt: skip
_SIGNS: Final = {"∥": r"\parallel", "⊥": r"\perp"}
_ITALIC_SUBSCRIPTS: Final = frozenset("xyznijk")
_SUPERSCRIPTS: Final = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
_RELATIONS: Final = {
    "=": "=", "→": r"\rightarrow", "≈": r"\approx", "<": "<", "≤": r"\leq", ">": ">",
    "≥": r"\geq", "⇒": r"\Rightarrow", ",": ",",
}  # fmt: skip
_TRIGONOMETRIC: Final = {
    "sin": r"\sin", "cos": r"\cos", "tan": r"\tan",
    "asin": r"\arcsin", "acos": r"\arccos", "atan": r"\arctan",
}  # fmt: skip
_INVERSE: Final = {"asin": "arcsin", "acos": "arccos", "atan": "arctan"}

_LOOSE, _TERM, _FACTOR, _TIGHT = range(4)  # how tightly a printed part holds together


@dataclass(frozen=True, slots=True)
class _Printed:
    text: str
    hold: int


class Notation:
    """How the parts of a formula are put together; the two notations differ only in this."""

    thin: str
    after_function: str
    times: str
    minus: str

    def symbol(self, symbol: str) -> str:
        raise NotImplementedError

    def number(self, value: Decimal) -> str:
        raise NotImplementedError

    def quantity(self, printed: Number) -> str:
        raise NotImplementedError

    def brackets(self, inner: str) -> str:
        raise NotImplementedError

    def fraction(self, top: _Printed, bottom: _Printed, depth: int) -> _Printed:
        raise NotImplementedError

    def power(self, base: str, exponent: int) -> str:
        raise NotImplementedError

    def root(self, inner: str) -> str:
        raise NotImplementedError

    def function(self, name: str) -> str:
        raise NotImplementedError

    def words(self, text: str) -> str:
        raise NotImplementedError

    def relation(self, sign: str) -> str:
        raise NotImplementedError

    def balance(self, balance: Balance) -> str:
        raise NotImplementedError


def _digits(value: Decimal, group: str) -> tuple[str, int]:
    """Digits without sign, and the power of ten beside them (0: none)."""
    size = value.adjusted() if value else 0
    if size < -3 or (size >= 4 and int(value.as_tuple().exponent) > 0):
        return f"{abs(value).scaleb(-size):f}", size
    whole, _, fraction = f"{abs(value):f}".partition(".")
    if len(whole) > 4:
        whole = re.sub(r"(?<=\d)(?=(\d{3})+$)", lambda _: group, whole)
    return f"{whole}.{fraction}" if fraction else whole, 0


class _Latex(Notation):
    thin = r"\,"
    after_function = " "  # TeX sets the space after \sin itself
    times = r"\times "
    minus = "-"

    def symbol(self, symbol: str) -> str:
        if symbol[:1] in _SIGNS:
            return _SIGNS[symbol[0]] + symbol[1:]
        head, _, subscript = symbol.partition("_")
        letter = "\\" + head if head in _GREEK else head
        if len(head) > 1 and head not in _GREEK:
            letter = rf"\mathit{{{head}}}"
        return f"{letter}_{{{self._subscript(subscript)}}}" if subscript else letter

    @staticmethod
    def _subscript(text: str) -> str:
        shown = [
            part if part in _ITALIC_SUBSCRIPTS or part.isdigit()
            else "\\" + part if part in _GREEK
            else rf"\mathrm{{{part}}}"
            for part in text.split("_")
        ]  # fmt: skip
        return ",".join(shown) if len(shown) > 1 else shown[0]

    def number(self, value: Decimal) -> str:
        digits, power = _digits(value, r"\,")
        sign = "-" if value.is_signed() and value else ""
        return sign + digits + (rf"\times 10^{{{power}}}" if power else "")

    def quantity(self, printed: Number) -> str:
        unit = printed.unit
        text = self.number(printed.value)
        if unit is None or not unit.latex:
            return text
        return text + ("" if unit.tight else r"\,") + unit.latex

    def brackets(self, inner: str) -> str:
        tall = "frac{" in inner or r"\sqrt" in inner
        return rf"\left({inner}\right)" if tall else f"({inner})"

    def fraction(self, top: _Printed, bottom: _Printed, depth: int) -> _Printed:
        command = r"\dfrac" if depth == 0 else r"\tfrac"
        return _Printed(rf"{command}{{{top.text}}}{{{bottom.text}}}", _TIGHT)

    def power(self, base: str, exponent: int) -> str:
        return f"{base}^{{{exponent}}}"

    def root(self, inner: str) -> str:
        return rf"\sqrt{{{inner}}}"

    def function(self, name: str) -> str:
        return _TRIGONOMETRIC.get(name, rf"\operatorname{{{name}}}")

    def words(self, text: str) -> str:
        return rf"\text{{{text}}}"

    def relation(self, sign: str) -> str:
        return _RELATIONS[sign]

    def balance(self, balance: Balance) -> str:
        letter = {"force": "F", "torque": r"\tau", "moment": "M"}[balance.kind]
        about = self.symbol(balance.about)
        return rf"\textstyle\sum {letter}_{{{about}}}"


class _Plain(Notation):
    thin = " "
    after_function = " "
    times = " × "
    minus = "−"

    def symbol(self, symbol: str) -> str:
        return "_".join(_GREEK.get(part, part) for part in symbol.split("_"))

    def number(self, value: Decimal) -> str:
        digits, power = _digits(value, "\u202f")
        sign = "−" if value.is_signed() and value else ""
        return sign + digits + (f" × 10{str(power).translate(_SUPERSCRIPTS)}" if power else "")

    def quantity(self, printed: Number) -> str:
        unit = printed.unit
        text = self.number(printed.value)
        if unit is None or not unit.plain:
            return text
        return text + ("" if unit.tight else " ") + unit.plain

    def brackets(self, inner: str) -> str:
        return f"({inner})"

    def fraction(self, top: _Printed, bottom: _Printed, depth: int) -> _Printed:
        above = top.text if top.hold >= _TERM else self.brackets(top.text)
        below = bottom.text if bottom.hold >= _TIGHT else self.brackets(bottom.text)
        return _Printed(f"{above}/{below}", _TERM)

    def power(self, base: str, exponent: int) -> str:
        return base + str(exponent).translate(_SUPERSCRIPTS)

    def root(self, inner: str) -> str:
        return f"√({inner})"

    def function(self, name: str) -> str:
        return _INVERSE.get(name, name)

    def words(self, text: str) -> str:
        return text

    def relation(self, sign: str) -> str:
        return sign

    def balance(self, balance: Balance) -> str:
        letter = {"force": "F", "torque": "τ", "moment": "M"}[balance.kind]
        return f"Σ{letter}_{balance.about}"


_LATEX: Final = _Latex()
_PLAIN: Final = _Plain()


def _print(expression: Expression, to: Notation, depth: int) -> _Printed:
    match expression:
        case Number():
            return _print_number(expression, to)
        case Name(symbol=symbol):
            return _print_name(symbol, to)
        case Lump(inner):
            return _print(inner, to, depth)
        case Sum(terms):
            return _print_sum(terms, to, depth)
        case Product(factors):
            return _print_product(factors, to, depth)
        case Quotient(top, bottom):
            return to.fraction(_print(top, to, depth + 1), _print(bottom, to, depth + 1), depth)
        case Power(base, exponent):
            printed = _print(base, to, depth)
            single = isinstance(base, Name) or (isinstance(base, Number) and base.unit is None)
            text = printed.text if single else to.brackets(printed.text)
            return _Printed(to.power(text, exponent), _TIGHT)
        case Call():
            return _print_call(expression, to, depth)
        case Root(balance, _, _, _):
            return _print(balance, to, depth)


@lru_cache(maxsize=1024)
def _print_name(symbol: str, to: Notation) -> _Printed:
    return _Printed(to.symbol(symbol), _TIGHT)


def _print_number(printed: Number, to: Notation) -> _Printed:
    text = to.quantity(printed)
    if printed.value.is_signed() and printed.value:
        return _Printed(text, _LOOSE)
    spaced = printed.unit is not None and bool(printed.unit.plain) and not printed.unit.tight
    return _Printed(text, _FACTOR if spaced or "10" in text[3:] else _TIGHT)


def _tight(printed: _Printed, to: Notation) -> str:
    return printed.text if printed.hold >= _TIGHT else to.brackets(printed.text)


def _print_sum(terms: Iterable[tuple[int, Expression]], to: Notation, depth: int) -> _Printed:
    text = ""
    for sign, term in terms:
        printed = _print(term, to, depth)
        body = printed.text if printed.hold > _LOOSE else to.brackets(printed.text)
        if text:
            text += f" {to.minus if sign < 0 else '+'} {body}"
        else:
            text = f"{to.minus}{body}" if sign < 0 else printed.text
    return _Printed(text, _LOOSE)


def _print_product(factors: tuple[Expression, ...], to: Notation, depth: int) -> _Printed:
    """Factors side by side: those with units in brackets, functions such as sin 40° last."""
    calls = [f for f in factors if _is_trigonometric(f)]
    others = [f for f in factors if not _is_trigonometric(f)]
    pieces: list[str] = []
    measured = any(isinstance(f, Number) and f.unit is not None for f in others)
    for factor in others:
        printed = _print(factor, to, depth + 1)
        plain_decimal = isinstance(factor, Number) and "." in printed.text
        pieces.append(
            to.brackets(printed.text) if measured and plain_decimal else _tight(printed, to)
        )
    for call in calls:
        pieces.append(_print(call, to, depth + 1).text)
    text = pieces[0]
    for before, piece in pairwise(pieces):
        bracketed = before.endswith(")") and piece.startswith(("(", r"\left("))
        clash = before[-1:].isdigit() and piece[:1].isdigit()
        text += (to.times if clash else "" if bracketed else to.thin) + piece
    return _Printed(text, _TERM)


def _is_trigonometric(factor: Expression) -> bool:
    return isinstance(factor, Call) and factor.function in _TRIGONOMETRIC


def _print_call(call: Call, to: Notation, depth: int) -> _Printed:
    inner = [_print(argument, to, depth + 1) for argument in call.arguments]
    match call.function:
        case "sqrt":
            return _Printed(to.root(inner[0].text), _TIGHT)
        case "hypot":
            squares = [Power(argument, 2) for argument in call.arguments]
            return _Printed(
                to.root(_print_sum([(1, square) for square in squares], to, depth + 1).text), _TIGHT
            )
        case "abs":
            return _Printed(f"|{inner[0].text}|", _TIGHT)
        case name if name in _TRIGONOMETRIC:
            argument = call.arguments[0]
            simple = isinstance(argument, Name) or inner[0].hold >= _TIGHT
            if isinstance(argument, Quotient | Call):
                simple = False
            shown = to.after_function + inner[0].text if simple else to.brackets(inner[0].text)
            return _Printed(to.function(name) + shown, _TERM if simple else _TIGHT)
        case name:
            listed = ", ".join(printed.text for printed in inner)
            return _Printed(to.function(name) + to.brackets(listed), _TIGHT)


def _write(formula: Expression | Formula, to: Notation, depth: int) -> str:
    if isinstance(formula, tuple):
        return " ".join([_write_piece(piece, to, depth) for piece in formula])
    return _write_piece(formula, to, depth)


def _write_piece(piece: Piece, to: Notation, depth: int) -> str:
    match piece:
        case Number() | Name():
            return _print(piece, to, depth).text
        case Relation(sign):
            return to.relation(sign)
        case Words(text):
            return to.words(text)
        case Balance():
            return to.balance(piece)
        case _:
            return _print_whole(piece, to, depth)


@kept(2048)  # what a plan is made of is printed for every student
def _print_whole(expression: Expression, to: Notation, depth: int) -> str:
    return _print(expression, to, depth).text


def latex(formula: Expression | Formula, *, display: bool = True) -> str:
    """LaTeX for math mode, without delimiters; `display` asks for full-size fractions."""
    return _write(formula, _LATEX, 0 if display else 1)


def plain(formula: Expression | Formula) -> str:
    """The formula on one line of Unicode text."""
    return _write(formula, _PLAIN, 0)


def symbol_latex(symbol: str) -> str:
    r"""LaTeX of a symbol in short notation: "W_s" gives W_{\mathrm{s}}, "theta" gives \theta."""
    return _LATEX.symbol(symbol)


def symbol_plain(symbol: str) -> str:
    return _PLAIN.symbol(symbol)
