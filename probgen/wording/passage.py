"""A working told in facts: passages with a heading, sentences, lists, equations, pictures."""

from __future__ import annotations

from dataclasses import dataclass

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


def sentences(*facts: Fact, bound: bool = False) -> Sentences:
    """Facts to be said one after the other, in one paragraph."""
    return Sentences(facts, bound)
