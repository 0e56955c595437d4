"""Equal forces with one letter: each is told by the point it acts at."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import Name
from probgen.wording.english import ENGLISH
from probgen.wording.facts.torque import Placed, TurnsBody
from probgen.wording.sentence import plain_text
from probgen.wording.torque import turning_passage
from probgen.working.convention import Convention
from tests.situations import HEAD, worked
from tests.wording.shown import lines

EQUAL = HEAD + """
[given]
L = { name = "length", choices = [4.0], unit = "m" }
P = { name = "load", choices = [300], unit = "N" }
[points]
A = [0, 0]
C = ["L/4", 0]
D = ["L/2", 0]
B = ["L", 0]
[body.beam]
along = ["A", "B"]
[[roller]]
at = "A"
symbol = "N_A"
[[roller]]
at = "B"
symbol = "N_B"
""" + "".join(
    f'[[force]]\nat = "{at}"\ndirection = 270\nmagnitude = "P"\n' for at in ("A", "C", "D")
) + '[[find]]\nquantity = "N_B"\n'  # fmt: skip


def turning(convention: Convention) -> list[list[str]]:
    """What is said before each balance of torques."""
    _, own = worked(EQUAL, convention)
    steps = [step for step in own.case.plan.steps if step.equation.kind == "torque"]
    return [lines(turning_passage(own.digits, step)) for step in steps]


@pytest.mark.parametrize(
    ("convention", "arms"),
    [
        (Convention(), ["SquareToArm(N_B Placed(P, C) Placed(P, D), A B A C A D, sin 90° = 1)"]),
        (
            Convention(torque="arm"),
            [
                "LeverArm(N_B, L = 4.0 m)",
                "LeverArm(Placed(P, C), L/4 = 1.00 m)",
                "LeverArm(Placed(P, D), L/2 = 2.00 m)",
            ],
        ),
    ],
)
def test_equal_forces_are_told_by_where_they_act(convention: Convention, arms: list[str]) -> None:
    """P at the pivot turns nothing; the other two have one letter."""
    ((_, _, nothing, clockwise, _, *told),) = turning(convention)
    assert nothing == "TurnsNothing(N_A P, , N_A)"
    assert clockwise == "TurnsBody(Placed(P, C) Placed(P, D), beam, clockwise, False)"
    assert told == arms


def test_equal_forces_are_said_by_where_they_act() -> None:
    problem, _ = worked(EQUAL)
    both = tuple(Placed(Name("P", "P"), point) for point in "CD")
    said = ENGLISH.say(TurnsBody(both, ("beam",), "clockwise", False), problem.nouns)
    assert plain_text(said) == "P at C and P at D turn the beam clockwise (negative)."
