"""Expression trees: values, substitution, and the linear parts a step is solved with."""

import pickle
from dataclasses import replace
from decimal import Decimal

import numpy as np
import pytest
import sympy

from probgen.quantities.expression import (
    UNITY,
    ZERO,
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
    Values,
    evaluate,
    linear_parts,
    names_in,
    negative,
    number,
    over,
    parts,
    positive_first,
    root_above,
    substituted,
    times,
    total,
)
from probgen.quantities.parser import parse
from probgen.quantities.unit import DEGREE, UNITS

T, D, L, W, A = (Name(n, n) for n in "TDLWA")
HALF = Lump(over(L, number(2)))
TORQUE = total((1, times(T, D, Call("sin", (A,)))), (-1, times(W, HALF)))
ONE_CM = Number(Decimal(1), UNITS["cm"])
VALUES = {"T": 3.0, "D": 0.5, "L": 4.0, "W": 2.0, "A": 30.0}

VALUED = [
    (TORQUE, 3.0 * 0.5 * 0.5 - 2.0 * 2.0),
    (Number(Decimal("35.0"), UNITS["cm"]), 0.35),
    (Power(L, 2), 16.0),
    (Quotient(W, D), 4.0),
    (Call("hypot", (number(3), number(4))), 5.0),
    (Call("atan2", (number(1), number(-1))), 135.0),
    (Call("cos", (number(90, DEGREE),)), 0.0),
    (Call("sin", (number(180),)), 0.0),
    (Call("tan", (number(45),)), 1.0),
    (Call("max", (W, T)), 3.0),
    (Call("min", (W, T)), 2.0),
    (Call("abs", (negative(W),)), 2.0),
    (Call("sqrt", (L,)), 2.0),
    (Call("sin", (A,)), 0.5),
    (Call("sin", (number(90),)), 1.0),
    (Call("sin", (number(-180),)), 0.0),
    (Call("cos", (number(60),)), 0.5),
    (Call("cos", (number(180),)), -1.0),
    (Call("cos", (number(-90),)), 0.0),
    (Call("asin", (number("0.5"),)), 30.0),
    (Call("acos", (number("0.5"),)), 60.0),
    (Call("atan", (number(1),)), 45.0),
    (Power(L, -1), 0.25),
    (Sum(()), 0.0),
    (Product(()), 1.0),
    (Lump(negative(W)), -2.0),
]


@pytest.mark.parametrize(("expression", "value"), VALUED)
def test_values_are_in_coherent_units_and_degrees(expression: Expression, value: float) -> None:
    assert float(evaluate(expression, VALUES)) == pytest.approx(value, rel=1e-14, abs=0.0)


def test_a_batch_has_one_value_a_draw() -> None:
    batch: Values = {**VALUES, "T": np.array([1.0, 3.0])}
    assert evaluate(TORQUE, batch) == pytest.approx([-3.75, -3.25])


def test_a_name_without_a_value_is_an_error() -> None:
    with pytest.raises(KeyError, match="T"):
        evaluate(T, {})


