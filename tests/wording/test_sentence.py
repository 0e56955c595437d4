"""Sentences with formulas in them."""

import pytest

from probgen.quantities.expression import Name
from probgen.wording.block import Math, Text
from probgen.wording.sentence import filled, listed, paragraph, plain_text

A, B, C = (Name(n, n) for n in "ABC")


def test_places_are_filled_and_words_joined() -> None:
    near = filled("near {B}", B=B)
    told = filled("The {what} of {A} is {how}.", what="arm", A=A, how=near)
    assert told == (Text("The arm of "), Math((A,)), Text(" is near "), Math((B,)), Text("."))


def test_lists() -> None:
    assert plain_text(listed([A, B, C], " et ")) == "A, B et C"
    assert plain_text(listed([A, B, C], "、", "、")) == "A、B、C"


def test_a_missing_part_is_an_error() -> None:
    with pytest.raises(KeyError, match="B"):
        filled("{B}", A=A)


def test_a_paragraph_puts_spaces_between_sentences() -> None:
    told = paragraph(filled("One."), filled("{A} two.", A=A))
    assert plain_text(told.inlines) == "One. A two."
