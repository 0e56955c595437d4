"""The bodies whose forces a working needs, and the steps it tells."""

from __future__ import annotations

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, prepare
from probgen.statics.system import Form
from probgen.working.bodies_used import (
    as_told,
    bodies_used,
    ids_of,
    is_piece,
    steps_compared,
    told_late,
)
from probgen.working.convention import Convention
from tests.wording.told_keys import ROOT


def problem(name: str) -> Problem:
    return prepare(default_bank().read(name), Convention())


USED = [
    ("crowbar-stone", ["stone", "bar"]),
    ("gate-two-hinges", ["gate"]),
]


@pytest.mark.parametrize(("name", "bodies"), USED)
def test_bodies_of_balances_are_used(name: str, bodies: list[str]) -> None:
    assert [body.id for body in bodies_used(problem(name).plan)] == bodies


TOGETHER = [
    ("stepladder-tie", ["left+right", "right", "left"]),
    ("climbing-triangle", ["left+right", "right"]),
    ("folding-table-strap", ["top", "top+left+right", "right"]),
    ("shed-three-hinges", ["left+right", "left"]),
    ("painter-board-seat", ["worker+board", "worker"]),
    ("bench-leg-wedge", ["leg", "leg+wedge", "wedge"]),
]


@pytest.mark.parametrize(("name", "bodies"), TOGETHER)
def test_each_set_of_bodies_that_a_balance_is_of_is_used_as_it_comes(
    name: str, bodies: list[str]
) -> None:
    """A body that stands only in balances of several is none of its own."""
    plan = problem(name).plan
    used = bodies_used(plan)
    assert [body.id for body in used] == bodies
    assert told_late(plan) == list(used)
    assert ids_of(used) == {body.id for body in plan.system.bodies}
    told = as_told(plan)
    assert [body.id for body in told.system.bodies][: len(bodies)] == bodies
    assert bodies_used(told) == used
    assert as_told(told) is told


def test_where_nothing_is_taken_as_one_or_cut_all_bodies_are_told_first() -> None:
    plan = problem("crowbar-stone").plan
    assert as_told(plan) is plan
    assert told_late(plan) == []
    bridge = problem("footbridge-truss-crowd").plan
    assert told_late(bridge) == list(bodies_used(bridge))


def test_a_resultant_asked_needs_no_body_alone_where_the_whole_shows_it() -> None:
    """Both parts of the left hinge's force follow from the two bars taken as one."""
    file = ROOT / "tests" / "published" / "further" / "dh-048.toml"
    text = file.read_text(encoding="utf-8").replace('"components"', '"magnitude and direction"')
    asked = prepare(read_template(text, "own"), Convention()).plan
    assert {find.form for find in asked.system.finds} == {Form.MAGNITUDE_AND_DIRECTION}
    assert [body.id for body in bodies_used(asked)] == ["left+right", "right"]


def test_a_reaction_asked_of_a_truss_needs_no_joint_alone() -> None:
    """It acts on the whole truss; the joint it acts at too stands in no balance of sections."""
    file = ROOT / "templates" / "structures" / "footbridge-truss-crowd.toml"
    asked = '[[find]]\nquantity = "R"\nas = "magnitude and direction"\n[depicts]'
    text = file.read_text(encoding="utf-8").replace("[depicts]", asked)
    plain, own = (
        prepare(read_template(each, "own"), Convention()).plan
        for each in (file.read_text(encoding="utf-8"), text)
    )
    assert [b.id for b in bodies_used(own)] == [b.id for b in bodies_used(plain)]


def test_joints_and_parts_of_a_truss_are_pieces() -> None:
    plan = problem("footbridge-truss-crowd").plan
    pieces = [body for body in bodies_used(plan) if is_piece(plan.system, body)]
    whole = [body for body in bodies_used(plan) if body not in pieces]
    assert pieces
    assert [body.id for body in whole] == ["truss"]


def test_the_steps_to_all_limits_are_told_each_once() -> None:
    plan = problem("cabinet-slide-or-tip").plan
    told = plan.steps_told
    assert len(told) == len(set(told))
    assert {step for way in plan.ways for step in way.steps} == set(told)


def test_the_steps_compared_are_those_told_whichever_limit_is_reached_first() -> None:
    plan = problem("cabinet-slide-or-tip").plan
    assert [step.unknown for step in steps_compared(plan)] == ["N", "f", "P", "x", "P"]
    for name in ("trestle-plank-walk", "crowbar-stone"):
        single = problem(name).plan
        assert steps_compared(single) == [*single.steps_told]
