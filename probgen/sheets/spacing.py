"""Where running text may not be torn apart, whatever the page language."""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import pairwise
from typing import Final

from probgen.quantities.expression import Name
from probgen.quantities.unit import UNITS
from probgen.wording.block import Inline, Math, Text

_NO_BREAK: Final = "\u00a0"
_THIN: Final = "\u202f"
_AFTER_WORD: Final = re.compile(r"[\w,] $")
_AFTER_EQUALS: Final = re.compile(r"= $")
_SPACE_IN: Final = re.compile(r"(?<=\w) (?=\S)")
_LAST: Final = 10  # letters that the last line of an item has at least, unless a comma is before it
_BLANK_LINE: Final = re.compile(r"\s*\n[^\S\n]*\n\s*")
_UNITS: Final = "|".join(
    re.escape(unit.plain) for unit in UNITS.values() if unit.plain not in ("", "°", "in")
)
_BEFORE_UNIT: Final = re.compile(rf"(?<=\d) (?=(?:{_UNITS})(?![\w²]))")
"""The space in "4.00 m" is thin and unbroken (NIST SP 811 (2008), section 7.2); "in" is a word."""


def tied(inlines: tuple[Inline, ...]) -> tuple[Inline, ...]:
    """Running text whose letters stay on the line of the word before them ("at A", "joint, J"), and
    formulas on that of an equals sign."""
    tied = list(inlines)
    for place, (inline, following) in enumerate(pairwise(inlines)):
        if isinstance(inline, Text) and isinstance(following, Math):
            before = _AFTER_WORD if _is_letter(following) else _AFTER_EQUALS
            tied[place] = Text(before.sub(lambda found: found[0][0] + _NO_BREAK, inline.text))
    return tuple(tied)


def with_end(inlines: tuple[Inline, ...]) -> tuple[Inline, ...]:
    """An item whose last words stay together ("to the right", "straight down at A"), so that none
    of them has a line alone."""
    ended, behind = list(inlines), 0
    for place in reversed(range(len(inlines))):
        match inlines[place]:
            case Text(text):
                ended[place] = Text(_with_end(text, behind))
                behind += len(text)
            case letter if _is_letter(letter):
                behind += 2
            case _:
                break
        if behind >= _LAST:
            break
    return tuple(ended)


def _with_end(text: str, behind: int) -> str:
    """behind: how many letters follow the text."""
    spaces = [found.start() for found in _SPACE_IN.finditer(text)]
    ends = {place for place in spaces if len(text) - place - 1 + behind < _LAST}
    return "".join([_NO_BREAK if place in ends else each for place, each in enumerate(text)])


@lru_cache(maxsize=4096)  # a class's pages say the same words again and again
def paragraphs(text: str) -> tuple[str, ...]:
    """A text cut at its blank lines, numbers and units kept together."""
    return tuple(_BLANK_LINE.split(_BEFORE_UNIT.sub(_THIN, text)))


def _is_letter(inline: Inline) -> bool:
    match inline:
        case Math((Name(),)):
            return True
        case _:
            return False
