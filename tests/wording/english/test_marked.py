"""What is said of an answer that was marked, word by word."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import Name
from probgen.wording.english import ENGLISH
from probgen.wording.facts.asked import AnswerNamed
from probgen.wording.facts.marked import FewFigures, KeyPartsAt, ReadingsCounted
from probgen.wording.nouns import NO_NOUNS
from probgen.wording.sentence import plain_text
from probgen.working.fact import Fact
from probgen.working.result import ResultKind

STEP = AnswerNamed(ResultKind.LIMIT, Name("P", "P"))
SAID: list[tuple[Fact, str]] = [
    (ReadingsCounted(0), "It could not be read."),
    (ReadingsCounted(2), "It can be read in 2 ways."),
    (ReadingsCounted(4, is_direction=True), "It can be read in 4 ways: the side is missing."),
    (FewFigures(1, 3), "It has one significant figure; 3 are asked for."),
    (FewFigures(2, 4), "It has two significant figures; 4 are asked for."),
    (KeyPartsAt(STEP), "Compare with the key from here on: what happens first."),
]


@pytest.mark.parametrize(("fact", "said"), SAID)
def test_what_is_said_of_an_answer(fact: Fact, said: str) -> None:
    assert plain_text(ENGLISH.say(fact, NO_NOUNS)) == said
