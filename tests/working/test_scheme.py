"""How the points of a problem are shared."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, draw_class, prepare, work
from probgen.statics.plan import Plan
from probgen.wording.english import ENGLISH
from probgen.wording.sentence import plain_text
from probgen.working.bodies_used import steps_compared
from probgen.working.convention import Convention
from probgen.working.criteria import other_routes
from probgen.working.criterion import OtherRoutes
from probgen.working.scheme import Earned, Mark, scheme
from probgen.working.tolerance import intervals, margins
from tests.situations import HEAD, worked

ROOT = Path(__file__).parents[2]
OWN = {path.stem: path for path in sorted(ROOT.glob("templates/*/*.toml"))}
USUAL = Convention()
BALANCES = ("torque", "balance", "force")
POINTS = range(5, 21)


HANGING = (
    HEAD
    + """
[given]
W = { name = "weight", choices = [24.0], unit = "N" }
[body.lamp]
particle = true
[[cable]]
direction = 90
symbol = "T"
[[force]]
magnitude = "W"
direction = 270
name = "lamp"
[[find]]
quantity = "T"
"""
)


@cache
def problem(name: str) -> Problem:
    path = OWN[name]
    return prepare(read_template(path.read_text(encoding="utf-8"), path.name), USUAL)


def said(name: str, points: int, convention: Convention = USUAL) -> list[tuple[str, int]]:
    own = problem(name)
    marks = scheme(own.plan, convention, points)
    return [(plain_text(ENGLISH.say(mark, own.nouns)), mark.points) for mark in marks]


def balances(plan: Plan) -> int:
    """The balances of forces and torques a working writes down; one may lead to two quantities."""
    steps = steps_compared(plan)
    later = {partner.unknown for step in steps for partner in step.partners}
    first = [step for step in steps if step.unknown not in later]
    written = {(step.unknown, e) for step in first for e in step.equations if e.kind != "condition"}
    return len(written)


def holding(marks: tuple[Mark, ...], *kinds: str) -> list[Mark]:
    return [mark for mark in marks if set(mark.kinds) & set(kinds)]


@pytest.mark.one_in(2)
@pytest.mark.parametrize("name", OWN)
def test_points_add_up_and_diagrams_have_a_third_at_most(name: str) -> None:
    for points in POINTS:
        marks = scheme(problem(name).plan, USUAL, points)
        assert sum(mark.points for mark in marks) == points
        assert all(mark.points > 0 for mark in marks)
        drawn = holding(marks, "diagram")
        assert sum(mark.points for mark in drawn) * 3 <= points
        assert {kind for mark in drawn for kind in mark.kinds} <= {"diagram"}


@pytest.mark.one_in(4)
@pytest.mark.parametrize("name", OWN)
def test_every_balance_has_a_mark_where_points_allow(name: str) -> None:
    count = balances(problem(name).plan)
    for points in POINTS:
        marks = scheme(problem(name).plan, USUAL, points)
        left = points - sum(mark.points for mark in holding(marks, "diagram"))
        written = [kind for mark in marks for kind in mark.kinds if kind in BALANCES]
        assert len(written) == count
        if left >= count:
            assert len(holding(marks, *BALANCES)) == count


def test_equations_solved_together_all_earn_and_so_does_taking_out() -> None:
    assert said("lantern-two-cords", 12) == [
        ("free-body diagram with three forces\u00a0–\u00a0method", 3),
        ("force balance along y\u00a0–\u00a0method", 3),
        ("force balance along x\u00a0–\u00a0method", 3),
        ("T_1 eliminated\u00a0–\u00a0method", 1),
        ("T_2 found (unit)\u00a0–\u00a0accuracy", 1),
        ("T_1 found (unit)\u00a0–\u00a0accuracy", 1),
    ]


def test_a_balance_with_points_enough_tells_method_and_accuracy_apart() -> None:
    marks = scheme(problem("painter-board-seat").plan, USUAL, 12)
    assert [(mark.points, mark.earned) for mark in marks] == [
        (2, Earned.METHOD),
        (2, Earned.METHOD),
        (3, Earned.METHOD),
        (1, Earned.ACCURACY),
        (3, Earned.METHOD),
        (1, Earned.ACCURACY),
    ]


def test_small_steps_share_a_mark_before_a_balance_that_weighs_more_loses_points() -> None:
    """Weights 3, 1, 1, 1, 1 of five points leave one without; 3, 2, 1, 1 are 2.1, 1.4, 0.7, 0.7."""
    marks = scheme(problem("balcony-built-in").plan, USUAL, 6)
    assert [(mark.kinds, mark.points) for mark in marks] == [
        (("diagram",), 1),
        (("force",), 1),
        (("force",), 1),
        (("torque",), 2),
        (("substitution", "result"), 1),
    ]


ALIKE = [
    ("stepladder-tie", ("torque",), {1}),
    ("climbing-triangle", ("torque",), {1}),
    ("shed-three-hinges", ("torque",), {2}),
    ("pipe-in-cradle", ("balance",), {3}),
    ("ring-three-ropes", ("balance",), {2}),
    ("box-pulled-from-under", ("diagram",), {1}),
    ("wall-bracket-board", ("diagram",), {1}),
]


@pytest.mark.parametrize(("name", "kinds", "points"), ALIKE)
def test_like_work_earns_like_points(name: str, kinds: tuple[str, ...], points: set[int]) -> None:
    marks = scheme(problem(name).plan, USUAL, 10)
    own = [mark for mark in marks if mark.kinds[:1] == kinds]
    assert len(own) > 1
    assert {mark.points for mark in own} == points


def test_a_torque_balance_has_a_point_apart_from_its_number() -> None:
    marks = scheme(problem("footbridge-two-beams").plan, USUAL, 10)
    at = next(place for place, mark in enumerate(marks) if "torque" in mark.kinds)
    assert [(mark.kinds, mark.points) for mark in marks[at : at + 2]] == [
        (("torque",), 2),
        (("substitution", "result"), 1),
    ]


@pytest.mark.one_in(4)
@pytest.mark.parametrize("name", OWN)
def test_diagrams_earn_alike_where_there_are_points_for_each(name: str) -> None:
    for points in POINTS:
        drawn = holding(scheme(problem(name).plan, USUAL, points), "diagram")
        if all(len(mark.kinds) == 1 for mark in drawn):
            assert len({mark.points for mark in drawn}) <= 1


RANGED = ("result", "magnitude", "direction")


@pytest.mark.one_in(2)
@pytest.mark.parametrize("name", OWN)
@pytest.mark.parametrize("points", [6, 10, 20])
def test_a_number_earns_points_of_accuracy_where_the_key_has_its_range(
    name: str, points: int
) -> None:
    """N_2 of a ladder carried leads to the answers and is none itself."""
    own = problem(name)
    (drawn,) = work(own, draw_class(own, "range", ["1"]).draws)
    ranged = {e.answer for of in (intervals, margins) for e in of(drawn.digits, drawn.answers)}
    for mark in scheme(own.plan, USUAL, points):
        numbers = {each.quantity for each in mark.criteria if each.quantity}
        if mark.earned is not Earned.METHOD:
            assert numbers & ranged
        if mark.earned is Earned.ACCURACY:
            assert numbers <= ranged
        if mark.earned is Earned.METHOD and mark.kinds[-1] in RANGED:
            assert not numbers & ranged


WORTH = [
    ("ferry-bollard", "beta", 2),  # a law solved for what stands in its exponent
    ("seesaw-two-riders", "P", 2),  # a balance of its own
    ("ladder-smooth-wall", "f", 2),
    ("street-lamp-section", "V", 2),
    ("diving-board", "R.x", 1),  # nothing acts along x, so that it is zero
    ("well-windlass", "n", 1),  # a fraction of what is known
]


@pytest.mark.parametrize(("name", "answer", "points"), WORTH)
def test_an_answer_that_is_solved_for_earns_beside_its_equation(
    name: str, answer: str, points: int
) -> None:
    marks = scheme(problem(name).plan, USUAL, 10)
    at = next(place for place, mark in enumerate(marks) if answer in mark.quantities)
    first = at - 1 if marks[at].kinds == ("result",) else at  # its equation has a mark of its own
    assert sum(mark.points for mark in marks[first : at + 1]) == points


@pytest.mark.parametrize(
    ("direction", "words"),
    [
        ("horizontal", "direction of R with its side\u00a0–\u00a0accuracy"),
        ("axis", "direction of R as an angle from the x-axis\u00a0–\u00a0accuracy"),
    ],
)
def test_a_direction_is_marked_as_the_course_asks_for_it(direction: str, words: str) -> None:
    convention = replace(USUAL, direction=direction)  # type: ignore[arg-type]
    assert said("beam-stay-cable", 10, convention)[-1][0] == words


def test_another_way_earns_and_so_does_what_follows_an_earlier_wrong_result() -> None:
    own = problem("beam-stay-cable")
    assert plain_text(ENGLISH.say(other_routes(own.plan), own.nouns)) == (
        "Any right way earns the marks; so do later parts that are right but for an earlier error."
    )


def test_what_follows_from_a_resultant_is_said_to_earn_too() -> None:
    """What is asked of a gate follows from the water's push alone, which is not asked."""
    assert other_routes(problem("gate-under-water").plan) == OtherRoutes(follows=True)


