from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from probgen.quantities.expression import (
    PI,
    Call,
    Expression,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    evaluate,
)
from probgen.quantities.parser import (
    LARGEST_EXPONENT,
    ExpressionError,
    UnknownNameError,
    parse,
    parse_comparison,
    parse_equation,
)
from probgen.quantities.unit import UNITS

L, THETA, R_X, M = Name("L", "L"), Name("theta", "theta"), Name("R.x", "R_x"), Name("m", "m")
SCOPE = {name.id: name for name in (L, THETA, R_X, M)}


def n(text: str, unit: str = "") -> Number:
    return Number(Decimal(text), UNITS[unit] if unit else None)


TREES = [
    ("0.80", n("0.80")),
    ("-30", n("-30")),
    ("0.1 m", n("0.1", "m")),
    ("0.1m", n("0.1", "m")),
    ("30°", n("30", "deg")),
    ("5 N*m", n("5", "N*m")),
    ("5 N*L", Product((n("5", "N"), L))),
    ("2 m*m", Product((n("2", "m"), M))),
    ("3 N/m", n("3", "N/m")),
    ("3 N/L", Quotient(n("3", "N"), L)),
    ("L/2", Quotient(L, n("2"))),
    ("2*L/3", Quotient(Product((n("2"), L)), n("3"))),
    ("180 - theta", Sum(((1, n("180")), (-1, THETA)))),
    ("-L", Sum(((-1, L),))),
    ("-0.5*L", Product((n("-0.5"), L))),
    ("-L*m", Sum(((-1, Product((L, M))),))),
    ("-L^2", Sum(((-1, Power(L, 2)),))),
    ("L**2", Power(L, 2)),
    ("L^-1", Power(L, -1)),
    ("L - (m - theta)", Sum(((1, L), (-1, M), (1, THETA)))),
    ("(L + m)/2", Quotient(Sum(((1, L), (1, M))), n("2"))),
    ("sin(theta)*R.x", Product((Call("sin", (THETA,)), R_X))),
    ("atan2(L, m)", Call("atan2", (L, M))),
    ("+L", L),
    ("pi*L", Product((PI, L))),
    ("L*-m", Sum(((-1, Product((L, M))),))),
    ("-L/m", Sum(((-1, Quotient(L, M)),))),
    ("L/-m", Sum(((-1, Quotient(L, M)),))),
    ("-(L - m)", Sum(((-1, L), (1, M)))),
    ("L/m/theta", Quotient(Quotient(L, M), THETA)),
    ("L/m*theta", Product((Quotient(L, M), THETA))),
    ("L*m*theta", Product((L, M, THETA))),
    ("L*(m*theta)", Product((L, M, THETA))),
    ("L*m^2", Product((L, Power(M, 2)))),
    ("(L^2)*m", Product((Power(L, 2), M))),
    ("max(L, 0)*m", Product((Call("max", (L, n("0"))), M))),
    ("min(L + m, 2)", Call("min", (Sum(((1, L), (1, M))), n("2")))),
    ("1", n("1")),
    (".5", n("0.5")),
    ("2.5e3 N", n("2.5E+3", "N")),
    ("3 mm", n("3", "mm")),  # not 3 m of something
    ("3 m^2", n("3", "m^2")),
    ("(3 N)^2", Power(n("3", "N"), 2)),
]


@pytest.mark.parametrize(("text", "tree"), TREES, ids=[text for text, _ in TREES])
def test_text_becomes_the_tree_as_written(text: str, tree: Expression | Number) -> None:
    assert parse(text, SCOPE) == tree


FAULTS = [
    ("", "the text ends", 1),
    ("L +", "the text ends", 4),
    ("2L", "expected an operator, found 'L'", 2),
    ("L L", "expected an operator", 3),
    ("(L", "never closed", 1),
    ("L)", "expected an operator, found ')'", 2),
    ("lenght", "no quantity named 'lenght'", 1),
    ("thet", "did you mean 'theta'", 1),
    ("eval(L)", "no function 'eval'", 1),
    ("sin(L, m)", "sin takes 1 argument", 1),
    ("hypot(L)", "hypot takes 2 argument", 1),
    ("L^0.5", "whole exponent", 3),
    ("L^99", "whole exponent", 3),
    ("(L^2)^2", "a power of a power", 6),
    ("3 m^4", "parentheses", 4),
    ("L; m", "no meaning for ';'", 2),
    ("L.__class__", "no meaning for '.'", 2),
    ("__import__", "no meaning for '_'", 1),
    ("'a'", 'no meaning for "\'"', 1),
    ("1e400", "out of range", 1),
    ("L/0", "a division by zero", 2),
    ("L/0.0", "a division by zero", 2),
    ("L < m", "expected an operator, found '<'", 3),
    ("+" * 200 + "L", "nested too deeply", 25),
    ("(" * 100, "nested too deeply", 25),
    ("1" * 400, "longer than", 300),
]


