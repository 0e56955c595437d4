"""Solved forces as they are drawn: size, way, length of the arrow, marks of a pair."""

from __future__ import annotations

import pytest

from probgen.figures.measured.survey import survey
from probgen.figures.measured.vector import Vector, arrow_length, pair_marks, resultant, vectors
from tests.figures.sketches import BEAM, HINGED, STACK, read

TEXT = HINGED.replace("WAY", "120")


def found(**solved: float) -> dict[str, Vector]:
    system, values, _ = read(TEXT)
    names = {"R_x": "R.x", "R_y": "R.y"}
    known = {**values, "W": 117.6, **{names.get(id, id): value for id, value in solved.items()}}
    return {each.id: each for each in vectors(survey(system, known), system.bodies[0])}


def test_a_negative_value_turns_the_arrow_and_not_the_size() -> None:
    there, back = found(T=50.0, R_x=10.0, R_y=20.0), found(T=50.0, R_x=-10.0, R_y=20.0)
    assert (there["R.x"].direction, back["R.x"].direction) == (0.0, 180.0)
    assert there["R.x"].size == back["R.x"].size == 10.0
    assert there["T"].direction == pytest.approx(120.0)
    assert there["T"].at == 3 + 0j


def test_a_force_that_vanishes_is_no_vector() -> None:
    assert "R.x" not in found(T=50.0, R_x=0.0, R_y=20.0)


def test_a_force_without_a_value_is_middling_and_no_component() -> None:
    vector = found(T=50.0, R_y=20.0)["R.x"]
    assert vector.size == pytest.approx(0.3 * 117.6)
    assert vector.part == "unsolved"


def test_the_whole_of_a_hinge_s_force_by_pythagoras() -> None:
    system, _, _ = read(TEXT)
    solved = found(T=50.0, R_x=30.0, R_y=40.0)
    whole = resultant(system.element("R"), [solved["R.x"], solved["R.y"]])
    assert whole.size == pytest.approx(50.0)
    assert whole.direction == pytest.approx(53.1301, abs=1e-4)  # atan(4/3)
    assert whole.symbol == "R"


def test_length_rises_with_the_square_root_of_the_size() -> None:
    none, quarter, whole = (arrow_length(size, 100.0) for size in (0.0, 25.0, 100.0))
    assert none < quarter < whole
    assert quarter - none == pytest.approx((whole - none) / 2)


def test_action_and_reaction_have_one_mark() -> None:
    system, _, _ = read(STACK)
    marks = pair_marks(system)
    assert list(marks.values()) == [1, 1]
    (one, other) = marks
    assert system.force(one).pair == other
    assert pair_marks(read(BEAM)[0]) == {}
