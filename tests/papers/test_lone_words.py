"""No word stands alone on a line, in a key or on a sheet."""

import re

import pypdfium2
import pytest

from probgen.papers.typesetter import Kind
from tests.papers.looks import LOOKS, copies, printed
from tests.papers.make_up import pages

LONE = re.compile(r"[(]?[a-z]{4,}[.):,]*")


@pytest.mark.parametrize(
    "id", ["garland-two-lanterns", "climbing-triangle", "ladder-holds", "road-sign-wind"]
)
def test_no_word_alone_ends_a_text(id: str) -> None:
    """ "slope of the left part above the", "horizontal"; "counter-clockwise", "(positive)."."""
    documents = printed(copies([id], 3), LOOKS["letter"], (Kind.KEYS,))
    lines = [line.text for each in documents for page in pages(each.pdf) for line in page.lines]
    assert [text for text in lines if LONE.fullmatch(text)] == []


@pytest.mark.parametrize("id", ["beam-stay-cable", "diving-board", "well-windlass"])
def test_no_word_stands_alone_before_what_is_asked(id: str) -> None:
    for each in printed(copies([id], 8), LOOKS["letter"], (Kind.SHEETS,)):
        with pypdfium2.PdfDocument(each.pdf) as pdf:
            lines = pdf[0].get_textpage().get_text_range().splitlines()
        assert "Find" not in [line.strip() for line in lines]


@pytest.mark.parametrize("id", ["road-sign-wind", "ladder-holds"])
def test_no_word_alone_ends_what_a_sheet_says(id: str) -> None:
    """ "couples counter-", "clockwise."; "and by what", "margin."."""
    documents = printed(copies([id], 2), LOOKS["letter"], (Kind.SHEETS,))
    lines = [line.text for each in documents for page in pages(each.pdf) for line in page.lines]
    assert [text for text in lines if LONE.fullmatch(text)] == []
