"""Several equations solved together: what is put in, what is taken out, what is divided."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import count
from typing import Final

from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Name,
    Quotient,
    Sum,
    is_number,
    linear_parts,
    names_in,
    negative,
    positive_first,
    times,
    total,
)
from probgen.quantities.factors import expanded, factors_of, terms_of, without_common
from probgen.quantities.like_terms import collected, in_least_numbers
from probgen.statics.angle_pair import AnglePair, angle_pair
from probgen.statics.solve_for import Range, isolated, solved_for

_ANYWHERE: Range = (-math.inf, math.inf)
_MOST_TRIES: Final = 16
"""Sets of equations that are looked at on the way; five equations need five.

Each that leads nowhere may lead to many others: a bound in sets, and not in seconds, is the same on
every machine."""


@dataclass(frozen=True, slots=True)
class Solved:
    """One of several equations solved: its place among them, the unknown, and its value.

    balance: the expression that was zero, with what had been taken out before put in.
    put_in: the unknowns whose values were put into it; dropped: those that then stood in every
    term, so that they left it.
    divided: the places of the equations with the angle's cosine and its sine, where one was divided
    by the other; balance is then tan(angle) - their quotient.
    squared: those of two that were squared and added, which left another angle in the balance.
    """

    place: int
    unknown: str
    value: Expression
    balance: Expression
    put_in: tuple[str, ...] = ()
    dropped: tuple[str, ...] = ()
    divided: tuple[int, int] | None = None
    squared: tuple[int, int] | None = None


@dataclass(frozen=True, slots=True)
class _Left:
    """An equation on its way: see `Solved`."""

    place: int
    expression: Expression
    put_in: tuple[str, ...] = ()
    dropped: tuple[str, ...] = ()

    def solved(self, unknown: str, value: Expression) -> Solved:
        return Solved(self.place, unknown, value, self.expression, self.put_in, self.dropped)


@dataclass(frozen=True, slots=True)
class _Aim:
    """Where the unknowns may lie, which of them are asked for, and the sets looked at so far."""

    ranges: Mapping[str, Range] = field(default_factory=dict)
    kept: frozenset[str] = frozenset()
    tries: Iterator[int] = field(default_factory=count)

    def within(self, unknown: str) -> Range:
        return self.ranges.get(unknown, _ANYWHERE)


def eliminated(
    expressions: Sequence[Expression],
    unknowns: Sequence[str],
    ranges: Mapping[str, Range] | None = None,
    kept: frozenset[str] = frozenset(),
) -> tuple[Solved, ...] | None:
    """Equations (each an expression that is zero) solved together for as many unknowns.

    Two that hold the cosine and the sine of one angle are divided.  Else one unknown after the
    other is taken out of an equation and put into the rest: first where an equation says what it
    is, and those in `kept`, which are asked for, last.  Given in the order they are to be valued:
    the first holds none of the unknowns, each other only those before it.  None when no way leads
    on, or none is found among the first that are tried.
    """
    left = tuple(_Left(place, each) for place, each in enumerate(expressions))
    aim = _Aim(ranges or {}, kept)
    solved = _together(left, tuple(unknowns), aim)
    return solved and _by_own_balance(solved, left, aim)


def _by_own_balance(
    solved: tuple[Solved, ...], left: tuple[_Left, ...], aim: _Aim
) -> tuple[Solved, ...]:
    """Where f = mu N was put into N = W cos x and f = W sin x: f by its own balance, without N."""
    angle, *others = solved
    if angle.divided is None:
        return solved
    sines = left[angle.divided[1]]
    for at, each in enumerate(others):
        held = names_in(sines.expression) & {one.unknown for one in solved}
        if each.unknown not in angle.put_in or held != {angle.unknown, each.unknown}:
            continue
        value = solved_for(sines.expression, each.unknown, aim.within(each.unknown))
        if value is not None and sines.place == angle.place:
            others[at] = sines.solved(each.unknown, value)
            return (replace(angle, place=each.place), *others)
    return solved


def _together(
    left: tuple[_Left, ...], unknowns: tuple[str, ...], aim: _Aim
) -> tuple[Solved, ...] | None:
    if next(aim.tries) >= _MOST_TRIES:
        return None
    if len(left) == 1:
        value = solved_for(left[0].expression, unknowns[0], aim.within(unknowns[0]))
        return None if value is None else (left[0].solved(unknowns[0], value),)
    return (
        _divided(left, unknowns, aim)
        or _squared(left, unknowns, aim)
        or _alone_first(left, unknowns, aim)
        or _taken_out(left, unknowns, aim)
    )


def _divided(
    left: tuple[_Left, ...], unknowns: tuple[str, ...], aim: _Aim
) -> tuple[Solved, ...] | None:
    """Two equations K cos x = P and K sin x = Q: tan x = Q/P, and the other unknown after it."""
    if len(left) != 2:
        return None
    for angle, other in (unknowns, unknowns[::-1]):
        for cosines, sines in (left, left[::-1]):
            pair = angle_pair(cosines.expression, sines.expression, angle)
            if pair is None or names_in(pair.tangent) & set(unknowns):
                continue
            value = _beside(pair, cosines, other, aim.within(other))
            if value is None:
                continue
            return _by_tangent(angle, pair.tangent, cosines, sines), cosines.solved(other, value)
    return None


def _squared(
    left: tuple[_Left, ...], unknowns: tuple[str, ...], aim: _Aim
) -> tuple[Solved, ...] | None:
    """Two angles: K cos x = P and K sin x = Q leave P^2 + Q^2 = K^2 for the other one; then x."""
    if len(left) != 2:
        return None
    for angle, other in (unknowns[::-1], unknowns):
        for cosines, sines in (left, left[::-1]):
            pair = angle_pair(cosines.expression, sines.expression, angle)
            balance = pair and pair.squared(other)
            value = balance and solved_for(balance, other, aim.within(other))
            # A sine tells an angle up to 90 degrees either way, a cosine one up to 180.
            low, high = aim.within(angle)
            by, rest = (sines, cosines) if low >= -90.0 and high <= 90.0 else (cosines, sines)
            after = solved_for(by.expression, angle, (low, high))
            if balance and value and after:
                first = replace(rest.solved(other, value), balance=balance)
                places = (cosines.place, sines.place)
                return replace(first, squared=places), by.solved(angle, after)
    return None


def _by_tangent(angle: str, tangent: Expression, cosines: _Left, sines: _Left) -> Solved:
    return Solved(
        sines.place,
        angle,
        Call("atan", (tangent,)),
        total((1, Call("tan", (Name(angle, angle),))), (-1, tangent)),
        tuple(dict.fromkeys((*cosines.put_in, *sines.put_in))),
        divided=(cosines.place, sines.place),
    )


def _beside(pair: AnglePair, cosines: _Left, other: str, within: Range) -> Expression | None:
    """The other unknown of a pair: by Pythagoras where it is the size, which is not negative."""
    if pair.size == Name(other, other) and within[0] >= 0.0:
        legs = tuple(_leg(side) for side in (pair.along, pair.across))
        return None if other in pair.sides else Call("hypot", legs)
    return solved_for(cosines.expression, other, within)


def _leg(side: Expression) -> Expression:
    """A side as it is squared: without a minus sign in front, what is added first."""
    lone = all(sign < 0 for sign, _ in terms_of(side))
    return positive_first(negative(side) if lone else side)


def _alone_first(
    left: tuple[_Left, ...], unknowns: tuple[str, ...], aim: _Aim
) -> tuple[Solved, ...] | None:
    """An equation that holds one unknown only, solved before the rest."""
    for each in left:
        alone = names_in(each.expression) & set(unknowns)
        if len(alone) != 1:
            continue
        (unknown,) = alone
        value = solved_for(each.expression, unknown, aim.within(unknown))
        rest = tuple(other for other in left if other is not each)
        after = _together(rest, tuple(name for name in unknowns if name != unknown), aim)
        if value is not None and after is not None:
            return (each.solved(unknown, value), *after)
    return None


def _taken_out(
    left: tuple[_Left, ...], unknowns: tuple[str, ...], aim: _Aim
) -> tuple[Solved, ...] | None:
    """One unknown written by the others and put into the rest."""
    pairs = [(unknown, each) for unknown in unknowns for each in left]
    for unknown, each in sorted(pairs, key=lambda pair: _rank(pair[0], pair[1], aim)):
        parts = linear_parts(each.expression, unknown)
        if parts is None or collected(parts[0]) == ZERO:
            continue
        rest = tuple(name for name in unknowns if name != unknown)
        others = [_after(other, unknown, parts, each, rest) for other in left if other is not each]
        possible = tuple(other for other in others if other is not None)
        solved = _together(possible, rest, aim) if len(possible) == len(rest) else None
        if solved is not None:
            return (*solved, each.solved(unknown, isolated(*parts)))
    return None


def _rank(unknown: str, left: _Left, aim: _Aim) -> tuple[bool, bool, bool, bool, int]:
    """What is taken out first: what an equation says outright, without a sine; then not asked.

    Then what needs no division, from the shorter equation: N_B = mu N_A rather than N_A = N_B/mu.
    """
    said = _said(left.expression, unknown)
    parts = linear_parts(left.expression, unknown)
    divided = parts is None or not _is_one(parts[0])
    turns = said is not None and _turns(said)
    return said is None, turns, divided, unknown in aim.kept, len(terms_of(left.expression))


def _is_one(slope: Expression) -> bool:
    """Whether it is 1 or -1."""
    return is_number(slope, 1) or is_number(negative(slope), 1)


def _is_divided(value: Expression) -> bool:
    """Whether a fraction stands among the factors of its terms."""
    factors = (factor for _, term in terms_of(value) for factor in factors_of(term))
    return any(isinstance(factor, Quotient) for factor in factors)


def _said(expression: Expression, unknown: str) -> Expression | None:
    """What it says the unknown is: f - mu N is put in first."""
    match expression:
        case Sum(((1, Name(id=name)), (_, other))) if name == unknown:
            return None if unknown in names_in(other) else other
        case _:
            return None


def _turns(expression: Expression) -> bool:
    """Whether a sine or cosine stands among its factors."""
    return any(isinstance(factor, Call) for factor in factors_of(expression))


def _after(
    other: _Left,
    unknown: str,
    taken_out: tuple[Expression, Expression],
    source: _Left,
    rest: tuple[str, ...],
) -> _Left | None:
    """An equation with an unknown of another put in; None where it is not linear in it."""
    if unknown not in names_in(other.expression):
        return other
    put_in = _put_into(other.expression, unknown, taken_out)
    if put_in is None:
        return None
    left = without_common(put_in)
    if _is_divided(put_in) and not _is_divided(left):
        left = in_least_numbers(collected(expanded(left)))
    gone = names_in(put_in) - names_in(left)
    return replace(
        other,
        expression=left,
        put_in=tuple(dict.fromkeys((*other.put_in, *source.put_in, unknown))),
        dropped=(*other.dropped, *(name for name in rest if name in gone)),
    )


def _put_into(
    expression: Expression, unknown: str, taken_out: tuple[Expression, Expression]
) -> Expression | None:
    """The expression with unknown = -rest/slope put in, multiplied by the slope if it divides."""
    parts = linear_parts(expression, unknown)
    if parts is None:
        return None
    slope, rest = taken_out
    if parts[0] == ZERO:
        return expression
    value = isolated(slope, rest)
    if not _is_one(slope) and not _is_divided(value):  # its factor stands in all its terms
        return collected(total((1, expanded(times(parts[0], value))), (1, parts[1])))
    put_in = _with_tangent(parts[0], negative(rest), slope)
    if put_in is not None:
        return collected(total((1, put_in), (1, parts[1])))
    crossed = total((1, times(parts[1], slope)), (-1, times(rest, parts[0])))
    return collected(expanded(crossed))


def _with_tangent(factor: Expression, top: Expression, bottom: Expression) -> Expression | None:
    """factor * top/bottom, where that is a product once sin a/cos a is written tan a; else None."""
    above, below = terms_of(times(factor, top)), terms_of(bottom)
    if len(above) > 1 or len(below) > 1:
        return None
    (sign, product), (turned, divisor) = above[0], below[0]
    factors = list(factors_of(product))
    for cosine in factors_of(divisor):
        if not (isinstance(cosine, Call) and cosine.function == "cos"):
            return None
        sine = Call("sin", cosine.arguments)
        if sine not in factors:
            return None
        factors[factors.index(sine)] = Call("tan", cosine.arguments)
    return total((sign * turned, times(*factors)))
