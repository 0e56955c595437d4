"""What stands among words that go from right to left, and still goes from left to right.

A line is set from left to right here, and a run of Hebrew or Arabic in it from right to left:
numbers and Latin words in the run are turned back, and brackets in it are mirrored.  That is what
the bidirectional algorithm (Unicode, UAX #9) comes to for a line of names and words without
embeddings, but for the direction of the line, which a run that goes on around Latin words takes
from its own.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from itertools import takewhile
from typing import Final

_MIRRORED: Final = dict(zip("()[]{}«»‹›<>", ")(][}{»«›‹><", strict=True))
_DEPTH: Final = {"(": 1, "[": 1, "{": 1, ")": -1, "]": -1, "}": -1}
_NUMBERS: Final = ("EN", "AN")
_LEFTWARD: Final = ("R", "AL")
_BETWEEN_DIGITS: Final = ("CS", "ES")
_BESIDE_DIGITS: Final = "ET"


def mirrored(cluster: str) -> str:
    """A sign as it looks in writing from right to left."""
    return _MIRRORED.get(cluster, cluster)


def run_end(clusters: Sequence[str], scripts: Sequence[str], start: int) -> int:
    """Where the run ends that begins at `start`: behind the last word of its script, or a bracket
    around that.

    scripts: of each cluster, "" for what Latin fonts have.  Neither another script nor a bracket
    without its partner is in a run.
    """
    script, end, word, depth = scripts[start], start + 1, start, 0
    for place in range(start, len(clusters)):
        depth += _DEPTH.get(clusters[place], 0)
        if scripts[place] not in ("", script) or depth < 0:
            break
        if scripts[place] == script:
            word = place
        if depth == 0 and word >= end and (word == place or clusters[place] in _DEPTH):
            end = place + 1
    return end


def parts(run: Sequence[str]) -> Iterator[tuple[bool, range]]:
    """The places of a run in parts, each with whether it goes from left to right after all."""
    kinds = [unicodedata.bidirectional(cluster[0]) for cluster in run]
    place = 0
    while place < len(run):
        rightward = kinds[place] == "L" or kinds[place] in _NUMBERS
        end = _rightward_end(kinds, place) if rightward else place + 1
        yield rightward, range(place, end)
        place = end


def _rightward_end(kinds: Sequence[str], start: int) -> int:
    """Where a part from left to right ends: behind its last letter or number."""
    lettered, end = kinds[start] == "L", start + 1
    for place in range(start + 1, len(kinds)):
        kind, between = kinds[place], kinds[end:place]
        if kind in _LEFTWARD:
            break
        if kind != "L" and kind not in _NUMBERS:
            continue
        joined = not between or (len(between) == 1 and between[0] in _BETWEEN_DIGITS)
        if not lettered and not (joined and (kind in _NUMBERS or not between)):
            break
        lettered, end = lettered or kind == "L", place + 1
    return end + len(list(takewhile(_BESIDE_DIGITS.__eq__, kinds[end:])))
