"""What is said of a class's marks, word by word."""

from __future__ import annotations

import pytest

from probgen.wording.english import ENGLISH
from probgen.wording.facts.class_marks import AlphaFound
from probgen.wording.nouns import NO_NOUNS
from probgen.wording.sentence import plain_text

ALPHAS = [
    (0.8, "the sum tells students apart well"),
    (0.79, "the sum tells students apart fairly, as homework mostly does"),
    (0.6, "the sum tells students apart fairly, as homework mostly does"),
    (0.59, "the items ask for different things, or are too few for the sum to tell much"),
]


@pytest.mark.parametrize(("alpha", "meant"), ALPHAS)
def test_what_alpha_means_is_said_with_it(alpha: float, meant: str) -> None:
    told = plain_text(ENGLISH.say(AlphaFound(alpha, 5, 1), NO_NOUNS))
    assert told == f"Cronbach's alpha is {alpha:.2f} over five items on one paper: {meant}."
