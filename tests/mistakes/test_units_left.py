"""Lengths and masses left in units that do not go with the course's."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.mistakes.rules import missteps
from probgen.mistakes.variant import Misstep, wrong_values
from probgen.quantities.expression import Name
from probgen.quantities.unit import US_CUSTOMARY
from tests.mistakes.supplied import problem as supplied
from tests.mistakes.test_rules import ARM, problem
from tests.situations import STAYED_SHELF, worked


def test_nothing_to_convert_where_the_course_uses_the_unit() -> None:
    """The forearm's kilograms are foreign where slugs are coherent; all of them stay, or none.

    Its centimetres are only compared with one another, in any unit.
    """
    plan, given = problem(ARM)
    feet = missteps(plan, given, US_CUSTOMARY)  # type: ignore[arg-type]
    (slipped,) = [m for m in feet if m.slip == "unit_not_converted"]
    assert slipped.parts["q"] == (Name("m_a", "m_a"), Name("m_b", "m_b"))
    first = wrong_values(slipped, given)["B"]
    assert float(np.ravel(first)[0]) == pytest.approx(470.4 * 14.59390, rel=1e-4)


def in_centimetres(*names: str, more: str = "") -> list[Misstep]:
    """The unit left as it is on the shelf with some of its lengths in cm."""
    shelf = STAYED_SHELF.replace("[points]", f"{more}[points]")
    for name, size in {"L": "1.20", "d": "0.96"}.items():
        line = f'choices = [{size}], unit = "m"'
        if name in names:
            shelf = shelf.replace(line, f'choices = [{float(size) * 100:g}], unit = "cm"')
    own, _ = worked(shelf)
    return [m for every in own.missteps for m in every if m.slip == "unit_not_converted"]


def test_all_lengths_of_one_unit_are_left_in_it_or_none() -> None:
    """Beside another in m they do harm; where all are in cm, they are only compared."""
    (alone,) = in_centimetres("d")
    assert alone.parts["q"] == (Name("d", "d"),)
    assert in_centimetres("L", "d") == []
    beside = 'k = { name = "height", choices = [2.00], unit = "m" }\n'
    (both,) = in_centimetres("L", "d", more=beside)
    assert both.parts["q"] == (Name("L", "L"), Name("d", "d"))


def test_a_weight_is_written_down_as_the_mass_that_is_asked() -> None:
    """Nobody is given a mass of the bird feeder; the wall bracket's board and loudspeaker have."""
    feeder, bracket = (
        [m for own in supplied(name).missteps for m in own if m.slip == "mass_as_weight"]
        for name in ("feeder-cord-strength", "wall-bracket-board")
    )
    assert {each.way for each in feeder} == {"asked"}
    assert [each.parts["W"] for each in feeder] == [Name("W", "W")] * len(feeder)
    assert [each.way for each in bracket] == [""]
