"""A trolley carries its motor, a post its sign's plate; a stone is lifted at its edge."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arc, Path, Scene, bounds
from tests.figures.readings import TEMPLATES, prepared, scenes_of, solved
from tests.figures.seen import box_of, tagged


def drawn(template: str, count: int = 3) -> list[Scene]:
    problem = prepared(next(path for path in TEMPLATES if path.stem == template))
    return [scenes_of(problem, own)[0] for own in solved(problem, count)]


def test_a_motor_stands_on_its_trolley_and_its_couple_turns_about_its_shaft() -> None:
    for scene in drawn("motor-torque-base"):
        deck, *motor = tagged(scene, "body")
        box = bounds(motor)
        assert box.bottom == pytest.approx(bounds([deck]).top, abs=1.0)
        (about,) = (s for s in tagged(scene, "couple") if isinstance(s, Arc))
        shaft = motor[-1]
        assert isinstance(shaft, Arc)
        assert about.centre == shaft.centre
        assert about.radius > box.width / 2 * 0.8


def test_a_trolley_has_a_wheel_at_either_end_on_one_ground() -> None:
    for scene in drawn("motor-torque-base"):
        left, right = (box_of(scene, f"support:{id}") for id in ("N_A", "N_B"))
        assert left.bottom == pytest.approx(right.bottom)
        assert left.bottom == pytest.approx(box_of(scene, "ground").top, abs=1.5)


def test_the_plate_of_a_sign_is_where_the_wind_blows_on_it() -> None:
    for scene in drawn("road-sign-wind"):
        post, *_, plate = tagged(scene, "body")
        wind = box_of(scene, "distributed")
        low, high = bounds([plate]).bottom, bounds([plate]).top
        assert (low, high) == pytest.approx((wind.bottom, wind.top), abs=1.5)
        assert bounds([plate]).right <= bounds([post]).left + 1.0
        assert wind.right == pytest.approx(bounds([plate]).left, abs=1.0)


def test_a_stone_is_thick_and_lifted_at_its_near_edge_alone() -> None:
    for scene in drawn("crowbar-stone"):
        (stone,) = tagged(scene, "body:stone")
        assert isinstance(stone, Path)
        box, ground = bounds([stone]), box_of(scene, "ground")
        assert box.height > 12.0
        assert box.bottom > ground.top + 3.0
        low = [spot for spot in stone.lines[0] if spot.imag < box.bottom + 2.0]
        assert max(spot.real for spot in low) < box.right - 8.0
        assert min(spot.real for spot in low) < box.left + 2.0
