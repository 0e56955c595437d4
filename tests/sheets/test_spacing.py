"""What stays together on a line."""

import pytest

from probgen.quantities.expression import Name
from probgen.quantities.formula import Relation
from probgen.sheets.spacing import paragraphs, tied, with_end
from probgen.wording.block import Inline, Math, Text

A = Math((Name("A", "A"),))
EQUAL = Math((Name("A", "A"), Relation("="), Name("B", "B")))

TIED: dict[str, tuple[tuple[Inline, ...], str]] = {
    "a letter to its word": ((Text("pulls at "), A), "pulls at\u00a0"),
    "a letter that is what was named": ((Text("of the joint, "), A), "of the joint,\u00a0"),
    "no letter to a sentence before": ((Text("It is so. "), A), "It is so. "),
    "no formula": ((Text("so that "), EQUAL), "so that "),
    "what a formula is to it": ((Text("or = "), EQUAL), "or =\u00a0"),
    "nothing after": ((Text("so that "),), "so that "),
}
ENDS = {
    "straight up": "straight\u00a0up",
    ", up and to the left": ", up and to\u00a0the\u00a0left",
    "the lid, to the right": "the lid, to\u00a0the\u00a0right",
    ", downward": ", downward",
}
PARAGRAPHS = {
    "4.00 m long, 25 N·m": ("4.00\u202fm long, 25\u202fN·m",),
    "3 min, 2 in a row": ("3 min, 2 in a row",),
    "one\n \n two\nlines": ("one", "two\nlines"),
}


@pytest.mark.parametrize(("inlines", "first"), TIED.values(), ids=TIED)
def test_tied(inlines: tuple[Inline, ...], first: str) -> None:
    assert tied(inlines) == (Text(first), *inlines[1:])


@pytest.mark.parametrize(("text", "parts"), PARAGRAPHS.items(), ids=PARAGRAPHS)
def test_paragraphs(text: str, parts: tuple[str, ...]) -> None:
    assert paragraphs(text) == parts


@pytest.mark.parametrize(("text", "shown"), ENDS.items(), ids=ENDS)
def test_an_item_ends_with_more_than_a_short_word(text: str, shown: str) -> None:
    assert with_end((A, Text(text))) == (A, Text(shown))
    of = with_end((Text("in the arm of "), A, Text(".")))
    assert of == (Text("in the arm\u00a0of "), A, Text("."))
    assert with_end((Text("the sum is "), EQUAL)) == (Text("the sum is "), EQUAL)
