"""Parts of a passage are joined to paragraphs."""

from __future__ import annotations

from probgen.wording.passage import Items, Sentences, one_paragraph, sentences
from probgen.working.fact import Fact

ONE, TWO, THREE = Fact(), Fact(), Fact()


def test_sentences_that_follow_sentences_make_one_paragraph_and_nothing_empty_is_left() -> None:
    items = Items((TWO,))
    joined = one_paragraph(sentences(ONE), sentences(), sentences(TWO, THREE))
    assert list(joined) == [Sentences((ONE, TWO, THREE))]
    bound = one_paragraph(sentences(), sentences(ONE, bound=True), sentences(TWO))
    assert list(bound) == [sentences(ONE, TWO, bound=True)]
    apart = one_paragraph(sentences(ONE), items, sentences())
    assert list(apart) == [sentences(ONE), items]
