"""What a text may hold that comes from outside, in whatever kind of file, and how one is shown.

A control character has no meaning in a name or a title: in a terminal it could be a command, and
no page shows it.  Every reader refuses it, so that what one has taken, no other one will refuse.
"""

from __future__ import annotations

import re
import unicodedata
from typing import Final

LONGEST_TEXT: Final = 1000
"""Characters of a text that has no bound of its own."""

_NO_TEXT: Final = re.compile("[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff]")
"""Control characters but for the ends of lines and the tabulator; halves of characters."""
_MISLEADING: Final = frozenset({"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"})
"""Classes of characters by which what follows is shown in another order than it stands."""
_BLANK: Final = "\u115f\u1160\u2800\u3164\uffa0"
"""Letters and signs by their class, which are drawn as nothing."""
_SHAPELESS: Final = frozenset({"Cc", "Cs", "Co", "Cn"})


def unfit_line(text: str) -> int:
    """The line, from 1, of the first sign that no text may have; 0 where there is none."""
    found = _NO_TEXT.search(text)
    return text.count("\n", 0, found.start()) + 1 if found else 0


def unfit(text: str, most: int = LONGEST_TEXT) -> str:
    """What a text has that none may have, in words; "" where it has nothing of the kind."""
    if len(text) > most:
        return f"{len(text)} characters"
    found = _NO_TEXT.search(text)
    if not found:
        return ""
    half = "\ud800" <= found[0] <= "\udfff"
    return f"{'half a' if half else 'the control'} character, {ascii(found[0])[1:-1]}"


def is_seen(text: str) -> bool:
    """Whether anything of a text is seen: a letter, a digit, a sign, or a box in its place."""
    return any(
        unicodedata.category(each)[0] not in "ZM"
        and unicodedata.category(each) not in ("Cc", "Cf")
        and each not in _BLANK
        for each in text
    )


def visible(text: str) -> str:
    """A text as it is shown in a terminal: what commands it, or misleads an eye, is spelled out."""
    return "".join(each if each == "\n" or _shows(each) else ascii(each)[1:-1] for each in text)


def _shows(letter: str) -> bool:
    if letter.isascii():
        return letter.isprintable()
    if unicodedata.category(letter) in _SHAPELESS:
        return False
    return unicodedata.bidirectional(letter) not in _MISLEADING
