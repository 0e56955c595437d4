"""What the sign of a result means, told below it."""

from __future__ import annotations

import math
from collections.abc import Iterator

import pytest

from probgen.quantities.expression import evaluate
from probgen.quantities.printing import plain
from probgen.wording.block import Display, Picture
from probgen.wording.facts.balance import ForceHeading, ForceNegative
from probgen.wording.key import tell
from probgen.wording.passage import Passage
from tests.held_by_ropes import OVER_A_PULLEY
from tests.situations import worked as worked_out
from tests.wording.own_telling import told_of
from tests.wording.test_true_sentences import TEMPLATES, told


def test_a_force_that_had_to_act_the_other_way_is_negative_as_expected() -> None:
    """The joint of a held forearm pushes it down."""
    (said,) = (line for line in told_of("forearm-load") if "is negative" in line)
    assert said == "J_y is negative, as expected: this component acts straight down."


def test_a_member_pulls_or_pushes() -> None:
    lines = told_of("wall-bracket-board")
    said = [line for line in lines if line.startswith("F_") and ": member" in line]
    assert said == [
        "F_CE is negative: member CE is in compression.",
        "F_AE is positive: member AE is in tension.",
        "F_DE is negative: member DE is in compression.",
    ]


def test_what_is_reasoned_of_bodies_taken_as_one_is_expected_there_too() -> None:
    """About A the stepladder's weights leave the strap's pull to the right side alone."""
    said = [line for line in told_of("stepladder-tie") if "is negative" in line]
    assert said == [
        "R_x is negative, as expected: on the left side this component acts to the left."
    ]


def test_a_negative_force_between_two_bodies_acts_as_said_on_the_one_told_of() -> None:
    """By hand: the rope pulls the pulley left and down, so its pin holds it to the right and up."""
    own, worked = worked_out(OVER_A_PULLEY)
    facts = list(facts_with_bodies(tell(worked.digits, own.unused)))
    assert [(bodies, plain(f.force), f.body, f.way.quarter) for bodies, f in facts] == [
        (("pulley",), "F_x", "pulley", 0),
        (("pulley",), "F_y", "pulley", 1),
    ]


@pytest.mark.one_in(2)
@pytest.mark.parametrize("name", TEMPLATES)
def test_a_negative_force_acts_the_way_that_is_said(name: str) -> None:
    for own, passages in told(name, "angle", 3):
        if own.case.plan.branches:
            continue
        for bodies, fact in facts_with_bodies(passages):
            acting = [f for f in own.case.system.forces if f.magnitude == fact.force]
            assert (fact.body or acting[0].body) in (bodies or [f.body for f in acting])
            first = acting[0].body  # of two bodies, the one whose force has the letter
            for force in (f for f in acting if f.body == (fact.body or first)):
                turned = math.radians(float(evaluate(force.direction, own.case.values)))
                size = float(evaluate(force.magnitude, own.case.values))
                x, y = size * math.cos(turned), size * math.sin(turned)
                assert abs(x) < 1e-9 or fact.way.right == (x > 0.0)
                assert abs(y) < 1e-9 or fact.way.up == (y > 0.0)


def facts_with_bodies(
    passages: tuple[Passage, ...],
) -> Iterator[tuple[tuple[str, ...], ForceNegative]]:
    """What is said of negative forces, with the bodies whose force balance it is said in."""
    for passage in passages:
        bodies = passage.heading.bodies if isinstance(passage.heading, ForceHeading) else ()
        for part in passage.parts:
            if not isinstance(part, Display | Picture):
                yield from ((bodies, f) for f in part.facts if isinstance(f, ForceNegative))
