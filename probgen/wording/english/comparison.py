"""Two states of a bank held against each other, in English."""

from __future__ import annotations

from typing import Final

from probgen.wording.comparison_words import ComparisonWords
from probgen.wording.english.change import CHANGE
from probgen.wording.english.page import PAGE

COMPARISON: Final = ComparisonWords(
    language=PAGE.language,
    comparison="Comparison",
    title="{before} → {after}",
    counted="{new} new, {gone} gone, {changed} changed, {same} as they were",
    skip="To what is other",
    contents="What is other",
    new="new",
    gone="gone",
    renamed="renamed",
    revision="revision {new}",
    revisions="revision {old} → {new}",
    find="Find",
    scheme="What points are given for, of ten",
    points="{points} for {words}",
    no_solution="There is no draw of it that can be worked.",
    change=CHANGE,
    caution=PAGE.caution,
    cautions=PAGE.cautions,
)
