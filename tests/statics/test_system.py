"""A system asked for its parts by their ids."""

from __future__ import annotations

import pytest

from probgen.bank.reading import read_template
from probgen.quantities.expression import Name
from probgen.quantities.unit import FORCE, NEWTON
from probgen.statics.system import Role, Variable
from tests.situations import TWO_BEAMS

SYSTEM = read_template(TWO_BEAMS, "own.toml").system


def test_unknowns_are_those_to_be_found_in_the_order_they_are_named() -> None:
    assert SYSTEM.unknowns == ("Q.x", "Q.y", "R.x", "R.y", "M_A", "N")


def test_parts_by_their_ids() -> None:
    assert SYSTEM.body("right").outline == ("C", "B")
    assert SYSTEM.element("N").at == "B"
    assert (SYSTEM.force("Q.x'").body, SYSTEM.force("Q.x").body) == ("right", "left")
    for missing in (SYSTEM.body, SYSTEM.element, SYSTEM.force):
        with pytest.raises(StopIteration):
            missing("none")


def test_a_variable_is_called_as_expressions_call_it() -> None:
    assert Variable(Name("R.x", "R_x"), FORCE, NEWTON, Role.UNKNOWN).id == "R.x"


def test_pairs_are_equal_and_opposite() -> None:
    for force in SYSTEM.forces:
        if force.pair:
            other = SYSTEM.force(force.pair)
            assert (other.pair, other.magnitude) == (force.id, force.magnitude)
