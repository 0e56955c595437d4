"""The bodies whose forces a working needs, and the steps it tells."""

from __future__ import annotations

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.problem import Problem, prepare
from probgen.working.bodies_used import bodies_used, is_piece, steps_told
from probgen.working.convention import Convention


def problem(name: str) -> Problem:
    return prepare(default_bank().read(name), Convention())


USED = [
    ("crowbar-stone", ["stone", "bar"]),
    ("gate-two-hinges", ["gate"]),
]


@pytest.mark.parametrize(("name", "bodies"), USED)
def test_bodies_of_balances_are_used(name: str, bodies: list[str]) -> None:
    assert [body.id for body in bodies_used(problem(name).plan)] == bodies


def test_joints_and_parts_of_a_truss_are_pieces() -> None:
    plan = problem("footbridge-truss-crowd").plan
    pieces = [body for body in bodies_used(plan) if is_piece(plan.system, body)]
    whole = [body for body in bodies_used(plan) if body not in pieces]
    assert pieces
    assert [body.id for body in whole] == ["truss"]


def test_the_steps_to_all_limits_are_told_each_once() -> None:
    plan = problem("cabinet-slide-or-tip").plan
    told = steps_told(plan)
    assert len(told) == len(set(told))
    assert {step for way in plan.ways for step in way.steps} == set(told)
