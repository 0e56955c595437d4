"""Two-force members: one force along a bar in the place of two pins' components."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.quantities.symbol import unmarked
from probgen.statics.balances import groups
from probgen.statics.link import along_links, is_link, links_of
from probgen.statics.plan import find_plan
from probgen.statics.solution import solve
from probgen.statics.system import Kind
from tests.situations import THREE_HINGES, TWO_BEAMS, system_of


def test_pins_give_way_to_one_force_along_the_bar() -> None:
    """The light leg leans up to the right by 1 m and 2 m: both its ends pull along it."""
    system = along_links(system_of(THREE_HINGES))
    pulls = [force for force in system.forces if force.kind is Kind.LINK]
    assert sorted((force.body, force.point) for force in pulls) == [
        ("left", "A"), ("left", "C"), ("right", "C"),
    ]  # fmt: skip
    assert {unmarked(force.magnitude.symbol) for force in pulls} == {"F_AC"}  # type: ignore[union-attr]
    assert not [force for force in system.forces if force.element in ("R", "Q") and force.part]
    assert not links_of(system)
    assert [body.id for body in system.bodies if is_link(system, body)] == ["left"]


def test_only_pins_of_two_force_members_give_way() -> None:
    system = system_of(TWO_BEAMS)
    assert along_links(system) == system


def test_a_bar_held_from_outside_is_in_no_group() -> None:
    """It adds nothing that its pull on the other leg does not."""
    assert list(groups(along_links(system_of(THREE_HINGES)))) == [("left",), ("right",)]


def test_what_the_bar_carries() -> None:
    """S_y 2 m = 98.0 N x 1.5 m, so the left leg pushes with 24.5 N up and 12.25 N to the right."""
    text = THREE_HINGES[: THREE_HINGES.index("[[find]]")]
    finds = "".join(f'[[find]]\nquantity = "{id}"\n' for id in ("F_AC", "Q", "R"))
    system = system_of(text + finds)
    data = {"L": np.array([2.0]), "m": np.array([10.0]), "g": np.array([9.8])}
    found = solve(find_plan(system, data), data)
    assert found["F_AC"] == pytest.approx(-np.hypot(24.5, 12.25))
    assert found["R.x"] == pytest.approx(12.25)
    assert found["R.y"] == pytest.approx(24.5)
