"""Pulls of one rope: which face each other, and where a rope leaves a pulley."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import dot
from probgen.figures.situation.rope import WHEEL, facing, is_jointed, pulls_of, touching, turned
from tests.figures.rope_sketches import FRAME, PLANK, TOWARD
from tests.figures.sketches import read, surveyed


def test_a_rope_turns_where_it_leaves_a_point_two_ways() -> None:
    template, values, _ = read(FRAME.replace("TOWARD", TOWARD))
    measured = surveyed(template, values)
    beside = turned(measured)
    assert beside.keys() == {"S.2", "S.3"}
    assert beside["S.2"] == pytest.approx(WHEEL)  # down on the right, as it goes on to the left
    assert abs(beside["S.3"]) == pytest.approx(WHEEL)
    assert beside["S.3"].real < 0 < beside["S.3"].imag
    assert is_jointed(template.system, "C")
    assert not is_jointed(template.system, "M")


def test_the_pull_that_faces_another_is_found() -> None:
    template, values, _ = read(FRAME.replace("TOWARD", TOWARD))
    measured = surveyed(template, values)
    load, down, aside = (template.system.element(id) for id in ("S", "S.2", "S.3"))
    assert facing(measured, load, measured.places) == down
    assert facing(measured, aside, measured.places) is None
    assert pulls_of(measured, load) == [load, down, aside]


def test_two_upright_parts_face_nothing_and_turn_nowhere() -> None:
    template, values, _ = read(PLANK)
    measured = surveyed(template, values)
    assert turned(measured) == {}
    assert facing(measured, template.system.element("T"), measured.places) is None


@pytest.mark.parametrize("beside", [9, -9, 9j])
def test_a_rope_leaves_the_rim_along_its_tangent(beside: complex) -> None:
    start = touching(5j, beside, 80 - 60j)
    assert abs(start - 5j) == pytest.approx(9.0)
    assert dot(start - 5j, 80 - 60j - start) == pytest.approx(0.0, abs=1e-9)
    assert dot(start - 5j, beside) > 0


def test_a_spot_within_the_rim_is_run_to_from_its_side() -> None:
    assert touching(0j, 9, 3j) == 9
