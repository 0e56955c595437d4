"""The last look: a balance the working did not use, and a pull beside the weights it holds.

By hand, the shelf about B: R_y is -4.90 N, which turns with 4.90 N x 1.20 m = 5.88 N m; the cable
with 122.5 N x 0.24 m = 29.40 N m the other way; the shelf's weight with 39.2 N x 0.60 m =
23.52 N m.
"""

from __future__ import annotations

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.problem import draw_class, prepare, work
from probgen.wording.check import check_passages
from probgen.wording.facts.ending import BodyCheckHeading
from probgen.wording.key import tell
from probgen.wording.unused import unused_balances
from probgen.working.convention import Convention
from tests.situations import (
    BRACKET,
    FIND_T,
    HINGED,
    SHELF,
    STAYED,
    STAYED_SHELF,
    TWO_BEAMS,
    worked,
)
from tests.two_states import two_crates
from tests.wording.own_telling import told_of
from tests.wording.shown import lines

USUAL = Convention()


def last_looks(text: str, convention: Convention = USUAL) -> dict[str, list[str]]:
    """What is said at the end, by body."""
    _, own = worked(text, convention)
    (unused,) = unused_balances(own.case.plan)
    alone = own.case.system.bodies[0].id
    single = len(own.case.system.bodies) == 1
    said = [lines(passage) for passage in check_passages(own.digits, unused, alone=single)]
    return {each[0].partition("(")[2].rstrip(")") or alone: each for each in said}


def test_torques_about_the_end_that_was_not_used() -> None:
    assert last_looks(STAYED_SHELF) == {
        "shelf": [
            "CheckHeading()",
            "UnusedPivot(B, torque)",
            "Στ_B = −R_y L − T (L − d) sin θ + W_s (L/2)",
            "= 5.9 N·m − 29.4 N·m + 23.5 N·m",
            "= 0 N·m",
        ]
    }


def test_in_the_course_s_word_and_sense() -> None:
    said = last_looks(STAYED_SHELF, Convention(turning="moment", positive="clockwise"))["shelf"]
    assert said[1:4] == [
        "UnusedPivot(B, moment)",
        "ΣM_B = R_y L + T (L − d) sin θ − W_s (L/2)",
        "= −5.9 N·m + 29.4 N·m − 23.5 N·m",
    ]


def test_a_force_reached_by_two_legs_is_passed_over_for_a_plainer_balance() -> None:
    """T of the bracket: 137 N beside a single weight of 98.0 N."""
    said = last_looks(BRACKET)["bracket"]
    assert said[1] == "UnusedPivot(K, torque)"
    assert said[-1] == "PullCompared(T, 1.4, 98.0 N, False, shorter)"


def test_forces_that_nobody_asked_for_are_found_first() -> None:
    """R was not asked: every balance that is left holds it, and R_y is -4.90 N."""
    assert last_looks(SHELF + HINGED + STAYED + FIND_T)["shelf"] == [
        "CheckHeading()",
        "RestFound(y)",
        "R_y = W_s + W_t − T sin θ",
        "= −4.900 N",
        "UnusedPivot(B, torque)",
        "Στ_B = −R_y L − T (L − d) sin θ + W_s (L/2)",
        "= 5.9 N·m − 29.4 N·m + 23.5 N·m",
        "= 0 N·m",
    ]


def test_each_state_that_goes_to_a_limit_is_looked_back_at() -> None:
    """The crates' normal forces and frictions, found along the slope, along x and y."""
    problem, own = worked(two_crates())
    key = tell(own.digits, problem.unused)
    looked = [lines(each) for each in key if isinstance(each.heading, BodyCheckHeading)]
    assert [each[:2] for each in looked] == [
        ["BodyCheckHeading(crate)", "UnusedAxis(y)"],
        ["BodyCheckHeading(second)", "UnusedAxis(y)"],
    ]


def test_lengths_without_a_letter_are_passed_over() -> None:
    """The height of the cabinet, which no text tells, for torques about an upper corner."""
    problem = prepare(default_bank().read("cabinet-slide-or-tip"), USUAL)
    (own,) = work(problem, draw_class(problem, "check", ["ada"]).draws)
    looked = lines(tell(own.digits, problem.unused)[-1])
    assert looked[2] == "Στ_O = N x − W_c (b/2) − P h"


