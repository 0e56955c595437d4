"""The search for the cheapest way, on equations so small that the way is seen."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from probgen.quantities.expression import Name, number
from probgen.quantities.parser import parse
from probgen.statics.equation import Equation, Term
from probgen.statics.method import Method
from probgen.statics.refusal import Refusal
from probgen.statics.search import MOST_STATES, Field, Move, dependence, shortest, trial_values

NAMES = {id: Name(id, id) for id in ("a", "b", *(f"x{n}" for n in range(12)))}
KNOWN = {"a": np.array([2.0, 3.0]), "b": np.array([5.0, 4.0])}


def condition(text: str, kind: str = "condition", bodies: tuple[str, ...] = ()) -> Equation:
    """text = 0, as an equation of a kind."""
    terms = (Term("", 1, parse(text, NAMES)), Term("", -1, number(0)))
    return Equation(kind, bodies, text, terms, Method())


def field(*equations: Equation, unknowns: int = 2, removed: tuple[int, ...] = ()) -> Field:
    names = tuple(f"x{n}" for n in range(unknowns))
    holds = dependence(equations, names, KNOWN)
    ranges = dict.fromkeys(names, (-math.inf, math.inf))
    removed = removed or (0,) * len(equations)
    return Field(equations, names, holds, removed, trial_values(names, KNOWN), ranges)


HELD = [
    ("a*x0 - b", 0b01),
    ("a*x1 - b", 0b10),
    ("x0 + x1 - a", 0b11),
    ("x0 - x0 + x1", 0b10),  # cancels for all values
    ("a - b", 0),
    ("x0*(x1 - x1) + x1", 0b10),
]


@pytest.mark.parametrize(("text", "held"), HELD)
def test_what_an_equation_depends_on_is_tried_out(text: str, held: int) -> None:
    assert dependence([condition(text)], ("x0", "x1"), KNOWN) == (held,)


def test_trial_values_keep_what_is_known_and_invent_the_rest() -> None:
    trial = trial_values(("x0", "x1"), KNOWN)
    assert trial["a"] is KNOWN["a"]
    assert trial["x0"] != trial["x1"]


def test_one_unknown_after_the_other() -> None:
    chain = field(condition("x0 + x1 - a"), condition("a*x0 - b"))
    assert shortest(chain, 0b10) == [Move((1,), (0,)), Move((0,), (1,))]
    assert shortest(chain, 0b01) == [Move((1,), (0,))]
    assert shortest(chain, 0) == []


def test_two_at_once_only_where_nothing_else_leads_on() -> None:
    both = field(condition("x0 + x1 - a"), condition("x0 - x1 - b"))
    assert shortest(both, 0b01) == [Move((0, 1), (0, 1))]
    with_third = field(condition("x0 + x1 - a"), condition("x0 - x1 - b"), condition("a*x1 - b"))
    found = shortest(with_third, 0b01)
    assert found is not None
    assert found[0] == Move((2,), (1,))
    assert found[1].unknowns == (0,)
    assert len(found[1].equations) == 1


def test_no_way() -> None:
    assert shortest(field(condition("x0 + x1 - a")), 0b01) is None
    assert shortest(field(condition("x0 + x1 - a"), condition("a*x0 + a*x1 - b")), 0b01) is None


def test_the_same_equation_twice_settles_nothing() -> None:
    twice = field(condition("x0 + x1 - a"), condition("a*x0 + a*x1 - a^2"))
    assert not twice.independent((0, 1), 0b11)
    once = field(condition("x0 + x1 - a"), condition("a*x0 + b*x1 - a^2"))
    assert once.independent((0, 1), 0b11)


def test_an_axis_that_turns_with_an_angle_does_not_find_it_once_the_forces_are_found() -> None:
    """(x0 - a) cos x1 = (x0 - a) b/a sin x1 is 0 = 0 once x0 is found to be a."""
    found, lost = (
        Equation(
            "force", ("block",), "", tuple(Term("", s, parse(each, NAMES)) for s, each in parts),
            Method(),
        )
        for parts in (
            [(1, "x0*cos(x1)"), (-1, "b*sin(x1)")],
            [(1, "x0*cos(x1)"), (-1, "a*cos(x1)"), (1, "b*sin(x1)"), (-1, "b*sin(x1)*x0/a")],
        )
    )  # fmt: skip
    guessed = field(found, lost)
    assert guessed.can_solve(0, 1)
    assert guessed.can_solve(1, 1)
    at_rest = replace(guessed, balanced={**KNOWN, "x0": KNOWN["a"], "x1": np.array([21.8, 36.9])})
    assert at_rest.can_solve(0, 1)
    assert not at_rest.can_solve(1, 1)


def test_what_cannot_be_solved_for_is_no_step() -> None:
    odd = field(condition("x0 - sin(x0*1 deg) - cos(a*x0*1 deg) + a"), condition("a*x1 - b"))
    odd = Field(odd.equations, odd.unknowns, odd.holds, odd.removed, odd.trial, odd.ranges)
    assert not odd.can_solve(0, 0)
    assert odd.can_solve(1, 1)


TORQUE, FORCE = (
    Equation(kind, ("beam",), about, (Term("", 1, parse("a*x0 - b", NAMES)),), Method())
    for kind, about in (("torque", "A"), ("force", "z"))
)


def test_at_equal_length_a_condition_is_cheaper_than_a_force_balance_than_torques() -> None:
    told = condition("a*x0 - b")
    assert shortest(field(TORQUE, FORCE, told), 1) == [Move((2,), (0,))]


def test_a_pivot_that_keeps_more_out_is_preferred() -> None:
    other = Equation("torque", ("beam",), "B", TORQUE.terms, Method())
    assert shortest(field(TORQUE, other, removed=(0, 2)), 1) == [Move((1,), (0,))]
    assert shortest(field(TORQUE, other, removed=(2, 0)), 1) == [Move((0,), (0,))]


def test_one_body_is_preferred_to_two() -> None:
    both = Equation("torque", ("beam", "post"), "A", TORQUE.terms, Method())
    assert shortest(field(both, TORQUE), 1) == [Move((1,), (0,))]


def test_too_many_ways_are_refused_and_not_waited_for() -> None:
    """Ten unknowns each found by itself, and one that no equation gives: 2^10 sets."""
    assert 2**8 < MOST_STATES < 2**10
    many = [condition(f"a*x{n} - b") for n in range(10)]
    with pytest.raises(Refusal, match="too many orders of steps"):
        shortest(field(*many, unknowns=11), 1 << 10)
    assert shortest(field(*many[:8], unknowns=11), 1 << 10) is None
