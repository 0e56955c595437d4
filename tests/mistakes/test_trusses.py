"""Slips in trusses: the wrong numbers by formulas worked by hand, with the data of the draw."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, hypot, radians, sin

import pytest

from probgen.bank.reading import read_template
from probgen.mistakes.variant import wrong_values
from probgen.problem.problem import draw_class, prepare, work
from probgen.working.convention import Convention
from tests.mistakes.supplied import OWN, problem, works
from tests.mistakes.test_templates import Data
from tests.situations import THREE_HINGES
from tests.situations import worked as worked_out

ROOF, BRIDGE, BRACKET = "roof-truss-snow", "footbridge-truss-crowd", "wall-bracket-board"


def s(degrees: float) -> float:
    return sin(radians(degrees))


def bridge(d: Data) -> float:
    """The pin's upward force, from moments about the roller."""
    return (3 * d.P_1 + 2 * d.P_2 + d.P_3) / 4


def brace(d: Data) -> float:
    """The compression in the brace where the board hangs."""
    return d.board_mass * d.g / s(d.theta)


CASES: list[tuple[str, str, str, str, Callable[[Data], float]]] = [
    (BRIDGE, "reaction_left_out", "R.y", "F_BE", lambda d: -d.P_1 * hypot(d.p, d.h) / d.h),
    (BRIDGE, "reaction_left_out", "R.y", "F_BD", lambda d: d.P_1 * d.p / d.h),
    (BRIDGE, "load_left_out", "P_1", "F_BE", lambda d: bridge(d) * hypot(d.p, d.h) / d.h),
    (BRIDGE, "load_left_out", "P_1", "F_BD", lambda d: -bridge(d) * 2 * d.p / d.h),
    # at E the brace is taken to pull, as hard as it pushes
    (
        BRACKET,
        "member_turned",
        "F_CE",
        "F_DE",
        lambda d: brace(d) - d.horn_mass * d.g / (2 * s(d.theta)),
    ),
    (ROOF, "reaction_left_out", "R.y", "F_AE", lambda d: 0.0),
    (
        ROOF,
        "member_turned",
        "F_AE",
        "F_AD",
        lambda d: -bridge(d) / s(d.theta) * cos(radians(d.theta)),
    ),
]


@pytest.mark.parametrize(("template", "slip", "of", "answer", "value"), CASES)
def test_a_slip_leads_to_its_number(
    template: str, slip: str, of: str, answer: str, value: Callable[[Data], float]
) -> None:
    own = problem(template)
    (made,) = [
        each
        for each in own.missteps[0]
        if each.slip == slip and each.parts["F"] == own.plan.system.variables[of].as_name
    ]
    for worked in works(template):
        case = worked.case
        data = {id: case.values[id] for id in (*case.numbers, "g")}
        wrong = float(wrong_values(made, data)[answer])
        assert wrong == pytest.approx(value(Data(data)), rel=1e-9, abs=1e-9)


def test_a_member_is_turned_in_both_balances_of_a_joint() -> None:
    """At E the rafters lie on one line, so that none of them helps to hold P_1 across it."""
    levelled = Convention(torque="components", axes="level", order="forces first")
    own = prepare(read_template(OWN[ROOF].read_text(encoding="utf-8"), ROOF), levelled)
    (worked,) = work(own, draw_class(own, "slips", ["0"]).draws)
    values = worked.digits.case.values
    turned = [
        wrong_values(each, {id: values[id] for id in (*worked.digits.case.numbers, "g")})
        for each in own.missteps[0]
        if each.slip == "member_turned" and each.parts["body"] == own.plan.system.body("joint-E")
    ]
    assert turned
    for wrong in turned:
        assert float(wrong["F_DE"]) == pytest.approx(values["F_DE"])


def test_a_load_is_left_out_of_parts_only() -> None:
    assert not any(each.slip == "load_left_out" for each in problem(ROOF).missteps[0])


def test_a_link_is_taken_to_pull_where_it_pushes() -> None:
    """The left leg pushes with 12.25 N to the right and 24.5 N up; taken the other way round, the
    right hinge has to hold 98.0 N + 24.5 N and a pull to the left.
    """
    own, case = worked_out(THREE_HINGES)
    made = [each for each in own.missteps[0] if each.slip == "member_turned"]
    values = case.case.values
    wrong = [wrong_values(each, {id: values[id] for id in ("L", "m", "g")}) for each in made]
    assert len(made) == 1
    assert float(wrong[0]["S.y"]) == pytest.approx(98.0 + 24.5)
    assert float(wrong[0]["S.x"]) == pytest.approx(12.25)