def test_where_nothing_follows_nothing_is_said_of_it() -> None:
    """The pull of a cord on which a given force pulls."""
    own, _ = worked(HANGING)
    told = other_routes(own.plan)
    assert plain_text(ENGLISH.say(told, own.nouns)) == "Any right way earns the marks."


def test_a_law_has_a_mark_apart_from_its_number_where_points_allow() -> None:
    words = [each for each, _ in said("band-brake-hoist", 10)]
    assert "T_1 = T_2 e^(μ β) used\u00a0–\u00a0method" in words
    assert "T_2 found (unit)\u00a0–\u00a0accuracy" in words


def test_two_answers_have_a_mark_each_where_points_allow() -> None:
    marks = scheme(problem("band-brake-hoist").plan, USUAL, 10)
    assert [sum(each.asked for each in mark.criteria) for mark in marks] == [0, 0, 0, 0, 1, 1, 0, 1]


def test_of_answers_that_share_a_mark_the_first_has_one_of_its_own() -> None:
    """A feeder's mass is the question; the tensions of its cords are read off with it."""
    *_, mass, tensions = scheme(problem("feeder-cord-strength").plan, USUAL, 8)
    assert mass.quantities == ("mass",)
    assert tensions.quantities == ("T_1", "T_2")
    words, _ = said("feeder-cord-strength", 8)[-1]
    assert words == "T_1 and T_2 found at the limit reached first (unit)\u00a0–\u00a0accuracy"


