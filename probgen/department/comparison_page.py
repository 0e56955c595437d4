"""Two states of a bank side by side, as one page for a browser that runs nothing."""

from __future__ import annotations

from probgen.department.bank_page import page_environment
from probgen.department.compared import Comparison
from probgen.department.trial import TRIALS
from probgen.wording.comparison_words import ComparisonWords
from probgen.wording.english.comparison import COMPARISON


def comparison_page(comparison: Comparison, words: ComparisonWords = COMPARISON) -> str:
    """The whole page, of what is shown in a comparison."""
    layout = page_environment(words, TRIALS).get_template("comparison.html.j2")
    return layout.render(comparison=comparison)
