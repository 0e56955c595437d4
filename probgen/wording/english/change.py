"""What is other in a template, in English."""

from __future__ import annotations

from typing import Final

from probgen.wording.change_words import ChangeWords

CHANGE: Final = ChangeWords(
    formerly="formerly {id}",
    equal_draws="The same answers in {same} of {all} equal draws.",
    before="Before",
    after="After",
    numbers="Numbers",
    nothing="nothing",
)
