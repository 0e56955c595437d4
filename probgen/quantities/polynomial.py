"""Polynomials in one letter whose coefficients are products of other quantities.

w_0 (x/L)^2 is w_0 L^-2 in front of x^2: integrated from 0 to L it is w_0 L/3, exactly, with what
is above and below a fraction cancelled.  A sum below a fraction, such as x/(L - d), counts as one
quantity, and so does a function of what does not hold the letter.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm
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
    names_in,
    number,
    over,
    parts,
    times,
    total,
)
from probgen.quantities.like_terms import multiple

HIGHEST: Final = 6
"""Of the power of the letter."""

_SHORT: Final = 12
"""The largest whole number before a term of a sum in brackets."""

_Powers = frozenset[tuple[Expression, int]]
_Terms = dict[_Powers, Fraction]


@dataclass(frozen=True, slots=True)
class Polynomial:
    """A polynomial in `by`: its terms, each a number times powers of quantities.

    order: the quantities in the order they are written in.
    """

    by: Name
    terms: tuple[tuple[_Powers, Fraction], ...]
    order: tuple[Expression, ...]

    @property
    def degree(self) -> int:
        """The highest power of the letter; 0 of what does not hold it."""
        return max((dict(powers).get(self.by, 0) for powers, _ in self.terms), default=0)

    @property
    def expression(self) -> Expression:
        """The sum of its terms, lowest power first, fractions cancelled."""
        ranked = sorted(self.terms, key=lambda term: dict(term[0]).get(self.by, 0))
        return total(*(self._written(powers, factor) for powers, factor in ranked))

    @property
    def factored(self) -> Expression:
        """The same with what all terms share before or below a sum of short ones: (2 a + b) L/3.

        Where the terms left are no short ones it stays a sum.
        """
        if len(self.terms) < 2:
            return self.expression
        held = [dict(powers) for powers, _ in self.terms]
        shared = {part: _in_all([powers.get(part, 0) for powers in held]) for part in self.order}
        below = lcm(*(factor.denominator for _, factor in self.terms))
        outside = frozenset((part, power) for part, power in shared.items() if power)
        inverse: _Terms = {frozenset((part, -power) for part, power in outside): Fraction(below)}
        left = _product(dict(self.terms), inverse)
        short = all(abs(size) <= _SHORT for size in left.values())
        if not short or any(p < 0 for each in left for _, p in each):
            return self.expression
        inner = Polynomial(self.by, tuple(left.items()), self.order).expression
        sign, before = self._written(outside, Fraction(1, below))
        return total((sign, _before(inner, before)))

    @property
    def without_content(self) -> Polynomial:
        """The same without what all its terms share, as short as an equation p = 0 may be."""
        held = [dict(powers) for powers, _ in self.terms]
        letters = [part for part in self.order if part != self.by]
        shared = {part: min(powers.get(part, 0) for powers in held) for part in letters}
        outside = frozenset((part, -power) for part, power in shared.items() if power)
        sizes = [factor for _, factor in self.terms]
        scale = Fraction(lcm(*(size.denominator for size in sizes)))
        scale /= gcd(*(int(size * scale) for size in sizes))
        return _made(self, _product(dict(self.terms), {outside: scale}))

    @property
    def coefficients(self) -> tuple[Expression, ...]:
        """What the powers of the letter are taken by, the lowest first."""
        found: list[list[tuple[int, Expression]]] = [[] for _ in range(self.degree + 1)]
        for powers, factor in self.terms:
            rest = frozenset(each for each in powers if each[0] != self.by)
            found[dict(powers).get(self.by, 0)].append(self._written(rest, factor))
        return tuple(total(*terms) for terms in found)

    @property
    def single(self) -> bool:
        """Whether it is one term."""
        return len(self.terms) == 1

    @property
    def letters(self) -> frozenset[Expression]:
        """The quantities its terms are powers of, but its own letter."""
        return frozenset(part for powers, _ in self.terms for part, _ in powers) - {self.by}

    def _written(self, powers: _Powers, factor: Fraction) -> tuple[int, Expression]:
        ranked = sorted(powers, key=lambda each: self.order.index(each[0]))
        above = [_power(part, power) for part, power in ranked if power > 0]
        below = [_power(part, -power) for part, power in ranked if power < 0]
        sign, size = (1 if factor > 0 else -1), abs(factor)
        if not below and len(above) == 1 and isinstance(above[0], Number):
            return sign, multiple(above[0], size)  # three quarters of 2 m is 1.5 m
        if size.numerator != 1 or not above:
            above.insert(0, number(size.numerator))
        if size.denominator != 1:
            below.insert(0, number(size.denominator))
        return sign, over(times(*above), times(*below))

    def times_letter(self) -> Polynomial:
        """The polynomial times its letter."""
        return _made(self, _product(dict(self.terms), {frozenset({(self.by, 1)}): Fraction(1)}))

    def antiderivative(self) -> Polynomial:
        """The one that is zero where the letter is."""
        found: _Terms = {}
        for powers, factor in self.times_letter().terms:
            found[powers] = factor / dict(powers)[self.by]
        return _made(self, found)

    def at(self, place: Expression) -> Polynomial:
        """With an expression in the place of the letter."""
        order = (*self.order, *(part for part in _atoms(place) if part not in self.order))
        there: _Terms = (
            {frozenset({(place, 1)}): Fraction(1)} if isinstance(place, Sum) else _read(place)
        )
        if isinstance(place, Sum) and place not in order:
            order = (*order, place)
        found: _Terms = {}
        for powers, factor in self.terms:
            rest = {part: power for part, power in powers if part != self.by}
            term: _Terms = {frozenset(rest.items()): factor}
            for _ in range(dict(powers).get(self.by, 0)):
                term = _product(term, there)
            _add(found, term)
        return Polynomial(self.by, tuple(found.items()), order)

    def between(self, start: Expression, end: Expression) -> Polynomial:
        """Its value at an end less that at a start."""
        last, first = self.at(end), self.at(start)
        found = dict(last.terms)
        _add(found, {powers: -factor for powers, factor in first.terms})
        order = (*last.order, *(part for part in first.order if part not in last.order))
        return Polynomial(self.by, tuple(found.items()), order)

    def over(self, other: Polynomial) -> Polynomial | None:
        """The quotient by a single term; None by more of them."""
        if not other.single:
            return None
        ((powers, factor),) = other.terms
        inverse = {frozenset((part, -power) for part, power in powers): 1 / factor}
        order = (*self.order, *(part for part in other.order if part not in self.order))
        return Polynomial(self.by, tuple(_product(dict(self.terms), inverse).items()), order)

    def over_name(self, name: Name) -> Polynomial:
        """The quotient by a quantity that does not hold the letter."""
        inverse: _Terms = {frozenset({(name, -1)}): Fraction(1)}
        terms = _product(dict(self.terms), inverse)
        return Polynomial(self.by, tuple(terms.items()), (*self.order, name))


def polynomial(expression: Expression, by: Name) -> Polynomial | None:
    """An expression as a polynomial in a letter; None where it is none of at most `HIGHEST`."""
    if not _polynomial_in(expression, by):
        return None
    order = dict.fromkeys((*_atoms(expression), by))
    found = Polynomial(by, tuple(_read(expression).items()), tuple(order))
    return found if found.degree <= HIGHEST else None


def _polynomial_in(expression: Expression, by: Name) -> bool:
    """Whether the letter stands in sums, products and powers alone, and below no fraction."""
    if by.id not in names_in(expression):
        return True
    match expression:
        case Name():
            return True
        case Quotient(top, bottom):
            return by.id not in names_in(bottom) and _polynomial_in(top, by)
        case Power(base, exponent):
            return exponent > 0 and _polynomial_in(base, by)
        case Sum() | Product() | Lump():
            return all(_polynomial_in(part, by) for part in parts(expression))
        case _:
            return False


def _atoms(expression: Expression) -> Iterator[Expression]:
    """What its terms are powers of, as it is written."""
    match expression:
        case Number(_, None):
            return
        case Number() | Name() | Call() | Root():
            yield expression
        case Quotient(top, bottom):
            yield from _atoms(top)
            for factor in bottom.factors if isinstance(bottom, Product) else (bottom,):
                yield from (factor,) if isinstance(factor, Sum) else _atoms(factor)
        case Power(Sum() as base, exponent) if exponent < 0:
            yield base
        case _:
            for part in parts(expression):
                yield from _atoms(part)


def _read(expression: Expression) -> _Terms:
    """Its terms."""
    found: _Terms = {}
    match expression:
        case Number(value, None):
            _add(found, {frozenset(): Fraction(value)})
        case Number() | Name() | Call() | Root():
            _add(found, {frozenset({(expression, 1)}): Fraction(1)})
        case Lump(inner):
            _add(found, _read(inner))
        case Sum(terms):
            for sign, term in terms:
                signed = {powers: sign * each for powers, each in _read(term).items()}
                _add(found, signed)
        case Product(factors):
            product: _Terms = {frozenset(): Fraction(1)}
            for factor in factors:
                product = _product(product, _read(factor))
            _add(found, product)
        case Quotient(top, bottom):
            _add(found, _product(_read(top), _inverse(bottom)))
        case Power(base, exponent):
            one = _read(base) if exponent > 0 else _inverse(base)
            raised: _Terms = {frozenset(): Fraction(1)}
            for _ in range(abs(exponent)):
                raised = _product(raised, one)
            _add(found, raised)
    return found


def _inverse(bottom: Expression) -> _Terms:
    """One over an expression; a sum is one quantity there, also among factors."""
    if isinstance(bottom, Product):
        found: _Terms = {frozenset(): Fraction(1)}
        for factor in bottom.factors:
            found = _product(found, _inverse(factor))
        return found
    if isinstance(bottom, Sum) and len(bottom.terms) > 1:
        return {frozenset({(bottom, -1)}): Fraction(1)}
    read = _read(bottom)
    if len(read) != 1:
        return {frozenset({(bottom, -1)}): Fraction(1)}
    ((powers, size),) = read.items()
    return {frozenset((part, -power) for part, power in powers): 1 / size}


def _product(one: _Terms, other: _Terms) -> _Terms:
    found: _Terms = {}
    for powers, factor in one.items():
        for more, second in other.items():
            joined = dict(powers)
            for part, power in more:
                joined[part] = joined.get(part, 0) + power
            kept = frozenset((part, power) for part, power in joined.items() if power)
            _add(found, {kept: factor * second})
    return found


def _add(terms: _Terms, more: _Terms) -> None:
    for powers, factor in more.items():
        terms[powers] = terms.get(powers, Fraction(0)) + factor
        if not terms[powers]:
            del terms[powers]


def _in_all(powers: Sequence[int]) -> int:
    """What of its powers all terms have of a quantity, above or below the fraction."""
    if all(power > 0 for power in powers):
        return min(powers)
    return max(powers) if all(power < 0 for power in powers) else 0


def _before(inner: Expression, factor: Expression) -> Expression:
    """A sum times a factor, in the top of that where it is a fraction."""
    if isinstance(factor, Quotient):
        return Quotient(times(inner, factor.top), factor.bottom)
    return times(inner, factor)


def _power(part: Expression, power: int) -> Expression:
    return part if power == 1 else Power(part, power)


def _made(of: Polynomial, terms: _Terms) -> Polynomial:
    return Polynomial(of.by, tuple(terms.items()), of.order)
