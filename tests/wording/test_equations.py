"""One step of a working as lines: the balance, what it is solved for, numbers, the result.

By hand: T = 117.6 N m/(0.6171 m) = 190.6 N; R_x = T cos 40° = 146 N; R_y = 117.6 N - 122.5 N.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

import pytest

from probgen.quantities.expression import Call, Name, Number, Quotient, Sum, number
from probgen.quantities.printing import plain
from probgen.quantities.unit import NEWTON, UNITS
from probgen.wording.block import Display
from probgen.wording.equations import _one_sine, lone_number, rounded_off, working
from probgen.working.convention import Convention
from tests.situations import FIND_R, FIND_T, HEAD, HINGED, SHELF, STAYED, STAYED_SHELF, worked
from tests.wording.own_telling import told, told_of
from tests.wording.shown import shown

USUAL = Convention()


def rows(text: str, convention: Convention = USUAL) -> list[list[str]]:
    """The lines of each step."""
    _, own = worked(text, convention)
    steps = own.case.plan.steps
    displays = (part for step in steps for part in [*working(own.digits, step)])
    return [[shown(row) for row in part.rows] for part in displays if isinstance(part, Display)]


def test_from_the_balance_to_the_rounded_result() -> None:
    assert rows(STAYED_SHELF) == [
        [
            "Στ_A = T d sin(180° − θ) − W_s (L/2) sin 90° − W_t L sin 90°",
            "= T d sin θ − W_s (L/2) − W_t L = 0",
            "T = (W_s (L/2) + W_t L)/(d sin θ)",
            "= ((39.2 N)(0.600 m) + (78.4 N)(1.20 m))/((0.96 m) sin 40°)",
            "= 117.6 N·m/(0.6171 m)",
            "= 190.6 N ≈ 191 N",
        ],
        ["ΣF_x = R_x − T cos θ = 0", "R_x = T cos θ", "= (190.6 N) cos 40°", "= 146 N"],
        [
            "ΣF_y = R_y + T sin θ − W_s − W_t = 0",
            "R_y = W_s + W_t − T sin θ",
            "= 39.2 N + 78.4 N − (190.58 N) sin 40°",
            "= −4.90 N",
        ],
    ]


def test_the_course_s_word_for_turning() -> None:
    assert rows(STAYED_SHELF, Convention(turning="moment"))[0][0].startswith("ΣM_A = ")


def test_nothing_is_worked_out_where_the_result_is_zero() -> None:
    vertical = SHELF + HINGED + STAYED.replace('"180 - theta"', "90") + FIND_T + FIND_R
    assert rows(vertical)[1] == ["ΣF_x = R_x = 0", "R_x = 0 N"]


def test_a_condition_that_says_what_the_unknown_is_stands_once() -> None:
    """The load of unknown mass, with T = 150 N stated."""
    text = STAYED_SHELF.replace('M = { name = "load mass", choices = [8.0], unit = "kg" }\n', "")
    text = text.replace("[points]", '[unknown]\nM = { name = "load mass", unit = "kg" }\n[points]')
    told = '[[condition]]\nthat = "T = 150 N"\nbecause = "a scale shows it"\n'
    assert rows(text + told)[0] == ["T = 150 N"]


def test_a_quotient_is_worked_out_on_both_sides_or_not_at_all() -> None:
    """kg m has no unit of its own, lbf in has; a minus sign before a quotient stays."""
    spread = [
        line for line in told_of("bookcase-centre-tilt") if "kg)(" in line and "m/s²" not in line
    ]
    assert len(spread) == 1
    assert any(line.startswith("= −319.97 N·m/") for line in told_of("gate-two-hinges"))


@pytest.mark.parametrize(
    ("printed", "lone"),
    [
        (number("39.2", NEWTON), True),
        (Sum(((-1, number("39.2", NEWTON)),)), True),
        (Sum(((1, number("39.2", NEWTON)), (1, number("2", NEWTON)))), False),
        (Call("abs", (number("39.2", NEWTON),)), True),
        (Call("abs", (Quotient(number("1"), number("3")),)), False),
        (Call("sin", (number("40"),)), False),
        (Quotient(number("1"), number("3")), False),
        (Sum(((-1, Name("T", "T")),)), False),
    ],
)
def test_a_line_that_only_repeats_the_result_is_known(
    printed: Sum | Call | Quotient | Number, lone: bool
) -> None:
    assert lone_number(printed) is lone


P, R, SHIFT, X = (Name(letter, letter) for letter in ("P", "R", "q", "x"))
ANGLE = Call("atan", (SHIFT,))


@pytest.mark.parametrize(
    ("solution", "written"),
    [  # by hand: x - arctan q is the angle whose sine is P/R
        (Sum(((1, Call("asin", (Quotient(P, R),))), (1, ANGLE))), ["R sin(x − arctan q) = P"]),
        (Sum(((1, Call("asin", (Quotient(P, R),))), (-1, ANGLE))), ["R sin(x + arctan q) = P"]),
        (
            Sum(((1, Call("asin", (Sum(((-1, Quotient(P, R)),)),))), (1, ANGLE))),
            ["R sin(x − arctan q) = −P"],
        ),
        (Sum(((1, Call("asin", (P,))), (1, ANGLE))), []),
        (Sum(((1, Call("asin", (Quotient(P, R),))), (1, SHIFT))), []),
        (Sum(((1, Call("acos", (Quotient(P, R),))), (1, ANGLE))), []),
        (Call("asin", (Quotient(P, R),)), []),
    ],
)
def test_a_sine_and_a_cosine_are_made_one_sine(solution: Sum | Call, written: list[str]) -> None:
    assert [shown(row) for row in _one_sine(X, solution)] == written


LEVEL = (
    HEAD
    + """