SIMPLIFIED = [
    (times(ZERO, T), ZERO),
    (times(UNITY, T), T),
    (times(negative(T), D), Sum(((-1, Product((T, D))),))),
    (times(negative(T), negative(D)), Product((T, D))),
    (total((1, T), (-1, total((1, W), (-1, D)))), Sum(((1, T), (-1, W), (1, D)))),
    (total((1, ZERO)), ZERO),
    (over(T, negative(D)), negative(Quotient(T, D))),
    (over(total((-1, T), (-1, W)), negative(D)), Quotient(total((1, T), (1, W)), D)),
    (over(ZERO, D), ZERO),
    (times(T, ONE_CM), Product((T, ONE_CM))),
    (over(T, ONE_CM), Quotient(T, ONE_CM)),
    (positive_first(Sum(((-1, T), (1, W)))), Sum(((1, W), (-1, T)))),
    (
        positive_first(Sum(((-1, T), (1, W), (-1, D), (1, L)))),
        Sum(((1, W), (1, L), (-1, T), (-1, D))),
    ),
    (positive_first(T), T),
    (total(), ZERO),
    (total((1, T)), T),
    (total((-1, T)), Sum(((-1, T),))),
    (total((-1, total((-1, T)))), T),
    (total((1, T), (1, number(0, UNITS["N"]))), T),  # a zero of any unit
    (total((1, T), (1, UNITY)), Sum(((1, T), (1, UNITY)))),
    (times(), UNITY),
    (times(UNITY, UNITY), UNITY),
    (times(T, number(0, UNITS["N"])), ZERO),
    (times(T, times(D, L)), Product((T, D, L))),
    (times(T, number(-1)), Product((T, number(-1)))),
    (over(T, UNITY), T),
    (over(negative(T), D), negative(Quotient(T, D))),
    (over(negative(T), negative(D)), Quotient(T, D)),
    (over(total((-1, T), (1, W)), D), Quotient(total((-1, T), (1, W)), D)),
    (over(T, total((1, D), (-1, L))), Quotient(T, total((1, D), (-1, L)))),
    (over(UNITY, D), Quotient(UNITY, D)),
]


@pytest.mark.parametrize(("built", "expected"), SIMPLIFIED)
def test_building_keeps_signs_in_front(built: Expression, expected: Expression) -> None:
    assert built == expected


LINEAR = [
    (TORQUE, "T"),
    (TORQUE, "W"),
    (TORQUE, "D"),
    (Quotient(total((1, T), (1, W)), D), "W"),
    (times(W, total((1, L), (-1, times(number(3), D)))), "D"),
    (times(W, Lump(total((1, L), (-1, D)))), "D"),
]


@pytest.mark.parametrize(("expression", "name"), LINEAR)
def test_linear_parts_agree_with_a_computer_algebra_system(
    expression: Expression, name: str
) -> None:
    found = linear_parts(expression, name)
    assert found is not None
    slope, rest = found
    assert name not in names_in(slope) | names_in(rest)
    symbol = sympy.Symbol(name)
    theirs = sympy.Poly(_to_sympy(expression), symbol)
    assert sympy.simplify(theirs.coeff_monomial(symbol) - _to_sympy(slope)) == 0
    assert sympy.simplify(theirs.coeff_monomial(1) - _to_sympy(rest)) == 0


@pytest.mark.parametrize(
    "expression",
    [
        *(Power(T, 2), Quotient(W, T), Call("sin", (T,)), times(T, total((1, T), (1, W)))),
        *(total((1, W), (1, Power(T, 2))), times(W, Power(T, 2)), Quotient(T, T)),
        Quotient(Power(T, 2), W),
    ],
)
def test_what_is_not_linear_has_no_linear_parts(expression: Expression) -> None:
    assert linear_parts(expression, "T") is None


def test_an_expression_without_the_name_is_all_rest() -> None:
    assert linear_parts(W, "T") == (ZERO, W)


EACH_KIND = [
    Sum(((1, T), (-1, W))),
    Product((T, W)),
    Quotient(T, W),
    Power(T, 3),
    Call("max", (T, W)),
    Lump(T),
    Root(total((1, T), (-1, Name("x", "x"))), "x", 0.0, 9.0),
]


@pytest.mark.parametrize("expression", EACH_KIND)
def test_every_kind_is_looked_into(expression: Expression) -> None:
    assert T in parts(expression) or any(T in parts(part) for part in parts(expression))
    changed = substituted(expression, lambda part: D if part == T else None)
    assert names_in(changed) == names_in(expression) - {"T"} | {"D"}
    assert float(evaluate(changed, {**VALUES, "D": 3.0})) == evaluate(expression, VALUES)
    assert substituted(expression, lambda part: None) == expression


