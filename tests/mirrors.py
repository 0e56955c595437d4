"""Which test file mirrors a module, and which modules have none of their own, with the reason.

The house rule (`tests/test_house.py`) holds the package to it.
"""

from __future__ import annotations

from fnmatch import fnmatch
from pathlib import Path
from typing import Final

DATA_ONLY: Final = (
    "bank/supplied.py",  # a path, followed by every test of the bank
    "build/progress.py",
    "course/wanted.py",
    "department/change.py",
    "department/doubt.py",
    "figures/situation/drawn_line.py",
    "input/remedy.py",
    "quantities/formula.py",
    "sheets/writer.py",
    "statics/flaw.py",
    "statics/method.py",
    "statics/step.py",
    "wording/block.py",
    "wording/catalogue_words.py",
    "wording/change_words.py",
    "wording/comparison_words.py",
    "wording/page_words.py",
    "working/convention.py",
    "working/fact.py",
    "working/figure.py",
)
"""Types alone: nothing in them can be right or wrong."""

ELSEWHERE: Final = {
    "bank/depiction.py": "bank/test_vocabulary.py",  # each has a word
    "bank/line_elements.py": "bank/test_element.py",  # elements are one table of cases
    "bank/support.py": "bank/test_element.py",
    "build/build.py": "cli/test_build.py",  # whole builds are run as a user runs them
    "build/joined_pdfs.py": "cli/test_pdfs.py",
    "build/solutions.py": "cli/test_solutions.py",
    "cli/bank/*.py": "cli/test_bank.py",  # run as a user runs them
    "cli/demo.py": "build/test_demo.py",
    "cli/group.py": "cli/test_failure.py",
    "cli/reprint.py": "cli/test_trace.py",
    "course/first_format.py": "hostile/test_records.py",
    "course/record_judge.py": "course/test_record_file.py",
    "course/record_schema.py": "hostile/test_records.py",
    "figures/parts/scenery.py": "figures/situation/test_scenery.py",
    "cli/mark.py": "cli/test_form.py",
    "marking/follow.py": "marking/test_judged.py",
    "mistakes/joints.py": "mistakes/test_rules.py",
    "mistakes/likelihood.py": "mistakes/test_comparison.py",
    "mistakes/particles.py": "mistakes/test_templates.py",
    "mistakes/unnoticed.py": "mistakes/test_templates.py",
    "papers/chunk.py": "cli/test_failure.py",
    "papers/reprint.py": "cli/test_trace.py",
    "papers/solutions.py": "cli/test_solutions.py",
    "press/format_cache.py": "press/test_engine.py",
    "wording/summed.py": "wording/test_check.py",
    "wording/unused.py": "wording/test_check.py",
    "wording/signs.py": "wording/test_true_sentences.py",
    "wording/english/*.py": "wording/test_words.py",  # sentences are read where they stand
    "wording/facts/*.py": "wording/test_second_language.py",  # every fact is told in two languages
    "wording/language.py": "wording/test_second_language.py",
    "working/limit_met.py": "working/test_digits.py",  # limits are met as answers are rounded
}
"""Modules tested by the file of another: of its neighbours, or of what uses it whole."""


def mirror_of(module: str) -> str:
    """The test file of a module; paths within probgen/ and tests/."""
    path = Path(module)
    return (path.parent / f"test_{path.name}").as_posix()


def excused(module: str) -> bool:
    """Whether a module needs no test file of its own."""
    patterns = (*DATA_ONLY, *ELSEWHERE)
    return any(fnmatch(module, pattern) for pattern in patterns)
