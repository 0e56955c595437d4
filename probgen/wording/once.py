"""Reasons that hold again and again are given once in a key, then in short."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from probgen.wording.facts.torque import TurnsNothing
from probgen.wording.passage import Items, Part, Passage, Sentences
from probgen.working.fact import Fact


def said_once(passages: Iterable[Passage]) -> tuple[Passage, ...]:
    """The passages, with the reason why a force turns nothing in full only the first time."""
    said: set[type[Fact]] = set()
    return tuple(
        replace(passage, parts=tuple(_part(part, said) for part in passage.parts))
        for passage in passages
    )


def _part(part: Part, said: set[type[Fact]]) -> Part:
    if not isinstance(part, Sentences | Items):
        return part
    return replace(part, facts=tuple(_shortened(part.facts, said)))


def _shortened(facts: Iterable[Fact], said: set[type[Fact]]) -> Iterator[Fact]:
    for fact in facts:
        if isinstance(fact, TurnsNothing):
            yield replace(fact, again=TurnsNothing in said)
            said.add(TurnsNothing)
        else:
            yield fact
