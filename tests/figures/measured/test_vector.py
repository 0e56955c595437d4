"""Solved forces as they are drawn: size, way, length of the arrow, marks of a pair."""

from __future__ import annotations

import pytest

from probgen.figures.measured.vector import ArrowScale, Vector, pair_marks, resultant, vectors
from tests.figures.sketches import BEAM, HINGED, STACK, read, surveyed

TEXT = HINGED.replace("WAY", "120")


def found(**solved: float) -> dict[str, Vector]:
    template, values, _ = read(TEXT)
    names = {"R_x": "R.x", "R_y": "R.y"}
    known = {**values, "W": 117.6, **{names.get(id, id): value for id, value in solved.items()}}
    acting = vectors(surveyed(template, known), template.system.bodies[0])
    return {each.id: each for each in acting}


def test_a_negative_value_is_drawn_as_assumed_and_known_to_be_so() -> None:
    there, back = found(T=50.0, R_x=10.0, R_y=20.0), found(T=50.0, R_x=-10.0, R_y=20.0)
    assert there["R.x"].direction == back["R.x"].direction == 0.0
    assert there["R.x"].size == back["R.x"].size == 10.0
    assert (there["R.x"].sign, back["R.x"].sign) == (1, -1)
    assert there["T"].direction == pytest.approx(120.0)
    assert there["T"].at == 3 + 0j


def test_a_force_that_vanishes_is_drawn_as_the_text_names_it() -> None:
    assert found(T=50.0, R_x=0.0, R_y=20.0)["R.x"].sign == 0


def test_a_force_without_a_value_is_middling() -> None:
    vector = found(T=50.0, R_y=20.0)["R.x"]
    assert vector.size == pytest.approx(0.3 * 117.6)
    assert vector.sign == 0


def test_the_whole_of_a_hinge_s_force_by_pythagoras() -> None:
    template, _, _ = read(TEXT)
    solved = found(T=50.0, R_x=30.0, R_y=40.0)
    whole = resultant(template.labels.whole("R"), [solved["R.x"], solved["R.y"]])
    assert whole.size == pytest.approx(50.0)
    assert whole.direction == pytest.approx(53.1301, abs=1e-4)  # atan(4/3)
    assert whole.symbol == "R"


def sized(*sizes: float) -> list[Vector]:
    return [Vector("F", "F", 0j, size, 0.0, "F") for size in sizes]


def test_lengths_are_in_proportion_where_the_least_can_be_seen() -> None:
    lengths = ArrowScale.of(sized(30.0, 60.0, 100.0))
    assert lengths.linear
    assert lengths.length(30.0) == pytest.approx(0.3 * lengths.length(100.0))


def test_else_they_rise_with_the_square_root() -> None:
    lengths = ArrowScale.of(sized(5.0, 100.0))
    assert not lengths.linear
    none, quarter, whole = map(lengths.length, (0.0, 25.0, 100.0))
    assert none < quarter < whole
    assert quarter - none == pytest.approx((whole - none) / 2)


def test_action_and_reaction_have_one_mark() -> None:
    system = read(STACK)[0].system
    marks = pair_marks(system)
    assert list(marks.values()) == [1, 1]
    (one, other) = marks
    assert system.force(one).pair == other
    assert pair_marks(read(BEAM)[0].system) == {}