def test_substitution_gives_a_tree_that_can_be_valued_by_itself() -> None:
    shown = {"T": number(3), "D": number("0.5"), "W": number(2), "L": number(4), "A": number(30)}
    printed = substituted(TORQUE, lambda e: shown[e.id] if isinstance(e, Name) else None)
    assert not names_in(printed)
    assert float(evaluate(printed, {})) == pytest.approx(-3.25)


def _to_sympy(expression: Expression) -> sympy.Expr:
    match expression:
        case Number(value, _):
            return sympy.Rational(str(value))
        case Name(id=name):
            return sympy.Symbol(name)
        case Lump(inner):
            return _to_sympy(inner)
        case Sum(terms):
            return sympy.Add(*(sign * _to_sympy(term) for sign, term in terms))
        case Product(factors):
            return sympy.Mul(*map(_to_sympy, factors))
        case Quotient(top, bottom):
            return _to_sympy(top) / _to_sympy(bottom)
        case Power(base, exponent):
            return _to_sympy(base) ** exponent
        case Call(function, arguments):
            return getattr(sympy, function)(*map(_to_sympy, arguments))


# Roots by hand, in ranges that are not of length one and do not begin at zero.
ROOTS = [
    ("x^2 - 9", 2, 7, [3.0]),
    ("(x - 3)*(x - 5.5)", 2, 7, [3.0, 5.5]),
    ("(x - 4.5)*(x - 5.5)*(x - 6.1)", 3, 7, [4.5, 5.5]),
    ("x - 2", 2, 10, [2.0]),  # at the end of the range, where no sign changes
    ("x - 6", 2, 10, [6.0]),  # in its middle, on a place of the grid
    ("x^2 + 1", -5, 5, []),
]


@pytest.mark.parametrize(("balance", "low", "high", "roots"), ROOTS)
def test_the_lowest_root_in_a_range_and_the_next(
    balance: str, low: float, high: float, roots: list[float]
) -> None:
    root = Root(parse(balance, {"x": Name("x", "x")}), "x", low, high)
    found = [float(evaluate(root, {})), float(root_above(root, {}))]
    expected = [*roots, float("nan"), float("nan")][:2]
    assert found == pytest.approx(expected, nan_ok=True, abs=1e-9)


def test_each_draw_has_its_own_root() -> None:
    """x^2 = a + b, for four draws; the last has none between 1 and 9."""
    names = {id: Name(id, id) for id in "abx"}
    root = Root(parse("x^2 - a - b", names), "x", 1, 9)
    values = {"a": np.array([3.0, 15.0, 60.0, 90.0]), "b": np.array([1.0, 1.0, 4.0, 10.0])}
    found = np.asarray(evaluate(root, values))
    assert found == pytest.approx(np.array([2.0, 4.0, 8.0, np.nan]), nan_ok=True)


def test_names_are_those_inside_also_after_they_were_asked_for_once() -> None:
    for _ in range(2):
        assert names_in(TORQUE) == {"T", "D", "A", "W", "L"}
        assert names_in(HALF) == {"L"}
        assert names_in(number(2)) == set()
    assert names_in(replace(HALF, inner=W)) == {"W"}  # a copy keeps nothing of its pattern
    changed = substituted(TORQUE, lambda part: W if part == T else None)
    assert names_in(changed) == {"D", "A", "W", "L"}


def test_a_root_holds_what_its_balance_holds_but_not_the_name_it_is_found_for() -> None:
    assert names_in(Root(total((1, T), (-1, W)), "T", 0.0, 1.0)) == {"W"}


def test_names_asked_for_make_no_difference_between_expressions() -> None:
    asked, fresh = times(T, D), times(T, D)
    names_in(asked)
    assert asked == fresh
    assert hash(asked) == hash(fresh)
    assert pickle.dumps(asked) == pickle.dumps(fresh)
    assert repr(asked) == repr(fresh)