def test_a_limit_taken_as_reached_is_marked_with_the_balance_it_is_data_for() -> None:
    """A cord's strength written down as its pull; with ten points each answer has its own."""
    words = [
        each.removesuffix("\u00a0–\u00a0method") for each, _ in said("feeder-cord-strength", 10)
    ]
    assert "T_1 = S_1 used and force balance along x" in words
    assert "T_2 = S_2 used and force balance along x" in words
    assert "W = m g used" in words
    marks = scheme(problem("feeder-cord-strength").plan, USUAL, 10)
    assert [mark.quantities for mark in marks[-3:]] == [("mass",), ("T_1",), ("T_2",)]


def test_a_size_and_a_direction_that_are_asked_are_two_answers() -> None:
    """Ten marks of a point each, so that no two of them share one."""
    marks = scheme(problem("stepladder-tie").plan, USUAL, 10)
    assert [mark.kinds for mark in marks[-2:]] == [("magnitude",), ("direction",)]
    assert {mark.points for mark in marks} == {1}


def test_a_load_that_grows_has_a_mark_for_its_resultant() -> None:
    assert ("size and place of the resultant F\u00a0–\u00a0method", 1) in said(
        "gate-under-water", 10
    )
    words = [each for each, _ in said("balcony-built-in", 10)]  # an even load
    assert not any("resultant" in each for each in words)


def test_a_resultant_that_is_asked_has_the_marks_of_a_result() -> None:
    source = OWN["gate-under-water"].read_text(encoding="utf-8")
    asked = read_template(source + '[[find]]\nquantity = "F"\n', "asked")
    kinds = {kind for mark in scheme(prepare(asked, USUAL).plan, USUAL, 20) for kind in mark.kinds}
    assert "resultant" not in kinds


def test_marks_say_whose_balance_is_meant_where_there_are_several_bodies() -> None:
    told = " ".join(words for words, _ in said("painter-board-seat", 12))
    assert "on the worker and the board as one body along y" in told
    assert "on the worker along y" in told
    assert " on " not in " ".join(words for words, _ in said("crate-ramp-strap", 12))


def test_a_condition_that_is_its_own_result_earns_for_being_used() -> None:
    """The plank that lifts off: N_A = 0 is no more than written down."""
    told = " ".join(words for words, _ in said("trestle-plank-walk", 10))
    assert "N_A = 0" in told
    assert "N_A from" not in told
