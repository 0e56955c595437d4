"""Balances in symbols: signs, sines, lever arms; each checked against the vectors themselves."""

from dataclasses import replace

import numpy as np
import pytest

from probgen.bank.bank import default_bank
from probgen.quantities.expression import Name, evaluate
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain
from probgen.statics.cross_check import with_definitions
from probgen.statics.equation import (
    X,
    Y,
    force_balance,
    oriented,
    read_positively,
    torque_balance,
)
from probgen.statics.method import Method
from probgen.statics.numeric_equations import assemble
from probgen.statics.system import System

FORMS = [
    (Method("angle"), "T d sin θ − W_s (L/2) − W_t L"),
    (Method("arm"), "T (d sin θ) − W_s (L/2) − W_t L"),
    (Method("components"), "d T sin θ − (L/2) W_s − L W_t"),
    (Method("angle", "clockwise"), "−T d sin θ + W_s (L/2) + W_t L"),
]


@pytest.mark.parametrize(("method", "expected"), FORMS)
def test_torques_about_the_hinge(stayed: System, method: Method, expected: str) -> None:
    equation = torque_balance(stayed, ("shelf",), "A", method)
    assert plain(equation.expression) == expected
    assert equation.silent == ("R.x", "R.y")


def test_forces_along_the_axes(stayed: System) -> None:
    x = force_balance(stayed, ("shelf",), X, Method())
    y = force_balance(stayed, ("shelf",), Y, Method())
    assert plain(x.expression) == "R_x − T cos θ"
    assert set(x.silent) == {"R.y", "W_s", "W_t"}
    assert {(t.source, t.sign) for t in y.terms} == {
        ("R.y", 1), ("T", 1), ("W_s", -1), ("W_t", -1),
    }  # fmt: skip


def test_a_group_goes_by_the_first_of_its_bodies(stayed: System) -> None:
    balance = torque_balance(stayed, ("shelf",), "A", Method())
    assert replace(balance, bodies=("shelf", "post")).body == "shelf"
    assert replace(balance, bodies=()).body == ""


@pytest.mark.parametrize("pivot", ["A", "C", "G", "B"])
@pytest.mark.parametrize("form", ["angle", "arm", "components"])
def test_torques_agree_with_the_vectors(
    stayed: System, beam_values: dict[str, np.ndarray], pivot: str, form: str
) -> None:
    """x F_y - y F_x from coordinates, for values that are no solution."""
    rng = np.random.default_rng(7)
    values = with_definitions(
        stayed, {**beam_values, **{u: rng.uniform(-50, 50, 3) for u in ("T", "R.x", "R.y")}}
    )
    where = {"A": 0.0, "C": values["d"], "G": values["L"] / 2, "B": values["L"]}[pivot]
    assembled = assemble(stayed, values, (where, 0.0))
    turn = assembled.residual[:, assembled.labels.index(("shelf", "turn"))]
    equation = torque_balance(stayed, ("shelf",), pivot, Method(form))  # type: ignore[arg-type]
    assert evaluate(equation.expression, values) == pytest.approx(turn, rel=1e-12)
    assert evaluate(oriented(equation, values).expression, values) == pytest.approx(turn)


def test_legs_with_one_sine_are_counted_together() -> None:
    """Over a ladder and down the other one: 2 L cos t, and L and half an L more."""
    system = default_bank().read("climbing-triangle").system
    ladders = tuple(body.id for body in system.bodies)
    written = plain(torque_balance(system, ladders, "A", Method()).expression)
    assert "N_B (2 L) cos θ" in written
    assert "W_2 (3 L/2) cos θ" in written


def test_arms_are_written_the_way_round_that_makes_them_positive(
    stayed: System, beam_values: dict[str, np.ndarray]
) -> None:
    equation = torque_balance(stayed, ("shelf",), "C", Method())
    lengths = [plain(t.length) for t in oriented(equation, beam_values).terms if t.length]
    assert "d − L/2" in lengths
    assert "L/2 − d" not in lengths


LETTERS = {letter: Name(letter, letter) for letter in "abcx"}
KNOWN = {"a": 2.0, "b": 3.0, "c": 5.0}

POSITIVE = [  # by hand: b - c and a - c are negative, x is not known
    ("-a/(b - c)", "a/(c − b)"),
    ("a/(b - c)", "−a/(c − b)"),
    ("a*b/(b - c)", "−a b/(c − b)"),
    ("(a - c)/(b - c)", "(c − a)/(c − b)"),
    ("-a*(b - c)", "a (c − b)"),
    ("-a*(b - c)/c", "a (c − b)/c"),
    ("-a*(b - c)/(a - c)", "a (b − c)/(c − a)"),
    ("-x*(b - c)", "x (c − b)"),
    ("a*(b - c)", "a (b − c)"),  # no minus in front
    ("-a*(c - b)", "−a (c − b)"),
    ("-a/(c - b)", "−a/(c − b)"),
    ("-a*(x - c)", "−a (x − c)"),
    ("a/(x - c)", "a/(x − c)"),
    ("-a*(b - c)*(a - c)", "−a (b − c)(a − c)"),  # which of them?
]


@pytest.mark.parametrize(("value", "written"), POSITIVE)
def test_a_value_is_written_without_needless_minus_signs(value: str, written: str) -> None:
    found = read_positively(parse(value, LETTERS), KNOWN)
    assert plain(found) == written
    at = {**KNOWN, "x": 7.0}
    assert evaluate(found, at) == pytest.approx(float(evaluate(parse(value, LETTERS), at)))