@pytest.mark.parametrize(("text", "words", "column"), FAULTS, ids=[row[0][:12] for row in FAULTS])
def test_what_is_no_expression_is_refused_with_its_column(
    text: str, words: str, column: int
) -> None:
    with pytest.raises(ExpressionError, match="column") as caught:
        parse(text, SCOPE)
    assert words in str(caught.value)
    assert caught.value.column == column


# What is just within a bound, and what is just beyond it.
BOUNDS = [
    (f"L^{LARGEST_EXPONENT}", f"L^{LARGEST_EXPONENT + 1}"),
    ("L^6", "L^7"),
    ("L^-6", "L^-7"),
    ("L^0", "L^1.0"),
    ("L^2", "L^2 m"),
    ("1e30", "1e31"),
    ("1e-30", "1e-31"),
    ("9.9e30", "10e30"),
    ("0e99", "1e99"),
    ("(" * 23 + "L" + ")" * 23, "(" * 24 + "L" + ")" * 24),
    (" + ".join(["(L)"] * 30), "(" * 25 + "L"),  # beside each other, not inside
    ("1" * 31, "1" * 32),
    ("L" + " " * 299, "L" + " " * 300),
    ("sin(L)", "sin()"),
    ("atan2(L, m)", "atan2(L, m, L)"),
    ("max(L, m)", "max(L)"),
    ("min(L, m)", "min(L)"),
    ("sqrt(L)", "sqrt(L, m)"),
    ("3 m", "3 m^4"),
    ("(L + 1)^2", "(L^2 + 1)^2"),
]


@pytest.mark.parametrize(("within", "beyond"), BOUNDS, ids=[row[1][:12] for row in BOUNDS])
def test_bounds(within: str, beyond: str) -> None:
    parse(within, SCOPE)
    with pytest.raises(ExpressionError):
        parse(beyond, SCOPE)


def test_a_name_that_is_like_another_is_told_from_a_stranger() -> None:
    for text in ("thetta", "zzzz"):
        with pytest.raises(UnknownNameError):
            parse(text, SCOPE)
    with pytest.raises(ExpressionError) as caught:
        parse("eval(L)", SCOPE)
    assert not isinstance(caught.value, UnknownNameError)


@given(st.text(max_size=40))
def test_any_text_is_read_or_refused(text: str) -> None:
    column = 1
    try:
        parse(text, SCOPE)
    except ExpressionError as error:
        column = error.column
    assert 1 <= column <= len(text) + 1


@given(
    st.recursive(
        st.integers(1, 9).map(str),
        lambda inner: st.one_of(
            st.tuples(inner, st.sampled_from("+-*/"), inner).map("".join),
            inner.map("({})".format),
            inner.map("-({})".format),
        ),
        max_leaves=8,
    )
)
def test_arithmetic_agrees_with_the_language_itself(text: str) -> None:
    try:
        expected = eval(text)
    except ZeroDivisionError:
        return
    assert evaluate(parse(text, {}), {}) == pytest.approx(expected, rel=1e-12, abs=1e-12)


@pytest.mark.parametrize("relation", ["<", "<=", ">", ">="])
def test_a_comparison_has_two_sides(relation: str) -> None:
    read = parse_comparison(f"R.x {relation} 1500 N", SCOPE)
    assert (read.left, read.relation, read.right) == (R_X, relation, n("1500", "N"))


@pytest.mark.parametrize(("text", "column"), [("R.x", 4), ("R.x = 3", 5), ("1 < L < 2", 7)])
def test_what_is_wrong_in_a_comparison_stands_in_a_column(text: str, column: int) -> None:
    with pytest.raises(ExpressionError) as caught:
        parse_comparison(text, SCOPE)
    assert caught.value.column == column


def test_an_equation_has_two_sides() -> None:
    read = parse_equation("R.x = 2*m", SCOPE)
    assert (read.left, read.relation, read.right) == (R_X, "=", Product((n("2"), M)))


@pytest.mark.parametrize("text", ["R.x", "R.x < 3", "L = m = 2", "L == m", "= 3"])
def test_what_is_no_equation_is_refused(text: str) -> None:
    with pytest.raises(ExpressionError):
        parse_equation(text, SCOPE)


@pytest.mark.parametrize("text", ["R.x", "R.x = 3", "1 < L < 2", "< 3"])
def test_what_is_no_comparison_is_refused(text: str) -> None:
    with pytest.raises(ExpressionError):
        parse_comparison(text, SCOPE)


def test_pi_is_a_number_and_no_function() -> None:
    assert float(evaluate(parse("pi", {}), {})) == pytest.approx(3.141592653589793)
    with pytest.raises(ExpressionError, match="no function 'pi'; the functions are sin, "):
        parse("pi(2)", {})
    assert parse("pi", {"pi": L}) == L  # what an author names goes first
