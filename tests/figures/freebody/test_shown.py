"""Arrows of several free-body diagrams: to one scale, or all of them not to scale."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.bank.depiction import Look
from probgen.figures.freebody.corner import Frame
from probgen.figures.freebody.lengths import Lengths
from probgen.figures.freebody.shown import Shown, in_proportion
from probgen.figures.freebody.solids import Solid
from probgen.figures.measured.vector import vectors
from probgen.figures.paper.scene import Arc
from probgen.statics.system import ForcePart
from tests.figures.readings import TEMPLATES, prepared, scenes_of, solved
from tests.figures.seen import tagged
from tests.figures.sketches import surveyed
from tests.situations import STAYED_SHELF, worked


def shown(*sizes: float, direction: float = 90.0, parted: bool = False) -> Shown:
    """A diagram with arrows of some forces (N)."""
    problem, own = worked(STAYED_SHELF)
    measured = surveyed(problem.template, {**own.complete})
    body = measured.system.bodies[0]
    some = vectors(measured, body)[0]
    one = replace(some, direction=direction, sign=1, part=ForcePart.WHOLE)
    forces = tuple(replace(one, id=f"F{i}", size=size) for i, size in enumerate(sizes))
    return Shown(
        measured,
        body,
        (Solid(body, Look.BEAM),),
        forces,
        Lengths(),
        Frame(),
        "",
        problem.tell,
        "counter-clockwise",
        parted,
        distorted=False,
    )


def lengths(*diagrams: Shown, share: float = 1.0) -> list[list[float]]:
    """How long the arrows are, diagram by diagram, pt."""
    found = in_proportion(diagrams, share)
    return [[each.lengths.drawn(vector) for vector in each.single] for each in found]


def to_scale(*diagrams: Shown) -> list[bool]:
    return [each.lengths.linear for each in in_proportion(diagrams, 1.0)]


def test_diagrams_have_one_scale_for_their_arrows() -> None:
    first, second = lengths(shown(40.0, 100.0), shown(40.0, 70.0))
    assert first == pytest.approx([23.2, 58.0])
    assert second == pytest.approx([23.2, 40.6])
    assert to_scale(shown(40.0, 100.0), shown(40.0, 70.0)) == [True, True]
    assert lengths(shown(40.0, 70.0))[0][1] == pytest.approx(58.0)


def test_an_arrow_too_short_in_one_has_none_of_them_to_scale() -> None:
    """And action and reaction are of one length all the same."""
    for share in (1.0, 0.64):
        small, large = lengths(shown(20.0, 70.0), shown(20.0, 100.0), share=share)
        assert small[0] == large[0]
        assert small[1] < large[1] == pytest.approx(share * 58.0)
    assert to_scale(shown(20.0, 70.0), shown(20.0, 100.0)) == [False, False]
    assert to_scale(shown(20.0, 70.0)) == [True]


def test_no_diagram_to_scale_has_short_arrows_alone() -> None:
    assert to_scale(shown(30.0, 59.0), shown(100.0)) == [False, False]
    assert to_scale(shown(30.0, 61.0), shown(100.0)) == [True, True]
    assert to_scale(shown(), shown(100.0)) == [True, True]  # one without any


def test_a_force_is_as_long_where_its_components_are_seen_as_where_they_are_not() -> None:
    slanting = shown(20.0, 100.0, direction=15.0, parted=True)
    first, second = lengths(slanting, replace(slanting, parted=False))
    assert first == second
    assert first[0] > lengths(replace(slanting, parted=False))[0][0]


def test_the_particles_of_a_key_are_drawn_alike() -> None:
    problem = prepared(next(path for path in TEMPLATES if path.stem == "ridge-two-pallets"))
    for own in solved(problem, 3):
        _, *diagrams = scenes_of(problem, own)
        rings = [s for each in diagrams for s in tagged(each, "body") if isinstance(s, Arc)]
        assert len(rings) == 2
        assert len({ring.radius for ring in rings}) == 1
