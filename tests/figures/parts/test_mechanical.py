"""Machine parts: drawn to the size asked for, reaching the places given."""

from __future__ import annotations

from itertools import pairwise

import pytest

from probgen.figures.paper.scene import Arc, Path, Shape, bounds, heading
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts import axes, ground, limb, mechanical, person, solid

LIBRARY = (mechanical, person, limb, solid, axes, ground)
NOT_DRAWN = {"backing"}  # what labels keep clear of behind a wall


def outline(part: tuple[Shape, ...]) -> tuple[complex, ...]:
    (shape,) = part
    assert isinstance(shape, Path)
    assert shape.closed
    return shape.lines[0]


def test_a_bent_bar_is_mitred_at_its_bend() -> None:
    """A quarter turn to the left: the inner edge meets 3 before the bend, the outer 3 beyond."""
    bent = mechanical.bar((-40 + 0j, 0j, 35j), 3.0, UNTAGGED)
    inner, outer = (-40 + 3j, -3 + 3j, -3 + 35j), (-40 - 3j, 3 - 3j, 3 + 35j)
    assert outline(bent) == pytest.approx((*inner, *reversed(outer)))


def test_a_truss_has_a_bar_for_each_member_and_a_pin_at_each_joint() -> None:
    """A walk may go along a member twice, either way."""
    shapes = mechanical.truss((0j, 40 + 0j, 20 + 30j, 0j, 40 + 0j), 2.0, UNTAGGED)
    bars = [shape for shape in shapes if isinstance(shape, Path)]
    pins = [shape.centre for shape in shapes if isinstance(shape, Arc)]
    assert len(bars) == 3
    assert sorted(pins, key=abs) == [0j, 20 + 30j, 40 + 0j]


def test_an_oblique_bend_is_mitred_along_its_bisector() -> None:
    """60 degrees to the left: the edges meet 3/cos 30 from the axis, at 120 degrees."""
    bent = mechanical.bar((-40 + 0j, 0j, 40 * heading(60.0)), 3.0, UNTAGGED)
    meeting = 3.0 / 0.8660254037844386 * heading(120.0)
    assert outline(bent)[1] == pytest.approx(meeting)
    assert outline(bent)[4] == pytest.approx(-meeting)


def test_a_bar_that_turns_back_is_no_spike() -> None:
    """A hairpin's edges meet at most 3 1/3 times its half thickness from the axis."""
    bent = mechanical.bar((-40 + 0j, 0j, 40 * heading(179.0)), 3.0, UNTAGGED)
    assert max(abs(spot) for spot in (outline(bent)[1], outline(bent)[4])) <= 10.0 + 1e-9


def test_an_axis_that_goes_back_the_way_it_came_is_drawn_in_parts() -> None:
    """Up a post and down again to a beam: each part is as broad as a bar, and no edge crosses."""
    parts = mechanical.bar((40 + 0j, 0j, 30j, 0j, -40 + 0j), 3.0, UNTAGGED)
    assert [len(outline((part,))) for part in parts] == [6, 6]
    first, second = (bounds([part]) for part in parts)
    assert (first.left, first.right) == pytest.approx((-3.0, 40.0), abs=0.6)
    assert (second.left, second.right) == pytest.approx((-40.0, 3.0), abs=0.6)


def test_a_straight_bar_is_the_same_by_whatever_points_it_is_told() -> None:
    cuts, unit = (1j, 0j), heading(45.0)
    plain = mechanical.bar((0j, 50 * unit), 3.0, UNTAGGED, cuts)
    assert mechanical.bar((0j, 20 * unit, 35 * unit, 50 * unit), 3.0, UNTAGGED, cuts) == plain
    assert len(outline(mechanical.bar((0j, 20 * unit, 50 + 0j), 3.0, UNTAGGED, cuts))) > 4


def test_an_end_is_cut_along_what_it_meets() -> None:
    """A bar at 45 degrees cut level at its foot: its edges meet the floor at 3 sqrt(2)."""
    unit = heading(45.0)
    cut = outline(mechanical.bar((0j, 50 * unit), 3.0, UNTAGGED, (1j, 0j)))
    feet = [spot for spot in cut if abs(spot.imag) < 1e-9]
    assert sorted(spot.real for spot in feet) == pytest.approx([-3 * 2**0.5, 3 * 2**0.5])
    square = [spot for spot in cut if spot not in feet]
    assert [(spot / unit).real for spot in square] == pytest.approx([50.0, 50.0])


@pytest.mark.parametrize(("length", "rungs"), [(70.0, 9), (14.0, 2), (7.0, 2), (74.0, 10)])
def test_rungs_lie_about_seven_points_apart(length: float, rungs: int) -> None:
    """And between them: none at the ends."""
    _, steps = mechanical.ladder((0j, length * 1j), 3.0, UNTAGGED, (0j, 0j))
    assert isinstance(steps, Path)
    assert len(steps.lines) == rungs
    heights = [start.imag for start, _ in steps.lines]
    apart = length / (rungs + 1)
    assert heights == pytest.approx([apart * (i + 1) for i in range(rungs)])
    assert {abs(end - start) for start, end in steps.lines} == {6.0}


@pytest.mark.parametrize("length", [20.0, 50.0, 120.0])
def test_a_spring_has_even_teeth_to_both_sides(length: float) -> None:
    (coil, fixing) = mechanical.spring(0j, length + 0j, UNTAGGED, 4.0)
    assert isinstance(coil, Path)
    _, lead, *teeth, last, _ = coil.lines[0]
    assert lead == pytest.approx(min(6.0, 0.15 * length))
    assert last == pytest.approx(length - lead)
    assert [tooth.imag for tooth in teeth] == [4.0, -4.0] * (len(teeth) // 2) + [4.0] * (
        len(teeth) % 2
    )
    gaps = {round(b.real - a.real, 6) for a, b in pairwise(teeth)}
    assert len(gaps) == 1
    assert 3.0 < gaps.pop() < 5.0 or len(teeth) == 4
    assert isinstance(fixing, Arc)
    assert fixing.centre == 0


def test_strands_lie_side_by_side_about_their_line() -> None:
    for count in (1, 2, 3):
        (rope,) = mechanical.strands(0j, 40j, count, UNTAGGED)
        assert isinstance(rope, Path)
        places = sorted(start.real for start, _ in rope.lines)
        assert sum(places) == pytest.approx(0.0)
        assert [b - a for a, b in pairwise(places)] == pytest.approx([2.6] * (count - 1))


def test_spring_runs_from_end_to_end() -> None:
    (coil, *_) = mechanical.spring(1 + 1j, 41 + 31j, UNTAGGED)
    assert isinstance(coil, Path)
    assert coil.lines[0][0] == 1 + 1j
    assert coil.lines[0][-1] == pytest.approx(41 + 31j)
