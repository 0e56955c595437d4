"""A working told in facts: passages with a heading, sentences, lists, equations, pictures."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from probgen.wording.block import Display, Picture
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class Sentences:
    """Facts said one after the other in one paragraph.

    bound: what they say is of the equations before them, or goes on from there.
    """

    facts: tuple[Fact, ...]
    bound: bool = False


@dataclass(frozen=True, slots=True)
class Items:
    """Facts said one below the other."""

    facts: tuple[Fact, ...]


Part = Sentences | Items | Display | Picture


@dataclass(frozen=True, slots=True)
class Passage:
    """One step of the working, before it is said in a language."""

    heading: Fact
    parts: tuple[Part, ...]

    @property
    def said(self) -> tuple[Fact, ...]:
        """The facts in it, in order."""
        told = (part for part in self.parts if isinstance(part, Sentences | Items))
        return tuple(fact for part in told for fact in part.facts)


def one_paragraph(*parts: Part) -> Iterator[Part]:
    """Parts with sentences that follow sentences joined to one paragraph; nothing empty is left.

    What the first of them are bound to, the paragraph is.
    """
    for are_said, run in groupby(parts, key=lambda part: isinstance(part, Sentences)):
        if not are_said:
            yield from run
            continue
        said = [part for part in run if isinstance(part, Sentences) and part.facts]
        if said:
            facts = tuple(fact for part in said for fact in part.facts)
            yield Sentences(facts, said[0].bound)


def sentences(*facts: Fact, bound: bool = False) -> Sentences:
    """Facts to be said one after the other, in one paragraph."""
    return Sentences(facts, bound)
