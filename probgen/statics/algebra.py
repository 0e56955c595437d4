"""Closed forms from a computer algebra system, for equations no form of our own fits.

Everything in the equation that does not hold the unknown is given to sympy as one letter, so that
its answer is short, and put back afterwards.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from probgen.quantities.expression import (
    UNITY,
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
    negative,
    over,
    parts,
    times,
    total,
)
from probgen.quantities.factors import factors_of, terms_of
from probgen.quantities.like_terms import collected
from probgen.quantities.polynomial import Polynomial, polynomial

if TYPE_CHECKING:
    import sympy

_MOST_OPERATIONS: Final = 14
"""A closed form with more operations than this is no help on paper."""
_MOST_RADICALS: Final = 1
"""Of those that hold the unknown: of two, squared away one after the other, no short form is left,
and that takes seconds to see."""
_MOST_QUANTITIES: Final = {2: 4, 3: 3}
"""Beside the unknown, in a polynomial by its degree; of a higher one two."""


def closed_forms(expression: Expression, unknown: str) -> tuple[Expression, ...]:
    """Roots of a polynomial or radical equation expression = 0; none where there is no short one.

    The unknown must stand outside sines and the like, and is taken to be positive.  What would take
    long is not tried, by the size of the equation and never by a clock.
    """
    if not _algebraic(expression, unknown):
        return ()
    if len(set(_radicals(expression, unknown))) > _MOST_RADICALS:
        return ()
    read = polynomial(expression, Name(unknown, unknown))
    if read is None or read.degree < 2 or _times_met(expression, unknown) == 1:
        return _solved(expression, unknown)
    short = read.without_content
    if len(short.letters) > _MOST_QUANTITIES.get(read.degree, 2):
        return ()
    return _solved(_upright(short), unknown, plain=True)


def _radicals(expression: Expression, unknown: str) -> Iterator[Expression]:
    """The roots in an expression that hold the unknown."""
    if unknown in names_in(expression):
        if isinstance(expression, Call):
            yield expression
        for part in parts(expression):
            yield from _radicals(part, unknown)


def _times_met(expression: Expression, unknown: str) -> int:
    """In how many places an unknown stands: a form with one, as (x - a)^2, is kept."""
    if isinstance(expression, Name):
        return int(expression.id == unknown)
    return sum(_times_met(part, unknown) for part in parts(expression))


def _upright(equation: Polynomial) -> Expression:
    """An equation with its highest power positive: of two that say the same, one is solved."""
    leading = equation.coefficients[-1]
    turned = all(sign < 0 for sign, _ in terms_of(leading))
    return negative(equation.expression) if turned else equation.expression


@lru_cache(maxsize=256)
def _solved(expression: Expression, unknown: str, plain: bool = False) -> tuple[Expression, ...]:
    import sympy  # heavy, and seldom needed

    letters: dict[sympy.Symbol, Expression] = {}
    wanted = sympy.Symbol("x", positive=True)
    try:
        written = _to_sympy(expression, unknown, wanted, letters)
        if plain:
            roots = [_in_one(root) for root in sympy.solve(written, wanted, simplify=False)]
        else:
            roots = sympy.solve(written, wanted)
    except NotImplementedError:
        return ()
    short = [root for root in roots if root.count_ops() <= _MOST_OPERATIONS]
    found = (_from_sympy(root, letters) for root in short)
    return tuple(root for root in found if root is not None)


def _in_one(root: sympy.Expr) -> sympy.Expr:
    """A root as one fraction, unless that is over a whole number only, or over a root."""
    import sympy

    joined = sympy.together(root)
    bottom = sympy.fraction(joined)[1]
    rooted = any(not power.exp.is_Integer for power in bottom.atoms(sympy.Pow))
    return root if bottom.is_Integer or rooted else joined


def _algebraic(expression: Expression, unknown: str) -> bool:
    """Whether the unknown stands in sums, products, quotients, powers and roots only."""
    if unknown not in names_in(expression):
        return True
    if isinstance(expression, Root):
        return False
    if isinstance(expression, Call) and expression.function not in ("sqrt", "hypot"):
        return False
    return all(_algebraic(part, unknown) for part in parts(expression))


def _to_sympy(
    expression: Expression,
    unknown: str,
    wanted: sympy.Symbol,
    letters: dict[sympy.Symbol, Expression],
) -> sympy.Expr:
    import sympy

    def inner(part: Expression) -> sympy.Expr:
        return _to_sympy(part, unknown, wanted, letters)

    if unknown not in names_in(expression):
        if isinstance(expression, Number) and expression.unit is None:
            return sympy.Rational(str(expression.value))
        for letter, meaning in letters.items():
            if meaning == expression:
                return letter
        letter = sympy.Symbol(f"q{len(letters)}", positive=True)
        letters[letter] = expression
        return letter
    match expression:
        case Name():
            return wanted
        case Lump(part):
            return inner(part)
        case Sum(terms):
            return sympy.Add(*(sign * inner(term) for sign, term in terms))
        case Product(factors):
            return sympy.Mul(*map(inner, factors))
        case Quotient(top, bottom):
            return inner(top) / inner(bottom)
        case Power(base, exponent):
            return inner(base) ** exponent
        case Call("sqrt", (part,)):
            return sympy.sqrt(inner(part))
        case Call("hypot", (one, two)):
            return sympy.sqrt(inner(one) ** 2 + inner(two) ** 2)
        case Number() | Call() | Root():
            raise NotImplementedError(f"{expression} is not algebraic")


def _from_sympy(root: sympy.Expr, letters: dict[sympy.Symbol, Expression]) -> Expression | None:
    """The root as an expression of ours; None where it holds something we do not print."""
    import sympy

    if root in letters:
        return letters[root]
    if root.is_Rational:
        top, bottom = Number(Decimal(int(root.p))), Number(Decimal(int(root.q)))
        return over(top, bottom)
    if root.is_Add:
        return _sum(root, letters)
    if root.is_Mul:
        return _product(root, letters)
    if isinstance(root, sympy.Pow):
        base = _from_sympy(root.base, letters)
        if base is None:
            return None
        if root.exp == sympy.Rational(1, 2):
            return _root_of(base)
        return Power(base, int(root.exp)) if root.exp.is_Integer and root.exp > 1 else None
    return None


def _sum(root: sympy.Expr, letters: dict[sympy.Symbol, Expression]) -> Expression | None:
    terms: list[tuple[int, Expression]] = []
    for argument in root.args:
        sign = -1 if argument.could_extract_minus_sign() else 1
        term = _from_sympy(sign * argument, letters)
        if term is None:
            return None
        terms.append((sign, term))
    return total(*sorted(terms, key=lambda pair: -pair[0]))


def _product(root: sympy.Expr, letters: dict[sympy.Symbol, Expression]) -> Expression | None:
    """A product or quotient; what is positive under several roots is put under one."""
    import sympy

    sign = -1 if root.could_extract_minus_sign() else 1
    above, below = sympy.fraction(sign * root)
    sides = [_parted(side, letters) for side in (above, below)]
    if None in sides:
        return None
    (top, over_root), (bottom, under_root) = (side for side in sides if side is not None)
    if len(over_root) + len(under_root) > 1:
        joined = factors_of(times(*over_root))
        numbers_first = sorted(joined, key=lambda each: not isinstance(each, Number))
        top = (*top, Call("sqrt", (over(times(*numbers_first), times(*under_root)),)))
    else:
        top = (*top, *map(_root_of, over_root))
        bottom = (*bottom, *map(_root_of, under_root))
    return total((sign, over(times(*top), times(*bottom))))


def _root_of(base: Expression) -> Expression:
    """A square root; none of sin^2 a + cos^2 a."""
    inside = collected(base)
    return UNITY if inside == UNITY else Call("sqrt", (inside,))


def _parted(
    side: sympy.Expr, letters: dict[sympy.Symbol, Expression]
) -> tuple[tuple[Expression, ...], tuple[Expression, ...]] | None:
    """The factors of one side of a fraction, and those under a square root without it."""
    import sympy

    factors = side.args if side.is_Mul else (side,)
    rooted = [isinstance(each, sympy.Pow) and each.exp == sympy.Rational(1, 2) for each in factors]
    found = [
        _from_sympy(each.base if root else each, letters)
        for each, root in zip(factors, rooted, strict=True)
    ]
    if None in found:
        return None
    known = [(each, root) for each, root in zip(found, rooted, strict=True) if each is not None]
    plain, under = (tuple(e for e, root in known if root is wanted) for wanted in (False, True))
    return plain, under
