"""One problem on its own: the sheet, and the key behind it."""

from __future__ import annotations

import pypdfium2
import pytest

from probgen.papers.handout import copy_of_one, html_handout, print_handout
from probgen.papers.page import key_of, sheet_of
from probgen.papers.typesetter import Typesetter
from probgen.problem.single import Single, work_single
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


def test_title_and_draw_stand_on_each_page_once() -> None:
    """A sheet, and a key of two pages: its title above each of them, its draw below."""
    single = work_single("leg-traction", 3)
    with pypdfium2.PdfDocument(print_handout(single, Typesetter()).pdf) as pdf:
        told = [page.get_textpage().get_text_range() for page in pdf]
    assert len(told) == 3
    title = single.problem.template.title
    assert [page.count(title) for page in told] == [1, 1, 1]
    assert [page.count("leg-traction, draw 3") for page in told] == [1, 1, 1]
    assert f"{title} (continued)" in told[2]


@pytest.mark.parametrize(
    ("stated", "drawn"),
    [
        ({}, "diving-board, draw 2"),
        ({"diver_mass": "70 kg"}, "diving-board, draw 2, with values of its own"),
    ],
)
def test_a_draw_with_other_values_is_not_named_as_if_it_had_its_own(
    stated: dict[str, str], drawn: str
) -> None:
    copy = copy_of_one(work_single("diving-board", 2, stated))
    assert sheet_of(copy).header.drawn == key_of(copy).header.drawn == drawn
    assert copy_of_one(Single(*worked(STAYED_SHELF))).header.drawn == ""


def test_a_page_of_html_has_its_title_once_for_the_sheet_and_once_for_the_key(page: str) -> None:
    assert page.count("A shelf</h") + page.count("A shelf<span") == 2
    assert "<h2><span" not in page


@pytest.mark.parametrize(
    ("word", "remarks"),
    [("shelf", ()), ("shelf" * 40, ("on the sheet", "in the key"))],
    ids=["all fits", "a word wider than the page"],
)
def test_what_does_not_fit_its_page_is_remarked(word: str, remarks: tuple[str, ...]) -> None:
    own = STAYED_SHELF.replace('title = "Own"', f'title = "A {word}"')
    handout = print_handout(Single(*worked(own)), Typesetter())
    assert handout.pdf.startswith(b"%PDF")
    told = {remark.partition(": ")[0] for remark in handout.remarks}
    assert told == set(remarks)
    assert all(remark.endswith("too wide for its place") for remark in handout.remarks)
