"""The last look: a balance the working did not use, and a pull beside the weights it holds.

By hand, the shelf about B: R_y is -4.90 N, which turns with 4.90 N x 1.20 m = 5.88 N m; the cable
with 122.5 N x 0.24 m = 29.40 N m the other way; the shelf's weight with 39.2 N x 0.60 m =
23.52 N m.
"""

from __future__ import annotations

import pytest

from probgen.wording.check import check_passage, unused_balances
from probgen.working.convention import Convention
from tests.situations import BRACKET, FIND_T, HINGED, SHELF, STAYED, STAYED_SHELF, TWO_BEAMS, worked
from tests.wording.shown import lines

USUAL = Convention()


def last_looks(text: str, convention: Convention = USUAL) -> dict[str, list[str]]:
    """What is said at the end, by body."""
    _, own = worked(text, convention)
    unused = unused_balances(own.case.plan)
    said = {}
    for body in own.case.system.bodies:
        if passage := check_passage(own.digits, body, unused.get(body.id, ())):
            said[body.id] = lines(passage)
    return said


def test_torques_about_the_end_that_was_not_used() -> None:
    assert last_looks(STAYED_SHELF) == {
        "shelf": [
            "CheckHeading()",
            "UnusedPivot(B, torque)",
            "Στ_B = −R_y L − T (L − d) sin θ + W_s (L/2)",
            "= 5.88 N·m − 29.40 N·m + 23.52 N·m",
            "= 0 N·m",
            "PullCompared(T, 1.6, 117.6 N, True, between)",
        ]
    }


def test_in_the_course_s_word_and_sense() -> None:
    said = last_looks(STAYED_SHELF, Convention(turning="moment", positive="clockwise"))["shelf"]
    assert said[1:4] == [
        "UnusedPivot(B, moment)",
        "ΣM_B = R_y L + T (L − d) sin θ − W_s (L/2)",
        "= −5.88 N·m + 29.40 N·m − 23.52 N·m",
    ]


def test_a_force_reached_by_two_legs_is_passed_over_for_a_plainer_balance() -> None:
    """T of the bracket: 137 N beside a single weight of 98.0 N."""
    said = last_looks(BRACKET)["bracket"]
    assert said[1] == "UnusedPivot(K, torque)"
    assert said[-1] == "PullCompared(T, 1.4, 98.0 N, False, shorter)"


def test_nothing_is_said_where_forces_were_not_found() -> None:
    """R was not asked: every balance that is left holds it."""
    assert last_looks(SHELF + HINGED + STAYED + FIND_T) == {}


def test_each_body_of_several_has_a_heading_of_its_own() -> None:
    both = TWO_BEAMS + "".join(f'[[find]]\nquantity = "{each}"\n' for each in "QRN")
    said = last_looks(both)
    assert {each[0] for each in said.values()} == {f"BodyCheckHeading({id})" for id in said}
    assert "right" in said
    assert not any("PullCompared" in line for each in said.values() for line in each)


STRAIGHT_UP = STAYED.replace('"180 - theta"', "90")


@pytest.mark.parametrize(
    ("cable_at", "said"),
    [
        ("0.96", "PullCompared(T, 1.0, 117.6 N, True, between)"),  # 117.6/0.96 = 122.5 N
        ("1.20", "PullCompared(T, 0.83, 117.6 N, True, between)"),  # 98.0 N
    ],
)
def test_a_pull_beside_what_it_holds(cable_at: str, said: str) -> None:
    text = SHELF.replace("[0.96]", f"[{cable_at}]") + HINGED + STRAIGHT_UP
    finds = "".join(f'[[find]]\nquantity = "{each}"\n' for each in "TR")
    assert last_looks(text + finds)["shelf"][-1] == said


def test_two_pulls_are_not_compared() -> None:
    held = HINGED + STRAIGHT_UP + '[[cable]]\nat = "B"\ndirection = 90\nmagnitude = "10 N"\n'
    finds = "".join(f'[[find]]\nquantity = "{each}"\n' for each in "TR")
    text = SHELF + held.replace('"10 N"', '"10 N"\nsymbol = "S"') + finds
    assert not any("PullCompared" in line for line in last_looks(text)["shelf"])


def test_no_more_digits_than_make_four_of_the_largest() -> None:
    """A shelf ten times as long and a hundred times as heavy: 5880 - 29 400 + 23 520 N m."""
    text = STAYED_SHELF.replace("1.20", "12.0").replace("0.96", "9.6")
    text = text.replace("[4.0]", "[400]").replace("[8.0]", "[800]")
    assert "= 5880 N·m − 29\u202f400 N·m + 23\u202f520 N·m" in last_looks(text)["shelf"]
