"""A language: the words of every fact, and of the pages."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from probgen.wording.block import Block, Display, Inline, Itemize, Math, Paragraph, Picture, Section
from probgen.wording.nouns import Nouns
from probgen.wording.page_words import PageWords
from probgen.wording.passage import Items, Part, Passage, Sentences
from probgen.wording.sentence import lettered, paragraph, plain_text
from probgen.working.fact import Fact

Say = Callable[[Fact, Nouns], tuple[Inline, ...]]
"""A fact as running text; nouns: what the author calls the things it is about."""


@dataclass(frozen=True, slots=True)
class Language:
    """All that changes when pages are to be read in another language."""

    words: Say
    page: PageWords

    def say(self, fact: Fact, nouns: Nouns) -> tuple[Inline, ...]:
        """A fact as running text, with the letters of points and axes as formulas."""
        return lettered(self.words(fact, nouns))

    def section(self, passage: Passage, nouns: Nouns) -> Section:
        """A passage in words."""
        said = self.say(passage.heading, nouns)
        heading = said if any(isinstance(each, Math) for each in said) else ()
        blocks = tuple(self.block(part, nouns) for part in passage.parts)
        return Section(plain_text(said), blocks, heading)

    def block(self, part: Part, nouns: Nouns) -> Block:
        match part:
            case Sentences(facts, bound):
                return replace(self.paragraph(facts, nouns), bound=bound)
            case Items(facts):
                return Itemize(tuple(self.say(fact, nouns) for fact in facts))
            case Display() | Picture():
                return part

    def paragraph(self, facts: tuple[Fact, ...], nouns: Nouns) -> Paragraph:
        return paragraph(*(self.say(fact, nouns) for fact in facts))
