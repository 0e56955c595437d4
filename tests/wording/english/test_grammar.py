"""English grammar: lists, counts, capitals."""

import pytest

from probgen.quantities.expression import Name
from probgen.wording.english.grammar import agreeing, capitalized, counted, is_plural, series
from probgen.wording.sentence import filled, plain_text

A, B, C = (Name(n, n) for n in "ABC")


@pytest.mark.parametrize(
    ("parts", "text"), [([A], "A"), ([A, B], "A and B"), ([A, B, C], "A, B and C")]
)
def test_lists(parts: list[Name], text: str) -> None:
    assert plain_text(series(parts)) == text


@pytest.mark.parametrize(
    ("number", "text"), [(1, "one force"), (4, "four forces"), (13, "13 forces")]
)
def test_counts(number: int, text: str) -> None:
    assert counted(number, "force") == text


def test_capitals() -> None:
    assert plain_text(capitalized(filled("the arm of {A}", A=A))) == "The arm of A"
    assert plain_text(capitalized(filled("{A} arm", A=A))) == "A arm"


@pytest.mark.parametrize(
    ("noun", "several"),
    [("the pulleys", True), ("your hands", True), ("tongs", True), ("the shelf", False),
     ("the drum and band", True), ("the board with rope and hook", False),
     ("the truss", False), ("the apparatus", False), ("the chassis", False)],
)  # fmt: skip
def test_nouns_of_several_things(noun: str, several: bool) -> None:
    assert is_plural(noun) == several
    assert agreeing([noun], "is", "are") == ("are" if several else "is")
    assert agreeing([noun, "the wall"], "is", "are") == "are"