LEFT = [
    ("4.16", ["= 9.95 N·m − 34.42 N·m + 24.46 N·m", "= −0.01 N·m ≈ 0 N·m", "RoundingLeft()"]),
    ("4.04", ["= 10.46 N·m − 34.21 N·m + 23.76 N·m", "= 0.01 N·m ≈ 0 N·m", "RoundingLeft()"]),
    ("4.33", ["= 9.2 N·m − 34.7 N·m + 25.5 N·m", "= 0 N·m"]),
    ("4.36", ["= 9.12 N·m − 34.76 N·m + 25.64 N·m", "= 0 N·m"]),
]


@pytest.mark.parametrize(("mass", "said"), LEFT)
def test_what_rounding_leaves_of_a_sum_is_said(mass: str, said: list[str]) -> None:
    """With the cable at 0.93 m: of a shelf of 4.16 kg W_s L/2 is 24.4608 N m.

    Of 4.33 kg three figures leave nothing, of 4.36 kg four, of the others neither.
    """
    shelf = STAYED_SHELF.replace("[0.96]", "[0.93]").replace("[4.0]", f"[{mass}]")
    looked = last_looks(shelf)["shelf"]
    assert looked[3 : 3 + len(said)] == said
    assert ("RoundingLeft()" in looked) is ("RoundingLeft()" in said)


def test_what_rounding_leaves_is_said_where_there_is_some_first() -> None:
    problem = prepare(default_bank().read("ridge-two-pallets"), USUAL)
    students = [str(number) for number in range(400)]
    told: dict[tuple[bool, ...], set[tuple[bool, ...]]] = {}
    for own in work(problem, draw_class(problem, "rest", students).draws):
        key = tell(own.digits, problem.unused)
        looked = [lines(each) for each in key if isinstance(each.heading, BodyCheckHeading)]
        left = tuple(any("≈ 0" in line for line in each) for each in looked)
        told.setdefault(left, set()).add(tuple("RoundingLeft()" in each for each in looked))
    assert {(True, True), (False, True)} <= told.keys()
    for left, said in told.items():
        assert said == {tuple(yes and True not in left[:n] for n, yes in enumerate(left))}


def test_each_body_of_several_has_a_heading_of_its_own() -> None:
    both = TWO_BEAMS + "".join(f'[[find]]\nquantity = "{each}"\n' for each in "QRN")
    said = last_looks(both)
    assert {each[0] for each in said.values()} == {f"BodyCheckHeading({id})" for id in said}
    assert "right" in said
    assert not any("PullCompared" in line for each in said.values() for line in each)


STRAIGHT_UP = STAYED.replace('"180 - theta"', "90")


def test_a_pull_beside_what_it_holds() -> None:
    """117.6 N m/0.48 m = 245 N."""
    said = "PullCompared(T, 2.1, 117.6 N, True, shorter)"
    text = SHELF.replace("[0.96]", "[0.48]") + HINGED + STRAIGHT_UP
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


LOOKED_AT = [
    ("stepladder-tie", ["left", "right"]),
    ("shed-three-hinges", ["left"]),  # of the right half alone there is no diagram
    ("painter-board-seat", ["board"]),  # nor of the board, but the worker leaves no balance
]


@pytest.mark.parametrize(("name", "bodies"), LOOKED_AT)
def test_bodies_that_are_drawn_alone_are_looked_at_first(name: str, bodies: list[str]) -> None:
    problem = prepare(default_bank().read(name), Convention())
    (own,) = work(problem, draw_class(problem, "look", ["ada"]).draws)
    headings = [passage.heading for passage in tell(own.digits, problem.unused)]
    looked = [each.body for each in headings if isinstance(each, BodyCheckHeading)]
    assert looked == bodies


def test_a_sum_of_moments_is_told_from_a_couple_with_the_letter_it_would_have() -> None:
    own = told_of("balcony-built-in", Convention(turning="moment"))
    sums = [line.partition(" = ")[0] for line in own if line.startswith("ΣM")]
    assert sums == ["ΣM^(A)", "ΣM^(B)"]
    torques = [line for line in told_of("balcony-built-in") if line.startswith("Στ")]
    assert [line.partition(" = ")[0] for line in torques] == ["Στ_A", "Στ_B"]
    usual = told_of("diving-board", Convention(turning="moment"))
    assert any(line.startswith("ΣM_A = ") for line in usual)


def test_a_look_back_is_not_at_a_balance_that_was_used() -> None:
    """All forces are upright, and D lies straight below the pivot B: the same torques again."""
    lines = told_of("ferry-board-hole")
    look = lines[lines.index("# Check") :]
    assert look[1].startswith("The forces along y, which we have not used, give")
    assert not any("Torques about D" in line for line in look)
