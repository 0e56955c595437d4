"""The one walk of a formula's tree: what stands where, whatever the notation."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from itertools import pairwise
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
)
from probgen.quantities.formula import (
    Balance,
    Difference,
    Formula,
    Integral,
    Piece,
    Relation,
    Words,
)
from probgen.quantities.notation.notation import (
    FACTOR,
    LOOSE,
    TERM,
    TIGHT,
    Edge,
    Notation,
    Printed,
    has_point,
    is_negative,
    scaled,
)
from probgen.quantities.radians import in_radians
from probgen.quantities.symbol import read_symbol

TRIGONOMETRIC: Final = frozenset({"sin", "cos", "tan", "asin", "acos", "atan"})
"""The functions that are written without brackets where their argument holds together."""

_AS_IT_IS: Final = frozenset({"rad", "deg"})
"""The functions that an angle and its number of radians are told apart by, though not on paper."""

"""Of an angle that is printed in radians, though it is known in degrees."""

_INVERSE: Final = frozenset({"asin", "acos", "atan"})
"""The functions of a ratio, which is read with its own letters: its fraction has its full size."""


def write(formula: Expression | Formula, to: Notation, depth: int) -> str:
    """A formula in a notation; depth: 0 where fractions have their full size."""
    if isinstance(formula, tuple):
        return to.space.join([_piece(piece, to, depth) for piece in formula])
    return _piece(formula, to, depth)


def _piece(piece: Piece, to: Notation, depth: int) -> str:
    match piece:
        case Relation(sign):
            return to.relation(sign)
        case Words(text):
            return to.words(text)
        case Balance():
            return to.balance(piece)
        case Integral(of, by, start, end):
            letter, low, high = (_print(each, to, depth + 2).text for each in (by, start, end))
            return to.integral(_factor(_print(of, to, depth), to).text, letter, low, high)
        case Difference(of, start, end):
            low, high = (_print(each, to, depth + 2).text for each in (start, end))
            return to.difference(_print(of, to, depth).text, low, high)
        case _:
            return _print(piece, to, depth).text


def _print(expression: Expression, to: Notation, depth: int) -> Printed:
    match expression:
        case Number():
            return _number(expression, to)
        case Name(symbol=symbol):
            return _name(symbol, to)
        case Lump(inner) | Root(inner, _, _, _):
            return _print(inner, to, depth)
        case Sum(terms):
            return _sum([(sign, _print(term, to, depth)) for sign, term in terms], to)
        case Product(factors):
            return _product(factors, to, depth + 1)
        case Quotient(top, bottom):
            return to.fraction(_print(top, to, depth + 2), _print(bottom, to, depth + 2), depth)
        case Power(base, exponent):
            return _power(base, _print(base, to, depth), exponent, to)
        case Call(function, arguments):
            return _call(function, arguments, to, depth)


@lru_cache(maxsize=1024)
def _name(symbol: str, to: Notation) -> Printed:
    return Printed(to.symbol(read_symbol(symbol)), TIGHT)


def _number(number: Number, to: Notation) -> Printed:
    text, unit = to.quantity(number), number.unit
    last = Edge.DIGIT if unit is None or not unit.plain else Edge.OTHER
    if is_negative(number.value):
        return Printed(text, LOOSE, Edge.OTHER, last)
    spaced = unit is not None and bool(unit.plain) and not unit.tight
    hold = FACTOR if spaced or scaled(number.value) else TIGHT
    return Printed(text, hold, Edge.DIGIT, last)


def _bracketed(printed: Printed, to: Notation) -> Printed:
    text = to.brackets(printed.text, printed.tall)
    return Printed(text, TIGHT, Edge.BRACKET, Edge.BRACKET, printed.tall)


def _tight(printed: Printed, to: Notation) -> Printed:
    return printed if printed.hold >= TIGHT else _bracketed(printed, to)


def _factor(printed: Printed, to: Notation) -> Printed:
    """In brackets where it is a sum."""
    return printed if printed.hold > LOOSE else _bracketed(printed, to)


def _sum(terms: Iterable[tuple[int, Printed]], to: Notation) -> Printed:
    text, tall = "", False
    for sign, term in terms:
        first = not text
        bare = term.hold > LOOSE or (first and sign > 0)
        lead = to.minus if sign < 0 else to.plus
        if first:
            lead = to.negative if sign < 0 else ""
        text += lead + (term if bare else _bracketed(term, to)).text
        tall = tall or term.tall
    return Printed(to.row(text), LOOSE, tall=tall)


def _product(factors: tuple[Expression, ...], to: Notation, depth: int) -> Printed:
    """Factors side by side: those with units in brackets, functions such as sin 40° last."""
    measured = any(isinstance(f, Number) and f.unit is not None for f in factors)
    pieces: list[Printed] = []
    for factor in sorted(factors, key=_is_trigonometric):
        printed = _print(factor, to, depth)
        if _is_trigonometric(factor):
            pieces.append(printed)
        elif measured and isinstance(factor, Number) and has_point(factor.value):
            pieces.append(_bracketed(printed, to))
        else:
            pieces.append(_tight(printed, to))
    text = pieces[0].text
    for before, piece in pairwise(pieces):
        text += _between(before.last, piece.first, to) + piece.text
    return Printed(to.row(text), TERM, tall=any(piece.tall for piece in pieces))


def _between(before: Edge, after: Edge, to: Notation) -> str:
    """What stands between two factors."""
    if before is after is Edge.BRACKET:
        return to.next
    if after is Edge.FUNCTION:
        return to.upon
    return to.times if before is after is Edge.DIGIT else to.thin


def _is_trigonometric(factor: Expression) -> bool:
    return isinstance(factor, Call) and factor.function in TRIGONOMETRIC


def _power(base: Expression, printed: Printed, exponent: int, to: Notation) -> Printed:
    single = isinstance(base, Name) or (isinstance(base, Number) and base.unit is None)
    raised = printed if single else _bracketed(printed, to)
    text = to.power(raised.text, exponent)
    return Printed(text, TIGHT, raised.first, tall=raised.tall)


def _call(function: str, arguments: tuple[Expression, ...], to: Notation, depth: int) -> Printed:
    if not arguments:
        return _name(function, to)
    if function in _AS_IT_IS:
        return _print(in_radians(arguments[0]), to, depth)
    deeper = depth if function in _INVERSE else depth + 2
    inner = [_print(argument, to, deeper) for argument in arguments]
    tall = any(printed.tall for printed in inner)
    match function:
        case "sqrt":
            return Printed(to.root(inner[0].text), TIGHT, tall=True)
        case "hypot":
            bases = zip(arguments, inner, strict=True)
            squares = _sum([(1, _power(base, printed, 2, to)) for base, printed in bases], to)
            return Printed(to.root(squares.text), TIGHT, tall=True)
        case "exp":
            return Printed(to.exponential(inner[0].text), TIGHT)
        case "sum":
            return Printed(to.summed(inner[0].text), TERM, tall=tall)
        case "abs":
            return Printed(to.bars(inner[0].text), TIGHT, tall=tall)
        case name if name in TRIGONOMETRIC:
            return _trigonometric(name, arguments[0], inner[0], to)
        case name:
            listed = to.brackets(to.comma.join(printed.text for printed in inner), tall)
            text = to.row(to.function(name) + listed)
            return Printed(text, TIGHT, last=Edge.BRACKET, tall=tall)


def _trigonometric(name: str, argument: Expression, inner: Printed, to: Notation) -> Printed:
    """A function and its argument, in brackets unless that is one number or one symbol."""
    alone = not isinstance(argument, Quotient | Call) and inner.hold >= TIGHT
    if alone:
        text = to.row(to.function(name) + to.applied + inner.text)
        return Printed(text, TERM, Edge.FUNCTION, tall=inner.tall)
    shown = to.brackets(inner.text, inner.tall)
    text = to.row(to.function(name) + shown)
    return Printed(text, TIGHT, Edge.FUNCTION, Edge.BRACKET, inner.tall)
