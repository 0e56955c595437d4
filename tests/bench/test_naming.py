"""The count of slips named truly: what it takes for true, and that it can tell."""

from __future__ import annotations

from random import Random

from tests.bench.naming import Counted, count


def counted(seed: str) -> Counted:
    found = Counted()
    count(found, "seesaw-two-riders", 150, Random(seed))
    return found


def test_slips_that_were_made_are_mostly_named_truly_and_right_answers_never() -> None:
    found = counted("seesaw")
    assert found.papers.total() == 150
    assert set(found.papers) == {"right", "slip", "pair", "arithmetic", "unit", "random"}
    assert found.found["slip"] > found.papers["slip"] / 4
    assert found.true >= 0.95 * found.named > 10
    assert found.found["right"] == 0
