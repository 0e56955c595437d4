"""Where running text may not be torn apart, whatever the page language."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from probgen.quantities.expression import Name
from probgen.quantities.unit import UNITS
from probgen.wording.block import Inline, Math, Text

_NO_BREAK: Final = "\u00a0"
_THIN: Final = "\u202f"
_AFTER_WORD: Final = re.compile(r"[\w,] $")
_BLANK_LINE: Final = re.compile(r"\s*\n[^\S\n]*\n\s*")
_UNITS: Final = "|".join(
    re.escape(unit.plain) for unit in UNITS.values() if unit.plain not in ("", "°", "in")
)
_BEFORE_UNIT: Final = re.compile(rf"(?<=\d) (?=(?:{_UNITS})(?![\w²]))")
"""The space in "4.00 m" is thin and unbroken (NIST SP 811 (2008), section 7.2); "in" is a word."""


def tied(inlines: tuple[Inline, ...]) -> tuple[Inline, ...]:
    """Running text whose letters stay on the line of the word before them ("at A", "joint, J")."""
    tied = list(inlines)
    for place, inline in enumerate(inlines[:-1]):
        if isinstance(inline, Text) and _is_letter(inlines[place + 1]):
            tied[place] = Text(_AFTER_WORD.sub(lambda found: found[0][0] + _NO_BREAK, inline.text))
    return tuple(tied)


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