[given]
P = { name = "pull", choices = [84], unit = "N" }
W = { name = "weight", choices = [42], unit = "N" }
[unknown]
phi = { name = "angle", unit = "deg", from = -30, to = 60 }
[body.knot]
particle = true
[[weight]]
force = "W"
[[cable]]
direction = 150
magnitude = "P"
[[cable]]
direction = "phi"
symbol = "T"
[[find]]
quantity = "phi"
"""
)


def test_a_difference_of_equals_is_nothing_and_no_dust_of_floats() -> None:
    """84 N sin 30 deg is 42 N, and 7e-15 N more as computed."""
    lines = told(LEVEL)
    assert any(line.startswith("= arctan(0 N/(72.7") for line in lines)
    assert not any("10⁻" in line for line in lines)


@pytest.mark.parametrize("torque", ["angle", "arm"])
def test_by_what_a_balance_is_divided_to_leave_a_tangent(torque: Literal["angle", "arm"]) -> None:
    lines = told_of("ladder-least-angle", Convention(torque=torque))
    at = lines.index(
        "We divide by ℓ cos θ, where sin θ/(cos θ) = tan θ, and solve for the tangent:"
    )
    assert lines[at - 1].endswith(" = 0")
    assert lines[at + 1] == "tan θ = (W_L − 2 f_w)/(2 N_w)"


def test_what_holds_a_tangent_already_is_divided_by_no_cosine() -> None:
    assert not [line for line in told_of("plank-raised-slowly") if "We divide by" in line]


def test_nothing_is_written_once_in_the_answer_s_own_unit() -> None:
    """Of other answers in kN; 0 N = 0 kN would say it twice."""
    nothing, in_kn = Number(Decimal(0), UNITS["N"]), Number(Decimal(0), UNITS["kN"])
    assert rounded_off(nothing, in_kn) == (in_kn,)
    assert plain(rounded_off(Number(Decimal(246), UNITS["N"]), in_kn)) == "246 N ≈ 0 kN"
