"""What may be doubted of a template before a class gets it."""

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.department import trust as module
from probgen.department.doubt import Doubt, DoubtKind
from probgen.department.trust import Trust, trust
from probgen.quantities.unit import US_CUSTOMARY
from tests.department.worked import EITHER_SIDE

DRAWS = 200


def doubts(own: Trust, kind: DoubtKind) -> list[Doubt]:
    return [each for each in own.doubts if each.kind is kind]


@pytest.fixture(autouse=True)
def small_class(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "CLASS", 60)


def test_few_sets_of_numbers_and_students_who_could_copy() -> None:
    """With one mass and a few friction numbers a whole class has a handful of answers."""
    text = default_bank().read("plank-raised-slowly").source
    narrow = text.replace("step = 0.01", "step = 0.10").replace("step = 0.02", "step = 0.50")
    own = trust(read_template(narrow, "narrow"), DRAWS)
    (room,), (copying,) = doubts(own, DoubtKind.ROOM), doubts(own, DoubtKind.COPYING)
    assert room.count == read_template(narrow, "").room < 5000
    before = doubts(trust(default_bank().read("plank-raised-slowly"), DRAWS), DoubtKind.COPYING)
    assert copying.share > 3 * max((each.share for each in before), default=0.0)
    one, other = copying.draw.split("; ")
    assert one.count("=") == other.count("=") == 2


def test_each_kind_is_looked_for() -> None:
    joint = 'quantity = "J"\nas = "{}"'
    text = default_bank().read("arm-held-out").source
    text = text.replace(joint.format("components"), joint.format("magnitude and direction"))
    found = {each.kind for each in trust(read_template(text, "whole"), DRAWS).doubts}
    assert {DoubtKind.PASSING, DoubtKind.CONFUSED} <= found
    (regime,) = doubts(trust(beam_either_side(), DRAWS), DoubtKind.REGIME)
    assert regime.about == "R.direction"
    text = default_bank().read("stepladder-tie").source.replace("level = 5", "level = 1")
    assert len(doubts(trust(read_template(text, "low"), DRAWS), DoubtKind.LEVEL)) == 1
    text = default_bank().read("forearm-load").source
    text = text.replace("from = 1.0, to = 8.0,", "from = 1.0005, to = 8.0005,")
    assert len(doubts(trust(read_template(text, "odd"), DRAWS), DoubtKind.READING)) == 1


def beam_either_side() -> Template:
    """A template whose hinge pushes up or down and that does not say that this may vary."""
    text = default_bank().read("beam-stay-cable").source
    assert EITHER_SIDE[0] in text
    assert "varies" not in text
    return read_template(text.replace(*EITHER_SIDE), "beam")


def test_what_the_template_says_may_vary_is_no_doubt() -> None:
    template = beam_either_side()
    text = template.source.replace('quantity = "R"\n', 'quantity = "R"\nvaries = true\n')
    assert text != template.source
    assert doubts(trust(read_template(text, "varies"), DRAWS), DoubtKind.REGIME) == []


def test_us_customary_and_what_fails() -> None:
    own = trust(default_bank().read("seesaw-two-riders", US_CUSTOMARY), DRAWS)
    assert (own.id, own.units) == ("seesaw-two-riders", "US customary")
    assert own.checked is not None
    text = default_bank().read("forearm-load").source.replace("90 + muscle", "270 + muscle")
    failed = trust(read_template(text, "down"), DRAWS)
    assert failed.checked is None
    assert failed.faults
    assert failed.doubts == ()
