"""Products and sums taken apart and put together: other looks, the same values."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import Expression, Lump, Name, evaluate, number, over, times
from probgen.quantities.factors import expanded, factored, with_powers, without_common
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain

SCOPE = {letter: Name(letter, letter) for letter in ("a", "b", "c", "d", "x")}
VALUES = {"a": 2.0, "b": 3.0, "c": 5.0, "d": 0.4, "x": 35.0}


def read(text: str) -> Expression:
    return parse(text, SCOPE)


@pytest.mark.parametrize(
    ("text", "terms"),
    [("a*(b + c)", 2), ("(a + b)*(c - d)", 4), ("a*b - c*(a - b)", 3), ("a", 1)],
)
def test_products_are_multiplied_out_without_change_of_value(text: str, terms: int) -> None:
    written = expanded(read(text))
    assert len(getattr(written, "terms", (written,))) == terms
    assert evaluate(written, VALUES) == pytest.approx(evaluate(read(text), VALUES))


def test_what_is_multiplied_out_keeps_its_order() -> None:
    assert plain(expanded(read("a*(b + c)*d"))) == "a b d + a c d"


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("a*b*cos(x) + c*d*cos(x)", "(a b + c d) cos x"),
        ("a*sin(x) - b*a*cos(x)", "a (sin x − b cos x)"),
        ("-a*cos(x) - b*cos(x)", "−(a + b) cos x"),
        ("a*b*cos(x) + c*d*sin(x)", "a b cos x + c d sin x"),
        ("a*b", "a b"),
    ],
)
def test_what_all_terms_share_is_written_once(text: str, written: str) -> None:
    assert plain(factored(read(text))) == written
    assert evaluate(factored(read(text)), VALUES) == pytest.approx(evaluate(read(text), VALUES))


def test_an_equation_without_what_all_its_terms_hold() -> None:
    assert plain(without_common(read("a*b*sin(x) - b*c"))) == "a sin x − c"
    assert plain(without_common(read("a*b"))) == "a b"
    assert plain(without_common(read("3*(a/c) - b*(sin(x)/c)"))) == "3 a − b sin x"
    assert plain(without_common(read("3*(a/c) - b*sin(x)"))) == "3 (a/c) − b sin x"


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("a*a", "a²"),
        ("a*a*a", "a³"),
        ("a*b*a*c", "a² b c"),
        ("a*b*b*a", "a² b²"),
        ("a*a/b + b*b", "a²/b + b²"),
        ("a*b", "a b"),
        ("sin(x)*sin(x)", "sin x sin x"),  # no quantity by itself
    ],
)
def test_a_quantity_that_stands_twice_is_squared(text: str, written: str) -> None:
    assert plain(with_powers(read(text))) == written
    assert evaluate(with_powers(read(text)), VALUES) == pytest.approx(
        float(evaluate(read(text), VALUES))
    )


def test_a_length_that_is_printed_as_one_number_is_squared_too() -> None:
    length = Name("L", "L")
    assert plain(with_powers(times(length, Lump(length)))) == "L²"
    half = Lump(over(length, number(2)))
    assert plain(with_powers(times(length, half))) == "L (L/2)"
