"""Sums as they are printed once numbers stand in the places of names."""

from __future__ import annotations

from probgen.quantities.expression import Expression, Number, Product, Quotient, Sum, total


def tidied(printed: Expression) -> Expression:
    """A printed sum without products with a zero and without two minus signs together."""
    return signs_joined(without_zeros(printed))


def without_zeros(printed: Expression) -> Expression:
    """A printed sum without products with a zero: (300 N)(2.50 m) - (0 N)(5.00 m).

    A lone zero has no sign.
    """
    match printed:
        case Sum(((-1, Number(value) as zero),)) if not value:
            return zero
        case Quotient(top, bottom):
            return Quotient(without_zeros(top), bottom)
        case Sum(terms):
            kept = tuple(term for term in terms if not _is_product_with_zero(term[1]))
            return total(*kept) if kept else printed
        case _:
            return printed


def signs_joined(printed: Expression) -> Expression:
    """A printed sum without a minus before a negative number: (8 N) a for -(-8 N) a."""
    match printed:
        case Quotient(top, bottom):
            return Quotient(signs_joined(top), bottom)
        case Sum(terms):
            return total(*(_sign_joined(sign, term) for sign, term in terms))
        case _:
            return printed


def _sign_joined(sign: int, term: Expression) -> tuple[int, Expression]:
    if sign < 0:
        match term:
            case Number(value, unit) if value < 0:
                return 1, Number(-value, unit)
            case Product((first, *rest)):
                inner, turned = _sign_joined(sign, first)
                return inner, Product((turned, *rest))
            case Quotient(top, bottom):
                inner, turned = _sign_joined(sign, top)
                return inner, Quotient(turned, bottom)
    return sign, term


def _is_product_with_zero(term: Expression) -> bool:
    factors = term.factors if isinstance(term, Product) else ()
    return any(isinstance(factor, Number) and not factor.value for factor in factors)
