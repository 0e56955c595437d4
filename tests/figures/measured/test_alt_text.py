"""A figure in words, and in facts before."""

from __future__ import annotations

import pytest

from probgen.figures.measured.alt_text import diagram_shown, roughly, situation_shown
from probgen.figures.measured.vector import Vector
from probgen.statics.system import Kind
from probgen.working.direction import Way
from probgen.working.figure import Acting, BodyShown
from tests.figures.sketches import (
    BEAM,
    SLOPE,
    loaded,
    read,
    sketch,
    template_of,
)
from tests.figures.telling import telling


@pytest.mark.parametrize(
    ("direction", "way"),
    [
        (0, Way(0, False, True)),
        (90, Way(1, True, True)),
        (359.8, Way(0, False, True)),
        (200, Way(None, False, False)),
        (315, Way(None, False, True)),
        (91, Way(None, True, False)),
        (180.4, Way(2, True, False)),
    ],
)
def test_roughly_which_way(direction: float, way: Way) -> None:
    told = roughly(direction)
    assert told.quarter == way.quarter
    assert way.quarter is not None or told == way


def test_facts_name_body_supports_and_loads_by_their_ids() -> None:
    shown = situation_shown(template_of(loaded("even")).system)
    held, load = Acting("R", Kind.FIXED, "A"), Acting("Q_s", Kind.DISTRIBUTED, "Q")
    assert shown.bodies == (BodyShown("shelf", (held,), (load,)),)


def test_words_name_body_supports_and_loads() -> None:
    words = sketch(loaded("even")).words
    assert words == "The shelf is held by the support at A and carries the load at Q."


def test_words_of_a_diagram_tell_each_force_its_point_and_its_way() -> None:
    template, _, _ = read(BEAM)
    forces = [
        Vector("W", "W", 1 + 0j, 9.0, 270.0, "W"),
        Vector("T", "T_1", 3 + 0j, 9.0, 150.0, "T"),
    ]
    words = telling(template)(diagram_shown(template.system.bodies[0], forces, ["G", "B"]))
    assert words == (
        "Free-body diagram of the shelf: W at G straight down and T_1 at B up and to the left."
    )


def test_words_of_a_particle_name_no_point() -> None:
    template, _, _ = read(SLOPE)
    forces = [Vector("W", "W", 0j, 9.0, 270.0, "W")]
    words = telling(template)(diagram_shown(template.system.bodies[0], forces, ["P"]))
    assert words == "Free-body diagram of the crate: W straight down."
