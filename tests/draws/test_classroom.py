"""Of what is offered a student takes what suits the class: neighbours, classmates, the range."""

from collections.abc import Mapping, Sequence

import numpy as np
import pytest

from probgen.draws.classroom import SAFE, Classroom, in_a_row
from probgen.draws.nearness import Answers

ROW = in_a_row(["a", "b", "c", "d"])


def answers(*values: float, turning: bool = False) -> Answers:
    """One answer a draw; each may be off by 1."""
    column = np.array(values, dtype=float)[:, None]
    return Answers(column, np.ones_like(column), (turning,))


def room(there: Mapping[str, float], turning: bool = False) -> Classroom:
    """Answers from 0 to 100, or directions either way of 180; there: those who have numbers."""
    probes = answers(180.0, 135.0, -135.0, turning=True) if turning else answers(0.0, 100.0)
    made = Classroom(ROW.beside, probes)
    for student, value in there.items():
        made.seat(student, answers(value, turning=turning))
    return made


def chosen(there: Mapping[str, float], offered: Sequence[float], turning: bool = False) -> int:
    return room(there, turning).choose("b", answers(*offered, turning=turning)).place


def test_in_a_row_those_beside_are_neighbours() -> None:
    assert ROW.beside == {"a": ("b",), "b": ("a", "c"), "c": ("b", "d"), "d": ("c",)}
    assert in_a_row(["a"]).beside == {"a": ()}


CHOICES = {
    "the first of equals": ({}, [50.0, 50.0, 5.0], 0),
    "away from a neighbour": ({"a": 20.0}, [21.5, 23.5, 19.0], 1),
    "away from both neighbours": ({"a": 20.0, "c": 30.0}, [22.0, 29.0, 26.0], 2),
    "as far as it matters, which is 5, and then the range": (
        {"a": 20.0, "d": 47.0},
        [45.0, 14.5],
        1,
    ),
    "from who is no neighbour only not to copy": ({"d": 20.0}, [20.5, 21.5], 1),
    "rather near a classmate than a neighbour": ({"a": 20.0, "d": 60.0}, [21.5, 60.0], 1),
    "from a classmate rather than far from a neighbour": (
        {"a": 20.0, "d": 60.0},
        [60.0, 20.0 + SAFE],
        1,
    ),
    "farther from a neighbour rather than where the range is used least": (
        {"a": 19.0, "d": 27.0},
        [16.0, 24.5],
        1,
    ),
    "away from many rather than few": ({"d": 20.0, "c": 60.0, "a": 20.0}, [22.0, 66.0], 1),
    "where the range is used least": ({"d": 25.0}, [23.0, 61.0], 1),
}


@pytest.mark.parametrize(("there", "offered", "place"), CHOICES.values(), ids=CHOICES)
def test_choice(there: dict[str, float], offered: list[float], place: int) -> None:
    assert chosen(there, offered) == place


STEPS = {
    "nobody beside": ({"d": 20.0}, SAFE),
    "whole tolerances to the nearest": ({"a": 57.0, "c": 52.9}, 2),
    "as far as is safe": ({"a": 60.0, "c": 30.0}, SAFE),
    "none": ({"a": 50.9}, 0),
}


@pytest.mark.parametrize(("there", "steps"), STEPS.values(), ids=STEPS)
def test_how_far_the_nearest_neighbour_is(there: dict[str, float], steps: int) -> None:
    assert room(there).choose("b", answers(50.0)) == (0, steps)


def test_the_range_is_that_of_the_probes_and_its_ends_hold_what_is_beyond() -> None:
    """Ten parts of 10: 97 and 130 lie in the last one."""
    assert chosen({"d": 130.0}, [97.0, 85.0]) == 1
    assert chosen({"d": -30.0}, [3.0, 15.0]) == 1


def test_a_range_of_directions_goes_on_behind() -> None:
    """From 135 by 180 to 225 degrees, which is -135: ten parts of 9."""
    assert chosen({"d": 178.5}, [176.5, 181.5], turning=True) == 1
    assert chosen({"d": -175.0}, [-177.5, 176.0], turning=True) == 1
    assert chosen({"a": 179.0}, [-179.5, 165.0], turning=True) == 1


def test_an_answer_that_never_changes_is_no_matter() -> None:
    """All in one part, whatever the class has."""
    made = Classroom(ROW.beside, answers(7.0, 7.0))
    made.seat("a", answers(7.0))
    assert made.choose("b", answers(7.0, 7.0)).place == 0


def test_nothing_asked_leaves_the_first() -> None:
    nothing = Answers(np.zeros((2, 0)), np.zeros((2, 0)), ())
    made = Classroom(ROW.beside, nothing)
    made.seat("a", nothing.rows([0]))
    assert made.choose("b", nothing).place == 0
