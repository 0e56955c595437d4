"""One problem on its own, as one page of HTML: the sheet, and the key behind it."""

from __future__ import annotations

import pytest

from probgen.papers.handout import html_handout
from probgen.problem.single import Single
from probgen.working.convention import Convention
from tests.situations import STAYED_SHELF, worked


@pytest.fixture(scope="module")
def page() -> str:
    return html_handout(Single(*worked(STAYED_SHELF.replace('title = "Own"', 'title = "A shelf"'))))


def test_the_sheet_stands_before_the_key_and_holds_no_answer(page: str) -> None:
    """By hand: 190.58 N."""
    assert "A shelf" in page
    assert page.index("Own.") < page.index("<mn>191</mn>")
    assert page.count("Own.") == 2


def test_the_key_has_the_answers(page: str) -> None:
    """146.07 N at 1.92° below the horizontal."""
    assert "<mn>146</mn>" in page
    assert "below the horizontal, to the right" in page


def test_each_figure_is_there(page: str) -> None:
    """The situation on sheet and key, and the shelf alone in the key."""
    assert page.count("<svg") == 3


def test_sheet_and_key_take_the_course_s_own_g() -> None:
    page = html_handout(Single(*worked(STAYED_SHELF, Convention(gravity="9.81"))))
    assert page.count("<mn>9.81</mn>") > 2
    assert "<mn>9.80</mn>" not in page
