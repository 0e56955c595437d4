"""A course's rules of order and pivot: they choose among ways as short as others."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from probgen.bank.reading import read_template
from probgen.problem.problem import draw_class, prepare, work
from probgen.statics.plan import Plan
from probgen.statics.step import Step
from probgen.working.convention import Convention
from tests.held_by_ropes import OVER_A_PULLEY, STANDING
from tests.working.test_scheme import OWN

RULES = {
    "forces first": Convention(order="forces first"),
    "torques throughout": Convention(order="torques throughout"),
    "support": Convention(pivot="support"),
    "torques about supports": Convention(order="torques throughout", pivot="support"),
}


@cache
def plan_of(name: str, rule: str = "") -> Plan:
    template = read_template(OWN[name].read_text(encoding="utf-8"), OWN[name].name)
    return prepare(template, RULES.get(rule, Convention())).plan


def steps_of(name: str, rule: str = "") -> list[Step]:
    plan = plan_of(name, rule)
    return [step for each in (plan, *(b.plan for b in plan.branches)) for step in each.steps]


def balances(name: str, rule: str = "") -> list[str]:
    return [f"{s.equation.kind} {s.equation.about}" for s in steps_of(name, rule)]


def test_forces_come_first_where_they_can() -> None:
    # The pivot's force follows from the balance of forces alone, whatever the distance is.
    assert balances("seesaw-two-riders") == ["torque O", "force y"]
    assert balances("seesaw-two-riders", "forces first") == ["force y", "torque O"]


STAYED_BEAM = (
    OVER_A_PULLEY.replace("[[fixed]]", "[[hinge]]")
    .replace('couple = "C_A"\n', "")
    .replace('U = [0, "0.2 m"]', 'U = [0, "0.2 m"]\nD = ["1 m", 0]')
    + '[[cable]]\nbody = "beam"\nat = "D"\ndirection = 120\nsymbol = "S"\n'
    + '[[find]]\nquantity = "R"\nas = "components"\n'
)


def test_forces_take_the_place_of_torques_however_late() -> None:
    """Five steps lead to the last part of the hinge's force."""
    steps = prepare(read_template(STAYED_BEAM, "own.toml"), RULES["forces first"]).plan.steps
    assert [each.equation.kind for each in steps].count("torque") == 1
    assert len(steps) == 6


def test_with_a_particle_torques_are_taken_where_that_saves_a_step() -> None:
    """Of the plank and the person on it at first; then each has sums of forces of its own."""
    steps = prepare(read_template(STANDING, "own.toml"), RULES["torques throughout"]).plan.steps
    torques = [each.equation for each in steps if each.equation.kind == "torque"]
    assert torques[0].bodies == ("plank", "person")
    assert not any("person" in each.bodies for each in torques[1:])
    assert not any(each.partners for each in steps)


def test_torques_take_the_place_of_forces() -> None:
    assert balances("forearm-load") == ["torque E", "force x", "force y"]
    assert balances("forearm-load", "torques throughout") == ["torque E", "torque M", "force x"]


def test_torques_are_taken_about_supports_alone_where_a_course_says_so() -> None:
    # M is where the muscle pulls; the joint E holds the forearm.
    told = balances("forearm-load", "torques about supports")
    assert told == ["torque E", "force x", "force y"]


@pytest.mark.one_in(3)
@pytest.mark.parametrize("rule", RULES)
@pytest.mark.parametrize("name", OWN)
def test_no_rule_makes_a_working_longer(name: str, rule: str) -> None:
    """That a force alone along an axis is zero, R_x = 0, counts for no step."""
    own, usual = (
        [step for step in steps if len(step.equation.terms) > 1]
        for steps in (steps_of(name, rule), steps_of(name))
    )
    assert len(own) == len(usual)
    together = [[bool(step.partners) for step in steps] for steps in (own, usual)]
    assert sum(together[0]) == sum(together[1])


@pytest.mark.parametrize("rule", RULES)
@pytest.mark.parametrize("name", ["forearm-load", "stepladder-tie", "ladder-smooth-wall"])
def test_no_rule_changes_an_answer(name: str, rule: str) -> None:
    template = read_template(OWN[name].read_text(encoding="utf-8"), OWN[name].name)
    usual, own = (prepare(template, each) for each in (Convention(), RULES[rule]))
    draws = draw_class(usual, "a seed", ["1", "2"]).draws
    for one, other in zip(work(usual, draws), work(own, draws), strict=True):
        assert [each.printed for each in one.answers] == [each.printed for each in other.answers]


def test_a_template_s_own_pivot_goes_before_a_rule() -> None:
    path = OWN["forearm-load"]
    template = read_template(path.read_text(encoding="utf-8"), path.name)
    pivoted = replace(template, system=replace(template.system, pivot="M"))
    for rule in RULES.values():
        assert set(prepare(pivoted, rule).plan.pivots) <= {"M"}


def test_one_section_gives_all_members_that_it_is_through() -> None:
    """The roof's three, of which a smaller part without D and E would give the first one too."""
    steps = steps_of("stand-roof-cantilever")
    assert [step.unknown for step in steps] == ["F_CE", "F_DE", "F_DF"]
    assert len({step.equation.bodies for step in steps}) == 1
