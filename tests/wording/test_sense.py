"""A pull beside the weights it holds: its share of them, and its lever arm among theirs.

By hand: the shelf's weights turn with arms of 0.60 m and 1.20 m and make 117.6 N m.
"""

from __future__ import annotations

import pytest

from probgen.wording.english import last_look
from probgen.wording.facts.ending import ArmAmong
from probgen.wording.sense import sense_of
from tests.situations import BRACKET, FIND_R, FIND_T, HINGED, SHELF, STAYED, TWO_BEAMS, worked
from tests.wording.shown import shown

UPRIGHT = HINGED + STAYED.replace('"180 - theta"', "90") + FIND_T + FIND_R


def said(text: str) -> list[str]:
    _, own = worked(text)
    bodies = own.case.system.bodies
    return [shown(fact) for body in bodies for fact in sense_of(own.digits, body)]


def test_a_shorter_arm_than_all() -> None:
    """245 N with 0.48 m."""
    told = said(SHELF.replace("[0.96]", "[0.48]") + UPRIGHT)
    assert told == ["PullCompared(T, 2.1, 117.6 N, True, shorter)"]


@pytest.mark.parametrize("cable_at", ["0.60", "0.96", "1.20"])
def test_nothing_where_the_arm_lies_between_those_of_the_weights(cable_at: str) -> None:
    """196 N with an arm as long as the shortest, 122.5 N, and 98.0 N: more than all, or less."""
    assert said(SHELF.replace("[0.96]", f"[{cable_at}]") + UPRIGHT) == []


def test_a_longer_arm_than_all() -> None:
    """Loads at 0.60 m and 0.80 m: 39.2 N x 0.60 m + 78.4 N x 0.80 m = 86.24 N m over 0.96 m."""
    nearer = SHELF.replace('at = "B"\nmass', 'at = "E"\nmass').replace(
        "[body.shelf]", 'E = ["0.80 m", 0]\n[body.shelf]'
    )
    assert said(nearer + UPRIGHT) == ["PullCompared(T, 0.76, 117.6 N, True, longer)"]


def test_one_weight() -> None:
    assert said(BRACKET) == ["PullCompared(T, 1.4, 98.0 N, False, shorter)"]


def test_one_weight_with_an_arm_as_long() -> None:
    """The cord goes straight up above the load, and so holds its 98.0 N."""
    above = BRACKET.replace("direction = 150", "direction = 90").replace(FIND_R, "")
    assert said(above) == ["PullCompared(T, 1.0, 98.0 N, False, equal)"]


def test_a_reason_is_there_wherever_an_arm_may_lie() -> None:
    both = {(arm, several) for arm in ArmAmong for several in (False, True)}
    assert {*last_look._REASONS} == both - {(ArmAmong.EQUAL, True)}


def test_nothing_where_another_force_helps() -> None:
    pushed = '[[force]]\nat = "B"\ndirection = 90\nmagnitude = "5 N"\nsymbol = "P"\n'
    assert said(SHELF + UPRIGHT + pushed) == []


def test_nothing_where_a_weight_helps_the_pull() -> None:
    """A load 0.20 m behind the hinge: 39.2 N x 0.60 m - 78.4 N x 0.20 m = 7.84 N m are left."""
    behind = SHELF.replace('at = "B"\nmass', 'at = "E"\nmass').replace(
        "[body.shelf]", 'E = ["-0.20 m", 0]\n[body.shelf]'
    )
    assert said(behind + UPRIGHT) == []


def test_nothing_where_there_is_no_pull() -> None:
    assert said(TWO_BEAMS) == []


def test_nothing_where_the_weight_is_what_is_sought() -> None:
    sought = SHELF.replace('M = { name = "load mass", choices = [8.0], unit = "kg" }\n', "")
    sought = sought.replace(
        "[points]", '[unknown]\nM = { name = "load mass", unit = "kg" }\n[points]'
    )
    pull = STAYED + 'magnitude = "150 N"\n'
    assert said(sought + HINGED + pull + '[[find]]\nquantity = "M"\n') == []
