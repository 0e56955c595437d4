"""A figure in words."""

from __future__ import annotations

import pytest

from probgen.figures.measured.alt_text import diagram_words, towards
from probgen.figures.measured.vector import Vector
from tests.figures.sketches import (
    BEAM,
    SLOPE,
    loaded,
    read,
    sketch,
)


@pytest.mark.parametrize(
    ("direction", "words"),
    [(0, "to the right"), (90, "straight up"), (359.8, "to the right"),
     (200, "down and to the left"), (315, "down and to the right"), (91, "up and to the left")],
)  # fmt: skip
def test_direction_in_words(direction: float, words: str) -> None:
    assert towards(direction) == words


def test_words_name_body_supports_and_loads() -> None:
    words = sketch(loaded("even")).words
    assert words == "The shelf is held by the support at A and carries the load at Q."


def test_words_of_a_diagram_tell_each_force_its_point_and_its_way() -> None:
    template, _, _ = read(BEAM)
    forces = [
        Vector("W", "W", 1 + 0j, 9.0, 270.0, "W"),
        Vector("T", "T_1", 3 + 0j, 9.0, 150.0, "T"),
    ]
    words = diagram_words(template.labels, template.system.bodies[0], forces, ["G", "B"])
    assert words == (
        "Free-body diagram of the shelf: W at G straight down and T_1 at B up and to the left."
    )


def test_words_of_a_particle_name_no_point() -> None:
    template, _, _ = read(SLOPE)
    forces = [Vector("W", "W", 0j, 9.0, 270.0, "W")]
    words = diagram_words(template.labels, template.system.bodies[0], forces, ["P"])
    assert words == "Free-body diagram of the crate: W straight down."
