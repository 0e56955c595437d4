"""Closed forms beside the roots sympy finds for the same equation with numbers in it."""

from __future__ import annotations

import math

import numpy as np
import pytest
import sympy

from probgen.quantities.expression import (
    Expression,
    Lump,
    Name,
    Power,
    Root,
    evaluate,
    names_in,
    total,
)
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain
from probgen.statics.algebra import closed_forms

SCOPE = {letter: Name(letter, letter) for letter in ("a", "b", "c", "x", "theta")}
VALUES = {"a": 2.0, "b": 3.0, "c": 5.0, "theta": 30.0}


def read(text: str) -> Expression:
    return parse(text, SCOPE)


def positive_roots(text: str) -> list[float]:
    """By sympy, from the text itself."""
    letters = {name: sympy.Rational(str(value)) for name, value in VALUES.items()}
    wanted = sympy.Symbol("x", positive=True)
    hypot = {"hypot": lambda p, q: sympy.sqrt(p**2 + q**2), "x": wanted}
    equation = sympy.sympify(text.replace("^", "**"), locals={**letters, **hypot})
    return sorted(float(root) for root in sympy.solve(equation, wanted))


@pytest.mark.parametrize(
    "equation",
    [
        "x^2 + a*x - b",
        "a*x^2 + b*x - c",
        "x*(x - a) - b",
        "a*x*(c - x) - b",
        "c/x - a*x",
        "1/x + 1/c - 1/a",
        "sqrt(x) - a",
        "sqrt(x + b) - a*b/c*2",
        "a*hypot(x, b) - c*x",
        "b*(x - a)^2 - c",
    ],
)
def test_every_positive_root_is_among_them(equation: str) -> None:
    closed = closed_forms(read(equation), "x")
    found = [float(np.asarray(evaluate(each, VALUES))) for each in closed]
    wanted = positive_roots(equation)
    assert wanted
    for root in wanted:
        assert min(abs(value - root) for value in found) < 1e-9 * root


@pytest.mark.parametrize(
    "equation", ["x^2 + a*x - b", "x*(x - a) - b", "a*x^2 + b*x - c", "1/x + 1/c - 1/a"]
)
def test_each_is_a_root(equation: str) -> None:
    for each in closed_forms(read(equation), "x"):
        assert "x" not in names_in(each)
        at = {**VALUES, "x": evaluate(each, VALUES)}
        assert float(np.asarray(evaluate(read(equation), at))) == pytest.approx(0.0, abs=1e-12)


@pytest.mark.parametrize(
    ("equation", "written"),
    [  # by hand
        ("x^2 - a*sin(theta)", "√(a sin θ)"),
        ("sqrt(x) - a", "a²"),
        ("x^2 + a*x - b", "√(a² + 4 b)/2 − a/2"),
        ("2*x*sin(theta)*a + x^2*cos(theta)*a - a*cos(theta)", "(1 − sin θ)/(cos θ)"),
    ],
)
def test_they_are_written_with_the_equation_s_own_quantities(equation: str, written: str) -> None:
    """What does not hold the unknown is carried as one letter and put back as it was."""
    first = closed_forms(read(equation), "x")[0]
    assert plain(first) == written


@pytest.mark.parametrize(
    "equation",
    [
        "sin(x) - a",  # the unknown within a sine
        "atan(x) - x*theta",
        "x^5 + a*x - b",  # no formula
        "a*x^3 + b*x^2 + c*x - a*b*c",  # a formula nobody would write down
        "a*hypot(x, b)/hypot(x - c, b) - 2",  # two roots, which take seconds to square away
        "a*x^2 + b*x - c*theta - x*sin(theta) - x*cos(theta)",  # as many letters as take long
    ],
)
def test_none_is_given_where_there_is_no_short_one(equation: str) -> None:
    assert closed_forms(read(equation), "x") == ()


def test_a_letter_for_a_part_is_seen_through_and_a_root_in_a_range_is_no_formula() -> None:
    x, a = SCOPE["x"], SCOPE["a"]
    inside = Root(total((1, Name("y", "y")), (-1, x)), "y", 0.0, 1.0)
    (found,) = closed_forms(total((1, Power(Lump(x), 2)), (-1, a)), "x")
    assert plain(found) == "√(a)"
    assert closed_forms(total((1, inside), (-1, a)), "x") == ()


def test_no_positive_root_gives_none_or_one_that_shows_it() -> None:
    """x^2 + a = 0 has no root for positive a."""
    assert all(
        math.isnan(float(np.asarray(evaluate(each, VALUES))))
        for each in closed_forms(read("x^2 + a"), "x")
    )
