"""Points of answers: the scheme's, and the course's own by parts or kinds of steps."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.marking.asked import Asked, asked_of
from probgen.marking.points import points_of
from probgen.problem.problem import Problem, draw_class, prepare, work
from probgen.working.convention import Convention
from probgen.working.shares import Share, Shares
from tests.marking.test_asked import FIRST, IN_PARTS, NUMBERS, ONE_LIMIT
from tests.situations import HEAD, HOLDS, SLIDES, STAYED_SHELF, TIPS, cabinet, worked

FOREARM = Path(__file__).parents[2] / "templates/limbs/forearm-load.toml"


@cache
def forearm() -> tuple[Problem, tuple[Asked, ...]]:
    """First the muscle's pull B, then the push J at the elbow, by magnitude and direction."""
    problem = prepare(read_template(FOREARM.read_text(encoding="utf-8"), "own.toml"), Convention())
    (own,) = work(problem, draw_class(problem, "points", ["1"]).draws)
    return problem, asked_of(problem, own)


TOGETHER = (
    HEAD
    + """
[given]
W = { name = "weight", choices = [24.0], unit = "N" }
[body.lamp]
particle = true
[[cable]]
direction = 150
symbol = "T_1"
[[cable]]
direction = 40
symbol = "T_2"
[[force]]
magnitude = "W"
direction = 270
name = "lamp"
[[find]]
quantity = "T_1"
[[find]]
quantity = "T_2"
"""
)


SHARED = [
    # T has a torque balance (5), its numbers (2) and the result (2), each part a balance and its
    # result (3 + 1); 3 of the diagram among 9, 4 and 4 are one each, as nearly as goes
    (IN_PARTS, 20, {"T": 10, "R.x": 5, "R.y": 5}),
    # T 5 + 2 + 2; the size two balances with their results and its own 2; the direction as much, 2;
    # of the diagram's 3 nine, six and two seventeenths
    (STAYED_SHELF, 20, {"T": 11, "R.magnitude": 7, "R.direction": 2}),
    # what leads to the limits, 7, stands before both, 4 and 3, and whether they are kept is asked
    # at the end, 1 and 1; the diagram's 1 goes to the one with 5
    (cabinet("60", **NUMBERS) + SLIDES + TIPS + HOLDS, 10, {"slides": 6, "tips": 4}),
    (FIRST, 10, {"P": 9, "P.limit": 1}),
    (ONE_LIMIT, 10, {"P": 10}),
    # two balances and what is taken out of them (7) lead to both pulls, 4 to the one found first;
    # each has its result (1 + 1), and of the diagram's 3 those are 2 and 1
    (TOGETHER, 12, {"T_1": 5, "T_2": 7}),
    # one mark for each, and one for the diagram, which goes to the first of equals
    (STAYED_SHELF, 3, {"T": 2, "R.magnitude": 1, "R.direction": 0}),
]


@pytest.mark.parametrize(("text", "points", "expected"), SHARED)
def test_what_leads_to_an_answer_counts_with_it(
    text: str, points: int, expected: dict[str, int]
) -> None:
    problem, own = worked(text)
    assert points_of(problem, asked_of(problem, own), points) == expected


def test_no_answer_is_without_a_point_where_another_can_spare_one() -> None:
    """Ten marks, of which one is for the mass and a pull, both as they are at the first limit."""
    feeder = Path(__file__).parents[2] / "templates/particles/feeder-cord-strength.toml"
    problem = prepare(read_template(feeder.read_text(encoding="utf-8"), "own.toml"), Convention())
    (own,) = work(problem, draw_class(problem, "points", ["1"]).draws)
    assert min(points_of(problem, asked_of(problem, own), 10).values()) == 1


@pytest.mark.parametrize("parts", [(3, 7), (9, 1), (5, 5)])
def test_points_of_a_part_stay_with_what_it_asks(parts: tuple[int, int]) -> None:
    found = points_of(*forearm(), 10, Shares(parts=parts))
    assert found["B"] == parts[0]
    assert found["J.magnitude"] + found["J.direction"] == parts[1]


def test_points_by_kinds_of_steps_add_up() -> None:
    usual = points_of(*forearm(), 10)
    found = points_of(*forearm(), 10, Shares(marks=(Share("torques", 9), Share("results", 1))))
    assert sum(found.values()) == sum(usual.values()) == 10
    assert found["B"] >= 9 > usual["B"]


def test_points_for_results_go_to_every_answer_asked() -> None:
    """Also to those that come straight out of a balance or a condition: 6 of 12 points, alike."""
    path = FOREARM.parents[1] / "ladders/ladder-smooth-wall.toml"
    problem = prepare(read_template(path.read_text(encoding="utf-8"), "own.toml"), Convention())
    (own,) = work(problem, draw_class(problem, "points", ["1"]).draws)
    asked = asked_of(problem, own)
    results = (Share("results", 12),)
    assert points_of(problem, asked, 12, Shares(marks=results)) == {
        "N_w": 3, "N_f": 3, "f": 3, "mu": 3,
    }  # fmt: skip
    torques = (Share("torques", 4), Share("results", 8))
    found = points_of(problem, asked, 12, Shares(marks=torques))
    assert found == {"N_w": 6, "N_f": 2, "f": 2, "mu": 2}


def test_points_for_diagrams_alone_are_shared_alike() -> None:
    problem, own = worked(STAYED_SHELF)
    shares = Shares(marks=(Share("diagrams", 10),))
    found = points_of(problem, asked_of(problem, own), 10, shares)
    assert found == {"T": 4, "R.magnitude": 3, "R.direction": 3}
