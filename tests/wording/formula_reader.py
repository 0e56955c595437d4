r"""A reader of printed formulas, from their LaTeX alone: what a formula is worth, with its units.

It knows the marks that stand on a page, and nothing of the trees they came from: a fraction is
\dfrac or \tfrac or has a solidus, side by side is times, a number and \mathrm{..} is a quantity, a
thin space between groups of three digits is no sign.  It is strict where a page would be ambiguous:
a power stands on a symbol, a number without unit, or brackets; a minus sign never follows a sign;
nothing stands behind what is below a solidus.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, field

import numpy as np

Kind = tuple[float, float, float, float]
"""Exponents of metre, kilogram, second and degree."""

World = dict[str, tuple[float, Kind]]
"""What printed symbols stand for."""

Told = dict[str, str]
"""The formulas, as LaTeX, of symbols that stand for more than one value: w of a load along x."""

NONE: Kind = (0, 0, 0, 0)
DEGREES: Kind = (0, 0, 0, 1)
POUND_FORCE = 0.45359237 * 9.80665
UNITS: dict[str, tuple[float, Kind]] = {
    r"m": (1.0, (1, 0, 0, 0)),
    r"cm": (0.01, (1, 0, 0, 0)),
    r"mm": (0.001, (1, 0, 0, 0)),
    r"km": (1000.0, (1, 0, 0, 0)),
    r"ft": (0.3048, (1, 0, 0, 0)),
    r"in": (0.0254, (1, 0, 0, 0)),
    r"kg": (1.0, (0, 1, 0, 0)),
    r"g": (0.001, (0, 1, 0, 0)),
    r"t": (1000.0, (0, 1, 0, 0)),
    r"lb": (0.45359237, (0, 1, 0, 0)),
    r"slug": (POUND_FORCE / 0.3048, (0, 1, 0, 0)),
    r"N": (1.0, (1, 1, -2, 0)),
    r"kN": (1000.0, (1, 1, -2, 0)),
    r"lbf": (POUND_FORCE, (1, 1, -2, 0)),
    r"kip": (1000.0 * POUND_FORCE, (1, 1, -2, 0)),
    r"N{\cdot}m": (1.0, (2, 1, -2, 0)),
    r"kN{\cdot}m": (1000.0, (2, 1, -2, 0)),
    r"lbf{\cdot}ft": (POUND_FORCE * 0.3048, (2, 1, -2, 0)),
    r"lbf{\cdot}in": (POUND_FORCE * 0.0254, (2, 1, -2, 0)),
    r"kip{\cdot}ft": (304.8 * POUND_FORCE, (2, 1, -2, 0)),
    r"kip{\cdot}in": (25.4 * POUND_FORCE, (2, 1, -2, 0)),
    r"m/s^{2}": (1.0, (1, 0, -2, 0)),
    r"ft/s^{2}": (0.3048, (1, 0, -2, 0)),
    r"N/m": (1.0, (0, 1, -2, 0)),
    r"N/cm": (100.0, (0, 1, -2, 0)),
    r"N/mm": (1000.0, (0, 1, -2, 0)),
    r"kN/m": (1000.0, (0, 1, -2, 0)),
    r"lbf/ft": (POUND_FORCE / 0.3048, (0, 1, -2, 0)),
    r"lbf/in": (POUND_FORCE / 0.0254, (0, 1, -2, 0)),
    r"kip/ft": (1000.0 * POUND_FORCE / 0.3048, (0, 1, -2, 0)),
    r"Pa": (1.0, (-1, 1, -2, 0)),
    r"kPa": (1000.0, (-1, 1, -2, 0)),
    r"MPa": (1.0e6, (-1, 1, -2, 0)),
    r"psf": (POUND_FORCE / 0.3048**2, (-1, 1, -2, 0)),
    r"psi": (POUND_FORCE / 0.0254**2, (-1, 1, -2, 0)),
    r"ksi": (1000.0 * POUND_FORCE / 0.0254**2, (-1, 1, -2, 0)),
    r"N/m^{2}": (1.0, (-1, 1, -2, 0)),
    r"kN/m^{2}": (1000.0, (-1, 1, -2, 0)),
    r"N/m^{3}": (1.0, (-2, 1, -2, 0)),
    r"kN/m^{3}": (1000.0, (-2, 1, -2, 0)),
    r"lbf/ft^{3}": (POUND_FORCE / 0.3048**3, (-2, 1, -2, 0)),
    r"m^{2}": (1.0, (2, 0, 0, 0)),
    r"cm^{2}": (1.0e-4, (2, 0, 0, 0)),
    r"in^{2}": (0.0254**2, (2, 0, 0, 0)),
    r"rad": (math.degrees(1.0), DEGREES),
    r"turn": (360.0, DEGREES),
    r"turns": (360.0, DEGREES),
}

TOKEN = re.compile(
    r"(?P<number>\d{1,3}(?:\\,\d{3})+(?!\d)(?:\.\d+)?|\d+(?:\.\d+)?)"
    r"|(?P<e>\\mathrm\{e\}\^(?=\{))"
    r"|(?P<unit>\\mathrm\{(?:[^{}]|\{[^{}]*\})*\})"
    r"|(?P<degree>\^\{\\circ\})"
    r"|(?P<power>\^\{-?\d+\})"
    r"|(?P<symbol>(?:\\(?:alpha|beta|gamma|delta|epsilon|eta|theta|kappa|lambda|mu|nu|rho|sigma"
    r"|tau|phi|psi|omega|Delta|Sigma|Omega|Phi|ell|pi)(?![A-Za-z])|\\(?:mathit|bar)\{[A-Za-z]+\}|[A-Za-z])"
    r"(?:_\{(?:[^{}]|\{[^{}]*\})*\})?)"
    r"|(?P<word>\\(?:dfrac|tfrac|sqrt|sin|cos|tan|arcsin|arccos|arctan|ln|times|left|right)(?![A-Za-z]))"
    r"|(?P<mark>[-+(){}|/])"
    r"|(?P<thin>\\,)"
    r"|(?P<space>\s+)"
)


class UnreadableError(Exception):
    """The formula says nothing, or two things."""


class UnknownSymbolError(UnreadableError):
    """A symbol that stands for nothing here."""


@dataclass(frozen=True)
class Size:
    """A value in metres, kilograms, seconds, degrees; `last`: one unit of its last digit.

    last is None for what is no single printed number; whole: whether a symbol entered it.
    """

    value: float
    kind: Kind = NONE
    last: float | None = None
    named: bool = False


@dataclass
class Reader:
    """Recursive descent through one formula."""

    text: str
    names: World = field(default_factory=dict)
    at: int = 0

    def __post_init__(self) -> None:
        self.tokens: list[tuple[str, str]] = []
        place = 0
        while place < len(self.text):
            found = TOKEN.match(self.text, place)
            if not found:
                raise UnreadableError(f"no mark known at {self.text[place:]!r}")
            kind = str(found.lastgroup)
            if kind != "space":
                self.tokens.append((kind, found.group()))
            place = found.end()

    def whole(self) -> Size:
        size = self.sum()
        if self.at != len(self.tokens):
            raise UnreadableError(f"left over: {self.tokens[self.at :]} of {self.text}")
        return size

    def next(self) -> tuple[str, str]:
        return self.tokens[self.at] if self.at < len(self.tokens) else ("end", "")

    def take(self, text: str = "") -> str:
        found = self.next()[1]
        if text and found != text:
            raise UnreadableError(f"{text!r} expected, {found!r} found in {self.text}")
        self.at += 1
        return found

    def sum(self) -> Size:
        sign = -1.0 if self.next()[1] == "-" else 1.0
        if sign < 0:
            self.take()
        first = self.product()
        result = Size(sign * first.value, first.kind, first.last, first.named)
        while self.next()[1] in ("+", "-"):
            sign = 1.0 if self.take() == "+" else -1.0
            term = self.product()
            result = Size(*self.added(result, term, sign), named=result.named or term.named)
        return result

    def added(self, one: Size, other: Size, sign: float) -> tuple[float, Kind]:
        """Terms of a sum are of one kind; a plain 0 may be of any."""
        if one.kind != other.kind:
            raise UnreadableError(f"{one.kind} and {other.kind} added in {self.text}")
        return one.value + sign * other.value, one.kind

    def product(self) -> Size:
        result = self.factor()
        while True:
            kind, text = self.next()
            if text == "/":
                return self.over(result)
            if kind == "thin" or text == r"\times":
                self.take()
            elif not (text in ("(", r"\left") or (kind == "word" and text not in (r"\right",))):
                return result
            other = self.factor()
            kinds = tuple(a + b for a, b in zip(result.kind, other.kind, strict=True))
            named = result.named or other.named
            result = Size(result.value * other.value, kinds, named=named)  # type: ignore[arg-type]

    def over(self, above: Size) -> Size:
        """One factor below a solidus, behind which nothing more may stand: in a/b c, is c below?"""
        self.take("/")
        below = self.factor()
        kind, text = self.next()
        if kind != "end" and text not in ("+", "-", ")", r"\right", "}", "|"):
            raise UnreadableError(f"{text!r} behind a solidus in {self.text}")
        kinds = tuple(a - b for a, b in zip(above.kind, below.kind, strict=True))
        named = above.named or below.named
        value = above.value / below.value if below.value else math.nan
        return Size(value, kinds, named=named)  # type: ignore[arg-type]

    def factor(self) -> Size:
        kind, text = self.next()
        if kind == "number":
            return self.number()
        if kind == "symbol":
            return self.raised(self.symbol())
        if text in ("(", r"\left"):
            return self.raised(self.brackets())
        if text == "|":
            self.take()
            inner = self.sum()
            self.take("|")
            return Size(abs(inner.value), inner.kind, named=inner.named)
        if text == "{":  # a function behind a solidus
            return self.group()
        if text in (r"\dfrac", r"\tfrac"):
            return self.unpowered(self.fraction())
        if kind == "e":
            return self.unpowered(self.exponential())
        if text == r"\sqrt":
            self.take()
            inner = self.group()
            kinds = tuple(exponent / 2 for exponent in inner.kind)
            if inner.value < 0.0:
                raise UnreadableError(f"root of a negative number in {self.text}")
            root = Size(math.sqrt(inner.value), kinds, named=inner.named)  # type: ignore[arg-type]
            return self.unpowered(root)
        if kind == "word" and text != r"\right":
            return self.function()
        raise UnreadableError(f"{text!r} found where a quantity should be in {self.text}")

    def number(self) -> Size:
        """Digits, a power of ten, a unit: one printed number."""
        digits = self.take().replace(r"\,", "")
        value, last = float(digits), 10.0 ** -len(digits.partition(".")[2])
        ahead = self.tokens[self.at : self.at + 3]
        if [text for _, text in ahead[:2]] == [r"\times", "10"] and ahead[2:3]:
            power = 10.0 ** int(ahead[2][1][2:-1])
            value, last, self.at = value * power, last * power, self.at + 3
        if self.next()[0] == "degree":
            self.take()
            return self.unpowered(Size(value, DEGREES, last))
        ahead = self.tokens[self.at : self.at + 2]
        if [kind for kind, _ in ahead] == ["thin", "unit"]:
            factor, kinds = UNITS[ahead[1][1][len(r"\mathrm{") : -1]]
            self.at += 2
            return self.unpowered(Size(value * factor, kinds, last * factor))
        return self.raised(Size(value, NONE, last))

    def symbol(self) -> Size:
        text = self.take()
        if text == r"\pi":
            return Size(math.pi)
        if text not in self.names:
            raise UnknownSymbolError(f"{text} stands for nothing known in {self.text}")
        return Size(*self.names[text], named=True)

    def brackets(self) -> Size:
        tall = self.next()[1] == r"\left"
        if tall:
            self.take()
        self.take("(")
        inner = self.sum()
        if tall:
            self.take(r"\right")
        self.take(")")
        return inner

    def group(self) -> Size:
        self.take("{")
        inner = self.sum()
        self.take("}")
        return inner

    def fraction(self) -> Size:
        self.take()
        above, below = self.group(), self.group()
        kinds = tuple(a - b for a, b in zip(above.kind, below.kind, strict=True))
        named = above.named or below.named
        value = above.value / below.value if below.value else math.nan
        return Size(value, kinds, named=named)  # type: ignore[arg-type]

    def exponential(self) -> Size:
        """e to a plain number; an angle counts by its radians."""
        self.take()
        exponent = self.group()
        if exponent.kind not in (NONE, DEGREES):
            raise UnreadableError(f"e to the {exponent.kind} in {self.text}")
        plain = exponent.value if exponent.kind == NONE else math.radians(exponent.value)
        return Size(math.exp(plain), named=exponent.named)

    def function(self) -> Size:
        name = self.take()
        if self.next()[0] == "power":
            raise UnreadableError(f"a power on {name} in {self.text}")
        argument = self.factor()
        if name in (r"\sin", r"\cos", r"\tan"):
            if argument.kind not in (DEGREES, NONE):
                raise UnreadableError(f"{name} of {argument.kind} in {self.text}")
            if argument.kind == NONE:
                raise UnreadableError(f"{name} of a number without a degree sign in {self.text}")
            turned = math.radians(argument.value)
            worked = {r"\sin": math.sin, r"\cos": math.cos, r"\tan": math.tan}[name](turned)
            return Size(worked, named=argument.named)
        if argument.kind != NONE:
            raise UnreadableError(f"{name} of {argument.kind} in {self.text}")
        if name == r"\ln":  # of e to a coefficient times an angle, which counts by its radians
            return Size(math.degrees(math.log(argument.value)), DEGREES, named=argument.named)
        back = {r"\arcsin": math.asin, r"\arccos": math.acos, r"\arctan": math.atan}[name]
        return Size(math.degrees(back(argument.value)), DEGREES, named=argument.named)

    def raised(self, base: Size) -> Size:
        if self.next()[0] != "power":
            return base
        exponent = int(self.take()[2:-1])
        kinds = tuple(exponent * each for each in base.kind)
        return Size(base.value**exponent, kinds, named=base.named)  # type: ignore[arg-type]

    def unpowered(self, size: Size) -> Size:
        if self.next()[0] == "power":
            raise UnreadableError(f"a power on something that is not in brackets in {self.text}")
        return size


# Integrals.

ALONG = "x"
METRES: Kind = (1, 0, 0, 0)
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(10)


def read(text: str, names: World, told: Told) -> Size:
    """A formula with integrals in it: each is worked out by quadrature from what it says.

    told: formulas of what changes along x, by its symbol.
    """
    while (start := re.search(r"\\int_|\\left\[", text)) is not None:
        name = f"\\mathit{{{'I' * (len(names) + 1)}}}"
        if start.group() == r"\int_":
            low, place = _group(text, start.end())
            high, place = _group(text, place + 1)
            end = text.index(rf"\,\mathrm{{d}}{ALONG}", place)
            inner, after = text[place:end], end + len(rf"\,\mathrm{{d}}{ALONG}")
        else:
            end = text.index(r"\right]_", start.end())
            inner = text[start.end() : end]
            low, place = _group(text, end + len(r"\right]_"))
            high, after = _group(text, place + 1)
        ends = [Reader(each, names).whole() for each in (low, high)]
        worked = _integral if start.group() == r"\int_" else _difference
        names = names | {name: worked(inner, ends, names, told)}
        text = f"{text[: start.start()]}\\,{name}{text[after:]}".removeprefix("\\,")
    return Reader(text, names).whole()


def _group(text: str, place: int) -> tuple[str, int]:
    """What stands in the braces that open at a place, and the place behind them."""
    depth = 0
    for at in range(place, len(text)):
        depth += (text[at] == "{") - (text[at] == "}")
        if not depth:
            return text[place + 1 : at], at + 1
    raise UnreadableError(f"braces left open in {text}")


def _at(inner: str, x: float, names: World, told: Told) -> Size:
    there = names | {ALONG: (x, METRES)}
    for symbol, formula in told.items():
        size = Reader(formula, there).whole()
        there[symbol] = size.value, size.kind
    return Reader(inner, there).whole()


def _integral(inner: str, ends: list[Size], names: World, told: Told) -> tuple[float, Kind]:
    low, high = (end.value for end in ends)
    half, middle = (high - low) / 2, (high + low) / 2
    sizes = [_at(inner, middle + half * node, names, told) for node in _NODES]
    value = sum(w * size.value for w, size in zip(_WEIGHTS, sizes, strict=True)) * half
    length, *others = sizes[0].kind
    return float(value), (length + 1, *others)  # type: ignore[return-value]


def _difference(inner: str, ends: list[Size], names: World, told: Told) -> tuple[float, Kind]:
    first, last = (_at(inner, end.value, names, told) for end in ends)
    return last.value - first.value, last.kind
