"""Flat parts and wires where they lie, in metres."""

from __future__ import annotations

import pytest

from probgen.figures.measured.flat import Flat, Run, flat_of
from tests.bank.test_shape import PLATE, VALUES, part, read
from tests.figures.sketches import surveyed


def flat(*parts: str) -> Flat | None:
    template = read(PLATE + "".join(parts))
    return flat_of(surveyed(template, {**VALUES, "g": 9.8}), template.system.bodies[0])


def area(run: Run) -> float:
    """By the cross products of its corners, whichever way it runs."""
    pairs = zip(run, (*run[1:], run[0]), strict=True)
    return abs(sum((one.conjugate() * other).imag for one, other in pairs)) / 2


RADIUS = 'radius = "r"'
SHAPES = [
    ('rectangle = ["A", "D"]', 1.6 * 0.9),
    ('triangle = ["D", "O", "B"]', 1.6 * 0.9 / 2),
    (f'circle = "Q"\n{RADIUS}', 3.1416 * 0.25**2),
    (f'half_circle = "Q"\n{RADIUS}\nfacing = "left"', 3.1416 * 0.25**2 / 2),
]


@pytest.mark.parametrize(("shape", "size"), SHAPES)
def test_parts_and_holes_are_drawn_as_large_as_they_are(shape: str, size: float) -> None:
    made = flat(part(shape), part(shape, symbol="W_2", more="hole = true"))
    assert made is not None
    assert (len(made.parts), len(made.holes), made.wires) == (1, 1, ())
    assert area(made.parts[0]) == pytest.approx(size, rel=6e-3)
    assert made.holes == made.parts


def test_half_a_disc_lies_on_the_side_it_faces() -> None:
    for facing, way in (("right", 1), ("up", 1j), ("left", -1), ("down", -1j)):
        made = flat(part(f'half_circle = "Q"\n{RADIUS}\nfacing = "{facing}"'))
        assert made is not None
        steps = [(place - (1.6 / 3 + 0.45j)) / way for place in made.parts[0]]
        assert min(step.real for step in steps) == pytest.approx(0.0, abs=1e-9)
        assert max(step.real for step in steps) == pytest.approx(0.25)


def test_wires_run_from_end_to_end() -> None:
    straight = part('wire = ["O", "D"]', 'per_length = "q"')
    made = flat(straight, part(f'half_ring = "D"\n{RADIUS}', 'per_length = "q"', "W_2"))
    assert made is not None
    assert made.parts == made.holes == ()
    assert made.wires[0] == (0j, 1.6 + 0j)
    assert made.wires[1][0] == pytest.approx(1.85 + 0j)
    assert made.wires[1][-1] == pytest.approx(1.35 + 0j)
    assert made.scaled(100.0).wires[0] == (0j, 160.0 + 0j)


def test_what_weighs_without_a_shape_has_none() -> None:
    assert flat('\n[[weight]]\nat = "Q"\nforce = "80 N"\nsymbol = "W"\nof = "lamp"\n') is None
