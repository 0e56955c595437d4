"""A torque balance as the course writes torques, before sines and products are made shorter.

By angle every torque is F r sin(angle), the angle as it lies between force and arm; by components
it is x F_y - y F_x, with the pivot at the origin.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from probgen.bank.support import component_symbol
from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Call,
    Expression,
    Lump,
    Name,
    Power,
    Product,
    evaluate,
    negative,
    number,
    positive_first,
    substituted,
    times,
    total,
)
from probgen.quantities.factors import factors_of, terms_of
from probgen.quantities.like_terms import collected
from probgen.quantities.unit import DEGREE
from probgen.statics.equation import Equation, Term
from probgen.statics.geometry import angle_of, cosine, sine, way
from probgen.statics.system import Force
from probgen.wording.facts.torque import ByCoordinates, ByTheorems
from probgen.wording.torque_angle import angle_to_arm, partly_along, square_line
from probgen.working.digits import Digits
from probgen.working.fact import Fact

_BOTH: Final = 2  # terms, x F_y and y F_x
_SAME: Final = 1e-9


def written_out(digits: Digits, equation: Equation) -> Expression | None:
    """The sum of torques in the course's own form; None where the balance has it already."""
    match digits.convention.torque:
        case "angle":
            return _by_angles(digits, equation)
        case "components":
            return _by_components(digits, equation)
        case "arm":
            return None


def _by_angles(digits: Digits, equation: Equation) -> Expression | None:
    if all(term.ratio == UNITY for term in equation.terms):
        return None  # every sine is that of a right angle, which a sentence says
    terms: list[tuple[int, Expression]] = []
    for term in equation.terms:
        written = _with_angle(digits, equation.about, term)
        if written is None:
            return None
        terms.append((term.sign, written))
    return total(*terms)


def _with_angle(digits: Digits, pivot: str, term: Term) -> Expression | None:
    """F r sin(angle); a torque without an arm, or with one that is read off, as it is."""
    if term.length is None or partly_along(digits, pivot, term):
        return (
            term.magnitude
            if term.length is None
            else times(term.magnitude, Lump(term.length), term.ratio)
        )
    angle = number(90, DEGREE) if term.ratio == UNITY else angle_to_arm(digits, term)
    if angle is None:
        return None
    return times(term.magnitude, Lump(term.length), Call("sin", (angle,)))


@dataclass(frozen=True, slots=True)
class _Acting:
    """A force by components, at coordinates from the pivot (m)."""

    x: Expression
    y: Expression
    along_x: Expression
    along_y: Expression

    def torque(self, turn: int) -> Expression:
        """x F_y - y F_x, or y F_x - x F_y where clockwise is positive (turn = -1)."""
        first, second = times(self.x, self.along_y), times(self.y, self.along_x)
        return total((1, first), (-1, second)) if turn > 0 else total((1, second), (-1, first))


def _acting(digits: Digits, pivot: str, force: Force) -> _Acting:
    links = way(digits.case.system.points, pivot, force.point)
    directions = [angle_of(link.direction) for link in links]
    x, y = (
        collected(
            total(*((1, times(k.length, of(a))) for k, a in zip(links, directions, strict=True)))
        )
        for of in (cosine, sine)
    )
    towards = angle_of(force.direction)
    along = (times(force.magnitude, part(towards)) for part in (cosine, sine))
    return _Acting(_lumped(digits, x), _lumped(digits, y), *along)


def _lumped(digits: Digits, coordinate: Expression) -> Expression:
    """A coordinate as one number, a minus sign before what is to the left or below: -(h - c)."""
    if coordinate == ZERO:
        return coordinate
    if float(evaluate(coordinate, digits.case.values)) < 0.0:
        return negative(Lump(positive_first(negative(coordinate))))
    return Lump(positive_first(coordinate))


def _turn(equation: Equation) -> int:
    return 1 if equation.method.positive == "counter-clockwise" else -1


def _by_components(digits: Digits, equation: Equation) -> Expression | None:
    if all(term.ratio == UNITY for term in equation.terms):
        return None
    turn, terms = _turn(equation), list[tuple[int, Expression]]()
    for own in _by_source(equation):
        if own[0].length is None:
            terms += [(term.sign, term.magnitude) for term in own]
        else:
            force = digits.case.system.force(own[0].source)
            terms.append((1, _acting(digits, equation.about, force).torque(turn)))
    return total(*terms)


