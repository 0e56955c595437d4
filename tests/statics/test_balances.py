"""The balances that may be written, counted by hand for small situations."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.quantities.expression import evaluate
from probgen.statics.balances import candidates, groups
from probgen.statics.method import Method
from tests.bank import test_section as cut
from tests.held_by_ropes import STANDING
from tests.situations import (
    SLOPE,
    STAYED_SHELF,
    THREE_HINGES,
    TWO_BEAMS,
    crate,
    finding,
    system_of,
)

THREE_IN_A_ROW = TWO_BEAMS.replace('B = ["2*L", 0]', 'B = ["2*L", 0]\nD = ["3*L", 0]').replace(
    "[[weight]]", '[body.last]\nalong = ["B", "D"]\n[[weight]]'
)


def written(text: str, method: Method | None = None) -> list[tuple[str, str, str]]:
    system = system_of(text)
    found = candidates(system, (), method or Method())
    return [(each.kind, " ".join(each.bodies), each.about) for each in found]


def test_one_body_about_every_point_where_a_force_acts_and_along_both_axes() -> None:
    assert sorted(written(STAYED_SHELF)) == [
        ("force", "shelf", "x"),
        ("force", "shelf", "y"),
        ("torque", "shelf", "A"),
        ("torque", "shelf", "B"),
        ("torque", "shelf", "C"),
        ("torque", "shelf", "G"),
    ]


def test_the_author_s_pivot_is_the_only_one() -> None:
    found = written('pivot = "C"\n' + STAYED_SHELF)
    assert [about for kind, _, about in found if kind == "torque"] == ["C"]


def test_joined_bodies_are_also_taken_as_one() -> None:
    assert list(groups(system_of(TWO_BEAMS))) == [("left",), ("right",), ("left", "right")]
    found = written(THREE_HINGES)
    for bodies in ("left", "right", "left right"):
        assert {("force", bodies, "x"), ("force", bodies, "y")} <= set(found)
    assert ("torque", "left right", "A") in found


def test_a_particle_turns_with_the_body_it_touches_where_it_is() -> None:
    """Held away from that place, it has no lever arm of its own."""
    found = written(STANDING)
    about = {at for kind, bodies, at in found if (kind, bodies) == ("torque", "plank person")}
    assert about == {"A", "B", "C", "G"}
    assert not any((kind, bodies) == ("torque", "person") for kind, bodies, _ in found)
    away = STANDING.replace('particle = true\nalong = ["C"]', 'particle = true\nalong = ["D"]')
    assert not any(
        (kind, bodies) == ("torque", "plank person") for kind, bodies, _ in written(away)
    )


def test_bodies_that_no_force_joins_are_not() -> None:
    """The last beam hangs on nothing: it is in no group of two or three."""
    system = system_of(THREE_IN_A_ROW + '[[weight]]\nbody = "last"\nat = "D"\nforce = "5 N"\n'
                       'symbol = "V"\n')  # fmt: skip
    assert list(groups(system)) == [("left",), ("right",), ("last",), ("left", "right")]


def test_a_chain_of_joints_joins_its_ends() -> None:
    joint = '[[hinge]]\nbody = "right"\nother = "last"\nat = "B"\nsymbol = "V"\n'
    found = list(groups(system_of(THREE_IN_A_ROW + joint)))
    assert ("left", "last") not in found
    assert {("left", "right"), ("right", "last"), ("left", "right", "last")} <= set(found)
    assert len(found) == 6


SLOPING = crate() + SLOPE + 'coefficient = "mu"\n' + finding("T")


def test_a_particle_has_no_torques_and_a_slope_has_axes_of_its_own() -> None:
    found = [(kind, about) for kind, _, about in written(SLOPING)]
    assert found == [
        ("force", "x"), ("force", "y"), ("force", "∥"), ("force", "⊥"),
        ("condition", "f.limit"),
    ]  # fmt: skip


def test_the_slope_s_axes_run_along_it_and_square_to_it() -> None:
    axes = [each.axis for each in candidates(system_of(SLOPING), (), Method()) if each.axis]
    turned = [float(evaluate(axis.direction, {"theta": 25.0})) for axis in axes]
    assert turned == [0.0, 90.0, 25.0, 115.0]


def test_level_axes_where_the_course_keeps_to_them() -> None:
    found = written(SLOPING, Method(axes="level"))
    assert [about for _, _, about in found] == ["x", "y", "f.limit"]


@pytest.mark.parametrize("direction", ["90", "180", "270"])
def test_a_level_or_upright_surface_needs_no_axes_of_its_own(direction: str) -> None:
    flat = SLOPING.replace('"90 + theta"', direction)
    assert [about for kind, _, about in written(flat) if kind == "force"] == ["x", "y"]


def test_surfaces_square_to_each_other_have_the_axes_of_the_rough_one() -> None:
    """The crate leans on a stop across the slope, which is told of first.

    Which of the two surfaces the axes are along and square to is said.
    """
    stop = '[[contact]]\ndirection = "theta"\nsymbol = "S"\nname = "stop"\n'
    own, found = (
        [each.axis for each in candidates(system_of(text), (), Method()) if each.axis]
        for text in (SLOPING, SLOPING.replace("[[rough]]", stop + "[[rough]]"))
    )
    assert {axis.element for axis in own} == {""}
    assert {axis.element for axis in found if axis.tilted} == {"N"}
    assert [replace(axis, element="") for axis in found] == own


@pytest.mark.parametrize(
    ("beam", "axes"), [(cut.SLOPING, {"x", "y", "∥", "⊥"}), (cut.BEAM, {"x", "y"})]
)
def test_a_tilted_body_that_is_cut_has_sums_along_and_square_to_it(
    beam: str, axes: set[str]
) -> None:
    """The part alone; the whole body has no cut to be seen from."""
    system = cut.read(beam + cut.ON_TWO + cut.LOAD + cut.CUT + cut.FINDS).system
    (part,) = [body.id for body in system.bodies if body.part_of]
    found = [each for each in candidates(system, (), Method()) if each.axis]
    assert {each.about for each in found if each.bodies == (part,)} == axes
    assert {each.about for each in found if each.bodies == ("beam",)} == {"x", "y"}
    tilted = [each.axis for each in found if each.axis and each.axis.tilted]
    assert all(axis.body == "beam" and axis.along != axis.square for axis in tilted)
    assert (
        sorted(float(evaluate(axis.direction, {})) for axis in tilted)
        == [25.0, 115.0][: len(tilted)]
    )


def test_axes_stay_level_where_the_course_has_them_so() -> None:
    system = cut.read(cut.SLOPING + cut.ON_TWO + cut.LOAD + cut.CUT + cut.FINDS).system
    found = candidates(system, (), Method(axes="level"))
    assert not any(each.axis and each.axis.tilted for each in found)
