"""What may be doubted of a template before a class gets it."""

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.department import trust as module
from probgen.department.trust import Doubt, Kind, Trust, trust
from probgen.quantities.unit import US_CUSTOMARY

DRAWS = 200


def doubts(own: Trust, kind: Kind) -> list[Doubt]:
    return [each for each in own.doubts if each.kind is kind]


@pytest.fixture(autouse=True)
def small_class(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "CLASS", 60)


def test_few_sets_of_numbers_and_students_who_could_copy() -> None:
    """With one mass and a few friction numbers a whole class has a handful of answers."""
    text = default_bank().read("plank-raised-slowly").source
    narrow = text.replace("step = 0.01", "step = 0.10").replace("step = 0.05", "step = 0.50")
    own = trust(read_template(narrow, "narrow"), DRAWS)
    (room,), (copying,) = doubts(own, Kind.ROOM), doubts(own, Kind.COPYING)
    assert room.share == read_template(narrow, "").room < 5000
    before = doubts(trust(default_bank().read("plank-raised-slowly"), DRAWS), Kind.COPYING)
    assert copying.share > 3 * max((each.share for each in before), default=0.0)
    one, other = copying.draw.split("; ")
    assert one.count("=") == other.count("=") == 2


def test_a_slip_that_earns_full_marks_is_told_once_and_rounding_is_none() -> None:
    own = trust(default_bank().read("well-windlass"), DRAWS)
    passing = {each.about: each.share for each in doubts(own, Kind.PASSING)}
    assert passing["component_only"] == 1.0
    assert "early_rounding" not in passing
    assert len(passing) == len(doubts(own, Kind.PASSING))


def test_a_force_that_some_have_on_another_side() -> None:
    own = trust(default_bank().read("beam-stay-cable"), DRAWS)
    (side,) = doubts(own, Kind.SIDES)
    assert side.about == "R"
    assert 0.0 < side.share < 0.5
    assert "load_at = " in side.draw
    assert doubts(trust(default_bank().read("forearm-load"), DRAWS), Kind.SIDES) == []


def test_us_customary_and_what_fails() -> None:
    own = trust(default_bank().read("seesaw-two-riders", US_CUSTOMARY), DRAWS)
    assert (own.id, own.units) == ("seesaw-two-riders", "US customary")
    assert own.checked is not None
    text = default_bank().read("forearm-load").source.replace("90 + muscle", "270 + muscle")
    failed = trust(read_template(text, "down"), DRAWS)
    assert failed.checked is None
    assert failed.faults
    assert failed.doubts == ()
