"""Like terms collected: L - L/2 is L/2, 1 + 1 is 2, and what takes itself away is gone."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from math import gcd
from typing import TypeGuard

from probgen.quantities.expression import (
    UNITY,
    Call,
    Expression,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    number,
    parts,
    rebuilt,
    times,
    total,
)

_LARGEST_DENOMINATOR = 12  # L/3 is written as a quotient, 0.8 L as a decimal


def collected(expression: Expression) -> Expression:
    """The expression with like terms of each sum in it joined; order is kept."""
    inner = rebuilt(expression, collected)
    return _joined(inner) if isinstance(inner, Sum) else inner


def in_one_order(expression: Expression) -> Expression:
    """The sum with products of the same factors in one order, so that like terms meet."""
    if not isinstance(expression, Sum):
        return expression
    orders: dict[frozenset[tuple[Expression, int]], Expression] = {}
    terms = []
    for sign, term in expression.terms:
        terms.append((sign, orders.setdefault(_kind(term), term)))
    return Sum(tuple(terms))


def _kind(term: Expression) -> frozenset[tuple[Expression, int]]:
    """The factors of a term, in whatever order."""
    return frozenset(Counter(_factors(term)).items())


def in_least_numbers(expression: Expression) -> Expression:
    """A sum that is zero without the whole number all its terms share: 4 y - 3 h for 8 y - 6 h."""
    if not isinstance(expression, Sum):
        return expression
    found = [(sign, *_coefficient(term)) for sign, term in expression.terms]
    shared = gcd(*(int(factor) for _, _, factor in found))
    if any(factor.denominator > 1 for _, _, factor in found) or shared < 2:
        return expression
    return total(*((sign, multiple(part, factor / shared)) for sign, part, factor in found))


def collected_sum(*signed: tuple[int, Expression]) -> Expression:
    """The sum of signed terms with like ones joined; what is added stands before the rest."""
    joined = _joined(Sum(tuple(signed)))
    if not isinstance(joined, Sum):
        return joined
    order = sorted(joined.terms, key=lambda term: (-term[0], not isinstance(term[1], Number)))
    return total(*order)


def _joined(expression: Sum) -> Expression:
    """The sum with its like terms joined, and with those inside (a + b)/2 where that is shorter."""
    plainly = _terms_joined(expression)
    if not any(_multiple_of_sum(term) for _, term in expression.terms):
        return plainly
    apart = _terms_joined(Sum(tuple(_distributed(expression))))
    together = _common_multiple(apart)
    return together if _letters(together) < _letters(plainly) else plainly


def _multiple_of_sum(term: Expression) -> tuple[Sum, Fraction] | None:
    part, factor = _coefficient(term)
    return (part, factor) if isinstance(part, Sum) and factor != 1 else None


def _distributed(expression: Sum) -> Iterator[tuple[int, Expression]]:
    for sign, term in expression.terms:
        found = _multiple_of_sum(term)
        if found is None:
            yield sign, term
            continue
        for inner_sign, inner in found[0].terms:
            part, factor = _coefficient(inner)
            whole = factor * found[1]
            yield sign * inner_sign * (1 if whole > 0 else -1), multiple(part, abs(whole))


def _common_multiple(expression: Expression) -> Expression:
    """(a + b)/2 for a/2 + b/2."""
    if not isinstance(expression, Sum):
        return expression
    found = [(sign, *_coefficient(term)) for sign, term in expression.terms]
    factors = {factor for _, _, factor in found}
    if len(factors) > 1 or factors == {Fraction(1)}:
        return expression
    turn = 1 if any(sign > 0 for sign, _, _ in found) else -1
    inner = total(*((sign * turn, part) for sign, part, _ in found))
    return total((turn, multiple(inner, factors.pop())))


def _letters(expression: Expression) -> int:
    """How many names an expression is written with."""
    own = int(isinstance(expression, Name))
    return own + sum(_letters(part) for part in parts(expression))


def _terms_joined(expression: Sum) -> Expression:
    """Terms alone of their kind stay as they are written."""
    groups: dict[frozenset[tuple[Expression, int]], list[tuple[int, Expression, Fraction]]] = {}
    flat = total(*expression.terms)
    for sign, term in flat.terms if isinstance(flat, Sum) else ((1, flat),):
        part, factor = _coefficient(term)
        groups.setdefault(_kind(part), []).append((sign, term, sign * factor))
    kept: list[tuple[int, Expression]] = []
    for alike in groups.values():
        count = sum((factor for _, _, factor in alike), Fraction(0))
        if len(alike) == 1:
            kept.append(alike[0][:2])
        elif count:
            part, _ = _coefficient(alike[0][1])
            kept.append((1 if count > 0 else -1, multiple(part, abs(count))))
    return total(*_squares_joined(kept))


def _squares_joined(terms: list[tuple[int, Expression]]) -> list[tuple[int, Expression]]:
    """k sin^2 a + k cos^2 a is k."""
    for place, (sign, term) in enumerate(terms):
        for other, (second, beside) in enumerate(terms):
            rest = _without_squares(term, beside) if sign == second else None
            if rest is not None:
                joined = [each for at, each in enumerate(terms) if at not in (place, other)]
                joined.insert(min(place, other), (sign, rest))
                return _squares_joined(joined)
    return terms


def _without_squares(one: Expression, other: Expression) -> Expression | None:
    """k, where the terms are k sin a sin a and k cos a cos a; else None."""
    factors, beside = _factors_apart(one), _factors_apart(other)
    for factor in factors:
        if not (isinstance(factor, Call) and factor.function == "sin"):
            continue
        cosine = Call("cos", factor.arguments)
        if factors.count(factor) < 2 or beside.count(cosine) < 2:
            continue
        left, right = list(factors), list(beside)
        for _ in range(2):
            left.remove(factor)
            right.remove(cosine)
        if sorted(map(repr, left)) == sorted(map(repr, right)):
            return times(*left)
    return None


def _factors_apart(term: Expression) -> list[Expression]:
    """The factors of a term, squares as two."""
    factors: list[Expression] = []
    for factor in _factors(term):
        factors += [factor.base] * 2 if _is_square(factor) else [factor]
    return factors


def _is_square(factor: Expression) -> TypeGuard[Power]:
    return isinstance(factor, Power) and factor.exponent == 2


def _factors(term: Expression) -> list[Expression]:
    return list(term.factors) if isinstance(term, Product) else [term]


def _coefficient(term: Expression) -> tuple[Expression, Fraction]:
    """What is counted, and how many times: 2 L/3 is two thirds of L, 0.6 m is 0.6 of a metre."""
    match term:
        case Number(value, None):
            return UNITY, Fraction(value)
        case Number(value, unit):
            return Number(Decimal(1), unit), Fraction(value)
        case Quotient(top, Number(value, None)) if value:
            part, factor = _coefficient(top)
            return part, factor / Fraction(value)
        case Product((Number(value, None), other)) | Product((other, Number(value, None))):
            part, factor = _coefficient(other)
            return part, factor * Fraction(value)
        case Product((Number(value, None), Number(_, None), *_)):  # 2 x 2 y is four times y
            part, factor = _coefficient(times(*term.factors[1:]))
            return part, factor * Fraction(value)
        case Product((Number() | Quotient() as first, *rest)):
            part, factor = _coefficient(first)
            return (term, Fraction(1)) if factor == 1 else (times(part, *rest), factor)
        case _:
            return term, Fraction(1)


def multiple(part: Expression, factor: Fraction) -> Expression:
    """factor * part as one writes it: L/2, 2L/3, 0.8 L; factor: positive."""
    if factor == 1:
        return part
    if isinstance(part, Number):
        return Number(_decimal(factor * Fraction(part.value)), part.unit)
    if factor.denominator == 1 or factor.denominator > _LARGEST_DENOMINATOR:
        return times(Number(_decimal(factor)), part)
    above = part if factor.numerator == 1 else times(number(factor.numerator), part)
    return Quotient(above, number(factor.denominator))


def _decimal(factor: Fraction) -> Decimal:
    return Decimal(factor.numerator) / Decimal(factor.denominator)
