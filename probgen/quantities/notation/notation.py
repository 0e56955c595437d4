"""What a notation is: how the parts of a formula are put together in it."""

from __future__ import annotations

import re
from abc import ABC, abstractmethod
from decimal import Decimal
from enum import Enum, auto
from typing import NamedTuple

from probgen.quantities.expression import Number
from probgen.quantities.formula import Balance
from probgen.quantities.symbol import Symbol

LOOSE, TERM, FACTOR, TIGHT = range(4)
"""How tightly a printed part holds together."""


class Edge(Enum):
    """What a printed part begins or ends with."""

    DIGIT = auto()
    BRACKET = auto()
    FUNCTION = auto()
    OTHER = auto()


class Printed(NamedTuple):
    """A part of a formula as it is printed; a tuple, as parts are made by the thousand.

    hold: how tightly it holds together; first, last: its edges; tall: more than a line high.
    """

    text: str
    hold: int
    first: Edge = Edge.OTHER
    last: Edge = Edge.OTHER
    tall: bool = False


class Notation(ABC):
    """How the parts of a formula are put together; notations differ only in this.

    plus, minus: between terms; negative: the sign before a first term; thin, times: between
    factors that need no sign, and between numbers; next: between bracketed factors; upon, applied:
    before a function, and from it to an argument without brackets; space, comma: between pieces
    and arguments; solidus: of a fraction on one line.
    """

    plus: str
    minus: str
    negative: str
    thin: str
    times: str
    next: str = ""
    upon: str
    applied: str
    space: str
    comma: str
    solidus: str = "/"

    @abstractmethod
    def symbol(self, symbol: Symbol) -> str:
        """A quantity's symbol."""

    @abstractmethod
    def quantity(self, printed: Number) -> str:
        """A number with its unit."""

    @abstractmethod
    def brackets(self, inner: str, tall: bool) -> str:
        """A part in round brackets."""

    @abstractmethod
    def bars(self, inner: str) -> str:
        """The absolute value of a part."""

    @abstractmethod
    def fraction(self, top: Printed, bottom: Printed, depth: int) -> Printed:
        """One part over another; depth: 0 for a fraction of full size."""

    @abstractmethod
    def power(self, base: str, exponent: int) -> str:
        """A base, in brackets where it needs them, raised."""

    @abstractmethod
    def exponential(self, exponent: str) -> str:
        """The number e, raised."""

    @abstractmethod
    def root(self, inner: str) -> str:
        """A square root."""

    @abstractmethod
    def function(self, name: str) -> str:
        """A function's name."""

    @abstractmethod
    def words(self, text: str) -> str:
        """Upright words."""

    @abstractmethod
    def relation(self, sign: str) -> str:
        """The sign of a relation."""

    @abstractmethod
    def balance(self, balance: Balance) -> str:
        """The name of a balance."""

    @abstractmethod
    def summed(self, inner: str) -> str:
        """The sum over everything that a part stands for."""

    @abstractmethod
    def integral(self, inner: str, by: str, start: str, end: str) -> str:
        """An integral with its limits; by: the letter it is taken by."""

    @abstractmethod
    def difference(self, inner: str, start: str, end: str) -> str:
        """An antiderivative in square brackets with its limits."""

    def slashed(self, top: Printed, bottom: Printed) -> Printed:
        """One over the other with a solidus; two numbers with units both in brackets.

        Of two functions neither needs any: sin a/cos a.
        """
        units = top.hold == bottom.hold == FACTOR
        above = top.text if top.hold >= TERM and not units else self._bracketed(top)
        below = bottom.text if bottom.hold >= TIGHT else self._bracketed(bottom)
        if bottom.hold < TIGHT and top.first is bottom.first is Edge.FUNCTION:
            below = self.behind_solidus(bottom.text)
        return Printed(self.row(f"{above}{self.solidus}{below}"), TERM)

    def behind_solidus(self, function: str) -> str:
        """A function as it stands without brackets behind a solidus."""
        return function

    def _bracketed(self, part: Printed) -> str:
        return self.brackets(part.text, part.tall)

    def row(self, inner: str) -> str:
        """Parts side by side, as one."""
        return inner


def of_numbers(top: Printed, bottom: Printed) -> bool:
    """Whether a fraction is one of plain numbers, 3/5, which may be small."""
    parts = (top, bottom)
    return all(each.hold == TIGHT and each.first is each.last is Edge.DIGIT for each in parts)


def on_the_line(top: Printed, bottom: Printed, depth: int) -> bool:
    """Whether a fraction is written with a solidus: L/2 among other factors, any within another.

    So nothing is in small print.  Not so of plain numbers, nor over a number with a unit, which
    would take brackets; one over a root, a sum or a product has its full size among factors.
    """
    plain = bottom.hold == TIGHT and not bottom.tall
    return (
        (depth > 1 or (depth == 1 and plain))
        and bottom.hold != FACTOR
        and not of_numbers(top, bottom)
    )


def scaled(value: Decimal) -> int:
    """The power of ten a number is printed with, 0 for none.

    A zero that only fills a place would hide which figures are known.
    """
    size = value.adjusted() if value else 0
    return size if size < -3 or int(value.as_tuple().exponent) > 0 else 0


def digits(value: Decimal, group: str) -> str:
    """The digits of a number without its sign and its power of ten, in groups of three."""
    power = scaled(value)
    if power:
        return f"{abs(value).scaleb(-power):f}"
    whole, _, fraction = f"{abs(value):f}".partition(".")
    if len(whole) > 4:
        whole = re.sub(r"(?<=\d)(?=(\d{3})+$)", lambda _: group, whole)
    return f"{whole}.{fraction}" if fraction else whole


def has_point(value: Decimal) -> bool:
    """Whether a number is printed with a decimal point."""
    places = int(value.as_tuple().exponent)
    power = scaled(value)
    return value.adjusted() > places if power else places < 0


def is_negative(value: Decimal) -> bool:
    """Whether a number is printed with a minus sign."""
    return value.is_signed() and bool(value)
