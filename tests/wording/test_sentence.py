"""Sentences with formulas in them."""

import pytest

from probgen.quantities.expression import Name
from probgen.wording.block import Math, Text
from probgen.wording.sentence import capitalized, counted, listed, paragraph, plain_text, say

A, B, C = (Name(n, n) for n in "ABC")


def test_places_are_filled_and_words_joined() -> None:
    told = say("The {what} of {A} is {how}.", what="arm", A=A, how=say("near {B}", B=B))
    assert told == (Text("The arm of "), Math((A,)), Text(" is near "), Math((B,)), Text("."))


@pytest.mark.parametrize(
    ("parts", "text"), [([A], "A"), ([A, B], "A and B"), ([A, B, C], "A, B and C")]
)
def test_lists(parts: list[Name], text: str) -> None:
    assert plain_text(listed(parts)) == text


def test_a_missing_part_is_an_error() -> None:
    with pytest.raises(KeyError, match="B"):
        say("{B}", A=A)


def test_a_paragraph_puts_spaces_between_sentences() -> None:
    assert plain_text(paragraph(say("One."), say("{A} two.", A=A)).inlines) == "One. A two."


@pytest.mark.parametrize(
    ("number", "text"), [(1, "one force"), (4, "four forces"), (13, "13 forces")]
)
def test_counts(number: int, text: str) -> None:
    assert counted(number, "force") == text


def test_capitals() -> None:
    assert plain_text(capitalized(say("the arm of {A}", A=A))) == "The arm of A"
    assert plain_text(capitalized(say("{A} arm", A=A))) == "A arm"
