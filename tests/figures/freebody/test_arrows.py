"""Arrows of a free-body diagram: on their lines of action, none hiding another."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations

import pytest

from probgen.figures.freebody.arrows import Arrows, _clash, _covers, distance
from probgen.figures.measured.vector import ArrowScale, Vector
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import HEAVY, Arrow, Path, Spot, heading
from probgen.figures.paper.segment import crosses


def arrows_on(
    outline: list[Spot],
    *vectors: Vector,
    marks: dict[str, int] | None = None,
    share: float = 1.0,
    radius: float = 0.0,
) -> Field:
    return laid_out(outline, vectors, marks or {}, share, radius).field


def laid_out(
    outline: list[Spot],
    vectors: Sequence[Vector],
    marks: dict[str, int],
    share: float = 1.0,
    radius: float = 0.0,
) -> Arrows:
    points, scale = [vector.at for vector in vectors], ArrowScale.of(vectors, share=share)
    arrows = Arrows(Field(), [outline], points, 1.0, scale, marks, radius)
    arrows.add([(vector, ()) for vector in vectors])
    return arrows


def drawn(field: Field) -> dict[str, Arrow]:
    return {str(shape.tag): shape for shape in field.shapes if isinstance(shape, Arrow)}


def force(id: str, at: Spot, size: float, direction: float) -> Vector:
    return Vector(id, id, at, size, direction, id)


BEAM = [0j, 150 + 0j]
CASE: list[Spot] = [0j, 40 + 0j, 40 + 110j, 110j, 0j]


def test_a_third_force_that_acts_alike_on_a_particle_is_drawn_beside_it() -> None:
    """At its ring, where one also ends that has to go before it."""
    alike = [force(id, 0j, size, 270.0) for id, size in (("A", 9.0), ("B", 8.0), ("C", 7.0))]
    found = drawn(arrows_on([0j], *alike, radius=8.0))
    assert found["force:A"].tail == 0j
    assert found["force:B"].head == pytest.approx(8j)
    third = found["force:C"].tail
    assert 5.0 <= abs(third.real) < 9.0
    assert abs(third) == pytest.approx(8.0)
    assert third.imag <= 0.0


LADDER = [-20 - 75j, 20 + 75j]
NEIGHBOURS = [
    # both from their points, they would run side by side, or the one over the point of the other
    *[(BEAM, force("A", 70 + 0j, 9.0, 270.0), force("B", 70 + gap, 4.0, 270.0))
      for gap in (0j, 1 + 0j, 3 + 0j)],
    (LADDER, force("A", 5 + 20j, 9.0, 270.0), force("B", 0j, 4.0, 270.0)),
    (CASE, force("A", 20 + 30j, 9.0, 270.0), force("B", 16 + 0j, 9.0, 90.0)),
    (CASE, force("A", 40 + 30j, 9.0, 0.0), force("B", 40 + 27j, 5.0, 0.0)),
    # both have to end at their points
    (CASE, force("A", 23 + 50j, 9.0, 270.0), force("B", 20 + 36j, 5.0, 90.0)),
]  # fmt: skip


@pytest.mark.parametrize(("outline", "one", "other"), NEIGHBOURS)
def test_every_force_on_a_body_is_drawn_on_its_line_of_action(
    outline: list[Spot], one: Vector, other: Vector
) -> None:
    """It begins or ends at its point, and lies on no other arrow."""
    found = drawn(arrows_on(outline, one, other))
    for vector in (one, other):
        arrow = found[f"force:{vector.id}"]
        assert min(abs(arrow.tail - vector.at), abs(arrow.head - vector.at)) < 1e-9
        assert (arrow.head - arrow.tail) / heading(vector.direction) == pytest.approx(
            abs(arrow.head - arrow.tail)
        )
    assert _clash(*found.values()) < 10.0


PILED = (
    force("low", 20 + 20j, 30.0, 270.0),
    force("middle", 20 + 60j, 25.0, 270.0),
    force("top", 20 + 110j, 5.0, 270.0),
)


def test_weight_hangs_from_its_point_and_hides_no_other_point() -> None:
    found = drawn(arrows_on(CASE, *PILED, share=0.64))
    for vector in PILED:
        arrow = found[f"force:{vector.id}"]
        assert arrow.tail == pytest.approx(vector.at)
        for other in PILED:
            assert not arrow.head.imag < other.at.imag < arrow.tail.imag - 2.0


def test_arrows_too_long_for_their_places_are_hemmed() -> None:
    """So that they are drawn shorter; beside a particle there is always room."""
    assert laid_out(CASE, PILED, {}).hemmed
    assert not laid_out(CASE, PILED, {}, share=0.64).hemmed
    alike = force("A", 0j, 9.0, 270.0), force("B", 0j, 4.0, 270.0)
    assert not laid_out([0j], alike, {}, radius=8.0).hemmed


def test_push_on_a_solid_is_drawn_from_outside() -> None:
    arrow = drawn(arrows_on(CASE, force("P", 80j, 10.0, 0.0)))["force:P"]
    assert arrow.head == pytest.approx(80j)


DISTANCES = [
    (5 + 3j, 3.0),  # beside it
    (-3 + 4j, 5.0),  # beyond its start
    (13 - 4j, 5.0),  # beyond its end
    (4 + 0j, 0.0),
]


@pytest.mark.parametrize(("spot", "away"), DISTANCES)
def test_distance_from_a_straight_piece(spot: Spot, away: float) -> None:
    turn = heading(50.0)
    assert distance(spot, 0j, 10 + 0j) == pytest.approx(away)
    assert distance(spot * turn, 10 * turn, 0j) == pytest.approx(away)
    assert distance(spot, 1j, 1j) == pytest.approx(abs(spot - 1j))


def cost(a: Spot, b: Spot, c: Spot, d: Spot) -> float:
    """What it costs that two arrows, from a to b and from c to d, are near each other."""
    one, other = Arrow(a, b, HEAVY), Arrow(c, d, HEAVY)
    assert _clash(one, other) == _clash(other, one)
    return _clash(one, other)


def test_what_the_nearness_of_two_arrows_costs() -> None:
    level = (0j, 40 + 0j)
    lying_on = cost(*level, 10 + 0j, 50 + 0j)
    crossing = cost(*level, 20 - 20j, 20 + 20j)
    touching = cost(*level, 20 + 3j, 20 + 40j)
    crowded = cost(*level, 7j, 40 + 7j)
    assert lying_on > crossing > touching > 0.0
    assert lying_on > crowded > 0.0
    assert cost(*level, 4.9j, 40 + 4.9j) == lying_on  # no room for a stroke between
    assert cost(*level, 5.1j, 40 + 5.1j) == cost(*level, 9.9j, 40 + 9.9j) == crowded
    assert cost(*level, 9.9j + 40, 9.9j) == crowded  # the other way round too
    for clear in (10.1j, 60 + 0j, 40 + 60j, -30 - 40j):
        assert cost(*level, clear, clear + 40) == 0.0
    assert cost(*level, 20 + 4.1j, 20 + 40j) == 0.0


def test_arrows_from_one_point_may_part() -> None:
    assert cost(0j, 40 + 0j, 0j, -40 + 0j) == 0.0  # opposed
    assert cost(0j, 40 + 0j, 0j, 40j) == 0.0
    assert cost(0j, 40 + 0j, 40j, 0j) == 0.0  # head to tail
    assert cost(0j, 40 + 0j, 0j, 30 * heading(11.0)) > 0.0  # but not so near each other
    assert cost(0j, 40 + 0j, 0j, 30 * heading(13.0)) == 0.0


def test_a_point_is_covered_between_the_ends_of_a_shaft() -> None:
    arrow = Arrow(0j, 40j, HEAVY)
    assert _covers(arrow, 20j)
    assert _covers(arrow, 2.4 + 20j)
    for clear in (1.9j, 38.1j, 2.6 + 20j, -2.6 + 20j, -5j, 45j):
        assert not _covers(arrow, clear)


def test_arrows_on_one_line_may_follow_each_other() -> None:
    lying_on = cost(0j, 40 + 0j, 0j, 40 + 0j)
    for tail, head in ((40 + 0j, 70 + 0j), (70 + 0j, 40 + 0j), (-30 + 3j, 3j), (43 - 2j, 70 - 2j)):
        assert 0.0 < cost(0j, 40 + 0j, tail, head) < 0.1 * lying_on
    for tail, head in ((38 + 0j, 70 + 0j), (70 + 0j, 38 + 0j), (-30 + 0j, 2 + 0j)):
        assert cost(0j, 40 + 0j, tail, head) == lying_on


def with_components(size: float, x: float, y: float) -> Field:
    """A force whose components are drawn about it."""
    field = Field()
    whole = force("R", 0j, size, 53.13010235415598)
    legs = (force("R.x", 0j, abs(x), 0.0), force("R.y", 0j, abs(y), 90.0))
    arrows = Arrows(field, [BEAM], [0j], 1.0, ArrowScale.of([whole]), {"R.x": 1})
    assert arrows.lengths.shows_legs(whole, legs)
    arrows.add([(whole, legs)])
    return field


def test_components_are_sides_of_the_rectangle_and_dots_complete_it() -> None:
    """3 and 4 beside 5."""
    field = with_components(5.0, 3.0, 4.0)
    found = drawn(field)
    whole, x, y = (found[tag] for tag in ("force:R", "component:R.x", "component:R.y"))
    length = abs(whole.head - whole.tail)
    assert x.head - x.tail == pytest.approx(0.6 * length)
    assert y.head - y.tail == pytest.approx(0.8j * length)
    edges = [s.lines[0] for s in field.shapes if isinstance(s, Path) and "rectangle" in str(s.tag)]
    corners = {whole.tail, whole.head, whole.tail + 0.6 * length, whole.tail + 0.8j * length}
    ends = [end for side in ((x.tail, x.head), (y.tail, y.head), *edges) for end in side]
    for end in ends:
        assert min(abs(end - corner) for corner in corners) < 1e-6
    assert len(edges) == 2
    assert len({round(end.real, 3) + 1j * round(end.imag, 3) for end in ends}) == 4
    assert len([s for s in field.shapes if str(s.tag) == "pair:R.x"]) == 1


def test_marks_lie_across_the_shaft_below_its_middle() -> None:
    field = arrows_on(BEAM, force("N", 0j, 1.0, 90.0), marks={"N": 3})
    arrow = drawn(field)["force:N"]
    (mark,) = [s for s in field.shapes if isinstance(s, Path) and str(s.tag) == "pair:N"]
    middle = arrow.tail + 0.42 * (arrow.head - arrow.tail)
    places = [(start + end) / 2 - middle for start, end in mark.lines]
    assert [place.imag for place in places] == pytest.approx([0.0, 3.0, 6.0])
    for start, end in mark.lines:
        assert abs((end - start).real) == pytest.approx(8.0)


def test_paired_force_is_marked() -> None:
    field = arrows_on(BEAM, force("N", 0j, 1.0, 90.0), marks={"N": 2})
    (mark,) = [s for s in field.shapes if str(s.tag) == "pair:N"]
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
    assert found.keys() == {"force:W", "force:N", "force:T"}  # a force tried again is still there
    for one, other in combinations(found.values(), 2):
        ends = [(arrow.tail.real, arrow.tail.imag, arrow.head.real, arrow.head.imag)
                for arrow in (one, other)]  # fmt: skip
        assert not crosses(*ends)


def test_a_pull_leaves_its_body_where_another_force_can_make_room() -> None:
    """Up a slope from a particle, though friction that acts alike is larger; and past a weight."""
    slope = heading(30.0)
    friction, pull = force("f", 0j, 9.0, 30.0), replace(force("T", 0j, 5.0, 30.0), pulls=True)
    found = drawn(arrows_on([0j], friction, pull, force("W", 0j, 9.0, 270.0), radius=8.0))
    assert found["force:T"].tail == 0j
    assert found["force:f"].head == pytest.approx(-8.0 * slope)
    weight, strap = force("W", 20 + 50j, 20.0, 270.0), replace(pull, at=14 + 30j, direction=0.0)
    found = drawn(arrows_on([0j, 40 + 100j], weight, strap))
    assert found["force:T"].tail == pytest.approx(14 + 30j)
    assert found["force:W"].head == pytest.approx(20 + 50j)


def test_the_pull_of_a_bar_never_ends_at_its_joint() -> None:
    """Where another force crosses its way, any other arrow comes to its point from behind."""
    across = force("P", 20 - 15j, 25.0, 90.0)
    pull = force("T", 0j, 25.0, 0.0)
    comes, leaves = (
        drawn(arrows_on([], across, each))["force:T"] for each in (pull, replace(pull, leaves=True))
    )
    assert comes.head == pytest.approx(0j)
    assert leaves.tail == pytest.approx(0j)
    assert leaves.head.real > 10
