"""Which forces turn a body which way, beside torques worked out from coordinates."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from probgen.quantities.expression import evaluate
from probgen.quantities.printing import plain
from probgen.statics.numeric_equations import coordinates
from probgen.wording.block import Section
from probgen.wording.sentence import plain_text
from probgen.working.case import Case
from tests.wording.told_keys import (
    SENSES,
    USUAL,
    cases,
    keys,
    runs,
    sentences,
    turns,
    works,
)

SENSE = re.compile(
    r"(?P<names>\S+(?:, \S+)*(?: and \S+)?) turns? the .+? "
    r"(?P<word>counter-clockwise|clockwise) \((?P<sign>positive|negative)\)\."
)


def turns_told(section: Section) -> dict[str, tuple[str, str]]:
    """For each force or couple named: which way, and with which sign, it is said to turn."""
    told: dict[str, tuple[str, str]] = {}
    for run in runs(section):
        for found in SENSE.finditer(plain_text(run)):
            for symbol in re.split(r", | and ", found["names"]):
                assert symbol not in told
                told[symbol] = (found["word"], found["sign"])
    return told


def turns_computed(case: Case, bodies: tuple[str, ...], pivot: str) -> dict[str, float]:
    """Torque per newton, or couple per newton metre, about a point, by its printed letter."""
    system, values = case.system, case.values
    places = coordinates(system, values)
    reach = max(float(np.hypot(*place)) for place in places.values()) or 1.0
    inner = {force.id for force in system.forces if force.body in bodies}
    computed = {}
    for force in system.forces:
        if force.body in bodies and force.pair not in inner:
            x, y = (p - o for p, o in zip(places[force.point], places[pivot], strict=True))
            angle = np.radians(float(evaluate(force.direction, values)))
            turn = float(x * np.sin(angle) - y * np.cos(angle)) / reach
            computed[plain((force.magnitude,))] = turn if abs(turn) > 1e-9 else 0.0
    for couple in system.couples:
        if couple.body in bodies:
            computed[plain((couple.moment,))] = 1.0
    return computed


@pytest.mark.parametrize(("name", "positive"), SENSES)
def test_the_senses_told_are_those_of_the_torques(name: str, positive: Any) -> None:
    convention = replace(USUAL, positive=positive)
    for sections, own in zip(keys(name, convention), works(name, convention), strict=True):
        balances = [
            (case, step.equation)
            for case in cases(own)
            for step in case.plan.steps
            if step.equation.kind == "torque"
        ]
        told = [section for section in sections if section.title.startswith("Which forces turn")]
        assert len(told) == len(balances)
        for section, (case, balance) in zip(told, balances, strict=True):
            computed = turns_computed(case, balance.bodies, balance.about)
            words = {1.0: "counter-clockwise", -1.0: "clockwise"}
            expected = {symbol: words[np.sign(turn)] for symbol, turn in computed.items() if turn}
            found = turns_told(section)
            assert {symbol: word for symbol, (word, _) in found.items()} == expected
            for word, sign in found.values():
                assert (sign == "positive") == (word == positive)


@pytest.mark.parametrize(("name", "positive"), SENSES)
def test_the_positive_sense_is_told_before_torques_are_taken(name: str, positive: Any) -> None:
    convention = replace(USUAL, positive=positive)
    for sections, own in zip(keys(name, convention), works(name, convention), strict=True):
        told = f"{positive} torques are positive" in sentences(sections[:1])
        assert told == turns(own)
