"""Two texts as one: the words that stayed, went and came."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from enum import StrEnum
from typing import Final

_AROUND: Final = 5
"""Words that are shown beside what is other."""
CUT: Final = "…"
"""Stands for words that are left out."""


class Fate(StrEnum):
    """What became of some words."""

    STAYED = "stayed"
    WENT = "went"
    CAME = "came"


@dataclass(frozen=True, slots=True)
class Words:
    """Words that lie together and share their fate."""

    fate: Fate
    text: str


def rewording(before: str, after: str) -> tuple[Words, ...]:
    """The words of both texts in their order; of long stretches that stayed, the ends alone."""
    old, new = before.split(), after.split()
    blocks = SequenceMatcher(None, old, new, autojunk=False).get_opcodes()
    found: list[Words] = []
    for place, (kind, *ends) in enumerate(blocks):
        start, end, first, last = ends
        if kind == "equal":
            kept = _kept(old[start:end], first=place == 0, last=place == len(blocks) - 1)
            found.append(Words(Fate.STAYED, " ".join(kept)))
            continue
        found += _changed(old[start:end], new[first:last])
    return tuple(found)


def _changed(old: Sequence[str], new: Sequence[str]) -> Iterator[Words]:
    if old:
        yield Words(Fate.WENT, " ".join(old))
    if new:
        yield Words(Fate.CAME, " ".join(new))


def _kept(words: Sequence[str], first: bool, last: bool) -> list[str]:
    """The words of a stretch that lie near what is other."""
    ends = 0 if first else _AROUND, 0 if last else _AROUND
    if len(words) <= sum(ends) + 1:
        return list(words)
    return [*words[: ends[0]], CUT, *words[len(words) - ends[1] :]]
