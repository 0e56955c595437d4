"""Products and sums taken apart: terms, factors, what all terms share, products of sums."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from probgen.quantities.expression import (
    UNITY,
    Call,
    Expression,
    Lump,
    Name,
    Power,
    Product,
    Quotient,
    Sum,
    negative,
    rebuilt,
    times,
    total,
)


def factors_of(term: Expression) -> tuple[Expression, ...]:
    """The factors of a product; anything else is its own factor."""
    return term.factors if isinstance(term, Product) else (term,)


def terms_of(expression: Expression) -> tuple[tuple[int, Expression], ...]:
    """The terms of a sum with their signs; anything else is one term."""
    return expression.terms if isinstance(expression, Sum) else ((1, expression),)


def shared_factors(terms: Iterable[Expression]) -> list[Expression]:
    """Factors that stand in every term, once each time they do."""
    lists = [list(factors_of(term)) for term in terms]
    shared: list[Expression] = []
    for factor in lists[0]:
        if all(factor in held for held in lists):
            shared.append(factor)
            for held in lists[1:]:
                held.remove(factor)
    return shared


def without_factors(expression: Expression, factors: list[Expression]) -> Expression:
    """Every term without factors that it holds."""
    terms = []
    for sign, term in terms_of(expression):
        held = list(factors_of(term))
        for factor in factors:
            held.remove(factor)
        terms.append((sign, times(*held)))
    return total(*terms)


def without_common(expression: Expression) -> Expression:
    """An expression that is zero, without the factors all its terms share, or have below a line."""
    terms = [term for _, term in terms_of(expression)]
    if len(terms) < 2:
        return expression
    short = without_factors(expression, shared_factors(terms))
    for bottom in [f.bottom for f in factors_of(terms_of(short)[0][1]) if isinstance(f, Quotient)]:
        if all(has_below(term, bottom) for _, term in terms_of(short)):
            short = multiplied_by(short, bottom)
    return short


def has_below(term: Expression, bottom: Expression) -> bool:
    """Whether one factor of a term is a fraction over it."""
    return any(isinstance(f, Quotient) and f.bottom == bottom for f in factors_of(term))


def multiplied_by(expression: Expression, bottom: Expression) -> Expression:
    """Every term times a quantity, which cancels where a factor is a fraction over it."""
    terms = []
    for sign, term in terms_of(expression):
        factors = list(factors_of(term))
        at = next((at for at, f in enumerate(factors) if has_below(f, bottom)), None)
        if at is None:
            factors.append(bottom)
        else:
            fraction = factors[at]
            assert isinstance(fraction, Quotient)
            factors[at] = fraction.top
        terms.append((sign, times(*factors)))
    return total(*terms)


def factored(expression: Expression) -> Expression:
    """A sum with what all its terms share taken out: (a + b) cos x; c (sin x - cos x)."""
    terms = [term for _, term in terms_of(expression)]
    shared = shared_factors(terms) if len(terms) > 1 else []
    if not shared:
        return expression
    after = [factor for factor in shared if isinstance(factor, Call)]
    before = [factor for factor in shared if factor not in after]
    inner = without_factors(expression, shared)
    if all(sign < 0 for sign, _ in terms_of(inner)):
        return negative(times(*before, negative(inner), *after))
    return times(*before, inner, *after)


def with_powers(expression: Expression) -> Expression:
    """A quantity that stands twice in a product squared: mu mu is mu^2."""
    inner = rebuilt(expression, with_powers)
    if not isinstance(inner, Product):
        return inner
    factors = [_bare_name(factor) for factor in inner.factors]
    counts = Counter(factor for factor in factors if isinstance(factor, Name))
    twice = {factor for factor, count in counts.items() if count > 1}
    if not twice:
        return inner
    kept: list[Expression] = []
    for written, name in zip(inner.factors, factors, strict=True):
        factor = name if name in twice else written
        power = Power(factor, counts[factor]) if factor in twice else factor
        if factor not in twice or power not in kept:
            kept.append(power)
    return times(*kept)


def _bare_name(factor: Expression) -> Expression:
    """A quantity without the mark that makes it one number, which it is anyway."""
    return factor.inner if isinstance(factor, Lump) and isinstance(factor.inner, Name) else factor


def expanded(expression: Expression) -> Expression:
    """Products of sums multiplied out, one level deep, so that equal terms can meet."""
    terms: list[tuple[int, Expression]] = []
    for sign, term in terms_of(expression):
        terms += [(sign * s, t) for s, t in _multiplied_out(term)]
    return total(*terms)


def _multiplied_out(term: Expression) -> list[tuple[int, Expression]]:
    if not isinstance(term, Product):
        return [(1, term)]
    made: list[tuple[int, Expression]] = [(1, UNITY)]
    for factor in term.factors:
        made = [(s * sign, times(t, part)) for s, t in made for sign, part in terms_of(factor)]
    return [
        (sign * inner_sign, inner)
        for sign, made_term in made
        for inner_sign, inner in terms_of(made_term)
    ]
