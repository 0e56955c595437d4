"""Which way a joint's force has to act beside one force that alone holds all others about it.

By hand: the shelf's weights act 0.60 m and 1.20 m from the hinge.  An upright cable at 0.48 m pulls
with 245 N against their 117.6 N, so the hinge pushes down; one at 1.25 m with 94.1 N.
"""

from __future__ import annotations

import pytest

from probgen.quantities.printing import plain
from probgen.wording.facts.forces import LeverExpected
from probgen.wording.passage import Sentences
from probgen.wording.signs import signs_part
from tests.situations import BRACKET, FIND_R, FIND_T, HINGED, SHELF, STAYED, worked

UPRIGHT = HINGED + STAYED.replace('"180 - theta"', "90") + FIND_T + FIND_R
COUPLE = '[[couple]]\nat = "C"\nmoment = "60 N*m"\nsymbol = "M_0"\n'


def expected(text: str) -> list[tuple[str, bool, bool]]:
    """What is told of joints' forces: whose, whether nearer, and whether as drawn."""
    return [(plain(fact.force), fact.nearer, fact.drawn) for fact in levers(text)]


def levers(text: str) -> list[LeverExpected]:
    _, own = worked(text)
    (body,) = own.case.system.bodies
    said = [part for part in signs_part(own.digits, body) if isinstance(part, Sentences)]
    facts = [fact for part in said for fact in part.facts]
    return [fact for fact in facts if isinstance(fact, LeverExpected)]


@pytest.mark.parametrize(
    ("at", "told"),
    [("0.48", [("R_y", True, False)]), ("0.96", []), ("1.20", [])],
    ids=["nearer", "between", "as far as one"],
)
def test_what_acts_nearer_pulls_more_than_what_it_holds(
    at: str, told: list[tuple[str, bool, bool]]
) -> None:
    assert expected(SHELF.replace("[0.96]", f"[{at}]") + UPRIGHT) == told


def test_what_acts_farther_out_pulls_less() -> None:
    longer = SHELF.replace('B = ["L", 0]', 'B = ["1.10 m", 0]').replace("[0.96]", "[1.18]")
    longer = longer.replace('along = ["A", "B"]', 'along = ["A", "C"]').replace("uniform", "at")
    longer = longer.replace("at = true", 'at = "E"').replace("[body.", 'E = ["0.60 m", 0]\n[body.')
    assert expected(longer + UPRIGHT) == [("R_y", False, True)]


def test_nothing_is_told_beside_a_couple() -> None:
    """It is held too, with no force: however near the cable is, it may pull with less."""
    assert expected(SHELF.replace("[0.96]", "[0.48]") + UPRIGHT + COUPLE) == []


LEVEL = '[[force]]\nat = "H"\nmagnitude = "50 N"\ndirection = 0\nsymbol = "P"\n'
AT_THE_HINGE = SHELF.replace('uniform = true\nmass = "m"', 'at = "A"\nmass = "m"').replace(
    "[body.shelf]", 'E = ["0.40 m", 0]\nH = ["d", "0.30 m"]\n[body.shelf]'
)
AT_B = '[[weight]]\nat = "B"\nmass = "M"\nsymbol = "W_t"\n'


@pytest.mark.parametrize(
    "held", [LEVEL, LEVEL + AT_B.replace('"B"', '"E"')], ids=["that alone", "and a weight"]
)
def test_nothing_is_told_where_a_level_push_is_held_too(held: str) -> None:
    """Beside a weight at the hinge itself, which nothing holds about it."""
    assert AT_B in AT_THE_HINGE
    bent = AT_THE_HINGE.replace('along = ["A", "B"]', 'along = ["B", "A", "C", "H"]')
    assert expected(bent.replace(AT_B, held) + UPRIGHT) == []


def test_nothing_is_told_where_a_line_meets_the_level_elsewhere_than_its_force_acts() -> None:
    """The cord's line meets the shelf's level 2.87 m from the hinge, farther out than the load at
    2.00 m; and it is fastened to the bracket at 2.06 m, or, lower on its line, at 1.98 m.
    """
    assert expected(BRACKET) == [("R_y", False, True)]
    lower = BRACKET.replace('E = ["L", "h"]', 'E = ["L - 0.15 m", "h + 0.087 m"]')
    assert expected(lower) == []


def test_of_a_force_that_turns_by_both_its_parts_the_line_is_compared() -> None:
    """An oblique cord fastened above the hinge: at its level only the upward part turns."""
    (above,), (level,) = levers(BRACKET), levers(SHELF.replace("[0.96]", "[0.48]") + UPRIGHT)
    assert (above.partly, above.by_line) == (True, True)
    assert (level.partly, level.by_line) == (False, False)
    slack = SHELF.replace("[0.96]", "[0.48]") + UPRIGHT.replace("direction = 90", "direction = 100")
    (oblique,) = levers(slack)
    assert (oblique.partly, oblique.by_line) == (True, False)
