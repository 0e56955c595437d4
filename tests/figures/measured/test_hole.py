"""How far a hole is from the corners of its plate, where lengths say that which no step is."""

from __future__ import annotations

import pytest

from probgen.figures.measured.hole import hole_lengths
from probgen.figures.measured.survey import spans
from tests.figures.seen import dimension_ends
from tests.figures.sketches import read, sketch, surveyed

PLATE = """
c = { name = "distance from the right edge", choices = [0.9], unit = "m" }
e = { name = "height of the hole", choices = [0.7], unit = "m" }
r = { name = "thickness", choices = [0.7], unit = "m" }
[points]
O = [0, 0]
A = [0, "2 m"]
B = ["L", "2 m"]
D = ["L", 0]
Q = ["L - c", "e - L + 3 m"]
[body.plate]
along = ["O", "A", "B", "D", "O"]
[[cable]]
at = "A"
direction = 90
symbol = "T_A"
[[cable]]
at = "B"
direction = 90
symbol = "T_B"
[[weight]]
rectangle = ["O", "B"]
per_area = "w/(1 m)"
symbol = "W_1"
of = "plate"
[[weight]]
circle = "Q"
radius = "0.2 m"
hole = true
per_area = "w/(1 m)"
symbol = "W_2"
of = "hole"
[[find]]
quantity = "T_A"
"""


def test_the_distance_from_an_edge_is_seen_though_the_coordinate_is_a_difference() -> None:
    template, values, _ = read(PLATE)
    (span,) = hole_lengths(surveyed(template, values), {"L"})
    assert (span.id, span.start.imag, span.end.imag) == ("c", 0.0, 0.0)  # from the nearest corner
    assert (span.start.real, span.end.real) == pytest.approx((3.0, 2.1))


def test_what_only_happens_to_be_as_long_is_no_distance() -> None:
    """The hole is 0.7 m up, by e and L; so thick, r, is the plate, and e says it with L alone."""
    template, values, _ = read(PLATE)
    found = {span.id for span in hole_lengths(surveyed(template, values), ())}
    assert found.isdisjoint({"e", "r"})
    template, values, _ = read(PLATE.replace("e - L + 3 m", "e"))
    found = {span.id for span in hole_lengths(surveyed(template, values), ())}
    assert found == {"c", "e"}


def test_what_is_seen_elsewhere_is_not_told_again() -> None:
    template, values, _ = read(PLATE.replace('"L - c"', '"c"'))
    measured = surveyed(template, values)
    seen = {span.id for span in spans(measured)}
    assert "c" in seen
    assert "c" not in {span.id for span in hole_lengths(measured, seen)}


def test_a_plate_without_a_hole_tells_of_none() -> None:
    whole = PLATE[: PLATE.index("[[weight]]\ncircle")] + PLATE[PLATE.index("[[find]]") :]
    template, values, _ = read(whole)
    assert list(hole_lengths(surveyed(template, values), ())) == []


def test_the_figure_has_it_as_long_as_it_is() -> None:
    scene = sketch(PLATE)
    one, other = dimension_ends(scene, "c")
    assert abs(one - other) == pytest.approx(0.9 * scene.scale)
