"""Expressions: what a quantity is made of, as a small tree that can be valued, solved and printed.

A tree is built once for a template.  Values are put in later, one draw (floats) or many at once
(numpy arrays).  Every value is in metres, kilograms, seconds, newtons and, for angles, degrees.
A printed working is a tree too: `substituted` puts printed numbers in the places of names, so what
stands on the page can itself be evaluated.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.unit import Unit

Value = float | NDArray[np.float64]
Values = Mapping[str, Value]


class _Part:
    """What an expression is made of; it keeps the names in it once somebody has asked."""

    __slots__ = ("_names",)
    _names: frozenset[str]


@dataclass(frozen=True, slots=True)
class Number(_Part):
    """A number as it is printed: its digits (trailing zeros kept) and its unit, None for plain."""

    value: Decimal
    unit: Unit | None = None


@dataclass(frozen=True, slots=True)
class Name(_Part):
    """A quantity by its id; `symbol` only tells how it is printed, such as "m_1" or "theta"."""

    id: str
    symbol: str = field(compare=False)


@dataclass(frozen=True, slots=True)
class Sum(_Part):
    """Terms with their signs, +1 or -1, in the order they are to be printed."""

    terms: tuple[tuple[int, Expression], ...]


@dataclass(frozen=True, slots=True)
class Product(_Part):
    factors: tuple[Expression, ...]


@dataclass(frozen=True, slots=True)
class Quotient(_Part):
    top: Expression
    bottom: Expression


@dataclass(frozen=True, slots=True)
class Power(_Part):
    base: Expression
    exponent: int


@dataclass(frozen=True, slots=True)
class Call(_Part):
    """A function of one or two arguments; see `FUNCTIONS`.  Angles go in and out in degrees.

    One of none is a number that is written as a letter: `PI`.
    """

    function: str
    arguments: tuple[Expression, ...]


@dataclass(frozen=True, slots=True)
class Lump(_Part):
    """A part that a working prints as one number, such as the lever arm L/2."""

    inner: Expression


@dataclass(frozen=True, slots=True)
class Root(_Part):
    """The value of `name` between low and high for which `balance` is zero, found numerically.

    low, high: coherent units; where there are several roots the lowest is meant.
    """

    balance: Expression
    name: str
    low: float
    high: float


Expression = Number | Name | Sum | Product | Quotient | Power | Call | Lump | Root

ZERO: Final = Number(Decimal(0))
UNITY: Final = Number(Decimal(1))
PI: Final = Call("pi", ())
"""Written as a letter in working too, so that no figures of it are lost."""


def _exact_sine(angle: Value) -> Value:
    """Sine of degrees, exact at the quarter turns (so that a vertical force has no x-component)."""
    turned = np.remainder(angle, 360.0)
    plain = np.sin(np.radians(turned))
    return np.where(np.remainder(turned, 180.0) == 0.0, 0.0, plain)[()]


def _exact_cosine(angle: Value) -> Value:
    return _exact_sine(np.add(angle, 90.0))


FUNCTIONS: Final[dict[str, Callable[..., Value]]] = {
    "sin": _exact_sine,
    "cos": _exact_cosine,
    "tan": lambda a: _exact_sine(a) / _exact_cosine(a),
    "asin": lambda x: np.degrees(np.arcsin(x)),
    "acos": lambda x: np.degrees(np.arccos(x)),
    "atan": lambda x: np.degrees(np.arctan(x)),
    "atan2": lambda y, x: np.degrees(np.arctan2(y, x)),
    "rad": np.radians,
    "deg": np.degrees,
    "exp": np.exp,
    "ln": np.log,
    "sqrt": np.sqrt,
    "hypot": np.hypot,
    "abs": np.abs,
    "min": np.minimum,
    "max": np.maximum,
    PI.function: lambda: np.pi,
}
"""The functions an author may call, and pi; rad: an angle as a plain number, deg: the way back."""


def number(value: int | str | Decimal, unit: Unit | None = None) -> Number:
    """A number with its digits and unit."""
    return Number(Decimal(value), unit)


def evaluate(expression: Expression, values: Values) -> Value:
    """The value of an expression, in coherent units; KeyError when a name has no value."""
    match expression:
        case Number(value, unit):
            return float(value) * (unit.factor if unit else 1.0)
        case Name(id=name):
            return values[name]
        case Lump(inner):
            return evaluate(inner, values)
        case Sum(terms):
            result: Value = 0.0
            for sign, term in terms:
                result = result + sign * evaluate(term, values)
            return result
        case Product(factors):
            result = 1.0
            for factor in factors:
                result = result * evaluate(factor, values)
            return result
        case Quotient(top, bottom):
            return np.divide(evaluate(top, values), evaluate(bottom, values))
        case Power(base, exponent):
            powered: Value = np.power(np.asarray(evaluate(base, values), float), exponent)
            return powered
        case Call(function, arguments):
            return FUNCTIONS[function](*(evaluate(a, values) for a in arguments))
        case Root():
            return _found(expression, values)


_STEPS: Final = 96
"""Intervals in which a root is looked for; two roots closer than one of them count as one."""


def _found(root: Root, values: Values, lowest: int = 0) -> Value:
    """The lowest root in its range, or the next ones above it; not a number where there is none.

    One value for each draw.
    """
    from scipy.optimize import elementwise  # heavy, and seldom needed

    def height(place: Value, *known: Value) -> Value:
        named = dict(zip(held, known, strict=True))
        return np.asarray(evaluate(root.balance, {**named, root.name: place}), dtype=float)

    held = sorted(names_in(root))
    known = np.broadcast_arrays(*(np.asarray(values[name], dtype=float) for name in held))
    shape = known[0].shape if known else ()
    grid = np.linspace(root.low, root.high, _STEPS + 1).reshape(-1, *(1 for _ in shape))
    heights = np.broadcast_to(height(grid, *known), (_STEPS + 1, *shape))
    change = (np.sign(heights[:-1]) * np.sign(heights[1:]) < 0.0) | (heights[:-1] == 0.0)
    wanted = change & (np.cumsum(change, axis=0) == lowest + 1)
    first = np.argmax(wanted, axis=0)
    left = np.asarray(root.low + first * (root.high - root.low) / _STEPS)
    right = left + (root.high - root.low) / _STEPS
    found = elementwise.find_root(height, (left, right), args=tuple(known))
    result: Value = np.where(wanted.any(axis=0), found.x, np.nan)[()]
    return result


def root_above(root: Root, values: Values) -> Value:
    """The second lowest root, one for each draw; not a number where there is only one."""
    return _found(root, values, lowest=1)


def names_in(expression: Expression) -> frozenset[str]:
    """The ids of all quantities an expression is made of."""
    try:
        return expression._names
    except AttributeError:
        names = _names_of(expression)
        object.__setattr__(expression, "_names", names)
        return names


def _names_of(expression: Expression) -> frozenset[str]:
    if isinstance(expression, Name):
        return frozenset({expression.id})
    if isinstance(expression, Root):
        return names_in(expression.balance) - {expression.name}
    return frozenset().union(*(names_in(part) for part in parts(expression)))


def parts(expression: Expression) -> tuple[Expression, ...]:
    """The expressions directly inside one."""
    match expression:
        case Number() | Name():
            return ()
        case Sum(terms):
            return tuple(term for _, term in terms)
        case Product(factors):
            return factors
        case Quotient(top, bottom):
            return (top, bottom)
        case Power(base, _):
            return (base,)
        case Call(_, arguments):
            return arguments
        case Lump(inner) | Root(inner, _, _, _):
            return (inner,)


def rebuilt(expression: Expression, change: Callable[[Expression], Expression]) -> Expression:
    """The expression with `change` applied to each part directly inside it."""
    match expression:
        case Number() | Name():
            return expression
        case Sum(terms):
            return Sum(tuple([(sign, change(term)) for sign, term in terms]))
        case Product(factors):
            return Product(tuple([change(factor) for factor in factors]))
        case Quotient(top, bottom):
            return Quotient(change(top), change(bottom))
        case Power(base, exponent):
            return Power(change(base), exponent)
        case Call(function, arguments):
            return Call(function, tuple([change(a) for a in arguments]))
        case Lump(inner):
            return Lump(change(inner))
        case Root(balance, name, low, high):
            return Root(change(balance), name, low, high)


def substituted(
    expression: Expression,
    shown: Callable[[Expression], Expression | None],
) -> Expression:
    """The expression with every part for which `shown` gives a replacement replaced by it."""

    def replaced(part: Expression) -> Expression:
        replacement = shown(part)
        return rebuilt(part, replaced) if replacement is None else replacement

    return replaced(expression)


# Building, with the obvious simplifications (nothing clever: order is kept as written).


def is_number(expression: Expression, value: int) -> bool:
    """Whether it is this plain number; a zero may have any unit."""
    if not isinstance(expression, Number) or expression.value != value:
        return False
    return value == 0 or expression.unit is None


def total(*signed: tuple[int, Expression]) -> Expression:
    """A sum of signed terms; nested sums are flattened, zeros dropped."""
    flat: list[tuple[int, Expression]] = []
    for sign, term in signed:
        inner = term.terms if isinstance(term, Sum) else ((1, term),)
        flat += [(sign * s, t) for s, t in inner if not is_number(t, 0)]
    if not flat:
        return ZERO
    if len(flat) == 1 and flat[0][0] == 1:
        return flat[0][1]
    return Sum(tuple(flat))


def positive_first(expression: Expression) -> Expression:
    """A sum with its added terms before those taken away, each group in its own order."""
    if not isinstance(expression, Sum):
        return expression
    return Sum(tuple(sorted(expression.terms, key=lambda term: -term[0])))


def negative(expression: Expression) -> Expression:
    """The expression with the other sign."""
    return total((-1, expression))


def times(*factors: Expression) -> Expression:
    """A product; ones are dropped, a zero makes all zero, a lone minus sign comes out in front."""
    flat: list[Expression] = []
    sign = 1
    for factor in factors:
        if isinstance(factor, Sum) and len(factor.terms) == 1:
            sign, factor = sign * factor.terms[0][0], factor.terms[0][1]
        flat += factor.factors if isinstance(factor, Product) else (factor,)
    if any(is_number(factor, 0) for factor in flat):
        return ZERO
    kept = tuple(factor for factor in flat if not is_number(factor, 1))
    product = kept[0] if len(kept) == 1 else Product(kept) if kept else UNITY
    return product if sign > 0 else negative(product)


def over(top: Expression, bottom: Expression) -> Expression:
    """A quotient without needless signs and ones."""
    if is_number(bottom, 1):
        return top
    if _all_negative(bottom):
        return over(negative(top), negative(bottom))
    if isinstance(top, Sum) and len(top.terms) == 1:
        return negative(over(top.terms[0][1], bottom))
    return ZERO if is_number(top, 0) else Quotient(top, bottom)


def _all_negative(expression: Expression) -> bool:
    return isinstance(expression, Sum) and all(sign < 0 for sign, _ in expression.terms)


def linear_parts(expression: Expression, name: str) -> tuple[Expression, Expression] | None:
    """(a, b) with expression = a * name + b, neither holding name; None when it is not linear."""
    if name not in names_in(expression):
        return ZERO, expression
    match expression:
        case Name():
            return UNITY, ZERO
        case Lump(inner):
            return linear_parts(inner, name)
        case Sum(terms):
            return _linear_sum(terms, name)
        case Product(factors):
            return _linear_product(factors, name)
        case Quotient(top, bottom) if name not in names_in(bottom):
            found = linear_parts(top, name)
            return found and (over(found[0], bottom), over(found[1], bottom))
        case _:
            return None


def _linear_sum(
    terms: Iterable[tuple[int, Expression]], name: str
) -> tuple[Expression, Expression] | None:
    slopes: list[tuple[int, Expression]] = []
    rests: list[tuple[int, Expression]] = []
    for sign, term in terms:
        found = linear_parts(term, name)
        if found is None:
            return None
        slopes.append((sign, found[0]))
        rests.append((sign, found[1]))
    return total(*slopes), total(*rests)


def _linear_product(
    factors: tuple[Expression, ...], name: str
) -> tuple[Expression, Expression] | None:
    holders = [i for i, factor in enumerate(factors) if name in names_in(factor)]
    if len(holders) != 1:
        return None
    place = holders[0]
    found = linear_parts(factors[place], name)
    if found is None:
        return None
    before, after = factors[:place], factors[place + 1 :]
    return times(*before, found[0], *after), times(*before, found[1], *after)