def by_coordinates(digits: Digits, equation: Equation) -> Iterator[Fact]:
    """Where each force acts, seen from the pivot, its components, and the torque they give."""
    system, turn = digits.case.system, _turn(equation)
    expanded = _by_components(digits, equation) is not None
    for own in _by_source(equation):
        if all(term.length is None for term in own):
            continue
        force = system.force(own[0].source)
        acting = _acting(digits, equation.about, force)
        x, y = (_bare(part) for part in (acting.x, acting.y))
        torque = acting.torque(turn)
        written = force.magnitude.symbol if isinstance(force.magnitude, Name) else force.id
        f_x, f_y = (Name(s, s) for s in (component_symbol(written, axis) for axis in "xy"))
        yield ByCoordinates(
            force.magnitude, (f_x, f_y), (x, y), (acting.along_x, acting.along_y), torque, turn > 0,
            coordinates_called(digits), None if expanded else _in_one(own, torque),
            square_line(digits, equation.about, force),
        )  # fmt: skip


def theorems(digits: Digits, equation: Equation) -> Iterator[Fact]:
    """By what the two terms that a force has by coordinates are one in the balance."""
    used = dict.fromkeys(
        theorem
        for own in _by_source(equation)
        if (theorem := _theorem(digits, equation, own)) is not None
    )
    if used:
        yield ByTheorems(tuple(used))


def _theorem(
    digits: Digits, equation: Equation, own: Sequence[Term]
) -> tuple[Expression, Expression] | None:
    """What sines and cosines of a force's two terms add up to; None where they are not joined."""
    if len(own) > 1 or own[0].length is None:
        return None
    force, (term,) = digits.case.system.force(own[0].source), own
    written = terms_of(_acting(digits, equation.about, force).torque(_turn(equation)))
    if len(written) < _BOTH:
        return None
    parted = tuple((sign * term.sign, times(*_calls(each))) for sign, each in written)
    squares = sorted((_squared(each) for _, each in parted), key=_is_cosine)
    if term.ratio == UNITY and all(isinstance(each, Power) for each in squares):
        return total(*((1, each) for each in squares)), UNITY
    sums = positive_first(total(*parted))
    off = evaluate(sums, digits.case.values) - evaluate(term.ratio, digits.case.values)
    return (sums, term.ratio) if abs(float(off)) < _SAME else None


def _squared(product: Expression) -> Expression:
    """sin a sin a as a square."""
    match product:
        case Product((one, other)) if one == other:
            return Power(one, 2)
        case _:
            return product


def _is_cosine(square: Expression) -> bool:
    """For sorting: the sine's before the cosine's, as the theorem is known."""
    base = square.base if isinstance(square, Power) else None
    return isinstance(base, Call) and base.function == "cos"


def _calls(term: Expression) -> Iterator[Expression]:
    """The sines and cosines among the factors of a term."""
    for factor in factors_of(term):
        inner = factor.inner if isinstance(factor, Lump) else factor
        if isinstance(inner, Call):
            yield inner
        elif isinstance(inner, Product):
            yield from _calls(inner)


def _by_source(equation: Equation) -> Iterator[list[Term]]:
    """The terms of each force, in the order of the first."""
    for source in dict.fromkeys(term.source for term in equation.terms):
        yield [term for term in equation.terms if term.source == source]


def _in_one(own: Sequence[Term], torque: Expression) -> Expression | None:
    """The one term that a force has in a balance, where by coordinates there are two."""
    if len(own) > 1 or own[0].length is None or len(terms_of(torque)) < _BOTH:
        return None
    return total((own[0].sign, times(Lump(own[0].length), own[0].magnitude, own[0].ratio)))


def coordinates_called(digits: Digits) -> tuple[Name, Name]:
    """x and y; r_x and r_y where the problem calls something else by one of these letters."""
    symbols = {each.as_name.symbol for each in digits.case.system.variables.values()}
    called = ("r_x", "r_y") if symbols & {"x", "y"} else ("x", "y")
    first, second = (Name(each, each) for each in called)
    return first, second


def _bare(length: Expression) -> Expression:
    """A coordinate without the mark that makes it one number."""
    return substituted(length, lambda part: part.inner if isinstance(part, Lump) else None)
