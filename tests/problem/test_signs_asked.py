"""What a sheet says of signs: as much as its answers need, and what is so."""

from __future__ import annotations

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.problem.signs_asked import signs_asked
from probgen.wording.facts.asked import CutSigns, SectionSigns, SignsAsked
from probgen.working.fact import Fact
from tests.situations import HEAD

HELD = (
    HEAD
    + """
[given]
L = { name = "length", choices = [2.0], unit = "m" }
F = { name = "load", choices = [300], unit = "N" }
[points]
A = [0, 0]
B = ["L", 0]
[body.beam]
along = ["A", "B"]
[[force]]
at = "B"
magnitude = "F"
direction = 300
"""
)
BUILT_IN = HELD + '[[fixed]]\nat = "A"\nsymbol = "R"\ncouple = "M"\n'
CUT = HELD + '[[cut]]\nat = "A"\naxis = 180\naxial = "N"\nshear = "V"\ncouple = "M"\n'
COUPLE, NORMAL = '[[find]]\nquantity = "M"\n', '[[find]]\nquantity = "N"\n'
PARTS = '[[find]]\nquantity = "R"\nas = "components"\n'
WHOLE = '[[find]]\nquantity = "R"\nas = "magnitude and direction"\n'


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (BUILT_IN + WHOLE, []),
        (BUILT_IN + COUPLE, [SignsAsked(couples=True)]),
        (BUILT_IN + PARTS, [SignsAsked(level=True)]),
        (BUILT_IN + PARTS + COUPLE, [SignsAsked(level=True, couples=True)]),
        (CUT + NORMAL, [CutSigns()]),
        (CUT + COUPLE, [CutSigns()]),
    ],
)
def test_a_sheet_tells_the_signs_its_answers_have(text: str, said: list[Fact]) -> None:
    assert [*signs_asked([read_template(text, "own.toml")])] == said


def test_what_is_seen_from_above_has_the_compass() -> None:
    text = (BUILT_IN + PARTS).replace("title =", 'view = "plan"\ntitle =', 1)
    above, level = read_template(text, "own.toml"), read_template(BUILT_IN + PARTS, "own.toml")
    assert [*signs_asked([above])] == [SignsAsked(plan=True)]
    assert [*signs_asked([above, level])] == [SignsAsked(level=True, plan=True)]


def test_inside_a_beam_there_is_a_custom() -> None:
    bank = default_bank()
    assert [*signs_asked([bank.read("footbridge-inside")])] == [SectionSigns()]
    assert [*signs_asked([bank.read("forearm-load")])] == []
