"""Quotients cancelled through what is written as one number: W (L/2) cos a/L is W cos a/2."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm

from probgen.quantities.expression import (
    Call,
    Expression,
    Lump,
    Name,
    Number,
    Power,
    Quotient,
    Sum,
    number,
    over,
    times,
    total,
)
from probgen.quantities.factors import factors_of, terms_of
from probgen.quantities.like_terms import collected


def cancelled(value: Expression) -> Expression:
    """A quotient without what all its terms share above, or below; anything else as it is.

    Factors are found inside lever arms too: P (2 p)/(3 p) is 2 P/3.  A length or a slant that
    divides twice is squared: W (d/r)/r is W d/(d^2 + h^2).
    """
    match value:
        case Quotient():
            return _cancelled(value)
        case Sum(((sign, Quotient() as term),)):
            return total((sign, _cancelled(term)))
        case _:
            return value


@dataclass(slots=True)
class _Factor:
    """A factor as it is written, and what stands above and below its line."""

    written: Expression
    above: list[Expression]
    below: list[Expression]
    touched: bool = False


@dataclass(slots=True)
class _Term:
    sign: int
    factors: list[_Factor]

    def holds(self, part: Expression, *, above: bool) -> bool:
        bare = _inner(part)
        sides = (each.above if above else each.below for each in self.factors)
        return any(bare == _inner(held) for side in sides for held in side)

    def drop(self, part: Expression, *, above: bool) -> None:
        """Leaves a part out once."""
        for each in self.factors:
            side = each.above if above else each.below
            for held in side:
                if _inner(held) == _inner(part):
                    side.remove(held)
                    each.touched = True
                    return

    def sides(self, opened: bool = False) -> tuple[Fraction, list[Expression], list[Expression]]:
        """Its plain number, what is above its line, and what is below.

        opened: whether what is written as one number, such as h/2, is taken apart as well.
        """
        size, above, below = Fraction(1), list[Expression](), list[Expression]()
        for each in self.factors:
            if not (each.touched or opened):
                above += _sized(each.written)
                size *= _size([each.written])
                continue
            above += [part for outer in each.above for part in _sized(outer)]
            below += [part for outer in each.below for part in _sized(outer)]
            size *= _size(each.above) / _size(each.below)
        return size, above, below

    def scaled(self, scale: Fraction) -> tuple[int, Expression]:
        """Its sign, and the term as many times as large."""
        size, above, below = self.sides()
        if size * scale != 1:  # 2 (h/2) is h
            inner, outer, under = self.sides(opened=True)
            if (inner * scale).denominator == 1:
                return self.sign, _fraction(inner * scale, outer, under)
        return self.sign, _fraction(size * scale, above, below)


def _cancelled(quotient: Quotient) -> Expression:
    top, bottom = _terms(quotient.top), _terms(quotient.bottom)
    changed = [_shared_left_out([*top, *bottom], above=above) for above in (True, False)]
    if len(top) == len(bottom) == 1:
        changed.append(_squared(top[0], bottom[0]))
    if not any(changed):
        return quotient
    if len(top) == len(bottom) == 1:
        (size, above, below), (divisor, under, raised) = top[0].sides(), bottom[0].sides()
        found = _fraction(size / divisor, [*above, *raised], [*below, *under])
        return total((top[0].sign * bottom[0].sign, found))
    sizes = [term.sides()[0] for term in (*top, *bottom)]
    scale = Fraction(lcm(*(size.denominator for size in sizes)))
    scale /= gcd(*((size * scale).numerator for size in sizes))
    scaled = (total(*(term.scaled(scale) for term in side)) for side in (top, bottom))
    return over(*map(collected, scaled))


def _terms(expression: Expression) -> list[_Term]:
    return [
        _Term(sign, [_factor(factor) for factor in factors_of(term)])
        for sign, term in terms_of(expression)
    ]


def _factor(written: Expression) -> _Factor:
    match _bare(written):
        case Quotient(top, bottom):
            (above, under), (below, raised) = _bared(top), _bared(bottom)
            return _Factor(written, [*above, *raised], [*below, *under])
        case bare:
            return _Factor(written, *_bared(bare))


def _bared(side: Expression) -> tuple[list[Expression], list[Expression]]:
    """The factors of a side, squares as two; and those of powers below zero, which are beyond."""
    bare: tuple[list[Expression], list[Expression]] = ([], [])
    for factor in map(_bare, factors_of(side)):
        base, power = _power(factor)
        bare[power < 0].extend([base] * abs(power))
    return bare


def _power(factor: Expression) -> tuple[Expression, int]:
    return (factor.base, factor.exponent) if isinstance(factor, Power) else (factor, 1)


def _bare(part: Expression) -> Expression:
    """What is inside the mark that makes it one number; a sum or a root keeps its mark.

    So what is left of a term is written as its neighbours are: a slant stays one number.
    """
    inner = _inner(part)
    return part if isinstance(inner, Sum | Call) else inner


def _inner(part: Expression) -> Expression:
    """What is inside the mark, whatever it is."""
    return part.inner if isinstance(part, Lump) else part


def _shared_left_out(terms: list[_Term], *, above: bool) -> bool:
    """Leaves out what stands on one side of the line in all terms, once each time it does."""
    first = [part for each in terms[0].factors for part in (each.above if above else each.below)]
    shared = False
    for part in first:
        if not _plain(part) and all(term.holds(part, above=above) for term in terms):
            shared = True
            for term in terms:
                term.drop(part, above=above)
    return shared


def _squared(top: _Term, bottom: _Term) -> bool:
    """Puts the square of what divides twice below."""
    for part in [part for each in top.factors for part in each.below]:
        square = _square(part)
        if square is not None and bottom.holds(part, above=True):
            top.drop(part, above=False)
            bottom.drop(part, above=True)
            bottom.factors.append(_Factor(square, [square], []))
            return True
    return False


def _square(part: Expression) -> Expression | None:
    match _inner(part):
        case Name() as length:
            return Power(length, 2)
        case Call("hypot", (Name() as one, Name() as other)):
            return total((1, Power(one, 2)), (1, Power(other, 2)))
        case _:
            return None


def _plain(part: Expression) -> bool:
    """Whether it is a whole number without a unit, and not one as 0.8, which is left as it is."""
    return isinstance(part, Number) and part.unit is None and part.value.as_integer_ratio()[1] == 1


def _sized(part: Expression) -> list[Expression]:
    """The factors of a part without plain numbers; a slant is one number again."""
    slant = isinstance(part, Call) and part.function == "hypot"
    return [] if _plain(part) else [Lump(part) if slant else part]


def _size(parts: Iterable[Expression]) -> Fraction:
    """The product of the plain numbers among them."""
    size = Fraction(1)
    for part in parts:
        if isinstance(part, Number) and _plain(part):
            size *= Fraction(part.value)
    return size


def _fraction(size: Fraction, above: list[Expression], below: list[Expression]) -> Expression:
    """A number times a quotient, the number's own fraction in it: 2 P/3."""
    first = sorted(above, key=lambda part: not isinstance(part, Number))
    return over(times(number(size.numerator), *first), times(number(size.denominator), *below))
