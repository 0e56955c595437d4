"""What a key tells of the slips in our own templates: nothing that nobody would believe."""

from __future__ import annotations

import pytest

from probgen.mistakes.comparison import CLEAR, Slip, likely
from probgen.problem.problem import Worked
from probgen.quantities.expression import Name
from probgen.statics.system import Kind
from probgen.working.tolerance import half_width
from tests.mistakes.supplied import OWN, problem, told, works

DRAWS = 100
PAINTER, BOX, PORCH = "painter-board-seat", "box-pulled-from-under", "porch-roof-snow"
BOOKCASE, RAISED = "bookcase-centre-tilt", "plank-raised-slowly"

NEVER = [
    ("reaction-board", "inverted_arm_ratio"),  # three torques; 10 m on a board of 2 m
    (PORCH, "inverted_arm_ratio"),
    ("gate-two-hinges", "inverted_arm_ratio"),
    ("wheelbarrow-compost", "inverted_arm_ratio"),
    ("table-pulley-sand", "tension_equals_load"),  # of what is on the bench nothing hangs
    (BOX, "tension_equals_load"),
    ("buoy-current", "tension_equals_load"),  # the chain pulls the buoy down
    ("mast-guy-wind", "tension_equals_load"),
    ("ferry-bollard", "tension_equals_load"),
    ("garland-two-lanterns", "equal_sharing"),  # the middle part pulls the left knot down
]


@pytest.mark.parametrize(("name", "slip"), NEVER)
def test_what_is_no_slip_is_not_told(name: str, slip: str) -> None:
    assert all(slip not in (each.id, *each.alike) for slipped in told(name) for each in slipped)


LAST = [
    ("crate-ramp-strap", "tension_equals_load"),  # the ramp bears most of it
    ("trough-ramp-winch", "tension_equals_load"),
    ("ladder-tied", "tension_equals_load"),
    ("pipe-in-cradle", "normal_is_weight"),  # as on level ground, with two faces to lie on
    ("gable-board-ropes", "tension_equals_load"),  # the board hangs from two ropes
    ("sign-l-plate", "tension_equals_load"),
    ("ladder-carried", "equal_sharing"),  # it is stated how the two share
    ("reaction-board", "torque_sign"),  # board and person on one side of the pivot
    ("safety-valve-lever", "torque_sign"),
    ("buoy-current", "balance_sign"),  # two others are told
    ("balcony-built-in", "torque_sign"),
]


@pytest.mark.parametrize(("name", "slip"), LAST)
def test_what_few_believe_has_a_name_and_is_not_told(name: str, slip: str) -> None:
    assert any(each.id == slip for slipped in told(name) for each in slipped)
    assert all(each.id != slip for slipped in told(name) for each in likely(slipped))


def test_a_force_that_turns_back_alone_may_be_taken_the_wrong_way_round() -> None:
    """The strap's pull on the lower leg, which is up where all else is down."""
    made = [m for m in problem("leg-traction").missteps[0] if m.slip == "torque_sign"]
    assert any(not each.unlikely for each in made)


def test_a_push_many_times_a_weight_is_not_taken_for_it() -> None:
    """A press pushes back with ten times the weight of its ram."""
    assert all(each.id != "normal_is_weight" for own in told("press-toggle-tiles") for each in own)
    (way,) = {m.way for own in problem("press-toggle-tiles").missteps for m in own
              if m.slip == "normal_is_weight"}  # fmt: skip
    assert way == "pull"


def test_what_hangs_is_taken_for_the_tension() -> None:
    """Beside a hinge, at a knot, and on a drum that two ends of a band hold."""
    for name in ("beam-stay-cable", "lantern-two-cords", "band-brake-hoist"):
        assert all("tension_equals_load" in [s.id for s in likely(own)] for own in told(name))


NOTHING = [
    ("road-sign-wind", "R.y", "own_weight_forgotten"),
    ("gate-under-water", "R.y", "own_weight_forgotten"),
    ("gate-two-hinges", "R_1.x", "hinge_vertical_only"),
]


@pytest.mark.parametrize(("name", "answer", "slip"), NOTHING)
def test_no_key_tells_that_what_is_asked_for_is_nothing(name: str, answer: str, slip: str) -> None:
    for slipped in told(name):
        none = [each for each in slipped if each.answer == answer and each.value == 0.0]
        assert [each.id for each in none] == [slip]
        assert not {id(each) for each in none} & {id(each) for each in likely(slipped)}


def test_nobody_forgets_the_painter() -> None:
    (every,) = problem(PAINTER).missteps
    heavy = [m for m in every if m.slip == "own_weight_forgotten" and m.only_if is not None]
    shown = [each for slipped in told(PAINTER) for each in slipped]
    weights = {str(each.misstep.parts["W"]) for each in shown if each.id == "own_weight_forgotten"}
    assert len(heavy) == 2
    assert len(weights) == 1
    assert "W_b" in weights.pop()


def test_nobody_sits_beyond_the_plank() -> None:
    """The pivot is in the middle of 4.00 m."""
    for slipped in told("seesaw-two-riders", 40):
        assert all(each.value <= 2.0 for each in slipped if each.answer == "distance_2")


def test_a_printed_distance_is_overlooked_last() -> None:
    """The forearm's centre of mass has a distance of its own, the board's is in its middle."""
    for name, unlikely in (("forearm-load", True), ("diving-board", False)):
        missteps = [m for own in problem(name).missteps for m in own]
        made = [m for m in missteps if m.slip == "whole_length_for_weight"]
        assert {each.unlikely for each in made} == {unlikely}


def wrong(own: Worked, each: Slip) -> str:
    """What would be noticed in a slip that is told; "" where nothing would."""
    right, variable = own.case.values[each.answer], own.case.system.variables.get(each.answer)
    if variable is not None and variable.nonnegative and each.value <= 0.0:
        return "below zero"
    told = any(
        force.kind is Kind.FORCE and force.magnitude.id == each.answer
        for force in own.case.system.forces
        if isinstance(force.magnitude, Name)
    )
    if told and each.value < 0.0 < right:
        return "the other way than told"
    small = variable is None or variable.id.endswith((".x", ".y")) or not right
    if not small and not 1 / 15 <= abs(each.value / right) <= 15:
        return "size"
    gap = abs(each.value - right)
    if each.answer.endswith(".direction"):
        gap = abs((gap + 180.0) % 360.0 - 180.0)
    return "" if gap > CLEAR * half_width(own.digits, each.answer) else "near the right one"


@pytest.mark.proof
@pytest.mark.parametrize("name", OWN)
def test_two_slips_at_least_can_be_told_of_every_draw(name: str) -> None:
    for own, slipped in zip(works(name, DRAWS), told(name, DRAWS), strict=True):
        chosen = likely(slipped)
        assert len(chosen) >= 2, own.draw
        assert [wrong(own, each) for each in chosen] == [""] * len(chosen)


@pytest.mark.parametrize("name", [PAINTER, BOOKCASE, RAISED, "ring-three-ropes"])
def test_two_slips_where_there_was_one(name: str) -> None:
    assert all(len(likely(slipped)) >= 2 for slipped in told(name))
