"""Arrows of a free-body diagram: at their points, side by side where they would hide each other."""

from __future__ import annotations

from itertools import combinations

import pytest

from probgen.figures.freebody.arrows import Arrows
from probgen.figures.measured.vector import ArrowScale, Vector
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import Arrow, Path, Spot
from probgen.figures.paper.segment import crosses


def arrows_on(outline: list[Spot], *vectors: Vector, marks: dict[str, int] | None = None) -> Field:
    field = Field()
    points = [vector.at for vector in vectors]
    arrows = Arrows(field, outline, points, 1.0, ArrowScale.of(vectors), marks or {})
    arrows.add([(vector, ()) for vector in vectors])
    return field


def drawn(field: Field) -> dict[str, Arrow]:
    return {shape.tag: shape for shape in field.shapes if isinstance(shape, Arrow)}


def force(id: str, at: Spot, size: float, direction: float) -> Vector:
    return Vector(id, id, at, size, direction, id)


BEAM = [0j, 150 + 0j]
CASE: list[Spot] = [0j, 40 + 0j, 40 + 110j, 110j, 0j]


@pytest.mark.parametrize("gap", [0.0, 1.0, 3.0])
def test_weights_at_one_place_are_drawn_side_by_side(gap: float) -> None:
    found = drawn(
        arrows_on(BEAM, force("A", 70 + 0j, 9.0, 270.0), force("B", 70 + gap + 0j, 4.0, 270.0))
    )
    one, other = found["force:A"], found["force:B"]
    assert one.tail == 70 + 0j
    assert 5.0 <= abs(other.tail.real - one.tail.real) < 9.0
    assert other.tail.imag == pytest.approx(0.0)


def test_weight_hangs_from_its_point_and_hides_no_other_point() -> None:
    found = drawn(
        arrows_on(
            CASE,
            force("low", 20 + 20j, 30.0, 270.0),
            force("middle", 20 + 60j, 25.0, 270.0),
            force("top", 20 + 110j, 5.0, 270.0),
        )
    )
    points = {"low": 20 + 20j, "middle": 20 + 60j, "top": 20 + 110j}
    for id, spot in points.items():
        arrow = found[f"force:{id}"]
        assert arrow.tail.imag == pytest.approx(spot.imag)
        for other in points.values():
            on_line = abs(other.real - arrow.tail.real) < 2.5
            assert not (on_line and arrow.head.imag < other.imag < arrow.tail.imag - 2.0)


def test_push_on_a_solid_is_drawn_from_outside() -> None:
    arrow = drawn(arrows_on(CASE, force("P", 80j, 10.0, 0.0)))["force:P"]
    assert arrow.head == pytest.approx(80j)


def test_paired_force_is_marked() -> None:
    field = arrows_on(BEAM, force("N", 0j, 1.0, 90.0), marks={"N": 2})
    (mark,) = [s for s in field.shapes if s.tag == "pair:N"]
    assert isinstance(mark, Path)
    assert len(mark.lines) == 2


def test_no_arrow_crosses_another_where_another_side_is_free() -> None:
    """The pull to the left crosses the push at the foot, unless that comes from below."""
    found = drawn(
        arrows_on(
            [0j, 30 + 100j],
            force("W", 40j + 12, 30.0, 270.0),
            force("N", 0j, 40.0, 90.0),
            force("T", 9 + 30j, 25.0, 180.0),
        )
    )
    for one, other in combinations(found.values(), 2):
        ends = [(arrow.tail.real, arrow.tail.imag, arrow.head.real, arrow.head.imag)
                for arrow in (one, other)]  # fmt: skip
        assert not crosses(*ends)
