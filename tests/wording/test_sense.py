"""A pull beside the weights it holds: its share of them, and its lever arm among theirs.

By hand: the shelf's weights turn with arms of 0.60 m and 1.20 m and make 117.6 N m.
"""

from __future__ import annotations

import pytest

from probgen.wording.english import ending
from probgen.wording.facts.ending import ArmAmong
from probgen.wording.sense import sense_of
from tests.situations import BRACKET, FIND_R, FIND_T, HINGED, SHELF, STAYED, TWO_BEAMS, worked
from tests.wording.shown import shown

UPRIGHT = HINGED + STAYED.replace('"180 - theta"', "90") + FIND_T + FIND_R


def said(text: str) -> list[str]:
    _, own = worked(text)
    bodies = own.case.system.bodies
    return [shown(fact) for body in bodies for fact in sense_of(own.digits, body)]


@pytest.mark.parametrize(
    ("cable_at", "expected"),
    [
        ("0.48", "PullCompared(T, 2.1, 117.6 N, True, shorter)"),  # 245 N
        ("0.60", "PullCompared(T, 1.7, 117.6 N, True, between)"),  # 196 N, as long as the shortest
        ("0.96", "PullCompared(T, 1.0, 117.6 N, True, between)"),  # 122.5 N
        ("1.20", "PullCompared(T, 0.83, 117.6 N, True, between)"),  # 98.0 N
    ],
)
def test_the_arm_of_a_pull_among_those_of_the_weights(cable_at: str, expected: str) -> None:
    assert said(SHELF.replace("[0.96]", f"[{cable_at}]") + UPRIGHT) == [expected]


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
    assert said(above) == ["PullCompared(T, 1.0, 98.0 N, False, between)"]


def test_a_reason_is_there_wherever_an_arm_may_lie() -> None:
    assert {*ending._REASONS} == {(arm, several) for arm in ArmAmong for several in (False, True)}


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
