"""What a student could believe: signs, sizes and places, on situations worked by hand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from probgen.mistakes.belief import as_told, believable, places, possible
from probgen.mistakes.variant import Misstep
from probgen.quantities.expression import Name, evaluate, number
from probgen.working.case import Case
from tests.situations import SHELF, STAYED_SHELF, TWO_BEAMS, worked

SHELF_CASE = worked(STAYED_SHELF)[1].case  # T = 190.58 N, R_x = 145.99 N, R_y = -4.90 N
BEAMS = worked(TWO_BEAMS)[1].case  # M_A = 98.0 N m
MOVABLE = (
    SHELF.replace("[points]", '[unknown]\nx = { name = "place", unit = "m" }\n[points]')
    .replace('C = ["d", 0]', 'C = ["x", 0]')
    .replace("uniform = true", 'at = "A"')
    + """
[[cable]]
at = "C"
direction = 90
symbol = "T"
[[find]]
quantity = "x"
"""
)
"""The shelf hung from one cable, whose place is sought: 78.4 N 1.20 m = 117.6 N x, x = 0.80 m."""
SOUGHT = worked(MOVABLE)[1].case


def is_possible(case: Case, answer: str, value: float) -> bool:
    return bool(possible(case.system, answer, case.values[answer], value))


def is_believed(case: Case, misstep: Misstep, found: dict[str, float]) -> bool:
    return bool(believable(case.system, misstep, case.values, found, places(case.system)))


SIZES = [
    (15.0, True),  # times the right one
    (15.1, False),
    (1 / 15.0, True),
    (1 / 15.1, False),
    (9.8, True),  # a mass for a weight
    (1 / 9.8, True),
    (-1.0, False),
    (-2.0, False),
    (float("nan"), False),
    (float("inf"), False),
]


@pytest.mark.parametrize(("times", "believed"), SIZES)
def test_a_pull_of_another_sign_or_fifteen_times_too_large_is_noticed(
    times: float, believed: bool
) -> None:
    assert is_possible(SHELF_CASE, "T", SHELF_CASE.values["T"] * times) is believed


def test_a_push_whose_way_is_told_is_not_believed_the_other_way() -> None:
    """A hand pushes down on the end of the shelf; a cable's pull is no matter of being told."""
    text = (
        SHELF
        + """
[[hinge]]
at = "A"
symbol = "R"
[[force]]
at = "B"
direction = 90
symbol = "P"
[[find]]
quantity = "P"
"""
    )
    case = worked(text)[1].case
    right = case.values["P"]
    assert right > 0.0
    assert not as_told(case.system, "P", right, -0.5 * right)
    assert as_told(case.system, "P", right, 2.0 * right)
    assert as_told(case.system, "P", -right, -2.0 * right)  # it acts against what was told
    assert as_told(case.system, "R.y", right, -right)
    assert not is_believed(case, Misstep("any", worked(text)[0].plan), {"P": -0.5 * right})


def test_a_component_may_turn_or_vanish() -> None:
    for value in (-145.99, 0.0, 1e4, -1e4):
        assert is_possible(SHELF_CASE, "R.x", value)
    assert not is_possible(SHELF_CASE, "R.x", float("nan"))
    assert not is_possible(SHELF_CASE, "R.magnitude", 16 * 146.1)


def test_a_couple_is_as_likely_one_way_round_as_the_other() -> None:
    assert BEAMS.values["M_A"] == pytest.approx(98.0)
    assert is_possible(BEAMS, "M_A", -98.0)
    assert is_possible(BEAMS, "M_A", -98.0 / 14.9)
    for times in (15.1, -15.1, 1 / 15.1, -1 / 15.1):
        assert not is_possible(BEAMS, "M_A", 98.0 * times)


def test_a_right_answer_of_nothing_has_no_size_to_compare_with() -> None:
    still = Case(
        SHELF_CASE.plan, SHELF_CASE.labels, SHELF_CASE.numbers, {**SHELF_CASE.values, "T": 0.0}
    )
    assert is_possible(still, "T", 1e6)
    assert not is_possible(still, "T", -1.0)


def test_a_place_that_is_sought_lies_on_the_body() -> None:
    ((reach, whole),) = places(SOUGHT.system)
    assert float(evaluate(reach, SOUGHT.values)) == pytest.approx(0.80)
    assert float(evaluate(whole, SOUGHT.values)) == pytest.approx(1.20)
    assert places(SHELF_CASE.system) == ()
    slip = Misstep("own", SOUGHT.plan)
    for x, believed in ((0.0, True), (0.5, True), (1.2, True), (1.21, False), (-0.01, False)):
        assert is_believed(SOUGHT, slip, {"x": x}) is believed


def test_nobody_goes_on_with_a_pull_below_zero() -> None:
    slip = Misstep("own", SHELF_CASE.plan)
    assert is_believed(SHELF_CASE, slip, {"T": 10.0, "R.x": -5.0})
    assert not is_believed(SHELF_CASE, slip, {"T": -10.0, "R.x": 5.0})
    assert is_believed(SHELF_CASE, slip, {"W_s": -5.0})  # which is given


def test_what_comes_after_a_wrong_answer_is_looked_at_too() -> None:
    """Whoever comes to a cable that pushes in the end goes back to the hinge."""
    for case, found in ((SHELF_CASE, {"R.x": -5.0, "T": -10.0}), (SOUGHT, {"R.y": 1.0, "x": 1.3})):
        slip = Misstep("own", case.plan)
        assert not is_believed(case, slip, found)
        assert is_believed(case, slip, {id: abs(found[id]) / 2 for id in found})


def test_every_student_of_a_class_is_judged_by_their_own_numbers() -> None:
    system, right = SHELF_CASE.system, np.array([100.0, 10.0, 100.0])
    found = np.array([90.0, 160.0, -90.0])
    assert possible(system, "T", right, found).tolist() == [True, False, False]
    slip = Misstep("own", SHELF_CASE.plan, only_if=Name("L", "L"))
    columns = {"R.x": found, "T": np.array([5.0, -1.0, 5.0])}
    lengths = {"L": np.array([1.0, 1.0, 0.0])}
    made = believable(system, slip, lengths, columns, ())
    assert made.tolist() == [True, False, False]


@pytest.mark.parametrize(("height", "made"), [(1, True), (0, False), (-1, False)])
def test_a_slip_is_made_only_where_its_condition_holds(height: int, made: bool) -> None:
    slip = replace(Misstep("own", SHELF_CASE.plan), only_if=number(height))
    assert is_believed(SHELF_CASE, slip, {"T": 10.0}) is made
