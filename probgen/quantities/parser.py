"""Author text read as expressions: a whitelist of numbers, units, names, operators and functions.

`parse("L/2 + 0.1 m", scope)` gives the tree as written, nothing simplified.  A number may carry a
unit ("0.1 m", "1500 N"); the longest unit name that fits is taken.  The operators are + - * / and
^ (or **) with a whole-number exponent; the functions are those of `expression.FUNCTIONS`.  Nothing
else is read, and nothing is ever executed.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from difflib import get_close_matches
from typing import Final

from probgen.quantities.expression import (
    FUNCTIONS,
    PI,
    Call,
    Expression,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    parts,
)
from probgen.quantities.unit import UNITS, Unit, unit_named

LONGEST_TEXT: Final = 300
DEEPEST_NESTING: Final = 24
LARGEST_EXPONENT: Final = 6
LARGEST_POWER_OF_TEN: Final = 30
RELATIONS: Final = ("<", "<=", ">", ">=")

_TWO_ARGUMENTS: Final = frozenset({"atan2", "hypot", "min", "max"})
_SUM, _PRODUCT, _POWER = 10, 20, 30
_BINDING: Final = {"+": _SUM, "-": _SUM, "*": _PRODUCT, "/": _PRODUCT, "^": _POWER, "**": _POWER}

_UNIT_NAMES: Final = sorted({*UNITS, "°"} - {"1"}, key=len, reverse=True)
_UNIT: Final = "|".join(map(re.escape, _UNIT_NAMES))
_TOKEN: Final = re.compile(
    rf"""\s*(?:
        (?P<number>(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)(?:\s*(?P<unit>{_UNIT})(?![A-Za-z0-9_]))?
      | (?P<name>[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)*)
      | (?P<sign>\*\*|<=|>=|[-+*/^(),<>=])
      | (?P<end>$)
    )""",
    re.VERBOSE,
)


class ExpressionError(ValueError):
    """Text that is no expression; `column` counts from 1."""

    def __init__(self, message: str, column: int) -> None:
        super().__init__(f"{message} (column {column})")
        self.column = column


class UnknownNameError(ExpressionError):
    """A name that no quantity has."""


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two expressions and the relation that must hold: "<", "<=", ">", ">=" or "="."""

    left: Expression
    relation: str
    right: Expression


@dataclass(frozen=True, slots=True)
class _Token:
    kind: str
    text: str
    unit: str
    column: int


def parse(text: str, scope: Mapping[str, Name]) -> Expression:
    """The expression an author wrote, over the names of `scope` (by id).

    Raises ExpressionError, with the column, for anything that is no expression.
    """
    reader = _Reader(text, scope)
    expression = reader.expression(0)
    reader.expect_end()
    return expression


def parse_comparison(text: str, scope: Mapping[str, Name]) -> Comparison:
    """The comparison an author wrote, such as "T < 1500 N".  Raises ExpressionError."""
    return _parse_sides(text, scope, RELATIONS)


def parse_equation(text: str, scope: Mapping[str, Name]) -> Comparison:
    """The equation an author wrote, such as "A.y = 2*B.y".  Raises ExpressionError."""
    return _parse_sides(text, scope, ("=",))


def _parse_sides(text: str, scope: Mapping[str, Name], relations: tuple[str, ...]) -> Comparison:
    reader = _Reader(text, scope)
    left = reader.expression(0)
    relation = reader.take()
    if relation.text not in relations:
        known = f"one of {' '.join(relations)}" if len(relations) > 1 else relations[0]
        raise ExpressionError(f"expected {known} after the first side", relation.column)
    right = reader.expression(0)
    reader.expect_end()
    return Comparison(left, relation.text, right)


class _Reader:
    """A Pratt parser over the tokens of one text."""

    def __init__(self, text: str, scope: Mapping[str, Name]) -> None:
        self._tokens = _tokens(text)
        self._scope = scope
        self._place = 0
        self._depth = 0

    @property
    def _next(self) -> _Token:
        return self._tokens[self._place]

    @property
    def _known(self) -> str:
        return ", ".join(self._scope) or "none"

    def take(self) -> _Token:
        token = self._next
        self._place += token.kind != "end"
        return token

    def expect_end(self) -> None:
        if self._next.kind != "end":
            found = self._next
            raise ExpressionError(f"expected an operator, found {found.text!r}", found.column)

    def expression(self, binding: int) -> Expression:
        """The expression that starts here and whose operators bind tighter than `binding`."""
        self._depth += 1
        if self._depth > DEEPEST_NESTING:
            raise ExpressionError("nested too deeply", self._next.column)
        left = self._first(self.take())
        while self._next.kind == "sign" and _BINDING.get(self._next.text, 0) > binding:
            left = self._joined(left, self.take())
        self._depth -= 1
        return left

    def _first(self, token: _Token) -> Expression:
        match token.kind, token.text:
            case "number", _:
                return self._number(token)
            case "name", _:
                return self._call(token) if self._next.text == "(" else self._name(token)
            case "sign", "(":
                inner = self.expression(0)
                self._close(token)
                return inner
            case "sign", "-":
                return _negated(self.expression(_PRODUCT))
            case "sign", "+":
                return self.expression(_PRODUCT)
            case _:
                found = f"found {token.text!r}" if token.text else "the text ends"
                raise ExpressionError(f"expected a number or a name, {found}", token.column)

    def _joined(self, left: Expression, operator: _Token) -> Expression:
        match operator.text:
            case "+" | "-":
                return _added(left, self.expression(_SUM), 1 if operator.text == "+" else -1)
            case "*":
                return _multiplied(left, self.expression(_PRODUCT))
            case "/":
                bottom = self.expression(_PRODUCT)
                if isinstance(bottom, Number) and not bottom.value:
                    raise ExpressionError("a division by zero", operator.column)
                return _divided(left, bottom)
            case _:
                if _holds_power(left):  # a tower of powers grows beyond any bound
                    raise ExpressionError("a power of a power", operator.column)
                return Power(left, self._exponent(operator))

    def _number(self, token: _Token) -> Number:
        value = Decimal(token.text)
        if value and abs(value.adjusted()) > LARGEST_POWER_OF_TEN:
            raise ExpressionError(f"the number {token.text} is out of range", token.column)
        if token.unit and self._next.text in ("^", "**"):
            raise ExpressionError("put a quantity in parentheses to raise it", self._next.column)
        return Number(value, _unit(token.unit))

    def _name(self, token: _Token) -> Name | Call:
        name = self._scope.get(token.text)
        if name is None and token.text == PI.function:
            return PI
        if name is None:
            near = get_close_matches(token.text, self._scope, 1)
            hint = f"; did you mean {near[0]!r}?" if near else f"; there are {self._known}"
            raise UnknownNameError(f"no quantity named {token.text!r}{hint}", token.column)
        return name

    def _call(self, token: _Token) -> Call:
        functions = [each for each in FUNCTIONS if each != PI.function]
        if token.text not in functions:
            known = ", ".join(functions)
            raise ExpressionError(
                f"no function {token.text!r}; the functions are {known}", token.column
            )
        opening = self.take()
        arguments = [self.expression(0)]
        while self._next.text == ",":
            self.take()
            arguments.append(self.expression(0))
        self._close(opening)
        wanted = 2 if token.text in _TWO_ARGUMENTS else 1
        if len(arguments) != wanted:
            message = f"{token.text} takes {wanted} argument(s), found {len(arguments)}"
            raise ExpressionError(message, token.column)
        return Call(token.text, tuple(arguments))

    def _exponent(self, operator: _Token) -> int:
        negative = self._next.text == "-"
        if negative:
            self.take()
        token = self.take()
        whole = token.kind == "number" and not token.unit and token.text.isdecimal()
        if not whole or int(token.text) > LARGEST_EXPONENT:
            raise ExpressionError(
                f"expected a whole exponent up to {LARGEST_EXPONENT}", operator.column + 1
            )
        return -int(token.text) if negative else int(token.text)

    def _close(self, opening: _Token) -> None:
        if self.take().text != ")":
            raise ExpressionError("this parenthesis is never closed", opening.column)


def _tokens(text: str) -> list[_Token]:
    if len(text) > LONGEST_TEXT:
        raise ExpressionError(f"longer than {LONGEST_TEXT} characters", LONGEST_TEXT)
    tokens: list[_Token] = []
    place = 0
    while not tokens or tokens[-1].kind != "end":
        found = _TOKEN.match(text, place)
        if found is None:
            column = place + len(text[place:]) - len(text[place:].lstrip()) + 1
            raise ExpressionError(f"no meaning for {text[column - 1]!r}", column)
        kind = "number" if found["number"] else str(found.lastgroup)
        unit = found["unit"] or ""
        tokens.append(_Token(kind, found[kind], unit, found.start(kind) + 1))
        place = found.end()
    return tokens


def _unit(name: str) -> Unit | None:
    return unit_named(name) if name else None


# Trees are kept as written; only signs move to where a printed formula has them.


def _negated(expression: Expression) -> Expression:
    match expression:
        case Number(value, unit):
            return Number(-value, unit)
        case Sum(terms):
            return Sum(tuple((-sign, term) for sign, term in terms))
        case _:
            return Sum(((-1, expression),))


def _added(left: Expression, right: Expression, sign: int) -> Sum:
    first = left.terms if isinstance(left, Sum) else ((1, left),)
    second = right.terms if isinstance(right, Sum) else ((1, right),)
    return Sum((*first, *((sign * s, term) for s, term in second)))


def _multiplied(left: Expression, right: Expression) -> Expression:
    if (inner := _lone_negative(left)) is not None:
        return _negated(_multiplied(inner, right))
    if (inner := _lone_negative(right)) is not None:
        return _negated(_multiplied(left, inner))
    first = left.factors if isinstance(left, Product) else (left,)
    second = right.factors if isinstance(right, Product) else (right,)
    return Product((*first, *second))


def _divided(left: Expression, right: Expression) -> Expression:
    if (inner := _lone_negative(left)) is not None:
        return _negated(_divided(inner, right))
    if (inner := _lone_negative(right)) is not None:
        return _negated(_divided(left, inner))
    return Quotient(left, right)


def _holds_power(expression: Expression) -> bool:
    return isinstance(expression, Power) or any(map(_holds_power, parts(expression)))


def _lone_negative(expression: Expression) -> Expression | None:
    """What stands behind a lone minus sign; None when there is no such sign."""
    match expression:
        case Sum(((-1, inner),)):
            return inner
        case _:
            return None
