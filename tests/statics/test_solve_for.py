"""Equations solved for one quantity, beside roots found by scipy or worked out by hand.

Letters a, b, c, d are 2, 3, 5 and 0.4 unless a row says otherwise; angles are in degrees.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
import pytest
from scipy.optimize import brentq

from probgen.quantities.expression import (
    Expression,
    Name,
    Quotient,
    Root,
    Value,
    evaluate,
    names_in,
)
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain
from probgen.statics.solve_for import all_roots, solved_for, tidied

LETTERS = ("a", "b", "c", "d", "x", "y", "z")
SCOPE = {letter: Name(letter, letter) for letter in LETTERS}
VALUES = {"a": 2.0, "b": 3.0, "c": 5.0, "d": 0.4}


def read(text: str) -> Expression:
    return parse(text, SCOPE)


def number(expression: Expression, values: Mapping[str, Value]) -> float:
    return float(np.asarray(evaluate(expression, values)))


def degrees(function: str, angle: float) -> float:
    return float(getattr(math, function)(math.radians(angle)))


LINEAR = [
    ("a*x - b", "b/a"),
    ("a*x + b", "−b/a"),
    ("b - a*x", "b/a"),
    ("a*x*c - b*c", "b/a"),
    ("x/4 - b", "4 b"),
    ("a*(x - b) + c", "(a b − c)/a"),
    ("a*x + b*x - c", "c/(a + b)"),
    ("x - a", "a"),
    ("-x - a", "−a"),
    ("(a + b)*x + c - d", "(d − c)/(a + b)"),  # what is added stands before what is taken away
    ("(a - b)*x - c + d", "(c − d)/(a − b)"),
    ("(b - a)*x - c + d", "(c − d)/(b − a)"),
    ("(-a + b)*x - c", "c/(b − a)"),
    ("(-a + b)*x - c + d", "(c − d)/(b − a)"),
    ("(-a*d + b)*x - c*d + b", "(c d − b)/(b − a d)"),
    ("(-a - b)*x + c - d", "(c − d)/(a + b)"),
    ("(a + b)*x + c", "−c/(a + b)"),
    ("(a - b)*x + c", "c/(b − a)"),  # no minus before a difference
    ("(b - a)*x + c", "c/(a − b)"),
    ("(a + b)*x + c + d", "−(c + d)/(a + b)"),
    ("(a - b)*x + c + d", "−(c + d)/(a − b)"),
    ("a*x - c + d", "(c − d)/a"),
    ("x*a/b + c", "−c b/a"),
    ("2*x - 3", "3/2"),
    ("x*(a/b) - d*(a/b)", "d"),  # what both hold is left out, a fraction too
    ("a - c - d - x*(b/(a + b))", "(a − c − d)(a + b)/b"),  # no -(-a + c + d)
]


@pytest.mark.parametrize(("equation", "written"), LINEAR)
def test_a_linear_equation_is_solved_as_by_hand(equation: str, written: str) -> None:
    """Written forms: by hand."""
    solved = solved_for(read(equation), "x")
    assert solved is not None
    assert plain(solved) == written
    assert number(read(equation), {**VALUES, "x": number(solved, VALUES)}) == pytest.approx(0.0)


@dataclass(frozen=True)
class Rooted:
    """An equation for x, the same as a function of floats, and where its root lies."""

    equation: str
    height: str
    low: float
    high: float
    values: Mapping[str, float] = field(default_factory=dict)

    def __str__(self) -> str:
        return self.equation

    def root(self) -> float:
        known = {**VALUES, **self.values}
        terms = {f: lambda angle, f=f: degrees(f, angle) for f in ("sin", "cos", "tan")}
        return float(
            brentq(
                lambda x: eval(self.height, {**terms, **known, **_OTHERS, "x": x}),
                self.low, self.high, xtol=1e-13, rtol=1e-14,
            )
        )  # fmt: skip


_OTHERS = {"sqrt": math.sqrt, "exp": math.exp, "radians": math.radians}

CLOSED = [
    Rooted("a - c*sin(x)", "a - c*sin(x)", 0, 90),
    Rooted("c*cos(x) - b", "c*cos(x) - b", 0, 90),
    Rooted("a*tan(x) - b", "a*tan(x) - b", 0, 89),
    Rooted("a*sin(x) - b*cos(x)", "a*sin(x) - b*cos(x)", 0, 90),
    Rooted("a*cos(x) - b*sin(x)", "a*cos(x) - b*sin(x)", 0, 90),
    Rooted("a*sin(x) + b*cos(x) - a*b/2", "a*sin(x) + b*cos(x) - a*b/2", 30, 90),
    Rooted("a*b/2 - a*sin(x) - b*cos(x)", "a*b/2 - a*sin(x) - b*cos(x)", 30, 90),
    Rooted("a*sin(x) - b*cos(x) + 1", "a*sin(x) - b*cos(x) + 1", 0, 90),
    Rooted("b*cos(x) - a*sin(x) + 1", "b*cos(x) - a*sin(x) + 1", 0, 90),
    Rooted("(a + 1)*sin(x) + b*cos(x) - 7/2", "(a + 1)*sin(x) + b*cos(x) - 7/2", 0, 40),
    Rooted("(a - c)*sin(x) - b*cos(x) + 7/2", "(a - c)*sin(x) - b*cos(x) + 7/2", 40, 90),
    Rooted("a*x^2 - b", "a*x*x - b", 0, 10),
    Rooted("c - x^2/a", "c - x*x/a", 0, 10),
    Rooted("x^2 + a*x - b", "x*x + a*x - b", 0, 10),
    Rooted("c - a*exp(d*x)", "c - a*exp(d*x)", 0, 10),
    Rooted("c - a*exp(b*d*x + d)", "c - a*exp(b*d*x + d)", 0, 10),
    Rooted("c - a*exp(d*rad(x))", "c - a*exp(d*radians(x))", 0, 720),
]
EITHER = [  # a short closed form need not be found
    Rooted("a*x - b*sqrt(x^2 + c^2)/c", "a*x - b*sqrt(x*x + c*c)/c", 0, 10),
    Rooted("d*x/sqrt(x^2 + a^2) - d^2", "d*x/sqrt(x*x + a*a) - d*d", 0, 10),
    Rooted("a*hypot(x, b) - c*x", "a*sqrt(x*x + b*b) - c*x", 0, 10),
    Rooted("x*(x - a) - b", "x*(x - a) - b", 0, 10),
    Rooted("a*x^2 + b*x - c", "a*x*x + b*x - c", 0, 10),
    Rooted("c/x - a*x", "c/x - a*x", 0.1, 10),
]
NUMERICAL = [
    Rooted("x/a - sin(90 deg*x/c)", "x/a - sin(90*x/c)", 1, 4.5, {"a": 4.0}),
    Rooted("a*sin(x) + b*cos(2*x) - c*d", "a*sin(x) + b*cos(2*x) - c*d", 0, 60),
    Rooted("tan(x) - x/50 deg", "tan(x) - x/50", 10, 80),
]


@pytest.mark.parametrize("case", CLOSED, ids=str)
def test_a_closed_form_is_the_root_scipy_finds(case: Rooted) -> None:
    values = {**VALUES, **case.values}
    roots = all_roots(read(case.equation), "x", (case.low, case.high))
    assert roots
    assert not any(isinstance(each, Root) for each in roots)
    found = [number(each, values) for each in roots]
    assert min(abs(value - case.root()) for value in found) < 1e-9 * max(abs(case.root()), 1.0)


@pytest.mark.parametrize("case", CLOSED, ids=str)
def test_every_root_offered_is_one(case: Rooted) -> None:
    roots = all_roots(read(case.equation), "x", (case.low, case.high))
    assert roots
    for each in roots:
        at = {**VALUES, "x": number(each, VALUES)}
        assert number(read(case.equation), at) == pytest.approx(0.0, abs=1e-12)


@pytest.mark.parametrize("case", CLOSED, ids=str)
def test_the_principal_value_is_the_first_of_all(case: Rooted) -> None:
    equation, within = read(case.equation), (case.low, case.high)
    assert solved_for(equation, "x", within) == all_roots(equation, "x", within)[0]


@pytest.mark.parametrize("case", NUMERICAL, ids=str)
def test_without_closed_form_the_root_is_found_in_its_range(case: Rooted) -> None:
    solved = solved_for(read(case.equation), "x", (case.low, case.high))
    assert isinstance(solved, Root)
    assert names_in(solved) == names_in(read(case.equation)) - {"x"}
    assert number(solved, {**VALUES, **case.values}) == pytest.approx(case.root(), rel=1e-9)


@pytest.mark.parametrize("case", EITHER, ids=str)
def test_one_of_all_roots_lies_in_the_range(case: Rooted) -> None:
    """Closed or not: by its range it is known which of several is meant."""
    within = (case.low, case.high)
    found = [number(each, VALUES) for each in all_roots(read(case.equation), "x", within)]
    inside = [value for value in found if case.low <= value <= case.high]
    assert inside == pytest.approx([case.root()], rel=1e-9)


@pytest.mark.parametrize("case", NUMERICAL, ids=str)
def test_without_range_there_is_no_way(case: Rooted) -> None:
    assert solved_for(read(case.equation), "x") is None


def test_many_draws_have_each_their_root() -> None:
    solved = solved_for(read("x/a - sin(90 deg*x/c)"), "x", (1.0, 4.5))
    assert solved is not None
    many = {"a": np.array([4.0, 4.1, 3.9]), "c": np.array([5.0, 5.0, 5.3])}
    together = np.asarray(evaluate(solved, many))
    alone = [number(solved, {"a": a, "c": c}) for a, c in zip(*many.values(), strict=True)]
    assert together == pytest.approx(alone, rel=1e-12)
    assert len(set(alone)) == 3


def test_no_root_in_the_range_has_no_value() -> None:
    solved = solved_for(read("x/a - sin(90 deg*x/c) - 100"), "x", (1.0, 3.0))
    assert solved is not None
    assert math.isnan(number(solved, VALUES))


@pytest.mark.parametrize(
    ("equation", "principal", "others"),
    [  # by hand: 30° and 150°, 60° and -60°, 45° and 225° or -135°; and a turn farther
        ("a*sin(x) - 1", 30.0, [150.0, 390.0]),
        ("a*sin(x) + 1", -30.0, [210.0, 330.0]),
        ("a*cos(x) - 1", 60.0, [-60.0, 300.0]),
        ("tan(x) - 1", 45.0, [225.0, -135.0, 405.0]),
        ("tan(x) + 1", -45.0, [135.0, -225.0, 315.0]),
        # sin x + cos x = 1 at 0° and 90°
        ("sin(x) + cos(x) - 1", 0.0, [90.0, 360.0]),
        # cos(x - 20°) = 1/2, and cos(x + 20°) = -1/2
        ("a*cos(x)*cos(20 deg) + a*sin(x)*sin(20 deg) - 1", 80.0, [-40.0, 440.0, 320.0]),
        ("a*sin(x)*sin(20 deg) - a*cos(x)*cos(20 deg) - 1", 100.0, [-140.0, 460.0, 220.0]),
        # sin(x + 20°) = 1/2, and sin(x - 20°) = 1/2
        ("a*sin(x)*cos(20 deg) + a*cos(x)*sin(20 deg) - 1", 10.0, [130.0, 370.0]),
        ("a*sin(x)*cos(20 deg) - a*cos(x)*sin(20 deg) - 1", 50.0, [170.0, 410.0]),
    ],
)
def test_the_other_roots_of_a_turn(equation: str, principal: float, others: list[float]) -> None:
    found = [number(each, VALUES) for each in all_roots(read(equation), "x")]
    assert found == pytest.approx([principal, *others], abs=1e-12)


@pytest.mark.parametrize(
    ("equation", "written"),
    [
        ("a*sin(x)*cos(y) + a*cos(x)*sin(y) - b", "arcsin(b/a) − y"),
        ("a*cos(x - y) - b", "arccos(b/a) + y"),
    ],
)
def test_a_root_of_squares_that_cancels_is_not_written(equation: str, written: str) -> None:
    """Not as sin(x + d) with sqrt((a cos y)^2 + (a sin y)^2)."""
    solved = solved_for(read(equation), "x")
    assert solved is not None
    assert plain(solved) == written


@pytest.mark.parametrize("equation", ["a - b", "0*x - b", "x - x + b", "sin(y) - a"])
def test_what_the_quantity_does_not_enter_is_not_solved_for_it(equation: str) -> None:
    assert solved_for(read(equation), "x") is None


@pytest.mark.parametrize(
    ("equation", "written"),
    [  # by hand
        ("c*a*x - c*b", "b/a"),
        ("a*b*x - a*b*c", "c"),
        ("2*a*x - 2*b", "b/a"),
        ("a*(x/c) + a*((x - b)/c) - d", "(a b + d c)/(2 a)"),  # nor a length that divides twice
        ("x*(b/c) + x*((a - b)/c) - d", "d c/a"),
        ("a*(x/b) + c*(x/d) - b", "b/(a/b + c/d)"),  # a/b, and not a (1/b)
    ],
)
def test_common_factors_are_not_printed(equation: str, written: str) -> None:
    solved = solved_for(read(equation), "x")
    assert solved is not None
    assert plain(solved) == written


def test_a_quotient_has_no_sum_of_negatives_above_and_below() -> None:
    """(-b - c)/(-a) is written (b + c)/a."""
    solved = solved_for(read("-a*x + b + c"), "x")
    assert isinstance(solved, Quotient)
    assert plain(solved) == "(b + c)/a"


@pytest.mark.parametrize(
    ("solution", "written"),
    [  # by hand
        ("a/(b/c)", "a c/b"),
        ("(a*b - b*a + c)/d", "c/d"),
        ("c/(a*b - b*a + d)", "c/d"),
        ("-(a*c/(b*c))", "−a/b"),
        ("(a - a)/b", None),  # 0/b stays, for b may be 0 as well
        ("b/(a - a)", None),
    ],
)
def test_like_terms_meet_in_any_order_and_fractions_are_one(
    solution: str, written: str | None
) -> None:
    value = read(solution)
    assert plain(tidied(value)) == (plain(value) if written is None else written)
