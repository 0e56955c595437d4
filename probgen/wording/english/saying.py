"""Saying a fact in English: each kind of fact has a function of its own, registered here."""

from __future__ import annotations

from functools import singledispatch

from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines
from probgen.working.fact import Fact


@singledispatch
def say(fact: Fact, nouns: Nouns) -> Inlines:
    """A fact as running text.  Raises NotImplementedError for one that has no words yet."""
    raise NotImplementedError(f"no English for {type(fact).__name__}")
